/** "Is it better to burn twice 8 kg or once 16?" By the heater's own limits and the time between two fires. */
import { say, text, type Text } from "../../answer.ts";
import { roomFor } from "../../limits.ts";
import { q } from "../../quantities.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { inUnit, readFigures } from "../reading/figures.ts";
import { rungLoad } from "./first-fires.ts";
import { limitLine, loadOutcome } from "./load-size.ts";

/** Lighter is a number of fires, not a load. */
const LEAST_KG = 2.5;
const kg = (value: number) => q(value, "kg", { digits: 1 });

export function twiceOrOnceOutcome(context: Context): Outcome {
  // after a long rest, or new: the next step is the whole answer
  if (rungLoad(context)) return loadOutcome(context);
  const { limits, snapshot, now_ms, rules } = context;
  const room = roomFor(limits, snapshot.fires, now_ms, rules);
  return {
    draft: {
      topic: "load-size",
      cautions: ["over-firing", "more-wood", "close-flue"],
      headline: verdict(context),
      blocks: blocks(
        say(text("twice.why", { spacing: q(limits.spacing_h, "h") }), "more-wood"),
        limitLine(context),
        room.not_before_ms !== null && say(text(`load.wait.${room.because ?? "spacing"}`, { until: { at_ms: room.not_before_ms, show: "day-time" } })),
      ),
    },
  };
}

function verdict({ text: words, limits }: Context): Text {
  const { max_load_kg, min_load_kg, max_day_kg, spacing_h } = limits;
  const spacing = q(spacing_h, "h");
  const loads = readFigures(words).flatMap((figure) => (figure.dimension === "mass" ? [inUnit(figure, "kg") ?? 0] : figure.dimension === null ? [figure.value] : [])).filter((load) => load >= LEAST_KG);
  if (max_load_kg === null) return text("twice.no-limit", { spacing });
  if (loads.length === 0) return text("twice.general", { spacing, max: kg(max_load_kg) });
  const small = Math.min(...loads);
  const big = loads.length > 1 ? Math.max(...loads) : 2 * small;
  const over = 0.05;
  if (small > max_load_kg + over) return text("twice.neither", { max: kg(max_load_kg) });
  if (big > max_load_kg + over) return text(2 * small > (max_day_kg ?? Infinity) + over ? "twice.day" : "twice.two", { small: kg(small), big: kg(big), max: kg(max_load_kg), day: kg(max_day_kg ?? 2 * max_load_kg), spacing });
  if (small < (min_load_kg ?? 0) - over) return text("twice.one", { small: kg(small), big: kg(big), min: kg(min_load_kg ?? 0) });
  if (2 * small > (max_day_kg ?? Infinity) + over) return text("twice.one-day", { big: kg(big), day: kg(max_day_kg ?? 0) });
  return text("twice.both", { small: kg(small), big: kg(big), spacing });
}
