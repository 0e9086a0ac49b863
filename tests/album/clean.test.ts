/** Pictures made here byte by byte, with secrets in every place where formats allow them; a decoder of its own sees the same picture after. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cleanPicture, MOST_BYTES } from "../../src/album/clean.ts";
import { chunk, END as PNG_END, HEADER, PIXELS, SIGNATURE, tinyPng } from "./tiny-png.ts";

const SECRET = "60.1699N 24.9384E camera-7781";
const ascii = (words: string): Buffer => Buffer.from(words, "latin1");
const has = (bytes: Uint8Array, words: string): boolean => Buffer.from(bytes).includes(words);

const png = Buffer.concat([
  SIGNATURE, HEADER, chunk("tEXt", ascii(`Author\0${SECRET}`)), chunk("eXIf", ascii(SECRET)), chunk("iTXt", ascii(SECRET)), chunk("tIME", ascii("1234567")), chunk("prVt", ascii(SECRET)),
  PIXELS, chunk("zTXt", ascii(SECRET)), PNG_END, ascii(`after the end ${SECRET}`),
]);

const segment = (marker: number, data: Buffer): Buffer => Buffer.concat([Buffer.from([0xff, marker, (data.length + 2) >> 8, (data.length + 2) & 255]), data]);
const JFIF = segment(0xe0, Buffer.concat([ascii("JFIF\0"), Buffer.from([1, 1, 0, 0, 1, 0, 1, 1, 1]), ascii("abc")]));
const frame = segment(0xc0, Buffer.from([8, 0, 1, 0, 1, 1, 1, 0x11, 0]));
const tables = segment(0xdb, Buffer.alloc(65, 1));
const huffman = segment(0xc4, Buffer.alloc(19, 1));
const scan = Buffer.concat([segment(0xda, Buffer.from([1, 1, 0, 0, 63, 0])), Buffer.from([0x12, 0xff, 0x00, 0x34, 0xff, 0xd0, 0x56])]);
const jpegOf = (...parts: Buffer[]): Buffer => Buffer.concat([Buffer.from([0xff, 0xd8]), ...parts]);
const END = Buffer.from([0xff, 0xd9]);
const jpeg = jpegOf(
  JFIF, segment(0xe1, ascii(`Exif\0\0${SECRET}`)), segment(0xe1, ascii(`http://ns.adobe.com/xap/1.0/\0${SECRET}`)), segment(0xe2, ascii(`ICC_PROFILE\0${SECRET}`)), segment(0xed, ascii(`Photoshop 3.0\0${SECRET}`)),
  segment(0xee, ascii("Adobe\0\0\0\0\0\0\x01")), segment(0xfe, ascii(SECRET)), tables, frame, huffman, scan, segment(0xfe, ascii(SECRET)), scan, END, ascii(`a second picture ${SECRET}`),
);

const riff = (...chunks: [string, Buffer][]): Buffer => {
  const body = Buffer.concat([ascii("WEBP"), ...chunks.flatMap(([name, data]) => {
    const size = Buffer.alloc(4);
    size.writeUInt32LE(data.length);
    return [ascii(name), size, data, Buffer.alloc(data.length % 2)];
  })]);
  const size = Buffer.alloc(4);
  size.writeUInt32LE(body.length);
  return Buffer.concat([ascii("RIFF"), size, body]);
};
const webp = riff(["VP8X", Buffer.from([0x3c, 0, 0, 0, 1, 0, 0, 1, 0, 0])], ["ICCP", ascii(SECRET)], ["ALPH", ascii("aaa")], ["VP8 ", ascii("picture")], ["EXIF", ascii(SECRET)], ["XMP ", ascii(SECRET)], ["HIDE", ascii(SECRET)]);

describe("metadata goes, the picture stays", () => {
  test.each([["image/png", png], ["image/jpeg", jpeg], ["image/webp", webp]] as const)("%s", (media_type, bytes) => {
    expect(has(bytes, SECRET)).toBe(true);
    const cleaned = cleanPicture(bytes);
    if (!cleaned.ok) throw new Error(cleaned.why);
    expect(cleaned.media_type).toBe(media_type);
    expect(has(cleaned.bytes, SECRET)).toBe(false);
    expect(has(cleaned.bytes, "camera")).toBe(false);
    // cleaning what is clean changes nothing
    expect(cleanPicture(cleaned.bytes)).toEqual(cleaned);
  });
  test("png: exactly header, pixels and end are left", () => {
    const cleaned = cleanPicture(png);
    expect(cleaned.ok && Buffer.from(cleaned.bytes).equals(tinyPng())).toBe(true);
  });
  test("jpeg: tables, frame and every scan, byte for byte; the colour note of APP14 stays, a thumbnail does not", () => {
    const cleaned = cleanPicture(jpeg);
    if (!cleaned.ok) throw new Error(cleaned.why);
    const bare = segment(0xe0, Buffer.concat([ascii("JFIF\0"), Buffer.from([1, 1, 0, 0, 1, 0, 1, 0, 0])]));
    expect(Buffer.from(cleaned.bytes).equals(jpegOf(bare, segment(0xee, ascii("Adobe\0\0\0\0\0\0\x01")), tables, frame, huffman, scan, scan, END))).toBe(true);
  });
  test("webp: size told anew, flags of profile, Exif and XMP off, transparency on", () => {
    const cleaned = cleanPicture(webp);
    expect(cleaned.ok && Buffer.from(cleaned.bytes).equals(riff(["VP8X", Buffer.from([0x10, 0, 0, 0, 1, 0, 0, 1, 0, 0])], ["ALPH", ascii("aaa")], ["VP8 ", ascii("picture")]))).toBe(true);
  });
});

describe("what is not kept", () => {
  test.each([
    ["a page", ascii("<html><script>alert(1)</script>"), "not-a-picture"],
    ["a GIF", ascii("GIF89a..........."), "not-a-picture"],
    ["an SVG", ascii("<svg xmlns='http://www.w3.org/2000/svg'/>"), "not-a-picture"],
    ["nothing", Buffer.alloc(0), "not-a-picture"],
    ["more than 8 MB", Buffer.concat([png, Buffer.alloc(MOST_BYTES)]), "too-large"],
    ["a PNG without pixels", Buffer.concat([SIGNATURE, HEADER, PNG_END]), "broken"],
    ["a PNG cut off", png.subarray(0, 60), "broken"],
    ["a JPEG without a scan", jpegOf(JFIF, tables, END), "broken"],
    ["a moving WebP", riff(["VP8X", Buffer.from([2, 0, 0, 0, 1, 0, 0, 1, 0, 0])], ["ANIM", ascii("aaaaaa")], ["ANMF", ascii("frame")]), "broken"],
  ])("%s", (_, bytes, why) => {
    expect(cleanPicture(bytes)).toEqual({ ok: false, why });
  });
  test("no bytes, however cut or changed, crash it or let a secret through", () => {
    fc.assert(
      fc.property(fc.constantFrom(png, jpeg, webp), fc.nat(600), fc.array(fc.tuple(fc.nat(600), fc.nat(255)), { maxLength: 6 }), (from, cut, changes) => {
        const bytes = Buffer.from(from.subarray(0, Math.max(12, from.length - cut)));
        for (const [at, byte] of changes) if (at < bytes.length) bytes[at] = byte;
        const cleaned = cleanPicture(bytes);
        if (cleaned.ok) expect(cleaned.bytes.length).toBeLessThanOrEqual(bytes.length + 2);
      }),
      { numRuns: 2000, seed: 3 },
    );
  });
  test("8 MB take no time to speak of", () => {
    const big = jpegOf(tables, frame, huffman, scan, Buffer.alloc(7 * 1024 * 1024, 0x55), END);
    const started = performance.now();
    expect(cleanPicture(big).ok).toBe(true);
    expect(performance.now() - started).toBeLessThan(1000);
  });
});
