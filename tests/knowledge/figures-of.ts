/** The figures of a sentence, in digits or words, English or German, with their units, so that a translation can be held against its original. */
const NUMBERS: Readonly<Record<string, number>> = {
  one: 1, two: 2, three: 3, four: 4, five: 5, six: 6, seven: 7, eight: 8, nine: 9, ten: 10, twelve: 12, fifteen: 15, twenty: 20, thirty: 30, half: 0.5, twice: 2,
  ein: 1, eine: 1, einen: 1, einem: 1, einer: 1, eines: 1, zwei: 2, drei: 3, vier: 4, fünf: 5, sechs: 6, sieben: 7, acht: 8, neun: 9, zehn: 10, zwölf: 12, fünfzehn: 15, zwanzig: 20, dreißig: 30,
  halb: 0.5, halbe: 0.5, halben: 0.5, zweimal: 2, hälfte: 0.5, doppelt: 2,
};
const UNITS: Readonly<Record<string, string>> = {
  kg: "kg", kilogram: "kg", kilograms: "kg", kilogramm: "kg", kilo: "kg", cm: "cm", centimetre: "cm", centimetres: "cm", zentimeter: "cm", mm: "mm", millimetre: "mm", millimetres: "mm", millimeter: "mm", m: "m", metre: "m", metres: "m", meter: "m", metern: "m",
  minute: "min", minutes: "min", minuten: "min", hour: "h", hours: "h", stunde: "h", stunden: "h", second: "s", seconds: "s", sekunde: "s", sekunden: "s", day: "d", days: "d", tag: "d", tage: "d", tagen: "d",
  week: "wk", weeks: "wk", woche: "wk", wochen: "wk", month: "mo", months: "mo", monat: "mo", monate: "mo", monaten: "mo", year: "a", years: "a", jahr: "a", jahre: "a", jahren: "a", degree: "°", degrees: "°", grad: "°", percent: "%", prozent: "%", third: "1/3", thirds: "1/3", drittel: "1/3", dritteln: "1/3",
};
const ARTICLES = new Set(["one", "ein", "eine", "einen", "einem", "einer", "eines"]);
const PIECE = /\d+(?:[.,]\d+)?|°C|[%°]|\p{L}+/gu;

/** "10 min", "150", "350 °C", "3 m", in order of size; a bare "one" or "eine" counts only before a unit. */
export function figuresOf(sentence: string): string[] {
  const pieces = [...sentence.toLowerCase().replaceAll("°c", "°C").matchAll(PIECE)].map(([piece]) => piece);
  return pieces.flatMap((piece, i) => {
    const value = /^\d/.test(piece) ? Number(piece.replace(",", ".")) : NUMBERS[piece];
    const article = piece === "a" || piece === "an" || ARTICLES.has(piece);
    const next = pieces[i + 1] ?? "";
    const unit = next === "%" || next === "°C" || next === "°" ? next : UNITS[next];
    if (article) return unit ? [`1 ${unit}`] : [];
    return value === undefined ? [] : [unit ? `${value} ${unit}` : String(value)];
  }).sort();
}
