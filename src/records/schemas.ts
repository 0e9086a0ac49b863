/**
 * The records a person keeps with Gleed, as they are written outside (keys and values of the outside interface).
 * Every field is optional: a missing one costs only the answers that need it.
 */
import { z } from "zod";

const isoDate = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, "a date such as 2026-10-03").refine((d) => !Number.isNaN(Date.parse(d)), "a date that exists");
const isoInstant = z.string().refine((d) => !Number.isNaN(Date.parse(d)), "an instant such as 2026-11-25T18:10:00+01:00");
const clockTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time such as "22:30"');
const upTo = (max: number) => z.number().min(0).max(max);
const positive = (max: number) => z.number().positive().max(max);
const name = z.string().min(1).max(80);

export const PersonRecord = z.strictObject({
  units: z.enum(["metric", "us"]).optional(),
  locale: z.string().regex(/^[a-zA-Z]{2,3}([-_][a-zA-Z0-9]{2,8})*$/, "a language tag such as en-GB").optional(),
  country: z.string().regex(/^[A-Za-z]{2}$/, "a two-letter country code such as FI").transform((c) => c.toUpperCase()).optional(),
  timezone: z.string().refine(isZone, "a time zone such as Europe/Helsinki").optional(),
  latitude: z.number().min(-90).max(90).optional(),
  longitude: z.number().min(-180).max(180).optional(),
  asleep: z.strictObject({ from: clockTime, to: clockTime }).optional(),
  fires_heater_of: z.string().min(1).max(200).optional(),
});

export const HEATER_KINDS = ["channel", "bell", "contraflow", "mixed", "unknown"] as const;
export const HeaterRecord = z.strictObject({
  name: name.optional(),
  kind: z.enum(HEATER_KINDS).optional(),
  max_load_kg: positive(120).optional(),
  max_load_source: z.enum(["sheet", "plate", "reckoned", "guess"]).optional(),
  min_load_kg: positive(120).optional(),
  max_day_kg: positive(300).optional(),
  nominal_output_kW: positive(40).optional(),
  nominal_heating_time_h: positive(72).optional(),
  masonry_kg: positive(30000).optional(),
  wall_mm: positive(600).optional(),
  facing_m2: positive(80).optional(),
  facing_material: z.enum(["brick", "tile", "soapstone", "render", "stone"]).optional(),
  flue_height_m: positive(40).optional(),
  flue_on_outside_wall: z.boolean().optional(),
  shut_off_damper: z.boolean().optional(),
  bypass_damper: z.boolean().optional(),
  grate: z.boolean().optional(),
  outside_air: z.boolean().optional(),
  lighting: z.enum(["top", "bottom", "unknown"]).optional(),
  gas_exit: z.enum(["top", "low", "unknown"]).optional(),
  oven: z.enum(["none", "black", "white"]).optional(),
  commissioned_on: isoDate.optional(),
});

export const HouseRecord = z.strictObject({
  heat_loss_W_per_K: positive(5000).optional(),
  heat_capacity_kWh_per_K: positive(200).optional(),
  floor_m2: positive(2000).optional(),
  wanted_C: z.number().min(5).max(35).optional(),
  other_heat_W: upTo(50000).optional(),
  vented_hood: z.boolean().optional(),
  hood_interlock: z.boolean().optional(),
  ventilation: z.enum(["natural", "extract", "balanced"]).optional(),
});

export const WoodRecord = z.strictObject({
  name: name.optional(),
  species: name.optional(),
  moisture_pct_wet: z.number().min(0).max(80).optional(),
  measured_on: isoDate.optional(),
  volume_m3_stacked: upTo(1000).optional(),
  split_on: isoDate.optional(),
  basket_kg: positive(100).optional(),
});

export const BED_STATES = ["flame", "blue", "red", "black", "unknown"] as const;
export const FireRecord = z.strictObject({
  lit_at: isoInstant,
  load_kg: positive(150).optional(),
  species: name.optional(),
  moisture_pct_wet: z.number().min(0).max(80).optional(),
  stack: z.enum(["criss-cross", "loose", "tight"]).optional(),
  lit: z.enum(["top", "bottom"]).optional(),
  air: z.enum(["open", "half", "closed"]).optional(),
  flame_out_at: isoInstant.optional(),
  air_closed_at: isoInstant.optional(),
  damper_closed_at: isoInstant.optional(),
  bed_at_close: z.enum(BED_STATES).optional(),
  outside_C: z.number().min(-70).max(60).optional(),
  note: z.string().max(1000).optional(),
});

export const UpkeepRecord = z.strictObject({
  swept_on: isoDate.optional(),
  channels_cleaned_on: isoDate.optional(),
  gasket_changed_on: isoDate.optional(),
});

const Alarm = z.strictObject({
  present: z.boolean().optional(),
  room: z.string().max(80).optional(),
  tested_on: isoDate.optional(),
  ends_on: isoDate.optional(),
});
export const AlarmsRecord = z.strictObject({ co: Alarm.optional(), smoke: Alarm.optional() });

export const DayWeather = z.strictObject({ date: isoDate, low_C: z.number().min(-70).max(60), high_C: z.number().min(-70).max(60) });
export const TonightWeather = z.strictObject({ low_C: z.number().min(-70).max(60).optional(), high_C: z.number().min(-70).max(60).optional() });

/** All that can be given at once; the person's own fields stand beside the groups. */
export const RECORD_GROUPS = {
  heater: HeaterRecord,
  house: HouseRecord,
  upkeep: UpkeepRecord,
  alarms: AlarmsRecord,
} as const;

export const Records = z.strictObject({
  ...PersonRecord.shape,
  heater: HeaterRecord.optional(),
  house: HouseRecord.optional(),
  wood: z.array(WoodRecord).max(50).optional(),
  fires: z.array(FireRecord).max(5000).optional(),
  upkeep: UpkeepRecord.optional(),
  alarms: AlarmsRecord.optional(),
  weather: z.union([TonightWeather, z.array(DayWeather).max(7)]).optional(),
});

export type PersonFacts = z.output<typeof PersonRecord>;
export type HeaterFacts = z.output<typeof HeaterRecord>;
export type HouseFacts = z.output<typeof HouseRecord>;
export type WoodFacts = z.output<typeof WoodRecord>;
export type FireFacts = z.output<typeof FireRecord>;
export type UpkeepFacts = z.output<typeof UpkeepRecord>;
export type AlarmFacts = z.output<typeof Alarm>;
export type AlarmsFacts = z.output<typeof AlarmsRecord>;
export type DayWeatherFacts = z.output<typeof DayWeather>;

function isZone(zone: string): boolean {
  try {
    new Intl.DateTimeFormat("en", { timeZone: zone });
    return true;
  } catch {
    return false;
  }
}
