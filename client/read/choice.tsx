/** client/read/choice.tsx - a select whose options are words, and what every editor of a value is given. */
import type { Edit } from "../../schema/change.ts";
import type { Kind } from "../../schema/record.ts";

export interface EditorProps<T> {
  /** Undefined while nothing is said. */
  value: T | undefined;
  label: string;
  /** The row that holds the value, and the name of the slot in it: what is typed is kept under them. */
  row: { kind: Kind; id: string };
  name: string;
  /** Stores the value; `base` where it was typed over something that changed meanwhile, `also` goes in the same change. */
  take: (value: T, more?: { base?: number | undefined; also?: Edit[] }) => Promise<boolean>;
}

/** A select whose options are words. */
export function Choice<T extends string>({
  label,
  value,
  options,
  take,
  empty = "choose…",
}: {
  label: string;
  value: T | undefined;
  options: readonly { value: T; words: string }[];
  take: (value: T) => void;
  empty?: string;
}) {
  return (
    <select
      aria-label={label}
      value={value ?? ""}
      onChange={(event) => {
        const chosen = options.find((option) => option.value === event.currentTarget.value);
        if (chosen) take(chosen.value);
      }}
    >
      {value === undefined && <option value="">{empty}</option>}
      {options.map((option) => (
        <option key={option.value} value={option.value}>
          {option.words}
        </option>
      ))}
    </select>
  );
}
