/** `npm run train`: learns the router's model from the messages here and knowledge/words.yaml. Seeded; about a minute on one core. */
import { writeFileSync } from "node:fs";
import { WEIGHTS_FILE, type WeightsHeader } from "../../src/conversation/routing/model.ts";
import { pack } from "../../src/conversation/routing/pack.ts";
import { loadMessages } from "./data.ts";
import { bestTemperature, crossValidate, fit, prepare, UNCALIBRATED } from "./fit.ts";
import { foldsOf } from "./groups.ts";

const CALIBRATION_FOLDS = 5;
const CALIBRATION_RUNS = 1;

const messages = loadMessages();
const { data, lexicon, vectors, examples } = prepare(messages);
const folds = foldsOf(messages.map(({ text }) => text), CALIBRATION_FOLDS, 11);
const held = crossValidate(examples, lexicon, vectors, folds, CALIBRATION_RUNS);
const calibration = { ...UNCALIBRATED, temperature: bestTemperature(held) };
const right = held.filter(({ probabilities, label }) => probabilities.every((p, c) => c === label || p <= (probabilities[label] as number)));
const model = fit(examples, lexicon, vectors, calibration);

const parts = [model.linearSteps, model.linear, ...model.nets.flatMap((net) => [net.conv, net.convBias, net.out, net.outBias])];
const header: WeightsHeader = { topics: model.topics, lexicon: data, filters: model.filters, nets: model.nets.length, calibration };
writeFileSync(WEIGHTS_FILE, pack(header, Buffer.concat(parts.map((part) => Buffer.from(part.buffer, part.byteOffset, part.byteLength)))));
console.log(`${messages.length} messages; temperature ${calibration.temperature}; held-out top-1 ${((100 * right.length) / held.length).toFixed(1)} %`);
