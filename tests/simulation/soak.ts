/**
 * `npm run soak` takes hours: a million simulated days, then 10,000 kills of real processes and 10,000 ends in process on each store (PostgreSQL
 * where GLEED_TEST_POSTGRES names a server). `-- days [seeds] [days] [first seed]` and `-- kills [how many]` do one of them.
 */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const [what, ...rest] = process.argv.slice(2);
const path = (name: string): string => fileURLToPath(new URL(name, import.meta.url));
const run = (args: readonly string[], env: Readonly<Record<string, string>> = {}): number =>
  spawnSync(process.execPath, args, { stdio: "inherit", env: { ...process.env, ...env } }).status ?? 1;

const days = what === "kills" ? 0 : run([path("days/soak.ts"), ...(what === "days" ? rest : [])]);
const count = rest[0] ?? "10000";
const kills =
  what === "days"
    ? 0
    : run([path("../../node_modules/vitest/vitest.mjs"), "run", "tests/simulation/kill"], {
        GLEED_KILLS: count,
        GLEED_CRASHES: count,
        GLEED_CRASHES_POSTGRES: count,
        GLEED_TEST_FULL: "1",
      });
process.exitCode = days || kills;
