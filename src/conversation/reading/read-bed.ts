/** What a person says of the bed of embers. Of two things said the more dangerous counts; "not black" is never black. */
import type { BED_STATES } from "../../records/schemas.ts";
import { isWord, wordAt, type Token } from "./tokens.ts";

type Bed = (typeof BED_STATES)[number];

const NOUNS = new Set(["bed", "ember", "embers", "coal", "coals", "charcoal"]);
const COLOURS: Readonly<Record<string, Bed>> = {
  black: "black", red: "red", orange: "red", glowing: "red", glow: "red", glows: "red", hot: "red", blue: "blue", flames: "flame",
    flame: "flame", flaming: "flame", burning: "flame",
};
const DANGER: readonly Bed[] = ["black", "unknown", "red", "blue", "flame"];
/** Said without naming the bed. */
const ANYWHERE = ["all black", "it was black", "fully black", "completely black", "black in the dark", "everything black",
  "everything was black"];
const NOT = ["not", "isnt", "wasnt", "no", "almost", "nearly", "mostly", "never", "hardly", "partly", "yet", "until", "till", "unsure",
  "maybe", "probably"];
/** Things that go black without being the bed. */
const OTHER_BLACK = ["glass", "window", "door", "smoke", "soot", "oven", "pane", "tar", "brick", "bricks", "wall", "walls", "chimney",
  "flue", "stone", "stones", "hands", "face", "ceiling", "firebrick", "kettle", "pot", "firebox"];

/** The state of the bed, or undefined when nothing is said of it. */
export function bedSaid(tokens: readonly Token[]): Bed | undefined {
  let worst: Bed | undefined;
  const note = (bed: Bed): void => {
    if (worst === undefined || DANGER.indexOf(bed) > DANGER.indexOf(worst)) worst = bed;
  };
  for (let i = 0; i < tokens.length; i += 1) {
    const word = wordAt(tokens[i]);
    if (NOUNS.has(word)) {
      for (let n = Math.max(0, i - 3); n <= i + 4; n += 1) {
        const bed = n === i ? undefined : COLOURS[wordAt(tokens[n])];
        if (!bed || otherThing(tokens, n)) continue;
        note(judged(tokens, n, bed));
      }
    } else if (word === "black" && phraseAround(tokens, i) && !otherThing(tokens, i)) note(judged(tokens, i, "black"));
    else if (word === "glow" || word === "glowing") note(judged(tokens, i, "red"));
    else if (word === "blue" && isWord(tokens[i + 1], "flame", "flames", "flicker", "flickers")) note(denied(tokens, i) ? "unknown"
      : "blue");
    else if ((word === "flames" || word === "flame") && isWord(tokens[i - 1], "still", "small", "little", "few",
      "some") ) note(isWord(tokens[i - 2], "no", "without") ? "unknown" : "flame");
  }
  return worst;
}

function judged(tokens: readonly Token[], i: number, bed: Bed): Bed {
  const no = denied(tokens, i);
  if (bed === "black") return no ? "unknown" : "black";
  // no glow counts as black only where it was looked for in the dark
  if (bed === "red" && no && isWord(tokens[i - 1], "no", "not", "without", "any")) return tokens.some((token) =>
    isWord(token, "dark", "darkened", "black")) ? "black" : "unknown";
  if (bed === "flame" || bed === "blue") return no ? "unknown" : bed;
  return bed;
}

function denied(tokens: readonly Token[], i: number): boolean {
  for (let n = Math.max(0, i - 4); n <= i + 1; n += 1) if (n !== i && isWord(tokens[n], ...NOT)
    && !tokens.slice(n, i).some((token) => token.kind === "sign")) return true;
  return false;
}

function otherThing(tokens: readonly Token[], i: number): boolean {
  for (let n = i - 1; n >= Math.max(0, i - 6) && tokens[n]?.kind !== "sign"; n -= 1) {
    if (isWord(tokens[n], ...OTHER_BLACK)) return true;
    if (NOUNS.has(wordAt(tokens[n]))) return false;
  }
  for (let n = i + 1; n <= i + 3 && tokens[n]?.kind === "word"; n += 1) if (isWord(tokens[n], ...OTHER_BLACK)) return true;
  return false;
}

function phraseAround(tokens: readonly Token[], i: number): boolean {
  const said = tokens.slice(Math.max(0, i - 2), i + 4).map(wordAt).join(" ");
  return ANYWHERE.some((phrase) => said.includes(phrase));
}
