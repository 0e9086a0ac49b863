/** Folds for cross-validation in which wordings of nearly the same message stay together, so that none is judged by its twin. */
import { normalise } from "../../src/conversation/routing/normalise.ts";
import { stem } from "../../src/conversation/routing/stem.ts";
import { tokenise } from "../../src/conversation/routing/tokens.ts";
import { seeded, shuffled } from "./seeded.ts";

/** Two messages are near twins from this share of common words on (shared / all, stemmed, "the" and the like left out). */
const TWINS_SHARE = 0.65;
const EMPTY_WORDS = new Set("a an the i my is it do we our of to in".split(" "));

const wordsOf = (text: string): Set<string> => {
  const words = tokenise(normalise(text)).flatMap((token) => (token.kind === "mark" ? [] : token.kind === "word" ? [stem(token.text)] : [`#${token.of}`]));
  const telling = words.filter((word) => !EMPTY_WORDS.has(word));
  return new Set(telling.length > 0 ? telling : words);
};

/** The group of each text, as the index of one of its members. */
export function groupsOf(texts: readonly string[]): number[] {
  const parent = texts.map((_, i) => i);
  const root = (i: number): number => {
    let at = i;
    while (parent[at] !== at) at = parent[at] = parent[parent[at] as number] as number;
    return at;
  };
  const sets = texts.map(wordsOf);
  const holders = new Map<string, number[]>();
  sets.forEach((words, i) => {
    const shared = new Map<number, number>();
    for (const word of words) for (const other of holders.get(word) ?? []) shared.set(other, (shared.get(other) ?? 0) + 1);
    for (const [other, common] of shared) {
      if (common / (words.size + (sets[other] as Set<string>).size - common) >= TWINS_SHARE) parent[root(i)] = root(other);
    }
    for (const word of words) {
      const known = holders.get(word);
      if (known === undefined) holders.set(word, [i]);
      else known.push(i);
    }
  });
  return parent.map((_, i) => root(i));
}

/** The fold of each text: whole groups, shuffled by the seed, each to the fold that is smallest so far. */
export function foldsOf(texts: readonly string[], folds: number, seed: number): number[] {
  const groups = groupsOf(texts);
  const sizes = new Map<number, number>();
  for (const group of groups) sizes.set(group, (sizes.get(group) ?? 0) + 1);
  const filled = new Array<number>(folds).fill(0);
  const foldOf = new Map<number, number>();
  for (const group of shuffled([...sizes.keys()], seeded(seed))) {
    const fold = filled.indexOf(Math.min(...filled));
    foldOf.set(group, fold);
    filled[fold] = (filled[fold] as number) + (sizes.get(group) as number);
  }
  return groups.map((group) => foldOf.get(group) as number);
}
