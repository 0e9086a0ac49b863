/** Pages and tables as files in a folder of the person's own. The newest of a name takes the older one's place. */
import { mkdirSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Written } from "../../src/pages/write.ts";

const NAME = /^[a-z0-9][a-z0-9-]{0,60}\.[a-z]{1,5}$/;

/** Null when it could not be written: then it is read out. */
export const keepIn =
  (folder: string) =>
  ({ name, content }: Written): string | null => {
    if (!NAME.test(name)) return null;
    const file = join(folder, name);
    try {
      mkdirSync(folder, { recursive: true, mode: 0o700 });
      writeFileSync(`${file}.new`, content, { mode: 0o600 });
      renameSync(`${file}.new`, file);
      return file;
    } catch {
      return null;
    }
  };
