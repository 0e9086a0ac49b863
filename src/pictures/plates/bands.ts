/** A group's week: in which bands its members lie, each bar as coarse as what may be said. An empty row may hold nobody, or too few. */
import { text } from "../../answer.ts";
import { INK } from "../look.ts";
import { along, note, notes, reach, sheet, up, type Plate, type Row } from "./plate.ts";

const HEIGHT = { hidden: 0, some: 1, third: 2, half: 3 } as const;
/** Words stand left of the bars. */
const WORDS_X = -2.6;
const ROWS = 13;

const spec = sheet(ROWS * 21 + 78, [
  { data: { name: "bars" }, mark: { type: "rect", color: INK.wood, stroke: INK.text, strokeWidth: 0.5 }, encoding: { ...along("from"), ...reach("x2", "to"), ...up("low"), ...reach("y2", "high") } },
  ...notes(),
]);

export const bandsPlate: Plate<"bands"> = {
  spec,
  fill({ week_from_ms, at_least, metrics }, { write }) {
    const bars: Row[] = [];
    const words: Row[] = [];
    let y = ROWS;
    for (const { metric, levels } of metrics) {
      words.push(note(WORDS_X, --y + 0.5, write(text(`winter.metric.${metric}`)), INK.text));
      for (const [band, level] of levels.entries()) {
        y--;
        words.push(note(WORDS_X + 0.15, y + 0.5, write(text(`winter.band.${metric}.${band}`)), INK.quiet));
        if (level === "hidden") words.push(note(0.05, y + 0.5, "·", INK.quiet));
        else bars.push({ from: 0, to: HEIGHT[level], low: y + 0.15, high: y + 0.85 });
      }
    }
    const ticks = { values: [1, 2, 3], labels: Object.fromEntries((["some", "third", "half"] as const).map((level, i) => [String(i + 1), write(text(`picture.bands.tick.${level}`))])) };
    return {
      title: write(text("picture.bands.title", { week: { at_ms: week_from_ms, show: "date" } })),
      subtitle: write(at_least === null ? text("picture.bands.subtitle-few") : text("picture.bands.subtitle", { count: at_least })),
      x: { low: WORDS_X, high: 3.4, ticks },
      y: { low: 0, high: ROWS, ticks: { values: [], labels: {} } },
      data: { bars, notes: words },
    };
  },
};
