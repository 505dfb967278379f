/** tests/client/rows-sent.test.ts - rows told to the counting thread by their differences: what it holds is what the window has. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { NOTHING_HELD, rowsOf, rowsToSend, withSent } from "../../client/decide/rows-sent.ts";
import type { Kind, Row, Rows } from "../../schema/record.ts";

const row = (kind: Kind, id: string, version: number): Row => ({ kind, version, value: { id } as Row["value"] });
const inOrder = (rows: Rows) =>
  Object.values(rows)
    .flat()
    .map(({ kind, version, value }) => `${kind} ${value.id} ${version}`)
    .sort();

describe("rows sent by their differences", () => {
  test("the same rows are not sent again; a changed one is, and one that went is named", () => {
    const [a, b, other] = [row("cruxes", "a", 1), row("cruxes", "b", 1), row("readings", "a", 1)];
    const first = rowsToSend(NOTHING_HELD, { cruxes: [a, b], readings: [other] } as Rows);
    expect(first.sent).toEqual({ set: [a, b, other], removed: [] });
    expect(rowsToSend(first.held, { cruxes: [b, a], readings: [other] } as Rows).sent).toBeNull();
    const newer = row("cruxes", "b", 2);
    const second = rowsToSend(first.held, { cruxes: [newer] } as Rows);
    expect(second.sent).toEqual({
      set: [newer],
      removed: [
        { kind: "cruxes", id: "a" },
        { kind: "readings", id: "a" },
      ],
    });
  });

  test("after any run of changes the other side has the very rows", () => {
    const rowsArbitrary = fc
      .uniqueArray(
        fc.tuple(fc.constantFrom<Kind>("cruxes", "readings", "marks"), fc.constantFrom("a", "b", "c", "d"), fc.nat(3)),
        {
          selector: ([kind, id]) => `${kind} ${id}`,
        },
      )
      .map((list) => {
        const rows: Record<string, Row[]> = {};
        for (const [kind, id, version] of list) rows[kind] = [...(rows[kind] ?? []), row(kind, id, version)];
        return rows as Rows;
      });
    fc.assert(
      fc.property(fc.array(rowsArbitrary, { maxLength: 6 }), (states) => {
        let [here, there] = [NOTHING_HELD, NOTHING_HELD];
        for (const rows of states) {
          const { sent, held } = rowsToSend(here, rows);
          here = held;
          if (sent !== null) there = withSent(there, sent);
          expect(inOrder(rowsOf(there))).toEqual(inOrder(rows));
        }
      }),
    );
  });
});
