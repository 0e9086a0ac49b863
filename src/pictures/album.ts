/** Drawn pictures in a folder, named by what is on them: the same picture for the same kind of reader is drawn once. */
import { createHash, randomUUID } from "node:crypto";
import { accessSync, constants, mkdirSync, mkdtempSync } from "node:fs";
import { mkdir, readdir, rename, rm, stat, utimes, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Picture } from "../answer.ts";
import type { Reader } from "../text/render.ts";
import { draw } from "./draw.ts";

/** Older ones are drawn again when somebody asks. */
const MOST_FILES = 200;
/** Counted up whenever pictures change their look. */
const EDITION = 3;

/** A folder for pictures beside the records, or one of this run's own where nothing can be kept there. */
export function albumIn(stateFolder: string): string {
  const folder = join(stateFolder, "pictures");
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    accessSync(folder, constants.W_OK);
    return folder;
  } catch {
    return mkdtempSync(join(tmpdir(), "gleed-pictures-"));
  }
}

/**
 * The file of a picture, drawn now if it is not there yet.
 * @throws NotDrawn, or the file system's own error
 */
export async function fileFor(picture: Picture, reader: Reader, folder: string): Promise<string> {
  const { locale, system, timezone } = reader;
  const { chart, data } = picture;
  const hash = createHash("sha256").update(JSON.stringify([EDITION, chart, data, locale, system, timezone])).digest("hex").slice(0, 24);
  const file = join(folder, `${chart}-${hash}.png`);
  try {
    const now = new Date();
    await utimes(file, now, now);
    return file;
  } catch {
    // not drawn yet
  }
  const bytes = await draw(picture, reader);
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const half = join(folder, `.${randomUUID()}`);
  await writeFile(half, bytes, { mode: 0o600 });
  await rename(half, file);
  await thin(folder);
  return file;
}

async function thin(folder: string): Promise<void> {
  const names = (await readdir(folder)).filter((name) => name.endsWith(".png"));
  if (names.length <= MOST_FILES) return;
  const aged = await Promise.all(names.map(async (name) => ({ path: join(folder, name), at: (await stat(join(folder, name))).mtimeMs })));
  const oldest = aged.sort((a, b) => a.at - b.at).slice(0, names.length - MOST_FILES);
  await Promise.all(oldest.map(({ path }) => rm(path, { force: true })));
}
