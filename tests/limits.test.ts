/** The one gate for every kilogram: minimum and AND only, whoever says what. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { limits, roomFor } from "../src/limits.ts";
import type { HeaterRule } from "../src/records/types.ts";

const rule = fc.record(
  { from: fc.constantFrom("builder" as const, "law" as const, "group" as const), said_by: fc.constant("x"), said_at_ms: fc.constant(0), max_load_kg: fc.double({ min: 1, max: 60, noNaN: true }), min_load_kg: fc.double({ min: 0, max: 60, noNaN: true }), max_day_kg: fc.double({ min: 1, max: 120, noNaN: true }), spacing_h: fc.double({ min: 0, max: 48, noNaN: true }) },
  { requiredKeys: ["from", "said_by", "said_at_ms"] },
) as fc.Arbitrary<HeaterRule>;
const heater = fc.record(
  { max_load_kg: fc.double({ min: 1, max: 60, noNaN: true }), max_load_source: fc.constantFrom("sheet" as const, "plate" as const, "reckoned" as const, "guess" as const), min_load_kg: fc.double({ min: 1, max: 40, noNaN: true }), max_day_kg: fc.double({ min: 1, max: 120, noNaN: true }), masonry_kg: fc.double({ min: 500, max: 6000, noNaN: true }), nominal_output_kW: fc.double({ min: 1, max: 10, noNaN: true }), nominal_heating_time_h: fc.double({ min: 8, max: 24, noNaN: true }) },
  { requiredKeys: [] },
);

describe("limits", () => {
  it("reckons the load of EN 15544 from output and heating time (4 kW, 12 h: 14.77 kg; clause 4.2.1, from memory)", () => {
    const known = limits({ nominal_output_kW: 4, nominal_heating_time_h: 12 });
    expect(known.max_load_kg).toBeCloseTo(14.769, 3);
    expect(known.min_load_kg).toBeCloseTo(7.385, 3);
    expect(known.max_source).toBe("reckoned");
    expect(known.spacing_h).toBe(12);
    expect(known.max_day_kg).toBeCloseTo(2 * 14.769, 2);
  });

  it("guesses half a kilogram per 100 kg of masonry and says that it is a guess (common practice, no source)", () => {
    expect(limits({ masonry_kg: 1800 })).toMatchObject({ max_load_kg: 9, max_source: "guess", guessed: true });
    expect(limits({ masonry_kg: 1800, max_load_kg: 15, max_load_source: "guess" }).max_load_kg).toBe(9);
    expect(limits({ masonry_kg: 1800, max_load_kg: 15, max_load_source: "sheet" }).max_load_kg).toBe(15);
    expect(limits({}).max_load_kg).toBeNull();
  });

  it("no rule ever raises what is allowed, and none shortens the spacing", () => {
    fc.assert(
      fc.property(heater, fc.array(rule, { maxLength: 4 }), rule, (facts, rules, more) => {
        const before = limits(facts, rules);
        const after = limits(facts, [...rules, more]);
        for (const key of ["max_load_kg", "max_day_kg"] as const) {
          if (before[key] !== null) expect(after[key] as number).toBeLessThanOrEqual(before[key] as number);
        }
        expect(after.spacing_h).toBeGreaterThanOrEqual(before.spacing_h);
        if (after.max_load_kg !== null) expect(after.min_load_kg as number).toBeLessThanOrEqual(after.max_load_kg);
      }),
    );
  });

  it("what is left today never exceeds the day or the load, and nothing inside the spacing", () => {
    const fire = fc.record({ ago_h: fc.double({ min: 0, max: 40, noNaN: true }), load_kg: fc.double({ min: 1, max: 40, noNaN: true }) });
    fc.assert(
      fc.property(heater, fc.array(fire, { maxLength: 4 }), (facts, burnt) => {
        const now_ms = 1_800_000_000_000;
        const known = limits(facts);
        const fires = burnt.map(({ ago_h, load_kg }) => ({ lit_at_ms: now_ms - ago_h * 3_600_000, facts: { lit_at: "", load_kg } }));
        const room = roomFor(known, fires, now_ms);
        if (burnt.some(({ ago_h }) => ago_h < known.spacing_h && ago_h < 24)) expect(room.next_load_kg).toBe(0);
        if (known.max_load_kg !== null && room.next_load_kg !== null) {
          expect(room.next_load_kg).toBeLessThanOrEqual(known.max_load_kg + 1e-9);
          if (room.next_load_kg > 0 && known.max_day_kg !== null) expect(room.burnt_24h_kg + room.next_load_kg).toBeLessThanOrEqual(known.max_day_kg + 1e-9);
        }
      }),
    );
  });

  it("a burn ban lets no fire be lit", () => {
    const ban: HeaterRule = { from: "law", said_by: "the town", said_at_ms: 0, no_fire: { from: "2026-11-25T00:00:00Z", to: "2026-11-27T00:00:00Z" } };
    const room = roomFor(limits({ max_load_kg: 10, max_load_source: "sheet" }), [], Date.parse("2026-11-25T18:00:00Z"), [ban]);
    expect(room).toMatchObject({ next_load_kg: 0, because: "ban", not_before_ms: Date.parse("2026-11-27T00:00:00Z") });
  });
});
