/** A picture named by its file, typed or dropped into the window, with words behind it: `~/crack.jpg above the door, 0.5 mm`. */
import { readFile, stat } from "node:fs/promises";
import { homedir } from "node:os";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Message } from "../../src/message.ts";

/** As shells and windows write a dropped file: in quotes, or with its blanks escaped. */
const NAMED = /^(?:'([^']+)'|"([^"]+)"|((?:file:\/\/\/|\/|~\/|\.{1,2}\/|[A-Za-z]:[\\/])(?:\\.|[^\s\\])+))(?:\s+(.*))?$/s;
const PICTURE = /\.(?:jpe?g|png|webp|heic|heif|gif|tiff?|bmp)$/i;
const MOST_BYTES = 8 * 1024 * 1024;

export interface Named {
  readonly file: string;
  readonly words: string;
}

/** Null when the line names no picture's file. */
export function pictureNamed(line: string, home = homedir()): Named | null {
  const [, single, double, bare, words = ""] = NAMED.exec(line.trim()) ?? [];
  const written = single ?? double ?? bare?.replace(/\\(.)/g, "$1");
  if (written === undefined || !PICTURE.test(written)) return null;
  if (written.startsWith("file://")) return { file: fileURLToPath(written), words: words.trim() };
  return { file: written.startsWith("~/") ? join(home, written.slice(2)) : written, words: words.trim() };
}

/** What goes into the message. */
export async function readPicture({ file }: Named): Promise<Pick<Message, "picture" | "picture_missing">> {
  try {
    const { size } = await stat(file);
    if (size > MOST_BYTES) return { picture_missing: "too-large" };
    return { picture: { name: basename(file), media_type: "application/octet-stream", bytes: new Uint8Array(await readFile(file)) } };
  } catch {
    return { picture_missing: "not-fetched" };
  }
}
