import type { Calibration } from "./model.ts";

/** What the linear model (margins) and the net (log odds up to a constant) say of each topic. */
export interface Scores { readonly linear: Float64Array; readonly net: Float64Array }

/** Log odds beyond this are not believed. */
const FLOOR = 12;

/**
 * Probabilities from the scores, written into `out`: first whether the message is out of scope at all, a question with a model
 * of its own, then which topic it is if not.
 */
export function combine(scores: Scores, calibration: Calibration, outside: number, out: Float64Array): Float64Array {
  const { linear, net } = scores;
  let netTop = -Infinity;
  for (let c = 0; c < net.length; c++) if (c !== outside) netTop = Math.max(netTop, net[c] as number);
  let top = -Infinity;
  for (let c = 0; c < out.length; c++) {
    if (c === outside) continue;
    const score = calibration.linear * (linear[c] as number) + calibration.net * Math.max(-FLOOR, (net[c] as number) - netTop);
    out[c] = score;
    if (score > top) top = score;
  }
  let sum = 0;
  for (let c = 0; c < out.length; c++) if (c !== outside) sum += out[c] = Math.exp((out[c] as number) - top);
  const signs = outsideSigns(scores, outside);
  let odds = 0;
  for (let i = 0; i < signs.length; i++) odds += (signs[i] as number) * (calibration.outside[i] as number);
  const refused = 1 / (1 + Math.exp(-odds));
  for (let c = 0; c < out.length; c++) out[c] = c === outside ? refused : ((1 - refused) * (out[c] as number)) / sum;
  return out;
}

/** What tells that a message is out of scope: one, its own margin, the best and the second best margin of a topic, the net's log odds. */
export function outsideSigns({ linear, net }: Scores, outside: number): readonly number[] {
  let best = -Infinity;
  let second = -Infinity;
  let netTop = -Infinity;
  for (let c = 0; c < linear.length; c++) if (c !== outside) netTop = Math.max(netTop, net[c] as number);
  let sum = 0;
  for (let c = 0; c < linear.length; c++) {
    if (c === outside) continue;
    sum += Math.exp((net[c] as number) - netTop);
    const margin = linear[c] as number;
    if (margin > best) {
      second = best;
      best = margin;
    } else if (margin > second) second = margin;
  }
  const odds = (net[outside] as number) - netTop - Math.log(sum);
  return [1, linear[outside] as number, best, second, Math.max(-FLOOR, Math.min(FLOOR, odds))];
}
