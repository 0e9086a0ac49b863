/**
 * What a story gives away by itself about a tree's signs. A word alone is a hint that leaves its question open; a phrase, or several words
 * together, count as an answer.
 */
import type { Sign, Trouble } from "../../knowledge/schemas.ts";
import { UNITS, type Dimension } from "../../quantities.ts";
import type { Graded, SignAnswer } from "../../trouble/walk.ts";
import { readFigures, type Figure } from "../reading/figures.ts";
import type { Spoken } from "../spoken.ts";
import { phraseIn } from "./choose.ts";
import { clausesOf, isNegator, SLIGHT, type Clause } from "./claims.ts";
import { agoIn, figureFor, isFigure, isShareOfLoad, ofSomethingElse, UNIT_OF, type About } from "./figures.ts";
import { rootOf, tells } from "./nearness.ts";

/** what a share of water in wood stands beside; wetter wood than this nobody carries in */
const OF_WOOD = /\b(moist\w*|meter|metre|wet|dry|damp|seasoned|mc|wood|logs?|splits?|birch|beech|oak|ash|spruce|pine|maple|alder|larch|fir|elm|cherry|eucalypt\w*|holz|scheite?|buche|birke|eiche|esche|fichte|kiefer|feucht\w*)\b/i;
const WETTEST_pct = 70;

/** what a clause must speak of for its figure to be the sign's, by the record that would hold it */
const SPEAKS_OF: Readonly<Record<string, RegExp>> = {
  "wood-moisture": /\b(moist\w*|meter|metre|wet|dry|damp|read\w*|basis|wood|logs?|seasoned|mc)\b|%|percent|feucht\w*/i,
  "outside": /\b(out|outside|outdoors|frost|weather|degrees out|minus|below|night|today|tonight)\b|draussen|-\d/i,
  "outside-high": /\b(out|outside|outdoors|weather|today|sunny|minus|below)\b|draussen|-\d/i,
  "rest-before-fire": /\b(rest\w*|first fire|not (lit|used|fired)|unused|off|away|holiday|cold since|no fire|without a fire|last fire|stood)\b|letztes feuer|urlaub/i,
  "months-since-sweep": /\b(sweep|swept|sweeping|chimney cleaned|gekehrt|kehrung)\b|schornsteinfeger|kaminfeger/i,
  "months-since-channels": /\b(channels?|cleanouts?|side (channels|doors)|bottom turns|soot doors?|passages)\b|züge|putzöffnung/i,
  "flame-minutes": /\b(flames?|burn(s|t|ed)?|lasted?|over in|gone)\b|flamme/i,
};

export function signsIn(trouble: Trouble, text: string, figures: readonly Figure[], about: About = {}): Record<string, SignAnswer> {
  const found: Record<string, SignAnswer> = {};
  const { language = "en", glossed = text } = about;
  const clauses = clausesOf(text);
  const measured = glossed === text ? clauses : clausesOf(glossed);
  const used = new Set<Figure>();
  for (const [id, sign] of Object.entries(trouble.signs)) {
    const figure = isFigure(sign) ? figureIn(trouble, sign, glossed, measured, figures, used, about) : undefined;
    if (figure !== undefined) found[id] = figure;
    else if (!isGate(sign)) {
      const told = answersIn(trouble, id, sign, clauses, language);
      if (told !== undefined) found[id] = told;
    }
  }
  return found;
}
/** a question of life and limb is asked whatever the story says; one that lists many things to choose from may be hinted at */
const isGate = (sign: Sign): boolean => sign.first === true && Object.values(sign.stop ?? {}).length > 0 && (sign.answers ?? []).length <= 6;

function figureIn(
  trouble: Trouble, sign: Sign, text: string, clauses: readonly Clause[], figures: readonly Figure[], used: Set<Figure>, about: About,
): number | undefined {
  const speaks = sign.record ? SPEAKS_OF[sign.record] : undefined;
  const share = isShareOfLoad(sign);
  if (sign.record === "wood-moisture") {
    const shares = figures.filter((figure) => figure.dimension === "share" && !used.has(figure) && (figure.high ?? figure.value) <= WETTEST_pct && !ofSomethingElse(text, figure));
    const one = shares.find(({ basis }) => basis) ?? shares.find(({ at }) => clauses.some((clause) => OF_WOOD.test(clause.text) && clause.text.includes(text.slice(...at)))) ?? (OF_WOOD.test(text) ? shares[0] : undefined);
    if (!one) return undefined;
    used.add(one);
    return one.basis === "dry" ? (100 * one.value) / (100 + one.value) : one.value;
  }
  if (speaks) {
    for (const clause of clauses) {
      if (!speaks.test(clause.text)) continue;
      const value = (sign.kind === "months" || sign.kind === "years" ? agoIn(sign, clause.text, about.now_ms) : undefined) ?? withUnit(sign, clause.text, about);
      if (value !== undefined) return value;
    }
    return undefined;
  }
  if (share) {
    const load = clauses.find(({ text: words }) => /\b(kg|kilos?|kilograms?|lbs?|pounds?)\b/i.test(words));
    return load ? figureFor(sign, load.text, readFigures(load.text), about) : undefined;
  }
  const own = UNIT_OF[sign.kind];
  if (own === undefined || own === "pct" || !sign.ask || sign.record) return undefined;
  const dimension: Dimension = UNITS[own].dimension;
  const alone = Object.values(trouble.signs).filter((other) => sameDimension(other, dimension)).length === 1;
  if (!alone) return undefined;
  const free = figures.filter((one) => one.dimension === dimension && !used.has(one));
  const value = free.length > 0 ? figureFor(sign, text, free, about) : undefined;
  if (value !== undefined) for (const figure of free) used.add(figure);
  return value;
}
const sameDimension = (other: Sign, dimension: Dimension): boolean => {
  const unit = UNIT_OF[other.kind];
  return unit !== undefined && UNITS[unit].dimension === dimension && other.ask !== undefined;
};
/** a figure of the sign's own dimension, never a bare one */
const withUnit = (sign: Sign, text: string, about: About): number | undefined => {
  const figures = readFigures(text).filter(({ dimension }) => dimension !== null);
  return figures.length > 0 ? figureFor(sign, text, figures, about) : undefined;
};

/** A phrase of at least two words, or so many hints together, counts as said; a story is about more than one thing, though, so never wholly. */
const SAID = 1;
const AHEAD = 0.4;
const BELIEVED = 0.8;
const HINT = 0.5;
/** a single word is a hint only when it is as rare as this */
const RARE = 0.7;

interface Phrase {
  readonly sign: string;
  readonly answer: string;
  readonly stems: readonly string[];
  readonly denies: boolean;
  readonly weight: number;
}
const listed: Readonly<Record<Spoken, WeakMap<Trouble, readonly Phrase[]>>> = { en: new WeakMap(), de: new WeakMap() };

/** Phrases of a tree that can be heard in a story: such as one sign alone lists, and none of a single everyday word. */
function phrasesOf(trouble: Trouble, language: Spoken): readonly Phrase[] {
  const known = listed[language].get(trouble);
  if (known) return known;
  const all = Object.entries(trouble.signs).flatMap(([sign, { answers = [] }]) =>
    answers.flatMap(({ id, words = [] }) => words.map((phrase): Phrase => {
      const used = clausesOf(phrase).flatMap(({ claims }) => claims).filter(({ word }) => !SLIGHT.has(word));
      const telling = used.filter(({ word }) => !isNegator(word)).map(({ word }) => tells(word, language));
      const sum = telling.reduce((a, b) => a + b, 0);
      const weight = used.length > 1 ? (sum >= 0.6 ? Math.min(1.6, 0.5 + sum / 2) : 0) : (telling[0] ?? 0) >= RARE ? 0.5 : 0;
      return { sign, answer: id, stems: used.map(({ word }) => rootOf(word, language)), denies: used.some(({ word, denied }) => denied || isNegator(word)), weight };
    })));
  const signsOf = new Map<string, Set<string>>();
  for (const { sign, stems } of all) signsOf.set(stems.join(" "), (signsOf.get(stems.join(" ")) ?? new Set()).add(sign));
  // "squirrel" and "squirrels" are one phrase
  const once = [...new Map(all.map((phrase) => [`${phrase.sign} ${phrase.answer} ${phrase.stems.join(" ")}`, phrase])).values()];
  const made = once.filter(({ stems, weight }) => weight > 0 && (signsOf.get(stems.join(" "))?.size ?? 0) === 1);
  listed[language].set(trouble, made);
  return made;
}

/** Only phrases listed for an answer count in a story: words of a label are everywhere. */
function answersIn(trouble: Trouble, id: string, sign: Sign, clauses: readonly Clause[], language: Spoken): SignAnswer | undefined {
  const all = sign.kind === "yes-no" ? ["yes", "no"] : (sign.answers ?? []).map((answer) => answer.id);
  const phrases = phrasesOf(trouble, language).filter((phrase) => phrase.sign === id);
  const score = new Map<string, number>();
  for (const { claims } of clauses) {
    const said = claims.filter(({ word }) => !SLIGHT.has(word)).map((claim) => ({ ...claim, root: rootOf(claim.word, language) }));
    const heard = phrases.flatMap((phrase) => {
      const found = phraseIn(phrase.stems, said);
      return found ? [{ phrase, denied: !phrase.denies && found.some(({ denied }) => denied) }] : [];
    });
    // "smoke at lighting" holds "smoke": the longer phrase speaks
    const longest = heard.filter(({ phrase }) => !heard.some((other) => other.phrase !== phrase && other.phrase.stems.length > phrase.stems.length && phrase.stems.every((stem) => other.phrase.stems.includes(stem))));
    for (const { phrase, denied } of longest) score.set(phrase.answer, (score.get(phrase.answer) ?? 0) + (denied ? -phrase.weight : phrase.weight));
  }
  const sorted = all.map((one) => [one, score.get(one) ?? 0] as const).sort((a, b) => b[1] - a[1]);
  const [first, second] = sorted;
  if (!first || first[1] < 0.45) return undefined;
  const ahead = first[1] - Math.max(0, second?.[1] ?? 0);
  if (first[1] >= SAID && ahead >= AHEAD) return believed(first[0], all, BELIEVED);
  return ahead < 0.15 ? undefined : { ...believed(first[0], all, HINT), open: true };
}
function believed(id: string, all: readonly string[], by: number): Graded {
  return { likely: Object.fromEntries(all.map((one) => [one, (one === id ? by : 0) + (1 - by) / all.length])) };
}
