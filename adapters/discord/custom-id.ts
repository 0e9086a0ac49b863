/** What a button, a select or a modal is called: `v1:<action>:<ref>`, the ref naming the shown answer in the adapter's store. */

export type Action = "choose" | "pick" | "form";

export const customId = (action: Action, ref: string, at: number): string => `v1:${action}:${ref}.${at}`;

export interface Pressed {
  readonly action: Action;
  readonly ref: string;
  /** choose: the choice's number; pick: which select; form: which page */
  readonly at: number;
}

/** Null for what Gleed of this version did not make. */
export function readCustomId(id: string): Pressed | null {
  const found = /^v1:(choose|pick|form):([\w-]{1,80})\.(\d{1,4})$/.exec(id);
  return found ? { action: found[1] as Action, ref: found[2] ?? "", at: Number(found[3]) } : null;
}
