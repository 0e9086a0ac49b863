import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { steppedClock } from "../../src/delivery/clock.ts";
import { type Decide, receive, receiver, TooContended } from "../../src/delivery/receive.ts";
import type { Store } from "../../src/records/ports.ts";
import { openStore } from "../../src/store/open.ts";
import { decided, dueOf, message, NOW, say, saying } from "../store/made.ts";

let store: Store;
beforeEach(async () => {
  store = await openStore(":memory:");
});
afterEach(() => store.close());

const counting: Decide = ({ talk }) => {
  const count = Number(talk.state.count ?? 0) + 1;
  return decided({ answer: saying(`message ${count}`), writes: [{ write: "talk", state: { count } }] });
};
const deps = (decide: Decide, more: object = {}) => ({ store, clock: steppedClock(NOW), decide, ...more });
const wordsOf = ({ answer }: { answer: { headline: { args?: Readonly<Record<string, unknown>> } } }) => answer.headline.args?.words;

describe("a message", () => {
  test("is worked once, however often and from wherever it comes", async () => {
    const worked: string[] = [];
    const decide: Decide = (snapshot, one, now_ms) => {
      worked.push(one.native_id);
      return counting(snapshot, one, now_ms);
    };
    const first = await receive(deps(decide), message("ana", "1"));
    expect(first).toMatchObject({ again: false });
    expect(await receive(deps(decide), message("ana", "1"))).toMatchObject({ again: true, answer: first.answer });
    expect(worked).toEqual(["ana/1"]);
  });

  test("twenty of one talk at once, each five times: every one counts once, none is lost", async () => {
    const many = Array.from({ length: 20 }, (_, n) => message("ana", `${n}`)).flatMap((one) => [one, one, one, one, one]);
    // what an adapter does when it is told that the talk is contended: hand it in again
    const patient = async (one: (typeof many)[number]) => {
      for (;;) {
        try {
          return await receive(deps(counting), one);
        } catch (error) {
          if (!(error instanceof TooContended)) throw error;
        }
      }
    };
    const received = await Promise.all(many.map(patient));
    expect(new Set(received.map(wordsOf)).size).toBe(20);
    expect(received.filter(({ again }) => !again)).toHaveLength(20);
    expect(wordsOf(await receive(deps(counting), message("ana", "last")))).toBe("message 21");
  });

  test("follows the one before it, in the order in which they came", async () => {
    const hand = receiver(deps(counting));
    const received = await Promise.all(Array.from({ length: 30 }, (_, n) => hand(message(n % 2 ? "ana" : "ben", `${n}`))));
    expect(received.map(wordsOf)).toEqual(Array.from({ length: 30 }, (_, n) => `message ${Math.floor(n / 2) + 1}`));
  });

  test("that fails does not hold up the next", async () => {
    let tries = 0;
    const hand = receiver(
      deps((...args) => {
        if (++tries === 1) throw new Error("a mistake of ours");
        return counting(...args);
      }),
    );
    const [first, second] = await Promise.allSettled([hand(message("ana", "1")), hand(message("ana", "2"))]);
    expect(first?.status).toBe("rejected");
    expect(second).toMatchObject({ status: "fulfilled" });
  });

  test("whose talk changes under every try is given up with the reason", async () => {
    const contended = { ...store, commit: async () => ({ outcome: "stale", why: "the talk went on meanwhile" }) as const };
    await expect(receive({ ...deps(counting), store: contended }, message("ana", "1"))).rejects.toThrow(/8 tries: the talk went on/);
    expect(await store.inbox("lines:ana/1")).toBeNull();
  });

  test("of somebody forgotten between entering and deciding finds them new", async () => {
    let forgotten = false;
    const racing: Store = {
      ...store,
      async load(...args) {
        if (!forgotten) {
          forgotten = true;
          await say(store, "ben", () => ({ writes: [{ write: "forget-person", person_id: args[0] }] }));
        }
        return store.load(...args);
      },
    };
    expect(wordsOf(await receive({ ...deps(counting), store: racing }, message("ana", "1")))).toBe("message 1");
  });

  test("that changes the units is answered in the new ones; a repeat of it too", async () => {
    const decide: Decide = ({ person }) =>
      decided({ writes: [{ write: "person", person: { ...person, facts: { units: "us", locale: "en-US" } } }] });
    expect((await receive(deps(decide), message("ana", "1"))).facts).toEqual({ units: "us", locale: "en-US" });
    expect((await receive(deps(decide), message("ana", "1"))).facts).toEqual({ units: "us", locale: "en-US" });
  });

  test("by which somebody is forgotten makes nobody anew when it comes again", async () => {
    const decide: Decide = ({ person }) => decided({ answer: saying("gone"), writes: [{ write: "forget-person", person_id: person.id }] });
    await receive(deps(decide), message("ana", "1"));
    expect(wordsOf(await receive(deps(decide), message("ana", "1")))).toBe("gone");
    expect(await store.personByIdentity("lines", "ana")).toBeNull();
  });

  test("nudges delivery only when it left something to deliver", async () => {
    let nudges = 0;
    const nudge = () => void nudges++;
    await receive(deps(counting, { nudge }), message("ana", "1"));
    expect(nudges).toBe(0);
    await receive(
      deps((s) => decided({ due: [dueOf(s, "k", NOW)] }), { nudge }),
      message("ana", "2"),
    );
    expect(nudges).toBe(1);
  });

  test("that cannot be decided leaves nothing behind", async () => {
    const decide: Decide = () => {
      throw new Error("a mistake of ours");
    };
    await expect(receive(deps(decide), message("ana", "1"))).rejects.toThrow("a mistake of ours");
    expect(await store.inbox("lines:ana/1")).toBeNull();
    expect(wordsOf(await receive(deps(counting), message("ana", "1")))).toBe("message 1");
  });
});
