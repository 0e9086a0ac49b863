/** The parts of the page: each entry of the knowledge as one block of HTML that can be opened, found and printed. */
import type { Knowledge } from "../../knowledge/load.ts";
import type { Cause, Firing, HowTo, Trouble, When } from "../../knowledge/schemas.ts";
import type { UpkeepTask } from "../../knowledge/upkeep-schema.ts";
import { escapeHtml as e } from "../html.ts";
import { treeSvg } from "./tree-svg.ts";

/** Texts of one language, English where it has none; arguments are plain words. */
export interface Say {
  (id: string, args?: Readonly<Record<string, string | number>>): string;
  has(id: string): boolean;
  readonly locale: string;
}
export interface Species {
  readonly never_burn: readonly { readonly name: string; readonly why: string }[];
  readonly species: readonly {
    readonly botanical: string; readonly name: string; readonly also?: Readonly<Record<string, readonly string[]>>; readonly kind: "softwood" | "hardwood";
    readonly basic_density: number; readonly seasoning?: number; readonly note?: string; readonly do_not_burn?: string;
  }[];
}

const LEVELS = ["emergency", "high", "medium", "low", "none"];
const list = (items: readonly string[], tag: "ul" | "ol" = "ul"): string => (items.length === 0 ? "" : `<${tag}>${items.map((item) => `<li>${e(item)}</li>`).join("")}</${tag}>`);
const titled = (title: string, items: readonly string[], tag?: "ul" | "ol"): string => (items.length === 0 ? "" : `<h5>${e(title)}</h5>${list(items, tag)}`);
/** The name stands inside, so that a link to it opens the entry without any script. */
const entry = (id: string, title: string, under: string, body: string): string =>
  `<details class="entry" data-entry><summary><h3>${e(title)}</h3>${under ? `<span class="soft">${e(under)}</span>` : ""}</summary><div class="body" id="${e(id)}">${body}</div></details>`;
export const dangerBox = (items: readonly string[]): string => (items.length === 0 ? "" : `<div class="danger-box">${items.length === 1 ? `<p>${e(items[0] ?? "")}</p>` : list(items)}</div>`);
const cautionBox = (say: Say, ids: readonly string[]): string => dangerBox([...new Set(ids)].map((id) => say(`caution.${id}`)));
const percent = (say: Say) => (share: number): string => new Intl.NumberFormat(say.locale, { style: "percent", maximumFractionDigits: 0 }).format(share);
const each = (say: Say, path: string, items: readonly unknown[]): string[] => items.map((_, i) => say(`${path}.${i}`));

function onlyIf(say: Say, when: When | undefined): string {
  if (!when) return "";
  const what = Object.entries(when).map(([key, value]) => `${say.has(`record.${key}`) ? say(`record.${key}`) : key}: ${[value].flat().map((one) => (typeof one === "boolean" ? say(one ? "yes" : "no") : say.has(`fact.${key}.${one}`) ? say(`fact.${key}.${one}`) : String(one))).join(" / ")}`);
  return `<p class="small">${e(say("kpage.only-if", { what: what.join("; ") }))}</p>`;
}

export const cautionsPart = ({ cautionEntries }: Knowledge, say: Say): string =>
  Object.entries(cautionEntries).sort(([, a], [, b]) => LEVELS.indexOf(a.level) - LEVELS.indexOf(b.level))
    .map(([id, { source }]) => `<div id="caution-${e(id)}" data-entry><div class="danger-box"><h3>${e(say(`caution.${id}`))}</h3></div><p class="small">${e(say("kpage.sources", { sources: source }))}</p></div>`).join("");

export const troublesPart = ({ troubles }: Knowledge, say: Say): string =>
  [...troubles.values()].sort((a, b) => say(`troubles.${a.id}.title`).localeCompare(say(`troubles.${b.id}.title`), say.locale)).map((trouble) => troubleEntry(trouble, say)).join("");

function troubleEntry(trouble: Trouble, say: Say): string {
  const path = `troubles.${trouble.id}`;
  const title = say(`${path}.title`);
  const causes = Object.entries(trouble.causes).sort(([, a], [, b]) => b.prior - a.prior);
  const sum = causes.reduce((total, [, cause]) => total + cause.prior, 0);
  const asked = Object.entries(trouble.signs).filter(([, sign]) => sign.ask !== undefined);
  const svg = treeSvg(trouble, {
    of: (place) => say(`${path}.${place}`), percent: percent(say), yes: say("yes"), no: say("no"), emergency: say("kpage.gate"), no_fire: say("kpage.no-fire"),
    title: say("kpage.tree", { title }), description: say("kpage.tree-about", { questions: asked.length, causes: causes.length }),
  });
  const body = [
    cautionBox(say, trouble.cautions),
    ...each(say, `${path}.first_of_all`, trouble.first_of_all).map((words) => `<p>${e(words)}</p>`),
    `<div class="scroll" tabindex="0" role="group" aria-label="${e(say("kpage.tree-scroll"))}">${svg}</div>`,
    `<h4>${e(say("kpage.questions"))}</h4><ul>${asked.map(([id, sign]) => `<li>${e(say(`${path}.signs.${id}.ask`))} <span class="soft">${e(sign.kind === "yes-no" ? `${say("yes")} / ${say("no")}` : (sign.answers ?? []).map((answer) => say(`${path}.signs.${id}.answers.${answer.id}.label`)).join(" / "))}</span></li>`).join("")}</ul>`,
    `<h4>${e(say("kpage.causes"))}</h4>`,
    ...causes.map(([id, cause]) => causeBlock(say, trouble, `${path}.causes.${id}`, cause, cause.prior / sum)),
    trouble.words.length > 0 ? `<p class="small">${e(say("kpage.also", { words: trouble.words.join(", ") }))}</p>` : "",
    `<p class="small">${e(say("kpage.sources", { sources: trouble.sources.join("; ") }))}</p>`,
  ].join("\n");
  return entry(`trouble-${trouble.id}`, title, say(`${path}.symptom`), body);
}

function causeBlock(say: Say, trouble: Trouble, path: string, cause: Cause, share: number): string {
  return [
    `<h4>${e(say(`${path}.title`))} <span class="share">${e(say("kpage.share", { share: percent(say)(share) }))}</span></h4>`,
    cautionBox(say, cause.cautions.filter((id) => !trouble.cautions.includes(id))),
    onlyIf(say, cause.when),
    `<p>${e(say(`${path}.why`))}</p>`,
    cause.no_fire ? `<p><strong>${e(say("kpage.no-fire"))}.</strong></p>` : "",
    titled(say("kpage.now"), each(say, `${path}.now`, cause.now)),
    titled(say("kpage.before"), each(say, `${path}.before_next_fire`, cause.before_next_fire)),
    cause.call.length > 0 ? titled(say("kpage.call"), cause.call.map((call) => say(`calls.${call}.title`))) : "",
    `<p class="small">${e(say("kpage.sources", { sources: cause.source }))}</p>`,
  ].join("\n");
}

export const howtosPart = ({ howtos }: Knowledge, say: Say): string => [...howtos.values()].map((howto) => howtoEntry(howto, say)).join("");

function howtoEntry(howto: HowTo, say: Say): string {
  const path = `howtos.${howto.id}`;
  const parts = howto.parts.map((part, i) => [
    part.title ? `<h4>${e(say(`${path}.parts.${i}.title`))}</h4>` : "",
    cautionBox(say, part.cautions.filter((id) => !howto.cautions.includes(id))),
    onlyIf(say, part.when),
    ...each(say, `${path}.parts.${i}.text`, part.text ?? []).map((words) => `<p>${e(words)}</p>`),
    list(each(say, `${path}.parts.${i}.steps`, part.steps ?? []), part.ordered ? "ol" : "ul"),
    `<p class="small">${e(say("kpage.sources", { sources: part.source }))}</p>`,
  ].join(""));
  const body = [cautionBox(say, howto.cautions), ...parts, howto.call.length > 0 ? titled(say("kpage.call"), howto.call.map((call) => say(`calls.${call}.title`))) : ""].join("\n");
  return entry(`howto-${howto.id}`, say(`${path}.title`), say(`${path}.headline`), body);
}

export const firingsPart = ({ firings }: Knowledge, say: Say): string => [...firings.values()].map((firing) => firingEntry(firing, say)).join("");

function firingEntry(firing: Firing, say: Say): string {
  const path = `firings.${firing.id}`;
  const stages = Object.entries(firing.stages).map(([id, stage]) => [
    `<h4>${e(say(`${path}.stages.${id}.says`))}</h4>`,
    cautionBox(say, [...stage.cautions, ...stage.steps.flatMap((step) => step.cautions)].filter((caution) => !firing.cautions.includes(caution))),
    list(stage.steps.map((step) => say(`${path}.stages.${id}.steps.${step.id}.text`)), "ol"),
    stage.asks ? `<p class="soft">${e(say("kpage.stage.asks", { words: say(`${path}.stages.${id}.asks`) }))}</p>` : "",
  ].join(""));
  const ladders = Object.entries(firing.ladders).map(([id, rungs]) =>
    titled(say(`kpage.ladder.${id}`), rungs.map((rung) => say("kpage.rung", { low: percent(say)(rung.share_low), high: percent(say)(rung.share_high), days: rung.days, says: say(`${path}.ladders.${id}.${rung.id}.says`) })), "ol"));
  const body = [
    cautionBox(say, [...firing.cautions, ...firing.before_lighting.flatMap((step) => step.cautions)]),
    list(firing.before_lighting.map((step) => say(`${path}.before_lighting.${step.id}.text`)), "ol"),
    ...stages, ...ladders,
    firing.stop_rule ? `<p><strong>${e(say(`${path}.stop_rule`))}</strong></p>` : "",
    `<p class="small">${e(say("kpage.sources", { sources: firing.sources.join("; ") }))}</p>`,
  ].join("\n");
  return entry(`firing-${firing.id}`, say(`${path}.title`), firing.says ? say(`${path}.says`) : "", body);
}

export const upkeepPart = ({ upkeep }: Knowledge, say: Say): string =>
  Object.entries(upkeep.tasks).map(([id, task]) => entry(`upkeep-${id}`, say(`upkeep.${id}.title`), whenDue(say, task), [
    cautionBox(say, task.cautions),
    `<p>${e(say(`upkeep.${id}.what`))}</p>`,
    task.book ? `<p>${e(say(`upkeep.${id}.book`))}</p>` : "",
    `<p>${e(say("kpage.by", { who: say(`kpage.by.${task.by}`) }))}</p>`,
    task.tools.length > 0 ? `<p>${e(say("kpage.tools", { what: each(say, `upkeep.${id}.tools`, task.tools).join(", ") }))}</p>` : "",
    `<p class="small">${e(say("kpage.sources", { sources: task.source }))}</p>`,
  ].join(""))).join("");

function whenDue(say: Say, { every, use }: UpkeepTask): string {
  const used = [...(use?.fires ? [say("kpage.use-fires", { fires: use.fires })] : []), ...(use?.load_kg ? [say("kpage.use-kg", { load: use.load_kg })] : [])];
  const what = [
    ...(every?.months ? [say("kpage.every-months", { months: every.months })] : []), ...(every?.days ? [say("kpage.every-days", { days: every.days })] : []),
    ...(every?.in_season ? [say("kpage.in-season")] : []), ...(used.length > 0 ? [say("kpage.use", { what: used.join(" / ") })] : []),
  ];
  return what.length > 0 ? say("kpage.when", { what: what.join(", ") }) : "";
}

export function lawPart({ sweepLaw }: Knowledge, say: Say): string {
  const names = new Intl.DisplayNames([say.locale], { type: "region" });
  return Object.entries(sweepLaw).map(([country, { source }]) => `<div id="law-${country.toLowerCase()}" data-entry><h3>${e(names.of(country) ?? country)}</h3><p>${e(say(`sweep-law.${country}`))}</p><p class="small">${e(say("kpage.sources", { sources: source }))}</p></div>`).join("");
}

export function speciesPart({ species, never_burn }: Species, say: Say): string {
  const own = say.locale.slice(0, 2);
  const number = new Intl.NumberFormat(say.locale, { minimumFractionDigits: 2, maximumFractionDigits: 2 });
  const named = (one: Species["species"][number]): { name: string; rest: string } => {
    const [first = one.name, ...others] = own === "en" ? [one.name, ...(one.also?.en ?? [])] : [...(one.also?.[own] ?? []), one.name];
    return { name: first, rest: [...others, one.botanical].join(", ") };
  };
  const rows = species.map((one) => ({ one, ...named(one) })).sort((a, b) => a.name.localeCompare(b.name, say.locale)).map(({ one, name, rest }) =>
    `<tr id="wood-${e(one.botanical.toLowerCase().replace(/[^a-z]+/g, "-"))}" data-entry><th scope="row"><h3>${e(name)}</h3><br><span class="small">${e(rest)}</span></th><td>${e(say(`kpage.${one.kind}`))}</td><td>${number.format(one.basic_density)}</td><td>${one.seasoning === undefined ? "" : e(say(`kpage.seasoning.${one.seasoning}`))}</td><td>${e(one.do_not_burn ? say("kpage.do-not-burn", { why: one.do_not_burn }) : (one.note ?? ""))}</td></tr>`);
  const head = ["wood", "wood-kind", "wood-density", "wood-seasoning", "wood-note"].map((id) => `<th scope="col">${e(say(`kpage.${id}`))}</th>`).join("");
  return `<div class="danger-box"><p>${e(say("kpage.never-burn"))}</p>${list(never_burn.map(({ name, why }) => `${name}: ${why}`))}</div><div class="scroll" tabindex="0" role="group" aria-label="${e(say("kpage.part.species"))}"><table><thead><tr>${head}</tr></thead><tbody>${rows.join("\n")}</tbody></table></div>`;
}

export const wordsPart = ({ glossary }: Knowledge, say: Say): string =>
  Object.entries(glossary).map(([id, { words, cautions }]) => `<div id="word-${e(id)}" data-entry><h3>${e(say(`glossary.${id}.title`))}</h3>${cautionBox(say, cautions)}<p>${e(say(`glossary.${id}.say`))}</p><p class="small">${e(say("kpage.also", { words: words.join(", ") }))}</p></div>`).join("");

export const callsPart = ({ calls }: Knowledge, say: Say): string =>
  [...calls].map((id) => `<div id="call-${e(id)}" data-entry><h3>${e(say(`calls.${id}.title`))}</h3><p>${e(say(`calls.${id}.tell`))}</p></div>`).join("");
