/** "The face was 62 at 20:00 and 48 at 6:00": what an owner's own readings say about house and heater, or that they cannot tell. */
import { numbers, say, steps, text, type Text } from "../../answer.ts";
import { q } from "../../quantities.ts";
import { type Fitted, fitHeater, type Reading } from "../../reckoning/fit.ts";
import { sameDay } from "../../reckoning/heater-room.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { readFigures } from "../reading/figures.ts";
import { assumedLine, DAY_MS, HOUR_MS, outdoors, USUAL_MOISTURE_PCT, zonedAt } from "./around.ts";

export interface Said {
  readonly what: "room" | "facing";
  readonly reading_C: number;
  /** null: said without a time */
  readonly at_ms: number | null;
}

const FACE = /\b(face|facing|surface|wall|front|side|bench|brick|stone|tile|heater|stove)\b/gi;
const ROOM = /\b(room|air|inside|indoors|house|living)\b/gi;
/** A dial or infrared thermometer read twice differs by this much. Common practice, no source. */
const READING_K = 1.5;
const FEWEST = 10;

/** Readings of face or room with their clock times, oldest first, the last no later than now. */
export function readingsSaid(context: Context): readonly Said[] {
  const words = context.text.slice(0, 4000);
  if (!/\d{1,2}[:.h]\d{2}|\b\d{1,2} ?[ap]\.?m\b/i.test(words)) return [];
  const us = context.reader.system === "us";
  const clocks = [...words.matchAll(/\b(\d{1,2})(?:[:.h](\d{2}))?\s*([ap])?\.?m?\b/gi)]
    .filter((found) => found[2] !== undefined || found[3] !== undefined)
    .map((found) => ({ at: found.index, end: found.index + found[0].length, hour: (Number(found[1]) % (found[3] ? 12 : 24)) + (/p/i.test(found[3] ?? "") ? 12 : 0), minute: Number(found[2] ?? 0) }));
  const lastOf = (pattern: RegExp, before: number): number => [...words.slice(0, before).matchAll(pattern)].at(-1)?.index ?? -1;
  const found = readFigures(words).flatMap((figure) => {
    if ((figure.dimension !== null && figure.dimension !== "temperature") || clocks.some((clock) => figure.at[0] < clock.end && clock.at < figure.at[1])) return [];
    const fahrenheit = figure.unit === "F" || (figure.unit === null && us);
    const reading_C = fahrenheit ? ((figure.value - 32) * 5) / 9 : figure.value;
    const [face, room] = [lastOf(FACE, figure.at[0]), lastOf(ROOM, figure.at[0])];
    if ((face < 0 && room < 0) || reading_C < 0 || reading_C > 200) return [];
    const clock = clocks.find((one) => one.at >= figure.at[1] && one.at - figure.at[1] <= 12) ?? clocks.findLast((one) => one.end <= figure.at[0] && figure.at[0] - one.end <= 6);
    return [{ what: room > face ? "room" as const : "facing" as const, reading_C, clock }];
  });
  return placed(context, found);
}

function placed(context: Context, found: readonly { what: "room" | "facing"; reading_C: number; clock: { hour: number; minute: number } | undefined }[]): Said[] {
  let at = zonedAt(context, context.now_ms).subtract({ days: 30 }).startOfDay();
  const timed = found.map(({ what, reading_C, clock }) => {
    if (!clock) return { what, reading_C, at_ms: null };
    let next = at.withPlainTime({ hour: clock.hour, minute: clock.minute });
    if (Temporal.ZonedDateTime.compare(next, at) < 0) next = next.add({ days: 1 });
    at = next;
    return { what, reading_C, at_ms: next.epochMilliseconds };
  });
  const shift_ms = Math.floor((context.now_ms - at.epochMilliseconds) / DAY_MS) * DAY_MS;
  return timed.map((one) => (one.at_ms === null ? one : { ...one, at_ms: one.at_ms + shift_ms }));
}

export function fitOutcome(context: Context, said: readonly Said[]): Outcome {
  const timed = said.filter((one): one is Said & { at_ms: number } => one.at_ms !== null).sort((a, b) => a.at_ms - b.at_ms);
  return timed.length < FEWEST ? tooFew(context, said, timed) : fitted(context, timed);
}

/** Two readings of the face tell how fast it cools, and no more. */
function tooFew(context: Context, said: readonly Said[], timed: readonly (Said & { at_ms: number })[]): Outcome {
  const face = timed.filter((one) => one.what === "facing");
  const room_C = said.find((one) => one.what === "room")?.reading_C ?? context.snapshot.home.house.wanted_C ?? 20;
  const [first, last] = [face[0], face.at(-1)];
  const rate = first && last && last.at_ms > first.at_ms ? cooling_h(first, last, room_C) : null;
  return {
    draft: {
      topic: "heat-curve",
      headline: text("fit.too-few", { readings: timed.length }),
      blocks: blocks(
        rate && say(text("fit.cooling", { hours: q(rate.value, "h", { digits: 0, low: rate.low, high: rate.high }), room: q(room_C, "C", { digits: 1 }) })),
        rate && numbers({ key: "face_time_constant_h", label: text("number.face_time_constant_h"), quantity: q(rate.value, "h", { digits: 0, low: rate.low, high: rate.high }) }),
        say(text("fit.wanted", { fewest: FEWEST })),
      ),
    },
  };
}

/** tau = t / ln((T1 - room) / (T2 - room)), Newton's cooling; the range from what a thermometer may be off. Null when it does not cool. */
function cooling_h(first: { at_ms: number; reading_C: number }, last: { at_ms: number; reading_C: number }, room_C: number): { value: number; low: number; high: number } | null {
  const hours = (last.at_ms - first.at_ms) / HOUR_MS;
  const tau = (off_K: number): number => {
    const ratio = (first.reading_C - off_K - room_C) / (last.reading_C + off_K - room_C);
    return ratio > 1 ? hours / Math.log(ratio) : Infinity;
  };
  const value = tau(0);
  const high = tau(READING_K);
  return last.reading_C - READING_K <= room_C || !Number.isFinite(value) || !Number.isFinite(high) ? null : { value, low: tau(-READING_K), high };
}

function fitted(context: Context, timed: readonly (Said & { at_ms: number })[]): Outcome {
  const { snapshot } = context;
  const start_ms = zonedAt(context, timed[0]!.at_ms).round({ smallestUnit: "hour", roundingMode: "floor" }).epochMilliseconds;
  const end_ms = timed.at(-1)!.at_ms;
  const fires = snapshot.fires.filter((fire) => fire.lit_at_ms >= start_ms && fire.lit_at_ms <= end_ms && fire.facts.load_kg !== undefined);
  const outside = outdoors(context);
  const start = zonedAt(context, start_ms);
  const readings: Reading[] = timed.map(({ what, reading_C, at_ms }) => ({ what, reading_C, at_h: (at_ms - start_ms) / HOUR_MS }));
  const wood = snapshot.home.wood[0];
  let fit: ReturnType<typeof fitHeater>;
  try {
    fit = fitHeater({
      heater: context.heater?.facts ?? {}, house: snapshot.home.house, moisture_pct_wet: wood?.moisture_pct_wet ?? USUAL_MOISTURE_PCT,
      outside: sameDay(outside.low_C, outside.high_C, start.hour),
      fires: fires.map((fire) => ({ lit_h: Math.round((4 * (fire.lit_at_ms - start_ms)) / HOUR_MS) / 4, load_kg: fire.facts.load_kg ?? 0 })).sort((a, b) => a.lit_h - b.lit_h),
      readings,
    });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { draft: { topic: "heat-curve", headline: text("fit.too-few", { readings: timed.length }), blocks: [say(text("fit.wanted", { fewest: FEWEST }))] } };
  }
  const lines: Text[] = [];
  const range = (one: Fitted, times = 1) => ({ low: one.low * times, high: one.high * times });
  const told = (key: (typeof fit.cannot_tell)[number]): boolean => !fit.cannot_tell.includes(key);
  const told_kg = told("masonry_share") && context.heater?.facts.masonry_kg !== undefined;
  const masonry_kg = context.heater?.facts.masonry_kg ?? 0;
  lines.push(told("heat_loss_W_per_K") ? text("fit.loss", { loss: q(fit.heat_loss_W_per_K.value, "W/K", range(fit.heat_loss_W_per_K)) }) : text("fit.loss-unknown"));
  lines.push(told("heat_capacity_kWh_per_K") ? text("fit.time-constant", { hours: q(fit.time_constant_h.value, "h", { digits: 0, ...range(fit.time_constant_h) }) }) : text("fit.capacity-unknown"));
  lines.push(told_kg ? text("fit.mass", { mass: q(masonry_kg * fit.masonry_share.value, "kg", { digits: 0, ...range(fit.masonry_share, masonry_kg) }) }) : text("fit.mass-unknown"));
  const items = [
    ...(told("heat_loss_W_per_K") ? [{ key: "heat_loss_W_per_K", label: text("record.heat_loss_W_per_K"), quantity: q(fit.heat_loss_W_per_K.value, "W/K", range(fit.heat_loss_W_per_K)) }] : []),
    ...(told("heat_capacity_kWh_per_K") ? [{ key: "time_constant_h", label: text("number.time_constant_h"), quantity: q(fit.time_constant_h.value, "h", { digits: 0, ...range(fit.time_constant_h) }) }] : []),
    ...(told_kg ? [{ key: "effective_mass_kg", label: text("number.effective_mass_kg"), quantity: q(masonry_kg * fit.masonry_share.value, "kg", { digits: 0, ...range(fit.masonry_share, masonry_kg) }) }] : []),
  ];
  return {
    draft: {
      topic: "heat-curve",
      headline: text(items.length > 0 ? "fit.headline" : "fit.cannot-tell", { readings: timed.length }),
      blocks: blocks(
        steps(lines, { ordered: false }),
        items.length > 0 && numbers(...items),
        say(text("fit.off", { off: q(fit.residual_K, "K", { digits: 1 }), fires: fires.length })),
        say(text("fit.limits"), "over-firing"),
        assumedLine(outside.from === "record" ? [text("assumed.same-weather")] : [text("assumed.weather", { low: q(outside.low_C, "C"), high: q(outside.high_C, "C") })]),
      ),
    },
  };
}
