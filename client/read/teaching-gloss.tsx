/** client/read/teaching-gloss.tsx - words that speak of a rule or of a fault: what it says, in a few words. Both are changed
 *  elsewhere (the table of rules in Ride, the form of what the fault is of), so there is no form here. */
import type { RecordOf } from "../../schema/record.ts";
import { one } from "../state/rows.ts";
import { GlossHead } from "./gloss-head.tsx";
import { names } from "./row-names.ts";
import { elementWords } from "./slot-place.ts";

const TAKEN: Record<RecordOf<"rules">["severity"], string> = {
  bars: "a breach bars a reading",
  warns: "a breach is worth a warning",
  notes: "a breach is worth a note",
  off: "not asked after in this work",
};

export function RuleGloss({ id }: { id: string }) {
  const rule = one("rules", id);
  if (rule === null) return null;
  return (
    <>
      <GlossHead thing={{ kind: "rules", id }} sign="" title={rule.sentence} by="rule" opens={false} />
      <p class="meta">
        {TAKEN[rule.severity]}; from{" "}
        {rule.basis === "the text" || rule.basis === "the user" ? rule.basis : `a ${rule.basis}`}
      </p>
    </>
  );
}

export function FaultGloss({ id }: { id: string }) {
  const fault = one("faults", id);
  if (fault === null) return null;
  const of = fault.of === "elements" ? elementWords(fault.target) : names.value(fault.of, fault.target);
  return (
    <>
      <GlossHead thing={{ kind: "faults", id }} sign="" title={fault.fault} by="fault" opens={false} />
      {fault.correction && <p>{fault.correction}</p>}
      {of && <p class="meta">in {of}</p>}
    </>
  );
}
