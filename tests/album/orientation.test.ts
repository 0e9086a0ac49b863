/**
 * Which way up a picture is: kept through the cleaning for all eight turns (CIPA DC-008, tag 0x0112), and of the metadata nothing else.
 * The bytes are made here, and read again by a reader that finds the tag by walking the file itself.
 */
import { crc32 } from "node:zlib";
import { describe, expect, test } from "vitest";
import { cleanPicture } from "../../src/album/clean.ts";
import { orientationIn } from "../../src/album/orientation.ts";
import { chunk, END as PNG_END, HEADER, PIXELS, SIGNATURE, tinyPng } from "./tiny-png.ts";

const ascii = (words: string): Buffer => Buffer.from(words, "latin1");
const SECRETS = ["Lenswright", "SN-7781-4402", "2026:11:25 18:03:11", "N60.1699", "THUMBNAIL-PIXELS", "xmp:CreatorTool", "a comment of mine", "Ana at home"];

type Entry = readonly [tag: number, type: number, count: number, value: number | Buffer];

/** TIFF as a camera writes it: maker, serial number, GPS directory, a second directory with a thumbnail. */
function camera(orientation: number | null, little: boolean, { at = "last", type = 3 }: { at?: "first" | "last"; type?: number } = {}): Buffer {
  const turned: Entry[] = orientation === null ? [] : [[0x0112, type, 1, orientation]];
  const others: Entry[] = [
    [0x010f, 2, 11, ascii("Lenswright\0")], [0xa431, 2, 13, ascii("SN-7781-4402\0")], [0x0132, 2, 20, ascii("2026:11:25 18:03:11\0")], [0x8825, 4, 1, 0], [0x9286, 2, 12, ascii("Ana at home\0")],
  ];
  const entries = at === "first" ? [...turned, ...others] : [...others, ...turned];
  const tail: Buffer[] = [];
  const size = 8 + 2 + 12 * entries.length + 4;
  let free = size;
  const directory = Buffer.alloc(2 + 12 * entries.length + 4);
  const u16 = (value: number, place: number): unknown => (little ? directory.writeUInt16LE(value, place) : directory.writeUInt16BE(value, place));
  const u32 = (value: number, place: number): unknown => (little ? directory.writeUInt32LE(value, place) : directory.writeUInt32BE(value, place));
  u16(entries.length, 0);
  for (const [n, [tag, kind, count, value]] of entries.entries()) {
    const place = 2 + 12 * n;
    u16(tag, place);
    u16(kind, place + 2);
    u32(count, place + 4);
    if (typeof value !== "number") {
      u32(free, place + 8);
      tail.push(value);
      free += value.length;
    } else if (kind === 3) u16(value, place + 8);
    else u32(value, place + 8);
  }
  u32(free, directory.length - 4);
  const header = little ? Buffer.from([0x49, 0x49, 42, 0, 8, 0, 0, 0]) : Buffer.from([0x4d, 0x4d, 0, 42, 0, 0, 0, 8]);
  return Buffer.concat([header, directory, ...tail, ascii("N60.1699 E24.9384 THUMBNAIL-PIXELS")]);
}

const segment = (marker: number, data: Buffer): Buffer => Buffer.concat([Buffer.from([0xff, marker, (data.length + 2) >> 8, (data.length + 2) & 255]), data]);
const JFIF = segment(0xe0, Buffer.concat([ascii("JFIF\0"), Buffer.from([1, 1, 0, 0, 1, 0, 1, 0, 0])]));
const body = Buffer.concat([
  segment(0xdb, Buffer.alloc(65, 1)), segment(0xc0, Buffer.from([8, 0, 1, 0, 1, 1, 1, 0x11, 0])), segment(0xc4, Buffer.alloc(19, 1)),
  segment(0xda, Buffer.from([1, 1, 0, 0, 63, 0])), Buffer.from([0x12, 0xff, 0x00, 0x34]),
]);
const jpeg = (exif: Buffer | null, { jfif = true } = {}): Buffer =>
  Buffer.concat([
    Buffer.from([0xff, 0xd8]), ...(jfif ? [JFIF] : []), ...(exif ? [segment(0xe1, Buffer.concat([ascii("Exif\0\0"), exif]))] : []),
    segment(0xe1, ascii("http://ns.adobe.com/xap/1.0/\0<x xmp:CreatorTool='Lenswright'/>")), segment(0xfe, ascii("a comment of mine")), body, Buffer.from([0xff, 0xd9]),
  ]);
const png = (exif: Buffer): Buffer =>
  Buffer.concat([SIGNATURE, HEADER, chunk("eXIf", exif), chunk("tEXt", ascii("Comment\0a comment of mine")), chunk("iTXt", ascii("XML:com.adobe.xmp\0\0\0\0\0xmp:CreatorTool")), PIXELS, PNG_END]);
const riffChunk = (name: string, data: Buffer): Buffer => {
  const size = Buffer.alloc(4);
  size.writeUInt32LE(data.length);
  return Buffer.concat([ascii(name), size, data, Buffer.alloc(data.length % 2)]);
};
const webp = (exif: Buffer): Buffer => {
  const whole = Buffer.concat([ascii("WEBP"), riffChunk("VP8X", Buffer.from([0x0c, 0, 0, 0, 1, 0, 0, 1, 0, 0])), riffChunk("VP8 ", ascii("picture")), riffChunk("EXIF", exif), riffChunk("XMP ", ascii("xmp:CreatorTool a comment of mine"))]);
  const size = Buffer.alloc(4);
  size.writeUInt32LE(whole.length);
  return Buffer.concat([ascii("RIFF"), size, whole]);
};

const cleaned = (bytes: Buffer): Buffer => {
  const done = cleanPicture(bytes);
  if (!done.ok) throw new Error(done.why);
  return Buffer.from(done.bytes);
};
/** All metadata blocks that stand in a file, found by its own framing. */
function blocksOf(bytes: Buffer): Buffer[] {
  const found: Buffer[] = [];
  if (bytes[0] === 0xff) {
    for (let at = 2; bytes[at + 1] !== 0xda; at += 2 + bytes.readUInt16BE(at + 2)) if (bytes[at + 1] === 0xe1) found.push(bytes.subarray(at + 4, at + 2 + bytes.readUInt16BE(at + 2)));
  } else if (bytes[0] === 0x89) {
    for (let at = 8; at < bytes.length; at += 12 + bytes.readUInt32BE(at)) {
      const end = at + 8 + bytes.readUInt32BE(at);
      expect(bytes.readUInt32BE(end), "checksum of each chunk").toBe(crc32(bytes.subarray(at + 4, end)));
      if (bytes.toString("latin1", at + 4, at + 8) === "eXIf") found.push(bytes.subarray(at + 8, end));
    }
  } else {
    expect(bytes.readUInt32LE(4), "size of the whole").toBe(bytes.length - 8);
    for (let at = 12; at < bytes.length; at += 8 + bytes.readUInt32LE(at + 4) + (bytes.readUInt32LE(at + 4) % 2)) if (bytes.toString("latin1", at, at + 4) === "EXIF") found.push(bytes.subarray(at + 8, at + 8 + bytes.readUInt32LE(at + 4)));
  }
  return found;
}
/** What the standard asks for, byte by byte: big-endian, one directory, one entry, no next directory. */
const only = (turned: number): Buffer => Buffer.from([0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, turned, 0, 0, 0, 0, 0, 0]);

describe.each([2, 3, 4, 5, 6, 7, 8])("turned %i", (turned) => {
  test.each([["little", true], ["big", false]] as const)("%s-endian, in every format", (_, little) => {
    for (const [bytes, intro] of [[jpeg(camera(turned, little)), "Exif\0\0"], [png(camera(turned, little)), ""], [webp(camera(turned, little)), ""]] as const) {
      expect(SECRETS.some((secret) => bytes.includes(secret))).toBe(true);
      const clean = cleaned(bytes);
      expect(blocksOf(clean)).toEqual([Buffer.concat([ascii(intro), only(turned)])]);
      expect(SECRETS.filter((secret) => clean.includes(secret))).toEqual([]);
      expect(cleaned(clean)).toEqual(clean);
    }
  });
});

test("upright needs no note; none is made up where there was none", () => {
  for (const bytes of [jpeg(camera(1, true)), jpeg(camera(null, true)), jpeg(null), png(camera(1, false)), webp(camera(1, true))]) expect(blocksOf(cleaned(bytes))).toEqual([]);
  expect(cleaned(png(camera(1, true)))).toEqual(tinyPng());
});
test("behind the JFIF header where there is one, first where there is none; the picture itself is untouched", () => {
  const note = segment(0xe1, Buffer.concat([ascii("Exif\0\0"), only(6)]));
  expect(cleaned(jpeg(camera(6, true)))).toEqual(Buffer.concat([Buffer.from([0xff, 0xd8]), JFIF, note, body, Buffer.from([0xff, 0xd9])]));
  expect(cleaned(jpeg(camera(6, true), { jfif: false }))).toEqual(Buffer.concat([Buffer.from([0xff, 0xd8]), note, body, Buffer.from([0xff, 0xd9])]));
});
test("webp says that it has Exif, and nothing else of what it had", () => {
  expect(cleaned(webp(camera(8, true))).readUInt8(20)).toBe(0x08);
});
test.each([
  ["nine", camera(9, true)], ["nought", camera(0, true)], ["another type", camera(6, true, { type: 4 })], ["cut off", camera(6, true).subarray(0, 40)], ["no TIFF", ascii("something else entirely")],
  ["a directory beyond the end", Buffer.from([0x49, 0x49, 42, 0, 0xff, 0xff, 0xff, 0x7f])], ["nothing", Buffer.alloc(0)],
])("what cannot be read counts as upright: %s", (_, block) => {
  expect(orientationIn(block)).toBe(1);
});
test("wherever the tag stands", () => {
  expect([orientationIn(camera(6, true, { at: "first" })), orientationIn(camera(6, false, { at: "last" }))]).toEqual([6, 6]);
});
