/** Fits how the parts of the model are put together, on messages they had not seen: least negative log likelihood. */
import { outsideSigns } from "../../src/conversation/routing/combine.ts";
import type { Calibration } from "../../src/conversation/routing/model.ts";
import type { Spoken } from "../../src/conversation/spoken.ts";
import { TOPICS } from "../../src/conversation/topics.ts";
import { type Held, judge } from "./fit.ts";

const OUTSIDE = TOPICS.indexOf("out-of-scope");
const STEPS = 400;
/**
 * Added to the log odds of being out of scope: training has few such messages beside the many that groups and strangers write.
 * Chosen on held-out messages: in English four in five of them are refused, and about one in thirty of the messages in scope; in German,
 * where fewer words are known, five in six and one in thirteen, most of those oblique.
 */
const TOWARDS_OUTSIDE: Readonly<Record<Spoken, number>> = { en: 0.2, de: 0.4 };

export function calibrate(held: readonly Held[], language: Spoken): Calibration {
  const outside = fitOutside(held, TOWARDS_OUTSIDE[language]);
  const inside = held.filter(({ label }) => label !== OUTSIDE);
  let best: Calibration = { linear: 1, net: 0, outside };
  let least = Infinity;
  for (let linear = 1; linear <= 8; linear += 0.5) {
    for (let net = 0; net <= 1; net += 0.1) {
      const trial = { linear, net, outside: [-30, 0, 0, 0, 0] };
      let loss = 0;
      for (const { scores, label } of inside) loss -= Math.log(Math.max(1e-9, judge(scores, trial)[label] as number));
      if (loss < least) {
        least = loss;
        best = { linear, net: Math.round(net * 10) / 10, outside };
      }
    }
  }
  return best;
}

/** Logistic regression by gradient descent on standardised signs. */
function fitOutside(held: readonly Held[], towards: number): number[] {
  const signs = held.map(({ scores }) => outsideSigns(scores, OUTSIDE));
  const size = signs[0]?.length ?? 0;
  const mean = Array.from({ length: size }, (_, i) => (i === 0 ? 0 : signs.reduce((sum, own) => sum + (own[i] as number), 0) / signs.length));
  const spread = mean.map((m, i) => (i === 0 ? 1 : Math.sqrt(signs.reduce((sum, own) => sum + ((own[i] as number) - m) ** 2, 0) / signs.length) || 1));
  const inputs = signs.map((own) => own.map((value, i) => (value - (mean[i] as number)) / (spread[i] as number)));
  const weights = new Array<number>(size).fill(0);
  for (let step = 0; step < STEPS; step++) {
    const gradient = weights.map((w, i) => (i === 0 ? 0 : 1e-3 * w));
    inputs.forEach((own, n) => {
      const odds = own.reduce((sum, value, i) => sum + value * (weights[i] as number), 0);
      const miss = 1 / (1 + Math.exp(-odds)) - (held[n]?.label === OUTSIDE ? 1 : 0);
      own.forEach((value, i) => { gradient[i] = (gradient[i] as number) + (miss * value) / inputs.length; });
    });
    gradient.forEach((g, i) => { weights[i] = (weights[i] as number) - 2 * g; });
  }
  const plain = weights.map((w, i) => w / (spread[i] as number));
  plain[0] = towards + (weights[0] as number) - plain.reduce((sum, w, i) => sum + (i === 0 ? 0 : w * (mean[i] as number)), 0);
  return plain.map((w) => Math.round(w * 1000) / 1000);
}
