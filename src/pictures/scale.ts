/** Axes in the reader's own units, clock and calendar. */
import { convert, forReader, q, UNITS, type UnitId } from "../quantities.ts";
import type { Reader } from "../text/render.ts";

export interface Ticks {
  readonly values: readonly number[];
  /** by value, as an expression looks it up */
  readonly labels: Readonly<Record<string, string>>;
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
  const format = new Intl.NumberFormat(reader.locale, { maximumFractionDigits: digits });
  return { values, labels: Object.fromEntries(values.map((value) => [String(value), format.format(value).replace("-", "−")])) };
}

const zoned = (at_ms: number, reader: Reader) => Temporal.Instant.fromEpochMilliseconds(at_ms).toZonedDateTimeISO(reader.timezone);

/** Every so many clock hours; midnight carries the name of the day that begins. */
export function hourTicks(from_ms: number, to_ms: number, every_h: number, reader: Reader): Ticks {
  const hour = new Intl.DateTimeFormat(reader.locale, { timeZone: reader.timezone, hour: reader.system === "us" ? "numeric" : "2-digit", minute: reader.system === "us" ? undefined : "2-digit", hourCycle: reader.system === "us" ? "h12" : "h23" });
  const day = new Intl.DateTimeFormat(reader.locale, { timeZone: reader.timezone, weekday: "short" });
  let at = zoned(from_ms, reader).startOfDay();
  const found: [number, string][] = [];
  for (; at.epochMilliseconds <= to_ms; at = at.add({ hours: every_h })) {
    if (at.epochMilliseconds >= from_ms) found.push([at.epochMilliseconds, (at.hour === 0 ? day : hour).format(at.epochMilliseconds)]);
  }
  return fromPairs(found);
}

/** First days of months, as many as fit; January carries the year that begins. */
export function monthTicks(from_ms: number, to_ms: number, most: number, reader: Reader): Ticks {
  const name = new Intl.DateTimeFormat(reader.locale, { timeZone: reader.timezone, month: "short" });
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
