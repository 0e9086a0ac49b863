/** A figure as the answer to a question that asks for one: the right kind, of the right thing, in the sign's unit. */
import type { Sign } from "../../knowledge/schemas.ts";
import { UNITS, type Dimension, type UnitId } from "../../quantities.ts";
import { inUnit, readFigures, type Figure } from "../reading/figures.ts";
import { MONTHS } from "../reading/months.ts";
import type { Spoken } from "../spoken.ts";

export const UNIT_OF: Partial<Record<Sign["kind"], UnitId>> = {
  percent: "pct", kilograms: "kg", minutes: "min", hours: "h", days: "day", celsius: "C", millimetres: "mm", centimetres: "cm",
};
const PER: Partial<Record<Sign["kind"], number>> = { months: 24 * 30.44, years: 24 * 365.25 };
const HOURS = { minutes: 1 / 60, hours: 1, days: 24, months: 24 * 30.44, years: 24 * 365.25 } as const;
/** Hours in a span that a figure's next word names where the figure itself carries no unit. */
const SPAN_h: readonly (readonly [RegExp, number])[] = [[/^\s*months?\b/i, 24 * 30.44], [/^\s*years?\b/i, 24 * 365.25]];

export interface About {
  readonly now_ms?: number;
  /** the heater's largest load, where it is known */
  readonly max_load_kg?: number | null;
  /** what the reply is heard in; English by default */
  readonly language?: Spoken;
  /** a German reply in the English that figures are read from; their places are places in it */
  readonly glossed?: string;
}

export const isFigure = (sign: Sign): boolean => sign.kind !== "yes-no" && sign.kind !== "choice";
export const isShareOfLoad = (sign: Sign): boolean => sign.record === "load-share" || sign.record === "day-share" || (sign.kind === "percent" && /full (load|firebox)|how full|how much/i.test(sign.ask ?? ""));
const isOutdoors = (sign: Sign): boolean => sign.record === "outside" || sign.record === "outside-high" || /outdoors|outside/i.test(sign.ask ?? "");

export function figureFor(sign: Sign, text: string, figures: readonly Figure[], about: About = {}): number | undefined {
  if (!isFigure(sign)) return undefined;
  if (isShareOfLoad(sign)) return shareOfLoad(text, figures, about);
  const single = figures.length === 0 ? readFigures(text.replace(ONE_OF, (_, half: string | undefined) => (half ? "0.5 " : "1 "))) : figures;
  const value = measured(sign, text, sign.kind === "millimetres" ? single.filter((figure) => !isExtent(text, figure)) : single, about);
  return value === undefined || beyondAll(sign, value) ? undefined : value;
}
/** "20 cm long" is no width, nor is "60 cm from the door" */
const isExtent = (text: string, { at, dimension }: Figure): boolean => dimension === "length" && /^\s*(?:-\s*)?(?:long|in length|lang|high|hoch|tall|deep|tief|up|down|above|below|from|away|off|of (?:the )?crack)\b/i.test(text.slice(at[1]));
const FAR_BEYOND = 12;
/** A length that is many times the largest answer measures something else. */
function beyondAll({ kind, answers = [] }: Sign, value: number): boolean {
  if (kind !== "millimetres" && kind !== "centimetres") return false;
  const most = Math.max(0, ...answers.map((answer) => answer.value ?? 0));
  return most > 0 && value > FAR_BEYOND * most;
}
/** "about a millimetre", "half a centimetre" */
const ONE_OF = /\b(half )?(?:an?|one) (?=(?:mm|millimet|cm|centimet|inch|week|month|year|hour|minute|day|degree|percent))/gi;

function measured(sign: Sign, text: string, figures: readonly Figure[], about: About): number | undefined {
  const unit = UNIT_OF[sign.kind];
  const dimension: Dimension | null = unit ? UNITS[unit].dimension : sign.kind in PER ? "duration" : null;
  if (dimension === "duration") {
    const past = agoIn(sign, text, about.now_ms);
    if (past !== undefined) return past;
  }
  if (dimension === "duration" && sign.kind === "days" && !figures.some((figure) => figure.dimension === "duration")) {
    const days = daysAgo(text, about.now_ms);
    if (days !== undefined) return days;
  }
  if (dimension === "temperature" && isOutdoors(sign)) {
    const outdoors = outdoorFigure(text, figures, unit as UnitId);
    if (outdoors !== undefined) return outdoors === null ? undefined : outdoors;
  }
  const bare = figures.filter((figure) => figure.dimension === null && withinReason(sign, figure.value));
  const widest = dimension === "length" && /\b(?:widest|thickest|deepest)\b/i.test(sign.ask ?? "");
  if (widest) {
    const all = figures.flatMap((figure) => (figure.dimension === "length" ? [(unit && inUnit(figure, unit)) ?? 0] : figure.dimension === null && !countsThings(text, figure) ? [figure.value] : [])).filter((value) => value > 0 && !beyondAll(sign, value));
    if (all.length > 1) return Math.max(...all);
  }
  for (const figure of figures) {
    if (figure.dimension === null) {
      if (sign.kind === "percent" && figure.value > 0 && figure.value < 1) return figure.value * 100;
      const span_h = dimension === "duration" ? SPAN_h.find(([word]) => word.test(text.slice(figure.at[1])))?.[1] : undefined;
      if (span_h !== undefined) return (figure.value * span_h) / HOURS[sign.kind as keyof typeof HOURS];
      const fitting = bare.length === 1 && figures.every((other) => other === figure || other.dimension !== dimension);
      if (fitting && withinReason(sign, figure.value)) return figure.value;
    } else if (figure.dimension === dimension && dimension) {
      if (unit === "pct") {
        if (ofSomethingElse(text, figure)) continue;
        return figure.basis === "dry" ? (100 * figure.value) / (100 + figure.value) : figure.value;
      }
      const value = unit ? inUnit(figure, unit) : (inUnit(figure, "h") ?? 0) / (PER[sign.kind] ?? 1);
      if (value !== null) return value;
    }
  }
  return undefined;
}

/** "two corners" is no measure */
const countsThings = (text: string, { at }: Figure): boolean => /^\s+(?!at\b|in\b|on\b|when\b|by\b|to\b|or\b|and\b|but\b|cold\b|hot\b|warm\b|now\b|wide\b|thick\b|deep\b|mm\b)\p{L}/u.test(text.slice(at[1]));

/** A bare number that cannot be what was asked for is none: "3 sticks" is no moisture. */
function withinReason({ kind, record }: Sign, value: number): boolean {
  if (kind === "percent" && record === "wood-moisture") return (value >= 5 && value <= 80) || (value > 0 && value < 1);
  if (kind === "celsius") return value >= -60 && value <= 400;
  return value >= 0;
}
const OTHER_SHARE = /^\s*(%|percent|per cent|prozent)?\s*(of (the )?(load|wood|pile|sheet|max|maximum|way|time|days)|humidity|rh\b|battery|slope|open|off|shut|closed|air|full|more\b|less\b|extra\b|fewer\b|over\b|above\b|below\b|worse\b|better\b|higher\b|lower\b|up\b|down\b|mehr\b|weniger\b)/i;
/** a share of something other than water in wood: "burnt 40 % more" */
export const ofSomethingElse = (text: string, { at }: Figure): boolean => OTHER_SHARE.test(text.slice(at[1])) || /\b(humidity|battery|air|slider?|wheel|knob)\b[^,.;]{0,12}$/i.test(text.slice(0, at[0]));

/** Outdoors, not in the room; null where only an indoor figure was given. */
function outdoorFigure(text: string, figures: readonly Figure[], unit: UnitId): number | null | undefined {
  const degrees = figures.filter(({ dimension }) => dimension === "temperature" || dimension === null);
  const near = ({ at }: Figure): string => text.slice(Math.max(0, at[0] - 14), at[0]).split(/[,.;]/).at(-1) + text.slice(at[0], at[1] + 18).replace(/[,.;](?!\d).*$/s, "");
  const indoors = (figure: Figure): boolean => /\b(in(side|doors)?( the| my| our)? (room|house|living room|kitchen|bedroom|flat)|in here|in there|room|indoors|inside|surface|face|tiles?|stone|glass|flue|gun)\b/i.test(near(figure)) && !/\b(out|outside|outdoors)\b/i.test(near(figure));
  const outside = degrees.find((figure) => /\b(out|outside|outdoors|frost|draussen)\b/i.test(near(figure)) && !indoors(figure)) ?? degrees.find((figure) => !indoors(figure));
  if (!outside) return degrees.length > 0 ? null : undefined;
  if (degrees.length === 1 || outside.dimension !== null || /\b(out|outside|outdoors)\b/i.test(near(outside))) return outside.dimension === null ? outside.value : (inUnit(outside, unit) ?? undefined);
  return undefined;
}

const PARTS: readonly (readonly [RegExp, number])[] = [
  [/\bthree[ -]?quarters?\b|¾/i, 75], [/\btwo[ -]?thirds?\b|⅔/i, 67], [/\b(a |one )?quarter (full|of)|\b(a|one) quarter\b/i, 25], [/\b(a |one )?third (full|of)|\b(a|one) third\b/i, 33],
  [/\b(as much again|double|twice)\b/i, 150], [/\b(full|normal|usual|standard) (load|lot|amount|firebox|charge|one)?\s*(plus|and (then )?(some|a few|two|three|four|more|another|extra)|with (some |a few )?extra)\b|\btopped (it )?up\b|\b(more|extra) (logs?|wood|pieces|kilos)? ?on top\b/i, 130], [/\b(not (even )?|less than )half\b/i, 40], [/\bhalf\b|½/i, 50], [/\b(over|more than|above)\b[^,.;]{0,20}\b(full|sheet|max\w*|limit|allowed)\b|\b(over|too) ?full\b|\boverloaded\b|\b(up )?to the (brim|top|lintel|roof|ceiling|arch|vault)\b/i, 125],
  [/\b(nearly|almost|not quite) (a )?full\b/i, 90], [/\b(a few|couple of|two|three|four) (little |small |thin )?(logs?|pieces|splits|sticks|bits)\b/i, 25], [/\b(full|normal|usual) (load|firebox|amount|charge)\b|\bfilled\b|^\W*(full|normal|usual|as usual|the usual)\W*$/i, 98],
];
const OUT_OF = /^\s*(of|out of|from|\/|von)( (the|my|our|a|max\w*|usual|full))*\s*$/i;
const MOST = /\b(range|rated|where|in a|max\w*|sheet|limit|allowed|ought|should|says|sheet's|full load|capacity|can take|may take|instead of|rather than|usual|usually|normal\w*|of|out of|\/)\b|\/|höchst\w*|erlaubt|statt|sonst|von/i;

/** Kilograms against the heater's own, "three of thirteen", or a part in words; percent. */
export function shareOfLoad(text: string, figures: readonly Figure[], { max_load_kg }: About): number | undefined {
  const share = figures.find(({ dimension }) => dimension === "share");
  if (share) return share.value;
  const masses = figures.filter(({ dimension }) => dimension === "mass");
  const outOf = figures.find(({ dimension, at }, i) => dimension === null && figures[i + 1]?.dimension === "mass" && OUT_OF.test(text.slice(at[1], figures[i + 1]?.at[0])));
  const load = outOf ?? masses[0] ?? figures.find(({ dimension, at }, i) => dimension === null && figures[i + 1] && MOST.test(text.slice(at[1], figures[i + 1]?.at[0])));
  if (load) {
    // a bare number stands in the unit of the weight beside it
    const unit = load.dimension === "mass" ? load.unit : outOf ? (masses[0]?.unit ?? null) : null;
    const inKg = (figure: Figure, value: number): number => (unit === null && figure.dimension !== "mass" ? value : (inUnit({ ...figure, value, dimension: "mass", unit: figure.dimension === "mass" ? figure.unit : unit }, "kg") ?? value));
    const kg = inKg(load, load.value);
    const other = figures.find((figure) => figure.at[0] > load.at[0] && (figure.dimension === "mass" || figure.dimension === null) && MOST.test(text.slice(load.at[1], figure.at[0])));
    const most = other ? inKg(other, other.high ?? other.value) : max_load_kg;
    if (most && most > 0) return (100 * kg) / most;
    return undefined;
  }
  const part = figures.find(({ dimension, value }) => dimension === null && value > 0 && value < 1);
  if (part) return 100 * part.value;
  return PARTS.find(([words]) => words.test(text))?.[1];
}

const AGO: readonly (readonly [RegExp, number])[] = [
  [/\b(never|not once|nie)\b/i, 60], [/\b(yesterday|today|this week|last week|days ago|gestern)\b/i, 0.2], [/\b(last|a) month( ago)?\b|\bthis month\b/i, 1], [/\b(couple of|few) (weeks)\b/i, 0.7], [/\b(couple of|few) months\b/i, 3],
  [/\bhalf a year\b/i, 6], [/\b(two|couple of) (years|winters) (ago|back)\b|\byear before last\b/i, 24], [/\b(several|many|few|some) years\b|\byears (ago|back)\b|\bages\b|\blong (time )?ago\b/i, 48], [/\b(a|one|last) (year|winter)( ago)?\b|\byearly\b|\bevery year\b/i, 12],
];
const SEASONS: Readonly<Record<string, number>> = { spring: 3, summer: 6, autumn: 9, fall: 9, winter: 0, frühling: 3, frühjahr: 3, sommer: 6, herbst: 9 };

/** "in June", "last autumn", "since 2022", "a year ago", as a span in the sign's unit. */
export function agoIn({ kind }: Sign, text: string, now_ms?: number): number | undefined {
  if (kind !== "months" && kind !== "years") return undefined;
  const months = monthsAgo(text, now_ms);
  return months === undefined ? undefined : kind === "months" ? months : months / 12;
}
function monthsAgo(text: string, now_ms?: number): number | undefined {
  if (/\d\s*(months?|weeks?|years?|days?|monat|jahr)/i.test(text)) return undefined;
  if (now_ms !== undefined) {
    const now = new Date(now_ms);
    const words = text.toLowerCase().match(/\p{L}+/gu) ?? [];
    const word = words.find((one) => MONTHS.has(one) && one.length > 2 && !(one === "may" || one === "mar" || one === "sun") || (one === "may" && /\bMay\b|\b(?:in|since|last|this|of|early|late|mid|until|till|from|end of) may\b/.test(text)));
    const year = /\b(19|20)\d\d\b/.exec(text)?.[0];
    const of = word === undefined ? undefined : monthNumber(word);
    if (year) return Math.max(0, (now.getUTCFullYear() - Number(year)) * 12 + now.getUTCMonth() - ((of ?? 7) - 1));
    if (of !== undefined) return (now.getUTCMonth() - (of - 1) + 12) % 12 + (/\blast year\b/i.test(text) ? 12 : 0);
    const season = words.find((one) => Object.hasOwn(SEASONS, one) && one !== "winter");
    if (season && /\b(in|last|this|since|the)\b/i.test(text)) return (now.getUTCMonth() - (SEASONS[season] ?? 0) + 12) % 12;
  }
  return AGO.find(([words]) => words.test(text))?.[1];
}
const DAYS_AGO: readonly (readonly [RegExp, number])[] = [
  [/\b(?:yesterday|last night|gestern)\b/i, 1], [/\b(?:this morning|today|earlier today|heute)\b/i, 0.4], [/\b(?:day before yesterday|night before last|the other day|vorgestern)\b/i, 2],
  [/\b(?:last|this|past|on|since)\s+(?:mon|tues|wednes|thurs|fri|satur|sun)day\b/i, 4], [/\b(?:last week|a week)\b/i, 7], [/\b(?:a |one )?fortnight\b/i, 14], [/\b(?:last month|a month)\b/i, 30],
  [/\b(?:all|whole|since the) summer\b/i, 150],
];
/** "lit yesterday", "no fire since April" in days. */
function daysAgo(text: string, now_ms?: number): number | undefined {
  const near = DAYS_AGO.find(([words]) => words.test(text))?.[1];
  if (near !== undefined) return near;
  const months = /\b(?:since|in|not since|from|until|till|seit|im)\b|\bago\b/i.test(text) ? monthsAgo(text, now_ms) : undefined;
  return months === undefined || months === 0 ? undefined : months * 30.44;
}

/** How old something is that was bought, made or changed then: "from 2014", "bought last year", "8 years old". */
export function yearsAgo(text: string, now_ms?: number): number | undefined {
  const span = readFigures(text).flatMap((figure) => (figure.dimension === "duration" ? [(inUnit(figure, "h") ?? 0) / HOURS.years] : []))[0] ?? monthsFigure(text);
  if (span !== undefined) return span;
  const months = monthsAgo(text, now_ms);
  return months === undefined ? undefined : months / 12;
}
/** "8 years", "six months" where the figure itself carries no unit */
function monthsFigure(text: string): number | undefined {
  for (const figure of readFigures(text)) {
    const span_h = figure.dimension === null ? SPAN_h.find(([word]) => word.test(text.slice(figure.at[1])))?.[1] : undefined;
    if (span_h !== undefined) return (figure.value * span_h) / HOURS.years;
  }
  return undefined;
}
function monthNumber(word: string): number | undefined {
  const month = MONTHS.get(word) as unknown;
  return typeof month === "number" ? month : undefined;
}
