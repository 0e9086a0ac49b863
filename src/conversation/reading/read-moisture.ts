/** The moisture of wood as people state it. The basis is never guessed: a figure without one is asked about. */
import { dryFromWet_pct, wetFromDry_pct } from "../../reckoning/moisture.ts";
import { basisAt } from "./figure-context.ts";
import { asShare, type Figure } from "./figures.ts";
import { isWord, wordAt } from "./tokens.ts";
import { plain, type Findings, type Said, type Statement } from "./statement.ts";

export interface MoistureRead {
  /** settled: wet basis, % */
  readonly moisture_pct_wet?: number;
  /** stated without a basis, %; `settleMoisture` turns it into wet basis once the basis is known */
  readonly moisture_pct_unsettled?: number;
}

export const MOISTURE_CUES = ["moisture", "moist", "mc", "meter", "meter says", "meter said", "metre says", "meter reads", "meter read",
  "meter shows", "reads", "reading", "readings", "read", "read out", "wet", "damp", "water", "dryness", "humid", "tested at",
  "measured at", "measures"] as const;

/** Wet basis from a figure and its basis. @param pct % of the basis, 0 to about 400 */
export const settleMoisture = (pct: number, basis: "wet" | "dry"): number =>
  Math.round((basis === "wet" ? pct : wetFromDry_pct(pct)) * 10) / 10;

/** Reads the moisture out of a statement whose cues include "moisture". Of several readings the mean counts. */
export function readMoisture(statement: Statement, findings: Findings, values: readonly Said[] = statement.said): MoistureRead {
  const named = basisAnywhere(statement);
  const shares = readings(statement, values).map((share) => ({ ...share, basis: share.basis ?? named }));
  const first = shares[0];
  if (!first) return {};
  if (shares.length === 1 || shares.some(({ basis }) => basis !== first.basis)) return judge(first, findings, metered(statement));
  const mean = shares.reduce((sum, { value }) => sum + value, 0) / shares.length;
  findings.assumed.push(`The mean of ${shares.map(({ value }) => plain(value)).join(", ")} % was taken: ${plain(mean)} %.`);
  return judge({ ...first, value: mean }, findings, metered(statement));
}

/** Every figure that reads as the moisture of wood, %. Readings of the surface are left out where others stand beside them. */
function readings(statement: Statement, values: readonly Said[]): Figure[] {
  const found: { share: Figure; surface: boolean }[] = [];
  let listed = false;
  values.forEach((said, n) => {
    const figure = said.figure;
    const beside = values[n - 1];
    const follows = listed && beside !== undefined && said.from - beside.to <= 2;
    listed = false;
    if (!figure || !speaksOfWood(statement, said)) return;
    const share = asShare(figure) ?? fraction(figure);
    if (!share || (figure.dimension === null && !(said.cues.has("moisture") || share.basis
      || (follows && figure.value > 5 && figure.value < 100)))) return;
    listed = true;
    const next = statement.tokens.slice(said.to, said.to + 3);
    const figure_at = next.findIndex((token) => token.kind === "number");
    found.push({ share, surface: next.slice(0, figure_at < 0 ? 3 : figure_at).some((token) =>
      isWord(token, "outside", "surface", "ends", "end")) });
  });
  const inner = found.filter(({ surface }) => !surface);
  return (inner.length > 0 ? inner : found).map(({ share }) => share);
}

/** "0.26 %" is hardly meant; nobody has wood of a quarter of a percent. Read as the fraction 0.26. */
const fraction = (figure: Figure): Figure | null =>
  figure.dimension === "share" && figure.value > 0 && figure.value < 1 ? { ...figure, value: figure.value * 100, decimals: 0 } : null;

/** "50 % of the maximum", "60 % humidity", "half open 50 %" speak of something else. */
function speaksOfWood({ tokens }: Statement, { to, from }: Said): boolean {
  for (let i = to; i < to + 4; i += 1) {
    if (isWord(tokens[i], "of") && !isWord(tokens[i + 1], "dry", "wet", "total", "fresh", "green", "the")) return false;
    if (isWord(tokens[i], "off") && isWord(tokens[i + 1], "a", "the", "my", "pin")) return true;
    if (isWord(tokens[i], "humidity", "rh", "off", "discount", "efficiency", "efficient", "open", "closed", "full", "max", "maximum",
      "slope", "chance", "load", "power", "output")) return false;
    if (tokens[i]?.kind !== "word") break;
  }
  return !isWord(tokens[from - 1], "humidity", "rh", "efficiency")
    && !(isWord(tokens[from - 1], "is", "at") && isWord(tokens[from - 2], "humidity", "efficiency"));
}

/** One basis named anywhere holds for the whole statement; two different ones hold for none but their own figures. */
function basisAnywhere({ tokens }: Statement): "wet" | "dry" | null {
  let found: "wet" | "dry" | null = null;
  for (let i = 0; i < tokens.length; i += 1) {
    const basis = wordAt(tokens[i]) ? basisAt(tokens, i) : null;
    if (basis && found && basis !== found) return null;
    found ??= basis;
  }
  return found;
}

const metered = ({ tokens }: Statement): boolean => tokens.some((token) =>
  isWord(token, "meter", "pin", "pins", "prong", "probe", "moisturemeter"));

function judge(share: Figure, findings: Findings, meter: boolean): MoistureRead {
  const pct = share.value;
  const said = `${plain(pct)} %`;
  if (pct <= 0) {
    findings.problems.push(`A moisture of ${said} cannot be: seasoned wood holds 12 to 20 %, wet basis.`);
    return {};
  }
  if (share.basis === "wet") {
    if (pct >= 100) findings.problems.push(
      `${said} wet basis is impossible: it would be all water. ` +
        `Dry basis can pass 100 %; ${said} dry basis is ${plain(wetFromDry_pct(pct), 0)} % wet basis, green wood.`);
    else if (pct > 80) findings.problems.push(`${said} wet basis is more water than wood holds; fresh-felled wood is 35 to 65 %.`);
    else return { moisture_pct_wet: Math.round(pct * 10) / 10 };
    return {};
  }
  if (pct > 400) {
    findings.problems.push(
      `A moisture of ${said} cannot be: even the wettest green wood stays below 400 % dry basis; ` +
        `seasoned wood holds 12 to 20 %, wet basis.`);
    return {};
  }
  if (share.basis === "dry") return { moisture_pct_wet: settleMoisture(pct, "dry") };
  const dry = plain(wetFromDry_pct(pct), 0);
  if (pct >= 100) {
    findings.problems.push(`${said} cannot be wet basis, which stays below 100 %; as dry basis it is green wood, ${dry} % wet basis.`);
    findings.ask("moisture-basis", `Was ${said} meant as dry basis, that is green wood?`,
      { dry: "Yes, dry basis", other: "No, I will measure again" });
  } else {
    findings.ask(
      "moisture-basis",
      meter
        ? `Does your meter show wet or dry basis? Most pin meters show dry basis; ` +
          `then ${said} is ${dry} % wet basis. Its leaflet says which.`
        : `Is ${said} wet basis or dry basis? Most pin meters show dry basis; then it is ` +
          `${dry} % wet basis. As wet basis it would be ${plain(dryFromWet_pct(pct), 0)} % dry.`,
      { wet: "Wet basis", dry: "Dry basis", unknown: "I do not know" },
    );
  }
  return { moisture_pct_unsettled: pct };
}
