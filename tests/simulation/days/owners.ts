/** Owners who heat for years: their place, their habits, what they do about a notice. All from one seed. */
import type { FireStretch, Heater } from "../../../src/records/types.ts";
import { telling } from "../../../src/upkeep/due.ts";
import { upkeepOf, climateOf } from "../../../src/upkeep/facts.ts";
import { heatingDays } from "../../../src/upkeep/season.ts";
import { knowledge, snapshotOf } from "../../upkeep/facts.ts";
import { ZONES } from "../../upkeep/zones.ts";
import { random as seeded } from "../random.ts";

export interface Year {
  readonly owner: number;
  readonly zone: string;
  readonly first_fire: Temporal.PlainDate;
  /** the first word on the sweep since the season before */
  readonly told: Temporal.PlainDate | null;
  /** most notices between two sweepings */
  readonly tellings: number;
  readonly swept: Temporal.PlainDate | null;
}

const NOON = new Temporal.PlainTime(12);
const day_ms = (day: Temporal.PlainDate, zone: string): number => day.toZonedDateTime({ timeZone: zone, plainTime: NOON }).epochMilliseconds;

/** @returns one entry for each winter but the first, in which nothing could be told yet */
export function liveYears(owner: number, years: number): Year[] {
  const { next: random, from: between } = seeded(7_000 + owner);
  const { zone, latitude, longitude } = ZONES[owner % ZONES.length] as (typeof ZONES)[number];
  const person = { latitude: latitude + (random() - 0.5) * 0.6, longitude: longitude + (random() - 0.5) * 0.6, timezone: zone };
  const { mean_C } = climateOf(person, []);
  const days = mean_C && heatingDays(mean_C, knowledge.upkeep.defaults.heating_limit_C);
  if (!days) throw new Error(`no season in ${zone}`);
  // people differ from the climate by up to two weeks, and from year to year by some days
  const habit = between(-14, 14);
  const careless = random() < 0.2;
  const seasonOf = (year: number) => {
    const start = new Temporal.PlainDate(year, 1, 1).add({ days: days.start + habit + between(-5, 5) });
    const length = (days.end - days.start + 365) % 365;
    return { start, end: start.add({ days: Math.max(40, length - between(0, 20)) }) };
  };
  const winters = Array.from({ length: years + 1 }, (_, i) => seasonOf(2026 + i));
  let upkeep: Heater["upkeep"] = { swept_on: winters[0]?.start.subtract({ days: between(5, 60) }).toString() ?? "2026-01-01" };
  let told: Record<string, string> = {};
  const stretches: FireStretch[] = [];
  const out: Year[] = [];
  let today = (winters[0]?.start ?? new Temporal.PlainDate(2026, 9, 1)).add({ days: 1 });
  for (const [i, winter] of winters.slice(1).entries()) {
    const running = winters[i] as (typeof winters)[number];
    let first: Temporal.PlainDate | null = null;
    let tellings = 0;
    let most = 0;
    let swept: Temporal.PlainDate | null = null;
    let sweep_on: Temporal.PlainDate | null = null;
    while (Temporal.PlainDate.compare(today, winter.start) < 0) {
      if (sweep_on && Temporal.PlainDate.compare(today, sweep_on) >= 0) {
        upkeep = { ...upkeep, swept_on: today.toString() };
        swept = today;
        tellings = 0;
        sweep_on = null;
      }
      const burnt = Temporal.PlainDate.compare(today, running.end) < 0 ? { ...running, end: today } : running;
      const snapshot = snapshotOf({ person, upkeep, stretches: [...stretches, stretchOf(burnt, zone)] });
      const { jobs } = upkeepOf(knowledge, snapshot, day_ms(today, zone), zone);
      const { now, next_on } = telling(jobs, told, today);
      if (now.some(({ id }) => id === "sweep")) {
        first ??= today;
        most = Math.max(most, ++tellings);
        if (!careless && !sweep_on && !swept) sweep_on = today.add({ days: between(14, 70) });
      }
      told = { ...told, ...Object.fromEntries(now.map(({ id }) => [id, today.toString()])) };
      const next = sweep_on && Temporal.PlainDate.compare(sweep_on, next_on) < 0 ? sweep_on : next_on;
      today = Temporal.PlainDate.compare(next, today) > 0 ? next : today.add({ days: 1 });
    }
    out.push({ owner, zone, first_fire: winter.start, told: first, tellings: most, swept });
    stretches.push(stretchOf(running, zone));
    if (careless && random() < 0.5) upkeep = { ...upkeep, swept_on: winter.start.add({ days: 20 }).toString() };
  }
  return out;
}

const stretchOf = ({ start, end }: { start: Temporal.PlainDate; end: Temporal.PlainDate }, zone: string): FireStretch => ({ first_ms: day_ms(start, zone), last_ms: day_ms(end, zone), fires: 150 });
