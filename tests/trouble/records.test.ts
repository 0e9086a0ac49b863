/** What the records answer in each tree, quoted as a person reads it. */
import { describe, expect, it } from "vitest";
import { loadKnowledge } from "../../src/knowledge/load.ts";
import type { Snapshot } from "../../src/records/types.ts";
import { renderer } from "../../src/text/render.ts";
import { FACTS, fromRecords } from "../../src/trouble/facts.ts";

const knowledge = await loadKnowledge(new URL("../../knowledge", import.meta.url).pathname);
const render = renderer(knowledge.texts);
const READERS = [{ locale: "en-GB", system: "metric", timezone: "UTC" }, { locale: "en-US", system: "us", timezone: "UTC" }] as const;

const HOUR = 3_600_000;
const now_ms = Date.parse("2026-11-25T20:00:00Z");
const iso = (hours: number): string => new Date(now_ms + hours * HOUR).toISOString();
const fire = (id: string, lit_h: number) => ({
  id, heater_id: "h", person_id: "p", lit_at_ms: now_ms + lit_h * HOUR,
  facts: {
    lit_at: iso(lit_h), load_kg: 12, moisture_pct_wet: 17, stack: "tight", lit: "bottom", air: "half", flame_out_at: iso(lit_h + 1.4),
    air_closed_at: iso(lit_h + 1.8), damper_closed_at: iso(lit_h + 4), bed_at_close: "black", outside_C: -8,
  },
});

/** Somebody who has written down everything Gleed has a place for. */
const full = {
  heaters: [{
    id: "h", owner_id: "p", member_ids: ["p"], rules: [],
    facts: {
      kind: "bell", max_load_kg: 15, max_load_source: "sheet", shut_off_damper: true, bypass_damper: true, grate: true, outside_air: true,
      lighting: "top", gas_exit: "top", oven: "black", flue_on_outside_wall: true, commissioned_on: "2026-10-20",
    },
    upkeep: { swept_on: "2025-09-01", channels_cleaned_on: "2024-09-01", gasket_changed_on: "2020-09-01" },
  }],
  home: {
    owner_id: "p", house: { heat_loss_W_per_K: 180, floor_m2: 120, vented_hood: true, hood_interlock: false, ventilation: "extract" },
    wood: [{ species: "birch", moisture_pct_wet: 18, measured_on: "2026-10-01", split_on: "2025-04-01" }],
    alarms: { co: { present: true, tested_on: "2026-11-01", ends_on: "2026-01-01" } },
    weather: [{ date: "2026-11-25", low_C: -8, high_C: -2 }],
  },
  fires: [fire("b", -5), fire("a", -17)],
  totals: { fires: 2, load_kg: 24, since_sweep_kg: 1800, since_sweep_fires: 150 },
} as unknown as Snapshot;

describe.each([...knowledge.troubles.values()].map((trouble) => [trouble.id, trouble] as const))("records in the tree %s", (_, trouble) => {
  const seen = fromRecords(trouble, full, now_ms);

  it("answer every sign that names one and is still fresh", () => {
    const named = Object.entries(trouble.signs).filter(([, sign]) => sign.record !== undefined && (sign.fresh_days ?? 1) >= 1);
    expect(named.filter(([id]) => !(id in seen)).map(([id]) => id)).toEqual([]);
  });

  it("can be quoted in every sentence that quotes them", () => {
    for (const [id, { args }] of Object.entries(seen)) {
      const path = `troubles.${trouble.id}`;
      const sentences = [
        ...(trouble.signs[id]?.says ? [`${path}.signs.${id}.says`] : []),
        ...Object.entries(trouble.causes).flatMap(([cause, { because }]) => (because[id] ? [`${path}.causes.${cause}.because.${id}`] : [])),
      ];
      for (const sentence of sentences) {
        for (const reader of READERS) {
          const words = render({ id: sentence, ...(args ? { args } : {}) }, reader);
          expect(words, sentence).not.toMatch(/[{}]|undefined|NaN|\bobject\b/);
        }
      }
    }
  });

  it("answer with one of the sign's own words", () => {
    for (const [id, { answer }] of Object.entries(seen)) {
      const sign = trouble.signs[id];
      if (sign?.kind === "choice") expect(sign.answers?.map((one) => one.id), id).toContain(answer);
      else if (sign?.kind === "yes-no") expect(["yes", "no"], id).toContain(answer);
      else expect(answer, id).toBeTypeOf("number");
    }
  });
});

describe("the facts added for these trees", () => {
  const read = (id: string, snapshot: Partial<Snapshot> = {}) => {
    const whole = { ...full, ...snapshot } as Snapshot;
    const heater = whole.heaters[0];
    return FACTS[id]?.read({
      heater: heater?.facts ?? {}, upkeep: heater?.upkeep ?? {}, home: whole.home, fire: whole.fires[0] ?? null, fires: whole.fires,
      totals: whole.totals, max_load_kg: 15, max_day_kg: 30, now_ms,
    })?.value;
  };

  it("the rest before a fire is the gap before it while it burns, and the time since it once it is out", () => {
    expect(read("rest-before-fire", { fires: [fire("b", -1), fire("a", -73)] as never })).toBeCloseTo(3, 6);
    expect(read("rest-before-fire", { fires: [fire("a", -72)] as never })).toBeCloseTo(3, 6);
    expect(read("rest-before-fire", { fires: [fire("b", -1)] as never })).toBeUndefined();
  });

  it("counts the fires of one day", () => {
    expect(read("fires-in-24h")).toBe(2);
    expect(read("fires-in-24h", { fires: [fire("b", -5), fire("a", -30)] as never })).toBe(1);
  });

  it("takes few fires on record for no proof of first fires, many for proof against, and a young heater's for first", () => {
    const old = [{ ...full.heaters[0], facts: { commissioned_on: "2019-01-01" } }] as never;
    expect(read("first-fires", { heaters: old })).toBeUndefined();
    expect(read("first-fires", { heaters: old, fires: [-5, -17, -30, -50].map((h) => fire(`${h}`, h)) as never })).toBe("no");
    expect(read("first-fires")).toBe("yes");
  });

  it("knows an alarm past its printed end", () => {
    expect(read("co-alarm-past-end")).toBe("yes");
    expect(read("co-alarm-past-end", { home: { ...full.home, alarms: { co: { ends_on: "2030-01-01" } } } })).toBe("no");
    expect(read("co-alarm-past-end", { home: { ...full.home, alarms: {} } })).toBeUndefined();
  });
});
