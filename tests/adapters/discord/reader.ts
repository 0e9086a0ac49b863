/**
 * Reads Discord's Markdown the way its clients show it, in the order of their rules: fixed-width blocks, escapes, then everything that
 * is markup. What a client would turn into something else than its characters is dropped or reported, so that words that come out
 * whole were harmless. Written from the public description of the format (message formatting, and Markdown help for users).
 */
import type { DiscordMessage } from "../../../adapters/discord/api.ts";

export interface Read {
  readonly text: string;
  /** mentions, tokens, links, emoji */
  readonly live: readonly string[];
}

const LIVE = [
  /<@[!&]?\d+>|<#\d+>|<a?:\w+:\d+>|<t:-?\d+(?::\w)?>|<\/[^>]+:\d+>|<id:\w+>/g,
  /@(?:everyone|here)\b/g,
  /\[[^\]]*\]\([^)]*\)/g,
  /\bhttps?:\/\/\S+/g,
  /\bdiscord(?:\.gg|(?:app)?\.com\/invite)\/\w+/g,
  /:[a-zA-Z0-9_+-]+:/g,
];
/** Lines that start like this are a heading, small print, a quotation or an item of a list. */
const LINE_STARTS = /^(?:#{1,3} |-# |>>> |> | *(?:[-*+]|\d+[.)]) )/;

export function readMarkdown(content: string): Read {
  const live: string[] = [];
  const pieces = content.split(/(```\n[\s\S]*?\n```)/);
  const text = pieces
    .map((piece, at) => {
      if (at % 2 === 1) return piece.slice(4, -4);
      const kept: string[] = [];
      // what is escaped takes no part in any rule: one private character stands for each, and comes back at the end
      let bare = piece.replace(/\\([^0-9A-Za-z\s])/g, (_, mark: string) => String.fromCharCode(0xe000 + kept.push(mark) - 1));
      for (const rule of LIVE) {
        bare = bare.replace(rule, (found) => {
          live.push(found);
          return "";
        });
      }
      const lines = bare.split("\n").map((line) => {
        let rest = line;
        const start = LINE_STARTS.exec(rest);
        if (start) rest = rest.slice(start[0].length);
        const inner = /^- /.exec(rest);
        return inner ? rest.slice(2) : rest;
      });
      return lines
        .join("\n")
        .replace(/\*\*|\*|__|_|~~|\|\||`+/g, "")
        .replace(/[\uE000-\uF8FF]/g, (mark) => kept[mark.charCodeAt(0) - 0xe000] ?? mark);
    })
    .join("");
  return { text, live };
}

/** All that a reader of the messages sees, top to bottom. */
export function readMessages(messages: readonly DiscordMessage[]): Read {
  const live: string[] = [];
  const read = (component: any): string => {
    if (component.type === 10) {
      const found = readMarkdown(component.content);
      live.push(...found.live);
      return found.text;
    }
    if (component.type === 12) return component.items.map((item: any) => item.description).join(" ");
    if (component.type === 2) return component.label;
    if (component.type === 3) return component.options.map((option: any) => option.label).join(" ");
    return (component.components ?? []).map(read).join("\n");
  };
  const where = (component: any): boolean => component.type === 10 && /^-# \d+ of \d+$/.test(component.content);
  return {
    text: messages
      .map((message) =>
        message.payload.components
          .filter((one) => !where(one))
          .map(read)
          .join("\n"),
      )
      .join("\n"),
    live,
  };
}
