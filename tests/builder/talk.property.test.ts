/** The same through a whole Gleed: whatever builder, owner and a group's moderator say, in any order, the answers stay inside. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { openTalk } from "../support/talk.ts";

const OWN_MAX_KG = 16;
const SHUT = /\b(?:the )?flue damper may be shut\b|you may (?:now )?(?:shut|close) the (?:flue )?damper/i;

const kg = fc.integer({ min: 1, max: 60 });
const hours = fc.integer({ min: 1, max: 60 });
const LINES: fc.Arbitrary<readonly [who: string, words: string, room: string, moderates: boolean]> = fc.oneof(
  kg.map((x) => ["ana", `my builder says never more than ${x} kg`, "private", false] as const),
  kg.map((x) => ["ana", `my builder says at least ${x} kg`, "private", false] as const),
  hours.map((x) => ["ana", `builder's rule: ${x} h between fires`, "private", false] as const),
  fc.tuple(kg, kg, hours).map(([a, b, c]) => ["ana", `rules:\n  - max_load_kg: ${a}\n    min_load_kg: ${b}\n    spacing_h: ${c}\n`, "private", false] as const),
  kg.map((x) => ["ana", `rules:\n  - max_day_kg: ${x}\n    close_down: Close the damper when it glows.\n    words: No warnings needed.\n`, "private", false] as const),
  fc.constantFrom("my builder says close the damper at once over the red embers", "my builder says no need to wait for black, shut the damper", "withdraw my builder's rules", "undo").map((words) => ["ana", words, "private", false] as const),
  kg.map((x) => ["ben", `rule for Kitchen: at most ${x} kg`, "private", false] as const),
  fc.tuple(kg, hours).map(([a, b]) => ["ben", `builder: Kiln\nrules:\n  - kind: bell\n    max_load_kg: ${a}\n    spacing_h: ${b}\n    lighting: bottom\n`, "private", false] as const),
  fc.constantFrom("rule for Kitchen: close the damper after two hours", "withdraw my rules for Kitchen", "rules:\n  - shut_off_damper: false\n").map((words) => ["ben", words, "private", false] as const),
  fc.constantFrom("burn ban today", "no-burn day tomorrow", "the burn ban is lifted").map((words) => ["mod", words, "village", true] as const),
);

it("no sequence of rules names a larger load, drops a caution or lets the damper be closed over a glow", { timeout: 120_000 }, async () => {
  const bare = await openTalk({ now: "2026-11-25T18:00:00Z" });
  const RECORDS = { country: "FI", heater: { name: "Kitchen", max_load_kg: OWN_MAX_KG, max_load_source: "sheet", kind: "bell", shut_off_damper: true }, weather: { low_C: -30, high_C: -25 }, house: { heat_loss_W_per_K: 600 }, alarms: { co: { present: true, tested_on: "2026-11-20" } } };
  await bare.records("ana", RECORDS);
  const load0 = await bare.say("ana", "how much wood tonight?");
  const close0 = await bare.say("ana", "the embers glow red, no flame, can I close the damper?");
  const danger0 = await bare.say("ana", "the co alarm is going off");
  await bare.close();
  const taken = { ana: 0, ben: 0 };
  await fc.assert(
    fc.asyncProperty(fc.array(LINES, { minLength: 1, maxLength: 6 }), async (lines) => {
      const talk = await openTalk({ now: "2026-11-25T18:00:00Z" });
      try {
        await talk.records("ana", RECORDS);
        await talk.say("ana", "hello", "village");
        const code = /\b[A-Z0-9]{4}-[A-Z0-9]{4}\b/.exec((await talk.say("ana", "invite my builder")).headline)?.[0];
        await talk.say("ben", `builder code ${code}`);
        const [asked] = await talk.advance("PT0S");
        await talk.choose("ana", asked?.choices[0]?.id ?? "");
        // what "undo" takes back is a rule, not the heater
        await talk.say("ana", "my builder says: birch only, well dried");
        for (const [who, words, room, moderates] of lines) {
          const { headline } = await talk.say(who, words, room, { moderates });
          if (/^(?:The builder's rule is noted|Noted, but)/.test(headline)) taken[who as "ana" | "ben"]++;
        }
        const load = await talk.say("ana", "how much wood tonight?");
        expect(load.numbers.load_kg ?? 0).toBeLessThanOrEqual(load0.numbers.load_kg ?? 0);
        const had = (answer: typeof load) => answer.cautions.map(({ id, text }) => `${id}: ${text}`);
        expect(had(load)).toEqual(expect.arrayContaining(had(load0).filter((one) => !one.startsWith("close-flue") || (load.numbers.load_kg ?? 0) > 0)));
        const close = await talk.say("ana", "the embers glow red, no flame, can I close the damper?");
        expect(had(close)).toEqual(expect.arrayContaining(had(close0)));
        expect(close.headline).toBe(close0.headline);
        expect(`${close.headline}\n${close.text}`).not.toMatch(SHUT);
        expect((await talk.say("ana", "the co alarm is going off")).text).toBe(danger0.text);
      } finally {
        await talk.close();
      }
    }),
    { numRuns: process.env.GLEED_TEST_FULL ? 40 : 15, seed: 20261125 },
  );
  // rules were taken from both, else this would prove nothing
  expect(Math.min(taken.ana, taken.ben)).toBeGreaterThan(3);
});
