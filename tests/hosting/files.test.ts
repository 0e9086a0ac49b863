/** The files of hosting, read as their readers read them, and held against what Gleed itself knows. */
import { readFileSync } from "node:fs";
import { parse } from "yaml";
import { describe, expect, it } from "vitest";
import { readSettings } from "../../src/settings.ts";

const file = (name: string): string => readFileSync(new URL(`../../${name}`, import.meta.url), "utf8");
/** every name of a setting, by asking for one that is none */
const settings = ((): string[] => {
  try {
    readSettings({ GLEED_SETTINGS: new URL("./unknown-setting.yaml", import.meta.url).pathname }, "x");
  } catch (error) {
    return [...String(error).matchAll(/GLEED_\w+/g)].map(([name]) => name);
  }
  throw new Error("an unknown setting was accepted");
})();
const named = (words: string): string[] => [...words.matchAll(/\bGLEED_[A-Z_]+\b/g)].map(([name]) => name);

describe("Containerfile", () => {
  const lines = file("Containerfile").replace(/\\\n/g, " ").split("\n").map((line) => line.trim()).filter((line) => line && !line.startsWith("#"));
  const of = (word: string): string[] => lines.filter((line) => line.startsWith(`${word} `));
  it("has only instructions there are", () => {
    for (const line of lines) expect(line).toMatch(/^(FROM|WORKDIR|COPY|RUN|LABEL|ENV|USER|VOLUME|STOPSIGNAL|HEALTHCHECK|ENTRYPOINT|CMD)\b/);
  });
  it("has two stages with fixed bases, ends as nobody special, keeps its state in a volume", () => {
    expect(of("FROM").length).toBe(2);
    for (const from of of("FROM")) expect(from).toMatch(/^FROM \S+:[\w.-]+( AS \w+)?$/);
    expect(of("FROM").at(-1)).toMatch(/slim$/);
    expect(lines.indexOf(of("USER").at(-1) ?? "")).toBeGreaterThan(lines.indexOf(of("RUN").at(-1) ?? ""));
    expect(of("USER").at(-1)).not.toMatch(/root|\b0\b/);
    expect(of("VOLUME")).toEqual(['VOLUME ["/data"]']);
    for (const word of ["ENTRYPOINT", "CMD"]) for (const line of of(word)) expect(() => JSON.parse(line.slice(word.length))).not.toThrow();
    expect(of("COPY").join()).not.toContain("secret");
  });
  it("names settings there are", () => expect(named(file("Containerfile")).filter((name) => !settings.includes(name))).toEqual([]));
});

describe("compose.yaml", () => {
  const compose = parse(file("compose.yaml"));
  it("waits for a healthy PostgreSQL, keeps secrets in files and rights low", () => {
    expect(compose.services.gleed.depends_on.postgres.condition).toBe("service_healthy");
    expect(compose.services.postgres.healthcheck.test.join(" ")).toContain("pg_isready");
    for (const service of Object.values(compose.services) as { secrets: string[]; volumes: string[] }[]) {
      for (const secret of service.secrets) expect(Object.keys(compose.secrets)).toContain(secret);
      for (const volume of service.volumes) expect(Object.keys(compose.volumes)).toContain(volume.split(":")[0]);
    }
    expect(compose.services.gleed.cap_drop).toEqual(["ALL"]);
    expect(file("compose.yaml")).not.toMatch(/PASSWORD: \S|TOKEN: \S/);
  });
  it("names settings there are", () => expect(named(file("compose.yaml")).filter((name) => !settings.includes(name))).toEqual([]));
});

describe("gleed.service", () => {
  const unit = file("packaging/gleed.service");
  it("holds sections and lines as systemd reads them, once each where once is meant", () => {
    const lines = unit.split("\n").filter((line) => line && !line.startsWith("#"));
    for (const line of lines) expect(line).toMatch(/^(\[(Unit|Service|Install)\]|[A-Z]\w+=.*)$/);
    for (const key of ["DynamicUser=yes", "ProtectSystem=strict", "StateDirectory=gleed", "Type=exec"]) expect(lines.filter((line) => line === key)).toHaveLength(1);
    // the JavaScript engine compiles as it runs
    expect(lines.join("\n")).not.toContain("MemoryDenyWriteExecute=yes");
  });
  it("names settings there are", () => expect(named(unit).filter((name) => !settings.includes(name))).toEqual([]));
});
