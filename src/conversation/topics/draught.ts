/** "How strong is the draught?" Cold flue and warm, why a mild evening smokes, and whether the flue gets wet, each as a figure. */
import { numbers, say, text, type Block, type NumberItem, type Text } from "../../answer.ts";
import { reckon } from "../../calculators/index.ts";
import { q } from "../../quantities.ts";
import { coolingCoefficient, condensation, flueDewPoint_C, gasTemperatures_C, innerWall_C } from "../../reckoning/flue-cooling.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import type { Hearing } from "../hear.ts";
import { inUnit } from "../reading/figures.ts";
import { assumedLine, USUAL_MOISTURE_PCT } from "./around.ts";
import { failed } from "./calculate.ts";

const WARM_FLUE_C = 120;
/** A flue that has stood unlit is near the room, one on an outside wall between room and outdoors. Common practice, no source. */
const UNLIT_FLUE_C = 18;
const FROST_C = -5;
/** A mild evening on which heaters still are lit, and a flue of a house of two floors. Judgement. */
const MILD_C = 14;
const USUAL_FLUE_M = 6;
/** Lighting wants this much. Common practice, no source. */
const LIGHTING_PA = 3;
/** Gas where it enters the flue over a whole fire: 120 to 200 °C on the mean. Common practice, no source. */
const INLET_C = { low: 120, typical: 160, high: 200 };
const AIR_RATIO = 2.95;
const USUAL_DIAMETER_M = 0.18;
const TALLEST_FLUE_M = 40;

export function draughtOutcome(context: Context, heard: Hearing): Outcome {
  const lengths = heard.figures.flatMap((figure) => (figure.dimension === "length" ? [inUnit(figure, "m") ?? 0] : []));
  const said_m = lengths.find((m) => m >= 1 && m <= TALLEST_FLUE_M) ?? context.heater?.facts.flue_height_m;
  const altitude_m = lengths.find((m) => m > TALLEST_FLUE_M && m <= 5000);
  const degrees = heard.figures.flatMap((figure) => (figure.dimension === "temperature" ? [inUnit(figure, "C") ?? 0] : figure.dimension === null && figure.value < 0 && figure.value > -50 ? [figure.value] : []));
  const said_C = degrees.find((C) => C < 45);
  const flue_mean_C = degrees.find((C) => C >= 45);
  const isMild = /\b(mild|warm(er)?) (day|days|evening|evenings|weather|night|nights|spell)\b/i.test(context.text);
  const outside_C = said_C ?? (/\bfreezing\b/i.test(context.text) ? 0 : isMild ? MILD_C : context.snapshot.home.weather[0]?.low_C);
  const flue_height_m = said_m ?? (isMild ? USUAL_FLUE_M : undefined);
  if (flue_height_m === undefined || outside_C === undefined) {
    return { draft: { topic: "draught", cautions: ["weak-draught"], headline: text("draught.ask"), blocks: [say(text("draught.match"), "weak-draught")] } };
  }
  const thin = altitude_m === undefined ? {} : { altitude_m };
  const pull = (outside: number, flue: number) => reckon("draught", { flue_height_m, outside_C: outside, flue_mean_C: flue, ...thin });
  const runs = [pull(outside_C, UNLIT_FLUE_C), pull(outside_C, flue_mean_C ?? WARM_FLUE_C), pull(FROST_C, UNLIT_FLUE_C)];
  const wrong = runs.find((run) => !run.ok);
  if (wrong && !wrong.ok) return failed("draught", wrong.error);
  const [cold_Pa, warm_Pa, frost_Pa] = runs.map((run) => (run.ok ? Number(run.result.draught_Pa) : 0)) as [number, number, number];
  const drip = condensationOf(context, flue_height_m, outside_C);
  const items: NumberItem[] = [
    { key: "draught_Pa", label: text("number.draught_warm"), quantity: q(warm_Pa, "Pa", { digits: flue_mean_C === undefined ? 0 : 1 }) },
    { key: "draught_cold_Pa", label: text("number.draught_cold"), quantity: q(cold_Pa, "Pa", { digits: 1 }) },
    ...(drip ? [drip.item] : []),
  ];
  return {
    draft: {
      topic: "draught",
      cautions: cold_Pa < LIGHTING_PA ? ["weak-draught"] : [],
      headline: text(cold_Pa < 1 ? "draught.none" : cold_Pa < LIGHTING_PA ? "draught.weak" : "draught.fair", { cold: q(cold_Pa, "Pa", { digits: 1 }), warm: q(warm_Pa, "Pa", { digits: 0 }), outside: q(outside_C, "C") }),
      blocks: blocks(
        numbers(...items),
        cold_Pa < LIGHTING_PA && say(text("draught.mild", { outside: q(outside_C, "C"), cold: q(cold_Pa, "Pa", { digits: 1 }), frost: q(FROST_C, "C"), frosty: q(frost_Pa, "Pa", { digits: 0 }) }), "weak-draught"),
        say(text("draught.need"), "weak-draught"),
        say(text("draught.match"), "weak-draught"),
        altitude_m !== undefined && say(text("draught.altitude", { altitude: q(altitude_m, "m", { digits: 0 }) })),
        drip?.block,
        assumedLine([
          ...(said_m === undefined ? [text("assumed.flue-height", { height: q(flue_height_m, "m", { digits: 0 }) })] : []),
          ...(isMild && said_C === undefined ? [text("assumed.mild", { outside: q(outside_C, "C") })] : []),
          text("assumed.unlit-flue", { flue: q(UNLIT_FLUE_C, "C") }), ...(flue_mean_C === undefined ? [text("assumed.warm-flue", { flue: q(WARM_FLUE_C, "C") })] : []), ...(drip?.assumed ?? []),
        ]),
      ),
    },
    state: { reckoned: { topic: "draught", calculator: "draught", inputs: { flue_height_m, outside_C }, at_ms: context.now_ms } },
  };
}

/** Inner wall at the mouth against the dew point of the gas, when damp is asked about or the flue runs cold. */
function condensationOf(context: Context, length_m: number, outside_C: number): { block: Block; item: NumberItem; assumed: Text[] } | null {
  const { heater, limits, snapshot } = context;
  const outdoorsFlue = heater?.facts.flue_on_outside_wall;
  if (!/\b(condens\w*|damp|drip\w*|wet|sweat\w*|tar|water|dew)\b/i.test(context.text) && outdoorsFlue !== true) return null;
  const load_kg = limits.max_load_kg ?? 12;
  const moisture = snapshot.home.wood[0]?.moisture_pct_wet ?? USUAL_MOISTURE_PCT;
  const k = outdoorsFlue ? 5 : 2;
  const K = coolingCoefficient({ diameter_m: USUAL_DIAMETER_M, length_m, k_W_per_m2K: k }, 0.0035 * load_kg);
  const wall = (inlet_C: number): number => innerWall_C(gasTemperatures_C(inlet_C, outside_C, K).mouth_C, outside_C, k, 8);
  const [low, value, high] = [INLET_C.low, INLET_C.typical, INLET_C.high].map(wall) as [number, number, number];
  const dew_C = flueDewPoint_C(AIR_RATIO, Math.min(60, moisture), 97_000);
  const worst = condensation(low, dew_C);
  const verdict = condensation(value, dew_C);
  const wall_C = q(value, "C", { digits: 0, low, high });
  return {
    block: say(text(`draught.flue-${verdict === "dry" && worst !== "dry" ? "marginal" : verdict}`, { wall: wall_C, dew: q(dew_C, "C", { digits: 0 }), moisture: q(moisture, "pct") }), ...(verdict === "dry" ? [] : ["tar"])),
    item: { key: "flue_mouth_wall_C", label: text("number.flue_mouth_wall_C"), quantity: wall_C },
    assumed: [text("assumed.flue", { diameter: q(USUAL_DIAMETER_M * 100, "cm", { digits: 0 }), inlet: q(INLET_C.typical, "C", { low: INLET_C.low, high: INLET_C.high }) })],
  };
}
