/** `main` as a service: starts Discord when a token is set, without a terminal, and ends in order when it is told to. */
import { spawn } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect, test } from "vitest";
import { ids, slash } from "../../servers/discord/events.ts";
import { standIn, TOKEN, until } from "../../servers/discord/index.ts";
import { words } from "./bot.ts";

const MAIN = fileURLToPath(new URL("../../../src/main.ts", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "gleed-service-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(env: Record<string, string>) {
  const child = spawn(process.execPath, [MAIN], { env: { PATH: process.env.PATH ?? "", HOME: folder, XDG_DATA_HOME: folder, ...env }, stdio: ["ignore", "pipe", "pipe"] });
  let out = "";
  for (const stream of [child.stdout, child.stderr]) stream.on("data", (part) => (out += part));
  const ended = new Promise<number | null>((resolve) => child.once("exit", resolve));
  return { child, ended, said: () => out };
}

test("answers a command, says nothing secret, and ends with 0 on SIGTERM", async () => {
  const server = await standIn();
  writeFileSync(join(folder, "token"), `${TOKEN}\n`);
  const { child, ended, said } = run({ GLEED_DISCORD_TOKEN_FILE: join(folder, "token"), GLEED_DISCORD_API: server.api });
  await until("the login", () => server.commands.get("global"), 15_000);
  const one = server.interact(slash("help", {}, { user: "700000000000000001", guild: ids.guild }));
  await until("an answer", () => one?.answered_ms, 10_000);
  expect(words(one?.message ?? null)).toMatch(/wood/i);
  child.kill("SIGTERM");
  expect(await ended).toBe(0);
  expect(said()).not.toContain(TOKEN);
  expect(server.problems).toEqual([]);
  await server.close();
});

test("ends with 1 and one sentence when the token is refused", async () => {
  const server = await standIn();
  const { ended, said } = run({ GLEED_DISCORD_TOKEN: "another.wrong.token", GLEED_DISCORD_API: server.api });
  expect(await ended).toBe(1);
  expect(said()).toMatch(/Discord refuses the token/);
  expect(said()).not.toContain("another.wrong.token");
  await server.close();
});
