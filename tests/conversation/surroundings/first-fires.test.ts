/** The ladder of first fires, from the log alone; and the guide and the load that keep to it. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { ladderOf, SEEN, type Seen } from "../../../src/firing/ladder.ts";
import { loadKnowledge } from "../../../src/knowledge/load.ts";
import { openTalk, type Talk } from "../../support/talk.ts";

const DAY = 86_400_000;
const { firings } = await loadKnowledge(new URL("../../../knowledge", import.meta.url).pathname);
const firing = firings.get("first-fires");
if (!firing) throw new Error("no first fires");
const START = Date.parse("2026-11-01T17:00:00Z");

/** One fire a day from the first of November, each a share of 20 kg, with what was seen. */
function climb(shares: readonly (number | [number, Seen])[], on_day = shares.length, commissioned_on: string | undefined = "2026-11-01") {
  const fires = shares.map((one, day) => {
    const [share, seen] = Array.isArray(one) ? one : [one, undefined];
    return { lit_at_ms: START + day * DAY, facts: { lit_at: "", load_kg: share * 20, ...(seen ? { note: SEEN[seen] } : {}) } };
  });
  return ladderOf({ firing: firing as NonNullable<typeof firing>, heater: commissioned_on ? { commissioned_on } : {}, fires, max_load_kg: 20, now_ms: START + on_day * DAY, timezone: "UTC" });
}

describe("the ladder of a new heater (common practice: practice of builders; shares of the full load, two days each)", () => {
  test("goes 10, 20, 35, 50, 75 % and is done after ten days of firing", () => {
    const shares: number[] = [];
    const next: (number | undefined)[] = [];
    for (let day = 0; day < 11; day++) {
      const rung = climb(shares)?.rung;
      next.push(rung?.share_high);
      shares.push(rung?.share_high ?? 1);
    }
    expect(next).toEqual([0.1, 0.1, 0.2, 0.2, 0.35, 0.35, 0.5, 0.5, 0.75, 0.75, undefined]);
  });
  test("repeats a day on which damp or cracks were seen", () => {
    expect(climb([0.1, [0.1, "damp"]])?.rung?.share_high).toBe(0.1);
    expect(climb([0.1, [0.1, "cracks"], 0.1])?.rung?.share_high).toBe(0.2);
    expect(climb([0.1, [0.1, "dry"]])?.rung?.share_high).toBe(0.2);
  });
  test("does not count fires that were far too small, and never skips a step for a big one", () => {
    expect(climb([0.1, 0.1, 0.02, 0.02])?.rung?.id).toBe("fifth");
    expect(climb([0.5])?.rung?.id).toBe("kindling");
  });
  test("stops where the builder has to look", () => {
    expect(climb([0.1, [0.1, "stop"]])?.stopped).toBe(true);
  });
  test("two fires of one day are one day", () => {
    const fires = [0, 5].map((hours) => ({ lit_at_ms: START + hours * 3_600_000, facts: { lit_at: "", load_kg: 2 } }));
    const ladder = ladderOf({ firing: firing as NonNullable<typeof firing>, heater: { commissioned_on: "2026-11-01" }, fires, max_load_kg: 20, now_ms: START + DAY, timezone: "UTC" });
    expect(ladder?.rung?.id).toBe("kindling");
    expect(ladder?.days).toHaveLength(1);
  });
  test("ends with the sixty days in which a heater counts as new", () => {
    expect(climb([], 59)).not.toBeNull();
    expect(climb([], 61)).toBeNull();
  });
});

describe("after a long rest (common practice: a quarter, half, three quarters, then full)", () => {
  const after = (gaps_days: readonly number[], now_after: number) => {
    let at = START;
    const fires = [0, ...gaps_days].map((gap) => ({ lit_at_ms: (at += gap * DAY), facts: { lit_at: "", load_kg: 20 } }));
    return ladderOf({ firing: firing as NonNullable<typeof firing>, heater: {}, fires, max_load_kg: 20, now_ms: at + now_after * DAY, timezone: "UTC" });
  };
  test.each([
    [[1, 1], 61, 0.25],
    [[1, 200], 1, 0.5],
    [[200, 1], 1, 0.75],
    [[200, 1, 1], 1, undefined],
  ])("gaps of %j days, then %i: %s", (gaps, now_after, share) => {
    const ladder = after(gaps, now_after);
    expect(ladder?.occasion).toBe("rest");
    expect(ladder?.rung?.share_high).toBe(share);
  });
  test("a pause of two months or less needs none, and neither does an old one", () => {
    expect(after([1, 1], 60)).toBeNull();
    expect(after([200, 1, 1, 1, 10, 10], 1)).toBeNull();
  });
  test("a heater of which nothing is on record is not taken for rested", () => {
    expect(ladderOf({ firing: firing as NonNullable<typeof firing>, heater: {}, fires: [], max_load_kg: 20, now_ms: START, timezone: "UTC" })).toBeNull();
  });
});

describe("talked through", () => {
  let talk: Talk;
  beforeEach(async () => {
    talk = await openTalk({ now: "2026-11-25T18:00:00Z" });
  });
  afterEach(() => talk.close());
  const heater = (more: object = {}) => ({ heater: { max_load_kg: 20, max_load_source: "sheet", gas_exit: "top", shut_off_damper: true, ...more } });

  test("guide and load keep to the ladder, whatever is asked for; the log shows how far it is", async () => {
    await talk.records("ana", heater({ commissioned_on: "2026-11-20" }));
    expect((await talk.say("ana", "how much wood in one load?")).numbers.load_kg).toBe(2);
    const begun = await talk.say("ana", "help me light a fire with 15 kg");
    expect(begun.text).toMatch(/the load is 2 kg/);
    expect(begun.text).toMatch(/stop, let it cool by itself, call the builder/);
    expect(begun.cautions.map(({ id }) => id)).toContain("first-fires");
    await talk.choose("ana", "guide:lit-now");
    const over = await talk.choose("ana", "guide:leave-open");
    expect(over.choices.map(({ id }) => id)).toEqual(["first:dry", "first:damp", "first:cracks", "first:stop"]);
    await talk.choose("ana", "first:damp");
    expect((await talk.say("ana", "show my first fires")).text).toMatch(/10 % \| damp - repeat/);
  });
  test("the stop rule stops guide and load until the builder has looked", async () => {
    await talk.records("ana", { ...heater({ commissioned_on: "2026-11-20" }), fires: [{ lit_at: "2026-11-24T17:00:00Z", load_kg: 2 }] });
    expect((await talk.choose("ana", "first:stop")).text).toMatch(/call the builder/);
    expect((await talk.say("ana", "how much wood in one load?")).numbers.load_kg).toBe(0);
    const refused = await talk.say("ana", "walk me through a fire");
    expect(refused.choices.map(({ id }) => id)).toEqual(["first:builder-ok"]);
    await talk.choose("ana", "first:builder-ok");
    expect((await talk.say("ana", "how much wood in one load?")).numbers.load_kg).toBe(2);
  });
  test("after a summer's rest a quarter; unless it was in use all the while", async () => {
    await talk.records("ana", { ...heater(), fires: [{ lit_at: "2026-04-20T17:00:00Z", load_kg: 18 }] });
    expect((await talk.say("ana", "how much wood in one load?")).numbers.load_kg).toBe(5);
    const begun = await talk.say("ana", "walk me through a fire");
    expect(begun.choices.map(({ id }) => id)).toContain("first:in-use");
    await talk.choose("ana", "first:in-use");
    expect((await talk.say("ana", "how much wood in one load?")).numbers.load_kg).toBeGreaterThan(10);
  });
});
