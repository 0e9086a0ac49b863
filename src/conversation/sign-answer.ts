/** What a message answers to the signs of a tree: the one that was asked, and others it happens to mention. */
import type { Sign, Trouble } from "../knowledge/schemas.ts";
import { UNITS, type Dimension, type UnitId } from "../quantities.ts";
import { inUnit, type Figure } from "./reading/figures.ts";
import { fold, scan } from "./reading/tokens.ts";
import { readYesNo } from "./reading/yes-no.ts";

const UNIT_OF: Partial<Record<Sign["kind"], UnitId>> = {
  percent: "pct", kilograms: "kg", minutes: "min", hours: "h", days: "day", celsius: "C", millimetres: "mm", centimetres: "cm",
};
const PER: Partial<Record<Sign["kind"], number>> = { months: 24 * 30.44, years: 24 * 365.25 };

/** An answer to the sign that was asked, or undefined when the message holds none. `null` is "I don't know". */
export function answerTo(sign: Sign, text: string, figures: readonly Figure[]): string | number | null | undefined {
  const figure = figureFor(sign, text, figures);
  if (figure !== undefined) return figure;
  const yesNo = readYesNo(text);
  // "none, but we are both sleepy": a gate is not passed on half a no
  if (sign.first && yesNo === "no" && HALF_A_NO.test(text)) return null;
  const nothing = sign.kind === "choice" ? sign.answers?.find((answer) => NOTHING.has(answer.id))?.id : undefined;
  const left = nothing === undefined ? text : undenied(text);
  if (nothing !== undefined && left === "") return nothing;
  const picked = wordsFor(sign, left);
  if (picked) return picked;
  if (yesNo === "unknown") return null;
  if (sign.kind === "yes-no" && yesNo) return yesNo;
  return yesNo === "no" ? nothing : undefined;
}

const NOTHING: ReadonlySet<string> = new Set(["none", "neither", "nothing", "no", "none-of-these", "all-well", "well", "fine"]);
const HALF_A_NO = /\b(but|except|although|though|just|only|unless|however|apart)\b/i;
const DENIES = /^(no|not|none|neither|nor|nobody|nothing|never|without|isn'?t|doesn'?t|didn'?t|don'?t)\b/i;
const ALL_WELL = /^(everyone|everybody|we|all|i)?\s*('?re|'?m|is|are|am|feels?)?\s*(all )?(well|fine|ok|okay|good)( here)?$/i;

/** What is left of a message when the parts that deny something, or say that all are well, are taken out; "" when nothing is left. */
function undenied(text: string): string {
  if (/^\s*(none|neither|nothing) of\b/i.test(text) && !HALF_A_NO.test(text)) return "";
  const parts = text.split(/[,.;!]+|\b(?:and|but)\b/i).map((part) => part.trim()).filter(Boolean);
  if (!parts.some((part) => DENIES.test(part) || ALL_WELL.test(part))) return text;
  return parts.filter((part) => !DENIES.test(part) && !ALL_WELL.test(part)).join(", ");
}

/** Hours in a span that a figure's next word names where the figure itself carries no unit. */
const SPAN_h: readonly (readonly [RegExp, number])[] = [[/^\s*months?\b/i, 24 * 30.44], [/^\s*years?\b/i, 24 * 365.25]];

function figureFor(sign: Sign, text: string, figures: readonly Figure[]): number | undefined {
  if (sign.kind === "yes-no" || sign.kind === "choice") return undefined;
  const unit = UNIT_OF[sign.kind];
  const dimension: Dimension | null = unit ? UNITS[unit].dimension : sign.kind in PER ? "duration" : null;
  for (const figure of figures) {
    if (figure.dimension === null) {
      if (sign.kind === "percent" && figure.value > 0 && figure.value < 1) return figure.value * 100;
      const span_h = dimension === "duration" ? SPAN_h.find(([word]) => word.test(text.slice(figure.at[1])))?.[1] : undefined;
      if (span_h !== undefined) return (figure.value * span_h) / HOURS[sign.kind as keyof typeof HOURS];
      if (figures.length === 1) return figure.value;
    } else if (figure.dimension === dimension && dimension) {
      if (unit === "pct") return figure.basis === "dry" ? (100 * figure.value) / (100 + figure.value) : figure.value;
      const value = unit ? inUnit(figure, unit) : (inUnit(figure, "h") ?? 0) / (PER[sign.kind] ?? 1);
      if (value !== null) return value;
    }
  }
  return undefined;
}
const HOURS = { minutes: 1 / 60, hours: 1, days: 24, months: 24 * 30.44, years: 24 * 365.25 } as const;

/** The answer that the message names most clearly: by a phrase listed for it, which counts double, or by words of its label. */
function wordsFor(sign: Sign, text: string): string | undefined {
  const words = foldedWords(text);
  if (words.length === 0 || words.length > 14) return undefined;
  const said = new Set(words);
  const plain = ` ${words.join(" ")} `;
  const scored = (sign.answers ?? []).map((answer) => {
    const label = [...new Set(foldedWords(`${answer.label} ${answer.id.replaceAll("-", " ")}`))].filter((word) => !SMALL.has(word));
    const phrases = (answer.words ?? []).filter((phrase) => plain.includes(` ${foldedWords(phrase).join(" ")} `));
    return { id: answer.id, hits: label.filter((word) => said.has(word)).length + 2 * phrases.length };
  });
  const best = [...scored].sort((a, b) => b.hits - a.hits);
  return best[0] && best[0].hits > 0 && best[0].hits > (best[1]?.hits ?? 0) ? best[0].id : undefined;
}
const foldedWords = (text: string): string[] => scan(text).flatMap((token) => (token.kind === "word" ? [fold(token.word)] : []));
const SMALL = new Set("a an the of in on at to it is was or and no not all one for from with by i my".split(" "));

/** Signs that a first message gives away by itself: only figures with a unit, and phrases listed under an answer's words. */
export function signsIn(trouble: Trouble, text: string, figures: readonly Figure[]): Record<string, string | number | null> {
  const found: Record<string, string | number | null> = {};
  const plain = ` ${foldedWords(text).join(" ")} `;
  const used = new Set<Figure>();
  for (const [id, sign] of Object.entries(trouble.signs)) {
    if (sign.kind === "percent" && /moist|dry/.test(id)) {
      const share = figures.find((figure) => figure.dimension === "share" && figure.basis !== null && figure.basis !== undefined && !used.has(figure)) ?? figures.find((figure) => figure.dimension === "share" && !used.has(figure));
      if (share) {
        used.add(share);
        found[id] = share.basis === "dry" ? (100 * share.value) / (100 + share.value) : share.value;
      }
    }
    const own = UNIT_OF[sign.kind];
    const alone = own !== undefined && own !== "pct" && Object.values(trouble.signs).filter((other) => UNIT_OF[other.kind] !== undefined && UNITS[UNIT_OF[other.kind] as UnitId].dimension === UNITS[own].dimension && other.ask).length === 1;
    if (alone && sign.ask && own) {
      const figure = figures.find((one) => one.dimension === UNITS[own].dimension && !used.has(one));
      if (figure) {
        used.add(figure);
        found[id] = inUnit(figure, own) ?? figure.value;
      }
    }
    for (const answer of sign.answers ?? []) {
      if ((answer.words ?? []).some((words) => plain.includes(` ${foldedWords(words).join(" ")} `))) found[id] = answer.id;
    }
  }
  return found;
}
