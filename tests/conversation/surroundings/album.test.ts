/** Pictures sent in a talk: kept with their date, never judged, and gone with whoever sent them. */
import { afterEach, beforeEach, expect, test } from "vitest";
import { tinyPng } from "../../album/tiny-png.ts";
import { openTalk, type Talk } from "../../support/talk.ts";

const picture = { name: "IMG_1.png", media_type: "image/png", bytes: new Uint8Array(tinyPng()) };

let talk: Talk;
beforeEach(async () => {
  talk = await openTalk();
  await talk.records("ana", { heater: { max_load_kg: 15 } });
});
afterEach(() => talk.close());

test("a crack: kept, not judged, the ruler asked for, and the tree of cracks begun", async () => {
  const said = await talk.say("ana", "new crack above the door", "private", { picture });
  expect(said.topic).toBe("cracks");
  expect(said.headline).toMatch(/Kept in your heater's album: a crack, 25 Nov 2026/);
  expect(said.text).toMatch(/nobody can tell from one whether a heater is safe/);
  expect(said.text).toMatch(/ruler beside the crack/);
  expect(said.cautions.map(({ id }) => id)).toEqual(expect.arrayContaining(["not-safe-by-chat", "cracked"]));
  expect(said.question).not.toBeNull();
  expect((await talk.say("ana", "show my pictures")).pictures).toMatchObject([{ alt: 'number 1, a crack, 25 Nov 2026. Your words: "new crack above the door"' }]);
});
test("a second one names the date of the first", async () => {
  await talk.say("ana", "crack", "private", { picture });
  await talk.advance("P10D");
  expect((await talk.say("ana", "the crack again", "private", { picture })).text).toMatch(/The one before is of 25 Nov 2026/);
});
test("without a word it is kept all the same; undo deletes it", async () => {
  expect((await talk.say("ana", "", "private", { picture })).headline).toMatch(/Kept in your heater's album, /);
  await talk.say("ana", "undo");
  expect((await talk.say("ana", "show my pictures")).headline).toMatch(/no picture/);
});
test("danger in the words goes before any picture", async () => {
  const said = await talk.say("ana", "look, the CO alarm is going off and I have a headache", "private", { picture });
  expect(said.emergency).toBe(true);
});
test("what is no picture, and pictures in a group, are not kept", async () => {
  expect((await talk.say("ana", "crack", "private", { picture: { ...picture, bytes: new Uint8Array(Buffer.from("<svg/>")) } })).headline).toMatch(/JPEG, PNG and WebP/);
  expect((await talk.say("ana", "crack", "valley", { picture })).headline).toMatch(/no pictures from a group/);
  expect((await talk.say("ana", "show my pictures")).headline).toMatch(/no picture/);
});
