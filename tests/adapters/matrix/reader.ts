/**
 * Reads a formatted body the strict way: only the tags and attributes that the client-server specification recommends (m.room.message,
 * "rich text"), each closed where it belongs, no bare `<`, `>` or `&`. Independent of the code that is checked.
 */

const TAGS = new Set(
  "del h1 h2 h3 h4 h5 h6 blockquote p a ul ol sup sub li b i u strong em s code hr br div table thead tbody tr th td caption pre span img details summary".split(
    " ",
  ),
);
const VOID = new Set(["br", "hr"]);
const ENTITIES: Record<string, string> = { amp: "&", lt: "<", gt: ">", quot: '"', "#39": "'" };

export interface Read {
  readonly text: string;
  readonly wrong: readonly string[];
}

export function readHtml(html: string): Read {
  const wrong: string[] = [];
  const open: string[] = [];
  let text = "";
  for (const [token, tag] of html.matchAll(/<(\/?[^<>]*)>|[^<>]+|[<>]/g)) {
    if (tag === undefined) {
      if (token === "<" || token === ">") wrong.push(`a bare ${token}`);
      text += token.replace(/&([^;]{0,8};)?/g, (entity, name?: string) => {
        const letter = ENTITIES[(name ?? "").slice(0, -1)];
        if (letter === undefined) wrong.push(`a bare or unknown ${entity}`);
        return letter ?? entity;
      });
      continue;
    }
    const parsed = /^(\/?)([a-z0-9]+)( start="\d{1,4}")?$/.exec(tag);
    const name = parsed?.[2] ?? "";
    if (!parsed || !TAGS.has(name) || (parsed[3] && name !== "ol")) wrong.push(`the tag ${token}`);
    if (["h3", "h4", "p", "li", "tr", "td", "th", "br", "blockquote", "pre"].includes(name)) text += "\n";
    if (VOID.has(name)) continue;
    if (parsed?.[1] !== "/") open.push(name);
    else if (open.pop() !== name) wrong.push(`${token} closes something else`);
  }
  if (open.length > 0) wrong.push(`${open} left open`);
  return { text, wrong };
}

/** What clients make a link or a mention of by themselves: addresses with or without a scheme, people, rooms. */
export function links(text: string): string[] {
  return [
    ...text.matchAll(
      /\b[a-z][a-z0-9+.-]*:\/\/\S|\b(?:mailto|matrix|javascript):\S|[\p{L}\p{N}]\.(?:com|example|gg|org)\b|[@#!][\w.-]+:[\w-]|@room\b|[\w.]@[\w-]+\.\w/giu,
    ),
  ].map(([found]) => found);
}
