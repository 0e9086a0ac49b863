/** The key that reads old rooms after everything else is lost: one line in a file of its own, readable by its owner alone. */
import { closeSync, existsSync, fsyncSync, mkdirSync, openSync, readFileSync, writeSync } from "node:fs";
import { dirname } from "node:path";
import { decodeRecoveryKey } from "matrix-js-sdk/lib/crypto-api/index.js";
import { CannotStart } from "./options.ts";

export type RecoveryKey = Uint8Array<ArrayBuffer>;

/** @throws CannotStart when the file holds something else */
export function readRecoveryKey(path: string): RecoveryKey | null {
  if (!existsSync(path)) return null;
  try {
    return decodeRecoveryKey(readFileSync(path, "utf8").replace(/\s/g, ""));
  } catch {
    throw new CannotStart("GLEED_MATRIX_RECOVERY_KEY_FILE holds no recovery key: it is one line of 48 letters and digits in groups of four.");
  }
}

/** On the disk before it is used anywhere; never over an older one. */
export function writeRecoveryKey(path: string, encoded: string): void {
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  const file = openSync(path, "wx", 0o600);
  try {
    writeSync(file, `${encoded}\n`);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}
