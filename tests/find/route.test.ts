/** GET /api/find: what it answers, and what it refuses. */
import { describe, expect, it } from "vitest";
import type { FindAnswer } from "../../schema/find.ts";
import { refusalOf, runningApp, send } from "../kit/running-app.ts";

const app = await runningApp();

describe("GET /api/find", () => {
  it("groups what it found, each with words, reference and place", async () => {
    const reply = await send(app, "/api/find?q=spear&limit=2");
    expect(reply.status).toBe(200);
    const { at, groups } = JSON.parse(reply.text) as FindAnswer;
    expect(at).toBe(1);
    const [passages] = groups;
    expect(passages?.group).toBe("passages");
    expect(passages?.found).toHaveLength(2);
    const [first] = passages?.found ?? [];
    expect(first?.words?.hits.map(({ from, to }) => first.words?.quote.slice(from, to).toLowerCase())).toContain(
      "spear",
    );
    expect(first?.reference).toMatch(/^A f\. \d+[rv], ll\. [\d–]+$/);
    expect(first?.leads.passage).toBe(first?.id);
  });

  it.each(["", "?q=", "?q=%20%20", "?q=*", "?q=%22", "?q=title:", "?q=%2B-~%5E", "?q=zzzz"])(
    "answers %j with an empty list",
    async (query) => {
      const reply = await send(app, `/api/find${query}`);
      expect([reply.status, (JSON.parse(reply.text) as FindAnswer).groups]).toEqual([200, []]);
    },
  );

  it.each([
    ["?q=a&limit=0", "limit"],
    ["?q=a&limit=many", "limit"],
    ["?q=a&sort=up", "sort"],
    ["?q=a&q=b", "q"],
  ])("refuses %s and names %s", async (query, name) => {
    const reply = await send(app, `/api/find${query}`);
    expect(reply.status).toBe(422);
    const refusal = refusalOf(reply);
    expect(refusal.code).toBe("body_invalid");
    expect(JSON.stringify(refusal)).toContain(name);
  });
});
