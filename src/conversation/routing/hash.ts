const FNV_START = 0x811c9dc5;
const FNV_PRIME = 0x01000193;

/** FNV-1a over UTF-16 units, unsigned 32 bits. */
export function hashText(text: string): number {
  let h = FNV_START;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), FNV_PRIME);
  return finish(h);
}

/** Two hashes into one; the order matters. */
export const mix = (one: number, other: number): number => finish(Math.imul(Math.imul(one, 0x9e3779b1) ^ other, FNV_PRIME));

/** Hashes of the groups of 3 to 5 letters of `<word>`. */
export function letterGroups(word: string): Int32Array {
  const end = word.length + 2;
  const code = (i: number): number => (i === 0 ? 60 : i === end - 1 ? 62 : word.charCodeAt(i - 1));
  const groups: number[] = [];
  for (let from = 0; from + 3 <= end; from++) {
    let h = FNV_START;
    for (let i = 0; i < 5 && from + i < end; i++) {
      h = Math.imul(h ^ code(from + i), FNV_PRIME);
      if (i >= 2) groups.push(finish(h) >>> 1);
    }
  }
  return Int32Array.from(groups);
}

function finish(h: number): number {
  return (h ^ (h >>> 15)) >>> 0;
}
