/**
 * Which way up a picture is to be shown: the one note of its metadata that is kept, in a block that holds nothing else.
 * Exif (CIPA DC-008): a TIFF header, and in its first directory tag 0x0112 with one SHORT from 1 to 8.
 */
const ORIENTATION = 0x0112;
const SHORT = 3;
const ENTRY_BYTES = 12;
/** As the pixels lie: needs no note. */
export const UPRIGHT = 1;
const INTRO = [0x45, 0x78, 0x69, 0x66, 0, 0];

const isExif = (bytes: Uint8Array): boolean => INTRO.every((byte, at) => bytes[at] === byte);

/** @param block TIFF, with or without "Exif" and two zeros before it. @returns 1 to 8; 1 where it says nothing that can be read */
export function orientationIn(block: Uint8Array): number {
  const tiff = isExif(block) ? block.subarray(INTRO.length) : block;
  const view = new DataView(tiff.buffer, tiff.byteOffset, tiff.byteLength);
  if (tiff.length < 8) return UPRIGHT;
  const order = view.getUint16(0);
  const little = order === 0x4949;
  if ((!little && order !== 0x4d4d) || view.getUint16(2, little) !== 42) return UPRIGHT;
  const directory = view.getUint32(4, little);
  if (directory + 2 > tiff.length) return UPRIGHT;
  const entries = view.getUint16(directory, little);
  for (let at = directory + 2, n = 0; n < entries && at + ENTRY_BYTES <= tiff.length; n++, at += ENTRY_BYTES) {
    if (view.getUint16(at, little) !== ORIENTATION) continue;
    const turned = view.getUint16(at + 2, little) === SHORT && view.getUint32(at + 4, little) === 1 ? view.getUint16(at + 8, little) : 0;
    return turned >= 1 && turned <= 8 ? turned : UPRIGHT;
  }
  return UPRIGHT;
}

/** TIFF with one directory of one entry, and nothing else. @param turned 1 to 8 */
export function orientationBlock(turned: number): Uint8Array {
  const bytes = new Uint8Array(26);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0x4d4d);
  view.setUint16(2, 42);
  view.setUint32(4, 8);
  view.setUint16(8, 1);
  view.setUint16(10, ORIENTATION);
  view.setUint16(12, SHORT);
  view.setUint32(14, 1);
  view.setUint16(18, turned);
  return bytes;
}

/** The data of a JPEG's APP1: the block behind its introduction. */
export const asApp1 = (block: Uint8Array): Uint8Array => new Uint8Array([...INTRO, ...block]);
export { isExif };
