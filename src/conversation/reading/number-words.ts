/** Numbers written in words, up to thousands: "twelve and a half", "a dozen", "half a cord", "two hundred and forty". */
import {
  AFTER_LENGTH, CLOCK_WORDS, COUNTABLE, FIRINGS, LASTING, LENGTHS, MASSES, MULTIPLES, NO_TON, PARTS, PERIODS, RATED, SIZED, SMALL, TENS,
  smallNumber,
} from "./number-vocabulary.ts";
import { isSign, isWord, wordAt, type NumberToken, type Token } from "./tokens.ts";
import { COUNTED_BY_ARTICLE, unitNamed } from "./units.ts";

interface Parsed {
  readonly value: number;
  readonly next: number;
  readonly decimals: number;
  readonly loose?: true;
}

/** The same tokens with every number in words, and every number carried on in words ("2 dozen"), turned into one number token. */
export function readNumberWords(tokens: readonly Token[]): Token[] {
  const out: Token[] = [];
  let i = 0;
  while (i < tokens.length) {
    const token = tokens[i] as Token;
    const parsed = token.kind === "number" ? afterDigits(tokens, i, token) : token.kind === "word" ? inWords(tokens, i, out.at(-1)) : null;
    if (parsed && parsed.next === i) {
      // "hour and a half": the one is not written
      out.push({ kind: "number", value: parsed.value, decimals: 0, at: [token.at[0], token.at[0]], gap: token.gap, spelled: true }, token);
      i += 1;
    } else if (parsed) {
      const end = tokens[parsed.next - 1] as Token;
      out.push({
        kind: "number", value: parsed.value, decimals: parsed.decimals, at: [token.at[0], end.at[1]], gap: token.gap,
        ...(token.kind === "word" ? { spelled: true as const } : {}), ...(parsed.loose ? { loose: true as const } : {}),
      });
      i = parsed.next;
    } else {
      out.push(token.kind === "number" ? markOrdinal(token, tokens[i + 1]) : token);
      i += 1;
    }
  }
  return out;
}

function markOrdinal(token: NumberToken, next: Token | undefined): NumberToken {
  if (next?.kind !== "word" || next.gap || token.decimals > 0) return token;
  const ends = token.value % 10;
  const teens = token.value % 100 >= 11 && token.value % 100 <= 13;
  const right = !teens && ends === 1 ? "st" : !teens && ends === 2 ? "nd" : !teens && ends === 3 ? "rd" : "th";
  return next.word === right && token.value <= 1000 ? { ...token, ordinal: true } : token;
}

/** Before these "1 800" is one number. */
const AFTER_SPACED = new Set(["litre", "litres", "liters", "l", "sek", "kr", "chf", "eur", "dollars", "kg", "kgs", "kilo", "kilos",
  "kilograms", "lb", "lbs", "pounds", "g", "w", "mm", "kwh", "btu", "euro", "euros"]);

/** "2 dozen", "3 hundred", "15k", "1 800 kg", "12 and a half", "3 quarters of". */
function afterDigits(tokens: readonly Token[], i: number, token: NumberToken): Parsed | null {
  const next = tokens[i + 1];
  const word = wordAt(next);
  if (next?.kind === "number" && next.at[1] - next.at[0] === 3 && next.decimals === 0 && token.decimals === 0 && token.value >= 1
    && token.value < 100) {
    if (AFTER_SPACED.has(wordAt(tokens[i + 2]))
      || isSign(tokens[i + 2], "€")) return { value: token.value * 1000 + next.value, next: i + 2, decimals: 0 };
  }
  const money = isSign(tokens[i - 1], "€") || isSign(tokens[i - 1], "£") || isSign(tokens[i - 1], "$");
  if (word === "k" && next?.kind === "word" && (!next.gap || isSign(tokens[i + 2], "€")) && (!next.capital || money)
    && !isSign(tokens[i + 2], "/")) return { value: token.value * 1000, next: i + 2, decimals: token.decimals };
  // "2/3 of a cord", "1/2 an hour"
  if (token.value > 0 && token.value < 1 && (word === "of" || token.at[1] - token.at[0] <= 3)) {
    const whole = ofA(tokens, { value: token.value, next: i + 1, decimals: 2 });
    if (whole.next > i + 1) return whole;
  }
  const multiple = MULTIPLES[word];
  if (multiple !== undefined) return withPart(tokens, { value: token.value * multiple, next: i + 2, decimals: token.decimals });
  return part(tokens, i + 1, token.value, token.decimals);
}

/** "... and a half", "... and three quarters": adds what follows, or null. */
function part(tokens: readonly Token[], from: number, value: number, decimals: number): Parsed | null {
  // "one-and-a-half"
  if (isSign(tokens[from], "-") && !tokens[from]?.gap && isWord(tokens[from + 1], "and")
    && isSign(tokens[from + 2], "-") && isWord(tokens[from + 3], "a") && isSign(tokens[from + 4], "-")) {
    const share = PARTS[wordAt(tokens[from + 5])];
    return share === undefined || decimals > 0 ? null : { value: value + share, next: from + 6, decimals: 2 };
  }
  if (!isWord(tokens[from], "and", "n") && !isSign(tokens[from], "&")) return null;
  // "1 and 3/4"
  const fraction = tokens[from + 1];
  if (fraction?.kind === "number" && fraction.value > 0 && fraction.value < 1 && fraction.decimals === 2 && decimals === 0) {
    return { value: value + fraction.value, next: from + 2, decimals: 2 };
  }
  const many = SMALL[wordAt(tokens[from + 1])];
  const counted = isWord(tokens[from + 1], "a", "an") ? 1 : many !== undefined && many > 0 && many < 8 ? many : null;
  const share = PARTS[wordAt(tokens[from + (counted === null ? 1 : 2)])];
  if (share === undefined || decimals > 0) return null;
  const next = from + (counted === null ? 2 : 3);
  if (isClock(tokens, next, share)) return null;
  return { value: value + (counted ?? 1) * share, next, decimals: 2 };
}

/** "a quarter to six", "half past"; but "an hour and a quarter to burn down" and "two and a half to three" */
const isClock = (tokens: readonly Token[], next: number, share: number): boolean => isWord(tokens[next], ...CLOCK_WORDS)
  && (share === 1 / 2 ? isWord(tokens[next], "past", "after")
    : tokens[next + 1]?.kind === "number" || smallNumber(wordAt(tokens[next + 1])) !== undefined);

const withPart = (tokens: readonly Token[], parsed: Parsed): Parsed => part(tokens, parsed.next, parsed.value, parsed.decimals) ?? parsed;

function inWords(tokens: readonly Token[], i: number, before: Token | undefined): Parsed | null {
  const word = wordAt(tokens[i]);
  if (word === "a" || word === "an") return afterArticle(tokens, i, before);
  if (word === "couple") return couple(tokens, i + 1);
  // "another hour", "one more week"
  if (word === "another") return COUNTED_BY_ARTICLE.has(wordAt(tokens[i + 1])) || PERIODS.has(wordAt(tokens[i + 1]))
    ? { value: 1, next: i + 1, decimals: 0 } : null;
  if (word in PARTS) return partAlone(tokens, i);
  if (word === "dozen") return { value: 12, next: i + 1, decimals: 0 };
  // "point five of a tonne"
  if (word === "point") {
    const pointed = decimalWords(tokens, { value: 0, next: i, decimals: 0 });
    const whole = pointed && ofA(tokens, pointed);
    return whole && unitAt(tokens, whole.next) ? whole : null;
  }
  // "hour and a half", "hundred kilos"
  if (before?.kind !== "number" && HALVED.has(word) && partFollows(tokens, i + 1)) return { value: 1, next: i, decimals: 0 };
  if ((word === "hundred" || word === "thousand") && before?.kind !== "number") {
    const whole = wholeNumber(tokens, i);
    return unitAt(tokens, whole.next) ? whole : null;
  }
  if (smallNumber(word) === undefined && !(word in TENS)) return null;
  const whole = wholeNumber(tokens, i);
  const pointed = decimalWords(tokens, whole);
  if (pointed) return pointed;
  const hyphen = isSign(tokens[whole.next], "-") && !tokens[whole.next]?.gap ? 1 : 0;
  const share = PARTS[wordAt(tokens[whole.next + hyphen])];
  if (share !== undefined && share < 1 / 2 && whole.value < 8) {
    return ofA(tokens, { value: whole.value * share, next: whole.next + hyphen + 1, decimals: 2 });
  }
  const parted = withPart(tokens, whole);
  if (word === "one" && parted.next === i + 1 && !counts(tokens, i + 1, before)) return null;
  return parted;
}

/** "one" counts only before a unit or a thing, or in a range; "this one", "one of them" do not. */
function counts(tokens: readonly Token[], next: number, before: Token | undefined): boolean {
  const word = wordAt(tokens[next]);
  if (COUNTABLE.has(word) || COUNTABLE.has(word.slice(0, -1)) || unitAt(tokens, next)) return true;
  return isWord(before, "minus", "between") || (isWord(tokens[next], "to", "or", "and") && wordAt(tokens[next + 1]) in SMALL);
}

function unitAt(tokens: readonly Token[], i: number): boolean {
  const word = wordAt(tokens[i]) || (tokens[i]?.kind === "sign" ? (tokens[i] as { sign: string }).sign : "");
  // "one in ten" is no inch, "a t shirt" no tonne
  return word.length > 1 && word !== "in" && unitNamed(word) !== null ? true : unitNamed(`${word} ${wordAt(tokens[i + 1])}`) !== null
    || word === "%";
}

/** "couple of", "couple hundred". */
function couple(tokens: readonly Token[], after: number): Parsed {
  const of = isWord(tokens[after], "of") ? 1 : 0;
  const multiple = isWord(tokens[after + of], "hundred", "thousand", "dozen") ? MULTIPLES[wordAt(tokens[after + of])] : undefined;
  if (multiple !== undefined) return { value: 2 * multiple, next: after + of + 1, decimals: 0 };
  return { value: 2, next: after + of, decimals: 0, loose: true };
}

const HALVED = new Set(["hour", "day", "week", "month", "year", "metre", "meter", "foot", "kilo", "tonne", "ton", "cord", "inch",
  "stone"]);

/** "and a half", "and three quarters" */
const partFollows = (tokens: readonly Token[], i: number): boolean => part(tokens, i, 0, 0) !== null;

function afterArticle(tokens: readonly Token[], i: number, before: Token | undefined): Parsed | null {
  const word = wordAt(tokens[i + 1]);
  const multiple = MULTIPLES[word];
  if (multiple !== undefined) return word === "hundred" || word === "thousand" ? withPart(tokens, wholeNumber(tokens, i))
    : { value: multiple, next: i + 2, decimals: 0 };
  if (word === "couple") return couple(tokens, i + 2);
  if (word === "few") return { value: 3, next: i + (isWord(tokens[i + 2], "of") ? 3 : 2), decimals: 0, loose: true };
  if (word in PARTS) return partAlone(tokens, i + 1);
  const sized = isWord(tokens[i + 1], ...SIZED) ? wordAt(tokens[i + 2]) : "";
  if (sized !== "" && before?.kind !== "number" && (COUNTED_BY_ARTICLE.has(sized) || PERIODS.has(sized))
    && unitNamed(`${word} ${sized}`) === null) return { value: 1, next: i + 1, decimals: 0 };
  if (word === "grand" && tokens[i + 2]?.kind === "word" && !isWord(tokens[i + 2], "for", "on", "to", "or", "and", "in",
    "more")) return null;
  // "a cord" is one, "15 kg a day" and "two an hour" are rates
  const afterUnit = before?.kind === "number" || (before?.kind === "sign" && "%€$£°".includes(before.sign))
    || (before?.kind === "word" && before.word !== "of" && unitNamed(before.word) !== null);
  const rate = (afterUnit && !isWord(tokens[i + 2], "later", "ago", "before", "after", "into")
    && !(isWord(tokens[i + 2], "in") && (tokens[i + 3] === undefined || tokens[i + 3]?.kind === "sign")))
    || (isWord(before, ...FIRINGS) && counted(tokens[i - 2])) || pricedFor(tokens, i);
  // "a buck fifty"
  const change = tokens[i + 2];
  if (!rate && isWord(tokens[i + 1], "buck", "dollar", "euro", "quid") && (change?.kind === "number" || wordAt(change) in TENS)) {
    return { value: 1, next: i + 1, decimals: 0 };
  }
  if (rate || isWord(before, ...RATED) || !(unitAt(tokens, i + 1) || (word === "m" && partFollows(tokens, i + 2)))) return null;
  if (word === "ton" && isWord(tokens[i + 2], "of") && isWord(tokens[i + 3], ...NO_TON)) return null;
  const orTwo = isWord(tokens[i + 2], "or") && isWord(tokens[i + 3], "two", "so") && unitNamed(word)?.dimension !== "temperature";
  const one = COUNTED_BY_ARTICLE.has(word) || partFollows(tokens, i + 2) || orTwo
    || (PERIODS.has(word) && (before === undefined || before.kind === "sign" || LASTING.has(wordAt(before))))
    || (MASSES.has(word) && (isWord(tokens[i + 2], "of") || (isWord(before, "than", "about", "nearly", "over", "under")
      && tokens[i + 2]?.kind !== "word"))) || (LENGTHS.has(word) && (isWord(tokens[i + 2], ...AFTER_LENGTH)
      || (isWord(before, "to", "by", "than", "about", "nearly", "over", "under") && tokens[i + 2]?.kind !== "word")));
  return one ? { value: 1, next: i + 1, decimals: 0 } : null;
}

const counted = (token: Token | undefined): boolean => token?.kind === "number" || smallNumber(wordAt(token)) !== undefined
  || isWord(token, "many", "few");

/** "or 90 for a stere": what one costs; but "80 euros for a cube" may be one that was bought */
const pricedFor = (tokens: readonly Token[], i: number): boolean => isWord(tokens[i - 1], "for") && tokens[i - 2]?.kind === "number"
  && ["volume", "mass"].includes(unitNamed(wordAt(tokens[i + 1]))?.dimension ?? "");

/** "half a cord", "half cord", "quarter of a cord", "half a dozen"; never "half past", "half six", "half the load". */
function partAlone(tokens: readonly Token[], i: number): Parsed | null {
  const share = PARTS[wordAt(tokens[i])];
  if (share === undefined) return null;
  // "half to three quarters of a tonne"
  const other = isWord(tokens[i + 2], "three", "two", "a") ? i + 3 : i + 2;
  if (isWord(tokens[i + 1], "to") && wordAt(tokens[other]) in PARTS) return { value: share, next: i + 1, decimals: 2 };
  if (isWord(tokens[i + 1], ...CLOCK_WORDS)) return null;
  // "half-inch"
  const hyphen = isSign(tokens[i + 1], "-") && !tokens[i + 1]?.gap && tokens[i + 2]?.gap === false && unitAt(tokens, i + 2);
  if (hyphen) return { value: share, next: i + 2, decimals: 2 };
  const end = ofA(tokens, { value: share, next: i + 1, decimals: 2 });
  if (isWord(tokens[end.next], "dozen")) return { value: 12 * share, next: end.next + 1, decimals: 0 };
  if (isWord(tokens[end.next], "hundred", "thousand")) return { value: (MULTIPLES[wordAt(tokens[end.next])] as number) * share,
    next: end.next + 1, decimals: 0 };
  const thing = wordAt(tokens[end.next]);
  return unitAt(tokens, end.next) || COUNTABLE.has(thing) || COUNTABLE.has(thing.slice(0, -1)) ? end : null;
}

/** Passes "of a" and "a" between a part and its unit. */
function ofA(tokens: readonly Token[], parsed: Parsed): Parsed {
  let next = parsed.next;
  if (isWord(tokens[next], "of")) next += 1;
  if (isWord(tokens[next], "a", "an") || (next > parsed.next && isWord(tokens[next], "the") && unitAt(tokens, next + 1))) next += 1;
  return next > parsed.next && (unitAt(tokens, next) || isWord(tokens[next], "dozen", "hundred", "thousand")
    || COUNTABLE.has(wordAt(tokens[next])))
    ? { ...parsed, next } : parsed;
}

/** "two hundred and forty five"; from a word known to begin a number, or from "a" before "hundred". */
function wholeNumber(tokens: readonly Token[], from: number): Parsed {
  let total = 0;
  let current = 0;
  let i = from;
  /** what may still follow: after "twenty" a unit, after "five" only a multiple */
  let room = 100;
  if (isWord(tokens[i], "a", "an")) {
    current = 1;
    room = 0;
    i += 1;
  }
  const bare = isWord(tokens[i], "hundred", "thousand") && i === from;
  if (bare) {
    current = 1;
    room = 0;
  }
  for (;;) {
    const hyphen = isSign(tokens[i], "-") && i > from && tokens[i]?.gap === false && tokens[i + 1]?.gap === false;
    const and = isWord(tokens[i], "and") && i > from && current >= 100;
    const at = hyphen || and ? i + 1 : i;
    const word = wordAt(tokens[at]);
    const small = smallNumber(word);
    const tens = TENS[word];
    const multiple = MULTIPLES[word];
    if (tens !== undefined && room >= 100 && !hyphen) {
      current += tens;
      room = 10;
    } else if (small !== undefined && (room >= 100 ? !hyphen : room === 10 && small > 0 && small < 10)) {
      current += small;
      room = 0;
    } else if (multiple !== undefined && !and && (i > from || bare) && current > 0 && (multiple === 1000 || current < 100)) {
      current *= multiple;
      if (multiple === 1000) {
        total += current;
        current = 0;
      }
      room = multiple === 12 ? 0 : 100;
    } else break;
    i = at + 1;
    if (isWord(tokens[i], "and") && total > 0 && current === 0 && (wordAt(tokens[i + 1]) in SMALL || wordAt(tokens[i + 1]) in TENS)) i += 1;
  }
  return { value: total + current, next: i, decimals: 0 };
}

/** "twelve point five". */
function decimalWords(tokens: readonly Token[], whole: Parsed): Parsed | null {
  if (!isWord(tokens[whole.next], "point", "comma")) return null;
  let i = whole.next + 1;
  let digits = "";
  for (let word = wordAt(tokens[i]); digits.length < 4; word = wordAt(tokens[i])) {
    const digit = word === "oh" || word === "o" ? 0 : SMALL[word];
    if (digit === undefined || digit > 9) break;
    digits += digit;
    i += 1;
  }
  return digits === "" ? null : { value: Number(`${whole.value}.${digits}`), next: i, decimals: digits.length };
}
