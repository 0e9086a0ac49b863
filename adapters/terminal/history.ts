/** Lines typed before, over all starts. A history that cannot be read or written is simply not kept. */
import { appendFileSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";

const KEPT = 500;

/** Where the history lies: in the user's state folder (XDG Base Directory Specification 0.8; the local application data on Windows). */
export function historyFile(env: Readonly<Record<string, string | undefined>>, home: string, platform: string): string {
  const state = platform === "win32" ? (env.LOCALAPPDATA ?? join(home, "AppData", "Local")) : env.XDG_STATE_HOME || join(home, ".local", "state");
  return join(state, "gleed", "typed-lines");
}

/** Latest first, as readline wants it. */
export function readHistory(file: string): string[] {
  try {
    const lines = readFileSync(file, "utf8").split("\n").filter((line) => line !== "");
    if (lines.length > 2 * KEPT) writeFileSync(file, `${lines.slice(-KEPT).join("\n")}\n`, { mode: 0o600 });
    return lines.slice(-KEPT).reverse();
  } catch {
    return [];
  }
}

export function keepLine(file: string, line: string): void {
  if (line.trim() === "") return;
  try {
    mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
    appendFileSync(file, `${line}\n`, { mode: 0o600 });
  } catch {
    // a read-only home is no reason to stop a talk
  }
}
