/** shared/ride/clock-time.ts - a moment of the ride as it is said everywhere: minutes and whole seconds.
 *  May import: nothing. */

/** "0:31". `seconds` from the start of the ride, cut to whole ones. */
export function clockTime(seconds: number): string {
  const whole = Math.floor(seconds + 1e-6);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}
