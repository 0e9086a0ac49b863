/** Any trouble that has a file under knowledge/troubles/: what the records say, what to ask, what to do. */
import { ask, say, steps, text, type Block, type Choice, type Text } from "../../answer.ts";
import type { EmergencyKind } from "../../emergency/index.ts";
import type { Sign, Trouble } from "../../knowledge/schemas.ts";
import type { Fire } from "../../records/types.ts";
import { fromRecords } from "../../trouble/facts.ts";
import { isGraded, walk, type Observations, type RankedCause, type SignAnswer } from "../../trouble/walk.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { emergencyOutcome } from "./emergency.ts";
import { callLine, handOverChoice } from "./parts.ts";

/** A cause that forbids a fire does so from this share on, or several together from that. */
const FORBID_ALONE = 0.15;
const FORBID_TOGETHER = 0.3;
/** A graver cause that is as likely as this is still open: its cautions are said too. */
const STILL_OPEN = 0.1;

type Tree = NonNullable<Context["state"]["tree"]>;

/** @param said answers that came with this message, by sign */
export function troubleOutcome(context: Context, trouble: Trouble, said: Tree["said"] = {}, fire?: Fire): Outcome {
  const running = context.state.tree?.trouble === trouble.id ? context.state.tree : undefined;
  const about = fire ?? context.snapshot.fires.find((one) => one.id === running?.fire_id) ?? context.snapshot.fires[0] ?? null;
  const records = fromRecords(trouble, context.snapshot, context.now_ms, about);
  const all = together(running?.said ?? {}, said);
  const seen: Observations = {
    ...records,
    ...Object.fromEntries(Object.entries(all).filter(([sign, answer]) => !(sign in records && isGraded(answer))).map(([sign, answer]) => [sign, { answer, from: "person" as const, args: quoted(trouble.signs[sign], answer) }])),
  };
  const asked = running?.asked ?? [];
  const result = walk(trouble, context.heater?.facts ?? {}, seen, asked);
  if (result.stop?.emergency) return emergencyOutcome(context, result.stop.emergency as EmergencyKind);

  const ranked = result.stop?.cause ? lead(result.ranked, result.stop.cause) : result.ranked;
  const first = ranked[0];
  const waiting = result.ask;
  const sign = waiting ? trouble.signs[waiting] : undefined;
  // a question of life and limb is answered before any cause is dealt with
  const gate = sign?.first === true;
  // a fire is forbidden by what a gate found, or once the causes that forbid one weigh enough together
  const forbids = ranked.reduce((sum, { cause, share }) => sum + (cause.no_fire ? share : 0), 0) >= FORBID_TOGETHER || ranked.some(({ cause, share }) => cause.no_fire && share >= FORBID_ALONE)
    || (result.stop?.cause !== undefined && first?.cause.no_fire === true);
  // the more careful wins: what a graver cause that is still open asks for stands beside the first one's own
  const graver = gate ? [] : ranked.slice(1).filter(({ cause, share }) => share >= STILL_OPEN && (cause.no_fire || cause.hazard === "high" || cause.hazard === "emergency")).flatMap(({ cause }) => cause.cautions);
  const shown = ranked.slice(0, 3).filter((cause, i) => i === 0 || cause.share >= 0.08);

  return {
    draft: {
      topic: trouble.id,
      cautions: [...gatesUnsure(trouble, all), ...gravestFirst(context, [...trouble.cautions, ...(gate ? [] : (first?.cause.cautions ?? [])), ...graver])],
      headline: gate ? text(`troubles.${trouble.id}.title`) : first ? text(first.share >= 0.55 || result.stop?.cause ? "trouble.likely" : "trouble.perhaps", { cause: causeText(trouble, first.id, "title") }) : text(`troubles.${trouble.id}.title`),
      blocks: blocks(
        forbids && say(text("trouble.no-fire"), ...trouble.cautions, ...(first?.cause.cautions ?? []), ...graver),
        ...trouble.first_of_all.map((_, i) => say(text(`troubles.${trouble.id}.first_of_all.${i}`), ...trouble.cautions)),
        first && !gate && say(causeText(trouble, first.id, "why")),
        first && { kind: "causes", cautions: [], items: shown.map((cause) => ({ id: cause.id, title: causeText(trouble, cause.id, "title"), share: cause.share, because: because(cause, cause === first) })) },
        ...(first && !gate ? remedies(context, trouble, first) : []),
        ...(!waiting && !gate && (first?.share ?? 0) < 0.55 && shown[1] ? remedies(context, trouble, shown[1], true) : []),
        !waiting && first?.cause.call.includes("builder") ? handOverChoice(context) : null,
        waiting && sign && ask(`sign:${waiting}`, text(`troubles.${trouble.id}.signs.${waiting}.ask`), signChoices(trouble, waiting, sign)),
      ),
    },
    state: {
      tree: {
        trouble: trouble.id, said: all, waiting, at_ms: context.now_ms,
        asked: waiting && !asked.includes(waiting) ? [...asked, waiting] : asked,
        ...(about ? { fire_id: about.id } : {}),
      },
    },
  };
}

/** What is said later counts, but "I don't know" and a mere hint take nothing back that was heard before. */
function together(before: Tree["said"], now: Tree["said"]): Record<string, SignAnswer> {
  const kept = Object.entries(now).filter(([sign, answer]) => !(sign in before && before[sign] !== null && (answer === null || (isGraded(answer) && answer.open))));
  return { ...before, ...Object.fromEntries(kept) };
}

/** The open question once more, in its choices alone, after an answer that could not be read; null where it was asked again already. */
export function askAgain(context: Context, trouble: Trouble): Outcome | null {
  const tree = context.state.tree;
  const sign = tree?.waiting ? trouble.signs[tree.waiting] : undefined;
  // what would be taken for an emergency is never guessed from words that cannot be read
  if (!tree?.waiting || !sign || (tree.again === tree.waiting && !sign.stop?.unknown)) return null;
  return {
    draft: { topic: trouble.id, cautions: trouble.cautions, headline: text("trouble.again"), blocks: [ask(`sign:${tree.waiting}`, text(`troubles.${trouble.id}.signs.${tree.waiting}.ask`), signChoices(trouble, tree.waiting, sign))] },
    state: { tree: { ...tree, again: tree.waiting, at_ms: context.now_ms } },
  };
}

const causeText = (trouble: Trouble, cause: string, part: "title" | "why"): Text => text(`troubles.${trouble.id}.causes.${cause}.${part}`);
const because = (cause: RankedCause, first: boolean): Text[] => (cause.because.length > 0 ? cause.because.slice(0, 3) : first ? [text("trouble.because-common")] : []);

/** What stands first when somebody does not know the answer to a question of life and limb. */
function gatesUnsure(trouble: Trouble, said: Tree["said"]): string[] {
  const unsure = Object.entries(trouble.signs).filter(([id, sign]) => sign.first && said[id] === null);
  return unsure.flatMap(([, sign]) => Object.values(sign.stop ?? {}).flatMap(({ emergency }) => (emergency ? (IF_UNSURE[emergency] ?? []) : [])));
}
const IF_UNSURE: Readonly<Record<string, readonly string[]>> = {
  "co-alarm": ["carbon-monoxide"], "room-smoke": ["smoke-in-room", "carbon-monoxide"], "chimney-fire": ["chimney-fire"],
  "damper-over-embers": ["close-flue", "carbon-monoxide"], "house-fire": ["hot-surroundings"], burn: ["burns"],
};

const GRAVE = ["emergency", "high", "medium", "low", "none"];
const gravestFirst = ({ knowledge }: Context, ids: readonly string[]): string[] => {
  const rank = (id: string): number => GRAVE.indexOf(knowledge.cautionEntries[id]?.level ?? "none");
  return [...new Set(ids)].sort((a, b) => rank(a) - rank(b));
};

function lead(ranked: readonly RankedCause[], id: string): RankedCause[] {
  return [...ranked].sort((a, b) => Number(b.id === id) - Number(a.id === id));
}

function remedies(context: Context, trouble: Trouble, { id, cause }: RankedCause, second = false): Block[] {
  const path = `troubles.${trouble.id}.causes.${id}`;
  const cautions = [...trouble.cautions, ...cause.cautions];
  const list = (part: "now" | "before_next_fire"): Block | null =>
    cause[part].length === 0 ? null : steps(cause[part].map((_, i) => text(`${path}.${part}.${i}`)), { title: text(second ? `trouble.if.${part}` : `trouble.${part}`, { cause: causeText(trouble, id, "title") }), ordered: false, cautions });
  return blocks(list("now"), list("before_next_fire"), !second && callLine(context, cause.call, cautions));
}

/** What a person can press or say for a sign; "don't know" is always among it. */
export function signChoices(trouble: Trouble, id: string, sign: Sign): Choice[] {
  const path = `troubles.${trouble.id}.signs.${id}`;
  const list: Choice[] =
    sign.kind === "yes-no"
      ? [{ id: `sign:${trouble.id}:${id}=yes`, label: text("yes") }, { id: `sign:${trouble.id}:${id}=no`, label: text("no") }]
      : (sign.answers ?? []).map((answer) => ({ id: `sign:${trouble.id}:${id}=${answer.id}`, label: text(`${path}.answers.${answer.id}.label`) }));
  return [...list, { id: `sign:${trouble.id}:${id}=?`, label: text("dont-know") }];
}

function quoted(sign: Sign | undefined, answer: SignAnswer): Record<string, never> | undefined {
  if (!sign || answer === null || isGraded(answer)) return undefined;
  const figure = typeof answer === "number" ? answer : sign.answers?.find((entry) => entry.id === answer)?.value;
  if (figure === undefined || typeof answer !== "number") return undefined;
  const unit = ({ percent: "pct", kilograms: "kg", minutes: "min", hours: "h", days: "day", celsius: "C", millimetres: "mm", centimetres: "cm" } as const)[sign.kind as "percent"];
  return { value: unit ? { value: figure, unit, digits: 1 } : figure } as never;
}
