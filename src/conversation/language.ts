/**
 * A rough guess at the language of a message, from its script and its commonest small words; only good enough for Gleed to say
 * which language it speaks. Common practice, no source.
 */

export type Language = "en" | "de" | "fi" | "sv" | "fr" | "it" | "es" | "pl" | "ru" | "other";

const READ_CHARACTERS = 400;
/** Less than this (a word shared by two languages and one of its own) is no sign: "CO alarm" and "35 min" are English. */
const ENOUGH = 1.5;

const SMALL_WORDS: Readonly<Record<Exclude<Language, "ru" | "other">, string>> = {
  en: "the a an is are was i you my it its of to and in on that this what when how why do does can not with for we our have has be at from if there any no yes after before will should your me",
  de: "der die das und ist ich nicht ein eine zu wie wann warum mein meine wir es mit auf für kann soll darf dem von bei was sie du bitte hat noch aus wird viel ofen holz guten tag hallo",
  fi: "ja on ei se että kun miten miksi milloin kuinka paljon minun voi saa mutta tai en ole olen tämä onko uuni uunin puita pellin lasi hyvää mitä kuuluu hei kiitos takka jos vielä tänään",
  sv: "och det är att jag inte en ett som på för med när hur varför min mitt kan får av till den har vi om ska mycket idag spjället ved hej mår du tack elda",
  fr: "le la les et est je ne pas un une de du des que quand comment pourquoi mon ma nous il elle avec dans pour sur ça ce au bonjour merci puis-je dois combien très fait vitre bois poêle",
  it: "il lo gli e è non un una di che quando come perché mio mia per con si sono della del posso devo quanto quanta nella legna stufa vetro ciao oggi stai grazie sempre più",
  es: "el los las y es no un una de que cuando cuándo como cómo por qué mi para con se está son del puedo tengo cuánta cuánto leña humo hola gracias al sale estás tal hoy más",
  pl: "na nie jest się że do z jak kiedy dlaczego mój moja czy mogę ile po od dzień dobry drewna piec proszę dziękuję masz dzisiaj moje szyba dym mam",
};

const LETTERS: readonly (readonly [string, Exclude<Language, "ru" | "other" | "en">, number])[] = [
  ["ß", "de", 2], ["ü", "de", 0.7], ["å", "sv", 1], ["ñ", "es", 2], ["¿", "es", 3], ["¡", "es", 2], ["ł", "pl", 2], ["ż", "pl", 2], ["ę", "pl", 2],
  ["ą", "pl", 2], ["ś", "pl", 2], ["ç", "fr", 1], ["ê", "fr", 1.5], ["œ", "fr", 2], ["ù", "fr", 1], ["ì", "it", 1], ["ò", "it", 1],
];

const LANGUAGES = Object.keys(SMALL_WORDS) as (keyof typeof SMALL_WORDS)[];
const MEMBERS = new Map<string, (keyof typeof SMALL_WORDS)[]>();
for (const language of LANGUAGES) {
  for (const word of SMALL_WORDS[language].split(" ")) MEMBERS.set(word, [...(MEMBERS.get(word) ?? []), language]);
}

/** The language a message is most likely in. A message with no sign of another language counts as English; a script Gleed cannot read is `other`. */
export function guessLanguage(text: string): Language {
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
  if (cyrillic > latin && cyrillic >= elsewhere) return "ru";
  if (elsewhere > latin) return "other";

  const scores = new Map<keyof typeof SMALL_WORDS, number>(LANGUAGES.map((language) => [language, 0]));
  const add = (language: keyof typeof SMALL_WORDS, amount: number): void => void scores.set(language, (scores.get(language) ?? 0) + amount);
  for (const each of words) {
    const members = MEMBERS.get(each);
    if (members !== undefined) for (const language of members) add(language, 1 / members.length);
  }
  for (const [letter, language, amount] of LETTERS) if (read.includes(letter)) add(language, amount);
  if (read.includes("ä") || read.includes("ö")) for (const language of ["de", "fi", "sv"] as const) add(language, 0.6);
  const english = scores.get("en") ?? 0;
  let best: keyof typeof SMALL_WORDS = "en";
  let most = Math.max(ENOUGH, english);
  for (const language of LANGUAGES) {
    const score = scores.get(language) ?? 0;
    if (score > most || (score === most && score > english && best === "en")) {
      best = language;
      most = score;
    }
  }
  return best;
}
