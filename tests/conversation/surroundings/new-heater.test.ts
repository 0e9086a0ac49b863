/** The first week of a new heater: since when it is in use is heard, or asked for once, and every later load keeps to the ladder. */
import { afterEach, beforeEach, expect, test } from "vitest";
import { openTalk, type Talk } from "../../support/talk.ts";

let talk: Talk;
beforeEach(async () => {
  talk = await openTalk();
  await talk.records("ana", { heater: { max_load_kg: 15 } });
});
afterEach(() => talk.close());

test("said with the question it is written down, and tonight's wood is kindling", async () => {
  const said = await talk.say("ana", "hi, our new heater was finished on Saturday, can I light it?");
  expect(said.topic).toBe("first-fires");
  expect(said.text).toMatch(/in use since 21 Nov 2026/);
  const load = await talk.say("ana", "how much wood tonight?");
  // 10 % of the full load: common practice, no source (knowledge/firings/first-fires)
  expect(load.numbers.load_kg).toBeLessThanOrEqual(1.5);
  expect((await talk.say("ana", "can I have a second fire this evening?")).text).toMatch(/First fires, day 1/);
});
test("not said it is asked for, and no load is named without a word on it", async () => {
  const asked = await talk.say("ana", "when can I have the first fire?");
  expect(asked.choices.map(({ id }) => id)).toEqual(["first:new", "first:used"]);
  const load = await talk.say("ana", "how much wood tonight, it is -5?");
  if ((load.numbers.load_kg ?? 0) > 1.5) expect(load.text).toMatch(/far too much/);
  await talk.say("ana", "when can I have the first fire?");
  expect((await talk.say("ana", "yes, new")).text).toMatch(/in use since 25 Nov 2026/);
  expect((await talk.say("ana", "how much wood tonight?")).numbers.load_kg).toBeLessThanOrEqual(1.5);
});
test("in use before: the usual load, and not asked about again beside it", async () => {
  await talk.say("ana", "when can I have the first fire?");
  expect((await talk.say("ana", "no")).headline).toMatch(/usual load/);
  expect((await talk.say("ana", "how much wood tonight, it is -5?")).text).not.toMatch(/far too much/);
});
test("what a heater takes is its largest load", async () => {
  await talk.say("ben", "my heater takes 12 kg");
  expect(await talk.kept("ben")).toMatchObject({ heaters: [{ facts: { max_load_kg: 12 } }] });
});
test("a question of one's own is no answer to the open one, with or without its mark", async () => {
  await talk.say("ana", "small hairline crack next to the door");
  expect((await talk.say("ana", "do i need a co alarm")).emergency).toBe(false);
  await talk.say("ana", "water runs down the door");
  expect((await talk.say("ana", "how do i clean the glass")).topic).toBe("clean-glass");
});
test("from the top or from below: answered in words, and the guide goes on", async () => {
  await talk.say("ana", "my heater is in use since 2010");
  expect((await talk.say("ana", "walk me through a fire")).headline).toMatch(/from the top or from below/);
  expect((await talk.say("ana", "from the top")).topic).toBe("light-fire");
  expect(await talk.kept("ana")).toMatchObject({ heaters: [{ facts: { gas_exit: "top" } }] });
});
test("a wish is no answer to an open question", async () => {
  await talk.say("ana", "dark smoke from the chimney");
  expect((await talk.say("ana", "show my first fires")).topic).toBe("first-fires");
});
test("who asks what is known of the heater sees it", async () => {
  const shown = await talk.say("ana", "show my heater");
  expect([shown.topic, shown.text]).toEqual(["set-heater", expect.stringMatching(/largest load 15 kg/)]);
});
test("only the case that was named is told, the others by their names, which bring them", async () => {
  const told = await talk.say("ana", "my heater is brand new, how do I do the first fires?");
  expect(told.text).toMatch(/Day 1 and 2/);
  expect(told.text).not.toMatch(/Warm the flue, then the match test/);
  expect(told.text).toMatch(/After a long rest/);
  const rest = await talk.say("ana", "after a long rest");
  expect(rest.topic).toBe("first-fires");
  expect(rest.text).toMatch(/Warm the flue, then the match test/);
  expect(rest.text).not.toMatch(/Day 1 and 2/);
});
test("nobody's case named: all of them", async () => {
  const told = await talk.say("ana", "how do the first fires go?");
  expect(told.text).toMatch(/Day 1 and 2/);
  expect(told.text).toMatch(/Warm the flue, then the match test/);
});
