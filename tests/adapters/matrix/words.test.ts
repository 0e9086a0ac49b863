/** The adapter translates: it knows nothing of the domain, and every word it says stands in the catalogue. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { readSettings } from "../../../src/settings.ts";
import { loadCatalogues } from "../../../src/text/catalogues.ts";

const ADAPTER = fileURLToPath(new URL("../../../adapters/matrix", import.meta.url));
const TEXTS = fileURLToPath(new URL("../../../src/text/matrix.en.yaml", import.meta.url));
const DOMAIN =
  /\b(heaters?|stoves?|wood|firewood|fires?|flames?|ash|flues?|dampers?|chimneys?|soot|masonry|burn\w*|smok\w*|embers?|kindling|carbon|glass|bricks?|draught|sweeps?)\b/i;

const files = [TEXTS, ...readdirSync(ADAPTER, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".ts")).map((name) => join(ADAPTER, name))];

test.each(files)("no word of the domain in %s", (file) => {
  expect(readFileSync(file, "utf8").split("\n").filter((line) => DOMAIN.test(line))).toEqual([]);
});

test("every label that is asked for stands in the catalogue, and every text of the adapter is asked for", async () => {
  const english = (await loadCatalogues()).get("en") ?? new Map();
  const code = files.map((file) => readFileSync(file, "utf8")).join("\n");
  const asked = [...code.matchAll(/\b(?:own|label)\("([a-z-]+)"/g)].map(([, id]) => `adapter.${id}`);
  expect(asked.length).toBeGreaterThan(10);
  expect(asked.filter((id) => !english.has(id))).toEqual([]);
  const own = [...english.keys()].filter((id) => id.startsWith("adapter.matrix-"));
  expect(own.filter((id) => !code.includes(`"${id.replace("adapter.", "")}"`))).toEqual([]);
});

describe("the settings of Matrix", () => {
  const base = { GLEED_MATRIX_HOMESERVER: "https://home.example/", GLEED_MATRIX_TOKEN: "t0ken" };
  test("are off without a homeserver", () => expect(readSettings({}, "x").matrix).toBeUndefined());
  test("take a token or a name with a password, and hide both", () => {
    const { matrix } = readSettings(base, "x");
    expect(matrix).toMatchObject({ homeserver: "https://home.example", invites: [], unencrypted: "refuse", recovery_key_file: expect.stringMatching(/matrix-recovery-key$/) });
    expect(JSON.stringify(matrix)).not.toContain("t0ken");
    expect(readSettings({ ...base, GLEED_MATRIX_TOKEN: "", GLEED_MATRIX_USER: "gleed", GLEED_MATRIX_PASSWORD: "w0rd" }, "x").matrix?.password?.reveal()).toBe("w0rd");
  });
  test("name what is missing or wrong", () => {
    expect(() => readSettings({ GLEED_MATRIX_HOMESERVER: "https://home.example" }, "x")).toThrow(/GLEED_MATRIX_TOKEN, or GLEED_MATRIX_USER/);
    expect(() => readSettings({ ...base, GLEED_MATRIX_HOMESERVER: "http://home.example" }, "x")).toThrow(/https/);
    expect(() => readSettings({ ...base, GLEED_MATRIX_INVITES: "who knows?" }, "x")).toThrow(/GLEED_MATRIX_INVITES/);
  });
  test("take a list of who may invite", () => {
    expect(readSettings({ ...base, GLEED_MATRIX_INVITES: "home.example, @ana:x.example !r:x" }, "x").matrix?.invites).toEqual(["home.example", "@ana:x.example", "!r:x"]);
  });
});
