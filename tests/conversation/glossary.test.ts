/** Words of the trade are explained when asked for, and everything else goes its usual way. */
import { afterAll, beforeAll, expect, it } from "vitest";
import { openTalk } from "../support/talk.ts";

let talk: Awaited<ReturnType<typeof openTalk>>;
beforeAll(async () => { talk = await openTalk(); });
afterAll(() => talk.close());

it.each([
  ["what is a bypass?", "Bypass", []],
  ["What's a masonry heater", "Masonry heater", []],
  ["what does dry basis mean?", "Dry basis", []],
  ["explain creosote", "Creosote", ["tar"]],
  ["what is a damper", "Flue damper", ["close-flue"]],
  ["what are degree days?", "Degree day", []],
])("%s", async (asked, title, cautions) => {
  const answer = await talk.say("ana", asked);
  expect(answer.headline).toBe(title);
  expect(answer.cautions.map(({ id }) => id)).toEqual(expect.arrayContaining([...cautions]));
});

it.each([["what is the draught at -10 with 6 m of flue?", "draught"], ["do i need a co alarm", "co-alarm"], ["what is the weather", "out-of-scope"]])("%s is no word to explain", async (asked, topic) => {
  const answer = await talk.say("ben", asked);
  expect(answer.topic).toBe(topic);
});
