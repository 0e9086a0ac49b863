/** Hood, dryer and ventilation: asked once, remembered, and said again each time a fire is got ready. */
import { ask, say, text, type Block } from "../../answer.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { recordsOutcome } from "./records.ts";

const QUESTIONS = ["vented_hood", "hood_interlock", "ventilation"] as const;
type Question = (typeof QUESTIONS)[number];
const isQuestion = (id: string): id is Question => (QUESTIONS as readonly string[]).includes(id);

/** What this house's fans ask for tonight; nothing where nothing is known. */
export function airReminder(context: Context): Block[] {
  const { house } = context.snapshot.home;
  return blocks(
    house.vented_hood && say(text(house.hood_interlock ? "air.hood-interlock" : "air.hood"), "extractor"),
    (house.ventilation === "extract" || house.ventilation === "balanced") && say(text(`air.${house.ventilation}`), "extractor"),
  );
}

/** The next thing worth knowing about the house's air, once; null when all is known or was asked before. */
export function airQuestion(context: Context): Question | null {
  const { house } = context.snapshot.home;
  return QUESTIONS.find((id) => house[id] === undefined && !(id === "hood_interlock" && house.vented_hood !== true) && context.state.asked?.[id] === undefined) ?? null;
}

export const airAsked = (context: Context, id: Question) => ({ asked: { ...context.state.asked, [id]: context.now_ms } });

export function airAsk(id: Question): Block {
  const answers = id === "ventilation" ? (["natural", "extract", "balanced"] as const) : (["yes", "no"] as const);
  return ask(`house:${id}`, text(`air.ask.${id}`), [
    ...answers.map((answer) => ({ id: `house:${id}=${answer}`, label: text(id === "ventilation" ? `air.ventilation.${answer}` : answer) })),
    { id: `house:${id}=?`, label: text("dont-know") },
  ], "extractor");
}

/** `house:<fact>=<value>`: written down, and the next question of the three asked. */
export function houseChoice(context: Context, rest: string): Outcome | null {
  const [id = "", value = ""] = rest.split("=");
  if (!isQuestion(id)) return null;
  const known = value === "?" ? undefined : id === "ventilation" ? value : value === "yes";
  const kept = known === undefined ? null : recordsOutcome(context, "set-house", { kept: { house: { [id]: known } as never }, problems: [] });
  const home = kept?.writes?.find((one) => one.write === "home");
  const after: Context = {
    ...context,
    snapshot: home?.write === "home" ? { ...context.snapshot, home: home.home } : context.snapshot,
    state: { ...context.state, ...airAsked(context, id) },
  };
  const next = airQuestion(after);
  return {
    draft: {
      topic: "set-house",
      cautions: ["extractor"],
      headline: text(known === undefined ? "air.unknown" : "records.kept"),
      blocks: blocks(...airReminder(after), ...(kept?.draft.blocks?.slice(0, 1) ?? []), next ? airAsk(next) : say(text("air.again"), "extractor")),
    },
    ...(kept?.writes ? { writes: kept.writes } : {}),
    state: { ...kept?.state, ...(next ? airAsked(after, next) : { asked: after.state.asked }) },
  };
}
