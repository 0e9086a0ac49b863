/** Bringing a store up to date, cut off (SIGKILL) before any of its statements, recovers by being run again. */
import { fork } from "node:child_process";
import { once } from "node:events";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { openStore } from "../../../src/store/open.ts";
import { FILE, type Kind, POSTGRES } from "../../store/locations.ts";
import { say } from "../../store/made.ts";

const WORKER = fileURLToPath(new URL("./migration-worker.ts", import.meta.url));
/** so many statements, spread over all; migrations.test.ts ends before every one of them, in process */
const MOST = process.env.GLEED_TEST_FULL ? 12 : 3;

for (const kind of [FILE, POSTGRES]) {
  const run = kind.missing ? describe.skip : describe;
  run(`${kind.name}${kind.missing ? ` (${kind.missing})` : ""}`, () => {
    test("brought up to date, killed, brought up to date again", { timeout: 300_000 }, () => killed(kind));
  });
}

async function killed(kind: Kind): Promise<void> {
  const statements = await migrateIn(kind, 0);
  if (typeof statements === "string") throw new Error(statements);
  expect(statements).toBeGreaterThan(30);
  const every = Math.max(1, Math.ceil(statements / MOST));
  for (let nth = 1; nth <= statements; nth += every)
    expect(await migrateIn(kind, nth), `killed before statement ${nth} of ${statements}`).toBe("killed and recovered");
}

async function migrateIn(kind: Kind, nth: number): Promise<number | string> {
  const at = await kind.fresh();
  try {
    const child = fork(WORKER, [at.location, String(nth)], { stdio: ["ignore", "inherit", "inherit", "ipc"] });
    let statements: number | undefined;
    child.on("message", (count: number) => {
      statements = count;
    });
    const [code, signal] = (await once(child, "exit")) as [number | null, string | null];
    if (signal !== "SIGKILL") return statements ?? `ended with ${code}`;
    const store = await openStore(at.location);
    const { talk } = await say(store, "ana", () => ({}));
    const { ok } = await store.check("thorough");
    await store.close();
    return ok && talk.version === 1 ? "killed and recovered" : "damaged";
  } finally {
    await at.remove();
  }
}
