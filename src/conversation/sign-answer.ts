/** What a message answers to the signs of a tree: the one that was asked, and others it happens to mention. */
import type { Sign } from "../knowledge/schemas.ts";
import type { Graded, SignAnswer } from "../trouble/walk.ts";
import { fitsOf, type Fits } from "./answers/choose.ts";
import { clausesOf, denies } from "./answers/claims.ts";
import { figureFor, isFigure, type About } from "./answers/figures.ts";
import { gateAnswer } from "./answers/gate.ts";
import { yesOrNo } from "./answers/polar.ts";
import type { Figure } from "./reading/figures.ts";
import { readYesNo } from "./reading/yes-no.ts";
import type { Spoken } from "./spoken.ts";

/** An answer fits clearly from here on, and by so much more than the next. */
const CLEAR = 0.55;
const AHEAD = 0.3;
const AHEAD_SHARE = 0.25;
/** From this difference on between best and worst, a reply says something, though not which. */
const HINTS = 0.3;
const SHARPNESS = 2.4;

/**
 * An answer to the sign that was asked, or undefined when the message holds none. `null` is "I don't know"; graded where the words fit
 * several answers, or one only faintly.
 */
export function answerTo(sign: Sign, text: string, figures: readonly Figure[], about: About = {}): SignAnswer | undefined {
  const { language = "en", glossed = text } = about;
  if (sign.first && Object.values(sign.stop ?? {}).some(({ emergency }) => emergency)) {
    const gate = gateAnswer(sign, text, language);
    if (gate !== undefined) return gate;
    if (readYesNo(text) === "unknown") return null;
    if (isFigure(sign)) return figureFor(sign, glossed, figures, about);
    return undefined;
  }
  const figure = figureFor(sign, glossed, figures, about);
  if (figure !== undefined) return figure;
  if (sign.kind === "yes-no") return yesOrNo(sign, text, language);
  return chosen(sign, text, figures, language);
}

const NOTHING: ReadonlySet<string> = new Set(["none", "neither", "nothing", "no", "none-of-these", "all-well", "well", "fine"]);

function chosen(sign: Sign, text: string, figures: readonly Figure[], language: Spoken): SignAnswer | undefined {
  const answers = sign.answers ?? [];
  if (answers.length === 0) return undefined;
  const clauses = clausesOf(text);
  const yesNo = readYesNo(text);
  const nothing = answers.find((answer) => NOTHING.has(answer.id))?.id;
  if (nothing !== undefined && /^\s*(none|neither|nothing|keins|keine|nichts)( of (these|them|those|that)| davon)?\W*$/i.test(text)) return nothing;
  const saysNo = clauses[0]?.claims[0] !== undefined && /^(no|none|neither|nothing|nope|nah|nein|keins?|nichts)$/.test(clauses[0].claims[0].word);
  const means = (id: string, word: "yes" | "no"): boolean => id === word || new RegExp(`^(${word === "yes" ? "yes|ja" : "no|nein"})\\b`, "i").test(answers.find((answer) => answer.id === id)?.label ?? "");
  const fits = fitsOf(sign, text, clauses, isFigure(sign) ? [] : figures, language).map(({ id, fit }) => ({
    id,
    fit: fit + (id === nothing && saysNo ? 0.7 : 0) + (yesNo === "yes" && means(id, "yes") ? 0.9 : 0) + ((yesNo === "no" || saysNo) && means(id, "no") ? 0.9 : 0),
  }));
  const picked = clear(fits);
  if (picked) return picked;
  const best = Math.max(...fits.map(({ fit }) => fit));
  if (best < CLEAR && nothing !== undefined && (denies(clauses) || yesNo === "no") && best < 0.35) return nothing;
  if (yesNo === "unknown" && best < CLEAR) return null;
  return graded(fits);
}

function clear(fits: Fits): string | undefined {
  const [first, second] = [...fits].sort((a, b) => b.fit - a.fit);
  if (!first || first.fit < CLEAR) return undefined;
  const ahead = first.fit - Math.max(0, second?.fit ?? 0);
  return ahead >= Math.max(AHEAD, AHEAD_SHARE * first.fit) ? first.id : undefined;
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
