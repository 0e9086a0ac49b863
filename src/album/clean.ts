/**
 * A still picture without anything that tells where, when, by whom or with what it was taken: only what is needed to show it is kept, by an
 * allow-list. Nothing is decoded, so the picture itself is untouched. Of the notes only which way up it is to be shown stays, written anew.
 * Formats: JPEG (ITU-T T.81), PNG (W3C PNG third edition), WebP (RFC 9649).
 */
import { crc32 } from "node:zlib";
import { asApp1, isExif, orientationBlock, orientationIn, UPRIGHT } from "./orientation.ts";

export type PictureType = "image/jpeg" | "image/png" | "image/webp";
export type Cleaned =
  | { readonly ok: true; readonly media_type: PictureType; readonly bytes: Uint8Array }
  | { readonly ok: false; readonly why: "too-large" | "not-a-picture" | "broken" };

export const MOST_BYTES = 8 * 1024 * 1024;

/** What a picture is, is read from its bytes; what the sender calls it counts for nothing. */
export function cleanPicture(bytes: Uint8Array): Cleaned {
  if (bytes.length > MOST_BYTES) return { ok: false, why: "too-large" };
  const media_type = typeOf(bytes);
  if (!media_type) return { ok: false, why: "not-a-picture" };
  const kept = { "image/jpeg": jpeg, "image/png": png, "image/webp": webp }[media_type](bytes);
  return kept ? { ok: true, media_type, bytes: kept } : { ok: false, why: "broken" };
}

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const starts = (bytes: Uint8Array, with_: readonly number[], at = 0): boolean => with_.every((byte, i) => bytes[at + i] === byte);
const ascii = (words: string): number[] => [...words].map((letter) => letter.charCodeAt(0));
const fourCC = (bytes: Uint8Array, at: number): string => String.fromCharCode(...bytes.subarray(at, at + 4));

function typeOf(bytes: Uint8Array): PictureType | null {
  if (starts(bytes, [0xff, 0xd8, 0xff])) return "image/jpeg";
  if (starts(bytes, PNG)) return "image/png";
  return starts(bytes, ascii("RIFF")) && starts(bytes, ascii("WEBP"), 8) ? "image/webp" : null;
}

const joined = (parts: readonly Uint8Array[]): Uint8Array => {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
};

const SOI = 0xd8;
const EOI = 0xd9;
const SOS = 0xda;
const APP0 = 0xe0;
const APP1 = 0xe1;
/** Tables and frames: SOF0 to SOF15 with DHT (C4) and DAC (CC), DQT, DNL, DRI, DHP, EXP. */
const SHOWS = (marker: number): boolean => (marker >= 0xc0 && marker <= 0xcf && marker !== 0xc8) || (marker >= 0xdb && marker <= 0xdf);
const ADOBE = ascii("Adobe");
const JFIF = ascii("JFIF\0");

function jpeg(bytes: Uint8Array): Uint8Array | null {
  const kept: Uint8Array[] = [bytes.subarray(0, 2)];
  let at = 2;
  let shown = false;
  let turned = UPRIGHT;
  while (at + 1 < bytes.length) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === EOI) return shown ? whole(kept, turned) : null;
    if (marker === SOI || marker < 0xc0) return null;
    const length = ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0);
    const next = at + 2 + length;
    if (length < 2 || next > bytes.length) return null;
    const segment = bytes.subarray(at, next);
    if (SHOWS(marker) || marker === SOS || (marker === 0xee && starts(segment, ADOBE, 4))) kept.push(segment);
    else if (marker === APP1 && !shown && turned === UPRIGHT && isExif(segment.subarray(4))) turned = orientationIn(segment.subarray(4));
    else if (marker === APP0 && starts(segment, JFIF, 4) && length >= 16) kept.push(withoutThumbnail(segment));
    at = next;
    if (marker === SOS) {
      const end = scanEnd(bytes, at);
      kept.push(bytes.subarray(at, end));
      at = end;
      shown = true;
    }
  }
  // cut off in transit: what came of the picture is shown, and properly ended
  return shown ? whole(kept, turned) : null;
}

/** With its end, and its orientation behind the JFIF header, which comes first where there is one. */
function whole([soi = new Uint8Array(), ...segments]: readonly Uint8Array[], turned: number): Uint8Array {
  const head = segments.findIndex((segment) => segment[1] !== APP0);
  const note = turned === UPRIGHT ? [] : [app1(asApp1(orientationBlock(turned)))];
  return joined([soi, ...segments.slice(0, head), ...note, ...segments.slice(head), new Uint8Array([0xff, EOI])]);
}
const app1 = (data: Uint8Array): Uint8Array => new Uint8Array([0xff, APP1, (data.length + 2) >> 8, (data.length + 2) & 0xff, ...data]);

/** JFIF header with the size of its thumbnail, and the thumbnail, set to none. */
function withoutThumbnail(segment: Uint8Array): Uint8Array {
  const header = new Uint8Array(segment.subarray(0, 18));
  header.set([0, 16], 2);
  header.set([0, 0], 16);
  return header;
}

/** First marker after coded data: FF that is neither stuffed (00) nor a restart (D0 to D7). */
function scanEnd(bytes: Uint8Array, from: number): number {
  for (let at = from; at + 1 < bytes.length; at += 1) {
    if (bytes[at] !== 0xff) continue;
    const next = bytes[at + 1] ?? 0;
    if (next !== 0 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  return bytes.length;
}

/** Size and pixels, palette, transparency, and the colour space where it takes no text. */
const PNG_KEPT = new Set(["IHDR", "PLTE", "IDAT", "IEND", "tRNS", "gAMA", "cHRM", "sRGB", "sBIT"]);

function png(bytes: Uint8Array): Uint8Array | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const kept: Uint8Array[] = [bytes.subarray(0, 8)];
  let data = 0;
  let turned = UPRIGHT;
  for (let at = 8; at + 12 <= bytes.length; ) {
    const next = at + 12 + view.getUint32(at);
    const name = fourCC(bytes, at + 4);
    if (next > bytes.length || (at === 8 && name !== "IHDR")) return null;
    if (name === "IDAT" && data === 0) data = kept.length;
    if (name === "eXIf" && turned === UPRIGHT) turned = orientationIn(bytes.subarray(at + 8, next - 4));
    if (PNG_KEPT.has(name)) kept.push(bytes.subarray(at, next));
    if (name === "IEND") return data === 0 ? null : joined([...kept.slice(0, data), ...(turned === UPRIGHT ? [] : [pngChunk("eXIf", orientationBlock(turned))]), ...kept.slice(data)]);
    at = next;
  }
  return null;
}

function pngChunk(name: string, data: Uint8Array): Uint8Array {
  const chunk = joined([new Uint8Array(4), new Uint8Array(ascii(name)), data, new Uint8Array(4)]);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, data.length);
  view.setUint32(chunk.length - 4, crc32(chunk.subarray(4, chunk.length - 4)));
  return chunk;
}

const WEBP_KEPT = new Set(["VP8 ", "VP8L", "VP8X", "ALPH"]);
/** Of the flags in VP8X (RFC 9649, 2.7): that there is transparency, and Exif where it says which way up; no profile, XMP or animation. */
const ALPHA = 0x10;
const EXIF = 0x08;

function webp(bytes: Uint8Array): Uint8Array | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const kept: Uint8Array[] = [];
  let shown = false;
  let turned = UPRIGHT;
  let extended: Uint8Array | null = null;
  for (let at = 12; at + 8 <= bytes.length; ) {
    const size = view.getUint32(at + 4, true);
    const name = fourCC(bytes, at);
    const end = at + 8 + size;
    if (end > bytes.length) return null;
    if (WEBP_KEPT.has(name)) {
      const chunk = new Uint8Array(8 + size + (size % 2));
      chunk.set(bytes.subarray(at, end));
      if (name === "VP8X") {
        chunk.set([(bytes[at + 8] ?? 0) & ALPHA, 0, 0, 0], 8);
        extended ??= chunk;
      }
      kept.push(chunk);
      shown ||= name === "VP8 " || name === "VP8L";
    }
    if (name === "EXIF" && turned === UPRIGHT) turned = orientationIn(bytes.subarray(at + 8, end));
    at = end + (size % 2);
  }
  if (!shown) return null;
  if (extended && extended.length > 8 && turned !== UPRIGHT) {
    extended[8] = (extended[8] ?? 0) | EXIF;
    const note = orientationBlock(turned);
    kept.push(new Uint8Array([...ascii("EXIF"), note.length, 0, 0, 0, ...note]));
  }
  const body = joined(kept);
  const head = new Uint8Array(12);
  head.set(ascii("RIFF"));
  head.set(ascii("WEBP"), 8);
  new DataView(head.buffer).setUint32(4, body.length + 4, true);
  return joined([head, body]);
}
