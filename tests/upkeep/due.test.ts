import { describe, expect, it } from "vitest";
import { telling } from "../../src/upkeep/due.ts";
import { HELSINKI, HOBART, jobAt, knowledge, upkeepAt } from "./facts.ts";

const fire = (day: string, facts: Record<string, unknown> = {}) => ({ id: day, heater_id: "heater", person_id: "ana", lit_at_ms: Date.parse(`${day}T17:00:00Z`), facts: { lit_at: `${day}T17:00:00Z`, ...facts } });
const ms = (day: string): number => Date.parse(`${day}T17:00:00Z`);

describe("the sweep: season, elapsed time, use and law, whichever comes first", () => {
  it("before the next first fire, spoken of right after the last one", () => {
    const job = jobAt("2026-11-25", { person: HELSINKI, upkeep: { swept_on: "2026-09-01" } });
    expect([job.because, job.due, job.tell]).toEqual(["season", "2027-08-24", "2027-06-14"]);
  });
  it("falls in the other half of the year south of the equator", () => {
    const job = jobAt("2026-11-25", { person: HOBART, upkeep: { swept_on: "2026-04-01" } });
    expect(job.due?.slice(5)).toBe("04-01");
    expect(job.because).toBe("elapsed");
    expect(jobAt("2026-11-25", { person: HOBART, upkeep: { swept_on: "2026-04-20" } }).due).toBe("2027-04-17");
  });
  it("is overdue until it is done, all through a season", () => {
    const job = jobAt("2026-12-20", { person: HELSINKI, upkeep: { swept_on: "2025-08-20" } });
    expect([job.because, job.due]).toEqual(["elapsed", "2026-08-20"]);
  });
  it("at 200 fires or 2,500 kg, in the middle of a season", () => {
    const totals = { fires: 300, load_kg: 3600, since_sweep_fires: 200, since_sweep_kg: 2200 };
    expect(jobAt("2027-02-01", { person: HELSINKI, upkeep: { swept_on: "2026-09-01" }, totals }).because).toBe("use");
    expect(jobAt("2027-02-01", { person: HELSINKI, upkeep: { swept_on: "2026-09-01" }, totals: { ...totals, since_sweep_fires: 199, since_sweep_kg: 2499 } }).because).toBe("season");
  });
  it("sooner where the law is stricter, and only while people heat there", () => {
    const german = { country: "DE", latitude: 52.5, longitude: 13.4, timezone: "Europe/Berlin" };
    const swept = (on: string) => jobAt("2026-11-25", { person: german, upkeep: { swept_on: on } });
    expect([swept("2026-09-15").because, swept("2026-09-15").due]).toEqual(["law", "2027-01-15"]);
    // four months after a sweep in March is July: before the first fire is enough
    expect(swept("2026-03-15").because).not.toBe("law");
    // advice is said, and counts nothing
    expect(jobAt("2026-11-25", { person: { ...german, country: "GB", latitude: 51.5, longitude: -0.1 }, upkeep: { swept_on: "2026-09-15" } }).because).not.toBe("law");
  });
  it("with nothing on record: the next window, and nobody is told that it is overdue", () => {
    const job = jobAt("2026-11-25", { person: HELSINKI });
    expect([job.last_on, job.due]).toEqual([null, "2027-08-24"]);
  });
  it("where nobody knows when people heat, elapsed time alone", () => {
    expect(jobAt("2026-11-25", {}).due).toBeNull();
    expect(jobAt("2026-11-25", { upkeep: { swept_on: "2026-03-01" } }).due).toBe("2027-03-01");
  });
});

describe("brought forward by signs in the log", () => {
  const black = (...days: string[]) => days.map((day) => fire(day, { note: "glass was black again" }));
  it("black glass three times, not twice, and not before the last sweep", () => {
    const given = (fires: ReturnType<typeof black>, swept_on = "2026-09-01") => jobAt("2026-11-25", { person: HELSINKI, upkeep: { swept_on }, fires });
    expect(given(black("2026-11-10", "2026-11-15")).because).toBe("season");
    const job = given(black("2026-11-10", "2026-11-15", "2026-11-20"));
    expect([job.because, job.due, job.signs]).toEqual(["sign", "2026-12-04", ["black-glass"]]);
    expect(given(black("2026-11-10", "2026-11-15", "2026-11-20"), "2026-11-22").because).toBe("season");
  });
  it("weak draught twice, from questions asked", () => {
    const job = jobAt("2026-11-25", { person: HELSINKI, upkeep: { swept_on: "2026-09-01", signs: { "weak-draught": ["2026-11-01", "2026-11-18"] } } });
    expect([job.because, job.due]).toEqual(["sign", "2026-12-02"]);
  });
  it("tar: at once, and no fire before it", () => {
    const job = jobAt("2026-11-25", { person: HELSINKI, upkeep: { swept_on: "2026-09-01" }, fires: [fire("2026-11-24", { note: "shiny tar on the lid" })] });
    expect([job.because, job.due, job.no_fire]).toEqual(["sign", "2026-11-24", true]);
  });
});

describe("seasons", () => {
  const stretches = (...list: readonly (readonly [string, string])[]) => list.map(([first, last]) => ({ first_ms: ms(first), last_ms: ms(last), fires: 90 }));
  it("are the owner's own once the log shows them", () => {
    const upkeep = upkeepAt("2026-07-01", { person: HELSINKI, stretches: stretches(["2024-08-20", "2025-05-10"], ["2025-08-25", "2026-05-28"]) });
    expect(upkeep.seasons?.from).toBe("log");
    expect(upkeep.seasons?.next.start.toString()).toBe("2026-08-25");
    expect(upkeep.seasons?.last.end.toString()).toBe("2026-05-28");
  });
  it("follow a move to the other hemisphere at once: the old log no longer counts", () => {
    const log = stretches(["2024-08-20", "2025-05-10"], ["2025-08-25", "2026-05-28"]);
    const moved = upkeepAt("2026-07-01", { person: HOBART, stretches: log });
    expect(moved.seasons?.from).toBe("climate");
    expect(moved.seasons?.now?.start.toString()).toBe("2026-05-01");
  });
  it("a winter's absence of five weeks ends no season", () => {
    const upkeep = upkeepAt("2027-02-20", { person: HELSINKI, stretches: stretches(["2025-09-10", "2026-05-20"], ["2026-09-08", "2026-12-20"], ["2027-01-28", "2027-02-18"]) });
    expect(upkeep.seasons?.now).not.toBeNull();
  });
  it("from a country or a zone alone by hemisphere; not at all near the equator", () => {
    expect(upkeepAt("2026-07-01", { person: { country: "NZ" } }).seasons?.now?.start.toString()).toBe("2026-05-01");
    expect(upkeepAt("2026-07-01", { person: { timezone: "Europe/Vienna" } }).seasons?.next.start.toString()).toBe("2026-10-01");
    expect(upkeepAt("2026-07-01", { person: { timezone: "America/Santiago" } }).seasons?.now).not.toBeNull();
    expect(upkeepAt("2026-07-01", { person: { timezone: "Africa/Nairobi" } }).seasons).toBeNull();
    expect(upkeepAt("2026-07-01", { person: { latitude: 4.7, longitude: -74.1 } }).seasons).toBeNull();
  });
});

describe("other jobs", () => {
  it("an alarm's printed end is spoken of four weeks before", () => {
    const job = jobAt("2026-11-25", { person: HELSINKI, alarms: { co: { present: true, ends_on: "2027-03-01" } } }, "co-end");
    expect([job.due, job.tell]).toEqual(["2027-03-01", "2027-02-01"]);
  });
  it("an alarm test a month after the last one", () => {
    expect(jobAt("2026-11-25", { person: HELSINKI, alarms: { co: { present: true, tested_on: "2026-11-01" } } }, "co-test").due).toBe("2026-12-01");
  });
  it("only those of this heater: no grate, no bars to look at", () => {
    const ids = (heater: Record<string, unknown>) => upkeepAt("2026-11-25", { person: HELSINKI, heater }).jobs.map(({ id }) => id);
    expect(ids({ grate: false })).not.toContain("grate");
    expect(ids({ grate: true })).toContain("grate");
    expect(ids({ shut_off_damper: false })).not.toContain("damper");
  });
  it("ash after eight fires, after three with a grate", () => {
    const fires = ["2026-11-20", "2026-11-21", "2026-11-22", "2026-11-23"].map((day) => fire(day));
    const upkeep = { done: { ash: "2026-11-19" } };
    expect(jobAt("2026-11-25", { person: HELSINKI, heater: { grate: true }, fires, upkeep }, "ash").because).toBe("use");
    expect(jobAt("2026-11-25", { person: HELSINKI, heater: { grate: false }, fires, upkeep }, "ash").because).toBe("unknown");
  });
  it("every row of the calendar is there, with a source, and every caution exists", () => {
    expect(Object.keys(knowledge.upkeep.tasks).length).toBeGreaterThanOrEqual(30);
    for (const [country, rule] of Object.entries(knowledge.sweepLaw)) expect(rule.source.length, country).toBeGreaterThan(10);
  });
});

describe("speaking of it unasked", () => {
  const at = (day: string, told: Record<string, string>) => {
    const { jobs, today } = upkeepAt(day, { person: HELSINKI, upkeep: { swept_on: "2026-09-01" } });
    return telling(jobs, told, today).now.map(({ id }) => id);
  };
  it("once, and again only when nobody did anything: six weeks, one week before, three weeks late", () => {
    expect(at("2027-06-13", {})).not.toContain("sweep");
    expect(at("2027-06-14", {})).toContain("sweep");
    expect(at("2027-07-01", { sweep: "2027-06-14" })).not.toContain("sweep");
    expect(at("2027-07-13", { sweep: "2027-06-14" })).toContain("sweep");
    expect(at("2027-08-17", { sweep: "2027-07-13" })).toContain("sweep");
    expect(at("2027-09-14", { sweep: "2027-08-17" })).toContain("sweep");
    expect(at("2027-12-01", { sweep: "2027-09-14" })).not.toContain("sweep");
  });
  it("also after a week switched off: the day is reached, not hit", () => {
    expect(at("2027-06-23", {})).toContain("sweep");
  });
});
