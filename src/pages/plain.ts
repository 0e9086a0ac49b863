/** A document as plain words, for a talk that cannot carry files and for text files to send on. */
import type { Document, PageBlock, Text } from "../answer.ts";
import { format } from "../quantities.ts";
import type { Reader } from "../text/render.ts";

export const toPlain = (document: Document, say: (one: Text) => string, reader: Reader): string =>
  document.body.map((block) => words(block, say, reader)).filter((one) => one !== "").join("\n\n");

function words(block: PageBlock, say: (one: Text) => string, reader: Reader): string {
  switch (block.kind) {
    case "text":
    case "heading":
      return say(block.text);
    case "steps":
      return [...(block.title ? [`${say(block.title)}:`] : []), ...block.steps.map((step, i) => `${block.ordered ? `${i + 1}.` : "-"} ${say(step)}`)].join("\n");
    case "table":
      return [...(block.caption ? [say(block.caption)] : []), ...[block.columns, ...block.rows].map((row) => row.map(say).join(" | "))].join("\n");
    case "numbers":
      return block.items.map((item) => `${say(item.label)}: ${format(item.quantity, reader)}`).join("\n");
    case "quote":
      return `${say(block.who)}: ${say(block.words)}`;
    case "drawing":
      return "";
  }
}
