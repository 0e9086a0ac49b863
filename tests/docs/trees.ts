/** The tables of knowledge/TREES.md, made from the data itself: `npm run docs`. */
import type { Knowledge } from "../../src/knowledge/load.ts";
import type { Cause, Hazard, HowTo, Trouble } from "../../src/knowledge/schemas.ts";
import type { z } from "zod";

type Level = z.output<typeof Hazard>;
const LEVELS: readonly Level[] = ["none", "low", "medium", "high", "emergency"];
const gravest = (levels: readonly Level[]): Level => LEVELS[Math.max(...levels.map((level) => LEVELS.indexOf(level)))] ?? "none";

const cell = (words: string): string => words.replace(/\s+/g, " ").replaceAll("|", "\\|").trim();
const row = (...cells: readonly string[]): string => `| ${cells.map(cell).join(" | ")} |`;
const table = (head: readonly string[], rows: readonly (readonly string[])[]): string => [row(...head), row(...head.map(() => "---")), ...rows.map((one) => row(...one))].join("\n");

export function treesMarkdown({ troubles, howtos, firings }: Knowledge): string {
  const trees = [...troubles.values()];
  const guides = [...howtos.values()];
  return `# Every trouble and every how-to

Made from the files beside this one by \`npm run docs\`; do not edit it by hand.

${trees.length} troubles, ${trees.reduce((sum, tree) => sum + Object.keys(tree.causes).length, 0)} causes, ${trees.reduce((sum, tree) => sum + asked(tree).length, 0)} questions, ${guides.length} how-tos, ${firings.size} kinds of fire.
Shares are those before anything is known. "No fire" marks causes that have to be cleared before the next one.

${table(["Trouble", "Hazard", "Causes", "Questions", "From the records"], trees.map((tree) => [`[${tree.title}](#${tree.id})`, tree.hazard, String(Object.keys(tree.causes).length), String(asked(tree).length), String(recorded(tree).length)]))}

${table(["How-to", "Hazard", "Parts", "Sources"], guides.map((one) => [one.title, one.hazard, parts(one), one.sources.join("; ")]))}

${trees.map(tree).join("\n\n")}
`;
}

const asked = (tree: Trouble): string[] => Object.values(tree.signs).flatMap((sign) => sign.ask ?? []);
const recorded = (tree: Trouble): string[] => Object.values(tree.signs).flatMap((sign) => sign.record ?? []);
const parts = (howto: HowTo): string => howto.parts.flatMap((part) => part.title ?? []).join("; ");

function tree(trouble: Trouble): string {
  const causes = Object.values(trouble.causes).filter((cause) => cause.prior > 0);
  const sum = causes.reduce((total, cause) => total + cause.prior, 0);
  const rows = causes.toSorted((a, b) => b.prior - a.prior).map((cause) => [
    cause.title, `${Math.round((100 * cause.prior) / sum)} %`, cause.hazard + (cause.no_fire ? ", no fire" : ""), onlyFor(cause), cause.call.join(", "), cause.source,
  ]);
  return `<a id="${trouble.id}"></a>
## ${trouble.title}

${trouble.symptom} Hazard: ${gravest([trouble.hazard, ...causes.map((cause) => cause.hazard)])}.

${table(["Cause", "Share", "Hazard", "Only for", "Call", "Source"], rows)}

Questions: ${asked(trouble).map((question) => `"${cell(question)}"`).join(" ") || "none"}
${recorded(trouble).length > 0 ? `\nAnswered by the records: ${recorded(trouble).join(", ")}.\n` : ""}
Sources: ${trouble.sources.join("; ")}.`;
}

const onlyFor = (cause: Cause): string =>
  Object.entries(cause.when ?? {})
    .map(([fact, value]) => `${fact}: ${[value].flat().join(" or ")}`)
    .join(", ");
