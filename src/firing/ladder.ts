/**
 * The first fires of a new heater and after a long rest: how large the next one may be, read from the log alone, so that a builder sees
 * the same as the program. A rung is climbed by days of firing; a day on which damp or new cracks were seen is repeated.
 */
import type { Firing, Rung } from "../knowledge/schemas.ts";
import type { HeaterFacts } from "../records/schemas.ts";
import type { Fire } from "../records/types.ts";

const DAY_MS = 86_400_000;
/** In use for less than this it counts as new; common practice: ten days of firing in two to four weeks, longer with pauses. */
const NEW_DAYS = 60;
/** Idle for longer than this it is brought back by a ladder; common practice, no source. */
const REST_DAYS = 60;
/** A restart that nobody went on with for so long has to begin again, or is over. */
const RESTART_WITHIN_DAYS = 21;
/** A fire of less than this share of its rung was too small to count as a day of it. */
const COUNTS_FROM = 0.6;

/** What was seen after a first fire; written into the fire's note in these words. */
export const SEEN = { dry: "first fires: dry", damp: "first fires: damp", cracks: "first fires: new cracks", stop: "first fires: stopped" } as const;
export type Seen = keyof typeof SEEN;

export interface LadderDay {
  /** as the person's calendar has it, e.g. 2026-11-25 */
  readonly date: string;
  readonly load_kg: number;
  readonly fires: number;
  /** share of the largest load */
  readonly share: number | null;
  readonly rung: string;
  readonly seen: Seen | null;
  readonly counted: boolean;
}
export interface Ladder {
  readonly occasion: "new" | "rest";
  /** null when the last rung is behind: the full load from now on */
  readonly rung: Rung | null;
  /** days of this rung done before today, and today when a fire of it was lit */
  readonly day_of_rung: number;
  /** something was seen after which no fire is lit until the builder has spoken */
  readonly stopped: boolean;
  readonly days: readonly LadderDay[];
}

export interface Climbing {
  readonly firing: Pick<Firing, "ladders">;
  readonly heater: HeaterFacts;
  readonly fires: readonly Pick<Fire, "lit_at_ms" | "facts">[];
  readonly max_load_kg: number | null;
  readonly now_ms: number;
  readonly timezone: string;
}

/** @returns null when no ladder applies: the heater is neither new nor rested */
export function ladderOf({ firing, heater, fires, max_load_kg, now_ms, timezone }: Climbing): Ladder | null {
  const past = [...fires].filter((fire) => fire.lit_at_ms <= now_ms).sort((a, b) => a.lit_at_ms - b.lit_at_ms);
  const start = startOf(heater, past, now_ms);
  const rungs = start ? firing.ladders[start.occasion] : undefined;
  if (!start || !rungs) return null;
  const dateOf = (at_ms: number): string => Temporal.Instant.fromEpochMilliseconds(at_ms).toZonedDateTimeISO(timezone).toPlainDate().toString();
  const today = dateOf(now_ms);
  const byDay = Map.groupBy(past.filter((fire) => fire.lit_at_ms >= start.from_ms), (fire) => dateOf(fire.lit_at_ms));

  let at = 0;
  let done = 0;
  let stopped = false;
  let countedToday = false;
  const days: LadderDay[] = [];
  for (const [date, burnt] of byDay) {
    const rung = rungs[at];
    if (!rung) break;
    const load_kg = burnt.reduce((sum, fire) => sum + (fire.facts.load_kg ?? 0), 0);
    const largest = Math.max(...burnt.map((fire) => fire.facts.load_kg ?? 0));
    const share = max_load_kg && largest > 0 ? largest / max_load_kg : null;
    const seen = burnt.map((fire) => seenIn(fire.facts.note)).find((one) => one !== null) ?? null;
    const counted = seen !== "damp" && seen !== "cracks" && seen !== "stop" && (share === null || share >= COUNTS_FROM * rung.share_low);
    days.push({ date, load_kg, fires: burnt.length, share, rung: rung.id, seen, counted });
    stopped = seen === "stop";
    countedToday = counted && date === today;
    if (counted) done += 1;
    // a day's rung stands until that day is over, however many fires it has
    if (done >= rung.days && date !== today) {
      at += 1;
      done = 0;
    }
  }
  return { occasion: start.occasion, rung: rungs[at] ?? null, day_of_rung: Math.min(rungs[at]?.days ?? 1, countedToday ? done : done + 1), stopped, days };
}

function startOf(heater: HeaterFacts, past: readonly { readonly lit_at_ms: number }[], now_ms: number): { occasion: "new" | "rest"; from_ms: number } | null {
  const commissioned_ms = heater.commissioned_on === undefined ? null : Date.parse(heater.commissioned_on);
  if (commissioned_ms !== null && commissioned_ms <= now_ms + DAY_MS && now_ms - commissioned_ms < NEW_DAYS * DAY_MS) return { occasion: "new", from_ms: commissioned_ms - DAY_MS };
  const last = past.at(-1);
  if (!last) return null;
  if (now_ms - last.lit_at_ms > REST_DAYS * DAY_MS) return { occasion: "rest", from_ms: now_ms };
  for (let i = past.length - 1; i > 0; i--) {
    const [before, after] = [past[i - 1]?.lit_at_ms ?? 0, past[i]?.lit_at_ms ?? 0];
    if (now_ms - after > RESTART_WITHIN_DAYS * DAY_MS) return null;
    if (after - before > REST_DAYS * DAY_MS) return { occasion: "rest", from_ms: after };
  }
  return null;
}

export function seenIn(note: string | undefined): Seen | null {
  const found = note === undefined ? undefined : (Object.keys(SEEN) as Seen[]).find((one) => note.includes(SEEN[one]));
  return found ?? null;
}
