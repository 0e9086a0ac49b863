/** ISO 8601 weeks, Monday to Sunday, in UTC so that everybody's week is the same; named `2026-W48`, which sorts as it should until 9999. */

const WEEK_MS = 7 * 86_400_000;

export interface Week {
  readonly week: string;
  readonly from_ms: number;
  readonly to_ms: number;
}

export function weekOf(at_ms: number): Week {
  const day = Temporal.Instant.fromEpochMilliseconds(at_ms).toZonedDateTimeISO("UTC").toPlainDate();
  const monday = day.subtract({ days: day.dayOfWeek - 1 });
  const from_ms = monday.toZonedDateTime("UTC").epochMilliseconds;
  return { week: `${day.yearOfWeek}-W${String(day.weekOfYear).padStart(2, "0")}`, from_ms, to_ms: from_ms + WEEK_MS };
}

export const nextWeek = (at_ms: number): Week => weekOf(at_ms + WEEK_MS);
/** The week before the one in which `at_ms` lies: nothing more can happen in it. */
export const lastWholeWeek = (at_ms: number): Week => weekOf(at_ms - WEEK_MS);
