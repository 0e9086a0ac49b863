/** Choices as buttons where they are few and short, else as selects of at most 25. */
import type { Label, Numbered } from "../outline.ts";
import { chunks } from "../pack.ts";
import { shorten } from "../plain.ts";
import { type ActionRow, type Button, LIMITS } from "./api.ts";
import { choiceId, customId, optionValue } from "./custom-id.ts";

/** Longer labels are cut off on a phone's button. */
const SHORT = 38;
const FEW = 10;

/** How choices are shown: as buttons with their words, as numbered buttons below the words, as selects with or without the words above. */
type Shown = "buttons" | "numbers" | "selects" | "written-selects";

const shown = (choices: readonly Numbered[]): Shown => {
  const longest = Math.max(...choices.map((choice) => choice.label.length));
  if (choices.length <= FEW) return longest <= SHORT ? "buttons" : "numbers";
  return longest <= LIMITS.option_label - 5 ? "selects" : "written-selects";
};

/** Whether the components do not show every label whole: then the text does, numbered. */
export const needsWords = (choices: readonly Numbered[]): boolean => ["numbers", "written-selects"].includes(shown(choices));

export function choiceRows(choices: readonly Numbered[], ref: string, label: Label): ActionRow[] {
  const how = shown(choices);
  if (how === "buttons" || how === "numbers") {
    return chunks(choices, () => 1, LIMITS.buttons_in_row).map((row) => ({
      type: 1,
      components: row.map((choice) => button(choice, ref, how === "numbers")),
    }));
  }
  const lists = chunks(choices, () => 1, LIMITS.options);
  return lists.map((list, at) => ({
    type: 1,
    components: [
      {
        type: 3,
        custom_id: customId("pick", ref, list[0]?.number ?? at),
        placeholder: shorten(
          lists.length > 1 ? label("choose-range", { from: list[0]?.number ?? 0, to: list.at(-1)?.number ?? 0 }) : label("choose"),
          LIMITS.placeholder,
        ),
        options: list.map((choice) => ({
          label: shorten(`${choice.number} ${choice.label}`.trim(), LIMITS.option_label),
          value: optionValue(choice.number, choice.id),
        })),
      },
    ],
  }));
}

const button = (choice: Numbered, ref: string, numberOnly: boolean): Button => ({
  type: 2,
  style: 2,
  label: numberOnly || !choice.label ? String(choice.number) : choice.label,
  custom_id: choiceId(ref, choice.number, choice.id),
});
