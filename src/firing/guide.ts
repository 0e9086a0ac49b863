/**
 * The fire as a state machine. It knows the stages, what a report leads to, and when to look in again; the words and minutes stand in
 * `knowledge/firings/`. Air stays fully open while there is flame, save for two stages of their own: over-firing (air to half, never shut)
 * and chimney fire (air shut, damper left). What may be closed is decided by `gates.ts` alone.
 */
import type { Firing } from "../knowledge/schemas.ts";
import type { AlarmsFacts, HeaterFacts } from "../records/schemas.ts";
import { airGate, damperGate, noted, type Bed, type Gate } from "./gates.ts";
import type { Report } from "./report.ts";

export type StageId = "prepare" | "lit" | "burning" | "embers" | "bed" | "may-close" | "closed" | "left-open" | "over-firing" | "chimney-fire" | "smoke" | "out" | "stopped";

export interface GuideState {
  readonly stage: StageId;
  readonly stage_at_ms: number;
  /** where to go back to from over-firing or smoke */
  readonly before?: StageId;
  readonly paused: boolean;
  readonly lit_at_ms?: number;
  readonly flame_out_at_ms?: number;
  readonly air_shut_at_ms?: number;
  readonly load_kg?: number;
  readonly bed: Bed;
  /** counts check-ins, so that each has a key of its own */
  readonly check_ins: number;
}

export type GuideEvent =
  | { readonly event: "report"; readonly report: Report }
  | { readonly event: "lit" | "engaged" | "slow" | "high" | "falling" | "out" | "roar" | "calmer" | "sparks" | "smoke" | "smoke-gone" }
  | { readonly event: "air-shut" | "damper-shut" | "leave-open" | "pause" | "resume" | "stop" | "look" };

export interface Around {
  readonly heater: HeaterFacts;
  readonly alarms: AlarmsFacts;
  readonly now_ms: number;
}
export interface Step {
  readonly state: GuideState;
  /** the gate that matters at this stage, if one does */
  readonly gate: { readonly which: "air" | "damper"; readonly gate: Gate } | null;
  /** a remark on what was just reported, by its place in the firing's texts */
  readonly remark: "slow" | "draught-out" | "damper-early" | "air-early" | "air-reopen" | "too-soon" | null;
  readonly over: boolean;
}

/** Reports and events behind the choices that the stages show. */
export const CHOICES: Readonly<Record<string, GuideEvent>> = {
  "lit-now": { event: "lit" },
  "top-alight": { event: "look" },
  "all-alight": { event: "engaged" },
  "slow": { event: "slow" },
  "went-out": { event: "out" },
  "roars": { event: "roar" },
  "smokes": { event: "smoke" },
  "high": { event: "high" },
  "falling": { event: "falling" },
  "yellow": { event: "report", report: { flame: "yellow" } },
  "blue": { event: "report", report: { flame: "blue" } },
  "no-flame": { event: "report", report: { flame: "none" } },
  "no-flame-raked": { event: "report", report: { flame: "none", raked: true } },
  "air-shut": { event: "air-shut" },
  "glow": { event: "report", report: { flame: "none", bed: "glow" } },
  "black": { event: "report", report: { flame: "none", bed: "black" } },
  "black-dark-raked": { event: "report", report: { flame: "none", bed: "black", raked: true, in_the_dark: true } },
  "alarm-works": { event: "report", report: { alarm: "works" } },
  "alarm-none": { event: "report", report: { alarm: "doubt" } },
  "not-sure": { event: "report", report: { unsure: true } },
  "damper-shut": { event: "damper-shut" },
  "leave-open": { event: "leave-open" },
  "calmer": { event: "calmer" },
  "sparks": { event: "sparks" },
  "smoke-gone": { event: "smoke-gone" },
  "smoke-stays": { event: "smoke" },
};

export const begin = (now_ms: number, load_kg?: number): GuideState => ({
  stage: "prepare", stage_at_ms: now_ms, paused: false, bed: {}, check_ins: 0, ...(load_kg === undefined ? {} : { load_kg }),
});

const FLAMING: readonly StageId[] = ["lit", "burning", "embers", "over-firing", "smoke"];
export const isBurning = (state: GuideState): boolean => !["prepare", "closed", "left-open", "out", "stopped"].includes(state.stage);
export const isOver = (stage: StageId): boolean => ["closed", "left-open", "stopped"].includes(stage);

export function step(state: GuideState, happened: GuideEvent, around: Around): Step {
  const { now_ms } = around;
  const to = (stage: StageId, more: Partial<GuideState> = {}): GuideState => ({
    ...state, ...more, stage, stage_at_ms: stage === state.stage ? state.stage_at_ms : now_ms, paused: false,
  });
  const end = (next: GuideState, remark: Step["remark"] = null): Step => ({ state: next, remark, gate: gateOf(next, around), over: isOver(next.stage) });

  switch (happened.event) {
    case "pause":
      return end({ ...state, paused: true });
    case "resume":
    case "look":
      return end({ ...state, paused: false });
    case "stop":
      return end(to("stopped"));
    case "lit":
      return end(to("lit", { lit_at_ms: state.lit_at_ms ?? now_ms, bed: { lit_at_ms: state.lit_at_ms ?? now_ms } }));
    case "engaged":
      return end(to("burning"));
    case "slow":
      return end(to(state.stage === "prepare" ? "lit" : state.stage), "slow");
    case "high":
      return end(to("burning", { bed: noted(state.bed, { flame: "high" }, now_ms) }));
    case "falling":
      return end(to("embers", { bed: noted(state.bed, { flame: "yellow" }, now_ms) }));
    case "out":
      return state.stage === "prepare" ? end(state, "draught-out") : end(to("out"));
    case "roar":
      return end(to("over-firing", { before: state.stage === "over-firing" ? (state.before ?? "burning") : state.stage, bed: noted(state.bed, { flame: "high" }, now_ms) }));
    case "calmer":
      return end(to("burning"));
    case "sparks":
      return end(to("chimney-fire"));
    case "smoke":
      return end(to("smoke", { before: state.stage === "smoke" ? (state.before ?? "lit") : state.stage, bed: noted(state.bed, { smoke: "room" }, now_ms) }));
    case "smoke-gone":
      return end(to(state.before && FLAMING.includes(state.before) ? state.before : "lit"));
    case "air-shut": {
      const allowed = airGate(state.bed, now_ms);
      return allowed.open ? end(to("bed", { air_shut_at_ms: now_ms })) : end(to(state.stage === "prepare" ? "prepare" : "embers"), "air-early");
    }
    case "damper-shut": {
      const allowed = damperGate(state.bed, around.alarms, now_ms);
      return allowed.open ? end(to("closed")) : end(to("bed"), "damper-early");
    }
    case "leave-open":
      return end(to("left-open"));
    case "report":
      return reported(state, happened.report, around, to, end);
  }
}

function reported(
  state: GuideState,
  report: Report,
  around: Around,
  to: (stage: StageId, more?: Partial<GuideState>) => GuideState,
  end: (next: GuideState, remark?: Step["remark"]) => Step,
): Step {
  if (report.roar) return step(state, { event: "roar" }, around);
  const bed = noted(state.bed, report, around.now_ms);
  const flame_out_at_ms = bed.no_flame_since_ms === undefined ? undefined : (state.flame_out_at_ms ?? bed.no_flame_since_ms);
  const more = { bed, flame_out_at_ms };

  if (state.stage === "prepare") return report.flame && report.flame !== "none" ? end(to("lit", { ...more, lit_at_ms: around.now_ms, bed: { ...bed, lit_at_ms: around.now_ms } })) : end(to("prepare", more));
  if (report.flame === "high" || report.flame === "yellow") {
    if (state.air_shut_at_ms !== undefined) return end(to("embers", { ...more, air_shut_at_ms: undefined, flame_out_at_ms: undefined }), "air-reopen");
    return end(to(state.stage === "lit" || state.stage === "burning" ? "burning" : "embers", more));
  }
  if (report.flame === "blue") {
    if (state.air_shut_at_ms !== undefined) return end(to("embers", { ...more, air_shut_at_ms: undefined, flame_out_at_ms: undefined }), "air-reopen");
    return end(to("embers", more));
  }
  if (state.stage === "bed" || state.stage === "may-close" || report.bed === "black") {
    const noDamper = around.heater.shut_off_damper === false;
    if (noDamper && airGate(bed, around.now_ms).open) return end(to("closed", more));
    return end(to(!noDamper && damperGate(bed, around.alarms, around.now_ms).open ? "may-close" : state.stage === "embers" || state.stage === "burning" || state.stage === "lit" ? "embers" : "bed", more));
  }
  return end(to(state.stage === "burning" || state.stage === "lit" ? (report.flame === "none" || report.bed === "glow" ? "embers" : state.stage) : state.stage, more));
}

function gateOf(state: GuideState, around: Around): Step["gate"] {
  if (state.stage === "embers") return { which: "air", gate: airGate(state.bed, around.now_ms) };
  if ((state.stage === "bed" || state.stage === "may-close") && around.heater.shut_off_damper !== false) {
    return { which: "damper", gate: damperGate(state.bed, around.alarms, around.now_ms) };
  }
  return null;
}

/** Minutes to the next look, by the stage's own figure and the size of the load; null where nothing needs looking at. */
export function nextLook_min(state: GuideState, firing: Firing): number | null {
  const stage = firing.stages[state.stage];
  if (state.paused || !stage?.check_in_min) return null;
  return Math.round(stage.check_in_min * ((state.load_kg ?? 12) / 12) ** stage.grows);
}
