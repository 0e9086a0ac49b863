/** Axes in the reader's own units, clock and calendar. */
import { convert, formatNumber, forReader, q, UNITS, type UnitId } from "../quantities.ts";
import type { Reader } from "../text/render.ts";

export interface Ticks {
  readonly values: readonly number[];
  /** by value, as an expression looks it up */
  readonly labels: Readonly<Record<string, string>>;
}

const dateFormats = new Map<string, Intl.DateTimeFormat>();
/** A way of writing dates for a reader; making one costs as much as a small plate. */
export function dateFormat({ locale, timezone }: Reader, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = JSON.stringify([locale, timezone, options]);
  const known = dateFormats.get(key) ?? new Intl.DateTimeFormat(locale, { timeZone: timezone, ...options });
  dateFormats.set(key, known);
  return known;
}

/** The unit a reader sees a figure in, and how to get there. */
export function inReaderUnit(unit: UnitId, reader: Reader): { unit: UnitId; symbol: string; of: (value: number) => number } {
  const shown = forReader(q(0, unit), reader.system).unit;
  return { unit: shown, symbol: UNITS[shown].symbol, of: (value) => convert(value, unit, shown) };
}

/** Round steps of 1, 2 or 5 tens, about `count` of them, inside low to high. */
export function ticks(low: number, high: number, count: number, reader: Reader): Ticks {
  const raw = (high - low) / count;
  const ten = 10 ** Math.floor(Math.log10(raw));
  const step = ten * ([1, 2, 5].find((times) => times * ten >= raw) ?? 10);
  const values: number[] = [];
  for (let n = Math.ceil(low / step - 1e-9); n * step <= high + 1e-9; n++) values.push(n * step || 0);
  const digits = Math.max(0, -Math.floor(Math.log10(step)));
  return { values, labels: Object.fromEntries(values.map((value) => [String(value), formatNumber(value, reader, digits)])) };
}

const zoned = (at_ms: number, reader: Reader) => Temporal.Instant.fromEpochMilliseconds(at_ms).toZonedDateTimeISO(reader.timezone);

/** Every so many clock hours; midnight carries the name of the day that begins. */
export function hourTicks(from_ms: number, to_ms: number, every_h: number, reader: Reader): Ticks {
  const hour = dateFormat(reader, reader.system === "us" ? { hour: "numeric", hourCycle: "h12" } : { hour: "2-digit", minute: "2-digit", hourCycle: "h23" });
  const day = dateFormat(reader, { weekday: "short" });
  let at = zoned(from_ms, reader).startOfDay();
  const found: [number, string][] = [];
  for (; at.epochMilliseconds <= to_ms; at = at.add({ hours: every_h })) {
    if (at.epochMilliseconds >= from_ms) found.push([at.epochMilliseconds, (at.hour === 0 ? day : hour).format(at.epochMilliseconds)]);
  }
  return fromPairs(found);
}

/** First days of months, as many as fit; January carries the year that begins. */
export function monthTicks(from_ms: number, to_ms: number, most: number, reader: Reader): Ticks {
  const name = dateFormat(reader, { month: "short" });
  let at = zoned(from_ms, reader).startOfDay().with({ day: 1 });
  const all: [number, string][] = [];
  for (; at.epochMilliseconds <= to_ms; at = at.add({ months: 1 })) {
    if (at.epochMilliseconds >= from_ms) all.push([at.epochMilliseconds, at.month === 1 ? String(at.year) : name.format(at.epochMilliseconds)]);
  }
  const every = Math.ceil(all.length / most);
  return fromPairs(all.filter((_, i) => i % every === 0));
}

const fromPairs = (pairs: readonly (readonly [number, string])[]): Ticks => ({
  values: pairs.map(([value]) => value),
  labels: Object.fromEntries(pairs.map(([value, label]) => [String(value), label])),
});
