/** Turns what zod found wrong with the inputs of a calculator into one sentence: which key, which value, what would be right. */
import type { z } from "zod";
import type { Calculator, Key } from "./calculator.ts";

type Issue = z.core.$ZodIssue;

/** One sentence for the first thing wrong; unknown keys come first, since they often explain what is missing. */
export function sentence(calculator: Calculator, inputs: unknown, issues: readonly Issue[]): string {
  if (typeof inputs !== "object" || inputs === null || Array.isArray(inputs)) {
    return `${calculator.name} takes one JSON object such as {"${calculator.inputs[0]?.key ?? "key"}": ...}, not ${shown(inputs)}.`;
  }
  const unknown = issues.find((issue) => issue.code === "unrecognized_keys");
  const issue = unknown ?? issues[0];
  if (!issue) return `${calculator.name} could not read its inputs.`;
  if (issue.code === "unrecognized_keys") {
    const inside = issue.path.length > 0 ? ` in ${pathText(issue.path)}` : "";
    const known = issue.path.length > 0 ? "" : ` It takes ${calculator.inputs.map((key) => key.key).join(", ")}.`;
    const value = at(inputs, [...issue.path, issue.keys[0] ?? ""]);
    return `"${issue.keys[0]}" (${shown(value)})${inside} is not a key of ${calculator.name}.${known}`;
  }
  const key = calculator.inputs.find((candidate) => candidate.key === issue.path[0]);
  const name = pathText(issue.path);
  const value = at(inputs, issue.path);
  if (value === undefined) return `${calculator.name} needs ${name}: ${key ? wanted(key, issue) : "it is missing"}.`;
  if (typeof value === "string" && issue.code === "invalid_type" && issue.expected === "number") {
    const number = Number(value.trim().replace(/^(-?\d+),(\d+)$/, "$1.$2"));
    if (value.trim() !== "" && Number.isFinite(number)) return `${name} is the text ${shown(value)}; write the bare number ${number}.`;
  }
  return `${name} is ${shown(value)}${unitAfter(value, key)}; it should be ${key ? wanted(key, issue) : expected(issue)}.`;
}

const pathText = (path: readonly PropertyKey[]): string =>
  path.reduce<string>(
    (text, part) => (typeof part === "number" ? `${text}[${part}]` : text ? `${text}.${String(part)}` : String(part)),
    "",
  );

const at = (inputs: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (value, part) => (typeof value === "object" && value !== null ? (value as Record<PropertyKey, unknown>)[part] : undefined),
    inputs,
  );

function shown(value: unknown): string {
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

const unitAfter = (value: unknown, key: Key | undefined): string => (typeof value === "number" && key?.unit ? ` ${key.unit}` : "");

/** "the weight of the wood as burnt, a number above 0 and up to 200 kg" */
function wanted(key: Key, issue: Issue): string {
  const what = issue.path.length > 1 ? expected(issue) : kind(key, issue);
  return key.about ? `${what} (${key.about})` : what;
}

function kind(key: Key, issue: Issue): string {
  if (key.choices) return `one of ${key.choices.join(", ")}`;
  if (!key.range)
    return issue.code === "invalid_type" && issue.expected === "number" && key.unit ? `a number of ${key.unit}` : expected(issue);
  const unit = key.unit ? ` ${key.unit}` : "";
  const [low, high] = key.range;
  const from = low === null ? "" : key.excludes?.includes(low) ? `above ${low}` : high === null ? `of at least ${low}` : `from ${low}`;
  const to = high === null ? "" : key.excludes?.includes(high) ? `below ${high}` : low === null ? `of at most ${high}` : `to ${high}`;
  return `a number ${[from, to].filter(Boolean).join(from.startsWith("above") ? " and up " : " ")}${unit}`;
}

function expected(issue: Issue): string {
  switch (issue.code) {
    case "invalid_type":
      return `${/^[aeiou]/.test(issue.expected) ? "an" : "a"} ${issue.expected}`;
    case "invalid_value":
      return `one of ${issue.values.map(String).join(", ")}`;
    case "too_small":
      return `${issue.origin === "array" ? "a list of at least" : issue.inclusive ? "at least" : "above"} ${issue.minimum}`;
    case "too_big":
      return `${issue.origin === "array" ? "a list of at most" : issue.inclusive ? "at most" : "below"} ${issue.maximum}`;
    case "invalid_format":
      return issue.format === "date" ? "a date that exists, written YYYY-MM-DD" : `written as ${issue.format}`;
    default:
      return issue.message;
  }
}
