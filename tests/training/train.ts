/** `npm run train`: learns the router's model from the messages here and knowledge/words.yaml. Seeded; about two minutes on one core. */
import { writeFileSync } from "node:fs";
import { modelParts, WEIGHTS_FILE, type WeightsHeader } from "../../src/conversation/routing/model.ts";
import { pack } from "../../src/conversation/routing/pack.ts";
import { loadMessages } from "./data.ts";
import { calibrate } from "./calibrate.ts";
import { crossValidate, fit, judge, prepare } from "./fit.ts";
import { foldsOf } from "./groups.ts";

const CALIBRATION_FOLDS = 5;
const CALIBRATION_RUNS = 1;

const messages = loadMessages();
const { data, lexicon, vectors, examples } = prepare(messages);
const folds = foldsOf(messages.map(({ text }) => text), CALIBRATION_FOLDS, 11);
const held = crossValidate(examples, lexicon, vectors, folds, CALIBRATION_RUNS);
const calibration = calibrate(held);
const right = held.filter(({ scores, label }) => {
  const probabilities = judge(scores, calibration);
  return probabilities.every((p, c) => c === label || p <= (probabilities[label] as number));
});
const model = fit(examples, lexicon, vectors, calibration);

const header: WeightsHeader = {
  topics: model.topics, lexicon: data, rows: model.linear.steps.length, filters: model.filters, nets: model.nets.length, calibration,
};
const bytes = modelParts(model).map((part) => Buffer.from(part.buffer, part.byteOffset, part.byteLength));
writeFileSync(WEIGHTS_FILE, pack(header, Buffer.concat(bytes)));
console.log(`${messages.length} messages; ${JSON.stringify(calibration)}; held-out top-1 ${((100 * right.length) / held.length).toFixed(1)} %`);
