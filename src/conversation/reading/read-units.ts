/** Which units a person wants to read: "switch to lbs and F", "metric please". */
import type { UnitSystem } from "../../quantities.ts";
import { scan, wordAt } from "./tokens.ts";

export interface UnitsRead {
  readonly facts: { readonly units?: UnitSystem };
  readonly problems: readonly string[];
}

const US = new Set(["lb", "lbs", "pound", "pounds", "f", "fahrenheit", "farenheit", "fahrenhiet", "us", "usa", "american", "imperial",
  "feet", "ft", "inches", "cords", "cord", "ounces", "customary"]);
const METRIC = new Set(["kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogrammes", "c", "celsius", "celcius", "centigrade",
  "metric", "si", "metres", "cubic", "stere", "steres", "cm"]);
/** "from pounds to kilos", "not pounds": the unit after these is the one to leave. */
const LEAVING = new Set(["from", "not", "no", "instead", "than", "stop", "hate"]);

/** Reads the unit system asked for. The two are not mixed: a figure in both is no help at the scale. */
export function readUnits(text: string): UnitsRead {
  let us = 0;
  let metric = 0;
  let leaving = 0;
  for (const token of scan(text)) {
    const word = token.kind === "sign" && token.sign === "°" ? "" : wordAt(token);
    if (LEAVING.has(word)) leaving = 3;
    else if (word === "to" || word === "but" || word === "use" || word === "want") leaving = 0;
    const left = leaving > 0 && word !== "instead";
    if (US.has(word) && !(word === "us" && token.at[1] - token.at[0] === 2 && text.slice(token.at[0], token.at[1]) === "us")) {
      if (!left) us += 1;
    } else if (METRIC.has(word) && !left) metric += 1;
    if (leaving > 0) leaving -= 1;
  }
  if (us > 0 && metric > 0) {
    return { facts: {}, problems: [
      "Gleed shows either kilograms with °C or pounds with °F, not one of each; " +
        "say \"metric\" or \"pounds\". Figures are read in any unit."] };
  }
  return us > 0 ? { facts: { units: "us" }, problems: [] } : metric > 0 ? { facts: { units: "metric" }, problems: [] }
    : { facts: {}, problems: [] };
}
