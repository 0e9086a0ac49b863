/**
 * Cross-validation of the router on the training messages: `node tests/training/evaluate.ts [folds] [folds to run] [language]`.
 * A figure for whoever mends the messages or the words file; the honest measure is tests/measuring.
 */
import { verdictOf } from "../../src/conversation/routing/verdict.ts";
import { best } from "../../src/conversation/routing/route.ts";
import { TOPICS, topicFacts } from "../../src/conversation/topics.ts";
import { loadMessages } from "./data.ts";
import { calibrate } from "./calibrate.ts";
import { crossValidate, judge, prepare } from "./fit.ts";
import { foldsOf } from "./groups.ts";

const folds = Number(process.argv[2] ?? 5);
const run = Number(process.argv[3] ?? folds);

const language = process.argv[4] === "de" ? "de" : "en";

const { lexicon, vectors, examples } = prepare(loadMessages(language), language);
const held = crossValidate(examples, lexicon, vectors, foldsOf(examples.map(({ message }) => message.text), folds, 5), run)
  .filter(({ message }) => (message.language ?? "en") === language);
const calibration = calibrate(held, language);
const judged = held.map(({ message, label, scores }) => ({ message, label, probabilities: judge(scores, calibration) }));

interface Tally { n: number; first: number; three: number; verdicts: Map<string, number>; sureAndWrong: number }
const tallies = new Map<string, Tally>();
const perTopic = new Map<string, { n: number; first: number; three: number }>();
const confusions = new Map<string, number>();
const bins = Array.from({ length: 10 }, () => ({ n: 0, right: 0, score: 0 }));
for (const { message, probabilities } of judged) {
  const ranked = best(TOPICS, probabilities, 5);
  const place = ranked.findIndex(({ topic }) => topic === message.topic);
  const verdict = verdictOf(ranked);
  for (const group of [message.topic === "out-of-scope" ? "out of scope" : message.style === "oblique" ? "oblique" : "not oblique", `  ${message.style}`]) {
    if (group.startsWith("  ") && message.topic === "out-of-scope") continue;
    const tally = tallies.get(group) ?? { n: 0, first: 0, three: 0, verdicts: new Map(), sureAndWrong: 0 };
    tally.n++;
    if (place === 0) tally.first++;
    if (place >= 0 && place < 3) tally.three++;
    tally.verdicts.set(verdict, (tally.verdicts.get(verdict) ?? 0) + 1);
    if (verdict === "sure" && place !== 0) tally.sureAndWrong++;
    tallies.set(group, tally);
  }
  const top = ranked[0];
  if (top !== undefined) {
    const bin = bins[Math.min(9, Math.floor(top.score * 10))] as { n: number; right: number; score: number };
    bin.n++;
    bin.score += top.score;
    if (place === 0) bin.right++;
    else confusions.set(`${message.topic} -> ${top.topic}`, (confusions.get(`${message.topic} -> ${top.topic}`) ?? 0) + 1);
  }
  const own = perTopic.get(message.topic) ?? { n: 0, first: 0, three: 0 };
  own.n++;
  if (place === 0) own.first++;
  if (place >= 0 && place < 3) own.three++;
  perTopic.set(message.topic, own);
}

const percent = (part: number, whole: number): string => `${((100 * part) / (whole || 1)).toFixed(1)} %`;
console.log(`${judged.length} held-out messages, ${run} of ${folds} folds, ${JSON.stringify(calibration)}`);
for (const [group, t] of [...tallies].sort()) {
  const verdicts = [...t.verdicts].sort().map(([verdict, n]) => `${verdict} ${percent(n, t.n)}`).join(", ");
  console.log(`${group.padEnd(18)} ${String(t.n).padStart(5)}  top-1 ${percent(t.first, t.n)}  top-3 ${percent(t.three, t.n)}  sure but wrong ${percent(t.sureAndWrong, t.n)}  | ${verdicts}`);
}
const careful = judged.filter(({ message }) => topicFacts(message.topic).careful);
const refused = careful.filter(({ probabilities }) => verdictOf(best(TOPICS, probabilities, 5)) === "out-of-scope");
console.log(`topics that touch a hazard, refused: ${percent(refused.length, careful.length)}`);
console.log("said / right:", bins.filter(({ n }) => n > 0).map(({ n, right, score }) => `${(score / n).toFixed(2)}/${(right / n).toFixed(2)} (${n})`).join("  "));
console.log("weakest:", [...perTopic].sort((a, b) => a[1].first / a[1].n - b[1].first / b[1].n).slice(0, 20).map(([topic, t]) => `${topic} ${percent(t.first, t.n)} ${percent(t.three, t.n)}`).join("; "));
console.log("confused:", [...confusions].sort((a, b) => b[1] - a[1]).slice(0, 30).map(([pair, n]) => `${pair} ${n}`).join("; "));
