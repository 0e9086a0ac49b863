/** Nothing that a group sets or does widens anything: loads, spacing, cautions and the gates of closing down stay, or get stricter. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { limits, roomFor } from "../../../src/limits.ts";
import type { HeaterRule } from "../../../src/records/types.ts";
import { openTalk, type Talk } from "../../support/talk.ts";

const HOUR_MS = 3_600_000;
const NOW_MS = Date.parse("2026-11-25T18:00:00Z");

const groupRule: fc.Arbitrary<HeaterRule> = fc
  .record({ from_h: fc.integer({ min: -200, max: 200 }), for_h: fc.integer({ min: 0, max: 800 }), max_load_kg: fc.option(fc.double({ min: 0.5, max: 80, noNaN: true })), min_load_kg: fc.option(fc.double({ min: 0, max: 80, noNaN: true })), max_day_kg: fc.option(fc.double({ min: 0.5, max: 200, noNaN: true })), spacing_h: fc.option(fc.double({ min: 0, max: 60, noNaN: true })) })
  .map(({ from_h, for_h, ...figures }) => ({
    from: "group" as const, said_by: "a moderator", said_at_ms: NOW_MS,
    no_fire: { from: new Date(NOW_MS + from_h * HOUR_MS).toISOString(), to: new Date(NOW_MS + (from_h + for_h) * HOUR_MS).toISOString() },
    ...Object.fromEntries(Object.entries(figures).filter(([, value]) => value !== null)),
  }));
const heater = fc.record({ max_load_kg: fc.double({ min: 2, max: 40, noNaN: true }), masonry_kg: fc.double({ min: 500, max: 5000, noNaN: true }), nominal_heating_time_h: fc.double({ min: 8, max: 24, noNaN: true }), min_load_kg: fc.double({ min: 1, max: 20, noNaN: true }) }, { requiredKeys: [] });
const fires = fc.array(fc.record({ ago_h: fc.double({ min: 0, max: 30, noNaN: true }), load_kg: fc.option(fc.double({ min: 1, max: 20, noNaN: true }), { nil: undefined }) }), { maxLength: 3 });

test("no sequence of group rules raises a load, a day or what is left of it, or lets the next fire come sooner", () => {
  fc.assert(
    fc.property(heater, fires, fc.array(groupRule, { maxLength: 6 }), (facts, burnt, rules) => {
      const log = burnt.map(({ ago_h, load_kg }) => ({ lit_at_ms: NOW_MS - ago_h * HOUR_MS, facts: { lit_at: "", ...(load_kg === undefined ? {} : { load_kg }) } }));
      let [before, room] = [limits(facts), roomFor(limits(facts), log, NOW_MS)];
      for (let n = 1; n <= rules.length; n++) {
        const given = rules.slice(0, n);
        const after = limits(facts, given);
        const left = roomFor(after, log, NOW_MS, given);
        for (const key of ["max_load_kg", "max_day_kg"] as const) if (before[key] !== null) expect(after[key] ?? 0).toBeLessThanOrEqual((before[key] ?? 0) + 1e-9);
        expect(after.spacing_h).toBeGreaterThanOrEqual(before.spacing_h);
        if (room.next_load_kg !== null) expect(left.next_load_kg ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(room.next_load_kg + 1e-9);
        if (room.not_before_ms !== null) expect(left.not_before_ms ?? 0).toBeGreaterThanOrEqual(room.not_before_ms);
        [before, room] = [after, left];
      }
    }),
    { numRuns: 400, seed: 11 },
  );
});

/** What can be said in a group's room that sets something, or tries to. */
const SAID = [
  "no burning until Friday", "burn ban today", "the ban is over", "we can burn again", "burning is banned for 3 days", "sweep day on 5 December", "cancel the sweep day",
  "alarm test day on 6 December", "open a joint wood order", "close the joint order", "group digest on Sunday at 18:00", "no group digest", "link another place", "share this with the group",
  "in this group everybody may burn 40 kg", "our group says the damper may be shut on red embers", "the group's rule: two hours between fires are enough", "our builder says 30 kg is fine for all",
  "i have the meter", "join the group's winter", "no cautions in this group please",
];
const OWNER = { heater: { max_load_kg: 14, max_load_source: "sheet", gas_exit: "top", shut_off_damper: true }, house: { heat_loss_W_per_K: 200, wanted_C: 21 }, weather: { low_C: -8, high_C: -2 } };

interface Seen {
  readonly load_kg: number;
  readonly cautions: ReadonlyMap<string, string>;
  readonly closing: string;
  readonly again_kg: number;
}

async function look(talk: Talk): Promise<Seen> {
  const load = await talk.say("ben", "how much wood in one load tonight?");
  const glow = await talk.say("ben", "there are still red embers, can I close the damper?");
  const more = await talk.say("ben", "can I add more wood during the fire?");
  await talk.records("ben", { fires: [{ lit_at: new Date(talk.now() - HOUR_MS).toISOString(), load_kg: 10 }] });
  const again = await talk.say("ben", "how much wood in one load now?");
  return {
    load_kg: load.numbers.load_kg ?? 0,
    again_kg: again.numbers.load_kg ?? 0,
    cautions: new Map([load, glow, more].flatMap(({ topic, cautions }) => cautions.map(({ id, text }) => [`${topic}/${id}`, text] as const))),
    closing: glow.headline,
  };
}

async function after(words: readonly { said: string; moderates: boolean }[], linked: boolean): Promise<Seen> {
  const talk = await openTalk({ networks: ["second"] });
  try {
    await talk.records("ben", OWNER);
    await talk.say("ben", "hello", "valley");
    if (linked) {
      const code = /\b[A-Z\d]{4}-[A-Z\d]{4}\b/.exec((await talk.say("ana", "link another place", "valley", { moderates: true })).headline)?.[0];
      await talk.say("eve", `link ${code}`, "hill", { network: "second", moderates: true });
    }
    for (const { said, moderates } of words) await talk.say("eve", said, linked ? "hill" : "valley", { ...(linked ? { network: "second" } : {}), moderates });
    await talk.advance("PT0S");
    return await look(talk);
  } finally {
    await talk.close();
  }
}

test("said in the group's room, by whoever, in any order: loads, cautions, spacing and the damper's gates stand", { timeout: 60_000 }, async () => {
  const control = await after([], false);
  expect(control.load_kg).toBeGreaterThan(0);
  expect(control.again_kg).toBe(0);
  expect(control.closing).toMatch(/leave|open|no\b|not/i);
  const sequences = fc.sample(fc.tuple(fc.array(fc.record({ said: fc.constantFrom(...SAID), moderates: fc.boolean() }), { minLength: 2, maxLength: 6 }), fc.boolean()), { numRuns: 10, seed: 5 });
  for (const [words, linked] of sequences) {
    const told = words.map(({ said }) => said).join(" / ");
    const seen = await after(words, linked);
    expect(seen.load_kg, told).toBeLessThanOrEqual(control.load_kg);
    expect(seen.again_kg, told).toBe(0);
    expect(seen.closing, told).toBe(control.closing);
    for (const [id, text] of control.cautions) expect(seen.cautions.get(id), `${told}: ${id}`).toBe(text);
  }
});
