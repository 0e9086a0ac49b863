/** The labelled messages and the words file, as the training scripts read them. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { parse } from "yaml";
import { guessLanguage } from "../../src/conversation/language.ts";
import { germanPhrase } from "../../src/conversation/routing/german.ts";
import type { Spoken } from "../../src/conversation/spoken.ts";
import { isTopic, type TopicId } from "../../src/conversation/topics.ts";

export interface Message {
  readonly text: string;
  readonly topic: TopicId;
  readonly also: readonly TopicId[];
  readonly style: string;
  /** English when absent */
  readonly language?: Spoken;
}

const HERE = new URL("./", import.meta.url);

const ANOTHER_LANGUAGE = /^([a-z]{2})\.jsonl$/;

/** The English messages; for German those in German, and the English ones behind them, from which both learn. */
export function loadMessages(language: Spoken = "en"): Message[] {
  const all = readdirSync(HERE).filter((name) => name.endsWith(".jsonl")).sort();
  const english = messagesIn(all.filter((name) => !ANOTHER_LANGUAGE.test(name)));
  if (language === "en") return english;
  // German messages are out of scope for the English model alone
  return [...messagesIn([`${language}.jsonl`]).map((message) => ({ ...message, language })), ...english.filter(({ text }) => guessLanguage(text) !== language)];
}

function messagesIn(files: readonly string[]): Message[] {
  return files.flatMap((name) => readFileSync(new URL(name, HERE), "utf8").split("\n").filter(Boolean).map((line, index) => {
    const message = JSON.parse(line) as Message;
    if (!isTopic(message.topic)) throw new Error(`${name} line ${index + 1}: "${message.topic}" is no topic.`);
    return message;
  }));
}

export interface Words {
  /** sense id -> its words and phrases */
  readonly senses: ReadonlyMap<string, readonly string[]>;
  /** slip -> the word meant */
  readonly spellings: ReadonlyMap<string, string>;
}

/** The words file; for German its own words behind the English ones of each sense. */
export function loadWords(language: Spoken = "en"): Words {
  const senses = new Map<string, readonly string[]>();
  const spellings = new Map<string, string>();
  const own = new URL(`../../knowledge/${language}/words.yaml`, import.meta.url);
  for (const url of [new URL("../../knowledge/words.yaml", import.meta.url), ...(language !== "en" && existsSync(own) ? [own] : [])]) {
    const file = parse(readFileSync(url, "utf8")) as Record<string, Record<string, unknown[]>>;
    for (const [section, entries] of Object.entries(file)) {
      for (const [name, words] of Object.entries(entries)) {
        if (section === "spellings") for (const slip of words) spellings.set(String(slip), name);
        else senses.set(name, [...(senses.get(name) ?? []), ...words.map((word) => (url === own ? germanPhrase(String(word)) : String(word)))]);
      }
    }
  }
  return { senses, spellings };
}
