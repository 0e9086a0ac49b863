/**
 * How well danger is found in the messages of a hand nothing was learnt from: each hand in turn is left out, the rest learnt.
 * `node tests/emergency/evaluate.ts [writer-c.jsonl ...]`; two minutes a hand. Figures for whoever mends words or features; the honest measure is tests/measuring.
 */
import { numbered } from "../../src/emergency/learnt/features.ts";
import { LEARNT_KINDS } from "../../src/emergency/learnt/kinds.ts";
import { type Learnt, likeness } from "../../src/emergency/learnt/likelihood.ts";
import { judgeOf } from "../../src/emergency/learnt/net.ts";
import { ROWS } from "../../src/emergency/learnt/rows.ts";
import { STEP } from "../../src/emergency/learnt/weights.ts";
import { recogniseBy } from "../../src/emergency/recognise.ts";
import { sceneOf } from "../../src/emergency/scene.ts";
import { sense } from "../../src/emergency/senses.ts";
import { labelledMessages, unseenMessages, WRITERS } from "./labelled.ts";
import { type Labelled, learn } from "./learn.ts";
import { learnNet } from "./learn-net.ts";
import { packedWeights } from "./pack.ts";

const FALSE_ALARM_SHARES = [0.01, 0.02, 0.05, 0.1];

/** A share in percent with its 95 % interval (Wilson's). */
function share(part: number, whole: number): string {
  const z = 1.96;
  const p = part / whole;
  const middle = (p + (z * z) / (2 * whole)) / (1 + (z * z) / whole);
  const reach = (z / (1 + (z * z) / whole)) * Math.sqrt((p * (1 - p)) / whole + (z * z) / (4 * whole * whole));
  return `${(100 * p).toFixed(1)} % (${(100 * (middle - reach)).toFixed(1)}-${(100 * (middle + reach)).toFixed(1)}) of ${whole}`;
}

function judge(name: string, held: readonly Labelled[], learnt: Learnt): void {
  const scores = (messages: readonly Labelled[]): number[] =>
    messages.map(({ text }) => likeness(numbered(sceneOf(sense(text))), learnt).score).sort((a, b) => b - a);
  const danger = held.filter(({ kind }) => kind >= 0);
  const calm = held.filter(({ kind }) => kind < 0);
  const raised = (messages: readonly Labelled[]): number => messages.filter(({ text }) => recogniseBy(text, learnt) !== null).length;
  const [high, low] = [scores(danger), scores(calm)];
  const curve = FALSE_ALARM_SHARES.map((allowed) => {
    const least = low[Math.floor(allowed * low.length)] ?? 0;
    return `${100 * allowed} %: ${((100 * high.filter((score) => score > least).length) / high.length).toFixed(1)} %`;
  });
  console.log(`${name}: found ${share(raised(danger), danger.length)}, false alarms ${share(raised(calm), calm.length)}`);
  console.log(`  found by the learnt layer alone at false alarms of ${curve.join(", ")}`);
}

/** Weights of the linear model as coarse as they would be shipped, in the steps of those that are; the net as it was learnt. */
function learntFrom(messages: readonly Labelled[]): Learnt {
  const { weights } = learn(messages, LEARNT_KINDS.length);
  const { step } = packedWeights(weights);
  const { table, ...net } = learnNet(messages);
  return {
    weights: weights.map((weight) => (Math.round(weight / step) * step) / STEP),
    judge: judgeOf({ table: { values: table, steps: new Float32Array(ROWS).fill(1) }, ...net }),
  };
}

const asked = process.argv.slice(2);
const labelled = labelledMessages();
if (asked.length === 0) judge("unseen", unseenMessages(), learntFrom(labelled));
for (const writer of asked.length > 0 ? asked : WRITERS) {
  const others = [...labelled.filter(({ hand }) => hand !== writer), ...unseenMessages()];
  judge(writer, labelled.filter(({ hand }) => hand === writer), learntFrom(others));
}
