/** What may be published, for every way in which a group can lie in its bands; and every attack of somebody who is all the others. */
import { describe, expect, test } from "vitest";
import { bandCount, bandOf, publish, showsAnything, type Published } from "../../src/group/bands.ts";
import { BANDS, METRICS } from "../../src/group/winter.ts";

/** every way to lay `of` members into so many bands */
function* layings(of: number, bands: number): Generator<number[]> {
  if (bands === 1) return void (yield [of]);
  for (let first = 0; first <= of; first++) for (const rest of layings(of - first, bands - 1)) yield [first, ...rest];
}
const membersOf = (counts: readonly number[]): number[] => counts.flatMap((count, band) => Array.from({ length: count }, () => band));
const sum = (list: readonly number[]): number => list.reduce((total, one) => total + one, 0);

describe.each([3, 4])("%i bands, every group of up to 24", (bands) => {
  test("a shown band holds at least five, a shown third means fifteen, and hidden ones hold none or five together", () => {
    let shown = 0;
    for (let of = 0; of <= 24; of++) {
      for (const counts of layings(of, bands)) {
        const { levels, at_least } = publish(membersOf(counts), bands);
        const told = JSON.stringify(counts);
        for (const [band, level] of levels.entries()) {
          const count = counts[band] ?? 0;
          if (level === "hidden") continue;
          shown++;
          expect(count, told).toBeGreaterThanOrEqual(5);
          if (level !== "some") expect(of, told).toBeGreaterThanOrEqual(15);
          if (level === "third") expect(3 * count, told).toBeGreaterThanOrEqual(of);
          if (level === "half") expect(2 * count, told).toBeGreaterThanOrEqual(of);
        }
        const hidden = sum(counts.filter((_, band) => levels[band] === "hidden"));
        if (levels.some((level) => level !== "hidden")) expect(hidden === 0 || hidden >= 5, told).toBe(true);
        expect(at_least === null ? of < 5 : at_least <= of, told).toBe(true);
      }
    }
    expect(shown).toBeGreaterThan(1000);
  });

  test("the order of members says nothing, those without a figure count for nothing", () => {
    for (const counts of layings(17, bands)) {
      const members = membersOf(counts);
      expect(publish([null, ...members.toReversed(), null], bands)).toEqual(publish(members, bands));
    }
  });

  test("one member's band moves what is shown only where a band gains its fifth, a step is reached or a share is crossed", () => {
    for (let of = 1; of <= 16; of++) {
      for (const others of layings(of - 1, bands)) {
        const seen = Array.from({ length: bands }, (_, band) => JSON.stringify(publish([...membersOf(others), band], bands)));
        if (new Set(seen).size === 1) continue;
        // at an edge: some band of the others is one short of five, or shares are spoken of
        const atFive = others.some((count) => count === 4) || others.some((count, band) => count < 5 && sum(others.filter((_, other) => other !== band)) >= 4);
        expect(atFive || of >= 15, `${others}`).toBe(true);
      }
    }
  });
});

/** figures across a whole band, its edges included */
const within = (edges: readonly number[], band: number): number[] => {
  const low = band === 0 ? 0 : (edges[band - 1] ?? 0);
  const high = band === edges.length ? low * 3 + 1 : (edges[band] ?? 0);
  return [0, 0.001, 0.25, 0.5, 0.75, 0.999999].map((share) => low + share * (high - low));
};

describe.each(METRICS)("an attacker who is everybody but one: %s", (metric) => {
  const bands = BANDS[metric];
  const count = bandCount(bands);

  test("every group of up to 18, every figure of the last member: nothing below the band is ever seen", () => {
    for (let of = 1; of <= 18; of++) {
      for (const others of layings(of - 1, count)) {
        for (let band = 0; band < count; band++) {
          const seen = within(bands.edges, band).map((figure) => JSON.stringify(publish([...membersOf(others), bandOf(bands, figure)], count)));
          expect(new Set(seen).size).toBe(1);
        }
      }
    }
  });

  test("over weeks, with sybils who join, leave and move as they please after what they see, and a victim who moves within bands", () => {
    let random = 7;
    const next = (below: number): number => (random = (random * 1103515245 + 12345) % 2 ** 31) % below;
    let telling = 0;
    for (let play = 0; play < 400; play++) {
      const path = Array.from({ length: 12 }, () => (next(8) === 0 ? null : next(count)));
      const strategy = next(1000);
      const watched = Array.from({ length: 4 }, (_, world) => {
        const seen: string[] = [];
        let others = Array.from({ length: 3 + (strategy % 16) }, (_, n) => (n * 7 + strategy) % count);
        for (const [week, band] of path.entries()) {
          const figure = band === null ? null : (within(bands.edges, band)[(world * 5 + week) % 6] ?? 0);
          const published: Published = publish([...others, figure === null ? null : bandOf(bands, figure)], count);
          seen.push(JSON.stringify(published));
          if (world === 0 && showsAnything(published)) telling++;
          // what they do next hangs on all that they saw
          const mood = [...seen.join()].reduce((hash, sign) => (hash * 31 + sign.charCodeAt(0)) % 9973, strategy);
          others = mood % 3 === 0 ? others.slice(1) : mood % 3 === 1 ? [...others, mood % count] : others.map((one, n) => (n % 4 === mood % 4 ? (one + 1) % count : one));
        }
        return seen.join("\n");
      });
      expect(new Set(watched).size).toBe(1);
    }
    expect(telling).toBeGreaterThan(500);
  });

  test("the attack can succeed where there is something to find: with counts published it does", () => {
    const counting = (members: readonly number[]): string => JSON.stringify(members.map((figure) => Math.floor(figure * 10)).sort());
    const [a, b] = [within(bands.edges, count - 1)[0] ?? 0, within(bands.edges, count - 1)[4] ?? 0];
    expect(counting([1, 1, 1, 1, a])).not.toBe(counting([1, 1, 1, 1, b]));
  });
});
