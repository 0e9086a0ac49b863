/**
 * No sequence of rules, by builder, group or law, in any order, spoken or from a file, loosens anything: no load that `limits()` allows
 * grows, no spacing shrinks, no fire is let in earlier, and the gates of closing down read nothing of any rule.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readRulesFile } from "../../src/builder/file.ts";
import { tighten, withdrawn, type RuleGiven } from "../../src/builder/rules.ts";
import { limits, roomFor, type Limits } from "../../src/limits.ts";
import type { HeaterFacts } from "../../src/records/schemas.ts";
import type { Heater, HeaterRule } from "../../src/records/types.ts";

const NOW = Date.parse("2026-11-25T18:00:00Z");
const HOUR = 3_600_000;
const kg = fc.double({ min: 0.5, max: 60, noNaN: true }).map((value) => Math.round(value * 10) / 10);
const maybe = <T>(one: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(one, { nil: undefined });
const defined = <T extends object>(one: T): T => Object.fromEntries(Object.entries(one).filter(([, value]) => value !== undefined)) as T;

const facts: fc.Arbitrary<HeaterFacts> = fc
  .record({
    kind: maybe(fc.constantFrom("bell" as const, "contraflow" as const)), max_load_kg: maybe(kg), max_load_source: maybe(fc.constantFrom("sheet" as const, "plate" as const, "guess" as const)),
    min_load_kg: maybe(kg), max_day_kg: maybe(kg), masonry_kg: maybe(fc.integer({ min: 300, max: 6000 })), nominal_heating_time_h: maybe(fc.integer({ min: 4, max: 30 })), nominal_output_kW: maybe(fc.integer({ min: 1, max: 9 })),
  })
  .map(defined)
  // as records keep it: no smallest load above the largest
  .map((one) => (one.min_load_kg !== undefined && one.max_load_kg !== undefined && one.min_load_kg > one.max_load_kg ? { ...one, min_load_kg: one.max_load_kg } : one));
const given: fc.Arbitrary<RuleGiven> = fc
  .record({
    kind: maybe(fc.constantFrom("bell" as const, "contraflow" as const)), max_load_kg: maybe(kg), min_load_kg: maybe(kg), max_day_kg: maybe(kg), spacing_h: maybe(fc.integer({ min: 1, max: 72 })),
    lighting: maybe(fc.constantFrom("top" as const, "bottom" as const)), words: maybe(fc.string({ minLength: 2, maxLength: 60 })), close_down: maybe(fc.string({ minLength: 2, maxLength: 60 })),
  })
  .map((one) => defined(one) as RuleGiven);
const ban: fc.Arbitrary<HeaterRule> = fc
  .record({ from: fc.constantFrom("group" as const, "law" as const), start: fc.integer({ min: -48, max: 48 }), hours: fc.integer({ min: 1, max: 96 }) })
  .map(({ from, start, hours }) => ({ from, said_by: "mod", said_at_ms: NOW, no_fire: { from: new Date(NOW + start * HOUR).toISOString(), to: new Date(NOW + (start + hours) * HOUR).toISOString() } }));
const groupRule: fc.Arbitrary<HeaterRule> = fc
  .record({ max_load_kg: maybe(kg), min_load_kg: maybe(kg), max_day_kg: maybe(kg), spacing_h: maybe(fc.integer({ min: 1, max: 72 })) })
  .map((one) => ({ from: "group" as const, said_by: "mod", said_at_ms: NOW, ...defined(one) }) as HeaterRule);
const fires = fc.array(fc.record({ ago_h: fc.integer({ min: 0, max: 40 }), load_kg: maybe(kg) }), { maxLength: 5 }).map((list) =>
  list.map(({ ago_h, load_kg }) => ({ lit_at_ms: NOW - ago_h * HOUR, facts: { lit_at: new Date(NOW - ago_h * HOUR).toISOString(), ...(load_kg === undefined ? {} : { load_kg }) } })));

type Step = { readonly do: "builder" | "owner"; readonly given: RuleGiven; readonly file: boolean } | { readonly do: "group"; readonly rule: HeaterRule } | { readonly do: "withdraw" };
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 6, arbitrary: fc.record({ do: fc.constantFrom("builder" as const, "owner" as const), given, file: fc.boolean() }) },
  { weight: 2, arbitrary: fc.oneof(ban, groupRule).map((rule) => ({ do: "group" as const, rule })) },
  { weight: 1, arbitrary: fc.constant({ do: "withdraw" as const }) },
);

const most = (value: number | null): number => value ?? Number.POSITIVE_INFINITY;
function noLooser(now: Limits, before: Limits): void {
  expect(most(now.max_load_kg)).toBeLessThanOrEqual(most(before.max_load_kg));
  expect(most(now.max_day_kg)).toBeLessThanOrEqual(most(before.max_day_kg));
  expect(now.spacing_h).toBeGreaterThanOrEqual(before.spacing_h);
}
/** The smallest load may give way to a smaller largest one, and to nothing else. */
function minimumHolds(now: Limits, before: Limits): void {
  if (before.min_load_kg !== null && before.own_day !== null) expect(now.min_load_kg).toBeGreaterThanOrEqual(Math.min(before.min_load_kg, most(now.max_load_kg)));
}

const fileOf = (rule: RuleGiven): string => `rules:\n  - ${Object.entries(rule).map(([key, value]) => `${key}: ${JSON.stringify(value)}`).join("\n    ")}\n`;

function taken(heater: Heater, { given: rule, file, do: who }: Extract<Step, { given: RuleGiven }>): Heater {
  const by = { person_id: who, at_ms: NOW };
  if (!file) return tighten(heater, rule, by).heater;
  return readRulesFile(fileOf(rule)).rules.reduce((now, one) => tighten(now, one.given, by).heater, heater);
}

describe("rules only ever tighten", () => {
  it("builder's and group's rules, in any order", () => {
    fc.assert(
      fc.property(facts, fc.array(step, { maxLength: 12 }), fires, (own, steps, burnt) => {
        let heater: Heater = { id: "h", owner_id: "owner", member_ids: ["owner"], facts: own, upkeep: {}, rules: [] };
        let group: HeaterRule[] = [];
        const bare = limits(own, []);
        const bareRoom = roomFor(bare, burnt, NOW);
        let before = bare;
        for (const one of steps) {
          if (one.do === "group") group = [...group, one.rule];
          else if (one.do === "withdraw") heater = withdrawn(heater, null);
          else heater = taken(heater, one);
          const rules = [...heater.rules, ...group];
          const now = limits(heater.facts, rules);
          expect(heater.facts).toBe(own);
          noLooser(now, bare);
          minimumHolds(now, bare);
          if (one.do !== "withdraw") noLooser(now, before);
          const room = roomFor(now, burnt, NOW, rules);
          expect(most(room.next_load_kg)).toBeLessThanOrEqual(most(bareRoom.next_load_kg));
          expect(room.not_before_ms ?? NOW).toBeGreaterThanOrEqual(bareRoom.not_before_ms ?? NOW);
          before = now;
        }
      }),
      { numRuns: 2000, seed: 20261125 },
    );
  });

  it("the order in which they were said makes no difference to what holds", () => {
    fc.assert(
      fc.property(facts, fc.array(fc.oneof(groupRule, ban), { maxLength: 6 }), (own, rules) => {
        const { max_source: _, ...forth } = limits(own, rules);
        const { max_source: __, ...back } = limits(own, rules.toReversed());
        expect(back).toEqual(forth);
        expect(roomFor(limits(own, rules.toReversed()), [], NOW, rules.toReversed())).toEqual(roomFor(limits(own, rules), [], NOW, rules));
      }),
      { numRuns: 500, seed: 20261125 },
    );
  });

  it("a ban that ends early shortens no spacing, and a second ban is not hidden by the first", () => {
    const known = limits({ max_load_kg: 12, max_load_source: "sheet" });
    const lit = [{ lit_at_ms: NOW - 2 * HOUR, facts: { lit_at: new Date(NOW - 2 * HOUR).toISOString(), load_kg: 10 } }];
    const until = (hours: number): HeaterRule => ({ from: "law", said_by: "x", said_at_ms: NOW, no_fire: { from: new Date(NOW - HOUR).toISOString(), to: new Date(NOW + hours * HOUR).toISOString() } });
    expect(roomFor(known, lit, NOW, [until(1)]).not_before_ms).toBe(NOW + 10 * HOUR);
    expect(roomFor(known, [], NOW, [until(1), until(30)]).not_before_ms).toBe(NOW + 30 * HOUR);
  });

  it("fires without a weight count as the heater's own full load: smaller loads make no room for one more", () => {
    const own: HeaterFacts = { max_load_kg: 16, max_load_source: "sheet", max_day_kg: 24 };
    const unweighed = [{ lit_at_ms: NOW - 13 * HOUR, facts: { lit_at: new Date(NOW - 13 * HOUR).toISOString() } }];
    const ruled = limits(own, [{ from: "builder", said_by: "b", said_at_ms: NOW, max_load_kg: 12 }]);
    expect(roomFor(limits(own), unweighed, NOW).next_load_kg).toBe(8);
    expect(roomFor(ruled, unweighed, NOW).next_load_kg).toBeLessThanOrEqual(8);
  });
});
