/**
 * What a button, a select or a modal is called. Where it fits, the id says by itself which choice it is, so that a button shown before a
 * restart, or by another process, works; else it names the message that was answered (`ref`) and the number of the choice.
 */

export type Action = "choose" | "pick" | "form" | "share";

const MOST = 100;

export const customId = (action: Action, ref: string, at: number): string => `v1:${action}:${ref}.${at}`;

/** A choice's own id in a button; by reference when it is too long or not plain. */
export function choiceId(ref: string, at: number, choice: string): string {
  const own = `v1:is:${at}:${choice}`;
  return own.length <= MOST && isPlain(choice) ? own : customId("choose", ref, at);
}
/** The same as an option of a select. */
export function optionValue(at: number, choice: string): string {
  const own = `${at}:${choice}`;
  return own.length <= MOST && isPlain(choice) ? own : String(at);
}
const isPlain = (choice: string): boolean => /^[\x21-\x7E](?:[\x20-\x7E]*[\x21-\x7E])?$/.test(choice);

export type Pressed =
  | { readonly action: "is"; readonly choice: string }
  | {
      readonly action: Action;
      readonly ref: string;
      /** choose: the choice's number; pick: which select; form: which form and page; share: 0 */
      readonly at: number;
    };

/** Null for what Gleed of this version did not make. */
export function readCustomId(id: string): Pressed | null {
  const own = /^v1:is:\d{1,4}:(.{1,98})$/.exec(id);
  if (own) return { action: "is", choice: own[1] ?? "" };
  const found = /^v1:(choose|pick|form|share):([\w-]{1,80})\.(\d{1,6})$/.exec(id);
  return found ? { action: found[1] as Action, ref: found[2] ?? "", at: Number(found[3]) } : null;
}

/** @returns the choice's id, or the number it has in the answer */
export function readOption(value: string): string | number {
  const found = /^(\d{1,4})(?::(.+))?$/.exec(value);
  return found?.[2] ?? Number(found?.[1] ?? 0);
}
