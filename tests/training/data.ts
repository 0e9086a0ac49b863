/** The labelled messages and the words file, as the training scripts read them. */
import { readdirSync, readFileSync } from "node:fs";
import { parse } from "yaml";
import { isTopic, type TopicId } from "../../src/conversation/topics.ts";

export interface Message {
  readonly text: string;
  readonly topic: TopicId;
  readonly also: readonly TopicId[];
  readonly style: string;
}

const HERE = new URL("./", import.meta.url);

export function loadMessages(): Message[] {
  const files = readdirSync(HERE).filter((name) => name.endsWith(".jsonl")).sort();
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

export function loadWords(): Words {
  const file = parse(readFileSync(new URL("../../knowledge/words.yaml", import.meta.url), "utf8")) as Record<string, Record<string, unknown[]>>;
  const senses = new Map<string, readonly string[]>();
  const spellings = new Map<string, string>();
  for (const [section, entries] of Object.entries(file)) {
    for (const [name, words] of Object.entries(entries)) {
      if (section === "spellings") for (const slip of words) spellings.set(String(slip), name);
      else senses.set(name, words.map(String));
    }
  }
  return { senses, spellings };
}
