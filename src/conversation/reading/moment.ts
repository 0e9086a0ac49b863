/** A moment as a person says it, and which way an open one leans. */
import type { PlacedClock } from "./clock.ts";

export interface TimeOptions {
  /** which way an open time leans: what happened, what is planned, or whatever is nearest */
  readonly lean?: "past" | "future" | "nearest";
  /** language tag; decides whether 3/10 is in March or October. Day first unless the tag is of the United States */
  readonly locale?: string;
}

export type DayPart = "morning" | "noon" | "afternoon" | "evening" | "night";

/** A moment as said, before it is placed in time. */
export interface Moment {
  readonly from: number;
  readonly to: number;
  readonly day?: Temporal.PlainDate;
  readonly part?: DayPart;
  readonly clock?: PlacedClock;
  readonly instant_ms?: number;
}
