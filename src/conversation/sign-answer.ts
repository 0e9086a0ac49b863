/** What a message answers to the signs of a tree: the one that was asked, and others it happens to mention. */
import type { Sign } from "../knowledge/schemas.ts";
import type { Graded, SignAnswer } from "../trouble/walk.ts";
import { agreed } from "./answers/both.ts";
import { figureFit, fitsOf, loadFits, type Fits } from "./answers/choose.ts";
import { clausesOf, denies } from "./answers/claims.ts";
import { figureFor, isFigure, shareOfLoad, type About } from "./answers/figures.ts";
import { gateAgreed } from "./answers/gate-both.ts";
import { gateAnswer, plainWords } from "./answers/gate.ts";
import { chancesOf, learntOf } from "./answers/learnt.ts";
import { yesOrNo } from "./answers/polar.ts";
import { readFigures, type Figure } from "./reading/figures.ts";
import { readYesNo } from "./reading/yes-no.ts";

/** An answer fits clearly from here on, and by so much more than the next. */
const CLEAR = 0.55;
const AHEAD = 0.3;
const AHEAD_SHARE = 0.25;
/** From this difference on between best and worst, a reply says something, though not which. */
const HINTS = 0.3;
const SHARPNESS = 2.4;
/** one of the things asked about was plainly said */
const AFFIRMED = 0.9;

/** What the rules read, and the chance that they are right where they say one thing plainly. */
interface Reading {
  readonly answer: SignAnswer | undefined;
  readonly right: number;
}
/** Chances measured on replies by hands that had not seen the rules. */
const YES_OR_NO_RIGHT = 0.85;
const NOTHING_LEFT_RIGHT = 0.5;
const IN_THESE_WORDS = 0.97;
const rightAt = (fit: number): number => 1 - 0.8 * Math.exp(-fit);

/**
 * An answer to the sign that was asked, or undefined when the message holds none. `null` is "I don't know"; graded where the words fit
 * several answers, or one only faintly, or where rules and examples differ.
 */
export function answerTo(sign: Sign, text: string, figures: readonly Figure[], about: About = {}): SignAnswer | undefined {
  const { language = "en", glossed = text } = about;
  if (isGate(sign)) {
    const learnt = language === "en" ? learntOf(sign) : null;
    const rules = gateAnswer(sign, text, language);
    const gate = learnt ? gateAgreed(sign, rules, chancesOf(learnt, clausesOf(text)), plainWords(text)) : rules;
    if (gate !== undefined) return gate;
    if (readYesNo(text) === "unknown") return null;
    if (isFigure(sign)) return figureFor(sign, glossed, figures, about);
    return undefined;
  }
  const figure = figureFor(sign, glossed, figures, about);
  if (figure !== undefined) return figure;
  const { answer, right } = sign.kind === "yes-no" ? { answer: yesOrNo(sign, text, language, about.now_ms), right: YES_OR_NO_RIGHT } : chosen(sign, text, figures, about);
  const learnt = language === "en" ? learntOf(sign) : null;
  if (typeof answer === "string" && measures(sign, answer, figures)) return answer;
  // "8 kg" of a load nobody knows is no share, whatever the examples say
  if (!learnt || (answer === undefined && isFigure(sign) && figures.length > 0)) return answer;
  return agreed(answer, right, chancesOf(learnt, clausesOf(text)));
}

/** A figure that lies within the answer's own needs no second reader. */
const measures = ({ answers = [] }: Sign, id: string, figures: readonly Figure[]): boolean =>
  figures.some(({ dimension }) => dimension !== null) && figureFit(readFigures(answers.find((answer) => answer.id === id)?.label ?? ""), figures) > 0;

const isGate = (sign: Sign): boolean => sign.first === true && Object.values(sign.stop ?? {}).some(({ emergency }) => emergency);

const NOTHING: ReadonlySet<string> = new Set(["none", "neither", "nothing", "no", "none-of-these", "all-well", "well", "fine"]);

function chosen(sign: Sign, text: string, figures: readonly Figure[], about: About): Reading {
  const { language = "en" } = about;
  const answers = sign.answers ?? [];
  if (answers.length === 0) return { answer: undefined, right: 0 };
  const clauses = clausesOf(text);
  const yesNo = readYesNo(text);
  const nothing = answers.find((answer) => NOTHING.has(answer.id))?.id;
  if (nothing !== undefined && /^\s*(none|neither|nothing|keins|keine|nichts)( of (these|them|those|that)| davon)?\W*$/i.test(text)) return { answer: nothing, right: IN_THESE_WORDS };
  const saysNo = clauses[0]?.claims[0] !== undefined && /^(no|none|neither|nothing|nope|nah|nein|keins?|nichts)$/.test(clauses[0].claims[0].word);
  const means = (id: string, word: "yes" | "no"): boolean => id === word || new RegExp(`^(${word === "yes" ? "yes|ja" : "no|nein"})\\b`, "i").test(answers.find((answer) => answer.id === id)?.label ?? "");
  const loads = loadFits(answers, figures.some(({ dimension }) => dimension === "mass") ? shareOfLoad(about.glossed ?? text, figures, about) : undefined);
  const heard = fitsOf(sign, text, clauses, isFigure(sign) ? [] : figures, language);
  // "none of these" is half untrue once one of them is affirmed
  const others = Math.max(...heard.filter(({ id }) => id !== nothing).map(({ fit }) => fit));
  const fits = heard.map(({ id, fit }, i) => ({
    id,
    fit: (id === nothing && others >= AFFIRMED ? 0.5 * fit : fit) + (loads[i] ?? 0) + (id === nothing && saysNo ? 0.7 : 0) + (yesNo === "yes" && means(id, "yes") ? 0.9 : 0) + ((yesNo === "no" || saysNo) && means(id, "no") ? 0.9 : 0),
  }));
  const picked = clear(fits);
  if (picked) return { answer: picked.id, right: rightAt(picked.fit) };
  const best = Math.max(...fits.map(({ fit }) => fit));
  if (best < CLEAR && nothing !== undefined && (denies(clauses) || yesNo === "no") && best < 0.35) return { answer: nothing, right: NOTHING_LEFT_RIGHT };
  if (yesNo === "unknown" && best < CLEAR) return { answer: null, right: 0 };
  return { answer: graded(fits), right: 0 };
}

function clear(fits: Fits): Fits[number] | undefined {
  const [first, second] = [...fits].sort((a, b) => b.fit - a.fit);
  if (!first || first.fit < CLEAR) return undefined;
  const ahead = first.fit - Math.max(0, second?.fit ?? 0);
  return ahead >= Math.max(AHEAD, AHEAD_SHARE * first.fit) ? first : undefined;
}

/** Likelihoods of the answers where no one is clear; undefined where the words tell none from another. */
function graded(fits: Fits): Graded | undefined {
  const all = fits.map(({ fit }) => Math.min(2, Math.max(-1, fit)));
  if (Math.max(...all) - Math.min(...all) < HINTS) return undefined;
  const raised = all.map((fit) => Math.exp(SHARPNESS * fit));
  const sum = raised.reduce((a, b) => a + b, 0);
  return { likely: Object.fromEntries(fits.map(({ id }, i) => [id, Math.round((1000 * (raised[i] ?? 0)) / sum) / 1000])) };
}

export { signsIn } from "./answers/story.ts";
