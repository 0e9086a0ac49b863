/** A form as one question at a time, for networks without forms of their own. Pure: each line makes the next state. */
import type { Field, FormPiece, Label } from "./outline.ts";

export interface FormTalk {
  readonly form: FormPiece;
  /** which field is asked now */
  readonly at: number;
  /** words as typed; the id for a choice, true or false for yes or no */
  readonly values: Readonly<Record<string, string | boolean>>;
}

export interface FormQuestion {
  /** "2 of 7" */
  readonly where: string;
  readonly text: string;
  /** how to go through the form; empty but for the first question */
  readonly hint: string;
  readonly choices: readonly { readonly number: number; readonly label: string }[];
}

export type FormStep =
  | { readonly step: "next"; readonly talk: FormTalk }
  | { readonly step: "wrong"; readonly talk: FormTalk; readonly sentence: string }
  | { readonly step: "done"; readonly id: string; readonly values: FormTalk["values"] };

export const beginForm = (form: FormPiece): FormTalk => ({ form, at: 0, values: {} });

export function formQuestion(talk: FormTalk, label: Label): FormQuestion | null {
  const field = talk.form.fields[talk.at];
  if (!field) return null;
  const now = talk.values[field.key] ?? field.value;
  const shown = typeof now === "boolean" ? label(now ? "yes" : "no") : (field.choices.find((choice) => choice.id === now)?.label ?? now);
  const asides = [field.unit, field.hint, shown === undefined ? "" : label("form-now", { value: shown })].filter(Boolean);
  return {
    where: label("form-where", { at: talk.at + 1, of: talk.form.fields.length }),
    text: asides.length > 0 ? `${field.label} (${asides.join("; ")})` : field.label,
    hint: talk.at === 0 ? label("form-hint") : "",
    choices: options(field, label).map((option, at) => ({ number: at + 1, label: option.label })),
  };
}

export function fillIn(talk: FormTalk, line: string, label: Label): FormStep {
  const field = talk.form.fields[talk.at];
  const typed = line.trim();
  const done = (values: FormTalk["values"]): FormStep => ({ step: "done", id: talk.form.id, values });
  const next = (values: FormTalk["values"], at: number): FormStep =>
    at >= talk.form.fields.length ? done(values) : { step: "next", talk: { ...talk, at, values } };
  if (!field || saysOneOf(typed, label("words-stop"))) return done(talk.values);
  if (saysOneOf(typed, label("words-back"))) return next(talk.values, Math.max(0, talk.at - 1));
  if (typed === "") return next(talk.values, talk.at + 1);

  const list = options(field, label);
  if (list.length === 0) return next({ ...talk.values, [field.key]: typed }, talk.at + 1);
  const chosen =
    list[Number(/^(\d+)[.)]?$/.exec(typed)?.[1]) - 1] ?? list.find((option) => option.words.some((words) => same(words, typed)));
  if (chosen) return next({ ...talk.values, [field.key]: chosen.value }, talk.at + 1);
  return { step: "wrong", talk, sentence: field.kind === "yes-no" ? label("form-yes-no") : label("form-choose", { most: list.length }) };
}

interface Option {
  readonly label: string;
  readonly words: readonly string[];
  readonly value: string | boolean;
}
const options = (field: Field, label: Label): Option[] =>
  field.kind === "yes-no"
    ? [
        { label: label("yes"), words: [label("yes"), ...label("words-yes").split("|")], value: true },
        { label: label("no"), words: [label("no"), ...label("words-no").split("|")], value: false },
      ]
    : field.choices.map((choice) => ({ label: choice.label, words: [choice.label, choice.id], value: choice.id }));

/** Equal but for capitals, accents, spaces and a last mark. */
const bare = (words: string): string =>
  words
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[\s.!?…]+$/u, "")
    .replace(/\s+/g, " ")
    .trim();
export const same = (one: string, other: string): boolean => bare(one) === bare(other) && bare(one) !== "";
/** Whether `typed` is one of "this|that". */
export const saysOneOf = (typed: string, list: string): boolean => list.split("|").some((words) => same(words, typed));
