/**
 * A rough guess at the language of a message, from its script and its commonest small words; only good enough for Gleed to say
 * which language it speaks. Common practice, no source.
 */

import { GERMAN_WORDS } from "./german/known-words.ts";
import { numberWord } from "./german/numbers.ts";
import { keyOf } from "./german/pieces.ts";

export type Language = "en" | "de" | "fi" | "sv" | "fr" | "it" | "es" | "pl" | "ru" | "other";

const READ_CHARACTERS = 400;
/** Less than this (a word shared by two languages and one of its own) is no sign: "CO alarm" and "35 min" are English. */
const ENOUGH = 1.5;

const SMALL_WORDS: Readonly<Record<Exclude<Language, "ru" | "other">, string>> = {
  en: "the a an is are was i you my it its of to and in on that this what when how why do does can not with for we our have has be at from if there any no yes after before will should your me",
  de: "der die das und ist ich nicht ein eine zu wie wann warum mein meine wir es mit auf für kann soll darf dem von bei was sie du bitte hat noch aus wird viel holz guten tag hallo mir mich dir dich wenn weil dass habe hast kein keine keinen nur schon sehr immer wieder nach beim vom zum zur nichts jetzt erklär erkläre bis über den dem einen einem einer eines ihr hab nix niemand muss müssen darf dürfen können soll sollte unter seit ohne gegen durch zwischen denn doch mehr ganz etwas dann damit davon dazu welche welcher welches wer bist kennst kannst machst uns euch dein deine im wofür wozu wohin woher alle alles habt sind oder aber auch warst nein",
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
 zieht verbrannt gekehrt zeig zeige führ notiere schreib feuer rauch schwarz kohlenmonoxid ofenbauer morgen heute abend nacht gestern warm kalt trocken feucht nein danke tschüss hallo moin servus grüezi vergiss wohne sprichst keine ahnung gewicht gewichte metrisch teilen befehle menü datenschutz hilffe dankee ofen ofn wecker klappe pieptöne warner restkohle kohle asche haus standort hausmittel offene liegt themen erledikt perfekt klar wone wohn löschen anzeigen umrechnen verlauf wetter weihnachten freitag samstag sonntag montag dienstag mittwoch donnerstag`;

const LETTERS: readonly (readonly [string, Exclude<Language, "ru" | "other" | "en">, number])[] = [
  ["ß", "de", 2], ["ü", "de", 0.7], ["å", "sv", 1], ["ñ", "es", 2], ["¿", "es", 3], ["¡", "es", 2], ["ł", "pl", 2], ["ż", "pl", 2], ["ę", "pl", 2],
  ["ą", "pl", 2], ["ś", "pl", 2], ["ç", "fr", 1], ["ê", "fr", 1.5], ["œ", "fr", 2], ["ù", "fr", 1], ["ì", "it", 1], ["ò", "it", 1],
];

/** Small words that dialects alone have, between Vienna and Zürich; each makes shared ones beside it ("i", "a", "in", "is", "no", "do") dialect too. */
const DIALECT = new Set(`ned nimma nimmer nöd nid wos wia wann konn derf derfst hom isch sind chan chani muas muass mues oda scho dös dees ois oiwei allweil wieda summa eam eana oan oans zwoa koa koan kloans mecht mechat
 sui zoag zoags sog bscheid ghert gmocht eihoazn eihoaz hoiz ofn rauchfang glasl scheitl feierl heid lossn auflegn nochlegn pfiat servus grüezi grüss griaß miachtlt kriagt mogst mei putzn wänn schiit s'holz d'scheib d'asch g'kehrt fia gehtn joahr ausn herinnen gnua`.split(/\s+/));
const SHARED_WITH_DIALECT = new Set("i a in is no do da so on man an at it me".split(" "));
/** Word parts that only German joins, at the beginning or the end of a longer word, and letters that English words do not hold. */
const JOINED = /^(?:schornstein|kamin(?!o)|rauch|feuer|asche|ofen|holz|brenn|anzünd|trocken|kälte|wärm|speicher|backtemp|schamot|kohlen|schieber|stapel|gruppen|winterr|wart|klima|sicherheit)\p{L}{3,}$|\p{L}{3,}(?:holz|ofen|schieber|stein|liste|schutz|heizung|preis|reifen|tagebuch|fenster|buch|anzeigen|putzen|löschen|gebrochen|temperatur|reste|schachtel)$|\p{L}{4,}(?:isches|ische)$|sch[lmnwrt]\p{L}|tsch[aeiouüöä]/u;
const INFLECTED = /\p{L}{4,}(?:(?<!sams|str|fl|overh)ung|ungen|keit|lich|liche|lichen|ieren)$|^ge\p{L}{4,}(?:cht|kt|bt)$/u;

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
  const dialect = words.filter((each) => DIALECT.has(each)).length;
  if (dialect > 0) add("de", 0.5 + dialect);
  for (const each of words) {
    if (dialect > 0 && SHARED_WITH_DIALECT.has(each)) continue;
    const members = MEMBERS.get(each);
    if (members !== undefined) for (const language of members) add(language, 1 / members.length);
    if (!TRADE.has(each) && GERMAN_WORDS.has(keyOf(each)) && members === undefined) trades += each.length >= 7 && !BORROWED.has(keyOf(each)) ? ENOUGH : 0.8;
    if (members === undefined && each.length >= 6 && !BORROWED.has(keyOf(each))) {
      if (INFLECTED.test(each)) add("de", ENOUGH);
      else if (!TRADE.has(each) && !GERMAN_WORDS.has(keyOf(each)) && JOINED.test(each)) trades += ENOUGH;
    }
    if (members === undefined && each.length >= 4 && each !== "null" && numberWord(keyOf(each)) !== null) add("de", 1);
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
