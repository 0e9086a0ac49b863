/** What both sides of the builder's desk say alike: rules in words, names, the question to the owner. */
import { ask, steps, text, verbatim, type Arg, type Block, type Text } from "../../answer.ts";
import type { RuleGiven, Tightened } from "../../builder/rules.ts";
import { q } from "../../quantities.ts";
import type { BuilderLink } from "../../records/types.ts";
import { blocks } from "../context.ts";

export const nameOf = (name: string | undefined): Arg => name ?? text("builder.somebody");

export const ruleHeadline = (done: readonly Tightened[]): Text => {
  const taken = done.some((one) => Object.keys(one.taken).length > 0);
  return text(!taken ? "builder.none-taken" : done.some(({ refused }) => refused.length > 0) ? "builder.some-taken" : "builder.taken");
};

export function ruleBlocks({ taken, refused }: Pick<Tightened, "taken" | "refused">): Block[] {
  const lines = ruleLines(taken);
  return blocks(
    lines.length > 0 && steps(lines, { ordered: false }),
    refused.length > 0 && steps(refused, { ordered: false, title: text("builder.refused"), cautions: ["over-firing"] }),
  );
}

export function ruleLines(rule: RuleGiven): Text[] {
  const kg = (key: "max_load_kg" | "min_load_kg" | "max_day_kg"): Text[] => (rule[key] === undefined ? [] : [text(`builder.line.${key}`, { load: q(rule[key], "kg", { digits: 1 }) })]);
  return [
    ...(rule.kind ? [text("builder.line.kind", { kind: text(`fact.kind.${rule.kind}`) })] : []),
    ...kg("max_load_kg"), ...kg("min_load_kg"), ...kg("max_day_kg"),
    ...(rule.spacing_h === undefined ? [] : [text("builder.line.spacing_h", { spacing: q(rule.spacing_h, "h") })]),
    ...(rule.lighting ? [text(`builder.lighting.${rule.lighting}`)] : []),
    ...(["close_down", "words", "call"] as const).flatMap((key) => (rule[key] === undefined ? [] : [text(`builder.line.${key}`, { words: verbatim(rule[key]) })])),
  ];
}

export const acceptQuestion = (link: Pick<BuilderLink, "person_id" | "name">): Block =>
  ask("builder", text("builder.accept-ask", { name: nameOf(link.name) }), [
    { id: `builder:accept:${link.person_id}`, label: text("builder.choice.accept") }, { id: `builder:decline:${link.person_id}`, label: text("builder.choice.decline") },
  ]);
