/** Lines typed before, over all starts. A history that cannot be read or written is simply not kept. */
import { appendFileSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";

const KEPT = 500;

/** Latest first, as readline wants it. */
export function readHistory(file: string): string[] {
  try {
    const lines = readFileSync(file, "utf8")
      .split("\n")
      .filter((line) => line !== "");
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
