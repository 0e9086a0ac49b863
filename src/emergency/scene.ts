/**
 * Where the senses of a message stand to each other: near enough to belong together, denied or not, told of now or of another time.
 * Every search looks at a bounded number of neighbours, so a message costs time in proportion to its length.
 */

import { type Circumstance, circumstancesOf, TURNS } from "./circumstances.ts";
import type { Sensed } from "./senses.ts";

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
  ("sign signs of more any visible real one is has had have feels feel felt "
    + "the a an been ever really yet and or nor us in our my much other to at all").split(" "),
);
const NOBODY = new Set("nobody none noone neither niemand keiner personne nessuno nadie nikt nikto ingen kukaan".split(" "));
const NO_REACH = 5;
const NOBODY_REACH = 12;

export function sceneOf(sensed: Sensed): Scene {
  const { tokens, senses, asks } = sensed;
  const bySentence: Set<string>[] = asks.map(() => new Set());
  const places = new Map<string, number[]>();
  senses.forEach((own, at) => {
    const sentence = tokens[at]?.sentence ?? 0;
    for (const sense of own) {
      const known = places.get(sense);
      if (known) known.push(at);
      else places.set(sense, [at]);
      bySentence[sentence]?.add(sense);
    }
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

  const circumstances = circumstancesOf(sensed, places, denied);
  const at = (sense: string): readonly number[] => places.get(sense) ?? [];
  return { sensed, length: tokens.length, at, has, inSentence, inMessage: (sense) => places.has(sense), denied, circumstances };
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
