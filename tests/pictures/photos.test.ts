/** Photographs on their way out: in memory for a network, in a folder for a terminal, and gone from there with the picture or the person. */
import { mkdtemp, readdir, readFile, rm, stat } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { type Picture, verbatim } from "../../src/answer.ts";
import { PHOTO } from "../../src/pictures/photo-data.ts";
import { keptPhotos, sweeping, withPhotos } from "../../src/pictures/photos.ts";
import { reader } from "../adapters/words.ts";

const photo = (picture_id: string, person_id = "ana", name = "crack-2026-11-25-180000.jpg"): Picture => ({ chart: PHOTO, data: { picture_id, person_id, name }, alt: verbatim("A crack.") });
const drawing: Picture = { chart: "heat-curve", data: {}, alt: verbatim("Warm.") };
let folder: string;
let album: Map<string, Uint8Array>;
const fetch = async (picture_id: string, person_id: string) => {
  const bytes = album.get(`${person_id}/${picture_id}`);
  return bytes ? { media_type: "image/jpeg", bytes } : null;
};
const draw = async ({ chart }: Picture): Promise<string> => `/drawn/${chart}.png`;
beforeEach(async () => {
  folder = join(await mkdtemp(join(tmpdir(), "gleed-photos-")), "photos");
  album = new Map([["ana/1", new Uint8Array([1])], ["ana/2", new Uint8Array([2])], ["ben/3", new Uint8Array([3])]]);
});
afterEach(() => rm(join(folder, ".."), { recursive: true, force: true }));
const files = async (): Promise<string[]> => (await readdir(folder, { recursive: true })).filter((name) => name.endsWith(".jpg"));

test("for a network: the bytes, and nothing on the disk; null once it is deleted", async () => {
  const get = withPhotos(draw, fetch);
  expect(await get(photo("1"), reader)).toEqual({ name: "crack-2026-11-25-180000.jpg", media_type: "image/jpeg", bytes: new Uint8Array([1]) });
  expect(await get(photo("9"), reader)).toBeNull();
  expect(await get(photo("1", "ben"), reader)).toBeNull();
  expect(await get(drawing, reader)).toBe("/drawn/heat-curve.png");
});
test("for a terminal: files for the person's eyes only, two of one second apart, the same one in the same place", async () => {
  const kept = keptPhotos({ folder, draw, fetch });
  const [one, two, again, other] = [await kept.draw(photo("1"), reader), await kept.draw(photo("2"), reader), await kept.draw(photo("1"), reader), await kept.draw(photo("3", "ben"), reader)];
  expect(new Set([one, two, other]).size).toBe(3);
  expect(again).toBe(one);
  expect([...(await readFile(one ?? ""))]).toEqual([1]);
  expect((await stat(one ?? "")).mode & 0o077).toBe(0);
  expect(await kept.draw(drawing, reader)).toBe("/drawn/heat-curve.png");
});
test("a deleted picture's file goes, and all of somebody who is forgotten; the others stay", async () => {
  const kept = keptPhotos({ folder, draw, fetch });
  for (const one of [photo("1"), photo("2"), photo("3", "ben")]) await kept.draw(one, reader);
  album.delete("ana/1");
  await kept.sweep();
  expect(await files()).toHaveLength(2);
  album.delete("ana/2");
  const topics = ["help", "my-data"] as const;
  const left: number[] = [];
  for (const topic of topics) {
    await sweeping(async () => ({ answer: { topic } }) as never, keptPhotos({ folder, draw, fetch }))({} as never, 1);
    left.push((await files()).length);
  }
  expect(left).toEqual([2, 1]);
});
test("a file name is never taken from anybody's words", async () => {
  const kept = keptPhotos({ folder, draw, fetch });
  await expect(kept.draw(photo("1", "ana", "../../x.jpg"), reader)).rejects.toThrow();
});
