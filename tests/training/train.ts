/**
 * `npm run train [language]`: learns the router's models from the messages here and knowledge/words.yaml, or the one of a language alone.
 * Seeded; about two minutes a language on one core.
 */
import { writeFileSync } from "node:fs";
import { GERMAN_WEIGHTS_FILE, modelParts, WEIGHTS_FILE, type WeightsHeader } from "../../src/conversation/routing/model.ts";
import { pack } from "../../src/conversation/routing/pack.ts";
import type { Spoken } from "../../src/conversation/spoken.ts";
import { loadMessages } from "./data.ts";
import { calibrate } from "./calibrate.ts";
import { crossValidate, fit, judge, prepare } from "./fit.ts";
import { foldsOf } from "./groups.ts";

const CALIBRATION_FOLDS = 5;
const CALIBRATION_RUNS: Readonly<Record<Spoken, number>> = { en: 1, de: 2 };
const FILES: Readonly<Record<Spoken, URL>> = { en: WEIGHTS_FILE, de: GERMAN_WEIGHTS_FILE };

function train(language: Spoken): void {
  const messages = loadMessages(language);
  const { data, lexicon, vectors, examples } = prepare(messages, language);
  const folds = foldsOf(messages.map(({ text }) => text), CALIBRATION_FOLDS, 11);
  const held = crossValidate(examples, lexicon, vectors, folds, CALIBRATION_RUNS[language]).filter(({ message }) => (message.language ?? "en") === language);
  const calibration = calibrate(held, language);
  const right = held.filter(({ scores, label }) => {
    const probabilities = judge(scores, calibration);
    return probabilities.every((p, c) => c === label || p <= (probabilities[label] as number));
  });
  const model = fit(examples, lexicon, vectors, calibration);

  const header: WeightsHeader = {
    topics: model.topics, lexicon: data, rows: model.linear.steps.length, filters: model.filters, nets: model.nets.length, calibration,
  };
  const bytes = modelParts(model).map((part) => Buffer.from(part.buffer, part.byteOffset, part.byteLength));
  writeFileSync(FILES[language], pack(header, Buffer.concat(bytes)));
  console.log(`${language}: ${messages.length} messages; ${JSON.stringify(calibration)}; held-out top-1 ${((100 * right.length) / held.length).toFixed(1)} %`);
}

const [only] = process.argv.slice(2);
for (const language of ["en", "de"] as const) if (only === undefined || only === language) train(language);
