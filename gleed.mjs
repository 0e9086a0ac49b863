#!/usr/bin/env node
// The `gleed` command of the installed package: finds the Node that came along and starts Gleed on it.
import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const entries = { lines: "lines", reckon: "reckon", backup: "host", restore: "host", check: "host", move: "host" };
const [first, ...rest] = process.argv.slice(2);
const entry = entries[first] ?? "main";
const built = join(here, "dist", "src", `${entry}.js`);
const file = existsSync(built) ? built : join(here, "src", `${entry}.ts`);

function ownNode() {
  try {
    const root = dirname(createRequire(import.meta.url).resolve("node/package.json"));
    const binary = join(root, "bin", process.platform === "win32" ? "node.exe" : "node");
    return existsSync(binary) ? binary : null;
  } catch {
    return null;
  }
}

const node = ownNode() ?? (Number(process.versions.node.split(".")[0]) >= 26 ? process.execPath : null);
if (!node) {
  console.error("Gleed needs Node 26, which normally comes with it. Run `npm rebuild node` where Gleed is installed.");
  process.exit(1);
}
const child = spawn(node, [file, ...(entries[first] && entries[first] !== "host" ? rest : process.argv.slice(2))], { stdio: "inherit" });
for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, () => signal === "SIGTERM" && child.kill(signal));
child.on("exit", (code, signal) => process.exit(signal ? 1 : (code ?? 0)));
