/** A picture of two pixels, red and blue, made by the PNG specification; chunks can be put before its pixels. */
import { deflateSync } from "node:zlib";

/** CRC-32 of the PNG specification, annex D. */
function crc(bytes: Buffer): number {
  let value = 0xffffffff;
  for (const byte of bytes) {
    value ^= byte;
    for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  }
  return ~value >>> 0;
}

export function chunk(name: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, "latin1"), data]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc(body));
  return Buffer.concat([length, body, check]);
}

export const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
export const HEADER = chunk("IHDR", Buffer.from([0, 0, 0, 2, 0, 0, 0, 1, 8, 2, 0, 0, 0]));
export const PIXELS = chunk("IDAT", deflateSync(Buffer.from([0, 255, 0, 0, 0, 0, 255])));
export const END = chunk("IEND", Buffer.alloc(0));

export const tinyPng = (...between: readonly Buffer[]): Buffer => Buffer.concat([SIGNATURE, HEADER, ...between, PIXELS, END]);
