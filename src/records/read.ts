/** Reads records given as data: keeps every field that fits and names each that does not, in a plain sentence. */
import { z } from "zod";
import { FireRecord, PersonRecord, RECORD_GROUPS, type Records, TonightWeather, DayWeather, WoodRecord } from "./schemas.ts";

export interface ReadRecords {
  readonly kept: z.output<typeof Records>;
  /** one sentence a field that was not kept */
  readonly problems: readonly string[];
}

type Shape = z.ZodObject;

export function readRecords(raw: Readonly<Record<string, unknown>>): ReadRecords {
  const problems: string[] = [];
  const kept: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(raw)) {
    if (Object.hasOwn(RECORD_GROUPS, key)) {
      kept[key] = fields(RECORD_GROUPS[key as keyof typeof RECORD_GROUPS], value, key, problems);
    } else if (key === "wood" || key === "fires") {
      kept[key] = list(key === "wood" ? WoodRecord : FireRecord, value, key, problems);
    } else if (key === "weather") {
      kept[key] = Array.isArray(value) ? list(DayWeather, value, key, problems) : fields(TonightWeather, value, key, problems);
    } else {
      Object.assign(kept, fields(PersonRecord, { [key]: value }, "", problems));
    }
  }
  return { kept: kept as z.output<typeof Records>, problems };
}

function list(schema: Shape, value: unknown, path: string, problems: string[]): unknown[] {
  if (!Array.isArray(value)) {
    problems.push(`"${path}" is a list; write it in square brackets.`);
    return [];
  }
  return value.flatMap((entry, i) => {
    const read = fields(schema, entry, `${path}[${i}]`, problems);
    const missing = schema.safeParse(read).error?.issues.find((issue) => issue.code === "invalid_type");
    if (missing) {
      problems.push(`${path}[${i}] lacks "${missing.path.join(".")}"; it was not kept.`);
      return [];
    }
    return Object.keys(read).length > 0 ? [read] : [];
  });
}

function fields(schema: Shape, value: unknown, path: string, problems: string[]): Record<string, unknown> {
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    problems.push(`"${path}" takes an object of its fields, not ${JSON.stringify(value)?.slice(0, 60)}.`);
    return {};
  }
  const kept: Record<string, unknown> = {};
  for (const [key, given] of Object.entries(value)) {
    const field = (Object.hasOwn(schema.shape, key) ? schema.shape[key] : undefined) as z.ZodType | undefined;
    const where = path ? `${path}.${key}` : key;
    if (!field) {
      problems.push(`"${where}" is not a field Gleed knows; it knows ${Object.keys(schema.shape).join(", ")}.`);
      continue;
    }
    const inner = field instanceof z.ZodOptional ? field.unwrap() : field;
    if (inner instanceof z.ZodObject) {
      const nested = fields(inner, given, where, problems);
      if (inner.safeParse(nested).success) kept[key] = nested;
      else if (Object.keys(nested).length > 0) problems.push(`"${where}" is not complete: it takes ${Object.keys(inner.shape).join(" and ")}.`);
      continue;
    }
    const read = field.safeParse(given);
    if (read.success) {
      if (read.data !== undefined) kept[key] = read.data;
    } else problems.push(`"${where}" was ${JSON.stringify(given)?.slice(0, 60)}: ${plain(read.error.issues[0], inner)}`);
  }
  return kept;
}

function plain(issue: z.core.$ZodIssue | undefined, schema: unknown): string {
  if (!issue) return "that does not fit.";
  if (issue.code === "invalid_value" && schema instanceof z.ZodEnum) return `it takes one of ${schema.options.join(", ")}.`;
  if (issue.code === "too_small") return `it must be ${issue.inclusive ? "at least" : "more than"} ${issue.minimum}.`;
  if (issue.code === "too_big") return `it must be at most ${issue.maximum}.`;
  if (issue.code === "invalid_type") return `it takes a ${issue.expected === "boolean" ? "true or false" : issue.expected}.`;
  return `it takes ${issue.message.replace(/^Invalid /, "a valid ")}.`;
}
