/** German words as answers are read by: one root for all forms of a word, mended towards German words alone, and how much each tells. */
import { keyOf } from "../german/pieces.ts";
import { wordBucket } from "../routing/features.ts";
import { germanRoot } from "../routing/german.ts";
import { hashText } from "../routing/hash.ts";
import { wordModel } from "../routing/route.ts";
import { stem } from "../routing/stem.ts";

/** Stand beside any other word, in German and its dialects; they never decide. */
const SMALL: ReadonlySet<string> = new Set(
  ("der die das den dem des dessen deren ein eine einen einem einer eines ich du er sie es wir ihr man mich mir dich dir sich uns euch ihn ihm ihnen mein meine meinen meinem meiner dein deine deinen deinem deiner " +
    "sein seine seinen seinem seiner unser unsere unseren unserem unserer euer eure dieser diese dieses diesen diesem jener jene jenes welche welcher welches ist sind war waren bin bist seid wird werden wurde wurden worden habe hab hat haben hatte hatten " +
    "kann kannst konnen konnte soll sollte sollen muss musst mussen musste darf durfen will wollen wollte mag mochte wurde an am auf aus bei beim bis durch fur gegen im in ins mit nach ohne seit uber um unter vom von vor wahrend wegen zu zum zur zwischen ab hin her " +
    "und oder aber denn weil dass ob wenn als wie so auch noch nur schon mal doch ja eben halt eh also dann da dort hier jetzt nun immer wieder sehr ganz etwas was wer wo wann warum wieso wohin woher alle alles mehr viel viele wenig einmal manchmal meistens meist oft " +
    "selbst erst gerade eigentlich ungefahr etwa circa bisschen bissl wenigstens jedenfalls einfach gar geht gehen ging kommt kommen kam macht machen gemacht tut tun sehe sehen sieht gesehen denke glaube weiss sage sagt gibt lasst lassen liegt steht bleibt " +
    "sache ding tag tage gut neu alt eins zwei stuck teil seite dabei damit davon dazu daran darauf darin " +
    "i a da de dea s d is san hob hom ham hot wos wia mia ma ned net nimma oda scho no do des dees isch sind hend chan chani mues au uf bi bim vo vom fur us").split(" "),
);
const SMALLEST = 0.08;
const LEAST = 0.2;
/** The rarity of a word among all messages of the German router: from nothing told to all. A fifth of them are German. */
const TELLS_NOTHING = 4.1;
const TELLS_ALL = 9.1;
/** short words that no message had say less than long ones */
const LONG = 5;
const UNSEEN_SHORT = 0.6;

let seen: ReadonlyMap<number, number> | null = null;
function rarityOf(root: string): number | undefined {
  const { known } = wordModel("de").linear;
  seen ??= new Map([...known.buckets].map((bucket, row) => [bucket, known.rarity[row] as number]));
  return seen.get(wordBucket(hashText(stem(root))));
}

/** 0.08 to 1 */
export function germanTells(word: string): number {
  const key = keyOf(word);
  if (key.length === 1 || SMALL.has(key)) return SMALLEST;
  const rarity = rarityOf(germanRoot(key));
  if (rarity === undefined) return key.length < 3 ? LEAST : key.length < LONG ? UNSEEN_SHORT : 1;
  return Math.min(1, Math.max(LEAST, (rarity - TELLS_NOTHING) / (TELLS_ALL - TELLS_NOTHING)));
}

/** Shorter roots lie too near each other: "schein" is no slip of "scheib". */
const MENDED_FROM = 7;

/** "Lüftung" and "Lüfter" are no "Luft", though they fold to it. */
const VENTILATION = /^luft(?:er|ung)/;
/** "alt", "altes", "alten": three letters are root enough before these */
const SHORT_ENDED = /^(.{3})(?:e[nrsm]?)$/;

/** The root of all forms of a word; a slip in a long one is mended. */
export function germanRootOf(word: string): string {
  const key = keyOf(word);
  if (VENTILATION.test(key)) return "lufter";
  const root = germanRoot(key);
  return settled(root.length < MENDED_FROM ? root : wordModel("de").lexicon.entry(root).word);
}
/** "feuchtes", "feucht": ending after ending, until none is left */
function settled(word: string): string {
  const root = germanRoot(word);
  return root === word ? (SHORT_ENDED.exec(word)?.[1] ?? word) : settled(root);
}
