/** Pictures through lines: a file with its words, and gone from the disk with the picture and with the person. */
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { tinyPng } from "../album/tiny-png.ts";
import { openTalk } from "../support/talk.ts";
import { startLines } from "./process.ts";

const folder = mkdtempSync(join(tmpdir(), "gleed-lines-album-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const NOW = "2026-11-25T18:00:00Z";

test("alt and file; deleting and forgetting take the files along", async () => {
  const database = join(folder, "g.sqlite");
  const talk = await openTalk({ database, now: NOW });
  const picture = { name: "a.png", media_type: "image/png", bytes: new Uint8Array(tinyPng()) };
  await talk.say("ana", "crack above the door, 0.5 mm wide", "private", { picture });
  await talk.advance("PT1H");
  await talk.say("ana", "black glass", "private", { picture });
  await talk.close();
  const lines = startLines({ GLEED_DATABASE: database, XDG_DATA_HOME: folder, GLEED_NOW: NOW, GLEED_LOCALE: "en-GB", GLEED_TIMEZONE: "UTC" });
  const say = async (text: string) => (await lines.ask({ person: "ana", room: "private", text })).value.answers[0];
  try {
    const { pictures } = await say("show my album") as { pictures: { alt: string; file: string }[] };
    expect(pictures.map(({ alt }) => alt)).toEqual([expect.stringMatching(/^number 1, the glass, 25 Nov 2026/), 'number 2, a crack, 25 Nov 2026, 0.5 mm wide. Your words: "crack above the door, 0.5 mm wide"']);
    expect(pictures.map(({ file }) => readFileSync(file).equals(tinyPng()))).toEqual([true, true]);
    const there = (): boolean[] => pictures.map(({ file }) => existsSync(file));
    await say("delete picture 1");
    expect((await say("yes")).headline).toMatch(/^Deleted: the glass/);
    expect(there()).toEqual([false, true]);
    await lines.ask({ person: "ana", room: "private", choose: "data:delete-yes" });
    expect(there()).toEqual([false, false]);
    expect((await say("show my album")).headline).toMatch(/no picture/);
  } finally {
    await lines.end();
  }
}, 60_000);
