/** German figures, times, trees, records and requests are read as the English ones are. Wordings are our own; units by DIN 1301 and the trade. */
import { beforeAll, describe, expect, it } from "vitest";
import fc from "fast-check";
import { gloss } from "../../../src/conversation/german/gloss.ts";
import { readBan } from "../../../src/conversation/reading/read-ban.ts";
import { readCorrection } from "../../../src/conversation/reading/corrections.ts";
import { inUnit, readFigures } from "../../../src/conversation/reading/figures.ts";
import { readReminder } from "../../../src/conversation/reading/read-reminder.ts";
import { readRepeat } from "../../../src/conversation/reading/read-repeat.ts";
import { readAlarms, readFire, readHeater, readHouse, readWeather, readWood } from "../../../src/conversation/reading/records.ts";
import { readSpecies } from "../../../src/conversation/reading/species.ts";
import { loadTimes, readTimes } from "../../../src/conversation/reading/times.ts";

// a Wednesday evening
const NOW = Date.parse("2026-11-25T18:00:00Z");
const HERE = { now_ms: NOW, timezone: "UTC", locale: "de-DE" };
const pairs = (lines: string): [string, string][] => lines.trim().split("\n").map((line) => line.split(" | ").map((one) => one.trim()) as [string, string]);
const english = (german: string): string => gloss(german).text;
beforeAll(loadTimes);

describe("figures", () => {
  it.each<[string, number, Parameters<typeof inUnit>[1]]>([
    ["12,5 kg", 12.5, "kg"], ["1.800 kg", 1800, "kg"], ["1.234,5 kg", 1234.5, "kg"], ["anderthalb Kilo", 1.5, "kg"], ["zweieinhalb Tonnen", 2500, "kg"], ["achtzehn Kilo", 18, "kg"], ["einundzwanzig Grad", 21, "C"],
    ["zweihundertfünfzig Kilogramm", 250, "kg"], ["zwölf kg", 12, "kg"], ["minus sieben Grad", -7, "C"], ["7 Grad unter null", -7, "C"], ["-12,5 °C", -12.5, "C"], ["16,5 %", 16.5, "pct"], ["16 Prozent", 16, "pct"],
    ["3 Raummeter", 3, "m3"], ["5 rm", 5, "m3"], ["2 Ster", 2, "m3"], ["6 Schüttraummeter", 6, "m3"], ["4 Festmeter", 4, "m3"], ["3 Zentner", 150, "kg"], ["120 Quadratmeter", 120, "m2"], ["33 Zentimeter", 33, "cm"],
    ["4 Stunden", 4, "h"], ["drei Tage", 72, "h"], ["5 kW", 5, "kW"], ["2 Pfund", 1, "kg"], ["tausend Kilo", 1000, "kg"], ["zweitausendfünfhundert kg", 2500, "kg"], ["fuenfzehn kg", 15, "kg"], ["dreißig kg", 30, "kg"],
  ])("%s", (german, value, unit) => {
    const figure = readFigures(english(german))[0];
    expect(figure && inUnit(figure, unit), english(german)).toBeCloseTo(value, 6);
  });
  it("a Zentner is 100 kg in Austria and Switzerland", () => {
    const weighs = (text: string, country?: string) => readFigures(gloss(text, country === undefined ? {} : { country }).text).map((one) => inUnit(one, "kg"));
    expect([weighs("3 Zentner", "AT"), weighs("ein halber Zentner", "CH"), weighs("2 bis 3 Zentner", "DE")]).toEqual([[300], [50], [125]]);
  });
  it("stacked, loose and solid cubic metres are three things", () => {
    expect(["3 Raummeter", "3 Schüttraummeter", "3 Festmeter", "3 m³ geschichtet", "3 m³ geschüttet"].map((one) => readFigures(english(one))[0]?.filling)).toEqual(["stacked", "loose", "solid", "stacked", "loose"]);
  });
  it("wet and dry basis", () => {
    expect(["20 % vom Frischgewicht", "20 % bezogen auf das Frischgewicht", "25 % vom Trockengewicht", "25 % atro", "22 %"].map((one) => readFigures(english(one))[0]?.basis)).toEqual(["wet", "wet", "dry", "dry", null]);
  });
  it.each(pairs(`
    between 6 and 8 kg | zwischen 6 und 8 kg
    6 to 8 kg | 6 bis 8 kg
    up to 15 kg | bis zu 15 kg
    at most 15 kg | höchstens 15 kg
    at least 8 kg | mindestens 8 kg
    a bit over 15 kg | gut 15 kg
    just under 15 kg | knapp 15 kg
    about 12 kg | etwa 12 kg
    about 12 kg | rund 12 kg
    about 12 kg | ca. 12 kg
    over 20 % | über 20 %
    12 kg or so | 12 kg oder so
  `))("%s = %s", (theirs, ours) => {
    const plain = (text: string) => readFigures(text).map(({ at: _at, ...rest }) => rest);
    expect(plain(english(ours))).toEqual(plain(theirs));
  });
});

describe("times", () => {
  const of = (text: string, lean: "past" | "future") => readTimes(text, NOW, "UTC", { lean, locale: "en-GB" }).map(({ at_ms, kind }) => ({ at: new Date(at_ms).toISOString(), kind }));
  it.each(pairs(`
    yesterday evening | gestern Abend
    since Sunday | seit Sonntag
    this morning at 6:30 | heute früh um halb sieben
    this morning at half past six | heute früh um halb sieben
    at 18:10 | um 18:10
    at 18:10 | um 18 Uhr 10
    at 18:30 | um 18.30 Uhr
    at 8 in the evening | um 8 Uhr abends
    at 8 in the evening | abends um acht
    at quarter past 7 | um viertel nach sieben
    at quarter to 7 | um viertel vor sieben
    at 6:45 | um dreiviertel sieben
    at ten past eight | um zehn nach acht
    at 6:25 | um fünf vor halb sieben
    yesterday evening at 11 | gestern Abend um 11
    3 days ago | vor drei Tagen
    2 hours ago | vor 2 Stunden
    an hour ago | vor einer Stunde
    last Friday | letzten Freitag
    on 3 October | am 3. Oktober
    on 3 October | am 3.10.
    3.10.2026 | 3.10.2026
    on Monday evening | am Montagabend
    midnight | Mitternacht
    last week | letzte Woche
    the day before yesterday | vorgestern
  `))("past: %s = %s", (theirs, ours) => expect(of(english(ours), "past"), english(ours)).toEqual(of(theirs, "past")));
  it.each(pairs(`
    tomorrow at 9 | morgen um 9
    tomorrow morning | morgen früh
    the day after tomorrow | übermorgen
    tonight | heute Abend
    tonight at 20:00 | heute Abend um 20 Uhr
    in 2 hours | in 2 Stunden
    in 3 days | in drei Tagen
    next Friday | nächsten Freitag
    until Friday | bis Freitag
    on 1 August | am 1. August
    tomorrow evening at 8 | morgen Abend um 8
    at 20:15 | um 20:15 Uhr
  `))("to come: %s = %s", (theirs, ours) => expect(of(english(ours), "future"), english(ours)).toEqual(of(theirs, "future")));
});

describe("how often", () => {
  it.each(pairs(`
    every first Sunday | jeden ersten Sonntag
    every first Sunday of the month | jeden ersten Sonntag im Monat
    every 2 weeks | alle zwei Wochen
    every month | jeden Monat
    every month | monatlich
    every Monday | jeden Montag
    every Monday | montags
    once a year | einmal im Jahr
    every year | jedes Jahr
    every day | täglich
    every evening | jeden Abend
    twice a year | zweimal im Jahr
    every 6 months | alle 6 Monate
    on the 1st of every month | am 1. jeden Monats
    on weekdays | werktags
  `))("%s = %s", (theirs, ours) => expect(readRepeat(english(ours))?.rrule, english(ours)).toBe(readRepeat(theirs)?.rrule));
  it.each(pairs(`
    Remind me every first Sunday at 9 to test the alarm | Erinnere mich jeden ersten Sonntag um 9, den Melder zu testen
    Remind me tomorrow at 9 to empty the ash | Erinnere mich morgen um 9 daran, die Asche zu leeren
    Remind me on 1 August to book the sweep | Erinnere mich am 1. August an den Schornsteinfeger
    Remind me in 2 hours to look | Erinnere mich in 2 Stunden, nachzusehen
    Remind me tomorrow at 9 to empty the ash | Kannst du mich morgen um 9 daran erinnern, die Asche zu leeren?
  `))("%s = %s", (theirs, ours) => {
    const when = ({ due_at_ms, rule, phase }: ReturnType<typeof readReminder>) => ({ due_at_ms, rule, phase });
    expect(when(readReminder(english(ours), HERE)), english(ours)).toEqual(when(readReminder(theirs, HERE)));
  });
  it("keeps what it is about in the person's own words", () => {
    const said = gloss("Erinnere mich jeden ersten Sonntag um 9, den Melder zu testen");
    expect(said.own(readReminder(said.text, HERE).what)).toBe("den Melder zu testen");
    const asked = gloss("Kannst du mich morgen um 9 daran erinnern, die Asche zu leeren?");
    expect(asked.own(readReminder(asked.text, HERE).what)).toBe("die Asche zu leeren");
  });
});

describe("trees and parts", () => {
  it.each(pairs(`
    birch | Birke
    birch | Birkenholz
    beech | Buchenscheite
    beech | trockene Buche
    oak | Eiche
    ash | Esche
    ash | Eschenholz
    spruce | Fichte
    pine | Kiefer
    pine | Föhre
    larch | Lärche
    larch | Laerche
    hornbeam | Hainbuche
    maple | Ahorn
    alder | Erle
    black locust | Robinie
    softwood | Nadelholz
    fir | Tanne
    douglas fir | Douglasie
  `))("%s = %s", (id, german) => expect(readSpecies(english(german))[0]?.id, english(german)).toBe(id));
  it("ashes are no ash", () => expect(readSpecies(english("Asche ausgeleert"))).toEqual([]));
});

describe("records", () => {
  const facts: Readonly<Record<string, (text: string) => unknown>> = {
    heater: (text) => readHeater(text, HERE).facts, house: (text) => readHouse(text, HERE).facts, wood: (text) => readWood(text, HERE).facts,
    alarms: (text) => { const { co, smoke } = readAlarms(text, HERE).facts; return { co: { ...co, room: undefined }, smoke: { ...smoke, room: undefined } }; },
    fire: (text) => readFire(text, NOW, "UTC").facts, weather: (text) => { const { facts: known, days } = readWeather(text, HERE); return { known, days }; }, ban: (text) => readBan(text, NOW, "UTC", "de-DE"),
  };
  it.each<[string, string, string]>([
    ["heater", "heater: at most 15 kg", "Ofen: höchstens 15 kg"],
    ["heater", "my heater: bell, 1800 kg, max 15 kg from the sheet, damper, no grate", "Mein Ofen: Glockenofen, 1.800 kg, höchstens 15 kg laut Blatt, Absperrschieber, kein Rost"],
    ["heater", "contraflow, lit from the top, smoke leaves low", "Gegenstrom, von oben angezündet, Abzug unten"],
    ["heater", "no damper, outside air, bypass", "kein Schieber, Außenluft, Anheizklappe"],
    ["heater", "max 12.5 kg, min 6 kg, 25 kg a day", "maximal 12,5 kg, mindestens 6 kg, 25 kg am Tag"],
    ["heater", "chimney height 8 m, soapstone", "Schornsteinhöhe 8 m, Speckstein"],
    ["heater", "at most 14 kg from the data plate", "höchstens 14 kg laut Typenschild"],
    ["house", "house 120 m2, built 1950, hood", "Haus 120 m², Baujahr 1950, Dunstabzugshaube"],
    ["house", "heat loss 5 kW at -15", "Wärmeverlust 5 kW bei -15"],
    ["house", "recirculating hood, window contact", "Umlufthaube, Fensterkontakt"],
    ["wood", "birch 17 % wet basis, split last March, a basket weighs 9 kg", "Birke 17 % vom Frischgewicht, letzten März gespalten, ein Korb wiegt 9 kg"],
    ["wood", "5 m3 stacked beech", "5 Raummeter Buche"],
    ["wood", "6 loose m3 spruce", "6 Schüttraummeter Fichte"],
    ["fire", "18 kg birch loaded at 18:00", "18 kg Birke aufgelegt um 18 Uhr"],
    ["fire", "log: 12 kg birch, lit 18:10 yesterday, damper 22:00, embers black", "Notiere: 12 kg Birke, 18:10 gestern angezündet, Schieber 22:00, Glut schwarz"],
    ["fire", "log: 12 kg, lit 17:00, embers red", "Notiere: 12 kg, 17:00 angezündet, Glut rot"],
    ["fire", "one basket lit at 17:00", "ein Korb um 17 Uhr angezündet"],
    ["alarms", "co alarm in the living room tested today, good until 2031-05", "CO-Melder im Wohnzimmer heute geprüft, gültig bis 2031-05"],
    ["alarms", "smoke alarm tested yesterday", "Rauchmelder gestern getestet"],
    ["alarms", "no co alarm", "kein CO-Melder"],
    ["alarms", "the co alarm does not work", "der CO-Melder funktioniert nicht"],
    ["weather", "-12 tonight", "-12 heute Nacht"],
    ["weather", "low -5 high 3 tonight", "Tiefstwert -5 Höchstwert 3 heute Nacht"],
    ["weather", "Mon -4/2, Tue -9/-1", "Mo -4/2, Di -9/-1"],
    ["ban", "burn ban until Friday", "Feuerverbot bis Freitag"],
    ["ban", "the ban is lifted", "das Feuerverbot ist aufgehoben"],
  ])("%s: %s = %s", (kind, theirs, ours) => {
    const read = facts[kind] as (text: string) => unknown;
    expect(read(english(ours)), english(ours)).toEqual(read(theirs));
  });
  it.each(["Glut noch nicht schwarz", "Glut fast schwarz", "schwarz war die Glut nicht", "Glut nicht ganz schwarz", "Glut ziemlich schwarz", "Glut kaum schwarz", "Glut halb schwarz", "Glut rot"])("a bed that was not black is never kept as black: %s", (bed) => {
    expect(readFire(english(`Notiere: 12 kg, 17:00 angezündet, Schieber 20:00, ${bed}`), NOW, "UTC").facts.bed_at_close).not.toBe("black");
  });
  it("corrections", () => {
    expect(readCorrection(english("nein, 14 nicht 40"))?.to).toBe("14");
    expect(readCorrection(english("nein, ich meinte Fichte"))?.to).toBe("spruce");
  });
});

describe("the gloss", () => {
  it("never throws, and its own words come from the message", () => {
    fc.assert(fc.property(fc.string({ maxLength: 200, unit: "binary" }), (text) => {
      const read = gloss(text);
      expect(typeof read.text).toBe("string");
      for (const word of read.own(read.text).split(" ").filter(Boolean)) expect(text).toContain(word);
    }), { seed: 7, numRuns: 300 });
  });
  it("takes a moment for a wall of text", () => {
    const from = performance.now();
    gloss("Der Schieber war nicht schwarz und ".repeat(400));
    expect(performance.now() - from).toBeLessThan(400);
  });
});
