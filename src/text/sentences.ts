/**
 * Sentences that readers of records and calculators make in English, in another language: the English sentence, with names in braces for
 * what changes in it, is its own key. One that is not known stays English.
 */
import { SENTENCE } from "./catalogues.ts";

interface Pattern {
  readonly matches: RegExp;
  readonly names: readonly string[];
  readonly words: string;
}

const NAME = /\{(\w+)\}/g;
/** "{path} was {value}" turned into whatever was said is turned once more, no deeper. */
const DEEPEST = 3;

export function sentencesIn(catalogue: ReadonlyMap<string, string>): (sentence: string, locale: string) => string {
  const whole = new Map<string, string>();
  const patterns: Pattern[] = [];
  for (const [id, words] of catalogue) {
    if (!id.startsWith(SENTENCE)) continue;
    const english = id.slice(SENTENCE.length);
    const names = [...english.matchAll(NAME)].map(([, name = ""]) => name);
    if (names.length === 0) whole.set(english, words);
    else patterns.push({ matches: new RegExp(`^${english.split(NAME).filter((_, i) => i % 2 === 0).map(escaped).join("(.{1,400}?)")}$`, "s"), names, words });
  }
  // what says more of the sentence itself comes first
  patterns.sort((a, b) => b.matches.source.length - a.matches.source.length);

  function turned(sentence: string, locale: string, depth: number): string {
    const known = whole.get(sentence);
    if (known !== undefined) return known;
    if (depth >= DEEPEST || sentence.length > 1000) return sentence;
    for (const { matches, names, words } of patterns) {
      const found = matches.exec(sentence);
      if (!found) continue;
      const values = new Map(names.map((name, i) => [name, value(found[i + 1] ?? "", locale, depth)]));
      return words.replace(NAME, (_, name: string) => values.get(name) ?? "");
    }
    return sentence;
  }

  function value(words: string, locale: string, depth: number): string {
    if (/^-?\d+\.\d+(?: [^\s\d]{1,5})?$/.test(words)) return words.replace(/^-?[\d.]+/, (digits) => new Intl.NumberFormat(locale, { maximumFractionDigits: 4 }).format(Number(digits)));
    if (/^\d{4}-\d{2}-\d{2}$/.test(words)) return new Intl.DateTimeFormat(locale, { timeZone: "UTC", dateStyle: "medium" }).format(Date.parse(words));
    return turned(words, locale, depth + 1);
  }

  return (sentence, locale) => turned(sentence, locale, 0);
}

const escaped = (words: string): string => words.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
