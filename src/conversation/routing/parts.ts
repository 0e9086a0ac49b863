import { READ_CHARACTERS } from "./normalise.ts";

const MOST_PARTS = 4;
const LEAST_CHARACTERS = 12;
const JOINTS = [" and also ", " also ", " and how ", " and what ", " and when ", " and why ", " and can ", " and is ", " and where ", " and should ", ", how ", ", can ", " btw ", " plus ",
  " und wie ", " und was ", " und wann ", " und warum ", " und kann ", " und darf ", " und soll ", " und ist ", " ausserdem ", " außerdem ", ", wie ", ", kann ", ", darf "];

/** Cuts a message where one question may end and another begin; nothing for a message of one part. */
export function parts(text: string): string[] {
  const read = text.slice(0, READ_CHARACTERS);
  const cuts: number[] = [];
  for (let i = 0; i < read.length - 1; i++) {
    const mark = read.charCodeAt(i);
    const ends = mark === 0x3f || mark === 0x21 || mark === 0x3b || mark === 0x0a || (mark === 0x2e && read.charCodeAt(i + 1) === 0x20);
    if (ends) cuts.push(i + 1);
  }
  const lower = read.toLowerCase();
  for (const joint of JOINTS) {
    const at = lower.indexOf(joint);
    if (at > 0) cuts.push(at);
  }
  cuts.sort((a, b) => a - b);
  const found: string[] = [];
  let from = 0;
  for (const cut of [...cuts, read.length]) {
    const part = read.slice(from, cut).trim();
    if (part.length < LEAST_CHARACTERS && cut !== read.length) continue;
    if (part.length >= LEAST_CHARACTERS) found.push(part);
    from = cut;
    if (found.length === MOST_PARTS) break;
  }
  return found.length > 1 ? found : [];
}
