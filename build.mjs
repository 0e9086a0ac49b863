// Builds the package to publish: TypeScript to JavaScript (Node does not strip types under node_modules), data beside it.
import { execFileSync } from "node:child_process";
import { cpSync, globSync, rmSync } from "node:fs";

rmSync("dist", { recursive: true, force: true });
execFileSync(process.execPath, ["node_modules/typescript/lib/tsc.js", "-p", "tsconfig.build.json"], { stdio: "inherit" });
cpSync("knowledge", "dist/knowledge", { recursive: true });
for (const file of globSync(["src/**/*.yaml", "src/**/*.gz", "src/pictures/fonts/*"])) cpSync(file, `dist/${file}`);
