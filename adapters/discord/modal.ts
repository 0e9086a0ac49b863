/** A form as modals of at most five fields: one button a page, each page complete in itself since every field may be left out. */
import type { Field, FormPiece, Label } from "../outline.ts";
import { chunks } from "../pack.ts";
import { shorten } from "../plain.ts";
import { type ActionRow, LIMITS, type Modal, type ModalLabel, type StringSelect, type TextInput } from "./api.ts";
import { customId } from "./custom-id.ts";

export const pages = (form: FormPiece): Field[][] => chunks(form.fields, () => 1, LIMITS.modal_fields);

const partLabel = (at: number, of: number, label: Label): string =>
  of > 1 ? label("form-part", { part: at + 1, parts: of }) : label("form-fill");

/** The buttons that open the pages. */
export function formRows(form: FormPiece, ref: string, label: Label): ActionRow[] {
  const all = pages(form);
  const buttons = all.map((_, at) => ({
    type: 2 as const,
    style: 2 as const,
    label: shorten(partLabel(at, all.length, label) || String(at + 1), LIMITS.button_label),
    custom_id: customId("form", ref, form.choice.number * 100 + at),
  }));
  return chunks(buttons, () => 1, LIMITS.buttons_in_row).map((row) => ({ type: 1, components: row }));
}

/** Which form of an answer, by its number, and which page a pressed button means. */
export const formPage = (at: number): { number: number; page: number } => ({ number: Math.floor(at / 100), page: at % 100 });

/** @throws RangeError when the form has no such page. */
export function renderModal(form: FormPiece, page: number, ref: string, label: Label): Modal {
  const all = pages(form);
  const fields = all[page];
  if (!fields) throw new RangeError(`form ${form.id} has ${all.length} pages, not ${page + 1}`);
  const where = all.length > 1 ? ` (${label("part", { part: page + 1, parts: all.length })})` : "";
  return {
    title: shorten(form.title || "·", LIMITS.modal_title - where.length) + where,
    custom_id: customId("form", ref, form.choice.number * 100 + page),
    components: fields.map((field, at) => modalField(field, page * LIMITS.modal_fields + at, label)),
  };
}

/** What was filled in, by the fields' own keys; `filled` has the components' ids and values as Discord sends them. */
export function readModal(form: FormPiece, filled: Readonly<Record<string, string | readonly string[]>>): Record<string, string | boolean> {
  const values: Record<string, string | boolean> = {};
  form.fields.forEach((field, at) => {
    const found = filled[`f${at}`];
    const value = typeof found === "string" ? found.trim() : found?.[0];
    if (value === undefined || value === "") return;
    values[field.key] = isSelect(field) ? (field.kind === "yes-no" ? value === "1" : (field.choices[Number(value)]?.id ?? value)) : value;
  });
  return values;
}

const isSelect = (field: Field): boolean => field.kind === "yes-no" || (field.choices.length > 0 && field.choices.length <= LIMITS.options);

function modalField(field: Field, at: number, label: Label): ModalLabel {
  const name = field.unit ? `${field.label} (${field.unit})` : field.label;
  const about = [name.length > LIMITS.field_label ? name : "", field.hint ?? ""].filter(Boolean).join(" · ");
  return {
    type: 18,
    label: shorten(name, LIMITS.field_label) || String(at + 1),
    ...(about ? { description: shorten(about, LIMITS.field_description) } : {}),
    component: isSelect(field) ? select(field, at, label) : input(field, at),
  };
}

function select(field: Field, at: number, label: Label): StringSelect {
  const options =
    field.kind === "yes-no"
      ? [
          { label: label("yes") || "+", value: "1", now: field.value === "true" },
          { label: label("no") || "-", value: "0", now: field.value === "false" },
        ]
      : field.choices.map((choice, number) => ({
          label: choice.label || String(number + 1),
          value: String(number),
          now: choice.id === field.value,
        }));
  return {
    type: 3,
    custom_id: `f${at}`,
    required: false,
    options: options.map(({ now, ...option }) => ({
      ...option,
      label: shorten(option.label, LIMITS.option_label),
      ...(now ? { default: true } : {}),
    })),
  };
}

function input(field: Field, at: number): TextInput {
  const choices = field.choices.map((choice) => choice.label).join(", ");
  return {
    type: 4,
    custom_id: `f${at}`,
    style: field.kind === "text" ? 2 : 1,
    required: false,
    max_length: field.kind === "text" ? LIMITS.field_value : 200,
    ...(field.value ? { value: shorten(field.value, field.kind === "text" ? LIMITS.field_value : 200) } : {}),
    ...(choices ? { placeholder: shorten(choices, LIMITS.field_placeholder) } : {}),
  };
}
