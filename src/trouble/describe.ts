/** What a tree does, found by walking it: how many questions, which causes can lead, and what nobody will ever be asked. In plain words. */
import type { Trouble } from "../knowledge/schemas.ts";
import type { HeaterFacts } from "../records/schemas.ts";
import { answersOf, everyPath } from "./every-path.ts";
import { walk, type Observations } from "./walk.ts";

export interface Description {
  /** ways through the tree that were walked */
  readonly paths: number;
  readonly questions: { readonly most: number; readonly mean: number };
  /** by cause: on how many of the ways it leads at the end (0 to 1), and its largest share when everything speaks for it */
  readonly causes: readonly { readonly id: string; readonly leads: number; readonly best_share: number; readonly can_lead: boolean }[];
  /** questions that no way through comes to */
  readonly never_asked: readonly string[];
  /** ways that end with no cause at 30 % or more */
  readonly undecided: number;
  readonly emergencies: number;
  /** sentences: what is worth another look */
  readonly doubts: readonly string[];
}

const UNDECIDED_SHARE = 0.3;
const MOST_NODES = 3000;

export function describeTrouble(trouble: Trouble): Description {
  // a heater of which nothing is known, and heaters for which its conditions hold
  const heaters = [{}, ...conditionsOf(trouble)];
  const walked = heaters.map((heater) => everyPath(trouble, heater, {}, MOST_NODES));
  const paths = walked.flat();
  const asked = new Set(paths.flatMap((path) => path.asked));
  const never_asked = Object.entries(trouble.signs).filter(([id, sign]) => sign.ask !== undefined && !asked.has(id)).map(([id]) => id);
  const causes = Object.keys(trouble.causes).map((id) => {
    const best = bestCase(trouble, id);
    return { id, leads: paths.filter((path) => path.leads === id).length / paths.length, best_share: best.share, can_lead: best.leads };
  });
  const counts = (walked[0] ?? []).map((path) => path.asked.length);
  return {
    paths: paths.length,
    questions: { most: Math.max(0, ...counts), mean: counts.reduce((sum, count) => sum + count, 0) / Math.max(1, counts.length) },
    causes,
    never_asked,
    undecided: paths.filter((path) => !path.end.stop && (path.end.ranked[0]?.share ?? 0) < UNDECIDED_SHARE).length / paths.length,
    emergencies: paths.filter((path) => path.end.stop?.emergency).length / paths.length,
    doubts: doubts(trouble, causes, never_asked),
  };
}

function conditionsOf({ causes, signs }: Trouble): HeaterFacts[] {
  const all = [...Object.values(causes), ...Object.values(signs)].flatMap(({ when }) => (when ? [when] : []));
  const facts = all.map((when) => Object.fromEntries(Object.entries(when).map(([key, value]) => [key, [value].flat()[0]])) as HeaterFacts);
  return [...new Map(facts.map((one) => [JSON.stringify(one), one])).values()].slice(0, 6);
}

/** Answers searched, sign by sign, for the largest share this cause can reach. */
function bestCase(trouble: Trouble, id: string): { share: number; leads: boolean } {
  const cause = trouble.causes[id];
  const heater = Object.fromEntries(Object.entries(cause?.when ?? {}).map(([key, value]) => [key, [value].flat()[0]])) as HeaterFacts;
  const reached = (seen: Observations): { share: number; leads: boolean } => {
    const { ranked, stop } = walk(trouble, heater, seen, []);
    if (stop?.emergency || (stop?.cause && stop.cause !== id)) return { share: 0, leads: false };
    return { share: ranked.find((one) => one.id === id)?.share ?? 0, leads: stop?.cause === id || ranked[0]?.id === id };
  };
  let seen: Observations = {};
  let best = reached(seen);
  for (let round = 0; round < 2; round++) {
    for (const [name, sign] of Object.entries(trouble.signs)) {
      const isFigure = sign.kind !== "yes-no" && sign.kind !== "choice";
      const answers = isFigure ? [...new Set(Object.values(trouble.causes).flatMap((one) => Object.keys(one.weighs[name] ?? {}).map(Number)))] : answersOf(trouble, name).filter((answer) => answer !== null);
      for (const answer of answers) {
        const tried: Observations = { ...seen, [name]: { answer, from: "person" } };
        const now = reached(tried);
        if (now.share > best.share || (now.leads && !best.leads)) [seen, best] = [tried, now];
      }
    }
  }
  return best;
}

/** Words that hint at a hazard, and the caution that usually goes with them. */
const HINTS: readonly (readonly [RegExp, readonly string[], string])[] = [
  [/\b(?:carbon monoxide|alarm (?:sounds|goes off))\b/i, ["carbon-monoxide"], "carbon monoxide"],
  [/\b(?:climb|on the roof|ladder against|up a ladder)\b/i, ["roof"], "work on the roof"],
  [/\b(?:hot ash|empty the ash|ash bucket|take out the ash|embers? (?:in|into) )/i, ["hot-ash"], "ash"],
  [/\b(?:clos|shut)\w* (?:the |a )?(?:flue )?damper\b/i, ["close-flue", "carbon-monoxide"], "closing the damper"],
  [/\b(?:clos|shut)\w* the air\b/i, ["close-air"], "closing the air"],
  [/\bopen(?:ing)? the (?:fire )?door\b/i, ["opening-door"], "opening the door on a fire"],
  [/\b(?:rope seal|old gasket|asbestos)\b/i, ["asbestos"], "old rope seals"],
];

function doubts(trouble: Trouble, causes: Description["causes"], never_asked: readonly string[]): string[] {
  const found: string[] = [];
  for (const { id, can_lead, best_share } of causes) {
    if (!can_lead) found.push(`The cause "${id}" can never come first: even when every answer speaks for it, it reaches ${Math.round(100 * best_share)} %. Raise its prior, or let an answer weigh more for it.`);
  }
  for (const sign of never_asked) {
    if (!trouble.signs[sign]?.record) found.push(`The question "${sign}" is never asked: its answers tell too little. Let them weigh more for some cause, or leave it out.`);
  }
  for (const [id, sign] of Object.entries(trouble.signs)) {
    const labels = (sign.answers ?? []).map(({ label }) => label.trim().toLowerCase());
    if (new Set(labels).size < labels.length) found.push(`The question "${id}" has two answers that read the same.`);
    for (const { id: answer } of sign.answers ?? []) {
      const weighs = Object.values(trouble.causes).some((cause) => cause.weighs[id]?.[answer] !== undefined) || sign.stop?.[answer] !== undefined;
      if (sign.kind === "choice" && !sign.stop && !weighs) found.push(`The answer "${answer}" to "${id}" changes nothing for any cause.`);
    }
  }
  for (const [id, cause] of Object.entries(trouble.causes)) {
    const named = new Set([...trouble.cautions, ...cause.cautions]);
    for (const sentence of [...cause.now, ...cause.before_next_fire]) {
      for (const [words, cautions, about] of HINTS) {
        if (words.test(sentence) && !/\b(?:never|not|don't|no one|nobody|cold)\b/i.test(sentence) && !cautions.some((caution) => named.has(caution))) {
          found.push(`The cause "${id}" speaks of ${about} ("${sentence.slice(0, 60)}${sentence.length > 60 ? "..." : ""}") and has none of the cautions ${cautions.join(", ")}.`);
        }
      }
    }
  }
  if (trouble.words.length < 4) found.push(`It has ${trouble.words.length} phrases under "words"; owners will find it better with a dozen, in their own words.`);
  return [...new Set(found)];
}
