/** Learns the small text net of the emergency leaf from labelled messages: cross entropy over the kinds and calm, seeded. */
import { numbered, type Numbered } from "../../src/emergency/learnt/features.ts";
import { stretches } from "../../src/emergency/learnt/likelihood.ts";
import { OUTCOMES } from "../../src/emergency/learnt/net-shape.ts";
import { takePlace, takeSenses, takeSentence, takeWord } from "../../src/emergency/learnt/rows.ts";
import { sceneOf } from "../../src/emergency/scene.ts";
import { sense } from "../../src/emergency/senses.ts";
import { seeded, shuffled } from "../training/seeded.ts";
import { framed } from "./framed.ts";
import { inCompany, type Labelled } from "./learn.ts";
import { BATCH, type Example, Learner, type LearntNet, MOST_WORDS, PART, SEED } from "./net-learner.ts";

const EPOCHS = 5;
const RATE = { dense: 2e-3, rows: 3e-3 };
const WARM_STEPS = 200;
const WORTH_OF_STRETCH = 0.3;
const SHARE_FRAMED = 0.5;

function exampleOf(message: Numbered, from: number, to: number, kind: number, weight: number): Example {
  const [rows, times, parts, starts]: [number[], number[], number[], number[]] = [[], [], [], [0]];
  for (let at = from; at < Math.min(to, from + MOST_WORDS); at += 1) {
    const first = rows.length;
    const take = (part: number | null) => (row: number, count: number): void => {
      rows.push(row);
      times.push(count);
      parts.push(part ?? (rows.length - first <= 2 ? PART.word : PART.letters));
    };
    takeWord(message, at, take(null));
    takeSenses(message, at, take(PART.sense));
    takeSentence(message, message.sensed.tokens[at]?.sentence ?? 0, take(PART.place));
    takePlace(message, at, take(PART.place));
    starts.push(rows.length);
  }
  return {
    starts: Int32Array.from(starts), rows: Int32Array.from(rows), times: Float32Array.from(times), parts: Uint8Array.from(parts),
    outcome: kind < 0 ? OUTCOMES - 1 : kind, weight,
  };
}

const read = (text: string): Numbered => numbered(sceneOf(sense(text)));

function examplesOf({ text, kind, weight }: Labelled, stretched: boolean): Example[] {
  const message = read(text);
  const length = message.words.length;
  const parts = kind >= 0 || !stretched ? [] : stretches(message).filter(({ from, to }) => to - from < length);
  return [
    exampleOf(message, 0, length, kind, weight),
    ...parts.map(({ from, to }) => exampleOf(message, from, to, kind, weight * WORTH_OF_STRETCH)),
  ].filter(({ rows }) => rows.length > 0);
}

/** What is learnt from, as examples: see learn.ts for stretches and company. */
function examplesOfAll(labelled: readonly Labelled[]): Example[] {
  const random = seeded(SEED + 1);
  const some = (messages: readonly Labelled[], share: number): Labelled[] => messages.filter(() => random() < share);
  return [
    ...labelled.flatMap((message) => examplesOf(message, true)),
    ...[...inCompany(labelled), ...some(framed(labelled), SHARE_FRAMED)].flatMap((message) => examplesOf(message, false)),
  ];
}

export function learnNet(labelled: readonly Labelled[], tell: (line: string) => void = () => {}): LearntNet {
  const random = seeded(SEED);
  const examples = examplesOfAll(labelled);
  const learner = new Learner(random);
  const steps = EPOCHS * Math.ceil(examples.length / BATCH);
  let step = 0;
  for (let epoch = 0; epoch < EPOCHS; epoch += 1) {
    const order = shuffled(examples, random);
    for (let first = 0; first < order.length; first += BATCH) {
      for (const example of order.slice(first, first + BATCH)) learner.learn(example);
      step += 1;
      const left = 1 - step / (steps + 1);
      learner.dense.step(step, RATE.dense * left * Math.min(1, step / WARM_STEPS));
      learner.table.step(RATE.rows * left);
    }
    tell(`the net has read ${examples.length} messages ${epoch + 1} times of ${EPOCHS}`);
  }
  return learner.learnt();
}
