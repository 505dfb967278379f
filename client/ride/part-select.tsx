/** client/ride/part-select.tsx - whose part a rider rides, where the exercise names roles; or all of it, one part after another. */
import { roles } from "./riding.ts";

const ALL_PARTS = "";

/** Whose part a rider rides, where the exercise names roles. */
export function PartSelect({
  letter,
  role,
  choose,
}: {
  letter: string;
  role: string | null;
  choose: (role: string | null) => void;
}) {
  return (
    <select
      aria-label={`Whose part rider ${letter} rides`}
      value={role ?? ALL_PARTS}
      onChange={(event) => choose(event.currentTarget.value === ALL_PARTS ? null : event.currentTarget.value)}
    >
      {roles.value.map((part) => (
        <option key={part} value={part}>
          {part}
        </option>
      ))}
      <option value={ALL_PARTS}>all parts, one after another</option>
    </select>
  );
}
