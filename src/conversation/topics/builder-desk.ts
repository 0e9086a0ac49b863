/** The builder's own side: rules for the heaters of owners who accepted, by a file or by talking, and the first fires they agreed to show. */
import { say, steps, text, verbatim, type Arg, type Block, type Text } from "../../answer.ts";
import { readRulesFile, type FileRule } from "../../builder/file.ts";
import { isBuilders, tighten, withdrawn, type RuleGiven, type Tightened } from "../../builder/rules.ts";
import { messageKey } from "../../message.ts";
import type { BuilderLink, BuiltHeater, Heater, Write } from "../../records/types.ts";
import { blocks, contextOf, type Context, type Outcome } from "../context.ts";
import { acceptQuestion, nameOf, ruleBlocks, ruleHeadline, ruleLines } from "./builder-lines.ts";
import { firstFiresOutcome } from "./first-fires.ts";

const DESK = /^(?:(?:the |my )?builder'?s? desk|(?:show |list )?(?:me )?(?:the )?heaters i (?:have )?built|(?:show |list )?(?:me )?my owners)\??$/;
const FIRST_FIRES_OF = /\bfirst fires (?:of|at|in) (.{1,80}?)\??$/;
const WITHDRAW_FOR = /\b(?:withdraw|remove|lift|take back) (?:all )?my rules?(?: for (.{1,80}?))?[.!]?$/;

const heaterName = ({ heater, link }: BuiltHeater): Text =>
  text("builder.heater-of", { heater: heater.facts.name ? verbatim(heater.facts.name) : text("builder.a-heater"), owner: nameOf(link.owner_name) });

/** Somebody typed the code an owner gave: the owner is asked once more, and told who it is. */
export function redeemed(context: Context): Outcome {
  const { message, snapshot, now_ms } = context;
  const found = message.builder_invitation;
  if (snapshot.place.kind !== "private") return { draft: { topic: "set-heater", headline: text("builder.private-only") } };
  if (!found) return { draft: { topic: "set-heater", headline: text("builder.code-unknown") } };
  if (found.owner_id === snapshot.person.id) return { draft: { topic: "set-heater", headline: text("builder.code-own") } };
  const name = snapshot.person.name;
  const link: BuilderLink = {
    heater_id: found.heater_id, person_id: snapshot.person.id, place_id: snapshot.place.id, owner_id: found.owner_id, owner_place_id: found.owner_place_id,
    since_ms: now_ms, accepted: false, first_fires: false, ...(name ? { name } : {}), ...(found.owner_name ? { owner_name: found.owner_name } : {}),
  };
  return {
    draft: { topic: "set-heater", headline: text("builder.asked-owner", { owner: nameOf(found.owner_name) }) },
    writes: [{ write: "builder", link }],
    also_tell: [{
      key: `builder:ask:${messageKey(message)}`, person_id: found.owner_id, place_id: found.owner_place_id,
      draft: { topic: "set-heater", headline: text("builder.asks-you", { name: nameOf(name) }), blocks: [say(text("builder.code-may")), acceptQuestion(link)] },
    }],
  };
}

/** A pasted file: for the heaters one has built, else for one's own, whose owner says what the builder wrote. */
export function fileOutcome(context: Context, source: string): Outcome {
  const read = readRulesFile(source);
  if (read.problems.length > 0) {
    return { draft: { topic: "set-heater", headline: text("builder.file-wrong"), blocks: [steps(read.problems.map(verbatim), { ordered: false }), say(text("builder.file-nothing"))] } };
  }
  const { rules, builder } = read as { rules: readonly FileRule[]; builder?: string };
  const built = context.snapshot.builds ?? [];
  const own = context.heater;
  if (built.length === 0 && !own) return { draft: { topic: "set-heater", headline: text("builder.no-heater") } };
  if (built.length === 0 && own) {
    const done = applied(context, own, rules, builder);
    return report(context, [{ name: text("builder.your-heater"), before: own, done }], own.owner_id === context.snapshot.person.id || own.member_ids.includes(context.snapshot.person.id));
  }
  const meant = built.filter((one) => rules.some((rule) => concerns(rule, one)));
  if (meant.length === 0) return { draft: { topic: "set-heater", headline: text("builder.file-fits-none"), blocks: [steps(built.map(heaterName), { ordered: false })] } };
  return report(context, meant.map((one) => ({ name: heaterName(one), before: one.heater, link: one.link, done: applied(context, one.heater, rules.filter((rule) => concerns(rule, one)), builder) })), false);
}

const folded = (words: string): string => words.normalize("NFKC").toLowerCase().trim();
const called = (name: string, { heater, link }: BuiltHeater): boolean =>
  [heater.facts.name, link.owner_name, `${link.owner_name ?? ""}'s`, `${link.owner_name ?? ""}'s ${heater.facts.name ?? "heater"}`, `${link.owner_name ?? ""}'s heater`].some((one) => one !== undefined && folded(one) === folded(name));
const concerns = (rule: FileRule, one: BuiltHeater): boolean => rule.heater === null || called(rule.heater, one);

function applied(context: Context, heater: Heater, rules: readonly FileRule[], builder?: string): Tightened {
  let now = heater;
  const refused: Text[] = [];
  let taken: RuleGiven = {};
  for (const { given } of rules) {
    const done = tighten(now, given, { person_id: context.snapshot.person.id, at_ms: context.now_ms, ...(builder ? { builder } : {}) });
    now = done.heater;
    refused.push(...done.refused);
    taken = { ...taken, ...done.taken };
  }
  return { heater: now, taken, refused };
}

interface Done {
  readonly name: Text;
  readonly before: Heater;
  readonly done: Tightened;
  readonly link?: BuilderLink;
}
/** What became of the rules, heater by heater; each owner is told. */
function report(context: Context, all: readonly Done[], own: boolean): Outcome {
  const changed = all.filter(({ before, done }) => done.heater !== before);
  const writes: Write[] = changed.map(({ done }) => ({ write: "heater", heater: done.heater }));
  const told = changed.flatMap(({ link, done, name }) => (link ? [{ link, done, name }] : []));
  return {
    draft: {
      topic: "set-heater",
      cautions: ["over-firing"],
      headline: ruleHeadline(all.map(({ done }) => done)),
      blocks: blocks(...all.flatMap(({ name, done }): Block[] => [{ kind: "heading", text: name, cautions: [] }, ...ruleBlocks(done)]), told.length > 0 && say(text("builder.owners-told")), changed.length > 0 && say(text("builder.beside"))),
    },
    writes,
    ...(own && changed.length > 0 ? { state: { undo: { writes: changed.map(({ before }) => ({ write: "heater" as const, heater: before })), at_ms: context.now_ms } } } : {}),
    also_tell: told.map(({ link, done }, i) => ({
      key: `builder:rules:${messageKey(context.message)}:${i}`, person_id: link.owner_id, place_id: link.owner_place_id,
      draft: {
        topic: "set-heater" as const, cautions: ["over-firing"],
        headline: text("builder.set-for-you", { name: nameOf(context.snapshot.person.name) }),
        blocks: [...ruleBlocks({ taken: done.taken, refused: [] }), say(text("builder.beside")), { kind: "choices" as const, cautions: [], choices: [{ id: "builder:rules", label: text("builder.choice.rules") }] }],
      },
    })),
  };
}

/** "rule for Kitchen: at most 12 kg"; null when the person is nobody's builder */
export function deskRule(context: Context, name: string, rule: RuleGiven): Outcome | null {
  const built = context.snapshot.builds ?? [];
  if (built.length === 0) return null;
  const all = /^(?:all|everybody|everyone|all (?:my )?heaters)$/.test(folded(name));
  const meant = built.filter((one) => all || called(name, one));
  if (meant.length === 0) return { draft: { topic: "set-heater", headline: text("builder.no-such-heater", { name: verbatim(name) }), blocks: [steps(built.map(heaterName), { ordered: false })] } };
  const rules: FileRule[] = [{ heater: null, given: rule }];
  return report(context, meant.map((one) => ({ name: heaterName(one), before: one.heater, link: one.link, done: applied(context, one.heater, rules) })), false);
}

export function deskAsked(context: Context, plain: string): Outcome | null {
  const built = context.snapshot.builds ?? [];
  if (built.length === 0) return null;
  if (DESK.test(plain)) return desk(context, built);
  const of = FIRST_FIRES_OF.exec(plain)?.[1];
  const one = of ? built.find((each) => called(of, each)) : undefined;
  if (one) return ladderOfOwner(context, one);
  const withdraw = WITHDRAW_FOR.exec(plain);
  if (withdraw) return withdrawMine(context, built.filter((each) => withdraw[1] === undefined || called(withdraw[1], each)));
  return null;
}

/** `builder:desk`, `builder:first:<heater id>` */
export function deskChoice(context: Context, what: string, id: string): Outcome | null {
  const built = context.snapshot.builds ?? [];
  if (what === "desk") return built.length > 0 ? desk(context, built) : { draft: { topic: "set-heater", headline: text("builder.no-built") } };
  const one = built.find(({ heater }) => heater.id === id);
  return what === "first" && one ? ladderOfOwner(context, one) : null;
}

function desk(context: Context, built: readonly BuiltHeater[]): Outcome {
  const me = context.snapshot.person.id;
  return {
    draft: {
      topic: "set-heater",
      cautions: ["over-firing"],
      headline: text("builder.desk", { heaters: built.length }),
      blocks: blocks(
        ...built.map((one) => {
          const lines = one.heater.rules.filter((rule) => isBuilders(rule) && rule.said_by === me).flatMap(ruleLines);
          return steps(lines.length > 0 ? lines : [text("builder.no-rules")], { ordered: false, title: heaterName(one) });
        }),
        say(text("builder.how-desk")),
        { kind: "choices", cautions: [], choices: built.filter(({ link }) => link.first_fires).slice(0, 10).map((one) => ({ id: `builder:first:${one.heater.id}`, label: text("builder.choice.first", { name: heaterName(one) as Arg }) })) },
      ),
    },
  };
}

/** The same list that the owner sees, read from the owner's log; only where the owner agreed to show it. */
function ladderOfOwner(context: Context, one: BuiltHeater): Outcome {
  if (!one.link.first_fires) return { draft: { topic: "first-fires", cautions: ["first-fires"], headline: text("builder.fires-not-shown", { name: heaterName(one) }) } };
  const { snapshot } = context;
  const seen = contextOf(
    { ...snapshot, heaters: [one.heater], fires: one.fires, guide: null, group_rules: [], talk: { ...snapshot.talk, state: {} } },
    context.message, context.now_ms, context.knowledge, context.settings,
  );
  const { draft } = firstFiresOutcome(seen);
  const shown = (draft.blocks ?? []).filter((block) => block.kind !== "choices");
  return { draft: { ...draft, blocks: [{ kind: "heading", text: heaterName(one), cautions: [] }, ...shown] } };
}

function withdrawMine(context: Context, meant: readonly BuiltHeater[]): Outcome {
  const after = meant.map(({ heater }) => [heater, withdrawn(heater, context.snapshot.person.id)] as const).filter(([before, now]) => before !== now);
  return {
    draft: { topic: "set-heater", cautions: ["over-firing"], headline: text(after.length > 0 ? "builder.withdrawn" : "builder.no-rules"), blocks: blocks(after.length > 0 && say(text("builder.withdrawn-what"))) },
    writes: after.map(([, heater]) => ({ write: "heater", heater })),
  };
}
