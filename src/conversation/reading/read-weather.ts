/** Tonight's or the coming days' temperatures from free words: "-12 tonight", "low of 10 F tonight", "high 3 low -5". */
import { convert } from "../../quantities.ts";
import type { DayWeatherFacts } from "../../records/schemas.ts";
import type { Figure } from "./figures.ts";
import { Findings, plain, state, type Read, type ReadContext, type Said, type Statement } from "./statement.ts";
import { readTimes } from "./times.ts";
import { isWord } from "./tokens.ts";

export interface WeatherRead extends Read<{ readonly low_C?: number; readonly high_C?: number }> {
  /** days named, with both ends known */
  readonly days: readonly DayWeatherFacts[];
}

const CUES = {
  low: ["low", "lows", "low of", "down to", "minimum", "min", "overnight", "at night", "night", "tonight", "coldest", "drops to",
    "drop to", "falling to", "frost", "lows around", "nights", "going to"],
  high: ["high", "highs", "high of", "up to", "maximum", "max", "by day", "daytime", "warmest", "afternoon", "highs of"],
} as const;
const isTemperature = ({ figure }: { figure?: Figure }): boolean => figure?.dimension === "temperature"
  || (figure?.dimension === null && Math.abs(figure.value) <= 120);
const TAKES = { low: isTemperature, high: isTemperature };

/** Reads outside temperatures. A bare number is taken in the reader's own scale and named in `assumed`. */
export function readWeather(text: string, context: ReadContext = {}): WeatherRead {
  const findings = new Findings();
  const statement = state(text, context, { cues: CUES, takes: TAKES, lean: "future" }, findings);
  const facts: { low_C?: number; high_C?: number } = {};
  const days = new Map<string, { low_C?: number; high_C?: number }>();
  let day: string | null = null;
  const ordered = statement.said;
  const firstDay = ordered.find(({ moment }) => moment?.day);
  const leads = firstDay !== undefined && ordered[0] === firstDay;
  ordered.forEach((said, n) => {
    if (said.moment?.day && leads) day = dayKey(said, statement);
    if (!said.figure || !isTemperature(said) || notOutside(statement, said)) return;
    if (said.figure.dimension === null && said.cues.size === 0 && said.figure.value >= 0 && !said.figure.low) return;
    const named = leads ? day : dayKey(ordered[n + 1], statement) ?? dayKey(ordered[n + 2], statement) ?? day;
    if (!leads) day = named;
    const target = named === null || named === statement.now?.toPlainDate().toString() ? facts
      : (days.get(named) ?? days.set(named, {}).get(named) as { low_C?: number; high_C?: number });
    note(said, said.figure, statement, target, findings);
  });
  for (const [date, ends] of pairsIn(text, context)) days.set(date, ends);
  const complete: DayWeatherFacts[] = [];
  for (const [date, ends] of days) {
    const low = ends.low_C ?? ends.high_C;
    const high = ends.high_C ?? ends.low_C;
    if (low === undefined || high === undefined) continue;
    if (ends.low_C === undefined || ends.high_C === undefined) findings.assumed.push(
      `Only one temperature was given for ${date}; it was taken for day and night.`);
    complete.push({ date, low_C: Math.min(low, high), high_C: Math.max(low, high) });
  }
  return { facts, days: complete, problems: findings.problems, questions: findings.questions, assumed: findings.assumed };
}

/** Nobody forecasts a day farther off than this. */
const FORECAST_MS = 9 * 86_400_000;
/** A wall of text holds no more forecast than its beginning. */
const LONGEST_READ = 4000;
const PAIR = /(?<!\p{L})(\p{L}{3,12})\.?:?\s{1,3}([-−–+]?\d{1,3})\s?\/\s?([-−–+]?\d{1,3})(?![\d/])/gu;

/** "Mon 2/9, Tue 4/11": a day and its two temperatures, which alone might be a date. */
function pairsIn(text: string, { now_ms, timezone, system, locale }: ReadContext): [string, { low_C: number; high_C: number }][] {
  if (now_ms === undefined || timezone === undefined) return [];
  const celsius = (digits: string): number => {
    const value = Number(digits.replace(/[−–]/, "-"));
    return system === "us" ? Math.round(convert(value, "F", "C") * 10) / 10 : value;
  };
  return [...text.slice(0, LONGEST_READ).matchAll(PAIR)].flatMap(([, word = "", first = "", second = ""]) => {
    const day = [`on ${word}`, word].flatMap((words) => readTimes(words, now_ms, timezone, { lean: "future", ...(locale ? { locale } : {}) }))[0];
    const [low_C, high_C] = [celsius(first), celsius(second)].sort((a, b) => a - b) as [number, number];
    if (day?.kind !== "day" || Math.abs(day.at_ms - now_ms) > FORECAST_MS || low_C < -70 || high_C > 60) return [];
    const date = Temporal.Instant.fromEpochMilliseconds(day.at_ms).toZonedDateTimeISO(timezone).toPlainDate().toString();
    return [[date, { low_C, high_C }]];
  });
}

const dayKey = (said: Said | undefined, statement: Statement): string | null =>
  (said?.moment?.day && statement.now ? said.moment.day.toString() : null);

/** "21 in the room", "5 kW", "max 60 surface": no weather. */
function notOutside({ tokens }: Statement, { from, to }: Said): boolean {
  for (let i = to; i < to + 4; i += 1) if (isWord(tokens[i], "inside", "room", "indoors", "surface", "face", "oven", "flue",
    "degrees inside")) return true;
  for (let i = Math.max(0, from - 3); i < from; i += 1) if (isWord(tokens[i], "inside", "indoors", "room", "surface", "face", "oven",
    "flue")) return true;
  return false;
}

function note(said: Said, figure: Figure, statement: Statement, target: { low_C?: number; high_C?: number }, findings: Findings): void {
  const unit = figure.unit === "F" || figure.unit === "C" ? figure.unit : statement.system === "us" ? "F" : "C";
  if (figure.unit === null || figure.unscaled) findings.assumed.push(
    `${figure.low === undefined || figure.high === undefined ? plain(figure.value) : `${plain(figure.low)} to ${plain(
    figure.high)}`} was taken as °${unit}.`);
  const celsius = (value: number): number | null => {
    const read = Math.round(convert(value, unit, "C") * 10) / 10;
    if (read >= -70 && read <= 60) return read;
    findings.problems.push(`${plain(value)} °${unit} outside cannot be right: -70 to 60 °C would be.`);
    return null;
  };
  if (figure.low !== undefined && figure.high !== undefined && !figure.about) {
    const low = celsius(figure.low);
    const high = celsius(figure.high);
    if (low !== null) target.low_C ??= low;
    if (high !== null) target.high_C ??= high;
    return;
  }
  const value = celsius(figure.value);
  if (value === null) return;
  if (said.cues.has("high") && !said.cues.has("low")) target.high_C ??= value;
  else if (target.low_C === undefined) target.low_C = value;
  else if (target.high_C === undefined) [target.low_C, target.high_C] = [Math.min(target.low_C, value), Math.max(target.low_C, value)];
  if (target.low_C !== undefined && target.high_C !== undefined && target.low_C > target.high_C) [target.low_C,
    target.high_C] = [target.high_C, target.low_C];
}
