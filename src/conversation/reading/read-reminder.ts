/** "Remind me to book the sweep on 1 August", "test the alarm every first Sunday at 9": what, when, and how often. */
import { nextTime, ruleText } from "../../upkeep/recurrence.ts";
import { readRepeat } from "./read-repeat.ts";
import { readTimes, zoned, type Time } from "./times.ts";

export interface ReminderSaid {
  /** empty when nothing was named */
  readonly what: string;
  /** absent when no time was named */
  readonly due_at_ms?: number;
  /** RFC 5545, see upkeep/recurrence.ts */
  readonly rule?: string;
  /** `before the first fire`, `at the end of the season`: a part of the heating year in place of a date */
  readonly phase?: "before" | "after";
  /** so many days before or after it, when that was said */
  readonly phase_days?: number;
  /** the time named lies in the past */
  readonly past?: boolean;
}
export interface ReminderAround {
  readonly now_ms: number;
  readonly timezone: string;
  readonly locale: string;
}

const USUAL = { hour: 9, minute: 0 } as const;
const LEADS =
  /^(?:(?:hey|hi|hello|ok|okay|please|pls|and|also|can you|could you|would you|will you|you should|i want you to|i'd like you to|i need you to)[,\s]+)*(?:set (?:up )?(?:me )?(?:a |an |another )?reminders?|(?:make|add|create) (?:me )?(?:a |an )?reminders?|(?:please )?(?:remind|nudge|ping|tell|message|notify) (?:me|us|everyone|everybody|the group|all of us)|reminder|remember|don'?t let (?:me|us) forget)\b[:,]?\s*/i;
const TRAILING = /(?:[\s,;:–-]+(?:please|pls|thanks|thank you|again|at|on|by|from|starting|and|the|about|for|every|around))+\s*$/i;
const LEADING = /^(?:[\s,;:–-]*(?:please|to|that|about|of|for|when|it's time to|it is time to|i (?:must|should|have to|need to)|we (?:must|should|have to|need to)|at|on|in|and|again|,)[\s,]+)+/i;
const PHASES: readonly (readonly [RegExp, "before" | "after"])[] = [
  [/\b(?:before|ahead of) (?:the |next |this )?(?:winter|heating season|season|first fire|cold)(?: starts| begins| comes)?\b|\bin (?:the )?autumn\b|\bin (?:the )?fall\b/i, "before"],
  [/\b(?:after|at the end of) (?:the |this )?(?:winter|heating season|season|last fire)\b|\bin (?:the )?spring\b/i, "after"],
];

const OFFSET = /\b(\d{1,3}|an?|one|two|three|four|six|eight|ten) (day|week|month)s? (?=before|ahead of|after)/i;
const OFFSET_LEFT = /\b(\d{1,3}|an?|one|two|three|four|six|eight|ten) (day|week|month)s?(?=\s|$)/i;
const SMALL: Readonly<Record<string, number>> = { a: 1, an: 1, one: 1, two: 2, three: 3, four: 4, six: 6, eight: 8, ten: 10 };
const daysOf = ([, count = "1", unit = "day"]: RegExpExecArray): number => (Number(count) || (SMALL[count.toLowerCase()] ?? 1)) * ({ day: 1, week: 7, month: 30 }[unit.toLowerCase()] ?? 1);

const ASKED =
  /^(?:(?:hey|hi|hello|ok|okay|please|pls|can you|could you|would you|will you|i want you to|i'd like you to|i need you to)[,\s]+)*(?:remind (?:me|us|everyone|everybody|all of us)(?! (?:what|which|when|who|how|why)\b)|(?:set|make|add|create) (?:up )?(?:me )?(?:a |an |another )?reminders?)\b/i;

/** Asked for in so many words, at the beginning: nothing else is meant. */
export const asksToRemind = (text: string): boolean => text.length <= 300 && ASKED.test(text.trim());

export function readReminder(text: string, around: ReminderAround): ReminderSaid {
  const words = text.slice(0, 400).replace(/\s+/g, " ").trim();
  const lead = LEADS.exec(words);
  const body = lead ? words.slice(lead[0].length) : words;
  const repeat = readRepeat(body);
  const rest = repeat ? cut(body, [repeat.at]) : body;
  const times = readTimes(rest, around.now_ms, around.timezone, { lean: "future", locale: around.locale });
  const [time] = times;
  const phase = (time && !OFFSET.test(body)) || repeat ? undefined : PHASES.find(([pattern]) => pattern.test(body));
  const offset = phase ? OFFSET.exec(body) : null;
  const what = tidy(phase ? body.replace(phase[0], " ").replace(OFFSET_LEFT, " ") : cut(rest, times.slice(0, 1).map(({ at }) => widened(rest, at))));
  if (phase) return { what, phase: phase[1], ...(offset ? { phase_days: daysOf(offset) } : {}) };
  if (!repeat) return { what, ...(time ? once(time, around) : {}) };
  const now = zoned(around.now_ms, around.timezone);
  const clock = time ? clockOf(time, around.timezone) : USUAL;
  const first = time?.kind === "day" || (time && /\d|from|start/.test(rest.slice(0, time.at[0]).slice(-8)) && time.at_ms > around.now_ms + 36 * 3_600_000) ? zoned(time.at_ms, around.timezone).toPlainDate() : now.toPlainDate();
  const start = first.toPlainDateTime(clock);
  const rule = { start: beginning(start, repeat.rrule, now.toPlainDateTime()), rrule: repeat.rrule };
  const due_at_ms = nextTime(rule, around.timezone, around.now_ms);
  return due_at_ms === null ? { what } : { what, due_at_ms, rule: ruleText(rule) };
}

/** A rhythm without a day of its own ("every month") begins one round from now, at the usual hour. */
function beginning(start: Temporal.PlainDateTime, rrule: string, now: Temporal.PlainDateTime): Temporal.PlainDateTime {
  if (/BY(?:DAY|MONTHDAY|MONTH)/.test(rrule) || Temporal.PlainDateTime.compare(start, now) > 0) return start;
  const interval = Number(/INTERVAL=(\d+)/.exec(rrule)?.[1] ?? 1);
  const round = /FREQ=MONTHLY/.test(rrule) ? { months: interval } : /FREQ=YEARLY/.test(rrule) ? { years: interval } : /FREQ=WEEKLY/.test(rrule) ? { weeks: interval } : { days: interval };
  const next = start.add(round);
  // the 29th to 31st would leave out short months
  return /FREQ=MONTHLY/.test(rrule) && next.day > 28 ? next.with({ day: 28 }) : next;
}

function once(time: Time, { now_ms, timezone }: ReminderAround): Pick<ReminderSaid, "due_at_ms" | "past"> {
  const at = zoned(time.at_ms, timezone);
  const named = time.kind === "instant" ? at : at.hour === 12 ? at.withPlainTime(USUAL) : at;
  // "at 7" without morning or evening: the one that people are up for, and that is still to come
  const ways = [named.epochMilliseconds, ...(time.other_ms === undefined ? [] : [time.other_ms])].filter((way) => way > now_ms);
  const usual = time.other_ms === undefined ? undefined : ways.toSorted((a, b) => Number(unusual(a, timezone)) - Number(unusual(b, timezone)) || a - b)[0];
  const due_at_ms = usual ?? named.epochMilliseconds;
  if (due_at_ms > now_ms) return { due_at_ms };
  // "today" at the usual hour that has passed: in an hour
  if (time.kind === "day" && at.toPlainDate().equals(zoned(now_ms, timezone).toPlainDate())) return { due_at_ms: now_ms + 3_600_000 };
  return { past: true };
}
const unusual = (at_ms: number, timezone: string): boolean => {
  const { hour } = zoned(at_ms, timezone);
  return hour < 7 || hour >= 22;
};

/** Of a rhythm only the time of day; "at 9" is the morning, "at 5" the afternoon. */
function clockOf(time: Time, timezone: string): { hour: number; minute: number } {
  const at = zoned(time.at_ms, timezone);
  if (time.kind === "day") return at.hour === 12 ? USUAL : { hour: at.hour, minute: at.minute };
  if (time.other_ms === undefined) return { hour: at.hour, minute: at.minute };
  const hour = at.hour % 12;
  return { hour: hour >= 7 || hour === 0 ? (hour === 0 ? 12 : hour) : hour + 12, minute: at.minute };
}

const cut = (words: string, spans: readonly (readonly [number, number])[]): string => spans.reduceRight((rest, [from, to]) => `${rest.slice(0, from)} ${rest.slice(to)}`, words);

/** The span together with the little word that leads it. */
function widened(words: string, [from, to]: readonly [number, number]): [number, number] {
  const lead = /\b(?:(?:on|at|by|from|until|in|starting|this|next|the)\s+)+$/i.exec(words.slice(0, from));
  return [lead ? lead.index : from, to];
}

function tidy(words: string): string {
  const plain = words.replace(/\s+/g, " ").replace(/[.,;:!?\s]+$/, "").trim();
  const whole = plain.replace(LEADS, "").replace(LEADING, "").replace(TRAILING, "").replace(LEADING, "").replace(/^[,;:\s]+|[.,;:\s]+$/g, "").trim();
  return /^(?:to|me|us|it|this|that|a|an|the|of|set|later|then|reminders?)?$/i.test(whole) ? "" : whole.slice(0, 200);
}
