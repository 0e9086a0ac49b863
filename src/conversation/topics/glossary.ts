/** "What is a bypass?", "what does wet basis mean?": a word of the trade explained, when it is one we know. */
import { say, text } from "../../answer.ts";
import type { Context, Outcome } from "../context.ts";

const ASKS = [
  /^(?:so |and |ok |sorry )?(?:what(?:'s|s| is| are| exactly is)) (?:actually )?(?:an? |meant by (?:an? |the )?)?(.+?)(?: exactly| anyway| then)?$/,
  /^(?:and )?what (?:do you |does it |is )?(?:does |do |mean(?:t)? by )?(?:an? |the )?(.+?) (?:mean|means|do|does)$/,
  /^(?:explain|define|meaning of|definition of) (?:an? |the |what (?:an? )?)?(.+?)(?: is| means)?$/,
];

const GERMAN_ASKS = [
  /^(?:und |also |ok )?was (?:ist|sind|bedeutet|heißt|heisst|meint man mit|versteht man unter)(?: denn| eigentlich| genau| so)* (?:eine?[mnr]? |der |die |das |den |dem )?(.+?)(?: eigentlich| genau| denn)?$/,
  /^(?:erklär|erkläre|erklaer|definiere)(?: mir)?(?: bitte)?(?: mal)? (?:eine?n? |der |die |das |den |was (?:eine? |der |die |das )?)?(.+?)(?: ist| sind| bedeutet| heißt)?$/,
];

export function glossaryAsked({ knowledge, said }: Pick<Context, "knowledge" | "said">, plain: string): Outcome | null {
  if (plain.length > 70) return null;
  const written = said.toLowerCase().replace(/[?.!\s]+$/, "").trim();
  for (const named_by of [...ASKS.map((asks) => asks.exec(plain)), ...GERMAN_ASKS.map((asks) => asks.exec(written))]) {
    const named = named_by?.[1]?.replace(/[\u2019"']/g, "").trim();
    const found = named && Object.entries(knowledge.glossary).find(([, { words }]) => words.some((word) => same(word, named)));
    if (found) {
      const [id, { topic, cautions }] = found;
      return { draft: { topic, cautions, headline: text(`glossary.${id}.title`), blocks: [say(text(`glossary.${id}.say`), ...cautions)] } };
    }
  }
  return null;
}

const bare = (words: string): string => words.toLowerCase().replace(/[-']/g, " ").replace(/\s+/g, " ").replace(/s$/, "");
const same = (one: string, other: string): boolean => bare(one) === bare(other);
