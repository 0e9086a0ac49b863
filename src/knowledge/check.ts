/** What a schema cannot see: references that lead nowhere, weights for answers that do not exist, hazards without a caution. */
import { isTopic, topicFacts } from "../topics.ts";
import type { Trouble } from "./schemas.ts";

export function checkTrouble(trouble: Trouble): string[] {
  const file = `knowledge/troubles/${trouble.id}.yaml`;
  const problems: string[] = [];
  const causes = Object.entries(trouble.causes);
  if (causes.length < 2) problems.push(`${file}: a trouble has at least two causes.`);

  for (const [sign, { kind, answers, ask, stop, record }] of Object.entries(trouble.signs)) {
    const at = `${file}: signs > ${sign}`;
    const ids = new Set(kind === "yes-no" ? ["yes", "no"] : (answers ?? []).map((answer) => answer.id));
    const isFigure = kind !== "yes-no" && kind !== "choice";
    if (!ask && !record) problems.push(`${at}: it is neither asked nor read from a record, so nobody could ever answer it.`);
    if (kind === "choice" && ids.size < 2) problems.push(`${at}: a choice needs at least two answers.`);
    if (isFigure && (answers ?? []).some((answer) => answer.value === undefined)) problems.push(`${at}: each answer to a figure stands for a value.`);
    for (const [answer, end] of Object.entries(stop ?? {})) {
      if (!ids.has(answer) && answer !== "unknown") problems.push(`${at}: stop names the answer "${answer}", which does not exist.`);
      if (end.cause && !(end.cause in trouble.causes)) problems.push(`${at}: stop leads to the cause "${end.cause}", which does not exist.`);
      if (!end.cause && !end.emergency) problems.push(`${at}: stop > ${answer} leads nowhere; name a cause or an emergency.`);
    }
    const weighed = causes.some(([, cause]) => sign in cause.weighs) || Object.keys(stop ?? {}).length > 0;
    if (!weighed) problems.push(`${at}: no cause weighs it, so asking it would be idle.`);
  }

  for (const [id, cause] of causes) {
    const at = `${file}: causes > ${id}`;
    for (const [sign, weights] of Object.entries(cause.weighs)) {
      const known = trouble.signs[sign];
      if (!known) {
        problems.push(`${at}: it weighs "${sign}", which is not among the signs.`);
        continue;
      }
      const isFigure = known.kind !== "yes-no" && known.kind !== "choice";
      const ids = new Set(known.kind === "yes-no" ? ["yes", "no"] : (known.answers ?? []).map((answer) => answer.id));
      for (const key of Object.keys(weights)) {
        if (isFigure ? !Number.isFinite(Number(key)) : !ids.has(key)) problems.push(`${at}: weighs > ${sign} > ${key} is not ${isFigure ? "a figure" : "one of its answers"}.`);
      }
      if (isFigure && Object.keys(weights).length < 2) problems.push(`${at}: weighs > ${sign} needs at least two figures to lie between.`);
    }
    for (const sign of Object.keys(cause.because)) {
      if (!(sign in cause.weighs)) problems.push(`${at}: because > ${sign} explains a sign that the cause does not weigh.`);
    }
    if (cause.now.length + cause.before_next_fire.length + cause.call.length === 0) problems.push(`${at}: it says neither what to do now, nor before the next fire, nor whom to call.`);
    if ((cause.hazard === "high" || cause.hazard === "emergency" || cause.no_fire) && cause.cautions.length + trouble.cautions.length === 0) {
      problems.push(`${at}: it can hurt someone and names no caution.`);
    }
  }
  if ((trouble.hazard === "high" || trouble.hazard === "emergency") && trouble.cautions.length === 0) problems.push(`${file}: it can hurt someone and names no caution.`);
  return problems;
}

/** Its id names nothing else, what lies near exists, and one whom the router does not know says by which words it is meant. */
export function checkName({ id, words, near }: Trouble, troubles: ReadonlySet<string>): string[] {
  const file = `knowledge/troubles/${id}.yaml`;
  const problems: string[] = [];
  if (isTopic(id) && topicFacts(id).group !== "trouble") problems.push(`${file}: "${id}" already names something else Gleed can do; take another word for the id.`);
  for (const other of near) if (!isTopic(other) && !troubles.has(other)) problems.push(`${file}: near: there is no topic "${other as string}"; take the file name of a trouble or how-to, without .yaml.`);
  if (!isTopic(id)) {
    const telling = words.filter((phrase) => phrase.trim().split(/\s+/).length >= 2);
    if (telling.length < 3) problems.push(`${file}: words: name at least three phrases of two words or more that an owner would write; nobody finds it otherwise. It has ${telling.length}.`);
  }
  return problems;
}

/** Every caution id named anywhere inside is one that exists. */
export function checkCautions(file: string, thing: unknown, known: ReadonlySet<string>, at = ""): string[] {
  if (Array.isArray(thing)) return thing.flatMap((entry, i) => checkCautions(file, entry, known, `${at}[${i}]`));
  if (typeof thing !== "object" || thing === null) return [];
  return Object.entries(thing).flatMap(([key, value]) =>
    key === "cautions" && Array.isArray(value)
      ? value.filter((id) => !known.has(id)).map((id) => `${file}: ${at ? `${at} > ` : ""}cautions: "${id}" is not in knowledge/cautions.yaml.`)
      : checkCautions(file, value, known, at ? `${at} > ${key}` : key),
  );
}
