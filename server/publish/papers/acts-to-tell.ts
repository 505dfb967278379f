/** server/publish/papers/acts-to-tell.ts - which acts of each element a sheet tells that is ridden from: what changes, each once.
 *  May import: schema types, siblings. Gait and hands stay as they are until something changes them, so what only says again
 *  that they stay is left out, unless the text itself says it again. Nothing that is silent or not settled is left out but with
 *  the whole act. */
import type { DrillAction, DrillElement, DrillValue } from "../../../schema/drill.ts";
import { plainWords } from "../act-pieces.ts";

/** The acts by the element, in their order. `elements`: all of the exercise, since a cut begins in the gait that was ridden
 *  before it. An inherited gait is among them only where it changes something. */
export function actsToTell(elements: readonly DrillElement[]): ReadonlyMap<string, DrillAction[]> {
  const told = new Map<string, DrillAction[]>();
  const gaits = new GaitsInForce();
  let hasBegun = false;
  for (const element of elements) {
    const own = element.actions.filter(({ inherited }) => !inherited);
    if (element.is !== "step") {
      told.set(element.id, own);
      if (element.is !== "advice") {
        gaits.forget();
        hasBegun = false;
      }
      continue;
    }
    const list = hasBegun ? own.filter((action) => !onlyStays(action)) : own;
    if (own.some(({ part }) => part !== "horse")) hasBegun = true;
    told.set(element.id, onceEach(gaits.changing(element, list), element));
  }
  return told;
}

/** Gaits by the rider's role; null is not known. */
class GaitsInForce {
  readonly #byRole = new Map<string, string | null>();

  forget(): void {
    this.#byRole.clear();
  }

  /** The acts without those that name the gait in force, and with the inherited gait where the horse changes to it. */
  changing({ actions, role, onlyUnder }: DrillElement, own: readonly DrillAction[]): DrillAction[] {
    let now = this.#of(role);
    const halts = own.some((action) => isHalt(action) && isSettled(action));
    const kept: DrillAction[] = [];
    const given = actions.find(({ inherited, verb }) => inherited && verb === "go at");
    const moves = own.some((action) => action.verb === "ride" && !isHalt(action));
    if (given !== undefined && moves) {
      const gait = gaitOf(given);
      if (gait !== now) kept.push(given);
      now = gait;
    }
    for (const action of own) {
      if (action.verb === "go at") {
        const gait = gaitOf(action);
        const again = gait !== null && gait === now && action.standing !== "stated" && isBare(action);
        // A step that halts says so by its figure.
        const twice = halts && gait === "halt" && isBare(action);
        if (twice) continue;
        if (!again) kept.push(action);
        now = gait;
        continue;
      }
      const halting = action.verb === "ride" && isHalt(action);
      const stands = halting && now === "halt" && action.standing !== "stated" && isOnlyHalt(action);
      if (!stands) kept.push(action);
      if (halting) now = isSettled(action) ? "halt" : null;
    }
    if (onlyUnder.length > 0) now = now === this.#of(role) ? now : null;
    this.#set(role, now);
    return kept;
  }

  /** What everybody rides, for a step of everybody; undefined where that is not one gait, or none was ridden yet. */
  #of(role: string): string | null | undefined {
    if (role !== "") return this.#byRole.has(role) ? this.#byRole.get(role) : this.#byRole.get("");
    const all = new Set(this.#byRole.values());
    return all.size === 1 ? [...all][0] : undefined;
  }

  #set(role: string, gait: string | null | undefined): void {
    if (role === "") this.#byRole.clear();
    this.#byRole.set(role, gait ?? null);
  }
}

/** "easy canter"; null where it is not settled, or only a pace is told. */
function gaitOf(action: DrillAction): string | null {
  const gait = saidIn(action, "gait");
  const pace = saidIn(action, "pace");
  if (!isSettled(action) || gait === undefined) return null;
  return [pace, gait].flatMap((value) => (value === undefined ? [] : plainWords(value))).join(" ");
}

/** Whether it is nothing but a gait: what is told beside it would be lost with it. A lead that is not said is told where the
 *  gait begins. */
const isBare = ({ values, onlyUnder }: DrillAction): boolean =>
  onlyUnder.length === 0 &&
  values.every(
    ({ slot, standing, crux }) =>
      slot === "gait" || slot === "pace" || slot === "timing" || (standing === "not said" && crux === null),
  );

const isHalt = (action: DrillAction): boolean =>
  action.verb === "ride" && saidIn(action, "figure")?.text === "halt" && isSettled(action);

const isOnlyHalt = ({ values, onlyUnder }: DrillAction): boolean =>
  onlyUnder.length === 0 && values.every(({ slot, crux }) => crux === null && (slot === "figure" || slot === "timing"));

const isSettled = ({ onlyUnder, values }: DrillAction): boolean =>
  onlyUnder.length === 0 &&
  values.every(
    ({ slot, standing }) => standing !== "not settled" || (slot !== "gait" && slot !== "pace" && slot !== "figure"),
  );

/** Whether it says no more than that a hand keeps what it has. */
const onlyStays = ({ verb, standing, values, onlyUnder }: DrillAction): boolean =>
  verb === "keep" && standing !== "stated" && onlyUnder.length === 0 && values.every(({ crux }) => crux === null);

/** Acts in the same words under several readings of one crux as one act, and without a condition where it is done however that
 *  crux is read. */
function onceEach(actions: readonly DrillAction[], { cruxes }: DrillElement): DrillAction[] {
  const found: DrillAction[] = [];
  for (const action of actions) {
    const at = found.findIndex((one) => saysTheSame(one, action));
    const other = found[at];
    if (other === undefined) {
      found.push(action);
      continue;
    }
    found[at] = { ...other, onlyUnder: joined(other.onlyUnder, action.onlyUnder, cruxes) };
  }
  return found;
}

function saysTheSame(first: DrillAction, second: DrillAction): boolean {
  const words = ({ part, verb, text, values }: DrillAction): string =>
    [part, verb, text, ...values.map(({ slot, text: value, crux }) => `${slot} ${value} ${crux}`)].join("\n");
  const [one, another] = [first.onlyUnder, second.onlyUnder];
  const sameCrux = one.length === 1 && another.length === 1 && one[0]?.crux === another[0]?.crux;
  return words(first) === words(second) && (sameCrux || (one.length === 0 && another.length === 0));
}

function joined(
  first: DrillAction["onlyUnder"],
  second: DrillAction["onlyUnder"],
  cruxes: DrillElement["cruxes"],
): DrillAction["onlyUnder"] {
  const [one] = first;
  if (one === undefined) return [];
  const readings = [...new Set([...one.readings, ...(second[0]?.readings ?? [])])];
  const standing = cruxes.find(({ crux }) => crux === one.crux)?.others.filter(({ status }) => status !== "ruled out");
  const always = standing?.every(({ reading }) => readings.includes(reading));
  return always ? [] : [{ crux: one.crux, readings }];
}

function saidIn({ values }: DrillAction, slot: string): DrillValue | undefined {
  return values.find(
    (value) => value.slot === slot && value.standing !== "not said" && value.standing !== "not applicable",
  );
}
