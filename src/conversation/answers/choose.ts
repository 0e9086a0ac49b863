/**
 * How well each answer of a question fits a reply. What counts is what is affirmed: a phrase listed for the answer most, then words of its
 * label by how rare they are in their language and among the answers, figures that lie within the label's own, and last what means about the same.
 * A denied word speaks against its answer.
 */
import type { Sign } from "../../knowledge/schemas.ts";
import type { Dimension, UnitId } from "../../quantities.ts";
import { inUnit, readFigures, type Figure } from "../reading/figures.ts";
import type { Spoken } from "../spoken.ts";
import { clausesOf, isNegator, SLIGHT, type Claim, type Clause } from "./claims.ts";
import { commonGround } from "./common-ground.ts";
import { nearness, rootOf, sensesOf, tells } from "./nearness.ts";

type Answers = NonNullable<Sign["answers"]>;
export type Fits = readonly { readonly id: string; readonly fit: number }[];

interface Label {
  readonly id: string;
  /** stem to how much it tells and whether the label denies it; what stands in several labels tells less */
  readonly words: ReadonlyMap<string, { readonly weight: number; readonly denied: boolean; readonly word: string }>;
  /** every word of the label, for replies that are made of nothing else */
  readonly all: ReadonlySet<string>;
  /** stems of each part of the label: "Flat, hard, shiny or frayed" has four */
  readonly parts: readonly (readonly string[])[];
  readonly phrases: readonly Phrase[];
  readonly figures: readonly Figure[];
  readonly senses: ReadonlySet<number>;
  /** telling words of label and phrases, for what means about the same */
  readonly kin: readonly string[];
}
interface Phrase {
  readonly stems: readonly string[];
  readonly denies: boolean;
  readonly weight: number;
}

const PHRASE = 1.1;
const SAYS = 0.6;
const BY_ID = 0.3;
/** what stands in the question tells its answers less apart */
const IN_QUESTION = 0.5;
/** a whole part of a label was said */
const WHOLE_PART = 0.35;
/** a word that one answer lists in a phrase is less another's */
const TAKEN = 0.3;
const FIGURE = 1.1;
const SENSE = 0.4;
const NEAR = 0.5;
/** word vectors put opposites side by side, so only near twins count, and only where nothing else was found */
const NEAR_FROM = 0.55;
const KIN = 0.45;
/** never enough to decide */
const NEAR_MOST = 0.45;
/** a word that tells no more than this only says where or when */
const PLACES = 0.1;
const AGAINST = 0.8;
const BEFORE_A_TURN = 0.6;
const AFTER_A_TURN = 1.3;
const ALL_OF_IT = 1.2;
/** by how much more it counts when a clause says little else */
const COVERS = 0.5;

/** measured by figures, not matched as words */
const UNIT_WORDS: ReadonlySet<string> = new Set("minute minutes hour hours cm mm centimetre centimetres millimetre millimetres inch inches kg kilo kilos degrees percent minuten stunde stunden grad prozent".split(" "));
/** Where a label names these as a figure, it is one of many words, not a range. */
const content = (claims: readonly Claim[]): Claim[] => claims.filter(({ word }) => !SLIGHT.has(word) && !isNegator(word));

const prepared: Readonly<Record<Spoken, WeakMap<Answers, readonly Label[]>>> = { en: new WeakMap(), de: new WeakMap() };
function labelsOf(answers: Answers, ask: string, language: Spoken): readonly Label[] {
  const known = prepared[language].get(answers);
  if (known) return known;
  const raw = answers.map((answer) => {
    const own = clausesOf(answer.label).flatMap(({ claims }) => claims);
    const says = clausesOf(answer.says ?? "").flatMap(({ claims }) => claims);
    return { answer, own, says };
  });
  const asked = new Set(content(clausesOf(ask).flatMap(({ claims }) => claims)).map(({ word }) => rootOf(word, language)));
  const spread = (stem: string): number => raw.filter(({ own }) => own.some((claim) => rootOf(claim.word, language) === stem)).length;
  const made = raw.map(({ answer, own, says }): Label => {
    const words = new Map<string, { weight: number; denied: boolean; word: string }>();
    const put = (claims: readonly Claim[], by: number): void => {
      for (const { word, denied } of content(claims)) {
        if (/^\d/.test(word) || UNIT_WORDS.has(word)) continue;
        const stem = rootOf(word, language);
        const weight = (by * (asked.has(stem) ? IN_QUESTION : 1) * tells(word, language)) / Math.max(1, spread(stem)) ** 1.5;
        if ((words.get(stem)?.weight ?? 0) < weight) words.set(stem, { weight, denied, word });
      }
    };
    put(own, 1);
    put(says, SAYS);
    if (answer.label !== "") put(clausesOf(answer.id.replaceAll("-", " ")).flatMap(({ claims }) => claims), BY_ID);
    const phrases = (answer.words ?? []).map((phrase): Phrase => {
      const all = clausesOf(phrase).flatMap(({ claims }) => claims);
      const kept = all.filter(({ word }) => !SLIGHT.has(word));
      // of "since we have it" every word is needed, since none tells much
      const used = kept.some(({ word }) => isNegator(word) || tells(word, language) > PLACES) ? kept : all;
      const telling = used.filter(({ word }) => !isNegator(word)).reduce((sum, { word }) => sum + tells(word, language), 0);
      return { stems: used.map(({ word }) => rootOf(word, language)), denies: used.some(({ word, denied }) => denied || isNegator(word)), weight: Math.min(2.2, Math.max(used.length > 1 ? 0.8 : 0.5, PHRASE * telling)) };
    });
    return {
      id: answer.id, words, phrases: phrases.filter(({ stems }) => stems.length > 0),
      all: new Set(answer.label === "" ? [] : [...own.map(({ word }) => rootOf(word, language)), ...answer.id.split("-").map((word) => rootOf(word, language))]),
      parts: answer.label === "" ? [] : answer.label.split(/[,;]| - | or | oder /).map((part) => content(clausesOf(part).flatMap(({ claims }) => claims)).filter(({ denied }) => !denied).map(({ word }) => rootOf(word, language))).filter((part) => part.length > 0),
      figures: answer.value === undefined ? readFigures(answer.label).filter(({ dimension }) => dimension !== null) : [],
      kin: [...new Set([...own, ...(answer.words ?? []).flatMap((phrase) => clausesOf(phrase).flatMap(({ claims }) => claims))].filter(({ word, denied }) => !denied && !SLIGHT.has(word) && tells(word, language) >= KIN).map(({ word }) => word))],
      senses: new Set(sensesOf([...own, ...says].filter(({ denied }) => !denied).map(({ word }) => word), language)),
    };
  });
  prepared[language].set(answers, made);
  return made;
}

export function fitsOf(sign: Pick<Sign, "answers" | "ask" | "first">, text: string, clauses: readonly Clause[] = clausesOf(text), figures: readonly Figure[] = readFigures(text), language: Spoken = "en"): Fits {
  const { answers = [], ask = "", first } = sign;
  const labels = labelsOf(answers, first ? "" : ask, language);
  const turned = clauses.some(({ turns }) => turns);
  const fits = labels.map(() => 0);
  const add = (i: number, by: number): void => { fits[i] = (fits[i] ?? 0) + by; };
  for (const clause of clauses) {
    const by = !turned ? 1 : clause.turns || clauses.indexOf(clause) > clauses.findIndex(({ turns }) => turns) ? AFTER_A_TURN : BEFORE_A_TURN;
    for (const [i, fit] of clauseFits(labels, clause, language).entries()) add(i, by * fit);
    if (language === "en") for (const [i, fit] of commonGround(sign, clause.text).entries()) add(i, by * fit);
  }
  for (const [i, label] of labels.entries()) add(i, Math.min(FIGURE, FIGURE * figureFit(label.figures, figures)));
  const said = clauses.flatMap(({ claims }) => claims).map(({ word }) => rootOf(word, language)).filter((word) => !SLIGHT.has(word));
  if (said.length > 0 && said.length <= 4) {
    const whole = labels.filter(({ all }) => said.every((word) => all.has(word)));
    if (whole.length === 1) add(labels.indexOf(whole[0] as Label), ALL_OF_IT);
  }
  if (fits.every((fit) => fit < 0.3)) for (const [i, near] of nearFits(labels, clauses, language).entries()) add(i, near);
  return labels.map(({ id }, i) => ({ id, fit: fits[i] ?? 0 }));
}

function clauseFits(labels: readonly Label[], { claims }: Clause, language: Spoken): number[] {
  const said = claims.map((claim) => ({ ...claim, root: rootOf(claim.word, language) }));
  const telling = content(claims).map((claim) => ({ ...claim, root: rootOf(claim.word, language) }));
  const bare = said.filter(({ word }) => !SLIGHT.has(word));
  const roots = new Set(telling.filter(({ denied }) => !denied).map(({ root }) => root));
  const senses = sensesOf(telling.filter(({ denied }) => !denied).map(({ word }) => word), language);
  const phrased = labels.map((label) => phrasesIn(label, said, bare));
  return labels.map((label, i) => {
    const { fit: own, used } = phrased[i] ?? { fit: 0, used: new Map<string, number>() };
    let fit = own;
    let matched = 0;
    const once = new Set<string>();
    for (const { root, denied } of telling) {
      const word = label.words.get(root);
      if (!word || once.has(root)) continue;
      once.add(root);
      matched++;
      if (used.has(root)) {
        fit += Math.max(0, word.weight - (used.get(root) ?? 0));
        continue;
      }
      const taken = phrased.some((other, o) => o !== i && other.used.has(root)) ? TAKEN : 1;
      fit += taken * (word.denied === denied ? word.weight : -AGAINST * word.weight);
    }
    if (roots.size > 0 && label.parts.some((part) => part.every((stem) => roots.has(stem)) && labels.every((other) => other === label || !part.every((stem) => other.all.has(stem))))) fit += WHOLE_PART;
    if (used.size === 0 && matched === 0) {
      for (const sense of senses) if (label.senses.has(sense)) fit += SENSE / labels.filter((other) => other.senses.has(sense)).length ** 2;
    }
    return fit > 0 && telling.length > 0 ? fit * (1 + COVERS * Math.min(1, (matched + used.size) / telling.length)) : fit;
  });
}

/** Phrases of a label in a clause, and each of their words with its part of the weight. */
function phrasesIn(label: Label, said: readonly Said[], bare: readonly Said[]): { fit: number; used: Map<string, number> } {
  const used = new Map<string, number>();
  let fit = 0;
  for (const phrase of [...label.phrases].sort((a, b) => b.stems.length - a.stems.length)) {
    const found = phraseIn(phrase.stems, bare) ?? phraseIn(phrase.stems, said);
    if (!found || phrase.stems.every((stem) => used.has(stem))) continue;
    const denied = !phrase.denies && found.some((one) => one.denied);
    for (const stem of phrase.stems) used.set(stem, phrase.weight / phrase.stems.length);
    fit += denied ? -AGAINST * phrase.weight : phrase.weight;
  }
  return { fit, used };
}
type Said = Claim & { readonly root: string };

/** The words of a phrase in order, one other word let in between. */
export function phraseIn<T extends { readonly root: string }>(stems: readonly string[], words: readonly T[]): T[] | null {
  for (let from = 0; from + stems.length <= words.length; from++) {
    const found: T[] = [];
    let at = from;
    for (const stem of stems) {
      const here = words[at]?.root === stem ? at : found.length > 0 && words[at + 1]?.root === stem ? at + 1 : -1;
      if (here < 0) break;
      found.push(words[here] as T);
      at = here + 1;
    }
    // "since new" is not said by "since new wood"
    const next = words[at] as { readonly word?: string; readonly root: string } | undefined;
    if (found.length === stems.length && !(stems.at(-1) === "new" && next && !SLIGHT.has(next.word ?? next.root))) return found;
  }
  return null;
}

/** 1 where a figure of the reply lies within one of the label's. */
export function figureFit(label: readonly Figure[], said: readonly Figure[]): number {
  return said.reduce((most, one) => Math.max(most, ...label.map((own) => within(own, one))), 0);
}
/** "6 kg of 13" beside "half a load" and "a full load" */
export function loadFits(answers: Answers, share_pct: number | undefined): number[] {
  const [half, full] = [answers.findIndex(({ label }) => /\bhalf a load\b/i.test(label)), answers.findIndex(({ label }) => /\bfull load\b/i.test(label))];
  if (share_pct === undefined || half < 0 || full < 0) return answers.map(() => 0);
  return answers.map((_, i) => (i === half ? (share_pct <= HALF_A_LOAD_pct ? FIGURE : -FIGURE) : i === full ? (share_pct > HALF_A_LOAD_pct ? FIGURE : -FIGURE) : 0));
}
const HALF_A_LOAD_pct = 65;
function within(own: Figure, said: Figure): number {
  if (own.dimension === null || own.dimension !== said.dimension) return 0;
  const value = inBase(said, said.value);
  const [low, high] = [inBase(own, own.low ?? own.value), inBase(own, own.high ?? own.value)];
  if (own.bound === "min") return value >= low ? 1 : 0;
  if (own.bound === "max") return value <= high ? 1 : 0;
  return own.low === undefined ? (value >= low * 0.75 && value <= high * 1.33 ? 1 : 0) : value >= low && value <= high ? 1 : 0;
}
const BASE: Partial<Record<Dimension, UnitId>> = { length: "mm", duration: "min", temperature: "C", mass: "kg", share: "pct" };
function inBase(figure: Figure, value: number): number {
  const unit = figure.dimension === null ? undefined : BASE[figure.dimension];
  return (unit ? inUnit({ ...figure, value }, unit) : null) ?? value;
}

function nearFits(labels: readonly Label[], clauses: readonly Clause[], language: Spoken): number[] {
  const out = labels.map(() => 0);
  for (const { word, denied } of clauses.flatMap(({ claims }) => content(claims))) {
    if (denied || tells(word, language) < 0.4) continue;
    const near = labels.map(({ kin }) => Math.max(0, ...kin.map((own) => nearness(word, own, language))));
    const most = Math.max(...near);
    if (most < NEAR_FROM || near.filter((one) => one > most - 0.12).length > 1) continue;
    const i = near.indexOf(most);
    out[i] = Math.min(NEAR_MOST, (out[i] ?? 0) + NEAR * tells(word, language) * most);
  }
  return out;
}
