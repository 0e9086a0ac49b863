/**
 * The owner's side of the builder's desk: rules the builder said, who may set them, what the builder is shown. Nothing reaches a builder
 * whom the owner did not accept, and nothing but rules comes from one.
 */
import { ask, say, steps, text, verbatim, type Arg, type Text } from "../../answer.ts";
import { builderCode } from "../../builder/code.ts";
import { pastedRules } from "../../builder/file.ts";
import { isBuilders, tighten, withdrawn, type RuleGiven } from "../../builder/rules.ts";
import { messageKey } from "../../message.ts";
import type { BuilderLink, Heater, HeaterRule } from "../../records/types.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { gloss } from "../german/gloss.ts";
import { readBuilder } from "../reading/read-builder.ts";
import { route } from "../routing/route.ts";
import { acceptQuestion, nameOf, ruleBlocks, ruleHeadline, ruleLines } from "./builder-lines.ts";
import { deskAsked, deskChoice, deskRule, fileOutcome, redeemed } from "./builder-desk.ts";
import { briefDocument, lastTrouble } from "./pages.ts";

const DAY_MS = 86_400_000;
const CODE_DAYS = 7;

const INVITE = /\b(?:invite|connect|link|add) (?:my|the|our) (?:heater )?(?:builder|mason)\b|\bcode for (?:my|the|our) (?:heater )?(?:builder|mason)\b|\b(?:lade?|verbinde) (?:meinen|den|unseren) (?:ofenbauer|hafner)\b|\b(?:ofenbauer|hafner) einladen\b|\bcode für (?:meinen|den|unseren) (?:ofenbauer|hafner)\b/;
const SHOW = /\b(?:show|list|see|what are) (?:me )?(?:my |the |our )?builder'?s? rules\b|\bwhat (?:does|did) (?:my|the|our) builder say\b|^(?:my |the )?builder'?s? rules\??$|\bregeln (?:meines|des|unseres|vom) (?:ofenbauers?|hafners?)\??$|\bwas sagt (?:mein|der|unser) (?:ofenbauer|hafner)\b/;
const WITHDRAW = /\b(?:withdraw|remove|lift|delete|drop|take back|forget) (?:all |my |the |our )*builder'?s? rules?\b|\b(?:nimm|lösche?|entferne|streiche?)\b.{0,12}\bregeln? (?:meines|des|unseres|vom) (?:ofenbauers?|hafners?)\b/;
const SHARE_FIRES = /\b(?:show|share)\b.{0,10}\bfirst fires\b.{0,10}\b(?:to|with) (?:my|the|our) (?:builder|mason)\b|\bmy builder (?:may|can) see (?:my |the )?first fires\b|\bzeige? (?:meinem|dem|unserem) (?:ofenbauer|hafner)\b.{0,12}\bersten feuer\b/;
const HIDE_FIRES = /\b(?:stop (?:showing|sharing)|hide|don'?t show)\b.{0,12}\bfirst fires\b|\bersten feuer (?:nicht mehr|nicht länger) zeigen\b|\bzeige? .{0,30}\bersten feuer nicht mehr\b/;
const HAND_OVER = /\b(?:hand|send|pass|give|forward)\b.{0,40}\b(?:over )?to (?:my|the|our) (?:builder|mason)\b|\b(?:schicke?|gib|übergib|sende?)\b.{0,30}\b(?:an )?(?:meinen|meinem|den|dem|unseren) (?:ofenbauer|hafner)\b/;
const DISMISS = /\b(?:is|are) (?:no longer|not) (?:my|our) builder\b|\b(?:remove|disconnect|dismiss|unlink) (?:my|the|our) builder\b|\bist (?:nicht mehr|nicht) mein (?:ofenbauer|hafner)\b/;

export function builderAsked(context: Context): Outcome | null {
  if (context.message.builder_invitation !== undefined) return redeemed(context);
  const file = pastedRules(context.said);
  if (file) return fileOutcome(context, file);
  const read = readBuilder(context.said, { system: context.reader.system, ...(context.language === "de" ? { english: (words: string) => gloss(words).text } : {}) });
  const said = read?.in_passing && aboutElse(context) ? null : read;
  if (said?.for) return deskRule(context, said.for, said.rule) ?? null;
  if (said) return ruleOutcome(context, said.rule);
  const plain = context.said.length > 160 ? "" : context.said.toLowerCase().replace(/[’‘]/g, "'").replace(/\s+/g, " ").trim();
  if (INVITE.test(plain)) return inviteOutcome(context);
  if (WITHDRAW.test(plain)) return withdrawOutcome(context);
  if (SHOW.test(plain)) return rulesShown(context);
  if (HIDE_FIRES.test(plain)) return firesShown(context, false);
  if (SHARE_FIRES.test(plain)) return firesShown(context, true);
  if (HAND_OVER.test(plain)) return handOverAsk(context);
  if (DISMISS.test(plain)) return dismissOutcome(context);
  return deskAsked(context, plain);
}

/** "Our builder said baby steps" is about the first fires. */
function aboutElse({ said, language }: Context): boolean {
  const { verdict, ranked } = route(said, language);
  return verdict === "sure" && ranked[0] !== undefined && ranked[0].topic !== "set-heater" && ranked[0].topic !== "close-down";
}

/** `builder:<what>[:<id>]` */
export function builderChoice(context: Context, rest: string): Outcome | null {
  const [what = "", ...ids] = rest.split(":");
  const id = ids.join(":");
  switch (what) {
    case "invite": return inviteOutcome(context);
    case "rules": return rulesShown(context);
    case "withdraw": return withdrawOutcome(context);
    case "accept": return acceptOutcome(context, id, true);
    case "decline": return acceptOutcome(context, id, false);
    case "show-fires": return firesShown(context, true);
    case "hide-fires": return firesShown(context, false);
    case "hand-over": return id === "" ? handOverAsk(context) : handOver(context, id);
    case "keep": return { draft: { topic: "set-heater", headline: text("builder.nothing-sent") } };
    case "dismiss": return dismissOutcome(context);
    default: return deskChoice(context, what, id);
  }
}

const privately = (context: Context): Outcome | null =>
  context.snapshot.place.kind === "private" ? null : { draft: { topic: "set-heater", headline: text("builder.private-only") } };
const owned = (context: Context): Heater | null => (context.heater?.owner_id === context.snapshot.person.id ? context.heater : null);
const notOwner = (context: Context): Outcome => ({ draft: { topic: "set-heater", headline: text(context.heater ? "builder.owner-only" : "builder.no-heater") } });
const accepted = (context: Context): readonly BuilderLink[] => (context.snapshot.builders ?? []).filter((link) => link.accepted);

/** "My builder says ...": anyone who fires the heater may note it, since a rule only ever tightens. */
function ruleOutcome(context: Context, rule: RuleGiven): Outcome {
  const before: Heater = context.heater ?? { id: context.id("heater"), owner_id: context.snapshot.person.id, member_ids: [context.snapshot.person.id], facts: {}, upkeep: {}, rules: [] };
  const done = tighten(before, rule, { person_id: context.snapshot.person.id, at_ms: context.now_ms });
  return {
    draft: {
      topic: "set-heater",
      cautions: ["over-firing"],
      headline: ruleHeadline([done]),
      blocks: blocks(...ruleBlocks(done), done.heater !== before && say(text("builder.beside")), done.heater !== before && context.heater ? say(text("records.undo")) : null),
    },
    ...(done.heater === before ? {} : { writes: [{ write: "heater", heater: done.heater }] }),
    ...(done.heater !== before && context.heater ? { state: { undo: { writes: [{ write: "heater" as const, heater: context.heater }], at_ms: context.now_ms } } } : {}),
  };
}

function rulesShown(context: Context): Outcome {
  const rules = (context.heater?.rules ?? []).filter(isBuilders);
  const links = accepted(context);
  const asking = (context.snapshot.builders ?? []).filter((link) => !link.accepted);
  return {
    draft: {
      topic: "set-heater",
      cautions: ["over-firing"],
      headline: text(rules.length > 0 ? "builder.rules" : "builder.no-rules"),
      blocks: blocks(
        ...rules.map((rule) => steps(ruleLines(rule), { ordered: false, title: saidLine(context, rule) })),
        (context.heater?.rules_before ?? []).length > 0 && say(text("builder.before", { count: context.heater?.rules_before?.length ?? 0 })),
        ...links.map((link) => say(text("builder.linked", { name: nameOf(link.name), since: { at_ms: link.since_ms, show: "date" } }))),
        ...asking.map((link) => acceptQuestion(link)),
        say(text("builder.how")),
        owned(context) && { kind: "choices", cautions: [], choices: [
          ...(rules.length > 0 ? [{ id: "builder:withdraw", label: text("builder.choice.withdraw") }] : []),
          links.length > 0 ? { id: "builder:dismiss", label: text("builder.choice.dismiss") } : { id: "builder:invite", label: text("builder.choice.invite") },
        ] },
      ),
    },
  };
}

/** "version 2, noted by you on 3 Oct 2026" */
function saidLine(context: Context, rule: HeaterRule): Text {
  const link = context.snapshot.builders?.find(({ person_id }) => person_id === rule.said_by);
  const who: Arg = rule.said_by === context.snapshot.person.id ? text("builder.by-you") : (rule.builder ?? link?.name ?? context.snapshot.names.get(rule.said_by) ?? text("builder.somebody"));
  return text("builder.version", { version: rule.version ?? 1, who, at: { at_ms: rule.said_at_ms, show: "date" } });
}

function withdrawOutcome(context: Context): Outcome {
  const heater = owned(context);
  if (!heater) return notOwner(context);
  const after = withdrawn(heater, null);
  if (after === heater) return { draft: { topic: "set-heater", headline: text("builder.no-rules") } };
  return {
    draft: { topic: "set-heater", cautions: ["over-firing"], headline: text("builder.withdrawn"), blocks: [say(text("builder.withdrawn-what")), say(text("records.undo"))] },
    writes: [{ write: "heater", heater: after }],
    state: { undo: { writes: [{ write: "heater", heater }], at_ms: context.now_ms } },
  };
}

function inviteOutcome(context: Context): Outcome {
  const heater = owned(context);
  if (!heater) return notOwner(context);
  const elsewhere = privately(context);
  if (elsewhere) return elsewhere;
  const code = builderCode(`${messageKey(context.message)} ${heater.id} ${context.now_ms}`);
  return {
    draft: { topic: "set-heater", headline: text("builder.code", { code }), blocks: [say(text("builder.code-what", { code, days: CODE_DAYS })), say(text("builder.code-may"))] },
    writes: [{ write: "builder-invitation", code, heater_id: heater.id, place_id: context.snapshot.place.id, ends_at_ms: context.now_ms + CODE_DAYS * DAY_MS }],
  };
}

function acceptOutcome(context: Context, person_id: string, yes: boolean): Outcome {
  const heater = owned(context);
  const link = context.snapshot.builders?.find((one) => one.person_id === person_id && !one.accepted);
  if (!heater || !link) return { draft: { topic: "set-heater", headline: text("builder.nobody-asks") } };
  const owner_name = context.snapshot.person.name;
  const told = text(yes ? "builder.you-are" : "builder.you-are-not", { owner: nameOf(owner_name), heater: heater.facts.name ? verbatim(heater.facts.name) : text("builder.a-heater") });
  return {
    draft: {
      topic: "set-heater",
      headline: text(yes ? "builder.accepted" : "builder.declined", { name: nameOf(link.name) }),
      blocks: blocks(yes && say(text("builder.accepted-what")), yes && { kind: "choices", cautions: [], choices: [{ id: "builder:show-fires", label: text("builder.choice.show-fires") }] }),
    },
    writes: [yes ? { write: "builder", link: { ...link, accepted: true } } : { write: "end-builder", heater_id: link.heater_id, person_id }],
    also_tell: [{
      key: `builder:answer:${messageKey(context.message)}`, person_id, place_id: link.place_id,
      draft: { topic: "set-heater", headline: told, blocks: blocks(yes && say(text("builder.you-are-what"))) },
    }],
  };
}

function dismissOutcome(context: Context): Outcome {
  if (!owned(context)) return notOwner(context);
  const links = context.snapshot.builders ?? [];
  if (links.length === 0) return { draft: { topic: "set-heater", headline: text("builder.none-linked") } };
  return {
    draft: { topic: "set-heater", headline: text("builder.dismissed"), blocks: [say(text("builder.rules-stay"))] },
    writes: links.map(({ heater_id, person_id }) => ({ write: "end-builder", heater_id, person_id })),
  };
}

function firesShown(context: Context, yes: boolean): Outcome | null {
  const links = accepted(context);
  if (links.length === 0) return yes ? notLinked(context, "first-fires") : null;
  if (!owned(context)) return notOwner(context);
  return {
    draft: { topic: "first-fires", cautions: ["first-fires"], headline: text(yes ? "builder.fires-shown" : "builder.fires-hidden", { name: links.map((link) => link.name ?? text("builder.somebody")) }), blocks: blocks(yes && say(text("builder.fires-what"))) },
    writes: links.map((link) => ({ write: "builder", link: { ...link, first_fires: yes } })),
  };
}

const notLinked = (context: Context, topic: "first-fires" | "set-heater"): Outcome => ({
  draft: {
    topic, ...(topic === "first-fires" ? { cautions: ["first-fires"] } : {}), headline: text("builder.none-linked"),
    blocks: blocks(owned(context) && { kind: "choices", cautions: [], choices: [{ id: "builder:invite", label: text("builder.choice.invite") }, { id: "page:brief-builder", label: text("brief.also", { who: text("calls.builder.title") }) }] }),
  },
});

/** The facts as the builder would get them, and nothing sent before the press. */
function handOverAsk(context: Context): Outcome | null {
  if (!lastTrouble(context)) return null;
  const links = accepted(context);
  if (links.length === 0) return notLinked(context, "set-heater");
  const elsewhere = privately(context);
  if (elsewhere) return elsewhere;
  const { topic, cautions, document } = briefDocument(context, "builder");
  return {
    draft: {
      topic, cautions,
      headline: text("builder.hand-over-ask", { name: links.map((link) => link.name ?? text("builder.somebody")) }),
      blocks: [
        { kind: "document", cautions: [], document },
        ask("hand-over", text("builder.hand-over-what"), [...links.map((link) => ({ id: `builder:hand-over:${link.person_id}`, label: text("builder.choice.send", { name: nameOf(link.name) }) })), { id: "builder:keep", label: text("builder.choice.keep") }]),
      ],
    },
  };
}

function handOver(context: Context, person_id: string): Outcome {
  const link = accepted(context).find((one) => one.person_id === person_id);
  if (!link || !lastTrouble(context)) return { draft: { topic: "set-heater", headline: text("builder.nothing-sent") } };
  const { topic, cautions, document } = briefDocument(context, "builder");
  const { heater } = context;
  return {
    draft: { topic, cautions, headline: text("builder.handed-over", { name: nameOf(link.name) }), blocks: [say(text("builder.handed-over-what"))] },
    also_tell: [{
      key: `builder:trouble:${messageKey(context.message)}`, person_id, place_id: link.place_id,
      draft: {
        topic, cautions,
        headline: text("builder.trouble-for-you", { owner: nameOf(context.snapshot.person.name), heater: heater?.facts.name ? verbatim(heater.facts.name) : text("builder.a-heater") }),
        blocks: [{ kind: "document", cautions: [], document }],
      },
    }],
  };
}
