/** fire-plan: how many fires, when and how much, over one to seven days of forecast. */
import { z } from "zod";
import { limits } from "../limits.ts";
import { type Bounds, firePlan as planOf, type Plan, planPlant } from "../reckoning/fire-plan.ts";
import { usualState } from "../reckoning/plan-state.ts";
import { NCV_DRY_MJ_PER_KG } from "../reckoning/fuel.ts";
import { runOfDays } from "../reckoning/heater-room.ts";
import { DayWeather, HeaterRecord, HouseRecord } from "../records/schemas.ts";
import { BadInput, calculator, described } from "./calculator.ts";
import { moisturePctWet, result, signed, species } from "./keys.ts";
import { findWood } from "./reference-data.ts";

const DAY_MS = 86_400_000;
const START = /^(\d{4}-\d{2}-\d{2})T(\d{2}):(\d{2})(?::\d{2}(?:\.\d+)?)?(Z|[+-]\d{2}:?\d{2})?$/;
const clockTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time such as "22:30"');
const wantedC = z.number().min(5).max(35);

export const firePlan = calculator({
  name: "fire-plan",
  about:
    "When to fire and how much, for the least wood that holds the wanted temperature in the wanted hours, inside the heater's limits and before bedtime.",
  source:
    "the heater model of heat-curve; limits of the heater; spacing, mildest weather and time kept before bed common practice, no source",
  inputs: {
    heater: described(HeaterRecord, "the heater record; a largest load must be known or follow from nominal output or masonry"),
    house: described(HouseRecord, "the house record; what is missing is assumed and said in warnings"),
    wood: described(
      z.strictObject({ species: species().optional(), moisture_pct_wet: moisturePctWet().max(60) }),
      "the wood to be burned",
      { unit: "% wet basis" },
    ),
    from: described(
      z
        .string()
        .regex(START, "a time such as 2026-11-25T06:00:00+01:00")
        .refine((at) => !Number.isNaN(Date.parse(at)), "a time that exists"),
      "start of the plan; its clock as written is the clock of awake and wanted",
    ),
    weather: described(z.array(DayWeather).min(1).max(7), "the days from the start's date on, one after another", { unit: "°C" }),
    wanted: described(
      z
        .array(z.strictObject({ from: clockTime, to: clockTime, min_C: wantedC, max_C: wantedC }))
        .min(1)
        .max(12),
      "temperatures wanted in hours of every day; to before from runs past midnight",
      { unit: "°C" },
    ),
    awake: described(z.strictObject({ from: clockTime, to: clockTime }), "fires are lit and their beds black within these hours"),
  },
  outputs: {
    fires: described(z.array(z.strictObject({ lit_at: z.string(), load_kg: z.number() })), "when each is lit and its load"),
    wood_kg: result("kg", "all loads"),
    coldest_C: signed("°C", "in the wanted hours"),
    warmest_C: signed("°C", "in the wanted hours"),
    hours_below_h: result("h", "wanted hours below their min_C"),
    why: described(z.string(), "two sentences of reasons"),
  },
  run: (given) => {
    const bounds = limits(given.heater);
    if (bounds.max_load_kg === null || bounds.min_load_kg === null || bounds.max_day_kg === null) {
      throw new BadInput(
        "heater.max_load_kg is missing; fire-plan needs it, or nominal_output_kW with nominal_heating_time_h, or masonry_kg, and guesses no load.",
      );
    }
    const allowed: Bounds = {
      max_load_kg: bounds.max_load_kg,
      min_load_kg: bounds.min_load_kg,
      max_day_kg: bounds.max_day_kg,
      spacing_h: bounds.spacing_h,
    };
    const [, date = "", hour = "0", minute = "0", zone = ""] = START.exec(given.from) ?? [];
    given.weather.forEach((day, i) => {
      const right = new Date(Date.parse(date) + i * DAY_MS).toISOString().slice(0, 10);
      if (day.date !== right)
        throw new BadInput(`weather[${i}].date is ${day.date}; it should be ${right}, the days follow one another from the date of from.`);
      if (day.low_C > day.high_C) throw new BadInput(`weather[${i}].low_C is ${day.low_C}; it should not be above high_C, ${day.high_C}.`);
    });
    given.wanted.forEach((one, i) => {
      if (one.min_C > one.max_C) throw new BadInput(`wanted[${i}].min_C is ${one.min_C}; it should not be above max_C, ${one.max_C}.`);
    });
    // fires are lit on the hour: the plan begins with the next whole one
    const start_hour = Math.ceil(Number(hour) + Number(minute) / 60);
    const hours = given.weather.length * 24 - start_hour;
    if (hours <= 0) throw new BadInput(`from is ${given.from}; it should leave at least an hour of the last day of weather.`);
    const wood = given.wood.species === undefined ? undefined : findWood(given.wood.species);
    const plant = planPlant({ ...given.heater, max_load_kg: given.heater.max_load_kg ?? allowed.max_load_kg }, given.house);
    const awake = { from_h: hourOf(given.awake.from), to_h: hourOf(given.awake.to) };
    const known = {
      plant,
      moisture_pct_wet: given.wood.moisture_pct_wet,
      ncv_dry_MJ_per_kg: NCV_DRY_MJ_PER_KG[wood?.kind ?? "unknown"].typical,
      start_hour,
      hours,
      awake,
      bounds: allowed,
      wanted: given.wanted.map((one) => ({ from_h: hourOf(one.from), to_h: hourOf(one.to), min_C: one.min_C, max_C: one.max_C })),
    };
    const first = given.weather[0] ?? { low_C: 0, high_C: 0 };
    const plan = planOf({ ...known, ...usualState(known, first), outside: runOfDays(given.weather, start_hour) });
    const start_ms = Date.parse(`${date}T00:00:00Z`) + start_hour * 3_600_000;
    return {
      fires: plan.fires.map(({ lit_h, load_kg }) => ({
        lit_at: new Date(start_ms + lit_h * 3_600_000).toISOString().slice(0, 19) + zone,
        load_kg,
      })),
      wood_kg: plan.wood_kg,
      coldest_C: plan.coldest_C,
      warmest_C: plan.warmest_C,
      hours_below_h: plan.hours_below_h,
      why: reasons(plan, given, allowed),
      warnings: [
        ...(given.heater.shut_off_damper === false
          ? []
          : [
              "Carbon monoxide: shut the flue only when the bed is black, no flame and no glow in the dark after raking, with a working alarm; if it is not black at bedtime, leave the flue open overnight.",
            ]),
        ...(given.wood.moisture_pct_wet > 25
          ? [`Wood of ${given.wood.moisture_pct_wet} % wet basis hardly burns clean; the plan counts on heat it may not give.`]
          : []),
        ...(bounds.guessed
          ? [
              "The largest load is guessed from the masonry's weight; the builder's sheet or a sweep decides. Never fill above half the firebox height on a guess.",
            ]
          : []),
        "The days before are not known; masonry and room are taken as a daily fire that suits the first day would leave them.",
        ...plant.heater.assumed,
        ...plant.house.assumed,
      ],
      range: {
        wood_kg: [plan.wood_kg * 0.8, plan.wood_kg * 1.25],
        coldest_C: [plan.coldest_C - 1.5, plan.coldest_C + 1.5],
        warmest_C: [plan.warmest_C - 1.5, plan.warmest_C + 1.5],
      },
    };
  },
});

const hourOf = (clock: string): number => Number(clock.slice(0, 2)) + Number(clock.slice(3)) / 60;
const clockOf = (hour: number): string =>
  `${String(Math.floor(hour)).padStart(2, "0")}:${String(Math.round((hour % 1) * 60)).padStart(2, "0")}`;
const short = (value: number): string => String(Math.round(value * 10) / 10);

interface Asked {
  readonly weather: readonly { low_C: number; high_C: number }[];
  readonly awake: { from: string; to: string };
}

/** What drove the plan, and what bound it. */
function reasons(plan: Plan, { weather, awake }: Asked, bounds: Bounds): string {
  const coldest = Math.min(...weather.map((day) => day.low_C));
  const loads = plan.fires.map((fire) => fire.load_kg);
  const count = loads.length === 1 ? "one fire" : `${loads.length} fires`;
  const sizes =
    Math.min(...loads) === Math.max(...loads)
      ? `${short(Math.max(...loads))} kg`
      : `${short(Math.min(...loads))} to ${short(Math.max(...loads))} kg`;
  const held =
    plan.hours_below_h === 0
      ? `keeps the room at ${short(plan.coldest_C)} to ${short(plan.warmest_C)} °C in the wanted hours`
      : `leaves it below what is wanted for ${short(plan.hours_below_h)} h, down to ${short(plan.coldest_C)} °C, since the heater's limits and its slow masonry allow no more: use other heat for the rest`;
  if (plan.no_window) {
    return (
      `No fire is planned: between ${awake.from} and ${awake.to} there is no hour from which the bed would be black before bedtime. ` +
      `The room would fall to ${short(plan.coldest_C)} °C, so fire on a day with longer awake hours or use other heat.`
    );
  }
  const window = `A fire may be lit from ${awake.from} to ${clockOf(plan.latest_lit_hour)}, so that its bed is black before bedtime at ${awake.to}`;
  if (loads.length === 0) {
    return (
      `No fire is needed or possible: without one the room is at ${short(plan.coldest_C)} to ${short(plan.warmest_C)} °C in the wanted hours. ` +
      `${window}, and never with less than ${short(bounds.min_load_kg)} kg, which would not burn clean.`
    );
  }
  return (
    `With nights down to ${short(coldest)} °C, ${count} of ${sizes} is the least wood found that ${held}. ` +
    `${window}, at least ${short(bounds.spacing_h)} h after the one before, with ${short(bounds.min_load_kg)} to ${short(bounds.max_load_kg)} kg a fire and at most ${short(bounds.max_day_kg)} kg in 24 h; a day that needs less is skipped, not fired small.`
  );
}
