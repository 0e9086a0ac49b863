/**
 * The calculators at a shell: `reckon -- <calculator> '<json>'`, `--list`, or `--batch` with one
 * {"calculator","inputs"} a line on standard input. One JSON object out each; 2 is the exit code for bad input.
 */
import { once } from "node:events";
import { createInterface } from "node:readline";
import type { Calculator } from "./calculators/calculator.ts";
import { CALCULATORS, reckon } from "./calculators/index.ts";
import { endWhenNobodyReads } from "./closed-output.ts";

const USAGE = "Write a calculator and its inputs, such as moisture '{\"moisture_pct_dry\":25}'; or --list; or --batch.";

export interface Shell {
  readonly args: readonly string[];
  readonly input: NodeJS.ReadableStream;
  readonly output: NodeJS.WritableStream;
}

/** @returns the exit code: 0, or 2 for bad input */
export async function main({ args, input, output }: Shell): Promise<number> {
  const [first, text, ...rest] = args;
  if (first === "--batch") return batch(input, output);
  if (first === "--list") return print(output, { calculators: Object.values(CALCULATORS).map(described) }, 2);
  if (first === undefined || rest.length > 0) return print(output, { error: USAGE });
  return print(output, fromText(first, text ?? "{}"));
}

const described = ({ name, about, source, inputs, outputs }: Calculator): Record<string, unknown> => ({
  name,
  about,
  source,
  inputs,
  outputs,
});

function fromText(name: string, text: string): Record<string, unknown> {
  const inputs = json(text);
  if (inputs !== NOT_JSON) return answerTo(name, inputs);
  return { error: `The inputs of ${name} are not JSON: ${text.slice(0, 60)}; write an object such as {"load_kg": 12}.` };
}

function answerTo(name: string, inputs: unknown): Record<string, unknown> {
  try {
    const reckoned = reckon(name, inputs);
    return reckoned.ok ? reckoned.result : { error: reckoned.error };
  } catch (error) {
    return { error: `${name} failed on these inputs (${error instanceof Error ? error.message : String(error)}); that is a mistake of ours.` };
  }
}

function fromLine(line: string): Record<string, unknown> {
  const request = json(line);
  if (typeof request !== "object" || request === null || typeof (request as { calculator?: unknown }).calculator !== "string") {
    return { error: `A line is ${line.slice(0, 60)}; it should be {"calculator": "<name>", "inputs": {...}}.` };
  }
  const { calculator, inputs, ...extra } = request as { calculator: string; inputs?: unknown };
  const unknown = Object.keys(extra)[0];
  if (unknown !== undefined) return { error: `"${unknown}" is not a key of a line; it takes calculator and inputs.` };
  return answerTo(calculator, inputs ?? {});
}

async function batch(input: NodeJS.ReadableStream, output: NodeJS.WritableStream): Promise<number> {
  for await (const line of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })) {
    if (line.trim() === "") continue;
    if (!output.write(`${JSON.stringify(fromLine(line))}\n`)) await once(output, "drain");
  }
  return 0;
}

function print(output: NodeJS.WritableStream, answer: Record<string, unknown>, indent?: number): number {
  output.write(`${JSON.stringify(answer, null, indent)}\n`);
  return "error" in answer ? 2 : 0;
}

const NOT_JSON = Symbol("not JSON");
function json(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return NOT_JSON;
  }
}

if (import.meta.main) {
  endWhenNobodyReads();
  process.exitCode = await main({ args: process.argv.slice(2), input: process.stdin, output: process.stdout });
}
