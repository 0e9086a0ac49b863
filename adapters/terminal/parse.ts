/** What a typed line means: a choice that is open, or words. */
import type { Answer } from "../../src/answer.ts";
import { same } from "../forms.ts";
import type { Numbered, Outline } from "../outline.ts";

export type Typed =
  | { readonly means: "choice"; readonly choice: string }
  | { readonly means: "form"; readonly id: string }
  | { readonly means: "text"; readonly text: string };

/**
 * The number of an open choice, or its whole label. Nothing less: "yes" is never read as "yes, and ...", a number that
 * nothing bears is words.
 */
export function parse(line: string, open: readonly Numbered[]): Typed {
  const words = line.trim();
  const number = /^#?(\d{1,4})[.)]?$/.exec(words)?.[1];
  const byNumber = number === undefined ? undefined : open.find((choice) => choice.number === Number(number));
  const byLabel = open.filter((choice) => same(choice.label, words));
  const chosen = byNumber ?? (byLabel.length === 1 ? byLabel[0] : undefined);
  if (!chosen) return { means: "text", text: words };
  return chosen.opens === "form" ? { means: "form", id: chosen.id } : { means: "choice", choice: chosen.id };
}

/** The choices of one answer that can still be taken. */
export interface Open {
  /** the typed line after which it was shown: lines typed before it cannot mean it */
  readonly after: number;
  /** key of the live answer that they belong to */
  readonly live?: string;
  readonly outline: Outline;
}

const answerable = (answer: Answer): string[] =>
  answer.blocks.flatMap((block) =>
    block.kind === "choices" || block.kind === "question"
      ? block.choices.map((choice) => choice.id)
      : block.kind === "form"
        ? [block.id]
        : [],
  );

/**
 * The number at which an answer starts counting, so that a number typed just as it comes still means what it meant: from 1 when no
 * open choice bears those numbers, else past them all. A live answer with the same choices keeps its numbers.
 */
export function firstNumber(open: readonly Open[], answer: Answer): number {
  const ids = answerable(answer);
  const own = answer.live === undefined ? undefined : open.find((one) => one.live === answer.live)?.outline.numbered;
  if (own?.[0] && own.map((choice) => choice.id).join("\n") === ids.join("\n")) return own[0].number;
  const taken = open.flatMap((one) => one.outline.numbered.map((choice) => choice.number));
  return taken.some((number) => number <= ids.length) ? Math.max(...taken) + 1 : 1;
}
