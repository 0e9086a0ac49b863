/** Gleed and a client of another make (matrix-nio, in the Python environment of the test homeserver) understand each other's encryption. */
import { execFile } from "node:child_process";
import { existsSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { afterAll, describe, expect, test } from "vitest";
import { clearFolders, gleed, newFolder } from "./support/host.ts";
import { HOMESERVER, register } from "./support/people.ts";

const PYTHON = join(process.env.GLEED_TEST_MATRIX_VENV ?? join(process.env.TMPDIR ?? tmpdir(), "gleed-matrix-venv"), "bin", "python");

describe.skipIf(!HOMESERVER || !existsSync(PYTHON))("a client of another make (set GLEED_TEST_MATRIX to a homeserver to run this)", { timeout: 90_000 }, () => {
  afterAll(clearFolders);

  test("asks in an encrypted room and reads every answer", async () => {
    const [bot, ana] = [await register("gleed"), await register("ana")];
    const host = gleed(bot, { core: "whole", folder: newFolder() });
    await host.ready;
    const script = fileURLToPath(new URL("./support/independent.py", import.meta.url));
    const questions = ["why did my glass go black?", "is 18 % dry basis good enough?", "the chimney is on fire!"];
    const { stdout } = await promisify(execFile)(PYTHON, [script, HOMESERVER, ana.user_id, ana.password, bot.user_id, ...questions]);
    await host.stop();
    const { heard, failed } = JSON.parse(stdout.trim().split("\n").at(-1) ?? "{}") as { heard: { body: string; decrypted: boolean }[]; failed: string[] };
    expect(failed).toEqual([]);
    expect(heard.length).toBeGreaterThanOrEqual(questions.length);
    expect(heard.every(({ decrypted }) => decrypted)).toBe(true);
    expect(heard[0]?.body).toMatch(/^Caution: .*damp wood/is);
    expect(heard.some(({ body }) => /112/.test(body))).toBe(true);
  });
});
