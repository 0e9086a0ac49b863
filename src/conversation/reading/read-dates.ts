/** Dates that records want: "tested yesterday", "swept in October", "good till 2031". */
import type { Findings, Said, Statement } from "./statement.ts";

export interface DateWanted {
  /** begins a sentence: "The alarm test" */
  readonly what: string;
  /** must lie in the past */
  readonly past?: boolean;
  /** a bare year means its first day; else its middle */
  readonly year_start?: boolean;
}

const isYear = (value: number): boolean => Number.isInteger(value) && value >= 1700 && value <= 2100;

/** The date that carries a cue, as the record writes it, or undefined. */
export function momentDate(statement: Statement, cue: string, findings: Findings, wanted: DateWanted): string | undefined {
  const said = statement.said.find((one) => one.cues.has(cue)
    && (one.moment !== undefined || (one.figure?.dimension === null && isYear(one.figure.value))));
  return said ? dateOf(statement, said, findings, wanted) : undefined;
}

/** The date of one moment or bare year. */
export function dateOf(statement: Statement, said: Said, findings: Findings, wanted: DateWanted): string | undefined {
  const { now } = statement;
  if (said.figure) {
    const date = `${said.figure.value}-${wanted.year_start ? "01-01" : "07-01"}`;
    const kept = checked(date, statement, findings, wanted);
    if (kept) findings.assumed.push(`Only the year ${said.figure.value} was given; ${date} was taken.`);
    return kept;
  }
  const moment = said.moment;
  if (!moment) return undefined;
  if (moment.instant_ms !== undefined && now) return Temporal.Instant.fromEpochMilliseconds(moment.instant_ms).toZonedDateTimeISO(
    now.timeZoneId).toPlainDate().toString();
  return moment.day ? checked(moment.day.toString(), statement, findings, wanted) : undefined;
}

function checked(date: string, { now }: Statement, findings: Findings, wanted: DateWanted): string | undefined {
  if (!wanted.past || !now || Temporal.PlainDate.compare(Temporal.PlainDate.from(date), now.toPlainDate()) <= 0) return date;
  findings.problems.push(`${wanted.what} is dated ${date}, which is still to come; a date up to today would be right.`);
  return undefined;
}
