/** `lines` as a real process: one line in, one line out, with the time each took. */
import { spawn, type ChildProcessWithoutNullStreams } from "node:child_process";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";

const ENTRY = fileURLToPath(new URL("../../src/lines.ts", import.meta.url));

export interface Reply {
  // biome-ignore lint/suspicious/noExplicitAny: the outside interface, read as an outsider reads it
  readonly value: any;
  readonly ms: number;
}
export interface LinesProcess {
  ask(line: unknown): Promise<Reply>;
  /** write without waiting; the reply comes from `next` */
  put(line: unknown): void;
  next(): Promise<Reply>;
  kill(): Promise<void>;
  end(): Promise<number | null>;
  readonly child: ChildProcessWithoutNullStreams;
}

export function startLines(env: Record<string, string> = {}): LinesProcess {
  const child = spawn(process.execPath, [ENTRY], { env: { ...process.env, ...env }, stdio: ["pipe", "pipe", "pipe"] });
  child.stderr.resume();
  const waiting: { resolve: (reply: Reply) => void; from: number }[] = [];
  const unread: Reply[] = [];
  const sent: number[] = [];
  createInterface({ input: child.stdout }).on("line", (words) => {
    const reply = { value: JSON.parse(words), ms: performance.now() - (sent.shift() ?? 0) };
    const next = waiting.shift();
    if (next) next.resolve(reply);
    else unread.push(reply);
  });
  const ended = new Promise<number | null>((resolve) => child.on("exit", (code) => resolve(code)));
  const put = (line: unknown): void => {
    sent.push(performance.now());
    child.stdin.write(`${typeof line === "string" ? line : JSON.stringify(line)}\n`);
  };
  const next = (): Promise<Reply> => {
    const there = unread.shift();
    return there ? Promise.resolve(there) : new Promise((resolve) => waiting.push({ resolve, from: performance.now() }));
  };
  return {
    child, put, next,
    ask: (line) => {
      put(line);
      return next();
    },
    async kill() {
      child.kill("SIGKILL");
      await ended;
    },
    end: () => {
      child.stdin.end();
      return ended;
    },
  };
}
