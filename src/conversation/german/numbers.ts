/** German number words: "achtzehn", "einundzwanzig", "zweihundertfünfzig", "anderthalb", "zweieinhalb". Keys are folded as in `gloss.ts`. */
const SMALL: Readonly<Record<string, number>> = {
  null: 0, eins: 1, zwei: 2, zwo: 2, drei: 3, vier: 4, funf: 5, sechs: 6, sieben: 7, acht: 8, neun: 9, zehn: 10, elf: 11, zwolf: 12, dreizehn: 13, vierzehn: 14, funfzehn: 15,
  sechzehn: 16, siebzehn: 17, achtzehn: 18, neunzehn: 19,
  // as they are spoken in the south and on a quick tongue
  zwoa: 2, zwoi: 2, zwee: 2, dru: 3, viere: 4, fumf: 5, fuf: 5, funfe: 5, sechse: 6, sachs: 6, siebne: 7, siebene: 7, achte: 8, neune: 9, zehne: 10, zeh: 10, elfe: 11,
  zwolfe: 12, fuffzehn: 15, fuchzehn: 15, fuchzehne: 15, sechzehne: 16, siebzehne: 17, achtzehne: 18,
};
const TENS: Readonly<Record<string, number>> = { zwanzig: 20, dreissig: 30, vierzig: 40, funfzig: 50, sechzig: 60, siebzig: 70, achtzig: 80, neunzig: 90,
  zwanzg: 20, zwanzich: 20, dreissg: 30, dreissich: 30, vierzg: 40, vierzich: 40, fuffzig: 50, fuffzich: 50, fuchzig: 50, fuchzg: 50, sechzg: 60, siebzg: 70, achtzg: 80, neunzg: 90, nunzg: 90, drissg: 30, fufzg: 50 };
const ENDS: Readonly<Record<string, number>> = { einhalb: 0.5, ahalb: 0.5, einviertel: 0.25, dreiviertel: 0.75 };

/** The number a folded word says, or null. Up to thousands; "ein" alone is an article. */
export function numberWord(word: string): number | null {
  if (word.length > 40 || word === "ein") return null;
  const plain = SMALL[word] ?? TENS[word];
  if (plain !== undefined) return plain;
  if (word === "anderthalb" || word === "anderthalbe") return 1.5;
  for (const [end, more] of Object.entries(ENDS)) {
    const many = word.endsWith(end) && word.length > end.length ? part(word.slice(0, -end.length)) : null;
    if (many !== null) return many + more;
  }
  if (word === "hundert") return 100;
  if (word === "tausend") return 1000;
  const thousand = word.indexOf("tausend");
  if (thousand > 0 || (thousand === 0 && word.length > 7)) {
    const many = thousand === 0 ? 1 : part(word.slice(0, thousand));
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

/** "einundzwanzig", "zwoarazwanzg" */
const JOINED = /^([a-z]{3,6}?)(?:und|ara|ra|a)([a-z]{5,10})$/;

/** One digit said after a "Komma", or null. */
export const digitOf = (word: string): number | null => {
  const value = SMALL[word];
  return value !== undefined && value < 10 ? value : null;
};

/** Below a hundred, "ein" as in "einundzwanzig" and "einhundert" included. */
function part(word: string): number | null {
  if (word === "ein") return 1;
  const plain = SMALL[word] ?? TENS[word];
  if (plain !== undefined) return plain;
  const [, first = "", last = ""] = JOINED.exec(word) ?? [];
  const ones = first === "ein" || first === "oan" ? 1 : SMALL[first];
  const tens = TENS[last];
  return ones === undefined || ones > 9 || tens === undefined ? null : tens + ones;
}

/** "ersten", "zweite", "dritten", "letzten": English ordinals, which read everywhere. */
export const ORDINALS: Readonly<Record<string, string>> = Object.fromEntries(
  (["erst first", "zweit second", "dritt third", "viert fourth", "letzt last"] as const).flatMap((pair) => {
    const [stem = "", english = ""] = pair.split(" ");
    return ["e", "en", "er", "es", "em"].map((end) => [stem + end, english]);
  }),
);
