/**
 * German amounts as English readers know them: "anderthalb Kilo", "ein gutes Pfund", "33er Scheite", "zwei, drei Stunden", "20'".
 * What the words mean is common practice, no source; a Zentner is 50 kg, in Austria and Switzerland 100 kg.
 */
import type { Read } from "./clock.ts";
import { digitOf, numberWord } from "./numbers.ts";
import type { Piece } from "./pieces.ts";

const ARTICLES = new Set("ein eine einen einem einer a an ne nen ner nem oa oan oane e".split(" "));
/** A unit after an article or a share, and its English name. */
const UNITS: Readonly<Record<string, string>> = {
  kilo: "kilo", kilogramm: "kilo", tonne: "tonne", pfund: "pfund", zentner: "zentner", gramm: "gram", stunde: "hour", stund: "hour", stunderl: "hour",
  minute: "minute", tag: "day", woche: "week", monat: "month", jahr: "year", jahre: "year", liter: "litre", ster: "raummeter", raummeter: "raummeter",
  festmeter: "festmeter", schuttraummeter: "srm", schuttmeter: "srm", kubikmeter: "m3", kubik: "m3", meter: "metre", zentimeter: "centimetre", millimeter: "millimetre",
};
/** Read as one of them wherever they stand; of the others "a" may tell what one costs. */
const ONES = new Set("hour minute day week month year metre centimetre millimetre gram".split(" "));
const PERIODS = new Set("hour minute day week month year".split(" "));
const MORE_UNITS = new Set("kg g t % prozent grad ° c cm mm m rm srm fm l h std min stunden tage tagen wochen monate monaten minuten euro € eur franken chf zentimetern metern millimeter zoll".split(" "));
const SHARES: Readonly<Record<string, string>> = {
  viertel: "quarter of a", dreiviertel: "three quarters of a", halb: "half a", halbe: "half a", halber: "half a", halben: "half a", halbes: "half a",
  halberte: "half a", hoibe: "half a", halbi: "half a",
};
const GOOD = new Set("gut gute guten guter gutes guats guate guade guada reichlich reichliche".split(" "));
const SCANT = new Set("knapp knappe knappen knapper knappes fast beinahe annahernd".split(" "));
const NOTES: Readonly<Record<string, number>> = {
  tausender: 1000, funfhunderter: 500, hunderter: 100, funfziger: 50, fuffziger: 50, fuchzger: 50, zwanziger: 20, zehner: 10, funfer: 5,
  hunni: 100, fuffi: 50, zwanni: 20,
};
const SAWN = /scheit|lang|holz|stuck|spalt|buche|birke|eiche|fichte|esche|meterware|kloben/;
const ROUND = /rohr|rohre|durchmesser|liner|zug|rohrl|kaminrohr|anschluss/;
/** lengths that firewood is sold in, cm */
const USUAL_LENGTHS = new Set([25, 33]);
const MARKS = new Set(["'", "’", "′", "´"]);

const numeric = (piece: Piece | undefined): boolean => piece?.kind === "number" || (piece?.kind === "word" && numberWord(piece.key) !== null);
const isUnit = (piece: Piece | undefined): boolean => piece !== undefined && (piece.key in UNITS || MORE_UNITS.has(piece.key) || piece.text === "%");
const unitName = (key: string, country: string | undefined): string | undefined =>
  (key === "zentner" || key === "ztr") && (country === "AT" || country === "CH") ? "doppelzentner" : UNITS[key];

/** An amount that begins here, or null. */
export function amountAt(pieces: readonly Piece[], i: number, country?: string): Read | null {
  const piece = pieces[i] as Piece;
  const before = pieces[i - 1];
  const next = pieces[i + 1];
  if (piece.kind === "sign") {
    // "20-30'": minutes, for nobody measures in feet
    return MARKS.has(piece.text) && !piece.gap && before?.kind === "number" && !(next?.kind === "number" && !next.gap) && next?.text !== "'"
      && pieces[i - 2]?.text !== piece.text ? { english: " min", length: 1 } : null;
  }
  if (piece.key === "pfund" && (numeric(before) || ARTICLES.has(before?.key ?? "") || (before?.key ?? "") in SHARES)) return { english: "pfund", length: 1 };
  if (piece.key === "zentner" || piece.key === "ztr") return { english: unitName(piece.key, country) ?? "zentner", length: 1 };
  if (numeric(piece)) return counted(pieces, i, country);
  return hedged(pieces, i) ?? share(pieces, i, country) ?? one(pieces, i, country) ?? around(pieces, i);
}

/** "18 Komma fünf", "33er Scheite", "zwei Tausender", "zwölf, dreizehn", "2 Pfund" */
function counted(pieces: readonly Piece[], i: number, country: string | undefined): Read {
  const piece = pieces[i] as Piece;
  const [next, second, third] = [pieces[i + 1], pieces[i + 2], pieces[i + 3]];
  const value = piece.kind === "number" ? figure(piece.text) : (numberWord(piece.key) as number);
  if (next?.key === "komma" && numeric(second)) return pointed(pieces, i, value);
  if (piece.kind === "number" && next?.key === "er" && !next.gap) {
    const noun = (second?.text === "-" ? third : second)?.key ?? "";
    if (ROUND.test(noun)) return { english: `${value} ${Number(value) < 60 ? "cm" : "mm"}`, length: 2 };
    const besides = noun !== "jahre" && pieces.slice(Math.max(0, i - 8), i).some(({ key }) => key.startsWith("scheit"));
    return { english: SAWN.test(noun) || besides || (USUAL_LENGTHS.has(Number(value)) && noun !== "jahre") ? `${value} cm` : `${value}s`, length: 2 };
  }
  const note = NOTES[next?.key ?? ""];
  if (note !== undefined && typeof value === "number") return { english: `${value * note} euros`, length: 2 };
  if (next?.key === "viertelstunden" && typeof value === "number") return { english: `${value * 15} minutes`, length: 2 };
  if (next?.key === "pfund" || next?.key === "zentner" || next?.key === "ztr" || next?.key === "pfd") {
    return { english: `${value} ${next.key === "pfd" ? "pfund" : (unitName(next.key, country) ?? "zentner")}`, length: 2 };
  }
  // "drei viertel Kilo", "fünf viertel Stunden"
  const parted = next?.key === "viertel" && typeof value === "number" ? unitName(singular(second?.key ?? ""), country) : undefined;
  if (parted !== undefined) return { english: `${Number(value) / 4} ${parted}`, length: 3 };
  // "68 Euro 40", "1 Meter 20"
  const cents = second?.kind === "word" ? String(numberWord(second.key)) : second?.text ?? "";
  if (CARRIED.has(next?.key ?? "") && /^[1-9]\d$/.test(cents) && !isUnit(third) && third?.text !== ":" && /^\d+$/.test(String(value))) {
    return { english: `${value}.${cents} ${next?.key.startsWith("m") ? "m" : next?.key === "franken" ? "francs" : "euros"}`, length: 3 };
  }
  // "drei- bis vierhundert"
  if (next?.text === "-" && !next.gap && second?.key === "bis" && numeric(third) && typeof value === "number") {
    const multiple = value >= 20 ? 1 : third?.key.endsWith("tausend") ? 1000 : third?.key.endsWith("hundert") ? 100 : 1;
    return { english: `${value * multiple} to`, length: 3 };
  }
  const comma = next?.text === "," ? 1 : 0;
  const other = pieces[i + 1 + comma];
  if (piece.kind === "word" && other?.kind === "word" && typeof value === "number" && value >= 1) {
    const more = numberWord(other.key);
    if (more !== null && more > value && more <= value * 2 + 2) return { english: `${value} to`, length: 1 + comma };
  }
  return { english: String(value), length: 1 };
}

const CARRIED = new Set(["euro", "€", "eur", "franken", "meter", "m"]);
const singular = (key: string): string => (key.endsWith("en") && key in UNITS === false ? key.slice(0, -1) : key);

/** "achtzehn Komma fünf": the digits after the point are said one by one, or as one number */
function pointed(pieces: readonly Piece[], i: number, whole: number | string): Read {
  let digits = "";
  let at = i + 2;
  while (digits.length < 4) {
    const piece = pieces[at];
    const digit = piece?.kind === "number" && /^\d+$/.test(piece.text) ? piece.text : piece?.kind === "word" ? digitOf(piece.key) : null;
    if (digit === null) break;
    digits += digit;
    at += 1;
  }
  if (digits === "") {
    digits = String(numberWord((pieces[i + 2] as Piece).key) ?? 0);
    at = i + 3;
  }
  return { english: `${whole}.${digits}`, length: at - i };
}

/** "gut 15", "knapp eine Stunde", "keine 10 kg", "bis 15 kg", "an die 20 Grad" */
function hedged(pieces: readonly Piece[], i: number): Read | null {
  const { key } = pieces[i] as Piece;
  const next = pieces[i + 1];
  const amount = numeric(next) || (ARTICLES.has(next?.key ?? "") && amountBehind(pieces, i + 2)) || (next?.key ?? "") in SHARES && isUnit(pieces[i + 2]);
  if (GOOD.has(key) && amount) return { english: "a bit over", length: 1 };
  if (SCANT.has(key) && amount) return { english: "just under", length: 1 };
  if ((key === "keine" || key === "koane") && numeric(next) && isUnit(pieces[i + 2])) return { english: "less than", length: 1 };
  if ((key === "keine" || key === "keinen" || key === "koane") && PERIODS.has(UNITS[next?.key ?? ""] ?? "")) return { english: `less than 1 ${UNITS[next?.key ?? ""]}`, length: 2 };
  if (key === "an" && next?.key === "die" && numeric(pieces[i + 2])) return { english: "about", length: 2 };
  const before = pieces[i - 1];
  if (key === "bis" && numeric(next) && isUnit(pieces[i + 2]) && !numeric(before) && !isUnit(before) && before?.text !== "-" && !ARTICLES.has(before?.key ?? "")) return { english: "up to", length: 1 };
  return null;
}

const amountBehind = (pieces: readonly Piece[], i: number): boolean => isUnit(pieces[i]) || ((pieces[i]?.key ?? "") in SHARES && isUnit(pieces[i + 1]));

const COMPOUND = /^(halb|viertel|dreiviertel)(stunde|stund|liter|jahr|tonne|meter|kilo|ster|zentner|pfund|raummeter)$/;

/** "viertel Tonne", "eine Dreiviertelstunde", "ein Dreiviertel Ster" */
function share(pieces: readonly Piece[], i: number, country: string | undefined): Read | null {
  const article = ARTICLES.has(pieces[i]?.key ?? "") ? 1 : 0;
  const part = pieces[i + article];
  if (part === undefined) return null;
  const [, size = "", unit = ""] = COMPOUND.exec(part.key) ?? [];
  if (size !== "") return { english: `${SHARES[size]} ${unitName(unit, country)}`, length: article + 1 };
  const noun = unitName(pieces[i + article + 1]?.key ?? "", country);
  return part.key in SHARES && noun !== undefined ? { english: `${SHARES[part.key]} ${noun}`, length: article + 2 } : null;
}

/** "ein gutes Kilo", "eine Woche", "noch ein Jahr", "ein, zwei Stunden", "einen Hunderter" */
function one(pieces: readonly Piece[], i: number, country: string | undefined): Read | null {
  const more = pieces[i]?.key === "noch" ? 1 : 0;
  const at = i + more;
  if (!ARTICLES.has(pieces[at]?.key ?? "")) return null;
  const next = pieces[at + 1];
  const note = NOTES[next?.key ?? ""];
  if (note !== undefined) return { english: `${note} euros`, length: more + 2 };
  const comma = next?.text === "," ? 1 : 0;
  if (pieces[at]?.key.startsWith("e") && numberWord(pieces[at + 1 + comma]?.key ?? "") === 2) return { english: "1 to", length: more + 1 + comma };
  if (next?.key === "bis" && numeric(pieces[at + 2])) return { english: "1 to", length: more + 2 };
  const noun = unitName(next?.key ?? "", country);
  const sized = unitName(pieces[at + 2]?.key ?? "", country);
  if (sized !== undefined && GOOD.has(next?.key ?? "")) return { english: `a bit over 1 ${sized}`, length: more + 3 };
  if (sized !== undefined && SCANT.has(next?.key ?? "")) return { english: `just under 1 ${sized}`, length: more + 3 };
  if (noun === undefined) return null;
  if (more > 0) return { english: `1 more ${noun}`, length: 3 };
  // "ein Meter zwanzig"
  if (noun === "metre" && numeric(pieces[at + 2]) && !isUnit(pieces[at + 3])) {
    const more_cm = Number(figure((pieces[at + 2] as Piece).kind === "number" ? (pieces[at + 2] as Piece).text : String(numberWord((pieces[at + 2] as Piece).key))));
    if (more_cm >= 10 && more_cm < 100) return { english: `1.${more_cm} m`, length: 3 };
  }
  return { english: `${ONES.has(noun) ? "1" : "a"} ${noun}`, length: 2 };
}

/** Words beside a figure that mean another thing there: "8 von 14 kg", "u von 30 %", "4 Grad plus", "5 Grad minus". */
function around(pieces: readonly Piece[], i: number): Read | null {
  const { key } = pieces[i] as Piece;
  const [before, next] = [pieces[i - 1], pieces[i + 1]];
  if (key === "von" && before !== undefined) {
    const the = next?.key === "den" || next?.key === "meinen" || next?.key === "unseren" ? 1 : 0;
    if (!numeric(pieces[i + 1 + the])) return null;
    const unit = pieces[i + 2 + the];
    const same = isUnit(before) && unit?.key === before.key;
    return (numeric(before) && isUnit(unit)) || same || /^(u|w|feuchte|holzfeuchte|restfeuchte|feuchtigkeit|wassergehalt)$/.test(before.key)
      ? { english: the ? "of the" : "of", length: 1 + the } : null;
  }
  if (key === "plus" && next?.key === "minus" && numeric(pieces[i + 2])) return { english: "±", length: 2 };
  const ends = next === undefined || next.kind === "sign" || !numeric(next);
  if (ends && (before?.key === "grad" || before?.text === "°")) {
    if (key === "plus") return { english: "", length: 1 };
    if (key === "minus") return { english: "below zero", length: 1 };
  }
  return null;
}

/** "0,5" and "1.800" as German writes them; anything else, such as a date, stays. */
function figure(text: string): number | string {
  if (/^\d{1,3}(?:\.\d{3})+(?:,\d+)?$/.test(text)) return Number(text.replaceAll(".", "").replace(",", "."));
  return /^\d+,\d+$/.test(text) ? text.replace(",", ".") : text;
}
