/** A heater in its first weeks: since when it is in use is heard or asked for once, so that every load asked for later keeps to the ladder. */
import { ask, say, text, type Block } from "../../answer.ts";
import type { HowTo } from "../../knowledge/schemas.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { readHeater } from "../reading/read-heater.ts";
import { readYesNo } from "../reading/yes-no.ts";
import { howtoOutcome } from "./howto.ts";
import { recordsOutcome } from "./records.ts";

const CAUTION = "first-fires";
const ASKED = "new-heater";
const DAY_MS = 86_400_000;
/** Later than this a heater is dried out (see `firing/ladder.ts`). */
const NEW_DAYS = 60;

const today = ({ now_ms, reader }: Context): Temporal.PlainDate => Temporal.Instant.fromEpochMilliseconds(now_ms).toZonedDateTimeISO(reader.timezone).toPlainDate();
const unknown = ({ heater, snapshot }: Context): boolean => heater?.facts.commissioned_on === undefined && snapshot.fires.length === 0;

/** The first fires explained; with what was said, or is asked, of the day since which the heater is in use. */
export function newHeaterOutcome(context: Context, howto: HowTo): Outcome {
  if (!unknown(context)) return howtoOutcome(context, howto);
  const since = sinceSaid(context);
  if (since) return begun(context, howto, since);
  const told = howtoOutcome(context, howto);
  const choices = [{ id: "first:new", label: text("first.new") }, { id: "first:used", label: text("first.used") }];
  return { ...told, draft: { ...told.draft, blocks: [...(told.draft.blocks ?? []), ask(ASKED, text("first.new-ask"), choices, CAUTION)] }, state: { ...told.state, pending: { id: ASKED, data: {}, at_ms: context.now_ms }, asked: { ...context.state.asked, [ASKED]: context.now_ms } } };
}

function sinceSaid(context: Context): string | null {
  const { now_ms, reader, text: words } = context;
  if (!/\b(?:new|finished|built|rebuilt|completed|done|ready|installed|commissioned|in use)\b/i.test(words)) return null;
  const since = readHeater(words, { now_ms, timezone: reader.timezone, system: reader.system, locale: reader.locale }).facts.commissioned_on;
  const days = since === undefined ? Number.NaN : Temporal.PlainDate.from(since).until(today(context)).days;
  return since !== undefined && days >= 0 && days <= NEW_DAYS ? since : null;
}

function begun(context: Context, howto: HowTo, commissioned_on: string): Outcome {
  const kept = recordsOutcome(context, "first-fires", { kept: { heater: { commissioned_on } }, problems: [] });
  const write = kept.writes?.find((one) => one.write === "heater");
  if (write?.write !== "heater") return howtoOutcome(context, howto);
  const told = howtoOutcome({ ...context, heater: write.heater, snapshot: { ...context.snapshot, heaters: [write.heater, ...context.snapshot.heaters.filter(({ id }) => id !== write.heater.id)] } }, howto);
  const noted = say(text("first.noted", { date: { at_ms: Date.parse(`${commissioned_on}T12:00:00Z`), show: "date" } }), CAUTION);
  return { ...told, draft: { ...told.draft, blocks: [noted, ...(told.draft.blocks ?? [])] }, ...(kept.writes ? { writes: kept.writes } : {}), state: { ...told.state, ...kept.state, pending: undefined } };
}

/** "Yes, new", typed in answer to the question. */
export function newHeaterAnswered(context: Context): Outcome | null {
  const { pending, topic } = context.state;
  if (pending?.id !== ASKED || topic !== "first-fires" || context.text.length > 40) return null;
  const yes = readYesNo(context.said);
  return yes === "yes" || /^(?:it(?:'| i)s )?(?:brand )?new$|^(?:ja,? )?neu$/i.test(context.said.trim()) ? newHeaterChoice(context, "new") : yes === "no" ? newHeaterChoice(context, "used") : null;
}

/** `new`, `used` */
export function newHeaterChoice(context: Context, id: string): Outcome | null {
  const howto = context.knowledge.howtos.get("first-fires");
  if (id === "used") {
    const asked = { ...context.state.asked };
    delete asked[ASKED];
    return { draft: { topic: "first-fires", cautions: [CAUTION], headline: text("first.in-use"), blocks: [{ kind: "choices", cautions: [], choices: [{ id: "topic:light-fire", label: text("topic.light-fire") }] }] }, state: { asked, pending: undefined } };
  }
  return id === "new" && howto ? begun(context, howto, today(context).toString()) : null;
}

/** Beside a load while nobody said whether the heater, spoken of as new, has had its first fires. */
export function perhapsNew(context: Context): Block[] {
  const asked_ms = context.state.asked?.[ASKED];
  if (asked_ms === undefined || context.now_ms - asked_ms > NEW_DAYS * DAY_MS || !unknown(context)) return [];
  return blocks(say(text("first.perhaps-new"), CAUTION));
}
