import { Readable, Writable } from "node:stream";
import { describe, expect, it } from "vitest";
import { CALCULATORS } from "../../src/calculators/index.ts";
import { main } from "../../src/reckon.ts";

async function shell(args: readonly string[], input = ""): Promise<{ code: number; lines: string[] }> {
  let text = "";
  const output = new Writable({
    write: (chunk, _encoding, done) => {
      text += String(chunk);
      done();
    },
  });
  const code = await main({ args, input: Readable.from([input]), output });
  return { code, lines: text.trimEnd().split("\n") };
}
const only = (lines: readonly string[]): unknown => JSON.parse(lines.join("\n"));

describe("reckon at a shell", () => {
  it("prints one object and exits 0", async () => {
    const { code, lines } = await shell(["moisture", '{"moisture_pct_dry":25}']);
    expect(code).toBe(0);
    expect(lines).toHaveLength(1);
    expect(only(lines)).toEqual({ moisture_pct_wet: 20, moisture_pct_dry: 25 });
  });

  it.each([
    [["moisture", "{}"]],
    [["moisture"]],
    [["moisture", "twelve"]],
    [["moisture", '{"moisture_pct_wet":100}']],
    [["nothing", "{}"]],
    [[]],
    [["moisture", "{}", "{}"]],
  ])("prints an error sentence and exits 2 for %j", async (args) => {
    const { code, lines } = await shell(args);
    expect(code).toBe(2);
    expect(only(lines)).toEqual({ error: expect.stringMatching(/\w.*\.$|--batch/) });
  });

  it("lists every key with unit, range, default and source where it has one", async () => {
    const { code, lines } = await shell(["--list"]);
    const { calculators } = only(lines) as {
      calculators: {
        name: string;
        source: string;
        inputs: { key: string; unit: string; about: string; default?: unknown }[];
        outputs: unknown[];
      }[];
    };
    expect(code).toBe(0);
    expect(calculators.map((one) => one.name)).toEqual(Object.keys(CALCULATORS));
    for (const one of calculators) {
      expect(one.source.length).toBeGreaterThan(5);
      for (const key of one.inputs) expect(key.about.length, `${one.name} ${key.key}`).toBeGreaterThan(3);
    }
    expect(calculators.find((one) => one.name === "draught")?.inputs).toContainEqual(
      expect.objectContaining({ key: "R_air_J_per_kgK", unit: "J/kgK", default: 288, range: [270, 300] }),
    );
    expect(calculators.find((one) => one.name === "fuel")?.inputs).toContainEqual(
      expect.objectContaining({ key: "efficiency", default: 0.8 }),
    );
  });

  it("answers a batch a line each, in order, and goes on after a bad one", async () => {
    const { code, lines } = await shell(
      ["--batch"],
      [
        '{"calculator":"moisture","inputs":{"moisture_pct_wet":50}}',
        "not json",
        '{"calculator":"nothing","inputs":{}}',
        '{"calculator":"moisture","inputs":{},"more":1}',
        '{"calculator":"season","inputs":{"degree_days_Kd":3000,"heat_loss_W_per_K":200,"useful_kWh_per_kg":3.2}}',
      ].join("\n"),
    );
    expect(code).toBe(0);
    const answers = lines.map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(answers.map((answer) => "error" in answer)).toEqual([false, true, true, true, false]);
    expect(answers[0]).toEqual({ moisture_pct_wet: 50, moisture_pct_dry: 100 });
    expect(answers[4]).toEqual({ heat_kWh: 14400, wood_kg: 4500 });
  });

  it("answers 10,000 lines in under 3 s", async () => {
    const kinds = [
      { calculator: "fuel", inputs: { load_kg: 12, moisture_pct_wet: 18, species: "beech" } },
      { calculator: "air-moisture", inputs: { air_C: 10, target_pct_wet: 16 } },
      { calculator: "stack", inputs: { cords: 1, species: "oak", moisture_pct_wet: 20 } },
      { calculator: "draught", inputs: { flue_height_m: 6, outside_C: 5, flue_mean_C: 120 } },
      {
        calculator: "seasoning",
        inputs: {
          species: "beech",
          split_mm: 100,
          start_pct_wet: 50,
          target_pct_wet: 20,
          stacked_on: "2026-03-01",
          latitude: 48.1,
          longitude: 11.6,
        },
      },
    ].map((line) => JSON.stringify(line));
    const input = Array.from({ length: 10_000 }, (_, index) => kinds[index % kinds.length]).join("\n");
    const start = performance.now();
    const { lines } = await shell(["--batch"], input);
    expect(lines).toHaveLength(10_000);
    expect(performance.now() - start).toBeLessThan(3000);
  });
});
