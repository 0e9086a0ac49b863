/** The golden pair and the JSON Schema of every calculator: what others may rely on. After a wanted change `vitest -u` writes them anew;
 *  the inputs of a pair are edited by hand. */
import { existsSync, readFileSync, readdirSync } from "node:fs";
import { Ajv } from "ajv";
import addFormats from "ajv-formats";
import { describe, expect, it } from "vitest";
import { CALCULATORS, jsonSchemas, reckon } from "../../src/calculators/index.ts";

const FOLDER = new URL("reckon/", import.meta.url);
const read = (name: string): unknown => JSON.parse(readFileSync(new URL(name, FOLDER), "utf8"));
const text = (json: unknown): string => `${JSON.stringify(json, null, 2)}\n`;
const ajv = new Ajv({ strict: false });
(addFormats as unknown as (to: Ajv) => void)(ajv);

describe.each(Object.entries(jsonSchemas()))("contract of %s", (name, schemas) => {
  it("has a golden pair that still holds", async () => {
    const { calculator, inputs } = read(`${name}.json`) as { calculator: string; inputs: unknown };
    expect(calculator).toBe(name);
    const reckoned = reckon(name, inputs);
    if (!reckoned.ok) throw new Error(reckoned.error);
    await expect(text({ calculator, inputs, result: reckoned.result })).toMatchFileSnapshot(new URL(`${name}.json`, FOLDER).pathname);
  });

  it("describes its golden pair by its schemas, and refuses an extra key", () => {
    const pair = read(`${name}.json`) as { inputs: object; result: object };
    const inputs = ajv.compile(schemas.inputs as object);
    const result = ajv.compile(schemas.result as object);
    expect(inputs(pair.inputs), ajv.errorsText(inputs.errors)).toBe(true);
    expect(result(pair.result), ajv.errorsText(result.errors)).toBe(true);
    expect(inputs({ ...pair.inputs, extra: 1 })).toBe(false);
  });

  it("ships the schema as it is", async () => {
    const file = new URL(`${name}.schema.json`, FOLDER);
    expect(existsSync(file)).toBe(true);
    await expect(text(schemas)).toMatchFileSnapshot(file.pathname);
  });
});

describe("the folder", () => {
  it("holds a pair and a schema for each calculator and nothing else", () => {
    const wanted = Object.keys(CALCULATORS).flatMap((name) => [`${name}.json`, `${name}.schema.json`]);
    expect(readdirSync(FOLDER).sort()).toEqual(wanted.sort());
  });
});
