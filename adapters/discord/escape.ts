/** Words as they are, whatever they contain: Discord's Markdown, mentions, tokens and links made harmless. */

/**
 * A backslash before: every mark of Markdown; `<` and `@`, which open mentions, channels, emoji, timestamps and commands; the colon of a
 * link or an emoji's name; the slash of an invitation; what starts a heading, a list or small print in a line.
 */
const MARKS = /[\\*_~`|<>@[\]#]|:(?=\S)|(?<=[^\s\d])\/(?=\S)|(?<=^[^\S\n]*)[-+](?=\s|#)|(?<=^[^\S\n]*\d+)[.)](?=\s|$)/gmu;

export const escapeMarkdown = (words: string): string => words.replace(MARKS, "\\$&");

/** Inside a fixed-width block nothing is markup but its end. */
export const codeBlock = (lines: readonly string[]): string => `\`\`\`\n${lines.join("\n").replace(/`/g, "ˋ")}\n\`\`\``;
