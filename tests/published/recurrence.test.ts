/** Recurrence against RFC 5545's own examples (section 3.8.5.3), all in America/New_York at 09:00 unless they say otherwise. */
import { describe, expect, it } from "vitest";
import { firstTimes, nextTime, readRule } from "../../src/upkeep/recurrence.ts";

const ZONE = "America/New_York";
const days = (year: number, ...list: readonly (readonly [month: number, ...days: number[]])[]): string[] =>
  list.flatMap(([month, ...some]) => some.map((day) => `${year}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`));
const upTo = (from: number, to: number, step = 1): number[] => Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, i) => from + i * step);

/** name, DTSTART, RRULE, the first dates; `whole` when the example lists every occurrence */
const EXAMPLES: readonly { name: string; start?: string; rule: string; dates: string[]; whole?: true }[] = [
  { name: "daily for 10 occurrences", rule: "FREQ=DAILY;COUNT=10", dates: days(1997, [9, ...upTo(2, 11)]), whole: true },
  { name: "every other day", rule: "FREQ=DAILY;INTERVAL=2", dates: days(1997, [9, ...upTo(2, 30, 2)], [10, ...upTo(2, 30, 2)], [11, 1, 3, 5]) },
  { name: "every 10 days, 5 occurrences", rule: "FREQ=DAILY;INTERVAL=10;COUNT=5", dates: days(1997, [9, 2, 12, 22], [10, 2, 12]), whole: true },
  { name: "daily until 24 December", rule: "FREQ=DAILY;UNTIL=19971224T000000Z", dates: days(1997, [9, ...upTo(2, 30)], [10, ...upTo(1, 31)], [11, ...upTo(1, 30)], [12, ...upTo(1, 23)]), whole: true },
  { name: "weekly for 10 occurrences", rule: "FREQ=WEEKLY;COUNT=10", dates: days(1997, [9, 2, 9, 16, 23, 30], [10, 7, 14, 21, 28], [11, 4]), whole: true },
  { name: "weekly until 24 December", rule: "FREQ=WEEKLY;UNTIL=19971224T000000Z", dates: days(1997, [9, 2, 9, 16, 23, 30], [10, 7, 14, 21, 28], [11, 4, 11, 18, 25], [12, 2, 9, 16, 23]), whole: true },
  { name: "every other week", rule: "FREQ=WEEKLY;INTERVAL=2;WKST=SU", dates: days(1997, [9, 2, 16, 30], [10, 14, 28], [11, 11, 25], [12, 9, 23]) },
  { name: "Tuesday and Thursday for five weeks", rule: "FREQ=WEEKLY;COUNT=10;WKST=SU;BYDAY=TU,TH", dates: days(1997, [9, 2, 4, 9, 11, 16, 18, 23, 25, 30], [10, 2]), whole: true },
  { name: "every other week on Monday, Wednesday and Friday", start: "19970901T090000", rule: "FREQ=WEEKLY;INTERVAL=2;UNTIL=19971224T000000Z;WKST=SU;BYDAY=MO,WE,FR", dates: days(1997, [9, 1, 3, 5, 15, 17, 19, 29], [10, 1, 3, 13, 15, 17, 27, 29, 31], [11, 10, 12, 14, 24, 26, 28], [12, 8, 10, 12, 22]), whole: true },
  { name: "every other week on Tuesday and Thursday, 8 occurrences", rule: "FREQ=WEEKLY;INTERVAL=2;COUNT=8;WKST=SU;BYDAY=TU,TH", dates: days(1997, [9, 2, 4, 16, 18, 30], [10, 2, 14, 16]), whole: true },
  { name: "first Friday of the month, 10 occurrences", start: "19970905T090000", rule: "FREQ=MONTHLY;COUNT=10;BYDAY=1FR", dates: [...days(1997, [9, 5], [10, 3], [11, 7], [12, 5]), ...days(1998, [1, 2], [2, 6], [3, 6], [4, 3], [5, 1], [6, 5])], whole: true },
  { name: "first and last Sunday every other month", start: "19970907T090000", rule: "FREQ=MONTHLY;INTERVAL=2;COUNT=10;BYDAY=1SU,-1SU", dates: [...days(1997, [9, 7, 28], [11, 2, 30]), ...days(1998, [1, 4, 25], [3, 1, 29], [5, 3, 31])], whole: true },
  { name: "second-to-last Monday for 6 months", start: "19970922T090000", rule: "FREQ=MONTHLY;COUNT=6;BYDAY=-2MO", dates: [...days(1997, [9, 22], [10, 20], [11, 17], [12, 22]), ...days(1998, [1, 19], [2, 16])], whole: true },
  { name: "third-to-last day of the month", start: "19970928T090000", rule: "FREQ=MONTHLY;BYMONTHDAY=-3", dates: [...days(1997, [9, 28], [10, 29], [11, 28], [12, 29]), ...days(1998, [1, 29], [2, 26])] },
  { name: "2nd and 15th, 10 occurrences", rule: "FREQ=MONTHLY;COUNT=10;BYMONTHDAY=2,15", dates: [...days(1997, [9, 2, 15], [10, 2, 15], [11, 2, 15], [12, 2, 15]), ...days(1998, [1, 2, 15])], whole: true },
  { name: "first and last day, 10 occurrences", start: "19970930T090000", rule: "FREQ=MONTHLY;COUNT=10;BYMONTHDAY=1,-1", dates: [...days(1997, [9, 30], [10, 1, 31], [11, 1, 30], [12, 1, 31]), ...days(1998, [1, 1, 31], [2, 1])], whole: true },
  { name: "every 18 months on the 10th to 15th", start: "19970910T090000", rule: "FREQ=MONTHLY;INTERVAL=18;COUNT=10;BYMONTHDAY=10,11,12,13,14,15", dates: [...days(1997, [9, ...upTo(10, 15)]), ...days(1999, [3, ...upTo(10, 13)])], whole: true },
  { name: "every Tuesday, every other month", rule: "FREQ=MONTHLY;INTERVAL=2;BYDAY=TU", dates: [...days(1997, [9, 2, 9, 16, 23, 30], [11, 4, 11, 18, 25]), ...days(1998, [1, 6, 13, 20, 27], [3, 3, 10, 17, 24, 31])] },
  { name: "June and July, 10 occurrences", start: "19970610T090000", rule: "FREQ=YEARLY;COUNT=10;BYMONTH=6,7", dates: [1997, 1998, 1999, 2000, 2001].flatMap((year) => days(year, [6, 10], [7, 10])), whole: true },
  { name: "every other year in January to March", start: "19970310T090000", rule: "FREQ=YEARLY;INTERVAL=2;COUNT=10;BYMONTH=1,2,3", dates: [...days(1997, [3, 10]), ...[1999, 2001, 2003].flatMap((year) => days(year, [1, 10], [2, 10], [3, 10]))], whole: true },
  { name: "every third year on days 1, 100 and 200", start: "19970101T090000", rule: "FREQ=YEARLY;INTERVAL=3;COUNT=10;BYYEARDAY=1,100,200", dates: [...days(1997, [1, 1], [4, 10], [7, 19]), ...days(2000, [1, 1], [4, 9], [7, 18]), ...days(2003, [1, 1], [4, 10], [7, 19]), ...days(2006, [1, 1])], whole: true },
  { name: "20th Monday of the year", start: "19970519T090000", rule: "FREQ=YEARLY;BYDAY=20MO", dates: ["1997-05-19", "1998-05-18", "1999-05-17"] },
  { name: "Monday of week 20", start: "19970512T090000", rule: "FREQ=YEARLY;BYWEEKNO=20;BYDAY=MO", dates: ["1997-05-12", "1998-05-11", "1999-05-17"] },
  { name: "every Thursday in March", start: "19970313T090000", rule: "FREQ=YEARLY;BYMONTH=3;BYDAY=TH", dates: [...days(1997, [3, 13, 20, 27]), ...days(1998, [3, 5, 12, 19, 26]), ...days(1999, [3, 4, 11, 18, 25])] },
  { name: "every Thursday in summer", start: "19970605T090000", rule: "FREQ=YEARLY;BYDAY=TH;BYMONTH=6,7,8", dates: days(1997, [6, 5, 12, 19, 26], [7, 3, 10, 17, 24, 31], [8, 7, 14, 21, 28]) },
  { name: "every Friday the 13th", start: "19980213T090000", rule: "FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13", dates: ["1998-02-13", "1998-03-13", "1998-11-13", "1999-08-13", "2000-10-13"] },
  { name: "first Saturday after the first Sunday", start: "19970913T090000", rule: "FREQ=MONTHLY;BYDAY=SA;BYMONTHDAY=7,8,9,10,11,12,13", dates: [...days(1997, [9, 13], [10, 11], [11, 8], [12, 13]), ...days(1998, [1, 10], [2, 7], [3, 7], [4, 11], [5, 9], [6, 13])] },
  { name: "election day, every four years", start: "19961105T090000", rule: "FREQ=YEARLY;INTERVAL=4;BYMONTH=11;BYDAY=TU;BYMONTHDAY=2,3,4,5,6,7,8", dates: ["1996-11-05", "2000-11-07", "2004-11-02"] },
  { name: "third of Tuesday, Wednesday or Thursday", start: "19970904T090000", rule: "FREQ=MONTHLY;COUNT=3;BYDAY=TU,WE,TH;BYSETPOS=3", dates: ["1997-09-04", "1997-10-07", "1997-11-06"], whole: true },
  { name: "second-to-last weekday", start: "19970929T090000", rule: "FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2", dates: [...days(1997, [9, 29], [10, 30], [11, 27], [12, 30]), ...days(1998, [1, 29], [2, 26], [3, 30])] },
  { name: "weeks that begin on Monday", start: "19970805T090000", rule: "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO", dates: ["1997-08-05", "1997-08-10", "1997-08-19", "1997-08-24"], whole: true },
  { name: "weeks that begin on Sunday", start: "19970805T090000", rule: "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU", dates: ["1997-08-05", "1997-08-17", "1997-08-19", "1997-08-31"], whole: true },
  { name: "a 30 February is left out", start: "20070115T090000", rule: "FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5", dates: ["2007-01-15", "2007-01-30", "2007-02-15", "2007-03-15", "2007-03-30"], whole: true },
];

const at = (date: string): number => Temporal.PlainDateTime.from(`${date}T09:00`).toZonedDateTime(ZONE).epochMilliseconds;
const iso = (list: readonly number[]): string[] => list.map((ms) => Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(ZONE).toPlainDateTime().toString());

describe("RFC 5545 section 3.8.5.3", () => {
  it.each(EXAMPLES)("$name", ({ start = "19970902T090000", rule, dates, whole }) => {
    const parsed = readRule(`DTSTART:${start}\nRRULE:${rule}`);
    expect(iso(firstTimes(parsed, ZONE, dates.length + (whole ? 5 : 0)))).toEqual(iso(dates.map(at)));
    // the same, found one after another, as reminders are
    if (!/COUNT/.test(rule)) {
      let last = at(dates[0] ?? "") - 1;
      const found = dates.map(() => (last = nextTime(parsed, ZONE, last) ?? Number.NaN));
      expect(iso(found)).toEqual(iso(dates.map(at)));
    }
  });

  it("several times a day, on one day (the examples of 3.8.5.3 that count hours and minutes)", () => {
    const clock = (rule: string, most: number): string[] => iso(firstTimes(readRule(`DTSTART:19970902T090000\nRRULE:${rule}`), ZONE, most)).map((one) => one.slice(0, 16));
    expect(clock("FREQ=HOURLY;INTERVAL=3;UNTIL=19970902T170000Z", 9)).toEqual(["1997-09-02T09:00", "1997-09-02T12:00"]);
    expect(clock("FREQ=MINUTELY;INTERVAL=15;COUNT=6", 9)).toEqual(["09:00", "09:15", "09:30", "09:45", "10:00", "10:15"].map((time) => `1997-09-02T${time}`));
    expect(clock("FREQ=MINUTELY;INTERVAL=90;COUNT=4", 9)).toEqual(["09:00", "10:30", "12:00", "13:30"].map((time) => `1997-09-02T${time}`));
    expect(clock("FREQ=DAILY;BYHOUR=9,10,11,12,13,14,15,16;BYMINUTE=0,20,40", 26).slice(-3)).toEqual(["1997-09-02T16:40", "1997-09-03T09:00", "1997-09-03T09:20"]);
  });
});
