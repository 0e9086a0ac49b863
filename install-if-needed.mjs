// Runs before `npm start` and `npm test`: installs the dependencies when they are missing or older than the lock file.
// Plain JavaScript on purpose: it has to run on any Node from 18 on, before our own Node is there.
import { spawnSync } from "node:child_process";
import { existsSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const installed = join(here, "node_modules", ".package-lock.json");
const lock = join(here, "package-lock.json");
const ownNode = join(here, "node_modules", "node", "bin", process.platform === "win32" ? "node.exe" : "node");

const newer = (a, b) => existsSync(a) && existsSync(b) && statSync(a).mtimeMs > statSync(b).mtimeMs + 1000;

if (!existsSync(installed) || newer(lock, installed)) {
  console.error("Gleed: installing what it needs (once, about half a minute) ...");
  const npm = process.env.npm_execpath;
  const run = npm
    ? spawnSync(process.execPath, [npm, existsSync(lock) ? "ci" : "install", "--loglevel=error"], { cwd: here, stdio: ["ignore", 2, 2] })
    : spawnSync("npm", [existsSync(lock) ? "ci" : "install", "--loglevel=error"], { cwd: here, stdio: ["ignore", 2, 2], shell: true });
  if (run.status !== 0) {
    console.error("Gleed: the installation did not finish. Check the network connection, then run the same command again.");
    process.exit(1);
  }
}
if (!existsSync(ownNode)) {
  // Some npm settings do not run install scripts; this one puts Node 26 in place.
  spawnSync(process.execPath, ["installArchSpecificPackage.js"], { cwd: join(here, "node_modules", "node"), stdio: ["ignore", 2, 2] });
}
if (!existsSync(ownNode)) {
  console.error("Gleed: Node 26 could not be put in place. Run `npm rebuild node`, then the same command again.");
  process.exit(1);
}
