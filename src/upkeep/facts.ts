/** The records of one heater as upkeep reads them: where it stands, when each job was last done, what the log shows. Pure. */
import { nearestPlace } from "../calculators/reference-data.ts";
import type { SweepRule, UpkeepKnowledge } from "../knowledge/upkeep-schema.ts";
import type { PersonFacts } from "../records/schemas.ts";
import type { Snapshot } from "../records/types.ts";
import { jobs, type Job } from "./due.ts";
import { seasons, type Climate, type Seasons } from "./season.ts";
import { signsSeen } from "./signs.ts";

export interface Upkeep {
  readonly today: Temporal.PlainDate;
  readonly jobs: readonly Job[];
  readonly seasons: Seasons | null;
  readonly law: SweepRule | null;
  readonly law_of: string | null;
  /** whether anything told on which side of the equator the heater stands */
  readonly placed: boolean;
}

/** a climate further away than this says little about a place (common practice, no source) */
const NEAR_KM = 700;
/** closer to the equator than this a hemisphere alone does not make a winter */
const TROPIC_DEG = 23.5;

export function upkeepOf(knowledge: { readonly upkeep: UpkeepKnowledge; readonly sweepLaw: Readonly<Record<string, SweepRule>> }, snapshot: Snapshot, now_ms: number, timezone: string): Upkeep {
  const { upkeep } = knowledge;
  const { person, heaters, home, fires, totals, stretches = [] } = snapshot;
  const heater = heaters[0];
  const today = Temporal.Instant.fromEpochMilliseconds(now_ms).toZonedDateTimeISO(timezone).toPlainDate();
  const climate = climateOf(person.facts, upkeep.southern_countries);
  const found = seasons({ ...climate, today, timezone, stretches }, upkeep.defaults);
  const { country } = person.facts;
  const law = (country ? knowledge.sweepLaw[country] : undefined) ?? null;
  const last = lastTimes(upkeep, snapshot);
  const facts = {
    today, law, last,
    seasons: found,
    heater: heater?.facts ?? {},
    ends: endsOf(upkeep, home.alarms),
    signs: signsSeen(upkeep.signs, fires, heater?.upkeep.signs, timezone),
    since: (id: string) => {
      if (upkeep.tasks[id]?.record === "upkeep.swept_on") return { fires: totals.since_sweep_fires, load_kg: totals.since_sweep_kg };
      const from = last[id];
      if (from === undefined) return { fires: totals.fires, load_kg: totals.load_kg };
      const counted = fires.filter(({ lit_at_ms }) => lit_at_ms >= Date.parse(from));
      return { fires: counted.length, load_kg: counted.reduce((sum, fire) => sum + (fire.facts.load_kg ?? 0), 0) };
    },
  };
  return { today, jobs: jobs(upkeep, facts), seasons: found, law, law_of: law && country ? country : null, placed: climate.south !== undefined || found !== null };
}

/** Latitude and longitude first, then the country, then what the zone's summer time gives away. */
export function climateOf({ latitude, longitude, country, timezone }: PersonFacts, southern: readonly string[]): Climate {
  if (latitude !== undefined) {
    const near = longitude === undefined ? undefined : nearestPlace(latitude, longitude);
    if (near && near.distance_km <= NEAR_KM && Math.sign(near.place.latitude) === Math.sign(latitude)) return { mean_C: near.place.mean_C, south: latitude < 0 };
    return Math.abs(latitude) < TROPIC_DEG ? {} : { south: latitude < 0 };
  }
  if (country !== undefined) return { south: southern.includes(country) };
  const south = timezone === undefined ? undefined : southByClock(timezone);
  return south === undefined ? {} : { south };
}

/** Clocks stand an hour ahead in summer: in January south of the equator, in July north of it. */
function southByClock(timezone: string): boolean | undefined {
  const offset = (month: number): number => Temporal.PlainDate.from({ year: 2025, month, day: 10 }).toZonedDateTime(timezone).offsetNanoseconds;
  const [january, july] = [offset(1), offset(7)];
  return january === july ? undefined : january > july;
}

/** When each job was last done: its record, or the word of whoever did it, whichever is later. */
function lastTimes({ tasks }: UpkeepKnowledge, { heaters, home }: Snapshot): Record<string, string | undefined> {
  const heater = heaters[0];
  const wood = home.wood.flatMap(({ measured_on }) => measured_on ?? []).sort().at(-1);
  const records: Readonly<Record<string, string | undefined>> = {
    "upkeep.swept_on": heater?.upkeep.swept_on,
    "upkeep.channels_cleaned_on": heater?.upkeep.channels_cleaned_on,
    "upkeep.gasket_changed_on": heater?.upkeep.gasket_changed_on,
    "alarms.co.tested_on": home.alarms.co?.tested_on,
    "alarms.smoke.tested_on": home.alarms.smoke?.tested_on,
    "wood.measured_on": wood,
  };
  return Object.fromEntries(Object.entries(tasks).map(([id, { record }]) => [id, [record ? records[record] : undefined, heater?.upkeep.done?.[id]].filter((one) => one !== undefined).sort().at(-1)]));
}

const endsOf = ({ tasks }: UpkeepKnowledge, { co, smoke }: Snapshot["home"]["alarms"]): Record<string, string | undefined> =>
  Object.fromEntries(Object.entries(tasks).map(([id, { ends }]) => [id, ends === "alarms.co.ends_on" ? co?.ends_on : ends === "alarms.smoke.ends_on" ? smoke?.ends_on : undefined]));
