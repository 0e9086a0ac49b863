/** How often something comes round, in a person's words: "every first Sunday", "monthly", "on the 1st of every month", "every 2 weeks". */
export interface Repeat {
  /** RFC 5545 rule; null where the words name a season, not a rhythm */
  readonly rrule: string;
  /** day on which the rhythm has to begin: that weekday, that day of the month */
  readonly weekdays?: readonly string[];
  /** where the words stand */
  readonly at: readonly [from: number, to: number];
}

const DAYS: Readonly<Record<string, string>> = { mon: "MO", tue: "TU", wed: "WE", thu: "TH", fri: "FR", sat: "SA", sun: "SU" };
const DAY = "(mon|tues?|wed(?:nes)?|thu(?:rs?)?|fri|sat(?:ur)?|sun)(?:day)?s?";
const ORDINALS: Readonly<Record<string, number>> = { first: 1, "1st": 1, second: 2, "2nd": 2, third: 3, "3rd": 3, fourth: 4, "4th": 4, last: -1 };
const ORDINAL = `(${Object.keys(ORDINALS).join("|")})`;
const NUMBERS: Readonly<Record<string, number>> = { one: 1, two: 2, three: 3, four: 4, five: 5, six: 6, seven: 7, eight: 8, nine: 9, ten: 10, twelve: 12, other: 2, second: 2, couple: 2 };
const NUMBER = `(\\d{1,2}|${Object.keys(NUMBERS).join("|")})`;
const FREQ: Readonly<Record<string, string>> = { day: "DAILY", night: "DAILY", morning: "DAILY", evening: "DAILY", week: "WEEKLY", month: "MONTHLY", year: "YEARLY" };
const MONTH_END = "(?: (?:of|in) (?:the|each|every) month| each month| every month| monthly)?";

const day = (word: string | undefined): string => DAYS[(word ?? "").slice(0, 3)] ?? "MO";
const count = (word: string | undefined): number => Number(word) || (NUMBERS[word ?? ""] ?? 1);
const every = (freq: string, interval: number): string => `FREQ=${freq}${interval > 1 ? `;INTERVAL=${interval}` : ""}`;

/** In order: what says more comes first. */
const WAYS: readonly { readonly words: RegExp; rule(found: RegExpExecArray): Omit<Repeat, "at"> | null }[] = [
  {
    words: new RegExp(`\\b(?:(?:every|each|on the|the) )?${ORDINAL} ${DAY}(?: (?:of|in) (?:the|each|every) month| each month| every month| monthly)\\b`),
    rule: (m) => ({ rrule: `FREQ=MONTHLY;BYDAY=${ORDINALS[m[1] ?? ""]}${day(m[2])}` }),
  },
  // "every second Friday" is every other week; "every first Friday" is of the month
  {
    words: new RegExp(`\\b(?:every|each) (second|2nd|other|third|3rd) ${DAY}\\b(?! (?:of|in) )`),
    rule: (m) => ({ rrule: `FREQ=WEEKLY;INTERVAL=${(m[1] ?? "").startsWith("t") || m[1] === "3rd" ? 3 : 2};BYDAY=${day(m[2])}`, weekdays: [day(m[2])] }),
  },
  { words: new RegExp(`\\b(?:every|each) ${ORDINAL} ${DAY}${MONTH_END}\\b`), rule: (m) => ({ rrule: `FREQ=MONTHLY;BYDAY=${ORDINALS[m[1] ?? ""]}${day(m[2])}` }) },
  {
    words: /\b(?:(?:every|each) month on the|on the|the|every) (\d{1,2})(?:st|nd|rd|th)(?: day)?(?: (?:of|in) (?:the|each|every) month| each month| every month| monthly)\b|\b(?:every|each) month on (?:the )?(\d{1,2})(?:st|nd|rd|th)?\b|\bmonthly on the (\d{1,2})(?:st|nd|rd|th)?\b/,
    rule: (m) => {
      const date = Number(m[1] ?? m[2] ?? m[3]);
      // the 31st of a month that has none is its last day, not a month left out
      return date < 1 || date > 31 ? null : { rrule: date <= 28 ? `FREQ=MONTHLY;BYMONTHDAY=${date}` : `FREQ=MONTHLY;BYMONTHDAY=${range(28, date)};BYSETPOS=-1` };
    },
  },
  { words: /\b(?:on the )?(first|last) day of (?:the|each|every) month\b/, rule: (m) => ({ rrule: `FREQ=MONTHLY;BYMONTHDAY=${m[1] === "last" ? -1 : 1}` }) },
  {
    words: new RegExp(`\\b(?:every|each) ${DAY}((?:,? ?(?:and|&|,) ?${DAY})+)\\b`),
    rule: (m) => {
      const days = [...new Set(m[0].match(/mon|tue|wed|thu|fri|sat|sun/g) ?? [])].map(day);
      return { rrule: `FREQ=WEEKLY;BYDAY=${days.join(",")}`, weekdays: days };
    },
  },
  { words: new RegExp(`\\b(?:every|each) ${DAY}\\b|\\bweekly on (?:a )?${DAY}\\b`), rule: (m) => ({ rrule: `FREQ=WEEKLY;BYDAY=${day(m[1] ?? m[2])}`, weekdays: [day(m[1] ?? m[2])] }) },
  { words: /\bon (mon|tues|wednes|thurs|fri|satur|sun)days\b/, rule: (m) => ({ rrule: `FREQ=WEEKLY;BYDAY=${day(m[1])}`, weekdays: [day(m[1])] }) },
  { words: /\b(?:every|each) (?:weekday|working day|workday)s?\b|\bon weekdays\b/, rule: () => ({ rrule: "FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR" }) },
  { words: /\b(?:every|each) weekend\b/, rule: () => ({ rrule: "FREQ=WEEKLY;BYDAY=SA", weekdays: ["SA"] }) },
  { words: /\b(?:every|each) (?:half[- ]year|six months)\b|\btwice (?:a|per|each|every) year\b|\bhalf[- ]yearly\b/, rule: () => ({ rrule: every("MONTHLY", 6) }) },
  { words: /\b(?:every|each) quarter\b|\bquarterly\b|\bfour times (?:a|per) year\b/, rule: () => ({ rrule: every("MONTHLY", 3) }) },
  { words: /\b(?:every|each) fortnight\b|\bfortnightly\b|\bevery two weeks\b|\bbi-?weekly\b/, rule: () => ({ rrule: every("WEEKLY", 2) }) },
  { words: new RegExp(`\\b(?:every|each) ${NUMBER} (day|night|week|month|year)s?\\b`), rule: (m) => ({ rrule: every(FREQ[m[2] ?? ""] ?? "DAILY", count(m[1])) }) },
  { words: /\bonce (?:a|per|every|each) (day|week|month|year)\b/, rule: (m) => ({ rrule: every(FREQ[m[1] ?? ""] ?? "DAILY", 1) }) },
  { words: /\b(?:every|each) (?:single )?(day|night|morning|evening|week|month|year)\b/, rule: (m) => ({ rrule: every(FREQ[m[1] ?? ""] ?? "DAILY", 1) }) },
  { words: /\b(daily|nightly|weekly|monthly|yearly|annually)\b/, rule: (m) => ({ rrule: every({ d: "DAILY", n: "DAILY", w: "WEEKLY", m: "MONTHLY" }[(m[1] ?? "")[0] ?? ""] ?? "YEARLY", 1) }) },
];

const range = (from: number, to: number): string => Array.from({ length: to - from + 1 }, (_, i) => from + i).join(",");

export function readRepeat(text: string): Repeat | null {
  const plain = text.toLowerCase();
  for (const { words, rule } of WAYS) {
    const found = words.exec(plain);
    const made = found && rule(found);
    if (found && made) return { ...made, at: [found.index, found.index + found[0].length] };
  }
  return null;
}
