/** The words numbers are written in, and the words that tell a number from a time or a rate. */

export const SMALL: Readonly<Record<string, number>> = {
  zero: 0, nought: 0, one: 1, two: 2, three: 3, four: 4, five: 5, six: 6, seven: 7, eight: 8, nine: 9, ten: 10, eleven: 11, twelve: 12,
    thirteen: 13,
  fourteen: 14, fifteen: 15, sixteen: 16, seventeen: 17, eighteen: 18, nineteen: 19, twelf: 12, tweleve: 12, eigth: 8, eightteen: 18,
    forteen: 14, fiveteen: 15, twelfe: 12, twelv: 12, thirten: 13, fourten: 14, fiften: 15, fiftteen: 15, sixten: 16, seventen: 17,
    eighten: 18, ninteen: 19, ninetten: 19,
};
export const TENS: Readonly<Record<string, number>> = {
  tweny: 20, twnety: 20, twenny: 20, thrity: 30, fifity: 50, sixity: 60, eigthy: 80, ninetey: 90, twenty: 20, thirty: 30, forty: 40,
    fourty: 40, fifty: 50, sixty: 60, seventy: 70, eighty: 80, ninety: 90, ninty: 90, fivety: 50,
};
/** "twentyfive" */
const JOINED: ReadonlyMap<string, number> = new Map(Object.entries(TENS).flatMap(([tens, value]) =>
  Object.entries(SMALL).filter(([, one]) => one > 0 && one < 10).map(([small, one]) => [tens + small, value + one] as const)));
export const smallNumber = (word: string): number | undefined => SMALL[word] ?? JOINED.get(word);
export const MULTIPLES: Readonly<Record<string, number>> = {
  hundred: 100, hundreds: 100, thousand: 1000, dozen: 12, dozens: 12, hundered: 100,
  hunderd: 100, hundret: 100, thousend: 1000, thousands: 1000,
};
export const PARTS: Readonly<Record<string, number>> = { half: 1 / 2, halves: 1 / 2, third: 1 / 3, thirds: 1 / 3, quarter: 1 / 4,
  quarters: 1 / 4, eighth: 1 / 8, eighths: 1 / 8 };
/** After these "half" and "quarter" tell the time. */
export const CLOCK_WORDS = ["past", "to", "after", "before", "til", "till"];
/** Before these "a week" is how often, not how long: "twice a week", "how much a month". */
export const RATED = ["once", "twice", "thrice", "time", "much", "many", "every"];
/** Before these "a day" and "a month" are how long. */
export const LASTING = new Set(["for", "in", "after", "within", "about", "around", "roughly", "nearly", "almost", "over", "under", "than",
  "least", "most", "to", "takes", "took", "take", "last", "lasts", "lasted", "only", "just", "wait", "waited", "maybe", "and", "or", "up",
  "it", "them", "left", "dry", "out", "off", "away", "within", "quite", "probably", "needs", "need", "another", "is", "was"]);
export const PERIODS = new Set(["week", "day", "month", "year", "fortnight", "minute"]);
export const LENGTHS = new Set(["metre", "meter", "foot", "yard"]);
export const MASSES = new Set(["pound", "ounce", "stone"]);
/** What is fired or done so many times in a while: "three fires a day" tells how often, "it burns an hour" how long. */
export const FIRINGS = ["fires", "loads", "burns", "firings", "times"];
/** Between an article and its unit: "a good hour", "a whole cord". */
export const SIZED = ["good", "full", "whole", "solid", "real", "further", "single", "stacked", "loose"];
export const AFTER_LENGTH = ["of", "away", "from", "long", "deep", "thick", "high", "wide", "above", "below", "off", "clear", "apart",
  "short", "tall"];
/** What people have "a ton of" without weighing it. */
export const NO_TON = ["smoke", "soot", "creosote", "questions", "work", "people", "dust", "time", "money", "things", "stuff", "heat",
  "fun", "trouble", "crap"];
/** Things counted in words that are no unit: "one basket", "one load". */
export const COUNTABLE = new Set(["basket", "armful", "armload", "log", "split", "piece", "bag", "barrow", "wheelbarrow", "bucket",
  "crate", "box", "load", "fire", "row", "stack", "time", "layer", "bundle", "sack"]);
