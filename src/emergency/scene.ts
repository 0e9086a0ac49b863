/**
 * Where the senses of a message stand to each other: near enough to belong together, denied or not, told of now or of another time.
 * Every search looks at a bounded number of neighbours, so a message costs time in proportion to its length.
 */

import type { Sensed } from "./senses.ts";

/** Circumstances of a find, each of which can make it no danger now. */
export type Circumstance =
  | "unreal" | "maybe" | "past" | "yesterday" | "habit" | "asking" | "asks" | "general" | "testing" | "joke"
  /** One chirp a minute and, said as well, that nobody is unwell or that the battery is low. */
  | "flat battery";

export interface Find {
  readonly from: number;
  readonly to: number;
}

export interface Scene {
  readonly sensed: Sensed;
  readonly length: number;
  /** Words that carry the sense, in order. */
  at(sense: string): readonly number[];
  has(at: number, sense: string): boolean;
  inSentence(sentence: number, sense: string): boolean;
  inMessage(sense: string): boolean;
  denied(at: number): boolean;
  circumstances(find: Find): ReadonlySet<Circumstance>;
}

const BETWEEN_NO_AND_NOUN = new Set(
  "sign signs of more any visible real one is has had have feels feel felt the a an been ever really yet and or nor us in our my much other to at all".split(" "),
);
const NOBODY = new Set("nobody none noone neither niemand keiner personne nessuno nadie nikt nikto ingen kukaan".split(" "));
const TURNS = new Set("but however although though except only yet aber men mutta mais pero".split(" "));
/** "Can ash set fire to a deck": a question about the world, unless it speaks of us. */
const OPENS_GENERAL_QUESTION = new Set("can could does do will would may are".split(" "));
const OPENS_QUESTION = new Set("can could does do will would should may are is how what which where who when shall".split(" "));
const OF_OURS = ["i", "many", "now", "recent"];
const NO_REACH = 5;
const NOBODY_REACH = 12;

export function sceneOf(sensed: Sensed): Scene {
  const { tokens, senses, asks } = sensed;
  const bySentence: Set<string>[] = asks.map(() => new Set());
  const firstAt: Map<string, number>[] = asks.map(() => new Map());
  const places = new Map<string, number[]>();
  senses.forEach((own, at) => {
    const sentence = tokens[at]?.sentence ?? 0;
    for (const sense of own) {
      const known = places.get(sense);
      if (known) known.push(at);
      else places.set(sense, [at]);
      bySentence[sentence]?.add(sense);
      if (!firstAt[sentence]?.has(sense)) firstAt[sentence]?.set(sense, at);
    }
  });

  const general = asks.map(() => false);
  const question = [...asks];
  const asksWhich = asks.map(() => false);
  tokens.forEach((token, at) => {
    if (tokens[at - 1]?.sentence !== token.sentence) {
      general[token.sentence] = OPENS_GENERAL_QUESTION.has(token.word);
      asksWhich[token.sentence] = token.word === "which";
      question[token.sentence] ||= OPENS_QUESTION.has(token.word);
    }
    if (OF_OURS.some((sense) => senses[at]?.has(sense))) general[token.sentence] = false;
  });

  const has = (at: number, sense: string): boolean => senses[at]?.has(sense) ?? false;
  const inSentence = (sentence: number, sense: string): boolean => bySentence[sentence]?.has(sense) ?? false;

  const denials: (boolean | undefined)[] = [];
  const denied = (at: number): boolean => {
    denials[at] ??= isDenied(at);
    return denials[at];
  };

  const isDenied = (at: number): boolean => {
    const here = tokens[at];
    if (!here) return false;
    for (let back = at - 1; back >= Math.max(0, at - NOBODY_REACH); back -= 1) {
      const before = tokens[back];
      if (!before || before.sentence !== here.sentence) return false;
      if (NOBODY.has(before.word)) return true;
      if (TURNS.has(before.word)) return false;
      if (at - back > NO_REACH || before.clause !== here.clause) continue;
      if (has(back, "neg")) return true;
      if (!BETWEEN_NO_AND_NOUN.has(before.word) && (senses[back]?.size ?? 0) === 0) return nobodyBefore(back, here.sentence);
    }
    return false;
  };

  const nobodyBefore = (from: number, sentence: number): boolean => {
    for (let back = from; back >= Math.max(0, from - NOBODY_REACH); back -= 1) {
      const before = tokens[back];
      if (!before || before.sentence !== sentence || TURNS.has(before.word)) return false;
      if (NOBODY.has(before.word)) return true;
    }
    return false;
  };

  const wellSaid = (): boolean =>
    ["ill", "unwell", "felled"].some((sense) => (places.get(sense) ?? []).some(denied));

  const circumstances = ({ from, to }: Find): ReadonlySet<Circumstance> => {
    const found = new Set<Circumstance>();
    const first = tokens[from]?.sentence ?? 0;
    const last = tokens[to]?.sentence ?? first;
    for (let sentence = first; sentence <= last; sentence += 1) {
      const nowAt = firstAt[sentence]?.get("now") ?? firstAt[sentence]?.get("recent");
      const now = nowAt !== undefined && (nowAt <= to || tokens[nowAt]?.clause === tokens[to]?.clause);
      const supposed = firstAt[sentence]?.get("hypothetical");
      if (supposed !== undefined && supposed < to && !inSentence(sentence, "now")) found.add("unreal");
      if (inSentence(sentence, "topical") || asksWhich[sentence]) found.add("unreal");
      if (inSentence(sentence, "maybe")) found.add("maybe");
      if (inSentence(sentence, "history") && !now) found.add("past");
      if (inSentence(sentence, "yesterday") && !now) found.add("yesterday");
      if (inSentence(sentence, "habit")) found.add("habit");
      const wish = firstAt[sentence]?.get("asking");
      if (wish !== undefined && wish < to) found.add("asking");
      if (inSentence(sentence, "testing")) found.add("testing");
      if (question[sentence]) found.add("asks");
      if (general[sentence]) found.add("general");
    }
    const toldBefore = first > 0 && inSentence(first - 1, "history") && inSentence(first, "past");
    if (toldBefore && !inSentence(first, "now") && !inSentence(first, "recent")) found.add("past");
    if (places.has("once_a_minute") && (places.has("battery") || wellSaid())) found.add("flat battery");
    if (places.has("joke")) found.add("joke");
    return found;
  };

  return { sensed, length: tokens.length, has, inSentence, at: (sense) => places.get(sense) ?? [], inMessage: (sense) => places.has(sense), denied, circumstances };
}

/** A sense, or several with "|" between. */
export type Wanted = readonly (readonly string[])[];

export function wanted(...senses: readonly string[]): Wanted {
  return senses.map((sense) => sense.split("|"));
}

function isAt(scene: Scene, at: number, choices: readonly string[]): boolean {
  return choices.some((choice) => scene.has(at, choice));
}

function anchors(scene: Scene, choices: readonly string[]): readonly number[] {
  if (choices.length === 1) return scene.at(choices[0] ?? "");
  return [...new Set(choices.flatMap((choice) => scene.at(choice)))].sort((a, b) => a - b);
}

/**
 * Places where all wanted senses stand within `span` words of the first and at most `across` sentence ends apart, none of them denied.
 */
export function* finds(scene: Scene, want: Wanted, span: number, across = 0): Generator<Find> {
  const [anchor, ...others] = want;
  if (!anchor) return;
  for (const choices of want) {
    if (!choices.some((choice) => scene.inMessage(choice))) return;
  }
  const { tokens } = scene.sensed;
  for (const at of anchors(scene, anchor)) {
    if (scene.denied(at)) continue;
    const sentence = tokens[at]?.sentence ?? 0;
    const taken = new Set([at]);
    const complete = others.every((choices) => {
      for (let distance = 1; distance <= span; distance += 1) {
        for (const near of [at - distance, at + distance]) {
          const token = tokens[near];
          if (!token || taken.has(near) || Math.abs(token.sentence - sentence) > across) continue;
          if (isAt(scene, near, choices) && !scene.denied(near)) {
            taken.add(near);
            return true;
          }
        }
      }
      return false;
    });
    if (complete) yield { from: Math.min(...taken), to: Math.max(...taken) };
  }
}
