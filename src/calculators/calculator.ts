/**
 * What a calculator is: a name, a strict zod schema for its inputs, one for its outputs, and a pure function between them.
 * The key tables of `--list` and the JSON Schemas are read from the two schemas, so they cannot drift apart.
 */
import { z } from "zod";
import { sentence } from "./sentences.ts";

/** What a reader of `--list` needs to know about one key beside its name. */
export interface About {
  /** unit symbol, or "" for a word, a date or a record */
  readonly unit: string;
  readonly about: string;
  /** the standard, handbook or trial the key or its default rests on; "common practice, no source" when it has none */
  readonly source?: string;
  /** assumed when the key is absent; a result that rests on it carries a range */
  readonly default?: unknown;
}

export interface Key extends About {
  readonly key: string;
  readonly optional: boolean;
  readonly range?: readonly [number | null, number | null];
  /** ends of the range that are not part of it */
  readonly excludes?: readonly number[];
  readonly choices?: readonly string[];
}

export interface Calculator {
  readonly name: string;
  readonly about: string;
  readonly source: string;
  readonly inputs: readonly Key[];
  readonly outputs: readonly Key[];
  readonly schema: z.ZodObject;
  readonly result: z.ZodObject;
  /** @throws BadInput with one sentence when the inputs do not make sense together. `inputs` must have passed `schema`. */
  readonly run: (inputs: Record<string, unknown>) => Record<string, unknown>;
}

/** Inputs that are each well formed but do not make sense together. Its message is the sentence shown to the person. */
export class BadInput extends Error {
  override readonly name = "BadInput";
}

interface Limits {
  min?: number;
  max?: number;
  above?: number;
  below?: number;
  source?: string;
  /** what an absent value is taken as; say `.default()` instead where nothing needs to know that it was absent */
  assumed?: number;
}

/** A number with its unit. `above` and `below` are exclusive limits, `min` and `max` inclusive. */
export function figure(unit: string, about: string, more: Limits = {}): z.ZodNumber {
  let number = z.number();
  if (more.min !== undefined) number = number.min(more.min);
  if (more.max !== undefined) number = number.max(more.max);
  if (more.above !== undefined) number = number.gt(more.above);
  if (more.below !== undefined) number = number.lt(more.below);
  return number.meta({
    unit,
    about,
    ...(more.source !== undefined && { source: more.source }),
    ...(more.assumed !== undefined && { default: more.assumed }),
  });
}

/** Say what a word, a date, a list or a record is for. Call it before `.optional()` or `.default()`. */
export const described = <T extends z.ZodType>(schema: T, about: string, more: { unit?: string; source?: string } = {}): T =>
  schema.meta({ unit: more.unit ?? "", about, ...(more.source === undefined ? {} : { source: more.source }) });

/** The two keys any result may carry besides its own. */
const EXTRAS = {
  warnings: described(z.array(z.string()), "sentences to read before using the figures").optional(),
  range: described(
    z.record(z.string(), z.tuple([z.union([z.number(), z.string()]), z.union([z.number(), z.string(), z.null()])])),
    "low and high of a result, in its own unit; null where it has no end",
  ).optional(),
};

type Result<O extends z.ZodRawShape> = z.input<z.ZodObject<O>> & {
  warnings?: readonly string[];
  range?: Readonly<Record<string, readonly unknown[]>>;
};

/** Make a calculator from its two shapes. `run` gets parsed inputs, defaults filled in; undefined results are left out. */
export function calculator<I extends z.ZodRawShape, O extends z.ZodRawShape>(spec: {
  name: string;
  about: string;
  source: string;
  inputs: I;
  outputs: O;
  run: (inputs: z.output<z.ZodObject<I>>) => Result<O>;
}): Calculator {
  const schema = z.strictObject(spec.inputs);
  return {
    name: spec.name,
    about: spec.about,
    source: spec.source,
    inputs: keysOf(spec.inputs),
    outputs: keysOf(spec.outputs),
    schema: schema as unknown as z.ZodObject,
    result: z.strictObject({ ...spec.outputs, ...EXTRAS }) as unknown as z.ZodObject,
    run: (inputs) => compact(spec.run(inputs as z.output<z.ZodObject<I>>)),
  };
}

export type Reckoned = { readonly ok: true; readonly result: Record<string, unknown> } | { readonly ok: false; readonly error: string };

/** Check the inputs, run, and turn anything wrong with them into one sentence. */
export function runCalculator(one: Calculator, inputs: unknown): Reckoned {
  const parsed = one.schema.safeParse(inputs);
  if (!parsed.success) return { ok: false, error: sentence(one, inputs, parsed.error.issues) };
  try {
    return { ok: true, result: one.run(parsed.data) };
  } catch (error) {
    if (error instanceof BadInput) return { ok: false, error: error.message };
    throw error;
  }
}

function keysOf(shape: z.ZodRawShape): Key[] {
  return Object.entries(shape).map(([key, field]) => {
    let inner = field as z.ZodType;
    let fallback: unknown;
    while (inner instanceof z.ZodOptional || inner instanceof z.ZodDefault) {
      if (inner instanceof z.ZodDefault) fallback = inner.def.defaultValue;
      inner = inner.unwrap() as z.ZodType;
    }
    const { unit = "", about = "", source, default: assumed } = (inner.meta() ?? {}) as Partial<About>;
    const bounds = inner instanceof z.ZodNumber ? limits(inner) : undefined;
    const preset = fallback ?? assumed;
    return {
      key,
      unit,
      about,
      optional: (field as z.ZodType).safeParse(undefined).success,
      ...bounds,
      ...(inner instanceof z.ZodEnum && { choices: inner.options.map(String) }),
      ...(preset !== undefined && { default: preset }),
      ...(source && { source }),
    };
  });
}

/** The range of a number and which of its ends are not part of it; undefined when it has neither end. */
function limits(number: z.ZodNumber): Pick<Key, "range" | "excludes"> | undefined {
  const json = z.toJSONSchema(number) as { minimum?: number; maximum?: number; exclusiveMinimum?: number; exclusiveMaximum?: number };
  const range = [json.minimum ?? json.exclusiveMinimum ?? null, json.maximum ?? json.exclusiveMaximum ?? null] as const;
  if (range[0] === null && range[1] === null) return undefined;
  const excludes = [json.exclusiveMinimum, json.exclusiveMaximum].filter((end) => end !== undefined);
  return { range, ...(excludes.length > 0 && { excludes }) };
}

/** Results whose inputs are missing are left out, and figures end at ten digits, where machines begin to differ. */
function compact(result: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const present = Object.entries(result).filter(
    ([key, value]) => value !== undefined && !((key === "warnings" || key === "range") && isEmpty(value)),
  );
  return Object.fromEntries(present.map(([key, value]) => [key, tenDigits(value)]));
}

const isEmpty = (value: unknown): boolean => typeof value === "object" && value !== null && Object.keys(value).length === 0;

function tenDigits(value: unknown): unknown {
  if (typeof value === "number") return Number(value.toPrecision(10));
  if (Array.isArray(value)) return value.map(tenDigits);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, tenDigits(part)]));
}
