/** The fire being walked through: starting, reports, check-ins, hand-over. What may happen is decided in firing/; this shapes the answer. */
import { ask, say, steps, text, type Block, type Draft, type Text } from "../../answer.ts";
import { begin, CHOICES, isBurning, nextLook_min, step, type GuideEvent, type GuideState, type Step } from "../../firing/guide.ts";
import { lightBy } from "../../firing/times.ts";
import type { Firing } from "../../knowledge/schemas.ts";
import { roomFor } from "../../limits.ts";
import { q } from "../../quantities.ts";
import type { Due, DueRowLike, Fire, Guide, Heater, Write } from "../../records/types.ts";
import { holds } from "../../trouble/walk.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { gatesNow } from "./close-down.ts";
import { emergencyOutcome } from "./emergency.ts";
import { firstFiresOutcome, rungLoad, seenQuestion } from "./first-fires.ts";
import { adviseLoad } from "./load-size.ts";
import { running, stateOf } from "./guide-state.ts";
import { builderWords } from "./parts.ts";
import { notTonight, tonight } from "./tonight.ts";

const MIN = 60_000;
const USEFUL_MS = 10 * MIN;
const MOST_UNANSWERED = 3;

const firingOf = (context: Context): Firing => {
  const firing = context.knowledge.firings.get("everyday");
  if (!firing) throw new Error("knowledge/firings/everyday.yaml is missing");
  return firing;
};

export function startGuide(context: Context, wanted_kg?: number): Outcome {
  const there = running(context);
  if (there) return there.watch_id === context.snapshot.person.id ? lookAgain(context, there) : someoneElses(context, there);
  const room = roomFor(context.limits, context.snapshot.fires, context.now_ms, context.rules);
  if (room.next_load_kg === 0) return tooSoon(context, room.because ?? "spacing", room.not_before_ms ?? context.now_ms);
  const lighting = lightingOf(context);
  if (lighting === "ask") return askLighting(context);

  const mild = notTonight(context);
  if (mild) return mild;
  const rung = rungLoad(context);
  if (rung?.high_kg === 0) return firstFiresOutcome(context);

  const most = rung ? Math.min(rung.high_kg, room.next_load_kg ?? rung.high_kg) : room.next_load_kg;
  const advised = adviseLoad(context, {}).load_kg ?? undefined;
  const chosen = wanted_kg ?? (context.state.reckoned?.topic === "load-size" ? (context.state.reckoned.inputs.load_kg as number) : undefined) ?? advised;
  const load_kg = chosen && most !== null ? Math.min(chosen, most) : chosen || undefined;

  const heater = context.heater ?? newHeater(context);
  const state = begin(context.now_ms, load_kg);
  const guide: Guide = { heater_id: heater.id, fire_id: context.id("fire"), version: 0, watch_id: context.snapshot.person.id, place_id: context.snapshot.place.id, state: { ...state, lighting } as never };
  const around = { heater: { ...heater.facts, lighting }, alarms: context.snapshot.home.alarms, now_ms: context.now_ms } as const;
  const shown = step(state, { event: "look" }, around);
  const special = tonight(context);
  const draft = guideDraft(context, guide, shown, [loadBlock(load_kg, wanted_kg, most), bedtimeBlock(context, load_kg ?? 12), ...special.before, alarmBlock(context)]);
  return {
    draft: { ...draft, blocks: [...(draft.blocks ?? []), ...special.after] },
    state: special.state,
    writes: [...(context.heater ? [] : [{ write: "heater", heater } satisfies Write]), { write: "guide", guide }],
    due: [],
  };
}

/** Everything that happens to a running guide. */
export function guideEvent(context: Context, guide: Guide, happened: GuideEvent): Outcome {
  const before = stateOf(guide);
  const lighting = (before as { lighting?: "top" | "bottom" }).lighting ?? "bottom";
  const around = { heater: { ...context.heater?.facts, lighting }, alarms: context.snapshot.home.alarms, now_ms: context.now_ms };
  const done = step(before, happened, around);
  if (done.state.stage === "chimney-fire") return { ...emergencyOutcome(context, "chimney-fire"), ...kept(context, guide, done, { quiet: true }) };
  if (done.state.stage === "smoke" && before.stage === "smoke" && happened.event === "smoke") return { ...emergencyOutcome(context, "room-smoke"), ...kept(context, guide, done, { quiet: true }) };
  const draft = guideDraft(context, guide, done);
  const seen = done.over && done.state.lit_at_ms !== undefined ? seenQuestion(context) : null;
  return { draft: seen ? { ...draft, blocks: [...(draft.blocks ?? []), seen] } : draft, ...kept(context, guide, done) };
}

const lookAgain = (context: Context, guide: Guide): Outcome => guideEvent(context, guide, { event: "look" });

/** Choice ids `guide:<id>` as shown by the stages. */
export function guideChoice(context: Context, id: string): Outcome | null {
  const guide = running(context);
  if (id === "take-over" && guide) return takeOver(context, guide);
  const happened = Object.hasOwn(CHOICES, id) ? CHOICES[id] : undefined;
  return guide && happened ? guideEvent(context, guide, happened) : null;
}

export function takeOver(context: Context, guide: Guide): Outcome {
  const me = context.snapshot.person;
  const outcome = lookAgain(context, { ...guide, watch_id: me.id, place_id: context.snapshot.place.id });
  const told: Draft = { topic: "light-fire", cautions: ["unattended"], headline: text("guide.handed-over", { name: me.name ?? text("someone") }) };
  return guide.watch_id === me.id ? outcome : { ...outcome, also_tell: [{ key: `handed-over:${guide.fire_id}:${context.now_ms}`, person_id: guide.watch_id, place_id: guide.place_id, draft: told }] };
}

/** A look that fell due. It only ever asks what is seen now; after three unanswered ones it stops asking. */
export function checkIn(context: Context, row: DueRowLike): Outcome | null {
  const guide = running(context);
  if (!guide || row.payload.fire_id !== guide.fire_id) return null;
  const state = stateOf(guide);
  if (state.paused || state.check_ins !== row.payload.n) return null;
  const unanswered = Number(row.payload.unanswered ?? 0);
  const late = context.now_ms > row.useful_until_ms;
  const firing = firingOf(context);
  const stage = firing.stages[state.stage];
  if (!stage?.asks) return null;
  const stages = `firings.everyday.stages.${state.stage}`;
  const last = unanswered + 1 >= MOST_UNANSWERED;
  const next: GuideState = { ...state, check_ins: state.check_ins + 1 };
  return {
    draft: {
      topic: "light-fire",
      live: `guide:${guide.fire_id}`,
      cautions: stage.cautions,
      headline: text(late ? "guide.late" : "guide.look"),
      blocks: blocks(
        ask(`guide:${state.stage}`, late ? text("guide.what-now") : text(`${stages}.asks`), stageChoices(firing, state.stage), ...stage.cautions),
        last && say(text("guide.stop-asking"), "close-flue"),
      ),
    },
    writes: [{ write: "guide", guide: { ...guide, state: next as never } }],
    due: last ? [] : lookDue(context, { ...guide, state: next as never }, next, unanswered + 1),
  };
}

function kept(context: Context, guide: Guide, done: Step, options: { quiet?: boolean } = {}): Pick<Outcome, "writes" | "due" | "cancel"> {
  const before = stateOf(guide);
  const next: GuideState = { ...done.state, check_ins: done.state.check_ins + 1 };
  const state = { ...next, lighting: (before as { lighting?: string }).lighting } as unknown as Guide["state"];
  const fire = fireOf(context, guide, done.state);
  const updated = { ...guide, state };
  return {
    writes: [
      ...(fire ? [{ write: "fire", fire } satisfies Write] : []),
      ...(done.over ? [{ write: "end-guide", heater_id: guide.heater_id } satisfies Write] : [{ write: "guide", guide: updated } satisfies Write]),
    ],
    cancel: [`guide:${guide.fire_id}:*`],
    due: done.over || options.quiet ? [] : lookDue(context, updated, next, 0),
  };
}

function lookDue(context: Context, guide: Guide, state: GuideState, unanswered: number): Due[] {
  const minutes = nextLook_min(state, firingOf(context));
  if (minutes === null) return [];
  const due_at_ms = context.now_ms + minutes * MIN;
  return [{
    key: `guide:${guide.fire_id}:${state.check_ins}`, kind: "guide-check-in", due_at_ms, useful_until_ms: due_at_ms + USEFUL_MS,
    person_id: guide.watch_id, place_id: guide.place_id, payload: { fire_id: guide.fire_id, n: state.check_ins, unanswered },
  }];
}

/** The fire's row, kept up to date from the moment it is lit, so that the log and the others of the heater have it. */
function fireOf(context: Context, guide: Guide, state: GuideState): Fire | null {
  if (state.lit_at_ms === undefined) return null;
  const iso = (at_ms: number): string => new Date(at_ms).toISOString();
  const before = context.snapshot.fires.find((fire) => fire.id === guide.fire_id)?.facts;
  const wood = context.snapshot.home.wood[0];
  const closed = state.stage === "closed" && context.heater?.facts.shut_off_damper !== false;
  return {
    id: guide.fire_id, heater_id: guide.heater_id, person_id: guide.watch_id, lit_at_ms: state.lit_at_ms,
    facts: {
      ...(wood?.species ? { species: wood.species } : {}),
      ...(wood?.moisture_pct_wet === undefined ? {} : { moisture_pct_wet: wood.moisture_pct_wet }),
      ...(context.snapshot.home.weather[0] ? { outside_C: context.snapshot.home.weather[0].low_C } : {}),
      ...before,
      lit_at: iso(state.lit_at_ms),
      lit: (stateOf(guide) as { lighting?: "top" | "bottom" }).lighting ?? "bottom",
      ...(state.load_kg ? { load_kg: state.load_kg } : {}),
      ...(state.flame_out_at_ms ? { flame_out_at: iso(state.flame_out_at_ms) } : {}),
      ...(state.air_shut_at_ms ? { air_closed_at: iso(state.air_shut_at_ms), air: "open" as const } : {}),
      ...(closed ? { damper_closed_at: iso(context.now_ms), bed_at_close: "black" as const } : {}),
    },
  };
}

function guideDraft(context: Context, guide: Guide, done: Step, extra: (Block | null)[] = []): Draft {
  const firing = firingOf(context);
  const { stage: id } = done.state;
  const stage = firing.stages[id];
  if (!stage) throw new Error(`knowledge/firings/everyday.yaml lacks the stage "${id}"`);
  const path = `firings.everyday.stages.${id}`;
  const lighting = (stateOf(guide) as { lighting?: "top" | "bottom" }).lighting ?? "bottom";
  const facts = { ...context.heater?.facts, lighting };
  const list = stage.steps.filter((one) => holds(one.when, facts) ?? one.unknown === "show");
  const cautions = [...stage.cautions, ...list.flatMap((one) => one.cautions)];
  const gates = done.gate && (id === "embers" || id === "bed") ? gateBlocks(done) : [];
  return {
    topic: "light-fire",
    live: `guide:${guide.fire_id}`,
    cautions,
    headline: done.state.paused ? text("guide.paused") : text(`${path}.says`),
    blocks: blocks(
      done.remark && say(text(`firings.everyday.remarks.${done.remark}`), ...cautions),
      ...extra,
      list.length > 0 && steps(list.map((one) => text(`${path}.steps.${one.id}.text`)), { cautions }),
      ...gates,
      done.state.lit_at_ms !== undefined && !done.over && say(text("guide.since", { lit: { at_ms: done.state.lit_at_ms, show: "time" }, load: done.state.load_kg ? q(done.state.load_kg, "kg", { digits: 1 }) : text("some-wood") })),
      ...(id === "prepare" || id === "bed" ? builderWords(context, id === "bed" ? "closing" : "lighting") : []),
      !done.state.paused && stage.asks && ask(`guide:${id}`, text(`${path}.asks`), stageChoices(firing, id, done), ...stage.cautions),
    ),
  };
}

const gateBlocks = (done: Step): Block[] => {
  if (!done.gate) return [];
  const { which, gate } = done.gate;
  if (which === "air") return gatesNow(done.state.bed, gate, gate, true);
  return gatesNow(done.state.bed, { open: false, missing: [] }, gate, false).slice(0, 2);
};

function stageChoices(firing: Firing, id: string, done?: Step) {
  const list = (firing.stages[id]?.choices ?? []).map((choice) => ({ id: `guide:${choice.id}`, label: text(`firings.everyday.stages.${id}.choices.${choice.id}.label`) }));
  return done?.gate?.which === "air" && done.gate.gate.open && id === "embers" ? [{ id: "guide:air-shut", label: text("guide.air-shut") }, ...list] : list;
}

/** Builder's sheet first; else by where the gases leave; else asked. */
function lightingOf(context: Context): "top" | "bottom" | "ask" {
  const facts = context.heater?.facts;
  if (facts?.lighting === "top" || facts?.lighting === "bottom") return facts.lighting;
  if (facts?.gas_exit === "top") return "top";
  if (facts?.gas_exit === "low") return "bottom";
  // asked and answered "don't know": from below works in any firebox, only smokier
  return facts?.lighting === "unknown" || facts?.gas_exit === "unknown" ? "bottom" : "ask";
}

const LIGHTING = "lighting";
const WHERE: readonly (readonly [string, RegExp])[] = [
  ["fact:lighting=unknown", /\b(?:don'?t know|do not know|no idea|not sure|unsure|dunno|weiss (?:ich )?nicht|weiß (?:ich )?nicht|keine ahnung)\b/],
  ["fact:gas_exit=low", /^(?:it (?:leaves|is|goes out) )?(?:low|low down|down low|at the bottom|weit unten|tief unten)$/],
  ["fact:lighting=bottom", /^(?:(?:lit )?from (?:below|the bottom|underneath)|below|bottom(?: up)?|von unten)(?:,? (?:says|by) the sheet)?$/],
  ["fact:gas_exit=top", /^(?:it (?:leaves|is|goes out) )?(?:(?:lit )?from (?:the )?top|at the top|top(?: down)?|from above|oben|von oben)(?:,? (?:says|by) the sheet)?$/],
];

/** The choice that words typed after the question stand for. */
export function lightingSaid({ state, said }: Context): string | null {
  if (state.pending?.id !== LIGHTING || state.topic !== "light-fire") return null;
  const plain = said.toLowerCase().replace(/[?.!\s]+$/, "").trim();
  return WHERE.find(([, words]) => words.test(plain))?.[0] ?? null;
}

const askLighting = ({ now_ms }: Context): Outcome => ({
  state: { pending: { id: LIGHTING, data: {}, at_ms: now_ms } },
  draft: {
    topic: "light-fire",
    cautions: ["unattended", "no-liquids"],
    headline: text("guide.lighting-unknown"),
    blocks: [
      say(text("guide.lighting-why"), "unattended"),
      ask("lighting", text("guide.lighting-ask"), [
        { id: "fact:gas_exit=top", label: text("fact.gas_exit.top") },
        { id: "fact:gas_exit=low", label: text("fact.gas_exit.low") },
        { id: "fact:lighting=bottom", label: text("fact.lighting.bottom") },
        { id: "fact:lighting=unknown", label: text("dont-know") },
      ]),
    ],
  },
});

function someoneElses(context: Context, guide: Guide): Outcome {
  const state = stateOf(guide);
  const name = context.snapshot.names.get(guide.watch_id);
  const room = roomFor(context.limits, context.snapshot.fires, context.now_ms);
  return {
    draft: {
      topic: "light-fire",
      cautions: ["over-firing", "unattended"],
      headline: text(isBurning(state) ? "guide.running" : "guide.preparing", { name: name ?? text("someone"), lit: { at_ms: state.lit_at_ms ?? state.stage_at_ms, show: "time" } }),
      blocks: blocks(
        say(text("guide.no-second", { hours: q(context.limits.spacing_h, "h") }), "over-firing"),
        room.burnt_24h_kg > 0 && say(text("guide.day-total", { total: q(room.burnt_24h_kg, "kg", { digits: 1 }) })),
        { kind: "choices", cautions: [], choices: [{ id: "guide:take-over", label: text("guide.take-over") }] },
      ),
    },
  };
}

const tooSoon = (context: Context, because: "spacing" | "day" | "ban", until_ms: number): Outcome => {
  const last = context.snapshot.fires[0];
  return {
    draft: {
      topic: "light-fire",
      cautions: ["over-firing", "close-flue"],
      headline: text(`load.wait.${because}`, { until: { at_ms: until_ms, show: "day-time" } }),
      blocks: blocks(
        last && say(text("guide.last-fire", { lit: { at_ms: last.lit_at_ms, show: "day-time" }, load: last.facts.load_kg ? q(last.facts.load_kg, "kg", { digits: 1 }) : text("some-wood"), name: context.snapshot.names.get(last.person_id) ?? text("someone") })),
        because !== "ban" && say(text("guide.why-wait"), "over-firing"),
      ),
    },
  };
};

const newHeater = (context: Context): Heater => ({ id: context.id("heater"), owner_id: context.snapshot.person.id, member_ids: [context.snapshot.person.id], facts: {}, upkeep: {}, rules: [] });

function loadBlock(load_kg: number | undefined, wanted_kg: number | undefined, most: number | null): Block | null {
  if (load_kg === undefined) return say(text("load.half-firebox"), "over-firing");
  const words: Text = wanted_kg !== undefined && most !== null && wanted_kg > most
    ? text("guide.load-capped", { load: q(load_kg, "kg", { digits: 1 }), wanted: q(wanted_kg, "kg", { digits: 1 }) })
    : text("guide.load", { load: q(load_kg, "kg", { digits: 1 }) });
  return say(words, "over-firing");
}

function bedtimeBlock(context: Context, load_kg: number): Block | null {
  const by = lightBy(context.snapshot.person.facts.asleep, context.reader.timezone, context.now_ms, context.snapshot.fires, load_kg);
  if (!by) return null;
  return say(text(by.too_late ? "light-by.late" : by.to_black.fires > 0 ? "light-by.own" : "light-by.usual", {
    latest: { at_ms: by.latest_ms, show: "time" }, bedtime: { at_ms: by.bedtime_ms, show: "time" }, hours: q(by.to_black.hours, "h"), fires: by.to_black.fires,
  }), "close-flue");
}

function alarmBlock(context: Context): Block | null {
  const { co } = context.snapshot.home.alarms;
  const ended = co?.ends_on !== undefined && Date.parse(co.ends_on) <= context.now_ms;
  if (co?.present && !ended) return null;
  return say(text(ended ? "alarm.ended" : co?.present === false ? "alarm.none" : "alarm.unknown"), "carbon-monoxide");
}
