/** What was filled into a form, as records: words to numbers, dates and yes or no, each field by its kind. */
import { readRecords, type ReadRecords } from "../records/read.ts";
import type { Context } from "./context.ts";
import { gloss } from "./german/gloss.ts";
import { inUnit, readFigures } from "./reading/figures.ts";
import { readTimes } from "./reading/times.ts";
import type { UnitId } from "../quantities.ts";

const GROUP: Readonly<Record<string, "heater" | "house" | "wood" | "fires">> = { "set-heater": "heater", "set-house": "house", "woodpile": "wood", "log-fire": "fires" };
const UNIT: readonly (readonly [end: string, unit: UnitId])[] = [["_kg", "kg"], ["_m3_stacked", "m3"], ["_m2", "m2"], ["_m", "m"], ["_mm", "mm"], ["_C", "C"], ["_kW", "kW"], ["_h", "h"], ["_pct_wet", "pct"]];

export function recordsFromForm(context: Context, id: string, values: Readonly<Record<string, unknown>>): ReadRecords {
  const group = Object.hasOwn(GROUP, id) ? GROUP[id] : undefined;
  if (!group) return readRecords(values);
  const problems: string[] = [];
  const record: Record<string, unknown> = {};
  for (const [key, raw] of Object.entries(values)) {
    if (raw === "" || raw === null || raw === undefined) continue;
    const value = typeof raw === "string" ? fromWords(context, key, raw.trim(), problems) : raw;
    if (value !== undefined) record[key] = value;
  }
  if (Object.keys(record).length === 0) return { kept: {}, problems };
  if (group === "fires" && record.lit_at === undefined) record.lit_at = new Date(context.now_ms).toISOString();
  const read = readRecords({ [group]: group === "wood" || group === "fires" ? [record] : record });
  return { kept: read.kept, problems: [...problems, ...read.problems] };
}

function fromWords(context: Context, key: string, words: string, problems: string[]): unknown {
  const english = context.language === "de" ? gloss(words).text : words;
  if (/^(yes|y|true|ja)$/i.test(words)) return true;
  if (/^(no|n|false|nein)$/i.test(words)) return false;
  if (key.endsWith("_at") || key.endsWith("_on")) {
    const time = readTimes(english, context.now_ms, context.reader.timezone, { lean: "past", locale: context.reader.locale })[0];
    if (!time) {
      problems.push(`"${key}" was "${words.slice(0, 40)}"; it takes a time such as 18:10 or a date such as 2026-10-03.`);
      return undefined;
    }
    const instant = Temporal.Instant.fromEpochMilliseconds(time.at_ms);
    return key.endsWith("_on") ? instant.toZonedDateTimeISO(context.reader.timezone).toPlainDate().toString() : instant.toString();
  }
  const unit = UNIT.find(([end]) => key.endsWith(end))?.[1] ?? (key.endsWith("_W_per_K") || key.endsWith("_W") ? null : undefined);
  if (unit === undefined) return words;
  const figure = readFigures(english)[0];
  if (!figure) {
    problems.push(`"${key}" was "${words.slice(0, 40)}"; it takes a figure.`);
    return undefined;
  }
  if (unit === null || figure.dimension === null) return figure.value;
  const value = inUnit(figure, unit);
  if (value === null) problems.push(`"${key}" was "${words.slice(0, 40)}"; it takes a figure in ${unit}.`);
  return value ?? undefined;
}
