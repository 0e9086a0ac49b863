/** "We are away for two weeks": how cold the house gets, and how many days of firing bring it back, inside the heater's limits. */
import { numbers, say, text, type Text } from "../../answer.ts";
import { reckon } from "../../calculators/index.ts";
import { q } from "../../quantities.ts";
import { idleRoom_C, type IdleHouse, warmUp_h } from "../../reckoning/absence.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import type { Hearing } from "../hear.ts";
import { inUnit } from "../reading/figures.ts";
import { assumedLine, outdoors, USUAL_MOISTURE_PCT } from "./around.ts";

const AWAY = /\b(away|absent|absence|holidays?|vacation|gone for|leave the house|(come|coming|get|getting) (back|home)|empty house|nobody (is )?(home|there))\b/i;
/** Pipes in outer walls are colder than the room. Common practice, no source. */
const FROST_ROOM_C = 7;
/** W/m2K and Wh/m2K of an average house of medium weight; EN ISO 13790 table 12 for the second (from memory), the first common practice. */
const USUAL = { loss_W_per_m2K: 1.5, capacity_kWh_per_m2K: 165 / 3600, loss_W_per_K: 150 };

/** Brick holds about 0.88 kJ/kgK; EN 1745 gives 1.0, common practice 0.84 to 0.92. */
const MASONRY_KWH_PER_KG_K = 0.88 / 3600;
/** How far the mean of some weeks may be from tonight's or the month's. Common practice, no source. */
const WEATHER_K = 3;

export interface Absence {
  readonly days: number;
  readonly low_C?: number;
  readonly high_C?: number;
}

export function absenceSaid(context: Context, heard: Hearing): Absence | null {
  if (!AWAY.test(context.text)) return null;
  const days = heard.figures.map((figure) => (figure.dimension === "duration" ? inUnit(figure, "day") : null)).find((value) => value !== null && value >= 1);
  return days ? { days, ...(heard.load.low_C === undefined ? {} : { low_C: heard.load.low_C }), ...(heard.load.high_C === undefined ? {} : { high_C: heard.load.high_C }) } : null;
}

export function absenceOutcome(context: Context, absence: Absence): Outcome {
  const { house, wood } = context.snapshot.home;
  const outside = outdoors(context, absence);
  const wanted_C = house.wanted_C ?? 20;
  const loss = house.heat_loss_W_per_K ?? (house.floor_m2 === undefined ? USUAL.loss_W_per_K : house.floor_m2 * USUAL.loss_W_per_m2K);
  const floor_m2 = house.floor_m2 ?? loss / USUAL.loss_W_per_m2K;
  const masonry_kWh_per_K = (context.heater?.facts.masonry_kg ?? 0) * MASONRY_KWH_PER_KG_K;
  const known: IdleHouse = {
    heat_loss_W_per_K: loss, heat_capacity_kWh_per_K: (house.heat_capacity_kWh_per_K ?? floor_m2 * USUAL.capacity_kWh_per_m2K) + masonry_kWh_per_K,
    other_heat_W: house.other_heat_W ?? 0, outside_C: (outside.low_C + outside.high_C) / 2,
  };
  const off = house.heat_loss_W_per_K !== undefined && house.heat_capacity_kWh_per_K !== undefined ? 1.3 : 1.8;
  const heavy: IdleHouse = { ...known, heat_capacity_kWh_per_K: known.heat_capacity_kWh_per_K * off, outside_C: known.outside_C + WEATHER_K };
  const light: IdleHouse = { ...known, heat_capacity_kWh_per_K: known.heat_capacity_kWh_per_K / off, outside_C: known.outside_C - WEATHER_K };
  const away_h = absence.days * 24;
  const [cold_C, low_C, high_C] = [known, light, heavy].map((one) => idleRoom_C(one, wanted_C, away_h)) as [number, number, number];

  const day_kg = context.limits.max_day_kg;
  const fuel = day_kg === null ? null : reckon("fuel", { load_kg: day_kg, moisture_pct_wet: wood[0]?.moisture_pct_wet ?? USUAL_MOISTURE_PCT, efficiency: 0.8 });
  const heat_W = fuel?.ok ? Number(fuel.result.useful_kWh) / 0.024 + known.other_heat_W : null;
  const [days, soon, late] = heat_W === null ? [null, null, null] : ([[known, cold_C], [light, low_C], [heavy, high_C]] as const).map(([one, from_C]) => backAfter_days(one, from_C, wanted_C - 1, heat_W)) as [number, number, number];
  const assumed: Text[] = [
    ...(house.other_heat_W === undefined ? [text("assumed.no-other-heat")] : []),
    ...(house.heat_loss_W_per_K === undefined ? [text("assumed.house")] : []),
    ...(house.heat_capacity_kWh_per_K === undefined ? [text("assumed.weight")] : []),
    ...(outside.from === "said" || outside.from === "record" ? [] : [text("assumed.weather", { low: q(outside.low_C, "C"), high: q(outside.high_C, "C") })]),
  ];
  const back = days === null || soon === null || late === null ? null
    : Number.isFinite(days) ? { value: days, low: Math.min(soon, days, late), high: Math.max(soon, days, late) } : "never" as const;
  return {
    draft: {
      topic: "heat-curve",
      cautions: ["first-fires"],
      headline: text("absence.headline", { days: Math.round(absence.days), room: q(cold_C, "C", { low: low_C, high: high_C }) }),
      blocks: blocks(
        low_C < FROST_ROOM_C && say(text("absence.frost")),
        back === null ? say(text("absence.no-heater"))
        : back === "never" ? say(text("absence.never", { day: q(day_kg ?? 0, "kg", { digits: 0 }) }), "over-firing")
        : say(text("absence.back", { days: q(back.value, "day", { digits: 1, low: back.low, high: back.high }), day: q(day_kg ?? 0, "kg", { digits: 0 }), wanted: q(wanted_C - 1, "C") }), "over-firing"),
        say(text("absence.leaving"), "close-flue"),
        say(text("absence.first-fire"), "first-fires", "weak-draught"),
        numbers(
          { key: "room_after_C", label: text("number.room_after_C"), quantity: q(cold_C, "C", { digits: 0, low: low_C, high: high_C }) },
          ...(back !== null && back !== "never" ? [{ key: "warm_up_day", label: text("number.warm_up_day"), quantity: q(back.value, "day", { digits: 1, low: back.low, high: back.high }) }] : []),
        ),
        assumedLine(assumed),
      ),
    },
    state: { reckoned: { topic: "heat-curve", inputs: { days: absence.days }, at_ms: context.now_ms } },
  };
}

/** Cold masonry begins with half a load; from the second day on the whole. */
function backAfter_days(house: IdleHouse, from_C: number, wanted_C: number, heat_W: number): number {
  const first_h = warmUp_h(house, from_C, wanted_C, heat_W / 2);
  return first_h <= 24 ? first_h / 24 : 1 + warmUp_h(house, idleRoom_C({ ...house, other_heat_W: heat_W / 2 }, from_C, 24), wanted_C, heat_W) / 24;
}
