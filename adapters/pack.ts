/** Cutting what is too long for one message, at places a reader would choose. */
import { letters } from "./plain.ts";

export interface Part {
  /** what it takes of each limited thing (characters, components, bytes) */
  readonly size: readonly number[];
  /** makes no sense as the last thing of a message: a heading, a question above its choices */
  readonly keep?: boolean;
  /** a message of its own */
  readonly alone?: boolean;
}

/** Fills messages in order. Every part must fit by itself. */
export function pack<P extends Part>(parts: readonly P[], limits: readonly number[]): P[][] {
  const fits = (page: readonly P[], part: P): boolean =>
    limits.every((limit, at) => page.reduce((sum, one) => sum + (one.size[at] ?? 0), part.size[at] ?? 0) <= limit);
  const pages: P[][] = [];
  let page: P[] = [];
  const turn = (next: P[] = []): void => {
    if (page.length > 0) pages.push(page);
    page = next;
  };
  for (const part of parts) {
    if (part.alone || page.at(-1)?.alone) turn();
    if (!fits(page, part)) {
      const carried: P[] = [];
      while (page.length > 1 && page.at(-1)?.keep) carried.unshift(page.pop() as P);
      turn(carried);
      if (!fits(page, part)) turn();
    }
    page.push(part);
  }
  turn();
  return pages;
}

/** Groups neighbours so that each group's sizes, taken together, stay within `most`. */
export function chunks<T>(items: readonly T[], size: (item: T) => number, most: number): T[][] {
  const groups: T[][] = [];
  let room = 0;
  for (const item of items) {
    const taken = size(item);
    const group = groups.at(-1);
    if (group && taken <= room) {
      group.push(item);
      room -= taken;
    } else {
      groups.push([item]);
      room = most - taken;
    }
  }
  return groups;
}

/** Cuts words into pieces of at most `most` UTF-16 units: at a line break, else after a sentence, else at a space, else between letters. */
export function cut(words: string, most: number): string[] {
  const pieces: string[] = [];
  let rest = words;
  while (rest.length > most) {
    const window = rest.slice(0, most + 1);
    const at = lastBreak(window, most) ?? letterBreak(window, most);
    pieces.push(rest.slice(0, at).trimEnd());
    rest = rest.slice(at).trimStart();
  }
  if (rest !== "" || pieces.length === 0) pieces.push(rest);
  return pieces.filter((piece, at) => piece !== "" || at === 0);
}

/** The last good place in the second half of the window. */
function lastBreak(window: string, most: number): number | null {
  const half = Math.floor(most / 2);
  for (const found of [window.lastIndexOf("\n"), lastSentence(window), window.lastIndexOf(" ")]) {
    if (found >= half && found <= most) return found;
  }
  return null;
}

function lastSentence(window: string): number {
  let last = -1;
  for (const match of window.matchAll(/[.!?…。](?=\s)/gu)) last = match.index + 1;
  return last;
}

function letterBreak(window: string, most: number): number {
  let at = 0;
  for (const letter of letters(window)) {
    if (at + letter.length > most) break;
    at += letter.length;
  }
  if (at > 0) return at;
  // one endless letter: never through the middle of a code point
  return most > 1 && (window.codePointAt(most - 1) ?? 0) > 0xffff ? most - 1 : most;
}
