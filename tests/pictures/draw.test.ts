/** Drawing in its own thread, and the folder of drawn pictures. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { fileFor } from "../../src/pictures/album.ts";
import { pictureOf } from "../../src/pictures/charts.ts";
import { draw, NotDrawn, stopDrawing } from "../../src/pictures/draw.ts";
import { SCALE, WIDTH_PX } from "../../src/pictures/look.ts";
import type { Reader } from "../../src/text/render.ts";
import { NAMES, SAMPLES } from "./charts.ts";

const reader: Reader = { locale: "en-GB", system: "metric", timezone: "UTC" };
const folder = mkdtempSync(join(tmpdir(), "album-"));
const PATIENT_MS = 60_000;
afterAll(async () => {
  await stopDrawing();
  rmSync(folder, { recursive: true, force: true });
});
const sizeOf = (png: Uint8Array) => {
  const bytes = Buffer.from(png);
  return { signature: bytes.toString("latin1", 1, 4), width: bytes.readUInt32BE(16), height: bytes.readUInt32BE(20) };
};

it.each(NAMES)("draws %s as a PNG of twice the width of a phone", async (name) => {
  const png = await draw(pictureOf(name, SAMPLES[name] as never), reader, PATIENT_MS);
  const { signature, width, height } = sizeOf(png);
  expect(signature).toBe("PNG");
  expect(width).toBe(WIDTH_PX * SCALE);
  expect(height).toBeGreaterThan(400);
  expect(png.length).toBeGreaterThan(8_000);
  expect(png.length).toBeLessThan(120_000);
}, PATIENT_MS);

it("says plainly what it cannot draw, and draws the next all the same", async () => {
  await expect(draw({ chart: "pie", data: {} }, reader)).rejects.toThrow(/"pie" is not a chart/);
  await expect(draw({ chart: "season", data: { weeks: [] } }, reader)).rejects.toBeInstanceOf(NotDrawn);
  await expect(draw(pictureOf("season", SAMPLES.season), reader, 0)).rejects.toThrow(/no picture within/);
  expect(sizeOf(await draw(pictureOf("season", SAMPLES.season), reader, PATIENT_MS)).width).toBe(WIDTH_PX * SCALE);
}, PATIENT_MS);

it("draws the same picture for the same kind of reader once", async () => {
  const picture = pictureOf("season", SAMPLES.season);
  const first = await fileFor(picture, reader, folder);
  const bytes = readFileSync(first);
  expect(await fileFor(picture, reader, folder)).toBe(first);
  expect(readFileSync(first).equals(bytes)).toBe(true);
  const us = await fileFor(picture, { ...reader, system: "us" }, folder);
  expect(us).not.toBe(first);
  expect(readdirSync(folder).sort()).toEqual([first, us].map((file) => file.slice(folder.length + 1)).sort());
}, PATIENT_MS);
