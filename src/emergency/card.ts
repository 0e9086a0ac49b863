/** From a danger to what the reader must do, in the reader's language and with the numbers of the reader's country. */

import { GERMAN } from "./cards/de.ts";
import { ENGLISH } from "./cards/en.ts";
import { FIRST_LINES } from "./cards/others.ts";
import type { Danger, EmergencyKind } from "./index.ts";
import { emergencyNumbers, numbersKnown, type NumberWords } from "./numbers.ts";

export interface CardTexts {
  readonly headline: string;
  readonly now: readonly string[];
  /** What this emergency adds to another one's card: a line, at most ten words. */
  readonly brief: string;
  readonly never: readonly string[];
  readonly afterwards: readonly string[];
  readonly question: string;
  readonly cautions: readonly string[];
}

export interface Language {
  readonly cards: Readonly<Record<EmergencyKind, CardTexts>>;
  readonly cautions: Readonly<Record<string, string>>;
  readonly words: NumberWords & { readonly call: string; readonly never: string; readonly afterwards: string };
}

export interface EmergencyCard {
  readonly kind: EmergencyKind;
  readonly topic: string;
  readonly headline: string;
  /** What to do this minute, in order; read aloud in under 20 seconds. */
  readonly now: readonly string[];
  readonly never: readonly string[];
  readonly afterwards: readonly string[];
  /** Asked only after what to do, and only when the danger is not sure. */
  readonly question: string | null;
  readonly numbers: string;
  readonly cautions: readonly { id: string; text: string }[];
  /** "Never:" and "Afterwards:" in the card's language */
  readonly never_title: string;
  readonly afterwards_title: string;
  readonly language: string;
}

const FULL: Readonly<Record<string, Language>> = { en: ENGLISH, de: GERMAN };
/** 20 seconds at 150 words a minute. */
const MOST_WORDS_NOW = 50;

/** What another emergency's card leaves out because this one's already says it. */
const COVERED: Readonly<Record<EmergencyKind, readonly EmergencyKind[]>> = {
  "co-alarm": ["room-smoke", "damper-over-embers", "house-fire"],
  "chimney-fire": ["house-fire", "back-puff", "room-smoke"],
  "house-fire": ["room-smoke", "hot-ash", "chimney-fire"],
  "room-smoke": ["house-fire"],
  "damper-over-embers": ["co-alarm"],
  "back-puff": ["burn", "room-smoke", "house-fire"],
  "hot-ash": ["house-fire"],
  burn: [],
};

export function emergencyCard(
  danger: Danger,
  reader: { country?: string | null; fallback_country?: string | null; language?: string },
): EmergencyCard {
  const language = (reader.language ?? "en").toLowerCase().split("-")[0] ?? "en";
  const full = FULL[language] ?? ENGLISH;
  const firstLine = FIRST_LINES[language]?.[danger.kind];
  const texts = full.cards[danger.kind];
  const others = danger.also.filter((kind) => !COVERED[danger.kind].includes(kind)).map((kind) => full.cards[kind]);
  const now = [...texts.now];
  const later: string[] = [];
  for (const { brief } of others) {
    if (wordsIn([...now, brief]) <= MOST_WORDS_NOW) now.push(brief);
    else later.push(brief);
  }
  const cautions = new Set([texts, ...danger.also.map((kind) => full.cards[kind])].flatMap((each) => each.cautions));
  const country = numbersKnown(reader.country) ? reader.country : reader.fallback_country;
  return {
    kind: danger.kind,
    topic: danger.topic,
    headline: firstLine ? `${firstLine} ${texts.headline}` : texts.headline,
    now,
    never: texts.never,
    never_title: full.words.never,
    afterwards_title: full.words.afterwards,
    afterwards: [...later, ...texts.afterwards],
    question: danger.certainty === "possible" ? texts.question : null,
    numbers: `${full.words.call} ${emergencyNumbers(country, full.words)}.`,
    cautions: [...cautions].map((id) => ({ id, text: full.cautions[id] ?? id })),
    language: firstLine || FULL[language] ? language : "en",
  };
}

function wordsIn(lines: readonly string[]): number {
  return lines.join(" ").split(" ").length;
}

/** The whole card as text; its first lines are what to do this minute. */
export function emergencyText(card: EmergencyCard): string {
  const words = (FULL[card.language] ?? ENGLISH).words;
  const blocks = [
    card.headline,
    card.now.map((step, at) => `${at + 1}. ${step}`).join("\n"),
    card.numbers,
    `${words.never}\n${card.never.map((line) => `- ${line}`).join("\n")}`,
    card.question ?? "",
    `${words.afterwards}\n${card.afterwards.map((line) => `- ${line}`).join("\n")}`,
    card.cautions.map(({ text }) => text).join("\n"),
  ];
  return blocks.filter((block) => block !== "").join("\n\n");
}
