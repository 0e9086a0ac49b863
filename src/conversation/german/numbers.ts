/** German number words: "achtzehn", "einundzwanzig", "zweihundertfünfzig", "anderthalb", "zweieinhalb". Keys are folded as in `gloss.ts`. */
const SMALL: Readonly<Record<string, number>> = {
  null: 0, eins: 1, zwei: 2, zwo: 2, drei: 3, vier: 4, funf: 5, sechs: 6, sieben: 7, acht: 8, neun: 9, zehn: 10, elf: 11, zwolf: 12, dreizehn: 13, vierzehn: 14, funfzehn: 15,
  sechzehn: 16, siebzehn: 17, achtzehn: 18, neunzehn: 19,
};
const TENS: Readonly<Record<string, number>> = { zwanzig: 20, dreissig: 30, vierzig: 40, funfzig: 50, sechzig: 60, siebzig: 70, achtzig: 80, neunzig: 90 };
const HALVES: Readonly<Record<string, number>> = { anderthalb: 1.5, eineinhalb: 1.5, zweieinhalb: 2.5, dreieinhalb: 3.5, viereinhalb: 4.5, funfeinhalb: 5.5, sechseinhalb: 6.5, siebeneinhalb: 7.5, achteinhalb: 8.5, neuneinhalb: 9.5, zehneinhalb: 10.5 };

/** The number a folded word says, or null. Up to thousands; "ein" alone is an article. */
export function numberWord(word: string): number | null {
  if (word.length > 40 || word === "ein") return null;
  const plain = SMALL[word] ?? TENS[word] ?? HALVES[word];
  if (plain !== undefined) return plain;
  if (word === "hundert") return 100;
  if (word === "tausend") return 1000;
  const thousand = word.indexOf("tausend");
  if (thousand > 0) {
    const many = part(word.slice(0, thousand));
    const rest = word.slice(thousand + 7).replace(/^und/, "");
    const more = rest === "" ? 0 : numberWord(rest);
    return many === null || more === null ? null : many * 1000 + more;
  }
  const hundred = word.indexOf("hundert");
  if (hundred > 0 || (hundred === 0 && word.length > 7)) {
    const many = hundred === 0 ? 1 : part(word.slice(0, hundred));
    const rest = word.slice(hundred + 7).replace(/^und/, "");
    const more = rest === "" ? 0 : part(rest);
    return many === null || more === null ? null : many * 100 + more;
  }
  return part(word);
}

/** Below a hundred, "ein" as in "einundzwanzig" and "einhundert" included. */
function part(word: string): number | null {
  if (word === "ein") return 1;
  const plain = SMALL[word] ?? TENS[word];
  if (plain !== undefined) return plain;
  const und = word.lastIndexOf("und");
  if (und <= 0) return null;
  const ones = word.slice(0, und) === "ein" ? 1 : SMALL[word.slice(0, und)];
  const tens = TENS[word.slice(und + 3)];
  return ones === undefined || ones > 9 || tens === undefined ? null : tens + ones;
}

/** "ersten", "zweite", "dritten", "letzten": English ordinals, which read everywhere. */
export const ORDINALS: Readonly<Record<string, string>> = Object.fromEntries(
  (["erst first", "zweit second", "dritt third", "viert fourth", "letzt last"] as const).flatMap((pair) => {
    const [stem = "", english = ""] = pair.split(" ");
    return ["e", "en", "er", "es", "em"].map((end) => [stem + end, english]);
  }),
);
