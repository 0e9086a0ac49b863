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
  const figure = figureFor(sign, figures);
  if (figure !== undefined) return figure;
  const yesNo = readYesNo(text);
  // "no, everyone is well and no alarm sounds" names what is not so; its words are no choice
  const none = yesNo === "no" && !EXCEPT.test(text) ? sign.answers?.find(({ id }) => NONE.has(id)) : undefined;
  if (none) return none.id;
  const picked = wordsFor(sign, text);
  if (picked) return picked;
  if (yesNo === "unknown") return null;
  if (sign.kind === "yes-no" && yesNo) return yesNo;
  return undefined;
}

const NONE: ReadonlySet<string> = new Set(["none", "neither", "no", "nothing", "none-of-these", "all-well", "well", "fine"]);
const EXCEPT = /\b(but|though|except|only|unless|however|apart)\b/i;

function figureFor(sign: Sign, figures: readonly Figure[]): number | undefined {
  if (sign.kind === "yes-no" || sign.kind === "choice") return undefined;
  const unit = UNIT_OF[sign.kind];
  const dimension: Dimension | null = unit ? UNITS[unit].dimension : sign.kind in PER ? "duration" : null;
  for (const figure of figures) {
    if (figure.dimension === null) {
      if (sign.kind === "percent" && figure.value > 0 && figure.value < 1) return figure.value * 100;
      if (figures.length === 1) return figure.value;
    } else if (figure.dimension === dimension && dimension) {
      if (unit === "pct") return figure.basis === "dry" ? (100 * figure.value) / (100 + figure.value) : figure.value;
      const value = unit ? inUnit(figure, unit) : (inUnit(figure, "h") ?? 0) / (PER[sign.kind] ?? 1);
      if (value !== null) return value;
    }
  }
  return undefined;
}

/** The answer whose label shares most words with the message, when one clearly does. */
function wordsFor(sign: Sign, text: string): string | undefined {
  const said = new Set(scan(text).flatMap((token) => (token.kind === "word" ? [fold(token.word)] : [])));
  if (said.size === 0 || said.size > 14) return undefined;
  const scored = (sign.answers ?? []).map((answer) => {
    const own = [...new Set(scan([answer.label, answer.id.replaceAll("-", " "), ...(answer.words ?? [])].join(" ")).flatMap((token) => (token.kind === "word" ? [fold(token.word)] : [])))].filter((word) => !SMALL.has(word));
    return { id: answer.id, hits: own.filter((word) => said.has(word)).length };
  });
  const best = [...scored].sort((a, b) => b.hits - a.hits);
  return best[0] && best[0].hits > 0 && best[0].hits > (best[1]?.hits ?? 0) ? best[0].id : undefined;
}
const SMALL = new Set("a an the of in on at to it is was or and no not all one for from with by i my".split(" "));

/** Signs that a first message gives away by itself: only figures with a unit, and phrases listed under an answer's words. */
export function signsIn(trouble: Trouble, text: string, figures: readonly Figure[]): Record<string, string | number | null> {
  const found: Record<string, string | number | null> = {};
  const plain = ` ${scan(text).flatMap((token) => (token.kind === "word" ? [fold(token.word)] : [])).join(" ")} `;
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
      if ((answer.words ?? []).some((words) => plain.includes(` ${scan(words).flatMap((token) => (token.kind === "word" ? [fold(token.word)] : [])).join(" ")} `))) found[id] = answer.id;
    }
  }
  return found;
}
