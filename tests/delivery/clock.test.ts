import { describe, expect, test } from "vitest";
import { steppedClock, systemClock } from "../../src/delivery/clock.ts";

describe("the system's clock", () => {
  function machine(start_ms: number, not_before_ms?: number) {
    const now = { wall: start_ms, tick: 5000 };
    return {
      now,
      clock: systemClock(
        not_before_ms,
        () => now.wall,
        () => now.tick,
      ),
      pass: (ms: number) => {
        now.wall += ms;
        now.tick += ms;
      },
    };
  }

  test("is the wall clock as long as that goes forward", () => {
    const { clock, pass, now } = machine(1_000_000);
    expect(clock.now()).toBe(1_000_000);
    pass(250);
    expect(clock.now()).toBe(1_000_250);
    now.wall += 3_600_000;
    expect(clock.now()).toBe(1_000_250 + 3_600_000);
  });

  test("goes on a tenth slower when the wall jumps back an hour, until the wall has caught up", () => {
    const { clock, pass, now } = machine(100_000_000);
    clock.now();
    now.wall -= 3_600_000;
    expect(clock.now()).toBe(100_000_000);
    for (let n = 0; n < 1000; n++) {
      pass(0.5);
      clock.now();
    }
    expect(clock.now()).toBe(100_000_450);
    pass(9 * 3_600_000);
    expect(clock.now()).toBe(100_000_450 + 0.9 * 9 * 3_600_000);
    pass(3_600_000);
    expect(clock.now()).toBe(now.wall);
    pass(1000);
    expect(clock.now()).toBe(now.wall);
  });

  test("never starts before the latest instant that was stored", () => {
    const { clock, pass } = machine(0, 7_000_000);
    expect(clock.now()).toBe(7_000_000);
    pass(500);
    expect(clock.now()).toBe(7_000_450);
  });
});

test("a stepped clock stands still until it is told, and never goes back", () => {
  const clock = steppedClock(1000);
  expect([clock.now(), clock.now(), clock.monotonic()]).toEqual([1000, 1000, 0]);
  clock.by(500);
  expect([clock.now(), clock.monotonic()]).toEqual([1500, 500]);
  expect(() => clock.to(1499)).toThrow(/cannot go back/);
});

describe("what an earlier life wrote", () => {
  const started = (wall_ms: number, last_ms: number) => systemClock(last_ms, () => wall_ms, () => 0).unsure_until_ms;
  test("cannot be placed in time when that life was ahead of the wall", () => {
    expect(started(1_000, 5_000)).toBe(5_000);
    expect(started(5_000, 5_000)).toBeUndefined();
    expect(started(9_000, 5_000)).toBeUndefined();
  });
});
