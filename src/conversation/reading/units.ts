/** What people call the units, and what each name stands for. Names are common practice, no source; sizes are in `quantities.ts`. */
import { UNITS, type Dimension, type UnitId } from "../../quantities.ts";
import { Speller } from "./spelling.ts";

export interface UnitName {
  readonly unit: UnitId | null;
  readonly dimension: Dimension;
  /** how many of `unit` one of these is; 1 when absent */
  readonly times?: number;
  /** wood volumes: how the cubic metre is filled */
  readonly filling?: "stacked" | "loose" | "solid";
  /** a measure without a fixed size, with the sizes it is sold in, in `unit` */
  readonly uncertain?: { readonly name: string; readonly low: number; readonly high: number };
  readonly money?: string;
  /** degrees of a scale nobody named */
  readonly unscaled?: true;
}

const of = (unit: UnitId, more: Omit<UnitName, "unit" | "dimension"> = {}): UnitName =>
  ({ unit, dimension: UNITS[unit].dimension, ...more });
const money = (currency: string, times = 1): UnitName => ({ unit: null, dimension: "money", money: currency, times });

/** Nominal third of a cord; logs of 12 to 24 in make it a quarter to a half (a face 8 ft by 4 ft). Common practice, no source. */
const faceCord = (name: string): UnitName => of("cord", { times: 1 / 3, filling: "stacked", uncertain: { name, low: 1 / 4, high: 1 / 2 } });
/** US short ton, 2000 lb, or metric; the two differ by a tenth. */
const TON = of("t", { uncertain: { name: "ton", low: 0.90718474, high: 1.0160469088 } });

const NAMES: readonly (readonly [string, UnitName])[] = [
  ["kg kgs klios kiols kilso kilo kilos kilogram kilograms kilogramme kilogrammes kgm kgms killo killos kiloes kilogramm kilogrammaa kiloa кг кило",
    of("kg")],
  ["g gr gram grams gramme grammes", of("g")],
  ["t tonne tonnes tonn tonnen", of("t")],
  ["ton tons", TON],
  ["lb lbs pound pounds lbm pounders pund", of("lb")],
  // the pound and the hundredweight of the metric countries
  ["pfund", of("kg", { times: 0.5 })],
  ["zentner ztr", of("kg", { times: 50 })],
  ["doppelzentner dz", of("kg", { times: 100 })],
  // of 112 lb; 100 lb in the US
  ["hundredweight hundredweights cwt", of("lb", { times: 112 })],
  ["oz ounce ounces", of("oz")],
  ["st stone stones", of("st")],
  ["m3 cbm kuutio kuutiota kuutiometri кубометр", of("m3")],
  ["cube cubes cubic cubics kub kuub", of("m3")],
  ["stere steres ster stères raummeter rm raummetre", of("m3", { filling: "stacked" })],
  ["festmeter fm vfm efm", of("m3", { filling: "solid" })],
  ["schuttraummeter srm schuttmeter", of("m3", { filling: "loose" })],
  ["dl decilitre decilitres deciliter deciliters", of("l", { times: 0.1 })],
  ["ml millilitre millilitres", of("l", { times: 0.001 })],
  ["l litre litres liter liters ltr ltrs", of("l")],
  // US gallon, 231 in3 (NIST SP 811, appendix B)
  ["gallon gallons gal gals", of("l", { times: 3.785411784 })],
  ["ft3 cuft cf", of("ft3")],
  ["cord cords chord chords", of("cord", { filling: "stacked" })],
  ["rick ricks", faceCord("rick")],
  ["m metre metres meter meters mtr mtrs", of("m")],
  ["cm cms centimetre centimetres centimeter centimeters", of("cm")],
  ["mm mms millimetre millimetres millimeter millimeters mil mils", of("mm")],
  ["ft foot feet feets", of("ft")],
  ["yd yds yard yards", of("ft", { times: 3 })],
  ["inch inches inchs inche", of("in")],
  ["c oc degc celsius celcius centigrade", of("C")],
  ["f degf fahrenheit farenheit farenhite fahrenhiet", of("F")],
  ["degree degrees deg degs ° grad graden astetta", { unit: "C", dimension: "temperature", unscaled: true }],
  ["k kelvin kelvins", of("K")],
  ["kwh", of("kWh")],
  ["mwh", of("kWh", { times: 1000 })],
  ["mj", of("MJ")],
  ["gj", of("MJ", { times: 1000 })],
  ["btu btus", of("Btu")],
  ["kw kilowatt kilowatts", of("kW")],
  ["w watt watts", of("W")],
  ["btuh", of("Btu/h")],
  ["% percent pct pc prct percentage procent prosent prozent procent prosenttia percents pourcent", of("pct")],
  ["h hr hrs hour hours houres stunden stunde tuntia timmar std", of("h")],
  ["sec secs seconds", of("min", { times: 1 / 60 })],
  ["min mins minute minutes mintues minuets minuten mn", of("min")],
  ["day days tage d", of("day")],
  ["fortnight fortnights", of("day", { times: 14 })],
  ["week weeks wk wks", of("day", { times: 7 })],
  ["month months mth mths mos mo monate", of("day", { times: 30.44 })],
  ["year years yr yrs jahre", of("day", { times: 365.25 })],
  ["pa pascal pascals", of("Pa")],
  ["m2 sqm qm sqmt sqmtr neliota kvm", of("m2")],
  ["ft2 sqft sf", of("ft2")],
  ["cent cents", money("$", 0.01)],
  ["€ euro euros eur", money("EUR")],
  ["£ quid quids gbp sterling", money("GBP")],
  ["grand", money("", 1000)],
  ["p pence", money("GBP", 0.01)],
  ["fiver fivers", money("GBP", 5)],
  ["tenner tenners", money("GBP", 10)],
  ["$ dollar dollars buck bucks usd", money("$")],
  ["kr kroner kronor sek nok dkk", money("kr")],
  ["chf francs franken", money("CHF")],
  ["zl zloty zlotys zlotych pln", money("PLN")],
];

const PHRASES: readonly (readonly [string, UnitName])[] = [
  ["cubic metre|cubic metres|cubic meter|cubic meters|cubic m|cu m|cu metre|cu metres|m cubed|metres cubed|meters cubed|metre cube|" +
    "metres cube", of("m3")],
  ["stacked metre|stacked metres|stacked meter|stacked meters|stacked cube|stacked cubes|stacked cubic metres|stacked cubic meters|" +
    "stacked m3|stacked cubic metre|stacked cubic meter", of("m3", { filling: "stacked" })],
  ["loose metre|loose metres|loose cube|loose cubes|loose cubic metres|loose cubic meters|loose m3|loose cubic metre|" +
    "loose cubic meter|bulk m3|bulk cubic metres", of("m3", { filling: "loose" })],
  ["solid metre|solid metres|solid cubic metres|solid cubic meters|solid m3|solid cubic metre|solid cubic meter|solid cube|solid cubes",
    of("m3", { filling: "solid" })],
  ["cubic yard|cubic yards|cu yd|cu yds", of("ft3", { times: 27 })],
  ["cubic foot|cubic feet|cu ft|cubic ft|cubic feets|cubic foots", of("ft3")],
  ["full cord|full cords|bush cord|bush cords|real cord|real cords", of("cord", { filling: "stacked" })],
  ["face cord|face cords|facecord|facecords|stove cord|stove cords", faceCord("face cord")],
  ["square metre|square metres|square meter|square meters|sq m|sq metre|sq metres|sq meter|sq meters|m squared|metres squared|" +
    "meters squared|square m|sq mt", of("m2")],
  ["square foot|square feet|sq ft|sq feet|square ft|sq foot|ft squared|feet squared", of("ft2")],
  ["per cent|pro cent", of("pct")],
  ["degree c|degrees c|deg c|° c|degree celsius|degrees celsius|deg celsius|° celsius|degrees celcius|degrees centigrade|grad celsius",
    of("C")],
  ["degree f|degrees f|deg f|° f|degree fahrenheit|degrees fahrenheit|deg fahrenheit|° fahrenheit|degrees farenheit", of("F")],
  ["w/k|w per k|watt per kelvin|watts per kelvin|watts per degree|w per degree|watt per degree|w / k", of("W/K")],
  ["kw/k|kw per k|kilowatt per kelvin", of("W/K", { times: 1000 })],
  ["kwh/kg|kwh per kg|kwh per kilo|kilowatt hours per kilo|kilowatt hours per kilogram", of("kWh/kg")],
  ["mj/kg|mj per kg", of("kWh/kg", { times: 1 / 3.6 })],
  ["btu/lb|btu per lb|btu per pound|btus per pound", of("Btu/lb")],
  ["kg/m3|kg per m3|kilos per cubic metre|kg per cubic metre", of("kg/m3")],
  ["kilowatt hour|kilowatt hours|kw h|kw hours", of("kWh")],
  ["btu/h|btu/hr|btu per hour|btus per hour|btu an hour", of("Btu/h")],
  ["in h2o|in wc|inches of water|inch of water|inch water", of("inH2O")],
  ["grand euros|grand euro|grand eur", money("EUR", 1000)],
  ["grand dollars|grand bucks", money("$", 1000)],
  ["grand quid|grand sterling", money("GBP", 1000)],
  ["pounds sterling|pound sterling|british pounds", money("GBP")],
  ["short ton|short tons|us ton|us tons", of("t", { times: 0.90718474 })],
  ["metric ton|metric tons|metric tonne|metric tonnes", of("t")],
];

const names = (list: string, between: string, name: UnitName): (readonly [string, UnitName])[] =>
  list.split(between).map((word) => [word, name] as const);
const WORDS = NAMES.flatMap(([list, name]) => names(list, " ", name));
const SINGLE = new Speller(WORDS, {
  from: 6,
  never: ["minutes", "heaters", "square", "heater", "metal", "metals", "grain", "grams", "founds", "sounds", "pounded", "foots", "stoned",
    "points", "minuted", "merely"],
});
const MANY = new Map(PHRASES.flatMap(([list, name]) => names(list, "|", name)));

/** Names that are read as one of them after "a" or "an": "a cord", "an hour". */
export const COUNTED_BY_ARTICLE: ReadonlySet<string> = new Set([
  "kilo", "kilogram", "cord", "hour", "tonne", "ton", "stere", "inch", "cubic", "m3", "cube", "rick", "face", "full", "litre",
    "stacked", "loose", "solid", "chord", "fiver", "fivers", "tenner", "tenners", "grand", "zentner", "pfund", "raummeter", "ster",
      "rm", "festmeter", "srm",
  "centimetre", "centimeter", "millimetre", "millimeter",
]);

/** A unit named by exactly these words ("cubic metres", "w/k", "lbs"); one slip passes in long single words. */
export function unitNamed(words: string): UnitName | null {
  return MANY.get(words) ?? (words.includes(" ") || words.includes("/") ? null : (SINGLE.find(words)?.value ?? null));
}

export const LONGEST_UNIT_NAME = 4;
