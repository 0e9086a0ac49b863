/** scipy in a process of its own: finds its best settings for a problem once, then solves it each time it is asked. */
import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { homedir, tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";

const PACKAGES = ["scipy==1.17.1", "numpy==2.4.6"];
const SCRIPT = fileURLToPath(new URL("./lsoda.py", import.meta.url));

export interface Lsoda {
  readonly settings: string;
  readonly error_K: number;
  /** processor time of one solution, ms */
  once_ms(): Promise<number>;
  end(): void;
}

/** A Python that has scipy: the one PYTHON names, the machine's, or one of our own in the cache, made when pip works. */
function python(): string | null {
  const cache = join(process.env.XDG_CACHE_HOME ?? join(homedir(), ".cache"), "gleed-bench-scipy");
  const own = join(cache, "bin", "python");
  const has = (name: string): boolean => spawnSync(name, ["-c", "import scipy.integrate"], { stdio: "ignore" }).status === 0;
  const found = [process.env.PYTHON, "python3", existsSync(own) ? own : undefined].find((name) => name !== undefined && has(name));
  if (found !== undefined) return found;
  const made = spawnSync("python3", ["-m", "venv", cache], { stdio: "ignore" }).status === 0
    && spawnSync(own, ["-m", "pip", "install", "-q", "--disable-pip-version-check", ...PACKAGES], { stdio: "ignore", timeout: 300_000 }).status === 0;
  return made && has(own) ? own : null;
}

export async function lsoda(problem: object): Promise<Lsoda | { readonly missing: string }> {
  const name = python();
  if (name === null) return { missing: "no python3 with scipy, and none could be made" };
  const folder = mkdtempSync(join(tmpdir(), "gleed-lsoda-"));
  const file = join(folder, "problem.json");
  writeFileSync(file, JSON.stringify(problem));
  const one = { OMP_NUM_THREADS: "1", OPENBLAS_NUM_THREADS: "1" };
  const child = spawn(name, [SCRIPT, file], { stdio: ["pipe", "pipe", "inherit"], env: { ...process.env, ...one } });
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  const answer = async <T>(): Promise<T> => {
    const { value, done } = await lines.next();
    if (done) throw new Error("scipy's side ended before it answered");
    return JSON.parse(value) as T;
  };
  const { settings, error_K } = await answer<{ settings: string; error_K: number }>();
  return {
    settings,
    error_K,
    once_ms: () => {
      child.stdin.write("again\n");
      return answer<number>();
    },
    end: () => {
      child.stdin.end();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
