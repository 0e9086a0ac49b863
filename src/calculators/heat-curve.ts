/** heat-curve: what one fire gives the room, hour by hour. */
import { z } from "zod";
import { limits } from "../limits.ts";
import { heatCurve as curveOf } from "../reckoning/heat-curve.ts";
import { hourly, type Outside, sameDay } from "../reckoning/heater-room.ts";
import { HeaterRecord, HouseRecord } from "../records/schemas.ts";
import { BadInput, calculator, described, figure } from "./calculator.ts";
import { result, signed } from "./keys.ts";

const temperature = z.number().min(-70).max(60);
const ISO_CLOCK = /^\d{4}-\d{2}-\d{2}T(\d{2}):(\d{2})/;
/** A load beyond this many times what the firebox is made for is no fire the model knows. */
const BEYOND = 3;
const HOT_ROOM_C = 32;
/** Beyond this the figures given contradict each other. */
const NO_ROOM_C = 200;

export const heatCurve = calculator({
  name: "heat-curve",
  about: "One fire in a masonry heater and the 48 h after it: output to the room, mean facing, room, bed black, what went up the flue.",
  source:
    "EN 15544 (air, passages, firebox), EN 1995-1-2 (charring), EN ISO 13790 and ISO 6946 (room, surfaces), Churchill and Chu 1975; common practice where a comment in the source says so",
  inputs: {
    heater: described(HeaterRecord, "the heater record; what is missing is assumed and said in warnings"),
    house: described(HouseRecord, "the house record; what is missing is assumed and said in warnings"),
    load_kg: figure("kg", "wood as it is burned", { above: 0, max: 120 }),
    moisture_pct_wet: figure("% wet basis", "water / mass as it lies", { min: 0, max: 60 }),
    lit_at: described(
      z
        .string()
        .regex(ISO_CLOCK, "a time such as 2026-11-25T18:00:00+01:00")
        .refine((at) => !Number.isNaN(Date.parse(at)), "a time that exists"),
      "when the fire is lit; its clock as written decides where in the day's temperatures it falls",
    ),
    outside: described(
      z.union([
        z.strictObject({ low_C: temperature, high_C: temperature }),
        z.strictObject({ hourly_C: z.array(temperature).min(1).max(240) }),
      ]),
      "the day's low and high, repeated, or hourly values from lighting on, the last 24 repeated",
      { unit: "°C" },
    ),
    damper_closed_after_h: figure(
      "h",
      "after lighting; before bed black it is moved to bed black; without it, at bed black if the heater has a shut-off damper",
      { min: 0, max: 48 },
    ).optional(),
    before: described(
      z.enum(["daily", "cold"]),
      "one such fire a day until it repeats, or masonry and room at house.wanted_C (20 when not known)",
    ).default("daily"),
  },
  outputs: {
    series: described(
      z.array(z.strictObject({ t_h: z.number(), output_kW: z.number(), facing_C: z.number(), room_C: z.number() })),
      "every 0.25 h after lighting: heat to the room, mean face, room air",
    ),
    peak_output_h: result("h", "after lighting, when the output is highest"),
    peak_facing_C: signed("°C", "highest mean face; the hottest spot is tens of kelvin above"),
    half_output_h: result(
      "h",
      "after lighting, when the output has fallen to half its peak; left out when that takes more than 48 h",
    ).optional(),
    bed_black_h: result("h", "after lighting, when no glow is left; a reckoning, the eye decides"),
    given_24h_kWh: result("kWh", "heat to the room in the first 24 h"),
    flue_loss_kWh: signed("kWh", "of the net heat of the wood: hot gas over 48 h, unburnt gas, charcoal left"),
    stored_kWh: signed("kWh", "in the masonry when the bed is black, above what it held at lighting"),
    balance_error_rel: result("share", "what the energy balance of 48 h fails to close, of the heat turned over"),
  },
  run: (given) => {
    const { heater, house, load_kg, moisture_pct_wet } = given;
    const bounds = limits(heater);
    const made_kg = heater.max_load_kg ?? bounds.max_load_kg ?? undefined;
    if (made_kg !== undefined && load_kg > BEYOND * made_kg) {
      throw new BadInput(`load_kg is ${load_kg}; in a heater made for ${round(made_kg, 1)} kg it should be at most that.`);
    }
    const warnings: string[] = [];
    if (bounds.max_load_kg !== null && load_kg > bounds.max_load_kg * 1.0001) {
      warnings.push(
        `${load_kg} kg is more than this heater's largest load of ${round(bounds.max_load_kg, 1)} kg: over-firing cracks masonry and can set a chimney alight. Never burn it; the figures only say what would happen.`,
      );
    }
    const curve = curveOf({
      heater,
      house,
      load_kg,
      moisture_pct_wet,
      outside: outsideOf(given.outside, given.lit_at),
      before: given.before,
      ...(given.damper_closed_after_h !== undefined && { damper_closed_after_h: given.damper_closed_after_h }),
    });
    const hottest_C = curve.series.reduce((high, point) => Math.max(high, point.room_C), -Infinity);
    if (!(hottest_C < NO_ROOM_C)) {
      throw new BadInput(
        `heater and house do not go together: the room would be above ${NO_ROOM_C} °C; house.heat_loss_W_per_K, heater.facing_m2 or house.other_heat_W should be looked at again.`,
      );
    }
    if (hottest_C > HOT_ROOM_C) {
      warnings.push(
        `The room would reach ${round(hottest_C, 0)} °C: such a fire${given.before === "daily" ? " a day" : ""} is too much for this house and weather, or the house's figures are off.`,
      );
    }
    warnings.unshift(...damperWarnings(given.damper_closed_after_h, curve.bed_black_h, heater.shut_off_damper));
    if (moisture_pct_wet > 25)
      warnings.push(
        `Wood of ${round(moisture_pct_wet, 0)} % wet basis hardly burns clean; the fire may die, soot and tar are likely, and real heat will be below these figures.`,
      );
    warnings.push(
      "facing_C is the mean of the face; near the firebox it is tens of kelvin hotter, so it says nothing about what is safe to touch.",
    );
    const known = heater.masonry_kg !== undefined && (heater.wall_mm !== undefined || heater.facing_m2 !== undefined);
    return {
      series: curve.series.map(({ t_h, output_kW, facing_C, room_C }) => ({
        t_h,
        output_kW: round(output_kW, 4),
        facing_C: round(facing_C, 3),
        room_C: round(room_C, 3),
      })),
      peak_output_h: curve.peak_output_h,
      peak_facing_C: curve.peak_facing_C,
      half_output_h: curve.half_output_h,
      bed_black_h: curve.bed_black_h,
      given_24h_kWh: curve.given_24h_kWh,
      flue_loss_kWh: curve.flue_loss_kWh,
      stored_kWh: curve.stored_kWh,
      balance_error_rel: curve.balance_error_rel,
      warnings: [...warnings, ...curve.assumed],
      range: ranges(curve, known),
    };
  },
});

function outsideOf(outside: { low_C: number; high_C: number } | { hourly_C: number[] }, lit_at: string): Outside {
  if ("hourly_C" in outside) return hourly(outside.hourly_C);
  if (outside.low_C > outside.high_C)
    throw new BadInput(`outside.low_C is ${outside.low_C}; it should not be above outside.high_C, ${outside.high_C}.`);
  const [, hour = "0", minute = "0"] = ISO_CLOCK.exec(lit_at) ?? [];
  return sameDay(outside.low_C, outside.high_C, Number(hour) + Number(minute) / 60);
}

function damperWarnings(asked_h: number | undefined, bed_black_h: number, damper: boolean | undefined): string[] {
  const black = "no flame of any colour and no glow in the dark, after raking";
  if (asked_h !== undefined && asked_h < bed_black_h) {
    return [
      `Danger of carbon monoxide: a flue shut ${round(asked_h, 2)} h after lighting would be shut over flame or glow and can kill. It is reckoned as shut at ${round(bed_black_h, 1)} h; shut it only when the bed is black: ${black}.`,
    ];
  }
  return damper === false
    ? []
    : [
        `bed_black_h is a reckoning, not a permission: shut the flue only over a black bed (${black}), with a working carbon monoxide alarm; if unsure, leave it open.`,
      ];
}

/**
 * How far off the figures may be. Judgement from the sensitivity table, wider when mass and wall were assumed; no trial of many
 * heaters is at hand.
 * Bed black: common practice 2 to 4 h, up to 5 h for big hardwood loads.
 */
function ranges(curve: ReturnType<typeof curveOf>, known: boolean): Record<string, [number, number]> {
  const by = (value: number, share: number): [number, number] => [value * (1 - share), value * (1 + share)];
  const room_C = curve.series[Math.min(curve.series.length - 1, Math.round(curve.peak_output_h * 4))]?.room_C ?? 20;
  const rise = curve.peak_facing_C - room_C;
  const off = known ? 0.2 : 0.35;
  return {
    peak_output_h: by(curve.peak_output_h, known ? 0.25 : 0.4),
    peak_facing_C: [room_C + rise * (1 - off), room_C + rise * (1 + off)],
    ...(curve.half_output_h !== undefined && { half_output_h: by(curve.half_output_h, off) }),
    bed_black_h: [curve.bed_black_h * 0.8, curve.bed_black_h * 1.6],
    given_24h_kWh: by(curve.given_24h_kWh, known ? 0.12 : 0.18),
  };
}

function round(value: number, digits: number): number {
  const scale = 10 ** digits;
  return Math.round(value * scale) / scale;
}
