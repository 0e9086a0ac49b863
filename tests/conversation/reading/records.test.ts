import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { anyText } from "./any-text.ts";
import { readAlarms, readFire, readHeater, readHouse, readUnits, readWeather, readWood, settleMoisture,
  type ReadContext } from "../../../src/conversation/reading/records.ts";
import { loadTimes } from "../../../src/conversation/reading/times.ts";
import { readRecords } from "../../../src/records/read.ts";

const ZONE = "Europe/Helsinki";
const NOW = Date.parse("2026-11-25T22:40:00+02:00");
const HERE: ReadContext = { now_ms: NOW, timezone: ZONE };
const US: ReadContext = { ...HERE, system: "us", locale: "en-US" };
const asked = (read: { questions: readonly { id: string }[] }): string[] => read.questions.map(({ id }) => id);

beforeAll(loadTimes);

describe("a heater", () => {
  test.each([
    ["my heater: bell, 1800kg, 15kg max", { kind: "bell", masonry_kg: 1800, max_load_kg: 15 }],
    ["Set my heater: 1800 kg, maximum load 15 kg.", { masonry_kg: 1800, max_load_kg: 15 }],
    ["max 30 lb", { max_load_kg: 13.61 }],
    ["chang my heater weigt to 2000 kg", { masonry_kg: 2000 }],
    ["min 7 max 15 kg", { min_load_kg: 7, max_load_kg: 15 }],
    ["7 kg min 15 kg max", { min_load_kg: 7, max_load_kg: 15 }],
    ["up to 18 kg a load", { max_load_kg: 18 }],
    ["max 12-15 kg", { max_load_kg: 12 }],
    ["twelve kilos at most", { max_load_kg: 12 }],
    ["max load 15 kg according to the builder", { max_load_kg: 15, max_load_source: "sheet" }],
    ["18 kg on the data plate", { max_load_kg: 18, max_load_source: "plate" }],
    ["max 14 kg but that is a guess", { max_load_kg: 14, max_load_source: "guess" }],
    ["15 kg per fire, 30 kg a day", { max_load_kg: 15, max_day_kg: 30 }],
    ["1.800 kg, 15 kg max", { masonry_kg: 1800, max_load_kg: 15 }],
    ["weighs two and a half tonnes", { masonry_kg: 2500 }],
    ["4000 lbs of masonry, max load 40 pounds", { masonry_kg: 1814, max_load_kg: 18.14 }],
    ["contraflow with soapstone", { kind: "contraflow", facing_material: "soapstone" }],
    ["tiled, channels inside, walls 12 cm thick", { kind: "channel", facing_material: "tile", wall_mm: 120 }],
    ["4.5 kW, 12 h heating time", { nominal_output_kW: 4.5, nominal_heating_time_h: 12 }],
    ["surface 5 m2, flue 6 m", { facing_m2: 5, flue_height_m: 6 }],
    ["flue height 20 ft", { flue_height_m: 6.1 }],
    ["no grate, shut-off damper, bypass", { grate: false, shut_off_damper: true, bypass_damper: true }],
    ["no damper in the chimney", { shut_off_damper: false }],
    ["it has a bypass damper", { bypass_damper: true }],
    ["grate: yes, damper: no", { grate: true, shut_off_damper: false }],
    ["outside air, chimney on the outside wall", { outside_air: true, flue_on_outside_wall: true }],
    ["lit from the top, gas exit at the top", { lighting: "top", gas_exit: "top" }],
    ["bottom-lit, downdraught", { lighting: "bottom", gas_exit: "low" }],
    ["white oven", { oven: "white" }], ["black oven", { oven: "black" }], ["no oven", { oven: "none" }],
    ["max 8 kg twice a day", { max_load_kg: 8, max_day_kg: 16 }], ["daily max 30 kg", { max_day_kg: 30 }],
      ["no more than 2 fires a day, max 15 kg", { max_load_kg: 15 }],
    ["heater 1800kg max load 15kg min load 7,5kg two fires max per day", { masonry_kg: 1800, max_load_kg: 15, min_load_kg: 7.5 }],
    ["called Old Bertha, 16 kg max", { name: "Old Bertha", max_load_kg: 16 }],
    ["commissioned 3 March 2018", { commissioned_on: "2018-03-03" }],
  ])("%s", (text, facts) => {
    const read = readHeater(text, HERE);
    expect(read.facts).toEqual(facts);
    expect(read.problems).toEqual([]);
    expect(readRecords({ heater: read.facts }).problems).toEqual([]);
  });

  test.each([
    ["max load 900 kg, bell", { kind: "bell" }, "900 kg"], ["max -5 kg, grate", { grate: true }, "-5 kg"], ["weighs 20 kg", {}, "20 kg"],
      ["min 20 kg max 15 kg", { max_load_kg: 15 }, "20 kg"], ["tiled, built in 2031", { facing_material: "tile" }, "2031"],
      ["60 kW", {}, "60 kW"], ["flue 90 m", {}, "90 m"], ["90 tonnes", {}, "90000 kg"],
  ])("nonsense is named and the rest kept: %s", (text, facts, said) => {
    const read = readHeater(text, HERE);
    expect(read.facts).toEqual(facts);
    expect(read.problems).toHaveLength(1);
    expect(read.problems[0]).toContain(said);
  });

  test("bare numbers take the reader's unit, and say so", () => {
    expect(readHeater("max 30", US)).toMatchObject({ facts: { max_load_kg: 13.61 }, assumed: ["30 was taken as pounds."] });
    expect(readHeater("max 15", HERE)).toMatchObject({ facts: { max_load_kg: 15 }, assumed: ["15 was taken as kilograms."] });
  });
  test("a lone small mass is asked about", () => expect(asked(readHeater("heater: bell, 1800 kg, 15 kg", HERE))).toEqual(["which-load"]));
  test("an oven of unknown kind is asked about", () => expect(asked(readHeater("it has an oven", HERE))).toEqual(["oven-kind"]));
});

describe("a house", () => {
  test.each([
    ["house 120m2", { floor_m2: 120 }], ["Set my house to 130 square metres, built in 1985.", { floor_m2: 130 }],
      ["1400 sq ft", { floor_m2: 130.1 }], ["250 W/K", { heat_loss_W_per_K: 250 }],
    // 5000 W / (20 - -15) K
    ["heat loss 5 kW at -15", { heat_loss_W_per_K: 143 }], ["loses 5 kW at -15 C, 21 C inside", { heat_loss_W_per_K: 139, wanted_C: 21 }],
      ["heat loss 17000 Btu/h at 0 F", { heat_loss_W_per_K: 132 }],
    ["we want 21 C", { wanted_C: 21 }], ["keep it at 70 F", { wanted_C: 21.1 }], ["1 kW of other heat", { other_heat_W: 1000 }],
      ["cooker hood with window contact", { vented_hood: true, hood_interlock: true }], ["no cooker hood", { vented_hood: false }],
    ["recirculating hood", { vented_hood: false }], ["mvhr", { ventilation: "balanced" }],
      ["extract fans in the bathroom", { ventilation: "extract" }], ["natural ventilation", { ventilation: "natural" }],
  ])("%s", (text, facts) => {
    const read = readHouse(text, HERE);
    expect(read.facts).toEqual(facts);
    expect(readRecords({ house: read.facts }).problems).toEqual([]);
  });

  test.each([
    // W/(m2K) of floor by age: common practice, no source
    ["house 120m2 1950 no insulation", 360, 480], ["a 70s house, 100 sqm", 180, 220], ["a 50s house, 100 sqm", 300, 400],
      ["an 80s house of 100 m2", 180, 220], ["100 m2 built in 1985", 180, 220], ["100 m2 from 2003", 100, 130],
      ["100 m2 passive house", 25, 35], ["100 m2 low energy", 50, 70], ["100 m2 uninsulated cottage", 300, 400],
      ["100 m2 built 1930", 300, 400],
  ])("estimated, never a fact: %s", (text, low, high) => {
    const read = readHouse(text, HERE);
    expect(read.facts.heat_loss_W_per_K).toBeUndefined();
    expect(read.estimate?.heat_loss_W_per_K).toMatchObject({ low, high });
  });
  test("no estimate without an area, or without an age", () => {
    expect(readHouse("built 1950", HERE).estimate).toBeUndefined();
    expect(readHouse("120 m2", HERE).estimate).toBeUndefined();
  });
  test("a measured loss needs no estimate", () => expect(readHouse("120 m2 1950 no insulation 300 W/K",
    HERE)).toMatchObject({ facts: { heat_loss_W_per_K: 300, floor_m2: 120 } }));
  test("a loss at a mild temperature says too little", () =>
    expect(readHouse("heat loss 5 kW at 18 C", HERE)).toMatchObject({ facts: {}, problems: [expect.stringContaining("cold day")] }));
  test("a loss without its temperature is asked about", () => expect(asked(readHouse("heat loss 5 kW", HERE))).toEqual(["loss-at"]));
  test.each([["house 90000 m2", "90000 m²"], ["want 60 C", "60 °C"], ["9000 W/K", "9000 W/K"],
    ["built in 2090, 120 m2", "2090"]])("nonsense: %s", (text, said) => expect(readHouse(text, HERE).problems.join(" ")).toContain(said));
});

describe("wood", () => {
  test.each([
    ["stack 2 rows 4x1.5x0.33 beech", [{ species: "beech", volume_m3_stacked: 3.96 }]],
    ["Add 2 cords of maple to my woodpile.", [{ species: "maple", volume_m3_stacked: 7.25 }]],
    // 8 ft by 4 ft by 16 in is a third of a cord (NIST Handbook 130): 1.208 m3
    ["8ft x 4ft x 16in ash", [{ species: "ash", volume_m3_stacked: 1.21 }]],
    ["oak 4m x 1.5m x 33cm", [{ species: "oak", volume_m3_stacked: 1.98 }]],
    ["4 by 1.5 by 0.33 metres of pine", [{ species: "pine", volume_m3_stacked: 1.98 }]],
    ["pine 3.5 m long, 1.2 high and 0.5 deep", [{ species: "pine", volume_m3_stacked: 2.1 }]],
    ["6 steres of hornbeam", [{ species: "hornbeam", volume_m3_stacked: 6 }]],
    ["birch 17 % wet basis measured yesterday", [{ species: "birch", moisture_pct_wet: 17, measured_on: "2026-11-24" }]],
    ["25 % dry basis beech", [{ species: "beech", moisture_pct_wet: 20 }]],
    ["spruce at 0.18 wet basis", [{ species: "spruce", moisture_pct_wet: 18 }]],
    ["my basket weighs 9 kg", [{ basket_kg: 9 }]],
    ["three baskets weighed 8 kg, 9 kg and 10 kg", [{ basket_kg: 9 }]],
    ["alder split on 3 March 2025", [{ species: "alder", split_on: "2025-03-03" }]],
    ["3 m3 stacked birch and 2 cords of oak", [{ species: "birch", volume_m3_stacked: 3 }, { species: "oak", volume_m3_stacked: 7.25 }]],
  ])("%s", (text, facts) => {
    const read = readWood(text, HERE);
    expect(read.facts).toEqual(facts);
    expect(read.problems).toEqual([]);
    expect(readRecords({ wood: read.facts }).problems).toEqual([]);
  });

  test.each([["birch 26 %", 26], ["26 % off a pin meter, oak", 26], ["meter says 22", 22], ["moisture 0.26", 26], ["moisture is 19", 19],
    ["17 per cent", 17]])("the basis is asked, never assumed: %s", (text, pct) => {
    const read = readWood(text, HERE);
    expect(read.facts[0]?.moisture_pct_wet).toBeUndefined();
    expect(read.moisture_pct_unsettled).toEqual([pct]);
    expect(asked(read)).toEqual(["moisture-basis"]);
  });
  test("readings are averaged, and of two the inside counts", () => {
    expect(readWood("readings 18, 22, 23 wet basis", HERE).facts).toEqual([{ moisture_pct_wet: 21 }]);
    expect(readWood("meter says 12 outside 30 inside of the log", HERE).moisture_pct_unsettled).toEqual([30]);
  });
  test("settling the basis (26 % dry is 20.6 % wet, by definition)", () => {
    expect(settleMoisture(26, "dry")).toBe(20.6);
    expect(settleMoisture(26, "wet")).toBe(26);
    expect(settleMoisture(140, "dry")).toBe(58.3);
  });

  test("140 % without a basis is green wood on dry basis, and impossible on wet", () => {
    const read = readWood("oak moisture 140%", HERE);
    expect(read.problems[0]).toMatch(/140 %.*wet basis.*below 100 %.*dry basis.*green wood/);
    expect(asked(read)).toEqual(["moisture-basis"]);
    expect(read.facts).toEqual([{ species: "oak" }]);
  });
  test.each([["100 % wet basis", "impossible"], ["140% wet basis", "impossible"], ["85 % wet basis", "more water"],
    ["-3 % moisture", "cannot be"], ["moisture 900 %", "cannot be"], ["17 % wet basis measured next year", "still to come"],
    ["5000 cords of oak", "cannot be right"], ["basket weighs 900 kg", "cannot be right"]])("nonsense: %s", (text, said) => {
    expect(readWood(text, HERE).problems.join(" ")).toContain(said);
  });
  test("140 % dry basis is fine: green wood", () => expect(readWood("140 % dry basis oak",
    HERE)).toMatchObject({ facts: [{ species: "oak", moisture_pct_wet: 58.3 }], problems: [] }));
  test("a measurement of next year is dropped and the moisture kept", () =>
    expect(readWood("birch 17 % wet basis measured next year", HERE).facts).toEqual([{ species: "birch", moisture_pct_wet: 17 }]));
  test("loose becomes stacked by the measured share, and says so", () => {
    // TFZ Straubing 2006: one stacked m3 of 33 cm splits fills 1.48 to 1.62 m3 loose
    const read = readWood("5 loose cubes of spruce", HERE);
    expect(read.facts[0]?.volume_m3_stacked).toBeGreaterThan(5 / 1.62);
    expect(read.facts[0]?.volume_m3_stacked).toBeLessThan(5 / 1.48);
    expect(read.assumed).toHaveLength(1);
  });
  test("a cubic metre without its filling and a face cord are asked about", () => {
    expect(asked(readWood("6 m3 of oak", HERE))).toEqual(["volume-filling"]);
    expect(asked(readWood("a face cord of hickory", HERE))).toEqual(["cord-length"]);
  });
  test.each(["50 % of the maximum", "60% humidity", "20% off oak this week", "air 50 % open"])("no moisture: %s", (text) =>
    expect(readWood(text, HERE).moisture_pct_unsettled.filter((one) => one !== undefined)).toEqual([]));
  test("feet and inches for US readers", () => expect(readWood("8x4x16 hickory",
    US).facts).toEqual([{ species: "hickory", volume_m3_stacked: 1.21 }]));
});

describe("a fire", () => {
  const fire = (text: string, now_ms = NOW, context = {}) => readFire(text, now_ms, ZONE, context);
  test.each([
    ["log: 12kg birch 17% wet basis 18:10 damper 22:00 bed black",
      { load_kg: 12, species: "birch", moisture_pct_wet: 17, lit_at: "2026-11-25T18:10:00+02:00",
      damper_closed_at: "2026-11-25T22:00:00+02:00", bed_at_close: "black" }],
    ["lit at six, 26 pounds of oak, air shut at 8", { load_kg: 11.79, species: "oak", lit_at: "2026-11-25T18:00:00+02:00",
      air_closed_at: "2026-11-25T20:00:00+02:00" }],
    ["log 25 lb oak 6:30 pm", { load_kg: 11.34, species: "oak", lit_at: "2026-11-25T18:30:00+02:00" }],
    ["Log a fire of 12 kg at 18:00.", { load_kg: 12, lit_at: "2026-11-25T18:00:00+02:00" }],
    ["12 birch at 18:10", { load_kg: 12, species: "birch", lit_at: "2026-11-25T18:10:00+02:00" }],
    ["12kg 18.10 pine", { load_kg: 12, species: "pine", lit_at: "2026-11-25T18:10:00+02:00" }],
    ["18:10 lit, 12,5 kg spruce, 20:00 air closed", { load_kg: 12.5, species: "spruce", lit_at: "2026-11-25T18:10:00+02:00",
      air_closed_at: "2026-11-25T20:00:00+02:00" }],
    ["just lit 14 kilos of beech", { load_kg: 14, species: "beech", lit_at: "2026-11-25T22:40:00+02:00" }],
    ["lit half an hour ago, 9 kg", { load_kg: 9, lit_at: "2026-11-25T22:10:00+02:00" }],
    ["3 baskets of 9 kg, lit at 5 pm", { load_kg: 27, lit_at: "2026-11-25T17:00:00+02:00" }],
    ["8 kg plus 4 kg at 17:00", { load_kg: 12, lit_at: "2026-11-25T17:00:00+02:00" }],
    ["10 kg at 17:00, top-lit, criss-cross, air open, -8 outside",
      { load_kg: 10, lit_at: "2026-11-25T17:00:00+02:00", lit: "top", stack: "criss-cross", air: "open", outside_C: -8 }],
    ["last night at 7, 12 kg, flames out 8:30, air closed 9, damper at midnight, all black",
      { load_kg: 12, lit_at: "2026-11-24T19:00:00+02:00", flame_out_at: "2026-11-24T20:30:00+02:00",
      air_closed_at: "2026-11-24T21:00:00+02:00", damper_closed_at: "2026-11-25T00:00:00+02:00", bed_at_close: "black" }],
    ["12 kg 18:10 note: glass went black at the left", { load_kg: 12, lit_at: "2026-11-25T18:10:00+02:00",
      note: "glass went black at the left" }],
    ["12 kg ash logs lit 18:00, glass black", { load_kg: 12, species: "ash", lit_at: "2026-11-25T18:00:00+02:00" }],
    ["Nov 20: 12 kg, 18:00-22:00", { load_kg: 12, lit_at: "2026-11-20T18:00:00+02:00" }],
    ["sat night 14 kg spruce lit ~18h", { load_kg: 14, species: "spruce", lit_at: "2026-11-21T18:00:00+02:00" }],
    ["lit 3.10.2026 at 18:10, 12 kg", { load_kg: 12, lit_at: "2026-10-03T18:10:00+03:00" }],
  ])("%s", (text, facts) => {
    const read = fire(text);
    expect(read.facts).toEqual(facts);
    expect(read.problems).toEqual([]);
    expect(readRecords({ fires: [read.facts] }).problems).toEqual([]);
  });

  test("the morning after, six and eight were last evening", () => {
    const morning = Date.parse("2026-11-26T07:15:00+02:00");
    expect(fire("lit at six, 12 kg, air shut at 8", morning).facts).toMatchObject({ lit_at: "2026-11-25T18:00:00+02:00",
      air_closed_at: "2026-11-25T20:00:00+02:00" });
    expect(fire("12kg 18:10 damper 22:00", morning).facts).toMatchObject({ lit_at: "2026-11-25T18:10:00+02:00",
      damper_closed_at: "2026-11-25T22:00:00+02:00" });
    expect(fire("lit at six this morning, 12 kg", morning).facts.lit_at).toBe("2026-11-26T06:00:00+02:00");
  });

  test.each([["log -5 kg birch 18:10", "-5 kg"], ["load of 900 kg at 18:00", "900 kg"], ["0 kg at 18:00", "0 kg"],
    ["12 kg tomorrow at 18:00", "still to come"], ["a fire nine years ago, 12 kg", "too long ago"]])(
    "nonsense is named and the rest kept: %s", (text, said) => {
    const read = fire(text);
    expect(read.problems).toHaveLength(1);
    expect(read.problems[0]).toContain(said);
    expect(Object.keys(read.facts).length).toBeGreaterThan(0);
  });
  test("a load out of all measure is never kept", () => {
    for (const text of ["-5 kg 18:10", "900 kg 18:10", "0 kg 18:10"]) expect(fire(text).facts.load_kg).toBeUndefined();
  });

  test.each([["two baskets at half six", 2, "basket"], ["twelve splits of birch at 18:00", 12, "split"],
    ["filled to the mark at 18:00", 1, "mark"], ["two armfuls at 18:00", 2, "armful"]] as const)("%s", (text, count, measure) => {
    expect(fire(text)).toMatchObject({ amount: { count, measure } });
    expect(fire(text).facts.load_kg).toBeUndefined();
  });

  describe("closing down is never guessed", () => {
    test.each([
      ["12kg 18:10 damper 22:00", undefined, "damper-bed-unknown"],
        ["12kg 18:10 damper 22:00, embers still red", "red", "damper-over-embers"],
        ["12kg 18:10, closed the damper at 22:00 on small blue flames", "blue", "damper-over-embers"],
      ["12kg 18:10 damper 22:00 bed not black yet", "unknown", "damper-bed-unknown"],
        ["12kg 18:10 damper 22:00 coals glowing", "red", "damper-over-embers"],
        ["12kg 18:10 damper 22:00 bed mostly black but some glow", "red", "damper-over-embers"],
      ["12kg 18:10 damper 22:00 glass black", undefined, "damper-bed-unknown"],
        ["12kg 18:10 damper 22:00 bed maybe black", "unknown", "damper-bed-unknown"],
        ["12kg 18:10 damper 22:00 still small flames", "flame", "damper-over-embers"],
      ["12kg 18:10 damper 22:00 no glow in the embers", "unknown", "damper-bed-unknown"],
        ["12kg 18:10 damper 22:00 firebox black with soot", undefined, "damper-bed-unknown"],
        ["12kg 18:10 damper 22:00 looked at the bed in the dark", undefined, "damper-bed-unknown"],
      ["12kg 18:10 damper 22:00, the glass went almost completely black", undefined, "damper-bed-unknown"],
        ["12kg 18:10 damper 22:00 bed dark red in the dark", "red", "damper-over-embers"],
        ["12kg 18:10 damper 22:00 black on top, red embers below", "red", "damper-over-embers"],
      ["12kg 18:10 damper 22:00 bed black, glowing when raked", "red", "damper-over-embers"],
        ["12kg 18:10 damper 22:00 bricks were all black", undefined, "damper-bed-unknown"],
        ["12kg 18:10 damper 22:00 bed not fully black", "unknown", "damper-bed-unknown"],
        ["12kg 18:10 damper 22:00, bed nearly black", "unknown", "damper-bed-unknown"],
    ] as const)("%s", (text, bed, careful) => {
      const read = fire(text);
      expect(read.facts.bed_at_close).toBe(bed);
      expect(read.careful).toEqual([careful]);
    });
    test.each(["12kg 18:10 damper 22:00 bed black", "12kg 18:10 damper 22:00 embers all black",
      "12kg 18:10 damper 22:00 no glow at all in the embers in the dark",
      "12kg 18:10 damper 22:00 raked and black in the dark"])("black when said black: %s", (text) =>
      expect(fire(text)).toMatchObject({ facts: { bed_at_close: "black" }, careful: [] }));
    test("closed what?", () => {
      const read = fire("12 kg, lit 18:00, closed at 22:00");
      expect(asked(read)).toEqual(["closed-what"]);
      expect(read).toMatchObject({ closed_at: "2026-11-25T22:00:00+02:00" });
      expect(read.facts.damper_closed_at).toBeUndefined();
      expect(read.facts.air_closed_at).toBeUndefined();
    });
    test("an open damper is not a closed one", () => expect(fire(
      "12 kg lit 18:00, damper left open, 22:00").facts.damper_closed_at).toBeUndefined());
    test("an unknown bed is asked", () => expect(asked(fire("12kg 18:10 damper 22:00"))).toEqual(["bed-at-close"]));
  });
  test("two fires in one message are not one load", () => {
    const read = fire("burnt two loads today, 8kg at 7am and 9kg at 6pm");
    expect(read.facts).toMatchObject({ load_kg: 8, lit_at: "2026-11-25T07:00:00+02:00" });
    expect(read.problems[0]).toContain("two fires");
  });
  test("without a time it is asked when", () => expect(asked(fire("log 12 kg birch"))).toEqual(["lit-at"]));
  test("moisture without a basis is asked, the fire kept", () =>
    expect(fire("log: 12kg birch 17% 18:10")).toMatchObject({ facts: { load_kg: 12, species: "birch" }, moisture_pct_unsettled: 17 }));
  test("bare pounds for US readers", () => expect(fire("26 oak at 6 pm", NOW, { system: "us" }).facts.load_kg).toBe(11.79));
  test("a time through a change of the clocks has its own offset", () =>
    expect(readFire("12 kg on 24 October at 18:00", NOW, ZONE).facts.lit_at).toBe("2026-10-24T18:00:00+03:00"));
});

describe("alarms", () => {
  test.each([
    ["CO alarm in the bedroom, tested yesterday, good till 2031-06-01",
      { co: { present: true, room: "bedroom", tested_on: "2026-11-24", ends_on: "2031-06-01" } }],
    ["no CO alarm", { co: { present: false } }], ["we don't have a smoke alarm", { smoke: { present: false } }],
      ["I have a carbon monoxide detector", { co: { present: true } }],
    ["co alarm in the living room tested 3 November, smoke alarm on the landing",
      { co: { present: true, room: "living room", tested_on: "2026-11-03" }, smoke: { present: true, room: "landing" } }],
    ["smoke and CO alarms in the hall", { co: { present: true, room: "hall" }, smoke: { present: true, room: "hall" } }],
    ["haven't tested the co alarm", { co: { present: true } }],
      ["CO alarm expires March 2029", { co: { present: true, ends_on: "2029-03-01" } }],
      ["CO alarm good till 2031", { co: { present: true, ends_on: "2031-01-01" } }],
  ])("%s", (text, facts) => {
    const read = readAlarms(text, HERE);
    expect(read.facts).toEqual(facts);
    expect(readRecords({ alarms: read.facts }).problems).toEqual([]);
  });
  test("an alarm nobody named is asked about, never taken for a CO alarm", () => {
    const read = readAlarms("the alarm in the bedroom was tested yesterday, good till 2031", HERE);
    expect(read).toMatchObject({ facts: {}, unplaced: { room: "bedroom", tested_on: "2026-11-24", ends_on: "2031-01-01" } });
    expect(asked(read)).toEqual(["which-alarm"]);
  });
  test.each(["have a co alarm but the battery is dead", "CO alarm does not work", "the CO alarm is broken",
    "co alarm has no battery"])("counts as none: %s", (text) => {
    const read = readAlarms(text, HERE);
    expect(read.facts).toEqual({ co: { present: false } });
    expect(read.problems[0]).toContain("counts as none");
  });
  test("working is working", () => expect(readAlarms("CO alarm works, tested today",
    HERE)).toMatchObject({ facts: { co: { present: true, tested_on: "2026-11-25" } }, problems: [] }));
  test("a CO2 meter is no CO alarm", () => {
    const read = readAlarms("my CO2 alarm was tested yesterday", HERE);
    expect(read.facts.co).toBeUndefined();
    expect(asked(read)).toEqual(["which-alarm"]);
  });
  test.each([["CO alarm expired 2024", "ended"], ["CO alarm tested tomorrow", "still to come"]])("%s", (text, said) =>
    expect(readAlarms(text, HERE).problems.join(" ")).toContain(said));
});

describe("units and weather", () => {
  test.each([["switch to lbs and F", "us"], ["kg and celsius please", "metric"], ["metric", "metric"], ["US units", "us"],
    ["from pounds to kilos", "metric"], ["not kilos, pounds", "us"], ["tell us in kg", "metric"], ["I want °F", "us"],
    ["fahrenheit", "us"], ["imperial please", "us"]] as const)("%s", (text, units) =>
    expect(readUnits(text)).toEqual({ facts: { units }, problems: [] }));
  test("the two are not mixed", () => expect(readUnits("pounds and celsius").problems).toHaveLength(1));
  test("nothing asked, nothing set", () => expect(readUnits("how hot is it")).toEqual({ facts: {}, problems: [] }));

  test.each([
    ["-12 tonight", { low_C: -12 }], ["low of 10 F tonight", { low_C: -12.2 }], ["high 3 low -5", { low_C: -5, high_C: 3 }],
      ["between -12 and -5 tonight", { low_C: -12, high_C: -5 }], ["minus 25 tonight", { low_C: -25 }],
      ["twelve below tonight", { low_C: -12 }],
    ["-8 C tonight, how many kg and at what time?", { low_C: -8 }], ["how much wood today -5 windy", { low_C: -5 }],
      ["10 degrees outside", { low_C: 10 }], ["down to -15 °C overnight", { low_C: -15 }], ["4 tonight and 21 in the room", { low_C: 4 }],
  ])("%s", (text, facts) => expect(readWeather(text, HERE).facts).toEqual(facts));
  test("bare numbers in the reader's scale", () => expect(readWeather("10 tonight", US).facts).toEqual({ low_C: -12.2 }));
  test("days to come", () => {
    const read = readWeather("Friday -10 to -2, Saturday -14 to -6", HERE);
    expect(read.days).toEqual([{ date: "2026-11-27", low_C: -10, high_C: -2 }, { date: "2026-11-28", low_C: -14, high_C: -6 }]);
    expect(readRecords({ weather: read.days }).problems).toEqual([]);
  });
  test("pairs beside days, above freezing too, which alone might be dates", () => {
    const { facts, days } = readWeather("tonight low -5 high 1, tomorrow -7/0, Sun 0/5, Mon 2/9: plan my fires", HERE);
    expect(facts).toEqual({ low_C: -5, high_C: 1 });
    expect(days.map(({ low_C, high_C }) => [low_C, high_C])).toEqual([[-7, 0], [0, 5], [2, 9]]);
  });
  test("a pair beside a load or a date is no weather", () => expect(readWeather("burnt 12 kg on 3/10, half a load, 4/5 full", HERE).days).toEqual([]));
  test("short names of days", () => expect(readWeather("forecast: fri -8/-15, sat -10/-18",
    HERE).days).toEqual([{ date: "2026-11-27", low_C: -15, high_C: -8 }, { date: "2026-11-28", low_C: -18, high_C: -10 }]));
  test("nonsense", () => expect(readWeather("-120 tonight", HERE)).toMatchObject({ facts: {},
    problems: [expect.stringContaining("cannot be right")] }));
});

describe("whatever is written", () => {
  const readers: readonly ((text: string) => { problems: readonly string[] })[] = [
    (text) => readHeater(text, HERE), (text) => readHouse(text, HERE), (text) => readWood(text, HERE), (text) =>
      readFire(text, NOW, ZONE), (text) => readAlarms(text, HERE), readUnits, (text) => readWeather(text, HERE),
  ];
  const piece = fc.constantFrom("12", "kg", "max", "-5", "18:10", "damper", "lit", "at", "bed", "black", "birch", "17 %", "wet basis",
    "m2", "x", "4x1.5x0.33", ",", ".", "and", "no", "co alarm", "tested", "yesterday", "2031", "half", "baskets", "of", "nine years ago",
    "-15", "kW", "cord", "note:", "99999999999999999999", "½", "\n", "👍");
  test("no reader throws, and all that is kept fits the records", () => {
    fc.assert(
      fc.property(fc.oneof(anyText(80), fc.array(piece, { maxLength: 25 }).map((parts) => parts.join(" "))), (text) => {
        for (const read of readers) for (const problem of read(text).problems) expect(problem).toMatch(/^[^\n]+[.?]$/);
        expect(readRecords({ heater: readHeater(text, HERE).facts }).problems, text).toEqual([]);
        expect(readRecords({ house: readHouse(text, HERE).facts }).problems, text).toEqual([]);
        expect(readRecords({ wood: readWood(text, HERE).facts }).problems, text).toEqual([]);
        expect(readRecords({ alarms: readAlarms(text, HERE).facts }).problems, text).toEqual([]);
        expect(readRecords({ weather: readWeather(text, HERE).facts }).problems, text).toEqual([]);
        const fire = readFire(text, NOW, ZONE).facts;
        if (fire.lit_at) expect(readRecords({ fires: [fire] }).problems, text).toEqual([]);
      }),
      { seed: 9, numRuns: 500 },
    );
  });
  test("what is left unread is named", () => expect(readHeater(`max 15 kg ${"x ".repeat(5000)}`,
    HERE)).toMatchObject({ facts: { max_load_kg: 15 }, problems: [expect.stringContaining("Only the first")] }));
});
