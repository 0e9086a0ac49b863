/**
 * The two gates of closing down. They are never one thing and neither ever opens by the clock.
 *
 * - The air at the door, while the flue stays open: no flame of any colour for ten minutes, bed raked together, draught still there.
 * - The shut-off damper in the flue: no flame, bed raked and seen black with the room dark, and a carbon monoxide alarm that works and is
 *   in date. Any doubt, and it stays open till morning.
 *
 * Where builders differ the stricter practice stands (rescue services and fire inspectors; see knowledge/cautions.yaml, close-flue).
 */
import type { AlarmsFacts } from "../records/schemas.ts";
import type { Report } from "./report.ts";

const MIN = 60_000;
const DAY = 24 * 60 * MIN;

/** What has been reported in this fire, newest word on each matter, with its time. */
export interface Bed {
  readonly lit_at_ms?: number;
  /** latest sight of any flame */
  readonly flame_at_ms?: number;
  /** since when no flame has been reported without a flame in between */
  readonly no_flame_since_ms?: number;
  readonly glow_at_ms?: number;
  readonly raked_at_ms?: number;
  readonly black_at_ms?: number;
  readonly dark_at_ms?: number;
  readonly unsure_at_ms?: number;
  readonly alarm?: "works" | "doubt";
  readonly alarm_at_ms?: number;
  readonly draught_lost_at_ms?: number;
}

/** Fold a report into what is known. A sight of flame or glow, or a doubt, wipes out an earlier black. */
export function noted(bed: Bed, report: Report, now_ms: number): Bed {
  const next: { -readonly [K in keyof Bed]: Bed[K] } = { ...bed };
  if (report.raked === true) next.raked_at_ms = now_ms;
  if (report.raked === false) delete next.raked_at_ms;
  if (report.in_the_dark === true) next.dark_at_ms = now_ms;
  if (report.in_the_dark === false) delete next.dark_at_ms;
  if (report.alarm) {
    next.alarm = report.alarm;
    next.alarm_at_ms = now_ms;
  }
  if (report.smoke === "room") next.draught_lost_at_ms = now_ms;
  if (report.flame === "none" && !report.unsure) next.no_flame_since_ms ??= now_ms - (report.flame_free_min ?? 0) * MIN;
  if (report.bed === "black" && !report.unsure) next.black_at_ms = now_ms;
  if (report.flame && report.flame !== "none") {
    next.flame_at_ms = now_ms;
    delete next.no_flame_since_ms;
  }
  if (report.bed === "glow") next.glow_at_ms = now_ms;
  if (report.unsure) next.unsure_at_ms = now_ms;
  if ((report.flame && report.flame !== "none") || report.bed === "glow" || report.unsure) {
    delete next.black_at_ms;
    delete next.dark_at_ms;
  }
  return next;
}

export type Missing = "flame" | "ten-minutes" | "rake" | "draught" | "glow" | "black" | "dark" | "alarm" | "alarm-doubt" | "unsure" | "too-soon";
export interface Gate {
  readonly open: boolean;
  /** what stands in the way, the gravest first */
  readonly missing: readonly Missing[];
}
const gate = (missing: readonly Missing[]): Gate => ({ open: missing.length === 0, missing });

/** A report of the bed speaks for this long. */
const FRESH_MS = 30 * MIN;
const FLAME_FREE_MS = 10 * MIN;
/** No load of wood is black sooner; a report that says so is at odds with the fire. */
const LEAST_TO_BLACK_MS = 60 * MIN;
/** A tested alarm counts as working for this long. */
const ALARM_TEST_MS = 60 * DAY;

export function airGate(bed: Bed, now_ms: number): Gate {
  const missing: Missing[] = [];
  if (bed.draught_lost_at_ms !== undefined && now_ms - bed.draught_lost_at_ms < FRESH_MS) missing.push("draught");
  if (bed.no_flame_since_ms === undefined) missing.push("flame");
  else if (now_ms - bed.no_flame_since_ms < FLAME_FREE_MS) missing.push("ten-minutes");
  if (bed.unsure_at_ms !== undefined && now_ms - bed.unsure_at_ms < FLAME_FREE_MS) missing.push("unsure");
  if (bed.raked_at_ms === undefined) missing.push("rake");
  return gate(missing);
}

export function damperGate(bed: Bed, alarms: AlarmsFacts, now_ms: number): Gate {
  const missing: Missing[] = [];
  const fresh = (at: number | undefined): boolean => at !== undefined && now_ms - at <= FRESH_MS;
  if (bed.no_flame_since_ms === undefined && !fresh(bed.black_at_ms)) missing.push("flame");
  if (bed.lit_at_ms !== undefined && now_ms - bed.lit_at_ms < LEAST_TO_BLACK_MS) missing.push("too-soon");
  if (fresh(bed.glow_at_ms) && !fresh(bed.black_at_ms)) missing.push("glow");
  if (fresh(bed.unsure_at_ms) && (bed.black_at_ms ?? 0) <= (bed.unsure_at_ms ?? 0)) missing.push("unsure");
  if (bed.raked_at_ms === undefined) missing.push("rake");
  if (!fresh(bed.black_at_ms)) missing.push("black");
  if (!fresh(bed.dark_at_ms)) missing.push("dark");
  const alarm = alarmStands(bed, alarms, now_ms);
  if (alarm !== "works") missing.push(alarm === "doubt" ? "alarm-doubt" : "alarm");
  return gate(missing);
}

/** What is known of the carbon monoxide alarm: said this evening, else on record. A record of a missing or outdated one outweighs a word. */
export function alarmStands(bed: Pick<Bed, "alarm" | "alarm_at_ms">, alarms: AlarmsFacts, now_ms: number): "works" | "doubt" | "unknown" {
  const co = alarms.co;
  if (co?.present === false) return "doubt";
  if (co?.ends_on !== undefined && Date.parse(co.ends_on) <= now_ms) return "doubt";
  if (bed.alarm !== undefined && now_ms - (bed.alarm_at_ms ?? 0) < DAY / 2) return bed.alarm;
  const tested = co?.tested_on === undefined ? null : now_ms - Date.parse(co.tested_on);
  return co?.present && co.ends_on !== undefined && tested !== null && tested >= -DAY && tested <= ALARM_TEST_MS ? "works" : "unknown";
}
