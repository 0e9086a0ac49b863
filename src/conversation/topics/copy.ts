/** "Give me a copy": the answer with two documents to be filled by whoever can read everything (core/export.ts). In private only. */
import { say, text } from "../../answer.ts";
import type { Context, Outcome } from "../context.ts";

export const COPY_JSON = "my-records.json";
export const COPY_CSV = "my-fires.csv";

export function copyOutcome({ snapshot }: Context): Outcome {
  if (snapshot.place.kind !== "private") return { draft: { topic: "my-data", headline: text("data.private-only") } };
  return {
    draft: {
      topic: "my-data",
      headline: text("data.copy"),
      blocks: [
        { kind: "document", cautions: [], document: { name: COPY_JSON, media_type: "application/json", title: text("data.copy-json"), body: [], twin: true } },
        { kind: "document", cautions: [], document: { name: COPY_CSV, media_type: "text/csv", title: text("data.copy-csv"), body: [], twin: true } },
        say(text("data.rights")),
      ],
    },
  };
}
export const asksForCopy = (words: string): boolean => /\b(?:copy|export|download)\b/i.test(words);
