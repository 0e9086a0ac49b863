/**
 * What the records answer by themselves. Each fact has the id that a tree's sign names under `record`, a value in the sign's unit,
 * and what a sentence may quote. A fact that is not on record, or too old to speak, is null.
 */
import type { Arg } from "../answer.ts";
import { limits } from "../limits.ts";
import { q } from "../quantities.ts";
import type { Fire, Heater, Home, Snapshot } from "../records/types.ts";
import type { Trouble } from "../knowledge/schemas.ts";
import { holds, type Observation } from "./walk.ts";

export interface Fact {
  readonly value: number | string;
  readonly args: Readonly<Record<string, Arg>>;
  /** when it was true, for freshness; absent for what does not age */
  readonly at_ms?: number;
}

interface Known {
  readonly heater: Heater["facts"];
  readonly upkeep: Heater["upkeep"];
  readonly home: Home;
  readonly fire: Fire | null;
  readonly fires: readonly Fire[];
  readonly totals: Snapshot["totals"];
  readonly max_load_kg: number | null;
  readonly max_day_kg: number | null;
  readonly now_ms: number;
}

const MIN = 60_000;
const HOUR = 60 * MIN;
const DAY = 24 * HOUR;
const MONTH = 30.44 * DAY;

const minutesBetween = (from: string | number | undefined, to: string | undefined): number | null => {
  if (from === undefined || to === undefined) return null;
  const minutes = (Date.parse(to) - (typeof from === "number" ? from : Date.parse(from))) / MIN;
  return Number.isFinite(minutes) ? minutes : null;
};
const figure = (value: number | null | undefined, args: Record<string, Arg>, at_ms?: number): Fact | null =>
  value === null || value === undefined || !Number.isFinite(value) ? null : { value, args, ...(at_ms === undefined ? {} : { at_ms }) };
const word = (value: string | undefined, at_ms?: number): Fact | null =>
  value === undefined || value === "unknown" ? null : { value, args: { value }, ...(at_ms === undefined ? {} : { at_ms }) };
const yesNo = (value: boolean | undefined): Fact | null => (value === undefined ? null : { value: value ? "yes" : "no", args: {} });
const since = (date: string | undefined, now_ms: number, unit: number): number | null => (date === undefined ? null : (now_ms - Date.parse(date)) / unit);
const day = (date: string): Arg => ({ at_ms: Date.parse(date), show: "day" });

/** A fire lit later than this after another is the next day's, though the hour was a little earlier than yesterday. */
const SAME_DAY_MS = 20 * HOUR;

function burnt(known: Known): number | null {
  const last = known.fire;
  if (!last) return null;
  const of24 = known.fires.filter((fire) => fire.lit_at_ms <= last.lit_at_ms && fire.lit_at_ms > last.lit_at_ms - SAME_DAY_MS);
  return of24.reduce((sum, fire) => sum + (fire.facts.load_kg ?? 0), 0);
}

function previousGap_h(known: Known): number | null {
  const last = known.fire;
  const before = last && known.fires.find((fire) => fire.lit_at_ms < last.lit_at_ms);
  return before && last ? (last.lit_at_ms - before.lit_at_ms) / HOUR : null;
}

/** A fire this young is taken to be the one that is talked about while it burns. */
const STILL_BURNING_h = 3;

function restBefore_days(known: Known): number | null {
  if (!known.fire) return null;
  const since_h = (known.now_ms - known.fire.lit_at_ms) / HOUR;
  const rest_h = since_h < STILL_BURNING_h ? previousGap_h(known) : since_h;
  return rest_h === null ? null : rest_h / 24;
}

function firesIn24h(known: Known): number | null {
  const last = known.fire;
  return last ? known.fires.filter((fire) => fire.lit_at_ms <= last.lit_at_ms && fire.lit_at_ms > last.lit_at_ms - SAME_DAY_MS).length : null;
}

function moisture(known: Known): Fact | null {
  const own = known.fire?.facts.moisture_pct_wet;
  if (own !== undefined) return figure(own, { value: q(own, "pct", { digits: 1 }) }, known.fire?.lit_at_ms);
  const piles = known.home.wood.filter((wood) => wood.moisture_pct_wet !== undefined);
  const pile = piles.find((wood) => wood.species === known.fire?.facts.species) ?? piles[0];
  if (pile?.moisture_pct_wet === undefined) return null;
  return figure(pile.moisture_pct_wet, { value: q(pile.moisture_pct_wet, "pct", { digits: 1 }) }, pile.measured_on ? Date.parse(pile.measured_on) : known.now_ms);
}

/** Fact id to how it is read. DEVELOPERS.md lists them; a test keeps the list in step. */
export const FACTS: Readonly<Record<string, { readonly about: string; read(known: Known): Fact | null }>> = {
  "wood-moisture": { about: "moisture of the last fire's wood, else of the woodpile, % wet basis", read: moisture },
  "load": { about: "kilograms of the last fire", read: (k) => figure(k.fire?.facts.load_kg, { value: q(k.fire?.facts.load_kg ?? 0, "kg", { digits: 1 }) }, k.fire?.lit_at_ms) },
  "load-share": {
    about: "last load as percent of the heater's largest",
    read: (k) => {
      const load = k.fire?.facts.load_kg;
      if (load === undefined || !k.max_load_kg) return null;
      return figure((100 * load) / k.max_load_kg, { value: q(load, "kg", { digits: 1 }), max: q(k.max_load_kg, "kg", { digits: 1 }) }, k.fire?.lit_at_ms);
    },
  },
  "day-share": {
    about: "what was burnt in one day (20 hours) as percent of the heater's limit for a day",
    read: (k) => {
      const kg = burnt(k);
      return kg === null || !k.max_day_kg ? null : figure((100 * kg) / k.max_day_kg, { value: q(kg, "kg", { digits: 1 }), max: q(k.max_day_kg, "kg", { digits: 1 }) }, k.fire?.lit_at_ms);
    },
  },
  "hours-between-fires": {
    about: "hours from the fire before to the last one",
    read: (k) => { const h = previousGap_h(k); return figure(h, { value: q(h ?? 0, "h") }, k.fire?.lit_at_ms); },
  },
  "fires-in-24h": {
    about: "fires lit in the 20 hours up to the last one, itself counted: a fire at the same hour next day is not a second one",
    read: (k) => { const n = firesIn24h(k); return figure(n, { value: n ?? 0 }, k.fire?.lit_at_ms); },
  },
  "air-closed-after-flame": {
    about: "minutes from the last flame to the air being closed; negative when it was closed over flame",
    read: (k) => {
      const minutes = minutesBetween(k.fire?.facts.flame_out_at, k.fire?.facts.air_closed_at);
      return figure(minutes, { value: q(Math.abs(minutes ?? 0), "min") }, k.fire?.lit_at_ms);
    },
  },
  "air-closed-after-lighting": {
    about: "minutes from lighting to the air being closed",
    read: (k) => { const m = minutesBetween(k.fire?.lit_at_ms, k.fire?.facts.air_closed_at); return figure(m, { value: q(m ?? 0, "min") }, k.fire?.lit_at_ms); },
  },
  "damper-closed-after-lighting": {
    about: "hours from lighting to the flue damper being closed",
    read: (k) => { const m = minutesBetween(k.fire?.lit_at_ms, k.fire?.facts.damper_closed_at); return figure(m === null ? null : m / 60, { value: q((m ?? 0) / 60, "h") }, k.fire?.lit_at_ms); },
  },
  "flame-minutes": {
    about: "minutes from lighting to the last flame",
    read: (k) => { const m = minutesBetween(k.fire?.lit_at_ms, k.fire?.facts.flame_out_at); return figure(m, { value: q(m ?? 0, "min") }, k.fire?.lit_at_ms); },
  },
  "air": { about: "air during the last fire: open, half, closed", read: (k) => word(k.fire?.facts.air, k.fire?.lit_at_ms) },
  "stack": { about: "how the last load was stacked: criss-cross, loose, tight", read: (k) => word(k.fire?.facts.stack, k.fire?.lit_at_ms) },
  "lit": { about: "where the last load was lit: top, bottom", read: (k) => word(k.fire?.facts.lit, k.fire?.lit_at_ms) },
  "bed-at-close": { about: "what the bed looked like when the damper was closed: flame, blue, red, black", read: (k) => word(k.fire?.facts.damper_closed_at === undefined ? undefined : k.fire.facts.bed_at_close, k.fire?.lit_at_ms) },
  "outside": {
    about: "outside temperature at the last fire, else tonight's low, °C",
    read: (k) => { const C = k.fire?.facts.outside_C ?? k.home.weather[0]?.low_C; return figure(C, { value: q(C ?? 0, "C") }, k.fire?.facts.outside_C === undefined ? k.now_ms : k.fire?.lit_at_ms); },
  },
  "outside-high": { about: "the day's high outdoors by the forecast on record, °C", read: (k) => { const C = k.home.weather[0]?.high_C; return figure(C, { value: q(C ?? 0, "C") }); } },
  "rest-before-fire": {
    about: "days the heater had rested before the fire that burns now, or is about to be lit",
    read: (k) => { const d = restBefore_days(k); return figure(d, { value: q(d ?? 0, "day", { digits: 0 }) }); },
  },
  "days-since-fire": {
    about: "days since the last fire", // of the fire before the one asked about when one burns now
    read: (k) => { const d = k.fire ? (k.now_ms - k.fire.lit_at_ms) / DAY : null; return figure(d, { value: q(d ?? 0, "day") }); },
  },
  "fires-this-season": {
    about: "fires in the last 150 days",
    read: (k) => (k.fires.length === 0 ? null : figure(k.fires.filter((fire) => fire.lit_at_ms > k.now_ms - 150 * DAY).length, { value: k.fires.length })),
  },
  "first-fires": {
    // Few fires on record may only mean that few were written down, so these alone prove nothing.
    about: "no when more than three fires are on record for the last 150 days; yes for the first three of a heater not 60 days old",
    read: (k) => {
      const season = k.fires.filter((fire) => fire.lit_at_ms > k.now_ms - 150 * DAY).length;
      if (season > 3) return yesNo(false);
      const built = since(k.heater.commissioned_on, k.now_ms, DAY);
      return built !== null && built < 60 && season > 0 ? yesNo(true) : null;
    },
  },
  "days-since-built": { about: "days since the heater was taken into use", read: (k) => { const d = since(k.heater.commissioned_on, k.now_ms, DAY); return figure(d, { value: q(d ?? 0, "day") }); } },
  "months-since-sweep": {
    about: "months since the flue was swept",
    read: (k) => { const m = since(k.upkeep.swept_on, k.now_ms, MONTH); return figure(m, { value: Math.round(m ?? 0), date: day(k.upkeep.swept_on ?? "1970-01-01") }); },
  },
  "burnt-since-sweep": { about: "kilograms burnt since the flue was swept", read: (k) => (k.upkeep.swept_on ? figure(k.totals.since_sweep_kg, { value: q(k.totals.since_sweep_kg, "kg", { digits: 0 }) }) : null) },
  "months-since-channels": {
    about: "months since the channels were cleaned",
    read: (k) => { const m = since(k.upkeep.channels_cleaned_on, k.now_ms, MONTH); return figure(m, { value: Math.round(m ?? 0), date: day(k.upkeep.channels_cleaned_on ?? "1970-01-01") }); },
  },
  "gasket-years": { about: "years since the door gasket was changed", read: (k) => { const y = since(k.upkeep.gasket_changed_on, k.now_ms, 12 * MONTH); return figure(y, { value: Math.round(10 * (y ?? 0)) / 10 }); } },
  "months-since-split": {
    about: "months since the wood was split",
    read: (k) => { const m = since(k.home.wood.find((wood) => wood.split_on)?.split_on, k.now_ms, MONTH); return figure(m, { value: Math.round(m ?? 0) }); },
  },
  "co-alarm-past-end": {
    about: "whether the carbon monoxide alarm is past its printed end date",
    read: (k) => { const end = k.home.alarms.co?.ends_on; return end === undefined ? null : yesNo(Date.parse(end) <= k.now_ms); },
  },
  "vented-hood": { about: "a hood that blows outdoors", read: (k) => yesNo(k.home.house.vented_hood) },
  "hood-interlock": { about: "a window contact or pressure switch on the hood", read: (k) => yesNo(k.home.house.hood_interlock) },
  "ventilation": { about: "how the house is ventilated: natural, extract, balanced", read: (k) => word(k.home.house.ventilation) },
  "bypass": { about: "whether the heater has a bypass damper", read: (k) => yesNo(k.heater.bypass_damper) },
  "grate": { about: "whether the firebox has a grate", read: (k) => yesNo(k.heater.grate) },
  "oven": { about: "the oven: black (fire or gases pass through it) or white", read: (k) => (k.heater.oven === "none" ? null : word(k.heater.oven)) },
  "outside-wall-flue": { about: "a flue on an outside wall", read: (k) => yesNo(k.heater.flue_on_outside_wall) },
  "outside-air": { about: "combustion air from outdoors", read: (k) => yesNo(k.heater.outside_air) },
  "floor-area": { about: "heated floor, m²", read: (k) => figure(k.home.house.floor_m2, { value: q(k.home.house.floor_m2 ?? 0, "m2") }) },
  "heat-loss": { about: "the house's heat loss, W/K", read: (k) => figure(k.home.house.heat_loss_W_per_K, { value: q(k.home.house.heat_loss_W_per_K ?? 0, "W/K") }) },
};

/** Everything the records say to the signs of this trouble, about this fire (the latest one when none is given). */
export function fromRecords(trouble: Trouble, snapshot: Snapshot, now_ms: number, fire: Fire | null = snapshot.fires[0] ?? null): Record<string, Observation> {
  const heater = snapshot.heaters[0];
  const known = limits(heater?.facts ?? {}, heater?.rules ?? []);
  const facts: Known = {
    heater: heater?.facts ?? {}, upkeep: heater?.upkeep ?? {}, home: snapshot.home, fire, fires: snapshot.fires, totals: snapshot.totals,
    max_load_kg: known.max_load_kg, max_day_kg: known.max_day_kg, now_ms,
  };
  const found: Record<string, Observation> = {};
  for (const [id, sign] of Object.entries(trouble.signs)) {
    const fact = sign.record ? FACTS[sign.record]?.read(facts) : null;
    if (!fact || holds(sign.when, facts.heater) === false) continue;
    if (fact.at_ms !== undefined && sign.fresh_days !== undefined && now_ms - fact.at_ms > sign.fresh_days * DAY) continue;
    found[id] = { answer: fact.value, from: "record", args: fact.args };
  }
  return found;
}
