/**
 * A tree as a drawing: questions with their answers on the left, causes with their shares on the right, and a line from each answer to the
 * causes it speaks for, the thicker the stronger. Under an answer stands what is likeliest once it is the only thing known.
 */
import type { Trouble } from "../../knowledge/schemas.ts";
import { answersOf } from "../../trouble/every-path.ts";
import { walk, weightOf } from "../../trouble/walk.ts";
import { escapeHtml } from "../html.ts";
import { wrap } from "../wrap.ts";

export interface TreeWords {
  /** a sentence of the tree by its place below `troubles.<id>` */
  of(place: string): string;
  readonly title: string;
  readonly description: string;
  readonly yes: string;
  readonly no: string;
  readonly emergency: string;
  readonly no_fire: string;
  percent(share: number): string;
}

const WIDTH = 820;
const BOX = 340;
const RIGHT = WIDTH - BOX;
const PAD = 12;
const LINE = 19;
const SMALL_LINE = 16;
const GAP = 14;
const WIDEST_GAP = 90;
const SIZE = 14;
const SMALL = 12;
/** The widest of the usual fonts, against the letters counted in wrap.ts. */
const PLAIN = 1.08;
const BOLD = 1.22;
/** An answer speaks for a cause from this factor on. */
const SPEAKS = 1.9;
/** Colours that stay apart in grey too are few; they repeat after this many causes. */
const COLOURS = 6;

interface Answer {
  readonly sign: string;
  readonly id: string;
  readonly y: number;
  readonly svg: string;
}

export function treeSvg(trouble: Trouble, words: TreeWords): string {
  const causes = Object.entries(trouble.causes).sort(([, a], [, b]) => b.prior - a.prior);
  const sum = causes.reduce((total, [, cause]) => total + cause.prior, 0);
  const left = questions(trouble, words);
  const shares = causes.map(([id, { prior, no_fire }]) => ({ id, share: prior / sum, no_fire }));
  // spread beside the questions, so that fewer lines cross
  const spare = left.height - causeBoxes(words, shares, GAP).height;
  const right = causeBoxes(words, shares, GAP + Math.min(WIDEST_GAP, Math.max(0, Math.floor(spare / Math.max(1, causes.length - 1)))));
  const height = Math.max(left.height, right.height) + 2;
  const lines = left.answers.flatMap((answer) =>
    causes.flatMap(([id, cause], i) => {
      const sign = trouble.signs[answer.sign];
      const weight = sign ? weightOf(cause, answer.sign, sign, answer.id) : 1;
      const to = right.middles.get(id);
      if (weight < SPEAKS || to === undefined) return [];
      const width = Math.min(5, 0.8 + Math.log2(weight));
      return [`<path class="c${i % COLOURS}" d="M${BOX} ${answer.y}C${BOX + 70} ${answer.y} ${RIGHT - 70} ${to} ${RIGHT} ${to}" stroke-width="${width.toFixed(1)}"/>`];
    }));
  const id = `tree-${trouble.id}`;
  return [
    `<svg class="tree" xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" width="${WIDTH}" height="${height}" role="img" aria-labelledby="${id}-t ${id}-d">`,
    `<title id="${id}-t">${escapeHtml(words.title)}</title><desc id="${id}-d">${escapeHtml(words.description)}</desc>`,
    `<g class="lines" fill="none">${lines.join("")}</g>`, left.svg, right.svg, "</svg>",
  ].join("");
}

const textAt = (x: number, y: number, words: string, name: string): string => `<text x="${x}" y="${y}" class="${name}">${escapeHtml(words)}</text>`;

/** Asked first come first: the order in which somebody who knows nothing is asked. */
function order(trouble: Trouble): string[] {
  const asked: string[] = [];
  for (let i = 0; i < 12; i++) {
    const { ask } = walk(trouble, {}, Object.fromEntries(asked.map((sign) => [sign, { answer: null, from: "person" as const }])), asked);
    if (ask === null || asked.includes(ask)) break;
    asked.push(ask);
  }
  return [...asked, ...Object.entries(trouble.signs).filter(([id, sign]) => sign.ask !== undefined && !asked.includes(id)).map(([id]) => id)];
}

function questions(trouble: Trouble, words: TreeWords): { svg: string; height: number; answers: Answer[] } {
  const answers: Answer[] = [];
  const boxes: string[] = [];
  let y = 1;
  for (const sign of order(trouble)) {
    const known = trouble.signs[sign];
    const top = y;
    const inside: string[] = [];
    let at = y + PAD + SIZE - 2;
    for (const line of wrap(words.of(`signs.${sign}.ask`), (BOX - 2 * PAD) / (SIZE * BOLD))) {
      inside.push(textAt(PAD, at, line, "ask"));
      at += LINE;
    }
    at += 4;
    for (const answer of answersOf(trouble, sign)) {
      if (answer === null) continue;
      const label = answer === "yes" && known?.kind === "yes-no" ? words.yes : answer === "no" && known?.kind === "yes-no" ? words.no : words.of(`signs.${sign}.answers.${answer}.label`);
      const from = at;
      for (const line of wrap(label, (BOX - 3 * PAD - 8) / (SIZE * PLAIN))) {
        inside.push(textAt(PAD + 16, at, line, "answer"));
        at += LINE;
      }
      inside.push(`<circle class="dot" cx="${PAD + 5}" cy="${from - 5}" r="3.5"/>`);
      const end = known?.stop?.[answer];
      const then = end?.emergency ? words.emergency : leads(trouble, sign, answer, words);
      if (then) {
        for (const line of wrap(`→ ${then}`, (BOX - 3 * PAD - 8) / (SMALL * PLAIN))) {
          inside.push(textAt(PAD + 16, at - 2, line, end?.emergency ? "then danger" : "then"));
          at += SMALL_LINE;
        }
      }
      answers.push({ sign, id: answer, y: from - 5, svg: "" });
      at += 5;
    }
    const height = at - SIZE + PAD - top;
    boxes.push(`<rect class="${known?.first ? "box gate" : "box"}" x="1" y="${top}" width="${BOX - 1}" height="${height}" rx="8"/>${inside.join("")}`);
    y = top + height + GAP;
  }
  return { svg: `<g>${boxes.join("")}</g>`, height: y - GAP, answers };
}

/** What leads when this answer is all that is known. */
function leads(trouble: Trouble, sign: string, answer: string, words: TreeWords): string | null {
  const { ranked, stop } = walk(trouble, {}, { [sign]: { answer, from: "person" } }, []);
  const first = stop?.cause ? ranked.find(({ id }) => id === stop.cause) : ranked[0];
  return first ? `${words.of(`causes.${first.id}.title`)},\u00a0${words.percent(first.share).replaceAll(" ", "\u00a0")}` : null;
}

function causeBoxes(words: TreeWords, causes: readonly { id: string; share: number; no_fire: boolean }[], gap: number): { svg: string; height: number; middles: ReadonlyMap<string, number> } {
  const middles = new Map<string, number>();
  const largest = Math.max(...causes.map(({ share }) => share));
  const boxes: string[] = [];
  let y = 1;
  causes.forEach(({ id, share, no_fire }, i) => {
    const top = y;
    const inside: string[] = [];
    let at = top + PAD + SIZE - 2;
    for (const line of wrap(words.of(`causes.${id}.title`), (BOX - 2 * PAD - 10) / (SIZE * BOLD))) {
      inside.push(textAt(RIGHT + PAD + 8, at, line, "ask"));
      at += LINE;
    }
    const bar = Math.max(3, (BOX - 120) * (share / largest));
    inside.push(`<rect class="bar c${i % COLOURS}" x="${RIGHT + PAD + 8}" y="${at - 10}" width="${bar.toFixed(0)}" height="10" rx="2"/>`);
    inside.push(textAt(RIGHT + PAD + 16 + Math.round(bar), at, words.percent(share), "answer"));
    at += LINE;
    if (no_fire) {
      inside.push(textAt(RIGHT + PAD + 8, at - 2, words.no_fire, "then danger"));
      at += SMALL_LINE;
    }
    const height = at - SIZE + PAD - top;
    boxes.push(`<rect class="box" x="${RIGHT}" y="${top}" width="${BOX - 1}" height="${height}" rx="8"/><rect class="stripe c${i % COLOURS}" x="${RIGHT}" y="${top + 4}" width="7" height="${height - 8}" rx="2"/>${inside.join("")}`);
    middles.set(id, top + height / 2);
    y = top + height + gap;
  });
  return { svg: `<g>${boxes.join("")}</g>`, height: y - gap, middles };
}
