/** tests/store/round-trip.test.ts - any row of any kind comes back as it was stored, and names what it seems to name.
 *  Rules S2, S3, S14. Values are made from the schemas themselves. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { KINDS, type Kind, RECORDS } from "../../schema/record.ts";
import type { SlotAddress } from "../../schema/slot.ts";
import { VALUES, type ValueKind } from "../../schema/values.ts";
import { checkValue } from "../../server/store/check-value.ts";
import type { RowValue } from "../../server/store/field-table.ts";
import { namedIds } from "../../server/store/named-ids.ts";
import { sameJson } from "../../server/store/row-codec.ts";
import { getRow, putRow } from "../../server/store/row-store.ts";
import { arbitraryFrom } from "../kit/arbitrary-from.ts";
import { emptyStore } from "./store-builders.ts";

const anyRow = (kind: Kind) => arbitraryFrom(RECORDS[kind] as never) as fc.Arbitrary<RowValue>;

describe("[S2] [S3] stored and read", () => {
  const store = emptyStore();
  test.each(KINDS)("%s", (kind) => {
    fc.assert(
      fc.property(anyRow(kind), fc.integer({ min: 1, max: 9 }), (value, version) => {
        // References are checked when a transaction ends; this one never does.
        store.db.exec("BEGIN");
        try {
          const checked = checkValue(kind, value, "");
          expect(checked).toEqual({ ok: true, value });
          putRow(store, { kind, version, value });
          expect(getRow(store, kind, value.id)).toStrictEqual({ kind, version, value });
        } finally {
          store.db.exec("ROLLBACK");
        }
      }),
      { numRuns: 30 },
    );
  });
});

/** Fields that are kept as they are and not looked into. */
const FROZEN = new Set(["doc", "steps", "drill", "model", "item"]);
const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;

/** Every string in the value that looks like an id, but the row's own. */
function idsIn(value: unknown, top = true): string[] {
  if (typeof value === "string") return UUID.test(value) ? [value] : [];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value)
    .filter(([key]) => !FROZEN.has(key) && !(top && key === "id"))
    .flatMap(([, field]) => idsIn(field, false));
}

/** Without the addressed rows, the kind of a reading's value is guessed from what it looks like. */
function guessedKind(row: RowValue, { id }: SlotAddress): ValueKind | null {
  const values = (row.values ?? []) as { at: SlotAddress; value: { value?: unknown } }[];
  const given = values.find(({ at }) => at.id === id)?.value.value;
  const kinds: ValueKind[] = ["object", "bearing", "place", "timing"];
  return kinds.find((kind) => VALUES[kind].safeParse(given).success) ?? null;
}

describe("[S14] every id in a row is found", () => {
  test.each(KINDS)("%s", (kind) => {
    fc.assert(
      fc.property(anyRow(kind), (value) => {
        const found = namedIds(kind, value, (address) => guessedKind(value, address));
        expect(found.map(({ id }) => id).sort()).toEqual(idsIn(value).sort());
      }),
      { numRuns: 60 },
    );
  });
});

describe("[S12] two values are the same", () => {
  test.each([
    [{ a: 1, b: [2] }, { b: [2], a: 1 }, true],
    [{ a: null }, {}, false],
    [[1, 2], [2, 1], false],
    [{}, [], false],
    ["1", 1, false],
    [null, null, true],
  ])("%j and %j: %s", (a, b, same) => {
    expect([sameJson(a, b), sameJson(b, a)]).toEqual([same, same]);
  });
});
