/**
 * Two readers of one reply put together. The rules of `sign-answer.ts` and the examples of `learnt.ts` each give chances; where they agree
 * the answer is sure, where they do not it is graded. Chances multiply, as of two witnesses who saw the same from different places.
 */
import { isGraded, type Graded, type SignAnswer } from "../../trouble/walk.ts";
import { NO_ANSWERS } from "../../knowledge/said.ts";
import type { Chances } from "./learnt.ts";

/** of what is then left, so much for being beside the question */
const PLAINLY_BESIDE = 0.15;
const GRADED_WITHIN = 0.85;
const GRADED_LEAST = 0.02;
const GRADED_BESIDE = 0.07;
/** the rules found nothing: a reply is then beside the question so often */
const UNREAD_BESIDE = 0.15;
const DONT_KNOW_BESIDE = 0.8;
/** from here on the answer counts as given */
const SURE = 0.8;
/** below this nothing was said that tells answers apart */
const TELLS = 0.4;
const BESIDE = 0.5;

/**
 * @param rules what the rules read
 * @param right the chance that they are right, where they say one thing plainly
 */
export function agreed(rules: SignAnswer | undefined, right: number, chances: Chances): SignAnswer | undefined {
  const ids = [...chances.keys()];
  const real = ids.filter((id) => !NO_ANSWERS.includes(id));
  const ruled = (id: string): number => {
    const beside = NO_ANSWERS.includes(id);
    if (rules === undefined) return beside ? UNREAD_BESIDE : (1 - UNREAD_BESIDE) / real.length;
    if (rules === null) return beside ? DONT_KNOW_BESIDE : (1 - DONT_KNOW_BESIDE) / real.length;
    if (isGraded(rules)) return beside ? GRADED_BESIDE : Math.max(GRADED_LEAST, GRADED_WITHIN * (rules.likely[id] ?? 0));
    return id === rules ? right : beside ? (1 - right) * PLAINLY_BESIDE : ((1 - right) * (1 - PLAINLY_BESIDE)) / Math.max(1, real.length - 1);
  };
  const both = ids.map((id): [string, number] => [id, ruled(id) * (chances.get(id) ?? 0)]);
  const all = both.reduce((sum, [, by]) => sum + by, 0);
  const shares = new Map(both.map(([id, by]) => [id, by / all]));
  const beside = NO_ANSWERS.reduce((sum, id) => sum + (shares.get(id) ?? 0), 0);
  const [best, share] = real.map((id) => [id, shares.get(id) ?? 0] as const).sort((a, b) => b[1] - a[1])[0] ?? ["", 0];
  if (share >= SURE) return best;
  if (rules === null || beside >= BESIDE || share < TELLS) return rules === null || rules === undefined || isGraded(rules) ? rules : grade(real, shares);
  return grade(real, shares);
}

function grade(ids: readonly string[], shares: ReadonlyMap<string, number>): Graded {
  const sum = ids.reduce((a, id) => a + (shares.get(id) ?? 0), 0) || 1;
  return { likely: Object.fromEntries(ids.map((id) => [id, Math.round((1000 * (shares.get(id) ?? 0)) / sum) / 1000])) };
}
