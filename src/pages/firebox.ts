/** The firebox seen through its door, with the mark that no wood stands above. */
import { text, type PageBlock } from "../answer.ts";

const WIDTH = 120;
const HEIGHT = 110;
const FLOOR = 100;
const TOP = 12;
/** Weighed loads stay under two thirds of the height; where no weight is known, half is the limit. Common practice, no source. */
const SHARE = { weighed: 2 / 3, unknown: 1 / 2 } as const;

export function firebox(max_load_kg: number | null): PageBlock {
  const share = max_load_kg === null ? SHARE.unknown : SHARE.weighed;
  const mark = Math.round(FLOOR - share * (FLOOR - TOP));
  const log = (x: number, y: number): string => `<ellipse cx="${x}" cy="${y}" rx="9" ry="8"/>`;
  const rows = [0, 1, 2].filter((row) => FLOOR - 18 * (row + 1) >= mark);
  const logs = rows.flatMap((row) => [0, 1, 2].map((i) => log(38 + 22 * i + (row % 2) * 4, FLOOR - 9 - 18 * row)));
  const svg = [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" fill="none" stroke="#111" stroke-width="2">`,
    `<path d="M15 ${FLOOR}V${TOP + 12}a45 14 0 0 1 90 0V${FLOOR}Z" stroke-width="4"/>`,
    ...logs,
    `<path d="M8 ${mark}H112" stroke-dasharray="6 3" stroke-width="3"/>`,
    "</svg>",
  ].join("");
  return { kind: "drawing", svg, alt: text(max_load_kg === null ? "guest.drawing-half" : "guest.drawing") };
}
