/** For whoever runs Gleed: `gleed backup <file>`, `gleed restore <file>`, `gleed check`, `gleed move <from> <to>`. */
import { join } from "node:path";
import { backup, check, restore } from "./hosting/backup.ts";
import { CannotMove, move } from "./hosting/move.ts";
import { BadSettings, readSettings, stateFolder } from "./settings.ts";
import { StoreError } from "./store/errors.ts";

const USAGE = `gleed backup <file>      copy the records into a new file while Gleed runs
gleed restore <file>     bring such a copy back; Gleed must be stopped
gleed check              look whether every page is whole
gleed move <from> <to>   from one database into another that is empty, SQLite file or postgres:// URL; Gleed must be stopped
The records are those of GLEED_DATABASE.`;

async function run([command, ...given]: readonly string[]): Promise<number> {
  const [first, second] = given;
  const { database } = readSettings(process.env, join(stateFolder(process.env), "gleed.sqlite"));
  if (command === "backup" && first && given.length === 1) {
    console.log(await backup(database, first));
    return 0;
  }
  if (command === "restore" && first && given.length === 1) {
    console.log(await restore(first, database));
    return 0;
  }
  if (command === "check" && given.length === 0) {
    const { ok, detail } = await check(database);
    console.log(ok ? `Whole. ${hidden(detail)}` : `Not whole: ${hidden(detail)}`);
    return ok ? 0 : 1;
  }
  if (command === "move" && first && second && given.length === 2) {
    const { rows } = await move(first, second);
    for (const [table, count] of Object.entries(rows)) if (count > 0) console.log(`${String(count).padStart(9)}  ${table}`);
    console.log(`Moved. Set GLEED_DATABASE to the new one; the old one is unchanged, delete it when all is well.`);
    return 0;
  }
  console.error(USAGE);
  return 2;
}

/** A URL may hold a password. */
const hidden = (words: string): string => words.replace(/(postgres(?:ql)?:\/\/[^:@/\s]*):[^@/\s]*@/g, "$1:[secret]@");

try {
  process.exitCode = await run(process.argv.slice(2));
} catch (error) {
  if (!(error instanceof CannotMove || error instanceof BadSettings || error instanceof StoreError)) throw error;
  console.error(hidden(error.message));
  process.exitCode = 1;
}
