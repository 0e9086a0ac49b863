/** "I don't know" to a question of life and limb: an emergency card, or the sentence that says what to do stands first. */
import { describe, expect, it } from "vitest";
import { decide } from "../../src/conversation/decide.ts";
import { readFigures } from "../../src/conversation/reading/figures.ts";
import { answerTo } from "../../src/conversation/sign-answer.ts";
import type { Sign } from "../../src/knowledge/schemas.ts";
import type { SignAnswer } from "../../src/trouble/walk.ts";
import { openStage, snapshotOf } from "./play-case.ts";

const stage = await openStage();
const gates = [...stage.knowledge.troubles.values()].flatMap((trouble) =>
  Object.entries(trouble.signs)
    .filter(([, sign]) => sign.first && Object.values(sign.stop ?? {}).some(({ emergency }) => emergency))
    .map(([id, sign]) => [trouble.id, id, sign] as const),
);
const read = (sign: Sign, words: string): SignAnswer | undefined => answerTo(sign, words, readFigures(words));

describe.each(gates)("the gate of %s, %s", (trouble, id, sign) => {
  it("is not passed in silence by a don't know", () => {
    const now_ms = Date.parse("2026-11-25T22:00:00Z");
    const { answer } = decide(
      { knowledge: stage.knowledge, settings: { timezone: "UTC", locale: "en-GB" } },
      snapshotOf({ trouble, records: {}, now: "2026-11-25T22:00:00Z", story: "", answers: {}, cause: "" }),
      {
        adapter: "test", native_id: "1", received_at_ms: now_ms, identity: { network: "test", id: "p" },
        place: { network: "test", id: "r", kind: "private", encrypted: null }, choice: `sign:${trouble}:${id}=?`,
      },
      now_ms,
    );
    expect(answer.emergency || ["carbon-monoxide", "chimney-fire", "close-flue", "hot-surroundings"].includes(answer.cautions[0]?.id ?? ""), answer.cautions[0]?.id).toBe(true);
  });

  it("takes a plain no, and no half one", () => {
    const passes = sign.kind === "yes-no" ? "no" : (sign.answers ?? []).find((answer) => /^(none|neither)$/.test(answer.id))?.id;
    if (passes === undefined) return;
    for (const words of ["no", "none", "no, everyone is well and no alarm sounds"]) expect(read(sign, words), words).toBe(passes);
    for (const words of ["none, but we are both sleepy", "no, just a bit dizzy"]) expect(read(sign, words), words).not.toBe(passes);
  });
});

it("a span in months or years is not read as so many days", () => {
  const days: Sign = { ask: "How long had it rested?", kind: "days" };
  expect(read(days, "five months")).toBeCloseTo(152.2, 0);
  expect(read(days, "2 weeks")).toBe(14);
  expect(read({ ask: "How old is it?", kind: "years" }, "6 months old")).toBeCloseTo(0.5, 2);
});
