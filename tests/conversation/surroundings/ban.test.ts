/** Burn bans and no-burn days: read, kept, obeyed by guide and loads, lifted; for a group only by a moderator of it. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { loadTimes } from "../../../src/conversation/reading/times.ts";
import { readBan } from "../../../src/conversation/reading/read-ban.ts";
import { openTalk, type Talk } from "../../support/talk.ts";

const NOW = "2026-11-25T18:00:00Z"; // a Wednesday
const HEATER = { heater: { max_load_kg: 15, max_load_source: "sheet", gas_exit: "top", shut_off_damper: true } };

describe("what is said of a ban", () => {
  const at = Date.parse(NOW);
  const read = (words: string) => {
    const ban = readBan(words, at, "Europe/Helsinki", "en-GB");
    return ban?.say === "set" ? `${new Date(ban.from_ms).toISOString()} ${new Date(ban.to_ms).toISOString()}` : (ban?.say ?? null);
  };
  test.each([
    // "until Friday" counts Friday, the stricter reading; Helsinki is two hours ahead of UTC
    ["no burning until Friday", "2026-11-25T18:00:00.000Z 2026-11-27T22:00:00.000Z"],
    ["No fires till friday 18:00 please", "2026-11-25T18:00:00.000Z 2026-11-27T16:00:00.000Z"],
    ["burn ban today", "2026-11-25T18:00:00.000Z 2026-11-25T22:00:00.000Z"],
    ["tomorrow is a no-burn day", "2026-11-25T22:00:00.000Z 2026-11-26T22:00:00.000Z"],
    ["burning is banned for 3 days", "2026-11-25T18:00:00.000Z 2026-11-27T22:00:00.000Z"],
    ["fire ban this weekend", "2026-11-27T22:00:00.000Z 2026-11-29T22:00:00.000Z"],
    ["no burning from Thursday to Saturday", "2026-11-25T22:00:00.000Z 2026-11-28T22:00:00.000Z"],
    ["there's a burn ban", "until-when"],
    ["is there a burn ban?", "ask"],
    ["there is no burn ban today", "ask"],
    ["burn ban is over", "lift"],
    ["we can burn again", "lift"],
    ["the ban has been lifted", "lift"],
    ["no burning embers left, all black", null],
    ["there is no burning smell", null],
    ["it stopped burning", null],
    ["no fire in the house yet", null],
  ])("%s", async (words, expected) => {
    await loadTimes();
    expect(read(words)).toBe(expected);
  });
  test("a wall of text costs no time", () => {
    const started = performance.now();
    readBan("no burning until ".repeat(5000), at, "UTC");
    expect(performance.now() - started).toBeLessThan(50);
  });
});

describe("a ban obeyed", () => {
  let talk: Talk;
  beforeEach(async () => {
    talk = await openTalk({ now: NOW });
    await talk.records("ana", HEATER);
  });
  afterEach(() => talk.close());

  test("by the guide and the load, until it ends by itself", async () => {
    const before = await talk.say("ana", "how much wood in one load?");
    expect(before.numbers.load_kg).toBeGreaterThan(0);
    expect((await talk.say("ana", "no burning until Friday")).headline).toMatch(/No fire until the end of Fri/);
    expect((await talk.say("ana", "how much wood in one load?")).numbers.load_kg).toBe(0);
    const refused = await talk.say("ana", "walk me through a fire");
    expect(refused.headline).toMatch(/burn ban/);
    expect(refused.choices).toEqual([]);
    await talk.advance("P3D");
    expect((await talk.say("ana", "walk me through a fire")).choices.map(({ id }) => id)).toContain("guide:lit-now");
  });
  test("a no-burn day to come leaves tonight alone", async () => {
    await talk.say("ana", "no burn day tomorrow");
    expect((await talk.say("ana", "how much wood in one load?")).numbers.load_kg).toBeGreaterThan(0);
    await talk.advance("PT12H");
    expect((await talk.say("ana", "how much wood in one load?")).numbers.load_kg).toBe(0);
  });
  test("is lifted, taken back, asked about", async () => {
    await talk.say("ana", "burn ban until 3 December");
    expect((await talk.say("ana", "is there a burn ban?")).text).toMatch(/3 Dec/);
    await talk.say("ana", "undo");
    expect((await talk.say("ana", "is there a burn ban?")).headline).toMatch(/No burn ban/);
    await talk.say("ana", "burn ban");
    await talk.choose("ana", "ban:week");
    expect((await talk.choose("ana", "ban:lift")).headline).toMatch(/lifted/);
    expect((await talk.say("ana", "how much wood in one load?")).numbers.load_kg).toBeGreaterThan(0);
  });
  test("said in the midst of a fire it stops no fire that burns, and says so", async () => {
    await talk.say("ana", "walk me through a fire");
    await talk.choose("ana", "guide:lit-now");
    const ban = await talk.say("ana", "no burning until Friday");
    expect(ban.text).toMatch(/Do not smother it/);
    expect(ban.cautions.map(({ id }) => id)).toContain("close-flue");
  });
});

describe("a group's ban", () => {
  let talk: Talk;
  beforeEach(async () => {
    talk = await openTalk({ now: NOW });
    for (const person of ["ana", "ben", "mod"]) await talk.records(person, HEATER);
    for (const person of ["ana", "mod"]) await talk.say(person, "help", "valley");
  });
  afterEach(() => talk.close());
  const load = async (person: string) => (await talk.say(person, "how much wood in one load?")).numbers.load_kg ?? 0;

  test("set by a moderator holds for who talks there, and for nobody else", async () => {
    const set = await talk.say("mod", "no burning until Friday", "valley", { moderates: true });
    expect(set.audience).toBe("room");
    expect([await load("ana"), await load("mod"), await load("ben")]).toEqual([0, 0, expect.any(Number)]);
    expect(await load("ben")).toBeGreaterThan(0);
    expect((await talk.say("ana", "the ban is over")).text).toMatch(/moderator/);
    expect(await load("ana")).toBe(0);
    await talk.say("mod", "the ban is over", "valley", { moderates: true });
    expect(await load("ana")).toBeGreaterThan(0);
  });
  test("said there by somebody else it is their own only", async () => {
    const set = await talk.say("ana", "no burning until Friday", "valley");
    expect(set.text).toMatch(/Only a moderator/);
    expect(await load("ana")).toBe(0);
    expect(await load("mod")).toBeGreaterThan(0);
  });
  test("cannot be made for ever", async () => {
    await talk.say("mod", "no burning until 1 June 2027", "valley", { moderates: true });
    await talk.advance("P32D");
    expect(await load("ana")).toBeGreaterThan(0);
  });
});
