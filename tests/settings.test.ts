import { inspect } from "node:util";
import { describe, expect, it } from "vitest";
import { BadSettings, readSettings, Secret } from "../src/settings.ts";

describe("settings", () => {
  it("have defaults", () => expect(readSettings({}, "here.sqlite")).toMatchObject({ database: "here.sqlite", timezone: "UTC", locale: "en-GB", history: true }));

  it("name every mistake at once, each with what would be right", () => {
    const problems = (() => {
      try {
        readSettings({ GLEED_TIMEZONE: "Mars/Olympus", GLEED_COUNTRY: "Finland", GLEED_NOW: "yesterday-ish", GLEED_HISTORY: "maybe" }, "x");
        return [];
      } catch (error) {
        return (error as BadSettings).problems;
      }
    })();
    expect(problems).toHaveLength(4);
    expect(problems.join("\n")).toMatch(/GLEED_TIMEZONE is "Mars\/Olympus"; it takes a time zone such as/);
  });

  it("a secret never prints", () => {
    const secret = new Secret("hunter2");
    expect(`${secret} ${JSON.stringify({ secret })} ${inspect(secret)} ${inspect({ a: [secret] }, { depth: 9 })}`).not.toContain("hunter2");
    expect(secret.reveal()).toBe("hunter2");
  });
});

describe("the forecast service", () => {
  const url = "https://api.example.org/locationforecast/2.0/compact";
  it("is off unless set, and needs somebody to reach", () => {
    expect(readSettings({}, ":memory:").forecast).toBeUndefined();
    expect(readSettings({ GLEED_FORECAST_URL: url, GLEED_FORECAST_CONTACT: "host@example.org" }, ":memory:").forecast).toEqual({ url, contact: "host@example.org" });
    expect(() => readSettings({ GLEED_FORECAST_URL: url }, ":memory:")).toThrow(/GLEED_FORECAST_CONTACT/);
    expect(() => readSettings({ GLEED_FORECAST_URL: "http://api.example.org/", GLEED_FORECAST_CONTACT: "x@example.org" }, ":memory:")).toThrow(/https/);
  });
});
