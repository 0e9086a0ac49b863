/** Yes, no or don't know, in many wordings and in English, German, Finnish, Swedish, French, Italian, Spanish, Polish and Russian. */
import { fold, scan, wordAt, type Token } from "./tokens.ts";

export type YesNo = "yes" | "no" | "unknown";

const words = (list: string): string[] => list.split("|").map((phrase) => phrase.split(" ").map(fold).join(" "));

const YES = words(
  "yes|y|ye|yep|yup|yeah|yea|yah|ya|yess|yesss|aye|sure|ok|okay|k|okey|correct|right|true|affirmative|indeed|absolutely|definitely|" +
  "certainly|of course|totally|sure thing|thats right|that is right|it is|it does|i do|i did|we do|we have|i have|yes please|" +
  "please do|go ahead|do it|exactly|done|sounds good|fine|you bet|roger|it has|they do|there is|there are|uh huh|mhm|mm hm|i am|" +
  "always|yup yup|it was|i think so|suppose so|i guess so|probably yes|" +
  "ja|jawohl|ja genau|genau|stimmt|klar|freilich|eh klar|sicher|auf jeden fall|glaub schon|glaub ich schon|glaube ich schon|ich glaube schon|ich denke schon|denke schon|wahrscheinlich schon|das stimmt|jo eh|immer|naturlich|doch|joo|kylla|juu|niin|ok ja|japp|jo|absolut|javisst|oui|ouais|bien sur|d accord|" +
  "exact|si|certo|esatto|va bene|claro|vale|por supuesto|sip|tak|no tak|oczywiscie|jasne|да|ага|конечно|угу|верно|так",
);
const NO = words(
  "no|n|nope|nah|na|nay|noo|nooo|never|negative|not really|not at all|not yet|not now|not|incorrect|wrong|false|it isnt|it is not|" +
  "it doesnt|it does not|i dont|i do not|i didnt|we dont|i havent|we havent|it hasnt|no way|no thanks|no thank you|none|nothing|dont|" +
  "it wasnt|there isnt|there arent|there is not|no chance|hardly|i think not|dont think so|i dont think so|probably not|nee|" +
  "absolutely not|definitely not|of course not|certainly not|" +
  "nein|ne|noch nicht|nicht|gar nicht|naa|eher nicht|uberhaupt nicht|glaube nicht|ich glaube nicht|glaub nicht|glaub ich nicht|glaube ich nicht|ich glaub nicht|eigentlich nicht|auf keinen fall|nicht wirklich|niemals|keine|kein|ei|en|ei ole|emme|eipa|nej|inte|icke|non|pas du tout|pas encore|jamais|mai|per niente|nunca|" +
  "todavia no|nie|nigdy|jeszcze nie|нет|неа|не|никогда|еще нет",
);
const UNKNOWN = words(
  "dont know|i dont know|do not know|dunno|idk|no idea|not sure|unsure|im not sure|i am not sure|cant tell|cannot tell|cant say|" +
  "hard to say|maybe|perhaps|possibly|no clue|who knows|unknown|havent looked|have not looked|havent checked|didnt look|could be|" +
  "not certain|uncertain|couldnt say|i forgot|cant remember|dont remember|beats me|hmm|skip|pass|?|??|dk|no opinion|cant see|" +
  "might be|im unsure|wouldnt know|depends|" +
  "weiss nicht|weiss ich nicht|kann ich nicht sagen|das weiss ich nicht|bin nicht sicher|bin mir nicht sicher|ich bin mir nicht sicher|nicht sicher|schwer zu sagen|kommt drauf an|keinen schimmer|hab nicht geschaut|habe ich nicht geschaut|woas i ned|woass i ned|weiss i ned|keine ahnung|vielleicht|ich weiss nicht|unsicher|en tieda|ei tietoa|ehka|vet inte|vet ej|kanske|" +
  "ingen aning|je ne sais pas|sais pas|aucune idee|peut etre|non so|non lo so|forse|boh|no se|no lo se|ni idea|quizas|tal vez|" +
  "nie wiem|moze|byc moze|не знаю|незнаю|хз|может быть|может|наверное не знаю",
);
const EMOJI: readonly (readonly [string, YesNo])[] = [
  ["👍", "yes"], ["✅", "yes"], ["✔", "yes"], ["☑", "yes"], ["👌", "yes"], ["🆗", "yes"], ["🙆", "yes"], ["💯", "yes"],
  ["👎", "no"], ["❌", "no"], ["✖", "no"], ["🚫", "no"], ["⛔", "no"], ["🙅", "no"], ["❎", "no"],
  ["🤷", "unknown"], ["🤔", "unknown"], ["❓", "unknown"], ["❔", "unknown"], ["😕", "unknown"],
];
const MEANINGS = new Map<string, YesNo>([
  ...YES.map((phrase) => [phrase, "yes"] as const), ...NO.map((phrase) => [phrase, "no"] as const),
    ...UNKNOWN.map((phrase) => [phrase, "unknown"] as const),
]);
/** Said beside an answer without changing it. */
const FILLERS = new Set(
  ("please thanks thank you mate sir well so um uh er eh hm i think guess suppose pretty just really very much a bit it is that mean " +
  "to be honest tbh lol haha actually now and we do did there danke bitte kiitos tack merci grazie gracias dzieki спасибо oh ah hey " +
  "love dear gleed completely totally still for").split(" "),
);
/** Beside a yes these take it back: "yes but", "nearly, yes". */
const DOUBTS = new Set(["but", "except", "although", "though", "almost", "nearly", "mostly", "until", "unless", "only", "sort", "kind",
  "kinda", "sorta", "aber", "fast", "mutta", "men", "mais", "presque", "ma", "quasi", "pero", "casi", "ale", "prawie", "но",
  "почти"].map(fold));
const LONGEST_ANSWER = 12;
const LONGEST_PHRASE = 4;

/**
 * What a reply says to a yes-or-no question, or null when it is no such reply. A longer sentence counts by how it begins
 * ("yes, since Tuesday"); yes and no together is "unknown" and so is a doubt beside either.
 */
export function readYesNo(text: string): YesNo | null {
  const tokens = scan(text.slice(0, 400));
  const found: { meaning: YesNo; at: number }[] = [];
  let wordCount = 0;
  let plain = true;
  for (let i = 0; i < tokens.length; ) {
    const token = tokens[i] as Token;
    if (token.kind === "sign") {
      const emoji = EMOJI.find(([sign]) => token.sign.startsWith(sign));
      if (emoji) found.push({ meaning: emoji[1], at: wordCount });
      i += 1;
      continue;
    }
    wordCount += 1;
    if (token.kind === "number") {
      plain = false;
      i += 1;
      continue;
    }
    const hit = longest(tokens, i);
    if (hit) {
      found.push({ meaning: hit.meaning, at: wordCount - 1 });
      i += hit.length;
    } else {
      if (!FILLERS.has(token.word) && !DOUBTS.has(token.word)) plain = false;
      i += 1;
    }
  }
  if (wordCount === 0 && found.length === 0) return text.trim() === "?" || text.trim() === "??" ? "unknown" : text.trim() === "+"
    || text.trim() === "+1" ? "yes" : null;
  const leading = found.filter(({ at }) => at <= (plain ? LONGEST_ANSWER : 1));
  if (leading.length === 0 || (!plain && leading[0]?.at !== 0)) return null;
  const asks = tokens.some((token) => token.kind === "sign" && token.sign === "?");
  const doubted = tokens.slice(0, 12).some((token) => DOUBTS.has(wordAt(token)));
  const meanings = new Set(leading.map(({ meaning }) => meaning));
  if (asks || (doubted && leading[0]?.meaning === "yes")) return "unknown";
  if (meanings.has("unknown")) return "unknown";
  if (meanings.size > 1) return plain ? "unknown" : (leading[0]?.meaning ?? null);
  return leading[0]?.meaning ?? null;
}

function longest(tokens: readonly Token[], i: number): { meaning: YesNo; length: number } | null {
  let phrase = "";
  let best: { meaning: YesNo; length: number } | null = null;
  for (let n = 0; n < LONGEST_PHRASE; n += 1) {
    const word = wordAt(tokens[i + n]);
    if (!word) break;
    phrase = n === 0 ? word : `${phrase} ${word}`;
    const meaning = MEANINGS.get(phrase);
    if (meaning) best = { meaning, length: n + 1 };
  }
  return best;
}
