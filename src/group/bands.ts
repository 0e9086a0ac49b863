/**
 * What may be said of a group without saying it of anybody: in which coarse bands its members lie, as far as each band holds at least five.
 *
 * What is published is worked out from the members' bands alone, and the edges of the bands never move. So whatever a watcher sees, over any
 * number of weeks, whoever joins or leaves, and though the watcher be every other member: two figures of one band are never told apart.
 * More cannot be promised. Somebody who is all the others and puts exactly four of themselves into a band learns from the fifth whether the
 * last one lies in it; as long as a band of five is shown and one of four is not, no rule without dice prevents that. Hence bands so coarse
 * that knowing one does no harm, and whoever joins is told so.
 */

/** A band is shown from so many members on. */
export const LEAST_SHOWN = 5;
/** Shares are spoken of from so many members on: a third of them is five. */
export const LEAST_FOR_SHARES = 15;
/** How many take part is said in these steps only. */
const STEPS = [5, 15, 30, 60, 120, 250, 500] as const;

/** `hidden`: none, or too few to be shown, which look the same. */
export type Level = "hidden" | "some" | "third" | "half";

export interface Published {
  /** the largest step reached; null below the first */
  readonly at_least: number | null;
  readonly levels: readonly Level[];
}

export interface Bands {
  /** figures of this much and more lie in the next band; ascending */
  readonly edges: readonly number[];
}

export const bandOf = ({ edges }: Bands, figure: number): number => edges.filter((edge) => figure >= edge).length;
export const bandCount = ({ edges }: Bands): number => edges.length + 1;

/**
 * @param members the band of each member; null for one without a figure, who is not counted
 * @param bands how many bands there are
 */
export function publish(members: readonly (number | null)[], bands: number): Published {
  const counts = Array.from({ length: bands }, (_, band) => members.filter((one) => one === band).length);
  const all = counts.reduce((sum, count) => sum + count, 0);
  const shown = counts.map((count) => count >= LEAST_SHOWN);
  // those hidden must not stand out as what is missing from all: none, or at least five together
  for (;;) {
    const rest = counts.reduce((sum, count, band) => sum + (shown[band] ? 0 : count), 0);
    if (rest === 0 || rest >= LEAST_SHOWN) break;
    const smallest = counts.reduce<number | null>((found, count, band) => (shown[band] && (found === null || count < (counts[found] ?? 0)) ? band : found), null);
    if (smallest === null) break;
    shown[smallest] = false;
  }
  const level = (count: number): Level => (all < LEAST_FOR_SHARES ? "some" : 2 * count >= all ? "half" : 3 * count >= all ? "third" : "some");
  return {
    at_least: STEPS.findLast((step) => all >= step) ?? null,
    levels: counts.map((count, band) => (shown[band] ? level(count) : "hidden")),
  };
}

export const showsAnything = ({ levels }: Published): boolean => levels.some((level) => level !== "hidden");
