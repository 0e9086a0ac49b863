/**
 * Cuts normalised text into words, quantities and the few marks that mean something. A hand scanner: one pass, no patterns,
 * so no message can make it slow.
 */

export type QuantityKind =
  | "mass" | "share" | "temperature" | "below-zero" | "clock" | "volume" | "length" | "small-length" | "area" | "power" | "energy"
  | "pressure" | "duration" | "money" | "ppm" | "number";

export type Token =
  | { readonly kind: "word"; readonly text: string }
  | { readonly kind: "quantity"; readonly of: QuantityKind }
  | { readonly kind: "mark"; readonly text: string };

const UNIT_KIND: Readonly<Record<string, QuantityKind>> = {
  kg: "mass", kgs: "mass", kilo: "mass", kilos: "mass", kilogram: "mass", kilograms: "mass", lb: "mass", lbs: "mass", pound: "mass",
  pounds: "mass", t: "mass", ton: "mass", tons: "mass", tonne: "mass", tonnes: "mass", stone: "mass", g: "mass", gram: "mass", grams: "mass",
  "%": "share", percent: "share", pct: "share", pc: "share",
  "°": "temperature", c: "temperature", f: "temperature", degrees: "temperature", degree: "temperature", deg: "temperature",
  celsius: "temperature", fahrenheit: "temperature", below: "below-zero", am: "clock", pm: "clock", oclock: "clock",
  m3: "volume", cube: "volume", cubes: "volume", cubic: "volume", cord: "volume", cords: "volume", stere: "volume", steres: "volume",
  litre: "volume", litres: "volume", liter: "volume", liters: "volume", l: "volume", rm: "volume",
  m: "length", metre: "length", metres: "length", meter: "length", meters: "length", ft: "length", feet: "length", foot: "length",
  cm: "small-length", mm: "small-length", inch: "small-length", inches: "small-length", in: "small-length", centimetres: "small-length",
  m2: "area", sqm: "area", square: "area", squares: "area", sqft: "area",
  kw: "power", w: "power", watt: "power", watts: "power", kilowatt: "power", kilowatts: "power",
  kwh: "energy", btu: "energy", btus: "energy", mj: "energy", pa: "pressure", pascal: "pressure", pascals: "pressure",
  min: "duration", mins: "duration", minute: "duration", minutes: "duration", h: "duration", hr: "duration", hrs: "duration",
  hour: "duration", hours: "duration", day: "duration", days: "duration", week: "duration", weeks: "duration", month: "duration",
  months: "duration", year: "duration", years: "duration", ppm: "ppm", "€": "money", "$": "money", "£": "money", euro: "money",
  euros: "money", dollars: "money", bucks: "money", quid: "money",
};

const NUMBER_WORDS = new Set(
  ("one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty " +
    "thirty forty fifty sixty seventy eighty ninety hundred thousand dozen half").split(" "),
);

const LEET: Readonly<Record<string, string>> = { "0": "o", "1": "i", "3": "e", "4": "a", "5": "s", "7": "t", "@": "a", "$": "s" };

const isDigit = (code: number): boolean => code >= 48 && code <= 57;
/** Letters of any script; everything above Latin-1 that is not general punctuation, an arrow or a symbol counts as one. */
const isLetter = (code: number): boolean =>
  (code >= 97 && code <= 122) || (code >= 0xc0 && code <= 0x1fff && code !== 0xd7 && code !== 0xf7) || (code >= 0x2c00 && code < 0xd800);

/** `gl4ss`, `sm0ke`: digits inside a word that starts with a letter; a unit such as `m3` or a word such as `co2` stays. */
function unleet(word: string): string {
  let out = "";
  for (let i = 0; i < word.length; i++) {
    const character = word.charAt(i);
    out += i > 0 && i < word.length - 1 ? (LEET[character] ?? character) : character;
  }
  return out;
}

export function tokenise(text: string): Token[] {
  const tokens: Token[] = [];
  const end = text.length;
  let at = 0;
  while (at < end) {
    const code = text.charCodeAt(at);
    if (isDigit(code)) {
      const from = at;
      let clock = false;
      while (at < end) {
        const here = text.charCodeAt(at);
        const separates = here === 0x2e || here === 0x2c || here === 0x3a;
        if (!isDigit(here) && !(separates && isDigit(text.charCodeAt(at + 1)))) break;
        if (here === 0x3a) clock = true;
        at++;
      }
      const negative = from > 0 && text.charCodeAt(from - 1) === 0x2d && !(from > 1 && isLetterOrDigit(text.charCodeAt(from - 2)));
      let next = at;
      if (text.charCodeAt(next) === 0x20) next++;
      const unitFrom = next;
      if ("%°€$£".includes(text.charAt(next)) && next < end) next++;
      else while (next < end && isLetterOrDigit(text.charCodeAt(next))) next++;
      const unit = text.slice(unitFrom, next);
      const moneyBefore = from > 0 && "€$£".includes(text.charAt(from - 1));
      const kind = Object.hasOwn(UNIT_KIND, unit) ? UNIT_KIND[unit] : undefined;
      if (clock) tokens.push({ kind: "quantity", of: "clock" });
      else if (moneyBefore) tokens.push({ kind: "quantity", of: "money" });
      else if (kind !== undefined) tokens.push({ kind: "quantity", of: negative && kind === "temperature" ? "below-zero" : kind });
      else tokens.push({ kind: "quantity", of: negative ? "below-zero" : "number" });
      if (kind !== undefined && !isLetter(unit.charCodeAt(0))) at = next;
      else if (kind !== undefined && unitFrom === at) at = next;
      continue;
    }
    if (isLetter(code)) {
      let word = "";
      let digits = false;
      while (at < end) {
        const here = text.charCodeAt(at);
        if (isLetter(here)) word += text.charAt(at);
        else if (isDigit(here) || ((here === 0x40 || here === 0x24) && isLetter(text.charCodeAt(at + 1)))) {
          word += text.charAt(at);
          digits = true;
        } else if (here === 0x27 && isLetter(text.charCodeAt(at + 1))) {
          const letter = text.charCodeAt(at + 1);
          if (letter === 115 && !isLetter(text.charCodeAt(at + 2))) at++;
        } else break;
        at++;
      }
      if (word.length > 40) word = word.slice(0, 40);
      const plain = digits && !Object.hasOwn(UNIT_KIND, word) ? unleet(word) : word;
      const before = tokens[tokens.length - 1];
      if (Object.hasOwn(UNIT_KIND, plain) && before?.kind === "word" && NUMBER_WORDS.has(before.text)) {
        tokens.push({ kind: "quantity", of: UNIT_KIND[plain] as QuantityKind });
      }
      tokens.push({ kind: "word", text: plain });
      continue;
    }
    if (code === 0x3f || code === 0x21) tokens.push({ kind: "mark", text: text.charAt(at) });
    else if (code >= 0xd800 && code < 0xe000) tokens.push({ kind: "mark", text: "emoji" });
    at++;
  }
  return tokens;
}

function isLetterOrDigit(code: number): boolean {
  return isLetter(code) || isDigit(code);
}
