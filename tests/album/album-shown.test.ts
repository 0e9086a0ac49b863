/** The album sent back in a talk: newest first, by number, side by side, deleted after one question; alone, or where nobody else sees it. */
import { afterAll, beforeAll, expect, test } from "vitest";
import { openTalk, type Talk } from "../support/talk.ts";
import { tinyPng } from "./tiny-png.ts";

const picture = { name: "IMG_1.png", media_type: "image/png", bytes: new Uint8Array(tinyPng()) };
let talk: Talk;
const send = (words: string) => talk.say("ana", words, "private", { picture });
beforeAll(async () => {
  talk = await openTalk();
  await talk.records("ana", { heater: { max_load_kg: 15 } });
  await send("new crack above the door, 0.4 mm wide");
  await talk.advance("P20D");
  await send("black glass");
  await talk.advance("P20D");
  await send("crack above the door");
  await talk.say("ana", "0.9 mm wide");
  await talk.advance("P1D");
  await send("soot at the cleanout");
}, 60_000);
afterAll(() => talk.close());

test("the newest three as pictures with their words, the rest in a table, and the number picks", async () => {
  const shown = await talk.say("ana", "show my album");
  expect(shown.headline).toBe("4 pictures in your heater's album, newest first.");
  expect(shown.pictures.map(({ alt }) => alt)).toEqual([
    'number 1, soot, 5 Jan 2027. Your words: "soot at the cleanout"', 'number 2, a crack, 4 Jan 2027, 0.9 mm wide. Your words: "crack above the door"', 'number 3, the glass, 15 Dec 2026. Your words: "black glass"',
  ]);
  expect(shown.text).toContain("4 | 25 Nov 2026 | a crack | 0.4 mm | new crack above the door, 0.4 mm wide");
  expect((await talk.say("ana", "4")).headline).toBe("Picture 4: a crack, 25 Nov 2026");
  expect((await talk.choose("ana", "album:from:all:3")).pictures).toHaveLength(1);
  expect((await talk.say("ana", "show picture 9")).headline).toBe("There is no picture 9. The album holds 4, numbered from the newest.");
  const cracks = await talk.say("ana", "show the crack pictures");
  expect([cracks.headline, cracks.pictures.length]).toEqual(["2 pictures of cracks, newest first.", 2]);
});
test("oldest and newest of a spot side by side: dates, widths, what was measured, and no verdict", async () => {
  const side = await talk.say("ana", "compare the crack");
  expect(side.text).toContain("4 | 25 Nov 2026 | a crack | 0.4 mm");
  expect(side.text).toContain("2 | 4 Jan 2027 | a crack | 0.9 mm");
  expect(side.text).toContain("it grew by 0.5 mm in 40 days");
  expect(side.text).toMatch(/nobody can tell from two whether a heater is safe/);
  expect(side.cautions.map(({ id }) => id)).toEqual(expect.arrayContaining(["not-safe-by-chat", "cracked"]));
  expect(side.pictures.map(({ alt }) => alt.slice(0, 8))).toEqual(["number 4", "number 2"]);
  expect((await talk.say("ana", "compare the crack below the bench")).headline).toMatch(/No picture says "below the bench"/);
  expect((await talk.say("ana", "compare the soot")).headline).toBe("There is only one picture of it, of 5 Jan 2027.");
});
test("in German", async () => {
  expect((await talk.say("ana", "zeig mir die Rissbilder")).headline).toMatch(/^2 Bilder von Rissen/);
  expect((await talk.say("ana", "zeig mir bitte Bild 3")).headline).toMatch(/^Bild 3: die Scheibe/);
  expect((await talk.say("ana", "vergleiche den Riss bitte")).text).toContain("um 0,5 mm gewachsen");
  expect((await talk.say("ana", "lösch bitte das Bild 3")).headline).toMatch(/^Löschen\? Bild 3/);
  expect((await talk.say("ana", "nein")).headline).toBe("Das Bild bleibt.");
  await talk.say("ana", "speak English");
});
test("an open question takes no picture's number for an answer", async () => {
  const walked = await send("another crack below the bench");
  expect(walked.question).not.toBeNull();
  expect((await talk.say("ana", "show picture 3")).headline).toMatch(/^Picture 3: a crack/);
  const asked = await talk.say("ana", "compare the crack");
  expect(asked.choices.map(({ label }) => label)).toEqual(["below the bench", "above the door"]);
  expect((await talk.choose("ana", asked.choices[1]?.id ?? "")).text).toContain("it grew by 0.5 mm");
});
test("seen in a group by nobody else, or not at all", async () => {
  expect((await talk.say("ana", "show picture 1", "valley", { whispers: false })).headline).toMatch(/for you alone/);
  expect((await talk.choose("ana", "album:from:all:0", "valley", { whispers: false })).pictures).toEqual([]);
  expect((await talk.say("ana", "show picture 1", "valley")).audience).toBe("person");
});
test("one is deleted after one question, for good; another's is not", async () => {
  const asked = await talk.say("ana", "delete picture 1");
  expect(asked.headline).toMatch(/^Delete it\? Picture 1: a crack/);
  expect(asked.text).toMatch(/cannot be brought back/);
  expect((await talk.say("ana", "no")).headline).toBe("The picture stays.");
  await talk.say("ana", "delete picture 1");
  expect((await talk.say("ana", "yes")).headline).toBe("Deleted: a crack, 5 Jan 2027.");
  expect((await talk.say("ana", "undo")).headline).toMatch(/nothing to undo|nothing/i);
  expect((await talk.say("ana", "show my album")).headline).toMatch(/^4 pictures/);
  expect((await talk.choose("ana", asked.choices[0]?.id ?? "")).headline).toBe("That picture is no longer in the album.");
  expect((await talk.say("ana", "delete all my pictures")).text).toMatch(/one at a time/);
  expect((await talk.say("ben", "show picture 1")).headline).toMatch(/no picture in your heater's album/);
});
test("what could not be had is told, and the words beside it are answered all the same", async () => {
  const late = await talk.say("ana", "my glass is black at the bottom", "private", { picture: { ...picture, bytes: new Uint8Array(9 * 1024 * 1024) } });
  expect([late.topic, late.headline]).toEqual(["black-glass", "The picture was not kept - it is larger than 8 MB. Send a smaller one."]);
  expect(late.question ?? late.causes).toBeTruthy();
  expect((await talk.say("ana", "", "private", { picture_missing: "not-fetched" })).headline).toMatch(/could not fetch it/);
  expect((await talk.say("ana", "show my album")).headline).toMatch(/^4 pictures/);
});
