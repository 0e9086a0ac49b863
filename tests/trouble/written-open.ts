/** Prints the first unanswered question of every case as its person sees it: `node written-open.ts folder [from] [to]`. */
import { text } from "../../src/answer.ts";
import { signChoices } from "../../src/conversation/topics/trouble.ts";
import type { TopicId } from "../../src/topics.ts";
import { openStage } from "./play-case.ts";
import { byQuestion, playWritten, writtenSet } from "./written-person.ts";

const [folder = "", ...range] = process.argv.slice(2);
const [from = 1, to = Infinity] = range.map(Number);
const { cases, answers } = writtenSet(folder);
const stage = await openStage();
const said = byQuestion(answers);
const words = (it: ReturnType<typeof text>): string => stage.render(it, { locale: "en-GB", system: "metric", timezone: "UTC" });

for (const written of cases.filter(({ n }) => n >= from && n <= to)) {
  const open = playWritten(stage, written, said).asked.find(({ sign }) => !said.has(`${written.n} ${sign}`));
  const trouble = stage.knowledge.troubles.get(written.trouble as TopicId);
  const sign = open && trouble?.signs[open.sign];
  if (!trouble || !open || !sign) continue;
  const choices = signChoices(trouble, open.sign, sign).map(({ label }, i) => `${i + 1} ${words(label)}`);
  console.log(`${written.n} [${open.sign}] ${words(text(`troubles.${trouble.id}.signs.${open.sign}.ask`))}\n    ${choices.join(" | ")}`);
}
