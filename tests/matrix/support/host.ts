/** Starts, kills and asks Gleed's process. */
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import type { GleedOptions } from "./gleed.ts";
import { type Account, HOMESERVER } from "./people.ts";

export interface Line {
  readonly ready?: true;
  readonly log?: "info" | "warn" | "error";
  readonly words?: string;
  readonly why?: string;
  readonly failed?: string;
  readonly advanced?: number;
  readonly rss_MB?: number;
  readonly user?: string;
  readonly device?: string;
}

export interface Gleed {
  readonly lines: readonly Line[];
  readonly ready: Promise<Line>;
  readonly ended: Promise<number | null>;
  readonly isReady: () => boolean;
  waitFor(what: (line: Line) => boolean, within_ms?: number): Promise<Line>;
  tell(command: object): void;
  kill(): Promise<void>;
  stop(): Promise<number | null>;
}

const made: string[] = [];
export function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "gleed-matrix-state-"));
  made.push(folder);
  return folder;
}
export const clearFolders = (): void => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
};

/** @param most_kB the process cannot make any file larger than this: its disk is full */
export function gleed(account: Account, options: Partial<GleedOptions> & { folder: string }, most_kB?: number): Gleed {
  const all: GleedOptions = { core: "echo", homeserver: HOMESERVER, user: account.local, ...(options.token ? {} : { password: account.password }), ...options };
  const command = [process.execPath, fileURLToPath(new URL("./gleed.ts", import.meta.url)), JSON.stringify(all)];
  const limited = most_kB === undefined ? command : ["bash", "-c", `trap '' XFSZ; ulimit -f ${most_kB}; exec "$@"`, "bash", ...command];
  const child: ChildProcess = spawn(limited[0]!, limited.slice(1), {
    stdio: ["pipe", "pipe", process.env.GLEED_TEST_LOUD ? "inherit" : "ignore"],
  });
  const lines: Line[] = [];
  const listeners = new Set<() => void>();
  const ready = Promise.withResolvers<Line>();
  const ended = Promise.withResolvers<number | null>();
  let is_ready = false;
  ready.promise.catch(() => {});
  createInterface({ input: child.stdout! }).on("line", (line) => {
    if (!line.startsWith("{")) return;
    const said = JSON.parse(line) as Line;
    lines.push(said);
    if (process.env.GLEED_TEST_LOUD) console.error(line.slice(0, 400));
    if (said.ready) {
      is_ready = true;
      ready.resolve(said);
    }
    for (const one of listeners) one();
  });
  child.once("exit", (code) => {
    ended.resolve(code);
    ready.reject(new Error(`Gleed's process ended: ${code} ${lines.findLast((one) => one.failed)?.failed ?? ""}`));
  });
  return {
    lines,
    ready: ready.promise,
    ended: ended.promise,
    isReady: () => is_ready,
    tell: (command) => void child.stdin?.write(`${JSON.stringify(command)}\n`),
    waitFor: (what, within_ms = 20_000) =>
      new Promise((resolve, reject) => {
        const look = (): void => {
          const found = lines.find(what);
          if (!found) return;
          clearTimeout(timer);
          listeners.delete(look);
          resolve(found);
        };
        const timer = setTimeout(() => reject(new Error(`Gleed's process did not say that within ${within_ms / 1000} s; last: ${JSON.stringify(lines.slice(-3))}`)), within_ms);
        listeners.add(look);
        look();
      }),
    async kill() {
      child.kill("SIGKILL");
      await ended.promise;
    },
    async stop() {
      child.stdin?.write('{"stop":true}\n');
      return ended.promise;
    },
  };
}

export const sleep = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
