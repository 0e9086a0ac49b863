/**
 * What the examples of knowledge/said/ teach, on replies held back from them: every fifth of some questions. Read from examples and rules
 * together against rules alone; at questions of life and limb, how seldom a reply that means danger is let pass. Floors a little below what
 * was reached.
 */
import { expect, it } from "vitest";
import { readFigures } from "../../../src/conversation/reading/figures.ts";
import { answerTo } from "../../../src/conversation/sign-answer.ts";
import { loadKnowledge } from "../../../src/knowledge/load.ts";
import { NO_ANSWERS, repliesOf } from "../../../src/knowledge/said.ts";
import type { Sign } from "../../../src/knowledge/schemas.ts";
import { isGraded } from "../../../src/trouble/walk.ts";

const { troubles, strays } = await loadKnowledge(new URL("../../../knowledge", import.meta.url).pathname, { languages: [] });
const HELD = 5;

/** The sign without its every fifth reply, and those. */
function parted(sign: Sign): { readonly sign: Sign; readonly held: ReturnType<typeof repliesOf> } {
  const all = repliesOf(sign);
  const said: Record<string, string> = {};
  for (const { answer, said: words } of all.filter((_, i) => i % HELD !== 0)) said[answer] = `${said[answer] ?? ""}${words}\n`;
  return { sign: { ...sign, said }, held: all.filter((_, i) => i % HELD === 0) };
}
function read(sign: Sign, words: string): string | null {
  const answer = answerTo(sign, words, readFigures(words)) ?? null;
  if (isGraded(answer)) return Object.entries(answer.likely).find(([, share]) => share >= 0.5)?.[0] ?? null;
  return typeof answer === "string" ? answer : null;
}

it("every reply of the files belongs to an answer", () => expect(strays).toEqual([]));

it("reads more of what it has not seen than the rules alone", () => {
  const signs = ["slow-ignition", "door-leak"].flatMap((id) => Object.values(troubles.get(id as never)?.signs ?? {})).filter((sign) => sign.said && sign.kind === "choice" && !sign.first);
  const right = { both: 0, rules: 0 };
  let count = 0;
  for (const one of signs) {
    const { sign, held } = parted(one);
    const { said: _, ...bare } = one;
    for (const { answer, said } of held.filter((reply) => !NO_ANSWERS.includes(reply.answer))) {
      count++;
      if (read(sign, said) === answer) right.both++;
      if (read(bare, said) === answer) right.rules++;
    }
  }
  console.info(`held back: ${right.both} of ${count} right, by rules alone ${right.rules}`);
  expect(right.both).toBeGreaterThan(1.15 * right.rules);
  expect(right.both).toBeGreaterThan(0.5 * count);
});

it("lets pass hardly any reply that means danger", () => {
  const asked = new Set<string>();
  const count = { danger: 0, passed: 0, stopped: 0 };
  for (const trouble of ["smoke-at-lighting", "smoke-mid-burn", "over-firing", "back-puff"]) {
    for (const one of Object.values(troubles.get(trouble as never)?.signs ?? {})) {
      const stops = Object.entries(one.stop ?? {}).flatMap(([id, { emergency }]) => (emergency ? [id] : []));
      if (!one.first || stops.length === 0 || !one.said || asked.has(one.ask ?? "")) continue;
      asked.add(one.ask ?? "");
      const { sign, held } = parted(one);
      for (const { said } of held.filter(({ answer }) => stops.includes(answer))) {
        const answer = read(sign, said);
        count.danger++;
        if (answer !== null && stops.includes(answer)) count.stopped++;
        else if (answer !== null) count.passed++;
      }
    }
  }
  console.info(`danger: ${count.stopped} of ${count.danger} stopped, ${count.passed} passed`);
  expect(count.danger).toBeGreaterThan(20);
  expect(count.passed).toBeLessThanOrEqual(0.1 * count.danger);
  expect(count.stopped).toBeGreaterThan(0.5 * count.danger);
});
