/** A picture's file typed or dropped into the terminal. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { pictureNamed, readPicture } from "../../../adapters/terminal/picture.ts";
import { tinyPng } from "../../album/tiny-png.ts";

const folder = mkdtempSync(join(tmpdir(), "gleed-dropped-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test.each([
  ["/home/ana/crack.jpg", { file: "/home/ana/crack.jpg", words: "" }],
  ["~/crack.JPG above the door, 0.5 mm", { file: "/home/ana/crack.JPG", words: "above the door, 0.5 mm" }],
  ["'/home/ana/my heater/crack one.png'  new crack", { file: "/home/ana/my heater/crack one.png", words: "new crack" }],
  ["/home/ana/my\\ heater/glass.webp black", { file: "/home/ana/my heater/glass.webp", words: "black" }],
  ["file:///home/ana/a%20b.jpeg", { file: "/home/ana/a b.jpeg", words: "" }],
])("%s", (line, named) => {
  expect(pictureNamed(line, "/home/ana")).toEqual(named);
});
test.each(["why is my glass black?", "/help", "crack.jpg is what I sent", "12/11 lit at 6", "~/notes.txt", "'tis cold"])("not: %s", (line) => {
  expect(pictureNamed(line, "/home/ana")).toBeNull();
});
test("its bytes; too large and missing are told apart", async () => {
  const file = join(folder, "a.png");
  writeFileSync(file, tinyPng());
  const big = join(folder, "b.png");
  writeFileSync(big, Buffer.alloc(8 * 1024 * 1024 + 1));
  expect(await readPicture({ file, words: "" })).toMatchObject({ picture: { name: "a.png", bytes: new Uint8Array(tinyPng()) } });
  expect(await readPicture({ file: big, words: "" })).toEqual({ picture_missing: "too-large" });
  expect(await readPicture({ file: join(folder, "c.png"), words: "" })).toEqual({ picture_missing: "not-fetched" });
});
