/** What is wrong with an answer as each network would get it; written from the networks' rules, not from the code that lays it out. */
import { type FormTalk, beginForm, fillIn, formQuestion } from "../../../adapters/forms.ts";
import { renderModal } from "../../../adapters/discord/modal.ts";
import { renderDiscord } from "../../../adapters/discord/render.ts";
import { write } from "../../../adapters/lines/render.ts";
import { renderMatrix } from "../../../adapters/matrix/render.ts";
import { question } from "../../../adapters/matrix/words.ts";
import { labels, outline, type FormPiece, type Label, type Options } from "../../../adapters/outline.ts";
import { renderFormQuestion, renderTerminal, type Screen } from "../../../adapters/terminal/render.ts";
import { width } from "../../../adapters/width.ts";
import type { Answer } from "../../../src/answer.ts";
import { modalOverLimits, overLimits } from "../discord/limits.ts";
import { readMessages } from "../discord/reader.ts";
import { links, readHtml } from "../matrix/reader.ts";
import { squeeze } from "../reading.ts";

export interface Look {
  readonly wrong: readonly string[];
  /** HTML that was made, for whoever parses it once more */
  readonly html?: readonly string[];
}
export type Mouth = (answer: Answer, options: Options, screen: Screen) => { readonly made: unknown; look(): Look };

/** Control characters but the line feed, what turns the direction of writing, what has no width but parts words. */
const ACTIVE = /(?!\n)\p{Cc}|\p{Noncharacter_Code_Point}|[\u061C\u200B\u200E\u200F\u202A-\u202E\u2028\u2029\u2060-\u2069\uFEFF\u{E0000}-\u{E007F}]/u;
/** More marks on one letter than any script puts there paint over the lines around. */
const STACK = /\p{M}{9}/u;

export function unclean(words: string, where: string): string[] {
  const found = ACTIVE.exec(words) ?? STACK.exec(words);
  return [
    ...(found ? [`${where}: active U+${found[0].codePointAt(0)?.toString(16)} in ${JSON.stringify(words.slice(Math.max(0, found.index - 30), found.index + 30))}`] : []),
    ...(words.isWellFormed() ? [] : [`${where}: half a character`]),
  ];
}

function cut(answer: Answer, { render, reader }: Options, read: string, where: string): string[] {
  if (!answer.hazard) return [];
  const seen = squeeze(read);
  return answer.cautions.filter(({ text }) => !seen.includes(squeeze(render(text, reader)))).map(({ id }) => `${where}: caution ${id} is not whole`);
}

const forms = (answer: Answer, options: Options): readonly FormPiece[] => outline(answer, options).forms;
/** Every question of a form, each answered with a blank. */
function questions(form: FormPiece, label: Label): NonNullable<ReturnType<typeof formQuestion>>[] {
  const asked: NonNullable<ReturnType<typeof formQuestion>>[] = [];
  let talk: FormTalk | null = beginForm(form);
  while (talk) {
    const one = formQuestion(talk, label);
    if (one) asked.push(one);
    const next = fillIn(talk, "", label);
    talk = next.step === "next" ? next.talk : null;
  }
  return asked;
}

const lines: Mouth = (answer, options) => {
  const made = write(answer, options.render, options.reader);
  return {
    made,
    look() {
      const strings = (value: unknown): string[] => (typeof value === "string" ? [value] : typeof value === "object" && value !== null ? Object.entries(value).flatMap(([key, one]) => [key, ...strings(one)]) : []);
      const missing = made.cautions.filter(({ text }) => !made.text.includes(text)).map(({ id }) => `lines: caution ${id} is not whole`);
      return { wrong: [...strings(made).flatMap((words) => unclean(words, "lines")), ...missing, ...(JSON.stringify(made).includes("\n") ? ["lines: more than one line"] : [])] };
    },
  };
};

/** our own colours */
const COLOURS = /\u001b\[\d+(?:;\d+)*m/g;

const terminal: Mouth = (answer, options, screen) => {
  const label = labels(options);
  const made = [...renderTerminal(answer, options, screen).lines, ...forms(answer, options).flatMap((form) => questions(form, label).flatMap((one) => renderFormQuestion(one, label, screen)))];
  return {
    made,
    look() {
      const bare = made.map((line) => (screen.colour ? line.replace(COLOURS, "") : line));
      const wide = bare.filter((line) => width(line) > Math.max(16, screen.columns)).map((line) => `terminal: ${width(line)} of ${screen.columns} columns: ${line}`);
      return { wrong: [...bare.flatMap((line) => [...unclean(line, "terminal"), ...(line.includes("\n") ? ["terminal: a line breaks"] : [])]), ...wide, ...cut(answer, options, bare.join("\n"), "terminal")] };
    },
  };
};

/** Outside of fixed-width blocks: whatever opens a mention or a link without a backslash before it. */
const BARE = /(?<!\\)(?:\\\\)*(?:<[@#:/ati]|@(?:everyone|here)|\]\(|[a-z]:\/\/|<)/iu;

const discord: Mouth = (answer, options) => {
  const label = labels(options);
  const made = renderDiscord(answer, { ...options, ref: "fuzz", share: true, ephemeral: true });
  const modals = forms(answer, options).flatMap((form) => Array.from({ length: Math.ceil(form.fields.length / 5) }, (_, page) => renderModal(form, page, "fuzz", label)));
  return {
    made: [made, modals],
    look() {
      const read = readMessages(made);
      const contents = (list: readonly unknown[]): string[] => list.flatMap((one) => { const { content, components = [] } = one as { content?: string; components?: unknown[] }; return [...(content === undefined ? [] : [content]), ...contents(components)]; });
      const raw = made.flatMap(({ payload }) => contents(payload.components)).map((words) => words.replace(/```\n[\s\S]*?\n```/g, ""));
      return {
        wrong: [
          ...made.flatMap(overLimits), ...modals.flatMap(modalOverLimits), ...read.live.map((words) => `Discord: live ${words}`),
          ...raw.filter((words) => BARE.test(words)).map((words) => `Discord: bare ${BARE.exec(words)?.[0]} in ${words.slice(0, 200)}`),
          ...unclean(read.text, "Discord"), ...modals.flatMap((modal) => unclean(JSON.stringify(modal).replaceAll("\\n", ""), "modal")), ...cut(answer, options, read.text, "Discord"),
        ],
      };
    },
  };
};

const matrix: Mouth = (answer, options) => {
  const label = labels(options);
  const made = renderMatrix(answer, options);
  const asked = forms(answer, options).flatMap((form) => questions(form, label).map((one) => question(one, "", label)));
  return {
    made: [made, asked],
    look() {
      const contents = [...made.map(({ content }) => content), ...asked];
      const html = contents.flatMap((content) => ("formatted_body" in content ? [content.formatted_body] : []));
      const read = html.map(readHtml);
      const bodies = contents.map(({ body }) => body).join("\n");
      const rich = read.map(({ text }) => text).join("\n");
      return {
        html,
        wrong: [
          ...contents.filter((content) => JSON.stringify(content["m.mentions"]) !== "{}").map(() => "Matrix: somebody is called"),
          ...read.flatMap(({ wrong }) => wrong.map((one) => `Matrix: ${one}`)), ...[bodies, rich].flatMap((words) => links(words).map((one) => `Matrix: live ${one}`)),
          ...contents.flatMap((content) => (Buffer.byteLength(JSON.stringify(content)) > 40_000 ? ["Matrix: an event too long"] : [])),
          ...[bodies, rich].flatMap((words) => unclean(words, "Matrix")), ...cut(answer, options, bodies, "Matrix body"), ...cut(answer, options, rich, "Matrix HTML"),
        ],
      };
    },
  };
};

export const MOUTHS: Readonly<Record<string, Mouth>> = { lines, terminal, discord, matrix };
