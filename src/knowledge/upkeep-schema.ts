/** The shape of `knowledge/upkeep.yaml` and `knowledge/sweep-law.yaml`: jobs round the year, signs of the log, and sweeping rules by country. */
import { z } from "zod";
import { When } from "./schemas.ts";

const id = z.string().regex(/^[a-z][a-z0-9-]*$/, "small letters, digits and hyphens, such as pre-season");
const sentence = z.string().min(2).max(600);
const source = z.string().min(4).max(400);
const country = z.string().regex(/^[A-Z]{2}$/, "a two-letter country code such as FI");
const monthDay = z.string().regex(/^\d{2}-\d{2}$/, "a month and a day such as 10-01");
const whole = (least: number, most: number) => z.number().int().min(least).max(most);

/** Days from the first (`start`) or last (`end`) fire of a season; negative before it. */
const Mark = z.strictObject({ mark: z.enum(["start", "end"]), days: whole(-200, 200) });
const Every = z.strictObject({
  months: z.number().positive().max(240).optional(),
  days: whole(1, 400).optional(),
  /** counts only while the heater is in use */
  in_season: z.boolean().default(false),
}).refine(({ months, days }) => (months === undefined) !== (days === undefined), "either months or days");
const Sooner = z.strictObject({
  times: whole(1, 50),
  within_days: whole(1, 400),
  due_in_days: whole(0, 120),
  /** no fire until it is done */
  no_fire: z.boolean().default(false),
});

export const RECORDS = [
  "upkeep.swept_on", "upkeep.channels_cleaned_on", "upkeep.gasket_changed_on", "alarms.co.tested_on", "alarms.smoke.tested_on", "wood.measured_on", "log",
] as const;
export const BY = ["owner", "sweep", "mason", "ventilation", "roofer"] as const;

export const UpkeepTask = z.strictObject({
  title: sentence,
  what: sentence,
  /** said when it must be booked */
  book: sentence.optional(),
  by: z.enum(BY),
  window: z.strictObject({ from: Mark, to: Mark }).optional(),
  /** first mention, before the window opens */
  tell_from: Mark.optional(),
  every: Every.optional(),
  /** months by kind of heater, in place of `every` */
  every_by_kind: z.record(z.string(), z.number().positive()).default({}),
  use: z.strictObject({ fires: whole(1, 2000).optional(), load_kg: z.number().positive().max(20000).optional() }).optional(),
  /** fires between two times with a grate */
  use_by: z.strictObject({ grate: whole(1, 100) }).optional(),
  lead_weeks: z.tuple([z.number().min(0).max(60), z.number().min(0).max(60)]).default([0, 0]),
  record: z.enum(RECORDS).optional(),
  /** the record that holds a printed end date */
  ends: z.enum(["alarms.co.ends_on", "alarms.smoke.ends_on"]).optional(),
  tell: z.boolean().default(false),
  /** an everyday or rare job that the list leaves out unless asked about */
  quiet: z.boolean().default(false),
  sooner: z.record(id, Sooner).default({}),
  tools: z.array(z.string().min(2).max(80)).default([]),
  cautions: z.array(id).default([]),
  when: When.optional(),
  words: z.array(z.string()).min(1),
  done: z.array(z.string()).default([]),
  source,
});

const LogSign = z.strictObject({
  /** topics whose question is the sign */
  troubles: z.array(id).default([]),
  /** pattern in the note of a fire */
  note: z.string().optional(),
  moisture_over_pct_wet: z.number().optional(),
  says: sentence,
});

const Season = z.strictObject({ start: monthDay, end: monthDay });
export const UpkeepFile = z.strictObject({
  defaults: z.strictObject({ north: Season, south: Season, heating_limit_C: z.number().min(5).max(20), source }),
  southern_countries: z.array(country),
  tasks: z.record(id, UpkeepTask),
  signs: z.record(id, LogSign),
});

const Rule = z.strictObject({
  kind: z.enum(["law", "standard", "advice"]),
  /** months between two sweepings of a heater in regular use */
  months: z.number().positive().max(120),
  /** only while the heater is in use, not through the summer */
  in_season: z.boolean().default(false),
  says: sentence,
  source,
});
export const SweepLawFile = z.record(country, Rule);

export type UpkeepTask = z.output<typeof UpkeepTask>;
export type Mark = z.output<typeof Mark>;
export type LogSign = z.output<typeof LogSign>;
export type UpkeepKnowledge = z.output<typeof UpkeepFile>;
export type SweepRule = z.output<typeof Rule>;

/** What a schema cannot see: signs nobody reads, patterns that are none, jobs that never fall due. */
export function checkUpkeep({ tasks, signs }: UpkeepKnowledge): string[] {
  const file = "knowledge/upkeep.yaml";
  const problems: string[] = [];
  const pattern = (at: string, words: string): void => {
    try {
      new RegExp(words, "i");
    } catch {
      problems.push(`${file}: ${at}: "${words}" is not a pattern.`);
    }
  };
  for (const [name, task] of Object.entries(tasks)) {
    if (!task.window && !task.every && !task.use && !task.ends) problems.push(`${file}: tasks > ${name}: it never falls due; give it a window, every, use or ends.`);
    if (!task.record && !task.ends) problems.push(`${file}: tasks > ${name}: nothing says when it was last done; give it a record.`);
    for (const sign of Object.keys(task.sooner)) if (!(sign in signs)) problems.push(`${file}: tasks > ${name} > sooner: "${sign}" is not among the signs.`);
    for (const words of task.done) pattern(`tasks > ${name} > done`, words);
  }
  for (const [name, { note }] of Object.entries(signs)) if (note) pattern(`signs > ${name} > note`, note);
  return problems;
}
