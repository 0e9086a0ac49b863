/** Two batches only where the builder's sheet has them, and never more than one load together. */
import { afterEach, beforeEach, expect, test } from "vitest";
import { openTalk, type Talk } from "../../support/talk.ts";

let talk: Talk;
beforeEach(async () => {
  talk = await openTalk();
  await talk.records("ana", { heater: { max_load_kg: 15, max_load_source: "sheet", gas_exit: "top", shut_off_damper: true } });
});
afterEach(() => talk.close());

test("by default there is one batch", async () => {
  expect((await talk.choose("ana", "topic:reload")).text).not.toMatch(/By your builder's sheet/);
});
test("the sheet's two batches: 10 and 5 of 15 kg; taken back by undo and by saying so", async () => {
  const said = await talk.say("ana", "the builder's sheet says two batches");
  expect(said.text).toMatch(/10 kg first, then at most 5 kg/);
  expect(said.cautions.map(({ id }) => id)).toContain("more-wood");
  expect((await talk.choose("ana", "topic:reload")).text).toMatch(/never more than 15 kg together/);
  expect((await talk.say("ana", "how much wood in one load?")).numbers.load_kg).toBeLessThanOrEqual(15);
  await talk.say("ana", "the sheet does not have two batches");
  expect((await talk.choose("ana", "topic:reload")).text).not.toMatch(/By your builder's sheet/);
});
test("asking is not saying", async () => {
  await talk.say("ana", "does the builder's sheet have two batches?");
  expect((await talk.choose("ana", "topic:reload")).text).not.toMatch(/By your builder's sheet/);
});
