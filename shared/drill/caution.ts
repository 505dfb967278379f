/** shared/drill/caution.ts - the short caution that stands on every sheet and in the rooms where things are ridden.
 *  May import: nothing. */

export const CAUTION =
  "Horses and weapons can hurt. Practise under qualified instruction, with blunt and flexible practice weapons, " +
  "protective equipment for rider and horse, and room to spare. The rules of the ground and of the organiser come first. " +
  "What is computed here tells what is necessary, and promises nothing.";
