/** Keys that several calculators share, so that a unit, a range or a source is written once. */
import { z } from "zod";
import { described, figure } from "./calculator.ts";

/** More water than 80 % of the mass no wood holds (basic density 0.22 filled to the last pore). */
export const moisturePctWet = (
  about = "water / mass as it lies; more than that can only be dry basis, such as 100 % dry = 50 % wet",
): z.ZodNumber => figure("% wet basis", about, { min: 0, max: 80, source: "ISO 18134; upper end FPL-GTR-282 eq. 4-3" });
export const moisturePctDry = (about = "water / oven-dry mass, what most pin meters show; green wood is often above 100"): z.ZodNumber =>
  figure("% dry basis", about, { min: 0, max: 400, source: "EN 13183-1; upper end FPL-GTR-282 eq. 4-3" });

export const loadKg = (about: string): z.ZodNumber => figure("kg", about, { above: 0, max: 100000 });

export const species = (): z.ZodString =>
  described(z.string().trim().min(1), "the tree, by common or botanical name, or softwood or hardwood", {
    source: "knowledge/species.yaml",
  });

export const efficiency = (assumed?: number): z.ZodNumber =>
  figure("share", "heat to the room / net heat of the wood; masonry heaters 0.78 to 0.88", {
    above: 0,
    max: 1,
    source: "EN 15544 asks for 0.78 at least; the rest common practice, no source",
    ...(assumed !== undefined && { assumed }),
  });

export const ncvKWhPerKg = (): z.ZodNumber =>
  figure("kWh/kg", "net heat of the wood as it is burned; 4.1 at 20 % wet basis", { above: 0, max: 5.6, source: "ISO 18125" });

/** A result: never negative. */
export const result = (unit: string, about: string, source?: string): z.ZodNumber =>
  figure(unit, about, { min: 0, ...(source && { source }) });
export const signed = (unit: string, about: string, source?: string): z.ZodNumber => figure(unit, about, { ...(source && { source }) });
