/** Writing records down, given as data, by a form or by talking: every field optional, nothing lost, what is missing named. */
import { ours, say, steps, text, verbatim, type Block, type Text } from "../../answer.ts";
import { q } from "../../quantities.ts";
import type { ReadRecords } from "../../records/read.ts";
import type { FireFacts, HeaterFacts, WoodFacts } from "../../records/schemas.ts";
import type { Fire, Heater, Home, Person, Write } from "../../records/types.ts";
import type { TopicId } from "../../topics.ts";
import { blocks, type Context, type Outcome } from "../context.ts";

/** A fire this long before now is a slip of the pen. */
const OLDEST_FIRE_MS = 3 * 366 * 86_400_000;
const FUTURE_SLACK_MS = 26 * 3_600_000;

export interface Kept {
  readonly writes: readonly Write[];
  readonly problems: readonly string[];
  readonly undo: readonly Write[];
}

/** Folds records into what is there. Existing facts stay unless a new one replaces them. */
export function keep(context: Context, { kept, problems }: ReadRecords): Kept {
  const { snapshot } = context;
  const said = [...problems];
  const writes: Write[] = [];
  const undo: Write[] = [];
  const { heater, house, wood, fires, upkeep, alarms, weather, fires_heater_of: _other, ...facts } = kept;

  if (Object.keys(facts).length > 0) {
    const person: Person = { ...snapshot.person, facts: { ...snapshot.person.facts, ...facts } };
    writes.push({ write: "person", person });
    undo.push({ write: "person", person: snapshot.person });
  }

  let meant: Heater | null = context.heater;
  if (heater || upkeep || (fires && fires.length > 0 && !meant)) {
    const before = meant ?? { id: context.id("heater"), owner_id: snapshot.person.id, member_ids: [snapshot.person.id], facts: {}, upkeep: {}, rules: [] };
    const next = sensible(ofItsSource(before.facts, { ...before.facts, ...heater }, heater), said);
    const changed: Heater = { ...before, facts: next, upkeep: { ...before.upkeep, ...upkeep } };
    writes.push({ write: "heater", heater: changed });
    // a heater that was not there before goes back to one that nothing is known of
    undo.push({ write: "heater", heater: before });
    meant = changed;
  }

  if (house || wood || alarms || weather) {
    const { home } = snapshot;
    const next: Home = {
      ...home,
      house: { ...home.house, ...house },
      wood: wood ? mergeWood(home.wood, wood) : home.wood,
      alarms: { co: { ...home.alarms.co, ...alarms?.co }, smoke: { ...home.alarms.smoke, ...alarms?.smoke } },
      weather: weather ? (Array.isArray(weather) ? weather : tonight(context, weather)) : home.weather,
    };
    writes.push({ write: "home", home: pruned(next) });
    undo.push({ write: "home", home });
  }

  for (const fire of fires ?? []) {
    const wrong = fireProblem(fire, context);
    if (wrong) said.push(wrong);
    else if (meant) {
      const row = fireRow(context, meant.id, fire);
      writes.push({ write: "fire", fire: row });
      const was = snapshot.fires.find((one) => one.id === row.id);
      undo.push(was ? { write: "fire", fire: was } : { write: "delete-fire", fire_id: row.id });
    }
  }
  return { writes, problems: said, undo };
}

/** "Actually 15 kg", said of a sheet's 12: a larger load has the sheet behind it only when that is said with it. */
function ofItsSource(before: HeaterFacts, facts: HeaterFacts, told: HeaterFacts | undefined): HeaterFacts {
  const raised = before.max_load_kg !== undefined && told?.max_load_kg !== undefined && told.max_load_kg > before.max_load_kg;
  if (!raised || told.max_load_source !== undefined) return facts;
  const { max_load_source: _, ...rest } = facts;
  return rest;
}

/** The same lighting of the same heater is the same fire: telling it twice completes it. */
function fireRow(context: Context, heater_id: string, facts: FireFacts): Fire {
  const lit_at_ms = Date.parse(facts.lit_at);
  const before = context.snapshot.fires.find((fire) => Math.abs(fire.lit_at_ms - lit_at_ms) < 60_000);
  return { id: before?.id ?? `fire-${heater_id}-${lit_at_ms}`, heater_id, person_id: before?.person_id ?? context.snapshot.person.id, lit_at_ms, facts: { ...before?.facts, ...facts } };
}

function fireProblem(fire: FireFacts, context: Context): string | null {
  const lit = Date.parse(fire.lit_at);
  if (lit < context.now_ms - OLDEST_FIRE_MS) return `A fire lit on ${fire.lit_at.slice(0, 10)} is more than three years ago; was another year meant? It was not written down.`;
  if (lit > context.now_ms + FUTURE_SLACK_MS) return `A fire lit on ${fire.lit_at.slice(0, 10)} is still to come; write it down once it has burnt.`;
  for (const key of ["flame_out_at", "air_closed_at", "damper_closed_at"] as const) {
    const at = fire[key];
    if (at !== undefined && Date.parse(at) < lit) return `The fire lit at ${fire.lit_at} has ${key} before it was lit; times run forward. It was not written down.`;
  }
  return null;
}

function sensible(facts: HeaterFacts, problems: string[]): HeaterFacts {
  const { max_load_kg, min_load_kg, max_day_kg, ...rest } = facts;
  const next: HeaterFacts = { ...rest, ...(max_load_kg === undefined ? {} : { max_load_kg }) };
  if (min_load_kg !== undefined && max_load_kg !== undefined && min_load_kg > max_load_kg) {
    problems.push(`A smallest load of ${min_load_kg} kg above the largest of ${max_load_kg} kg cannot be; the smallest was not kept.`);
  } else if (min_load_kg !== undefined) next.min_load_kg = min_load_kg;
  if (max_day_kg !== undefined && max_load_kg !== undefined && max_day_kg < max_load_kg) {
    problems.push(`A limit of ${max_day_kg} kg a day below one largest load of ${max_load_kg} kg does not fit; the day's limit was kept and counts, please check the load.`);
  }
  if (max_day_kg !== undefined) next.max_day_kg = max_day_kg;
  return next;
}

function mergeWood(before: readonly WoodFacts[], given: readonly WoodFacts[]): WoodFacts[] {
  const key = (wood: WoodFacts): string => `${wood.name ?? ""}/${wood.species ?? ""}`.toLowerCase();
  const rest = before.filter((wood) => !given.some((one) => key(one) === key(wood)));
  return [...given.map((one) => ({ ...before.find((wood) => key(wood) === key(one)), ...one })), ...rest];
}

function tonight(context: Context, weather: { low_C?: number; high_C?: number }) {
  const low_C = weather.low_C ?? weather.high_C;
  if (low_C === undefined) return [];
  const date = Temporal.Instant.fromEpochMilliseconds(context.now_ms).toZonedDateTimeISO(context.reader.timezone).toPlainDate().toString();
  return [{ date, low_C, high_C: weather.high_C ?? low_C + 7 }];
}

const pruned = (home: Home): Home => ({
  ...home,
  alarms: { ...(home.alarms.co && Object.keys(home.alarms.co).length > 0 ? { co: home.alarms.co } : {}), ...(home.alarms.smoke && Object.keys(home.alarms.smoke).length > 0 ? { smoke: home.alarms.smoke } : {}) },
});

/** What was understood, read back; what was not, said plainly. */
export function recordsOutcome(context: Context, topic: TopicId, read: ReadRecords, extra: readonly Block[] = []): Outcome {
  const done = keep(context, read);
  const lines = readBack(read.kept);
  return {
    draft: {
      topic,
      headline: lines.length > 0 || done.writes.length > 0 ? text("records.kept") : text("records.nothing"),
      blocks: blocks(
        lines.length > 0 && steps(lines, { ordered: false }),
        done.problems.length > 0 && steps(done.problems.map(ours), { ordered: false, title: text("records.problems") }),
        ...extra,
        done.writes.length > 0 && say(text("records.undo")),
      ),
    },
    writes: done.writes,
    state: done.undo.length > 0 ? { undo: { writes: done.undo, at_ms: context.now_ms } } : {},
  };
}

const UNIT_OF: readonly (readonly [suffix: string, unit: Parameters<typeof q>[1]])[] = [
  ["_kg", "kg"], ["_kW", "kW"], ["_mm", "mm"], ["_m2", "m2"], ["_m3_stacked", "m3"], ["_m", "m"], ["_C", "C"], ["_h", "h"], ["_pct_wet", "pct"], ["_W_per_K", "W/K"], ["_W", "W"],
];

/** One line a fact: its label and the value in the reader's units. */
export function readBack(kept: ReadRecords["kept"]): Text[] {
  const lines: Text[] = [];
  const add = (key: string, value: unknown): void => {
    if (value === undefined || value === null) return;
    if (Array.isArray(value)) {
      value.forEach((one) => add(key, one));
      return;
    }
    if (typeof value === "object") {
      const inner = readFields(value as Record<string, unknown>);
      if (inner.length > 0) lines.push(text("records.line", { what: text(`record.${key}`), value: inner }));
      return;
    }
    lines.push(text("records.line", { what: text(`record.${key}`), value: valueText(key, value) }));
  };
  for (const [key, value] of Object.entries(kept)) add(key, value);
  return lines.slice(0, 40);
}

function readFields(record: Record<string, unknown>): Text[] {
  return Object.entries(record).flatMap(([key, value]) => {
    if (value === undefined) return [];
    if (typeof value === "object" && value !== null) return [text("records.field", { what: text(`record.${key}`), value: readFields(value as Record<string, unknown>) })];
    return [text("records.field", { what: text(`record.${key}`), value: valueText(key, value) })];
  });
}

/** fields that hold what a person called something */
const OWN_WORDS: ReadonlySet<string> = new Set(["name", "note", "room", "fires_heater_of", "timezone", "country", "locale"]);

function valueText(key: string, value: unknown): Text | ReturnType<typeof q> | string | { at_ms: number; show: "date" | "day-time" } {
  if (typeof value === "boolean") return text(value ? "records.yes" : "records.no");
  if (typeof value === "number") {
    const unit = UNIT_OF.find(([suffix]) => key.endsWith(suffix))?.[1];
    return unit ? q(value, unit, { digits: unit === "m3" ? 2 : 1 }) : String(value);
  }
  const words = String(value);
  if (key.endsWith("_on")) return { at_ms: Date.parse(`${words}T12:00:00Z`), show: "date" };
  if (key.endsWith("_at")) return { at_ms: Date.parse(words), show: "day-time" };
  return OWN_WORDS.has(key) ? verbatim(words) : ours(words);
}
