/** Our own few words and the questions of a form, as notices. */
import type { FormQuestion } from "../forms.ts";
import type { Label } from "../outline.ts";
import type { Notice } from "./api.ts";
import { escapeHtml, unlinked } from "./escape.ts";

const notice = (body: string, html: string): Notice => ({
  msgtype: "m.notice",
  body,
  format: "org.matrix.custom.html",
  formatted_body: html,
  "m.mentions": {},
});

export const sentence = (words: string): Notice => notice(unlinked(words), `<p>${escapeHtml(words)}</p>`);

export function question({ where, text, hint, choices }: FormQuestion, before: string, label: Label): Notice {
  const list = choices.map(({ number, label: words }) => `${number}. ${unlinked(words)}`);
  const choose = choices.length > 1 ? label("choose-range", { from: choices[0]?.number ?? 1, to: choices.at(-1)?.number ?? 1 }) : "";
  const asides = [hint, choose].filter(Boolean);
  const items = choices.map(({ label: words }) => `<li>${escapeHtml(words)}</li>`).join("");
  return notice(
    [before && unlinked(before), `${where}: ${unlinked(text)}`, ...list, ...asides.map(unlinked)].filter(Boolean).join("\n"),
    [
      before && `<p>${escapeHtml(before)}</p>`,
      `<p><em>${escapeHtml(where)}</em> <strong>${escapeHtml(text)}</strong></p>`,
      items && `<ol>${items}</ol>`,
      ...asides.map((words) => `<p><em>${escapeHtml(words)}</em></p>`),
    ].filter(Boolean).join("\n"),
  );
}

/** The adapter's labels, but for what reads otherwise in a chat without empty lines. */
export const formLabel =
  (label: Label): Label =>
  (id, args) => label(id === "form-hint" ? "matrix-form-hint" : id, args);
