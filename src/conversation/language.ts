/**
 * A rough guess at the language of a message, from its script and its commonest small words; only good enough for Gleed to say
 * which language it speaks. Common practice, no source.
 */

import { GERMAN_WORDS } from "./german/known-words.ts";
import { keyOf } from "./german/pieces.ts";

export type Language = "en" | "de" | "fi" | "sv" | "fr" | "it" | "es" | "pl" | "ru" | "other";

const READ_CHARACTERS = 400;
/** Less than this (a word shared by two languages and one of its own) is no sign: "CO alarm" and "35 min" are English. */
const ENOUGH = 1.5;

const SMALL_WORDS: Readonly<Record<Exclude<Language, "ru" | "other">, string>> = {
  en: "the a an is are was i you my it its of to and in on that this what when how why do does can not with for we our have has be at from if there any no yes after before will should your me",
  de: "der die das und ist ich nicht ein eine zu wie wann warum mein meine wir es mit auf für kann soll darf dem von bei was sie du bitte hat noch aus wird viel ofen holz guten tag hallo mir mich dir dich wenn weil dass habe hast kein keine nur schon sehr immer wieder nach beim vom zum zur nichts jetzt erklär erkläre bis über",
  fi: "ja on ei se että kun miten miksi milloin kuinka paljon minun voi saa mutta tai en ole olen tämä onko uuni uunin puita pellin lasi hyvää mitä kuuluu hei kiitos takka jos vielä tänään",
  sv: "och det är att jag inte en ett som på för med när hur varför min mitt kan får av till den har vi om ska mycket idag spjället ved hej mår du tack elda",
  fr: "le la les et est je ne pas un une de du des que quand comment pourquoi mon ma nous il elle avec dans pour sur ça ce au bonjour merci puis-je dois combien très fait vitre bois poêle",
  it: "il lo gli e è non un una di che quando come perché mio mia per con si sono della del posso devo quanto quanta nella legna stufa vetro ciao oggi stai grazie sempre più",
  es: "el los las y es no un una de que cuando cuándo como cómo por qué mi para con se está son del puedo tengo cuánta cuánto leña humo hola gracias al sale estás tal hoy más",
  pl: "na nie jest się że do z jak kiedy dlaczego mój moja czy mogę ile po od dzień dobry drewna piec proszę dziękuję masz dzisiaj moje szyba dym mam",
};

/** Words of the trade that only German has; each is sign enough. */
const GERMAN_TRADE = `absperrschieber rauchgasschieber luftschieber melder raummetern kamin rauchfang rauchrohr anheizen einheizen anfeuern schieber schornstein schornsteinfeger kaminfeger rauchfangkehrer rauchmelder anzünden angezündet nachlegen nachgelegt aufgelegt raummeter schüttraummeter festmeter
 scheite scheiten scheit scheibe ofentür glut feuerraum türdichtung grundofen speicherofen kachelofen holzfeuchte brennholz anfeuerholz heizen geheizt geharkt aschekasten putzöffnung
 buche buchenholz birkenholz fichte fichtenholz eiche eichenholz restfeuchte erinnere erinnerung rückgängig abbrechen hilfe danke guten bitte brennt flammen glimmt raucht qualmt stinkt
 zieht verbrannt gekehrt zeig zeige führ notiere schreib feuer rauch schwarz kohlenmonoxid ofenbauer morgen heute abend nacht gestern warm kalt trocken feucht`;

const LETTERS: readonly (readonly [string, Exclude<Language, "ru" | "other" | "en">, number])[] = [
  ["ß", "de", 2], ["ü", "de", 0.7], ["å", "sv", 1], ["ñ", "es", 2], ["¿", "es", 3], ["¡", "es", 2], ["ł", "pl", 2], ["ż", "pl", 2], ["ę", "pl", 2],
  ["ą", "pl", 2], ["ś", "pl", 2], ["ç", "fr", 1], ["ê", "fr", 1.5], ["œ", "fr", 2], ["ù", "fr", 1], ["ì", "it", 1], ["ò", "it", 1],
];

/** With a small word of English beside them these make sure that it is English. */
const ENGLISH_TRADE = new Set("wood glass smoke smokes damper chimney flue stove heater tonight burn burning kindling draught ash embers much many fire fires alarm".split(" "));
const TRADE = new Set(GERMAN_TRADE.split(/\s+/));
/** Shared with English, borrowed by it, or too short to tell alone. */
const HALF_A_SIGN = new Set("warm morgen abend nacht guten bitte passivhaus festmeter raummeter schüttraummeter schüttmeter grundofen kachelofen speckstein schieber".split(" "));
const BORROWED = new Set([...HALF_A_SIGN].map(keyOf));

const LANGUAGES = Object.keys(SMALL_WORDS) as (keyof typeof SMALL_WORDS)[];
const MEMBERS = new Map<string, (keyof typeof SMALL_WORDS)[]>();
for (const language of LANGUAGES) {
  for (const word of SMALL_WORDS[language].split(" ")) MEMBERS.set(word, [...(MEMBERS.get(word) ?? []), language]);
}

/** The language a message is most likely in. A message with no sign of another language counts as English; a script Gleed cannot read is `other`. */
export const guessLanguage = (text: string): Language => weighLanguage(text).language;

/** The guess, and whether the message itself speaks for it; "CO alarm" and "35 min" speak for none. */
export function weighLanguage(text: string): { readonly language: Language; readonly sure: boolean } {
  const read = text.slice(0, READ_CHARACTERS).toLowerCase();
  let latin = 0;
  let cyrillic = 0;
  let elsewhere = 0;
  const words: string[] = [];
  let word = "";
  for (const character of `${read} `) {
    const code = character.codePointAt(0) as number;
    const isLatin = (code >= 97 && code <= 122) || (code >= 0xdf && code <= 0x24f);
    if (isLatin) latin++;
    else if (code >= 0x400 && code <= 0x4ff) cyrillic++;
    else if (code > 0x24f && !(code >= 0x2000 && code <= 0x2bff) && code < 0x1f000) elsewhere++;
    if (isLatin || character === "-") word += character;
    else {
      if (word !== "") words.push(word);
      word = "";
    }
  }
  if (cyrillic > latin && cyrillic >= elsewhere) return { language: "ru", sure: true };
  if (elsewhere > latin) return { language: "other", sure: true };

  const scores = new Map<keyof typeof SMALL_WORDS, number>(LANGUAGES.map((language) => [language, 0]));
  const add = (language: keyof typeof SMALL_WORDS, amount: number): void => void scores.set(language, (scores.get(language) ?? 0) + amount);
  let trades = 0;
  for (const each of words) {
    const members = MEMBERS.get(each);
    if (members !== undefined) for (const language of members) add(language, 1 / members.length);
    if (!TRADE.has(each) && GERMAN_WORDS.has(keyOf(each)) && members === undefined) trades += each.length >= 7 && !BORROWED.has(keyOf(each)) ? ENOUGH : 0.8;
    if (TRADE.has(each)) trades += HALF_A_SIGN.has(each) ? 0.8 : ENOUGH;
  }
  for (const [letter, language, amount] of LETTERS) if (read.includes(letter)) add(language, amount);
  if (read.includes("ä") || read.includes("ö")) for (const language of ["de", "fi", "sv"] as const) add(language, 0.6);
  const english = scores.get("en") ?? 0;
  // "the schieber sits like welded" borrows a word
  if (english < 1 || trades > 3 * english || (scores.get("de") ?? 0) > 0) add("de", trades);
  let best: keyof typeof SMALL_WORDS = "en";
  let most = Math.max(ENOUGH, english);
  for (const language of LANGUAGES) {
    const score = scores.get(language) ?? 0;
    if (score > most || (score === most && score > english && best === "en")) {
      best = language;
      most = score;
    }
  }
  return { language: best, sure: best !== "en" || english + words.filter((each) => ENGLISH_TRADE.has(each)).length / 2 >= ENOUGH };
}
