import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { anyText } from "./any-text.ts";
import { asShare, inUnit, readFigures } from "../../../src/conversation/reading/figures.ts";
import { scan } from "../../../src/conversation/reading/tokens.ts";
import { convert, format, q, UNITS, type UnitId } from "../../../src/quantities.ts";

/** text, value, unit (null for none) */
const SINGLE: readonly (readonly [string, number, UnitId | null])[] = [
  ["12 kg", 12, "kg"], ["12kg", 12, "kg"], ["12 KG", 12, "kg"], ["12,5 kg", 12.5, "kg"], ["12.5kg", 12.5, "kg"], ["12½ kg", 12.5, "kg"],
    ["12 ½ kilos", 12.5, "kg"],
  ["1 1/2 kg", 1.5, "kg"], ["3/4 cord", 0.75, "cord"], ["twelve kilos", 12, "kg"], ["twelve and a half kilos", 12.5, "kg"],
    ["a dozen kilos", 12, "kg"], ["a couple of kilos", 2, "kg"],
  ["half a cord", 0.5, "cord"], ["half cord", 0.5, "cord"], ["a quarter of a cord", 0.25, "cord"],
    ["three quarters of a cord", 0.75, "cord"], ["one and a half cords", 1.5, "cord"],
  ["a cord and a half", 1.5, "cord"], ["two hundred kg", 200, "kg"], ["two hundred and forty five pounds", 245, "lb"],
    ["a hundred and twenty kilos", 120, "kg"], ["twelve hundred kilos", 1200, "kg"],
  ["two thousand kg", 2000, "kg"], ["twenty-five kg", 25, "kg"], ["twelve point five kg", 12.5, "kg"], ["2 dozen", 24, null], ["a couple hundred pounds", 200, "lb"],
    ["two-thirds of a cord", 2 / 3, "cord"], ["1400 sq. ft.", 1400, "ft2"], ["3 cu. m", 3, "m3"],
    ["half a dozen", 6, null], ["1,800 kg", 1800, "kg"],
  ["1 800 kg", 1800, "kg"], ["1'800 kg", 1800, "kg"], ["1\u00a0800 kg", 1800, "kg"], ["1.234,5 kg", 1234.5, "kg"],
    ["1,234.5 kg", 1234.5, "kg"], ["1,234,567 kg", 1234567, "kg"], ["0,5 kg", 0.5, "kg"], [".5 kg", 0.5, "kg"],
  ["1.8k kg", 1800, "kg"], ["1.8 t", 1.8, "t"], ["2 tonnes", 2, "t"], ["500 g", 500, "g"], ["26 lb", 26, "lb"], ["26lbs", 26, "lb"],
    ["26 lbs.", 26, "lb"], ["26#", 26, "lb"], ["26 pounds", 26, "lb"], ["12 kgs", 12, "kg"],
  ["12 kilogrammes", 12, "kg"], ["12 killos", 12, "kg"], ["12 kilograms", 12, "kg"], ["8 oz", 8, "oz"], ["9 stone", 9, "st"],
    ["12 lb 8 oz", 12.5, "lb"], ["2 st 7 lb", 2.5, "st"],
  ["3 m3", 3, "m3"], ["3m³", 3, "m3"], ["3 m^3", 3, "m3"], ["3 cubic metres", 3, "m3"], ["3 cubic meters", 3, "m3"], ["3 cubes", 3, "m3"],
    ["1 cube", 1, "m3"], ["3 cbm", 3, "m3"], ["6 stere", 6, "m3"], ["6 stères", 6, "m3"],
  ["6 ster", 6, "m3"], ["6 raummeter", 6, "m3"], ["2 cords", 2, "cord"], ["2 full cords", 2, "cord"], ["128 cu ft", 128, "ft3"],
    ["128 cubic feet", 128, "ft3"], ["80 l", 80, "l"],
  ["33 cm", 33, "cm"], ["120mm", 120, "mm"], ["6 m", 6, "m"], ["6 metres", 6, "m"], ["16 in logs", 16, "in"], ["16in", 16, "in"],
    ['16"', 16, "in"], ["16''", 16, "in"], ["16 inches", 16, "in"], ["16-inch logs", 16, "in"],
  ["8 ft", 8, "ft"], ["8'", 8, "ft"], ["8 feet", 8, "ft"], ["5'6\"", 5.5, "ft"], ["5 ft 6 in", 5.5, "ft"], ["2 square metres", 2, "m2"],
    ["120m2", 120, "m2"], ["120 m²", 120, "m2"], ["120 sqm", 120, "m2"], ["120 qm", 120, "m2"], ["1400 sq ft", 1400, "ft2"],
  ["1400 square feet", 1400, "ft2"], ["20 C", 20, "C"], ["20°C", 20, "C"], ["20 ° C", 20, "C"], ["20 degrees", 20, "C"],
    ["20 degrees celsius", 20, "C"], ["20 celcius", 20, "C"], ["68 F", 68, "F"], ["68°F", 68, "F"],
  ["68 degrees fahrenheit", 68, "F"], ["68 deg F", 68, "F"], ["-12 C", -12, "C"], ["−12 °C", -12, "C"], ["minus 12 degrees", -12, "C"],
    ["minus twelve degrees C", -12, "C"], ["12 degrees below zero", -12, "C"], ["5 C below", -5, "C"],
  ["ten degrees of frost", -10, "C"], ["30 K", 30, "K"], ["17 %", 17, "pct"], ["17%", 17, "pct"], ["17 percent", 17, "pct"],
    ["17 per cent", 17, "pct"], ["17 pct", 17, "pct"], ["seventeen percent", 17, "pct"],
  ["2 hours", 2, "h"], ["2hrs", 2, "h"], ["90 mins", 90, "min"], ["90 minutes", 90, "min"], ["1h20", 1 + 1 / 3, "h"],
    ["2 h 15 min", 2.25, "h"], ["half an hour", 0.5, "h"], ["an hour", 1, "h"], ["3 days", 3, "day"], ["two weeks", 14, "day"],
  ["12 Pa", 12, "Pa"], ["12 pascals", 12, "Pa"], ["0.05 in wc", 0.05, "inH2O"], ["4.5 kW", 4.5, "kW"], ["500 watts", 500, "W"],
    ["48 kWh", 48, "kWh"], ["100 MJ", 100, "MJ"], ["50000 BTU", 50000, "Btu"], ["15000 Btu/h", 15000, "Btu/h"],
  ["250 W/K", 250, "W/K"], ["250 watts per kelvin", 250, "W/K"], ["4.2 kWh/kg", 4.2, "kWh/kg"], ["6800 btu per pound", 6800, "Btu/lb"],
    ["640 kg/m3", 640, "kg/m3"],
  ["٢٥ kg", 25, "kg"], ["１２ｋｇ", 12, "kg"], ["1\u200b2\u200d kg", 12, "kg"], ["१२ kg", 12, "kg"], ["15", 15, null], ["0.26", 0.26, null],
    ["one basket", 1, null], ["three loads", 3, null],
];

describe("a figure with its unit", () => {
  test.each(SINGLE)("%s", (text, value, unit) => {
    const figures = readFigures(text);
    expect(figures).toHaveLength(1);
    expect(figures[0]?.unit).toBe(unit);
    expect(figures[0]?.value).toBeCloseTo(value, 9);
  });

  test("degrees without a scale follow the reader", () => {
    expect(readFigures("20 degrees")[0]).toMatchObject({ unit: "C", unscaled: true });
    expect(readFigures("20 degrees", { degrees: "F" })[0]).toMatchObject({ unit: "F", unscaled: true });
    expect(readFigures("20 degrees C", { degrees: "F" })[0]?.unscaled).toBeUndefined();
  });

  test.each([["$300 a cord", 300, "$"], ["300 bucks", 300, "$"], ["£90", 90, "GBP"], ["90 quid", 90, "GBP"], ["85 €", 85, "EUR"],
    ["€85", 85, "EUR"], ["85 euros", 85, "EUR"], ["€ 1.200,50", 1200.5, "EUR"]] as const)("money: %s", (text, value, money) => {
    expect(readFigures(text)[0]).toMatchObject({ dimension: "money", value, money, unit: null });
  });
});

describe("ranges, about, bounds", () => {
  test.each([
    ["12-14 kg", 12, 14, "kg"], ["12–14kg", 12, 14, "kg"], ["12 - 14 kg", 12, 14, "kg"], ["12 to 14 kg", 12, 14, "kg"],
      ["12 kg to 14 kg", 12, 14, "kg"], ["between 6 and 8 kilos", 6, 8, "kg"], ["between 6 and 8", 6, 8, null],
    ["6 to 8", 6, 8, null], ["6 or 7 kilos", 6, 7, "kg"], ["six or seven kilos", 6, 7, "kg"], ["five to six hundred kg", 500, 600, "kg"],
      ["-12 to -5 C", -12, -5, "C"], ["from 6 to 8 lbs", 6, 8, "lb"], ["10..12 kg", 10, 12, "kg"],
      ["twenty to thirty percent", 20, 30, "pct"],
    ["8 to 6 kg", 6, 8, "kg"],
  ] as const)("%s", (text, low, high, unit) => {
    expect(readFigures(text)).toHaveLength(1);
    expect(readFigures(text)[0]).toMatchObject({ low, high, unit, value: (low + high) / 2 });
  });

  test.each(["about 12 kg", "around 12 kg", "~12 kg", "approx. 12 kg", "roughly 12 kg", "12 kg or so", "12 kg ish", "maybe 12 kg",
    "ca 12 kg", "12-ish kg"])("about: %s", (text) => {
    expect(readFigures(text)[0]).toMatchObject({ value: 12, about: true });
  });

  test("a bit over and a bit under open a range to one side", () => {
    const over = readFigures("a bit over 15")[0];
    expect(over).toMatchObject({ value: 15, about: true, low: 15 });
    expect(over?.high).toBeGreaterThan(15);
    const under = readFigures("just under 15 kg")[0];
    expect(under).toMatchObject({ value: 15, about: true, high: 15 });
    expect(under?.low).toBeLessThan(15);
  });

  test.each([["up to 15 kg", "max"], ["no more than 15 kg", "max"], ["less than 15 kg", "max"], ["under 15 kg", "max"],
    ["at least 15 kg", "min"], ["over 15 kg", "min"], ["more than 15 kg", "min"], ["no less than 15 kg", "min"],
    ["<15 kg", "max"], ["15 kg or less", "max"], ["15 kg or more", "min"]] as const)("bound: %s", (text, bound) => {
    expect(readFigures(text)[0]).toMatchObject({ value: 15, bound });
  });

  test("a few is a range", () => expect(readFigures("a few hours")[0]).toMatchObject({ about: true, unit: "h", low: 3 }));
});

describe("measures of wood", () => {
  test.each([["5 loose cubes", "loose"], ["5 m3 loose", "loose"], ["5 cubic loose", "loose"], ["5 m³ stacked", "stacked"],
    ["5 stacked cubic metres", "stacked"], ["5 srm", "loose"], ["5 rm", "stacked"], ["5 fm", "solid"], ["5 solid m3", "solid"],
    ["2 cords", "stacked"], ["6 stere", "stacked"]] as const)("%s", (text, filling) => {
    expect(readFigures(text)[0]?.filling).toBe(filling);
  });
  test("a cubic metre says nothing of its filling", () => expect(readFigures("5 m3 of beech")[0]?.filling).toBeUndefined());

  test("a face cord is flagged: a third of a cord at 16 in logs, a quarter to a half at 12 to 24 in", () => {
    const face = readFigures("2 face cords")[0];
    expect(face).toMatchObject({ unit: "cord", uncertain: "face cord" });
    expect(face?.value).toBeCloseTo(2 / 3, 9);
    expect(face?.low).toBeCloseTo(0.5, 9);
    expect(face?.high).toBeCloseTo(1, 9);
  });
  test("a ton may be short, metric or long", () => {
    // NIST SP 811: short ton 907.18474 kg, long ton 1016.0469088 kg
    expect(readFigures("2 tons")[0]).toMatchObject({ unit: "t", uncertain: "ton", low: 1.81436948, high: 2.0320938176 });
  });
});

describe("figures and their neighbours", () => {
  const read = (text: string): readonly (readonly [number, string | null])[] =>
    readFigures(text).map(({ value, unit, money }) => [Math.round(value * 1e4) / 1e4, unit ?? money ?? null]);

  test.each([
    ["dried 6 to 8 weeks", [[49, "day"]]], ["6 weeks to 8", [[49, "day"]]], ["2-3k euros", [[2500, "EUR"]]],
    ["it dropped from 23 to 17 C", [[23, "C"], [17, "C"]]], ["the temp fell from 23 to 17", [[23, "C"], [17, "C"]]],
    ["down to 13 kg from 16", [[13, "kg"], [16, "kg"]]], ["the bag says 10 kg, my scales say 8.7", [[10, "kg"], [8.7, "kg"]]],
    ["72 F inside, 20 degrees outside", [[72, "F"], [20, "F"]]], ["6 ft 2 of flue", [[6.1667, "ft"]]], ["9 kg 400", [[9.4, "kg"]]],
    ["1-1/2 inches", [[1.5, "in"]]], ["an hour and a quarter", [[1.25, "h"]]], ["hour and a half", [[1.5, "h"]]],
    ["a stone and a half of beech", [[1.5, "st"]]], ["a stone heater", []], ["spent 200 pounds on wood", [[200, "GBP"]]],
    ["burnt 200 pounds of wood", [[200, "lb"]]], ["twice a week", []], ["gone for a week", [[7, "day"]]], ["a ton of smoke", []],
    ["10 kg over 12 h", [[10, "kg"], [12, "h"]]], ["2:15 hours", [[2.25, "h"]]], ["at 18:10 h", []], ["CHF 95", [[95, "CHF"]]],
    ["480,- EUR", [[480, "EUR"]]], ["two, three inches", [[2.5, "in"]]],
    ["12 kg birch, meter says 17", [[12, "kg"], [17, null]]], ["burnt 12 kg, alarm reads 30", [[12, "kg"], [30, null]]],
    ["8 kg in, not 20 outside", [[8, "kg"], [20, null]]], ["not 40 kg but 14", [[40, "kg"], [14, "kg"]]],
    ["12 kg from 7 to 9", [[12, "kg"], [8, null]]], ["8 kg at 18, but 20 now", [[8, "kg"], [18, null], [20, null]]], ["100 % sure", []],
  ] as const)("%s", (text, figures) => expect(read(text)).toEqual(figures));

  test.each([["no closer than 36 in", "min"], ["never needed more than 9 kg", "max"], ["nothing under 20 %", "min"], ["25 lb per fire max", "max"],
    ["1800 kg max load", undefined], ["10+ kg", "min"], ["took over 3 hours", "min"]] as const)("bound: %s", (text, bound) => {
    expect(readFigures(text)[0]?.bound).toBe(bound);
  });

  test.each([["u 25 %", "dry"], ["w = 18 %", "wet"], ["25 % (u)", "dry"], ["500 w, 18 %", null], 
    ["18 % w/ a pin meter", null], ["is 18 % what u want", null]] as const)("basis by symbol: %s", (text, basis) => {
    expect(readFigures(text).find(({ dimension }) => dimension === "share")?.basis).toBe(basis);
  });
});

describe("moisture basis", () => {
  test.each([
    ["26 % dry basis", "dry"], ["26% (dry basis)", "dry"], ["26 % dry-basis", "dry"], ["26% db", "dry"],
      ["26 % of the dry weight", "dry"], ["dry basis 26 %", "dry"], ["26 % d.b.", "dry"],
    ["17 % wet basis", "wet"], ["17% wb", "wet"], ["17 % on a wet basis", "wet"], ["17 % of the total weight", "wet"],
  ] as const)("%s", (text, basis) => expect(readFigures(text)[0]?.basis).toBe(basis));

  test.each(["26 %", "26 % off a pin meter", "26 % moisture, nice and dry", "26% wet wood",
    "26 % dry oak"])("not stated, not assumed: %s", (text) => expect(readFigures(text)[0]?.basis).toBeNull());

  test("each of two figures keeps its own", () => expect(readFigures("26 % dry basis or 21 % wet basis").map(({ basis }) =>
    basis)).toEqual(["dry", "wet"]));

  test.each([["0.26", 26], ["0,18", 18], ["26", 26], ["0.175", 17.5]])("as a share: %s", (text, value) => {
    expect(asShare(readFigures(text)[0]!)).toMatchObject({ dimension: "share", value, basis: null });
  });
  test("a mass is no share", () => expect(asShare(readFigures("0.26 kg")[0]!)).toBeNull());
});

describe("what is no figure", () => {
  test.each(["18:10", "6:30 pm", "6pm", "2026-10-03", "3.10.2026", "1st of August", "the 22nd", "1 August", "Nov 20, 2026", "in March 2018", "14.2.26", "half past six", "this one is wet",
    "no one knows", "which one", "a heater", ""])("%s", (text) => {
    expect(readFigures(text).filter(({ value }) => value !== 6)).toEqual([]);
  });
  test("times beside figures", () => expect(readFigures("log: 12kg birch 17% 18:10 damper 22:00").map(({ value, unit }) =>
    [value, unit])).toEqual([[12, "kg"], [17, "pct"]]));
  test('"in" is an inch only where one can be', () => {
    expect(readFigures("burned 12 in two hours").map(({ unit }) => unit)).toEqual([null, "h"]);
    expect(readFigures("12 in the morning")[0]?.unit).toBeNull();
  });
  test("a rate is not a second figure", () => expect(readFigures("15 kg a day")).toHaveLength(1));
  test("lists stay lists", () => expect(readFigures("18,22,24").map(({ value }) => value)).toEqual([18, 22, 24]));
  test("1.800 may be thousands", () => expect(readFigures("1.800 kg")[0]).toMatchObject({ value: 1800, alt: 1.8 }));
  test("1.234 kg is weighed to the gram", () => expect(readFigures("1.234 kg")[0]).toMatchObject({ value: 1.234, alt: 1234 }));
});

test("the place of a figure is where it is written", () => {
  const text = "put in ~12,5 kg of birch at minus 5 °C";
  expect(readFigures(text).map(({ at }) => text.slice(...at))).toEqual(["12,5 kg", "minus 5 °C"]);
});

describe("properties", () => {
  const written: readonly UnitId[] = ["kg", "lb", "g", "oz", "m3", "cord", "m", "cm", "mm", "ft", "in", "C", "F", "kWh", "kW", "W", "pct",
    "h", "min", "Pa", "m2", "ft2", "W/K", "kWh/kg", "Btu/lb"];

  test.each(["metric", "us"] as const)("what Gleed writes is read back (%s)", (system) => {
    fc.assert(
      fc.property(fc.constantFrom(...written), fc.double({ min: -500, max: 5000, noNaN: true }),
        fc.constantFrom("en-GB", "en-US", "de-CH"), (unit, raw, locale) => {
        const value = UNITS[unit].dimension === "temperature" ? raw / 10 : Math.abs(raw);
        const text = format(q(value, unit), { locale, system });
        const figure = readFigures(text)[0];
        expect(readFigures(text), text).toHaveLength(1);
        expect(UNITS[figure!.unit!].dimension, text).toBe(UNITS[unit].dimension);
        // half of the last digit shown, in the unit it is shown in
        const shown = figure!.unit!;
        const back = figure!.alt !== undefined && Math.abs(figure!.alt - convert(value, unit,
          shown)) < Math.abs(figure!.value - convert(value, unit, shown)) ? figure!.alt : figure!.value;
        expect(Math.abs(back - convert(value, unit, shown)), text).toBeLessThanOrEqual(0.5000001);
      }),
      { seed: 3, numRuns: 400 },
    );
  });

  test("never throws, and every place lies within the text", () => {
    const piece = fc.constantFrom("12", "½", " ", "kg", "-", "to", "a", "half", "and", "\u200b", "%", "1,", ".5", "°", "C", "'", '"', "x",
      "/", "€", "hundred", "between", "👍", "\n", "é", "ノ", "below", "one", "1/2", "\ud800");
    fc.assert(
      fc.property(fc.oneof(anyText(80), fc.array(piece, { maxLength: 30 }).map((parts) => parts.join(""))), (text) => {
        let end = 0;
        for (const { at } of scan(text)) {
          expect(at[0]).toBeGreaterThanOrEqual(end);
          expect(at[1]).toBeGreaterThan(at[0]);
          end = at[1];
        }
        expect(end).toBeLessThanOrEqual(text.length);
        for (const figure of readFigures(text)) {
          expect(Number.isFinite(figure.value)).toBe(true);
          expect(figure.at[1]).toBeLessThanOrEqual(text.length);
          if (figure.low !== undefined && figure.high !== undefined) expect(figure.low).toBeLessThanOrEqual(figure.high);
        }
      }),
      { seed: 4, numRuns: 1500 },
    );
  });

  test("any number of kilograms, in digits and in words, is that number", () => {
    const ones = ["", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen",
      "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"];
    const tens = ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];
    const below100 = (n: number): string => (n < 20 ? ones[n]! : n % 10 === 0 ? tens[n / 10]!
      : `${tens[Math.floor(n / 10)]}-${ones[n % 10]}`);
    const inWords = (n: number): string =>
      n >= 1000 ? `${inWords(Math.floor(n / 1000))} thousand${n % 1000 === 0 ? "" : n % 1000 < 100 ? ` and ${inWords(
        n % 1000)}` : ` ${inWords(n % 1000)}`}`
        : n >= 100 ? `${ones[Math.floor(n / 100)]} hundred${n % 100 === 0 ? "" : ` and ${below100(n % 100)}`}` : below100(n);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9999 }), (n) => {
        expect(readFigures(`${inWords(n)} kilos`).map(({ value }) => value), inWords(n)).toEqual([n]);
        expect(readFigures(`${n} kilos`)[0]?.value).toBe(n);
      }),
      { seed: 5, numRuns: 500 },
    );
  });

  test("inUnit converts within a dimension and nowhere else", () => {
    // NIST SP 811: 1 lb = 0.45359237 kg
    expect(inUnit(readFigures("30 lb")[0]!, "kg")).toBeCloseTo(13.6077711, 7);
    expect(inUnit(readFigures("30 lb")[0]!, "m")).toBeNull();
  });
});
