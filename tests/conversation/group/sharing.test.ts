/** A reckoning shared by a press: what goes out, to which places, "on my heater", and how nothing is left after withdrawing. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { openTalk, type Said, type Talk } from "../../support/talk.ts";

const ANA = {
  heater: { kind: "bell", max_load_kg: 16, max_load_source: "sheet", masonry_kg: 2200, wall_mm: 220, facing_m2: 12, name: "Ana's secret stove" },
  house: { heat_loss_W_per_K: 260, wanted_C: 21 },
  wood: [{ name: "behind the barn", species: "birch", moisture_pct_wet: 16 }],
  weather: { low_C: -12, high_C: -5 },
};
const BEN = { heater: { max_load_kg: 10, max_load_source: "plate", masonry_kg: 1500 }, house: { heat_loss_W_per_K: 120, wanted_C: 21 }, wood: [{ species: "birch", moisture_pct_wet: 16 }], weather: { low_C: -12, high_C: -5 } };

const two: Said = { network: "second" };
const three: Said = { network: "third" };
let talk: Talk;
beforeEach(async () => {
  talk = await openTalk({ networks: ["second", "third"] });
});
afterEach(() => talk.close());

const codeIn = (words: string): string => /\b[A-Z]\d[A-Z]\d\b/.exec(words)?.[0] ?? "none";
const shareChoice = (choices: readonly { id: string }[]): string => choices.find(({ id }) => id.startsWith("share:"))?.id ?? "none";

/** Valley's room on lines, its room on another network, and the private place of somebody on a third. */
async function linked(): Promise<void> {
  await talk.say("ana", "hello", "valley");
  const link = async (): Promise<string> => /\b[A-Z\d]{4}-[A-Z\d]{4}\b/.exec((await talk.say("ana", "link another place", "valley", { moderates: true })).headline)?.[0] ?? "none";
  expect((await talk.say("ben", `link ${await link()}`, "valley two", { ...two, moderates: true })).headline).toMatch(/now belongs to valley/);
  expect((await talk.say("cid", `link ${await link()}`, "private", three)).headline).toMatch(/now belongs to valley/);
  await talk.advance("PT0S");
}

describe("sharing", () => {
  test("is offered where there is a group, and only below figures", async () => {
    await talk.records("ana", ANA);
    expect(shareChoice((await talk.say("ana", "how much wood tonight?")).choices)).toBe("none");
    await talk.say("ana", "hello", "valley");
    expect(shareChoice((await talk.say("ana", "how much wood tonight?")).choices)).toMatch(/^share:/);
    expect(shareChoice((await talk.say("ana", "why is my glass black?")).choices)).toBe("none");
  });

  test("nothing goes out without a press; a card holds figures and cautions, and no name, place or words", async () => {
    await talk.records("ana", ANA);
    await linked();
    const asked = await talk.say("ana", "how much wood tonight? I am alone with grandma's secret stove");
    expect(await talk.advance("PT0S")).toEqual([]);
    const done = await talk.choose("ana", shareChoice(asked.choices));
    expect(done.headline).toMatch(/^Shared with valley as [A-Z]\d[A-Z]\d\.$/);
    const cards = await talk.advance("PT0S");
    expect(cards.map(({ network, place }) => `${network} ${place}`).sort()).toEqual(["lines group:valley", "second group:valley two", "third private:cid"]);
    for (const card of cards) {
      expect(card.headline).toContain(codeIn(done.headline));
      expect(card.hazard).toBe(true);
      for (const caution of card.cautions) expect(card.text.indexOf(caution.text)).toBeLessThan(card.text.indexOf(card.headline));
      expect(card.cautions.map(({ id }) => id)).toEqual(expect.arrayContaining(asked.cautions.map(({ id }) => id)));
      expect(card.numbers.load_kg).toBe(asked.numbers.load_kg);
      expect(card.text).toMatch(/Heat loss of the house \| 260 W\/K/);
      expect(card.text).not.toMatch(/\bana\b|secret|barn|grandma|alone/i);
      expect(card.audience).toBe("room");
    }
    expect(await talk.advance("PT1H")).toEqual([]);
  });

  test.each([
    "how much wood tonight?", "when is the heater warmest if I light 12 kg at 18:00?", "plan my fires for the next days", "will my wood last until spring?", "how much heat is in 10 kg of birch at 18 %?",
    "how many kg is 3 m3 of stacked beech?", "how strong is my draught at -10?", "my meter says 22 % dry basis, is that fine?",
  ])("a card never holds what somebody wrote: %s", async (words) => {
    await talk.records("SECRETana", {
      timezone: "Europe/Helsinki", latitude: 60.2, longitude: 24.9, asleep: { from: "23:00", to: "06:30" },
      heater: { name: "SECRETstove", kind: "contraflow", max_load_kg: 16, max_load_source: "sheet", masonry_kg: 2400, wall_mm: 180, flue_height_m: 6.5 },
      house: { heat_loss_W_per_K: 190, wanted_C: 20.5 }, wood: [{ name: "SECRETpile", species: "SECRETspecies", moisture_pct_wet: 17, volume_m3_stacked: 6 }],
      weather: [{ date: "2026-11-25", low_C: -7, high_C: -1 }, { date: "2026-11-26", low_C: -9, high_C: -3 }], fires: [{ lit_at: "2026-11-24T06:10:00Z", load_kg: 12, note: "SECRETnote" }],
    });
    await talk.say("SECRETana", "hello", "valley");
    await talk.say("ben", "hello", "valley");
    const asked = await talk.say("SECRETana", words);
    const code = codeIn((await talk.choose("SECRETana", shareChoice(asked.choices))).headline);
    const [card] = await talk.advance("PT0S");
    expect(card?.numbers).toEqual(asked.numbers);
    expect(card?.also).toEqual([asked.topic]);
    expect(card?.cautions.map(({ id }) => id)).toEqual(expect.arrayContaining(asked.cautions.map(({ id }) => id)));
    const mine = await talk.choose("ben", `card:mine=${code}`);
    for (const seen of [card, mine]) expect(JSON.stringify(seen)).not.toMatch(/SECRET|60\.2|24\.9|06:30/);
  });

  test("what is only guessed at is offered, never sent; what was shared is taken back", async () => {
    await talk.records("ana", ANA);
    await talk.say("ana", "hello", "valley");
    await talk.say("ana", "how much wood tonight?");
    for (const words of ["let the group see my fire log", "don't show mine to the rest any more", "put my numbers up for everyone, but not the house stuff", "hide my figures from the group", "make this public in our room"]) {
      expect((await talk.say("ana", words)).topic, words).toBe("share-result");
      expect(await talk.advance("PT0S"), words).toEqual([]);
    }
    const offered = await talk.say("ana", "let the others see how I did");
    const code = codeIn((await talk.choose("ana", shareChoice(offered.choices))).headline);
    const back = await talk.say("ana", "stop sharing my results");
    expect(back.choices.map(({ label }) => label)).toEqual([`Withdraw ${code}`]);
  });

  test("a name goes with it only when that is wished", async () => {
    await talk.records("ana", ANA);
    await linked();
    const done = await talk.choose("ana", shareChoice((await talk.say("ana", "how much wood tonight?")).choices));
    await talk.advance("PT0S");
    const named = await talk.choose("ana", `card:name=${codeIn(done.headline)}`);
    expect(named.headline).toMatch(/Your name stands/);
    expect((await talk.advance("PT0S")).map((card) => /Shared by ana/.test(card.text))).toEqual([true, true, true]);
  });

  test("somebody in two groups picks one; the other hears nothing", async () => {
    await talk.records("ana", ANA);
    await talk.say("ana", "hello", "valley");
    await talk.say("ana", "hello", "hill");
    const asked = await talk.say("ana", "how much wood tonight?");
    const which = await talk.choose("ana", shareChoice(asked.choices));
    expect(which.choices.map(({ label }) => label).sort()).toEqual(["hill", "valley"]);
    await talk.choose("ana", which.choices.find(({ label }) => label === "hill")?.id ?? "");
    expect((await talk.advance("PT0S")).map(({ place }) => place)).toEqual(["group:hill"]);
  });

  test("said in words, and an old button never shares a newer answer", async () => {
    await talk.records("ana", ANA);
    await talk.say("ana", "hello", "valley");
    const old = shareChoice((await talk.say("ana", "how much wood tonight?")).choices);
    await talk.advance("PT1M");
    await talk.say("ana", "when is the heater warmest if I light 10 kg at 18:00?");
    expect((await talk.choose("ana", old)).headline).toMatch(/no reckoning at hand/);
    expect((await talk.say("ana", "share this with the group")).headline).toMatch(/^Shared with valley/);
    expect((await talk.say("ana", "share this with the group")).headline).toMatch(/shared already/);
    expect(await talk.advance("PT0S")).toHaveLength(1);
  });
});

describe("on my heater", () => {
  async function shared(): Promise<{ code: string; load_kg: number | undefined }> {
    await talk.records("ana", ANA);
    await linked();
    const asked = await talk.say("ana", "how much wood tonight?");
    const code = codeIn((await talk.choose("ana", shareChoice(asked.choices))).headline);
    await talk.advance("PT0S");
    return { code, load_kg: asked.numbers.load_kg };
  }

  test("the same reckoning from one's own records, beside the shared one, with what makes the difference", async () => {
    const { code, load_kg } = await shared();
    await talk.records("ben", BEN, two);
    const own = await talk.say("ben", "how much wood tonight?", "private", two);
    for (const press of [
      () => talk.choose("ben", `card:mine=${code}`, "private", two),
      () => talk.say("ben", `${code} on my heater`, "private", two),
      () => talk.say("ben", `Run ${code.toLowerCase()}.`, "private", two),
      () => talk.choose("ben", `card:mine=${code}`, "valley two", { ...two, whispers: true }),
    ]) {
      const mine = await press();
      expect(mine.headline).toMatch(new RegExp(`^${code} on your heater`));
      expect(mine.numbers.load_kg).toBe(own.numbers.load_kg);
      expect(mine.numbers.load_kg).toBeLessThanOrEqual(10);
      expect(mine.text).toMatch(new RegExp(`Load \\| ${load_kg}`));
      expect(mine.text).toMatch(/most of the difference: (Heat loss of the house, 260 W\/K there and 120 W\/K with you|Largest load, 16 kg there and 10 kg with you)/);
      expect(mine.hazard).toBe(true);
      expect(mine.audience).toBe("person");
    }
  });

  test("in a room where everybody reads along the answer goes to the person alone", async () => {
    const { code } = await shared();
    await talk.records("ben", BEN, two);
    const room = await talk.choose("ben", `card:mine=${code}`, "valley two", two);
    expect(room.headline).toMatch(/to you alone/);
    expect(room.text).not.toMatch(/kg/);
    expect((await talk.advance("PT0S")).map(({ place, headline }) => [place, headline.slice(0, 4)])).toEqual([["private:ben", code]]);
  });

  test("without own facts it asks for the one it needs, or says what it took", async () => {
    const { code } = await shared();
    const bare = await talk.choose("cid", `card:mine=${code}`, "private", three);
    expect(bare.question?.id ?? bare.text).toMatch(/max-load|max|largest/i);
    expect(bare.text).toMatch(/figures of which I have none of yours/);
    expect(bare.numbers.load_kg).toBeUndefined();
    await talk.records("cid", { heater: { max_load_kg: 8, max_load_source: "sheet" } }, three);
    const some = await talk.choose("cid", `card:mine=${code}`, "private", three);
    expect(some.numbers.load_kg).toBeLessThanOrEqual(8);
    expect(some.text).toMatch(/Heat loss of the house/);
  });

  test("strangers to the group know no such card", async () => {
    const { code } = await shared();
    expect((await talk.say("dora", `${code} on my heater`)).headline).toMatch(/no such card/);
    expect((await talk.say("dora", `withdraw ${code}`)).headline).toMatch(/no such card/);
  });

  test.each([
    ["when is the heater warmest if I light 9 kg at 18:00?", "peak_output_h"],
    ["how much heat is in 10 kg of birch at 18 %?", "useful_kWh"],
  ])("%s", async (words, key) => {
    await talk.records("ana", ANA);
    await linked();
    await talk.records("ben", BEN, two);
    const asked = await talk.say("ana", words);
    expect(asked.numbers[key]).toBeGreaterThan(0);
    const code = codeIn((await talk.choose("ana", shareChoice(asked.choices))).headline);
    const cards = await talk.advance("PT0S");
    expect(cards[0]?.pictures).toHaveLength(asked.pictures.length);
    const mine = await talk.choose("ben", `card:mine=${code}`, "private", two);
    expect(mine.numbers[key]).toBeGreaterThan(0);
  });
});

describe("withdrawing", () => {
  test("the card is replaced in every place, its content is gone from the store, and later presses say so", async () => {
    await talk.records("ana", ANA);
    await linked();
    const code = codeIn((await talk.choose("ana", shareChoice((await talk.say("ana", "how much wood tonight?")).choices))).headline);
    await talk.advance("PT0S");
    expect((await talk.say("ben", `withdraw ${code}`, "private", two)).headline).toMatch(/Only whoever shared it/);
    expect((await talk.choose("ana", `card:withdraw=${code}`)).headline).toMatch(/is withdrawn/);
    const gone = await talk.advance("PT0S");
    expect(gone.map(({ headline }) => headline)).toEqual([`${code} was withdrawn.`, `${code} was withdrawn.`, `${code} was withdrawn.`]);
    expect((await talk.choose("ben", `card:mine=${code}`, "private", two)).headline).toBe(`${code} was withdrawn.`);
    expect((await talk.choose("ana", `card:withdraw=${code}`)).headline).toBe(`${code} was withdrawn.`);
    expect(JSON.stringify((await talk.kept("ana"))?.shared)).not.toMatch(/load_kg|260/);
  });

  test("before it was sent, it never is", async () => {
    await talk.records("ana", ANA);
    await talk.say("ana", "hello", "valley");
    const code = codeIn((await talk.choose("ana", shareChoice((await talk.say("ana", "how much wood tonight?")).choices))).headline);
    await talk.choose("ana", `card:withdraw=${code}`);
    expect((await talk.advance("PT0S")).map(({ headline }) => headline)).toEqual([`${code} was withdrawn.`]);
  });

  test("a moderator withdraws in the group's room; being forgotten withdraws everything", async () => {
    await talk.records("ana", ANA);
    await linked();
    const share = async (): Promise<string> => codeIn((await talk.choose("ana", shareChoice((await talk.say("ana", "how much wood tonight?")).choices))).headline);
    const first = await share();
    await talk.advance("PT1M");
    expect((await talk.say("ben", `withdraw ${first}`, "valley two", { ...two, moderates: true })).headline).toMatch(/is withdrawn/);
    const second = await share();
    await talk.advance("PT1M");
    await talk.choose("ana", "data:delete");
    await talk.choose("ana", "data:delete-yes");
    const gone = await talk.advance("PT0S");
    expect(gone.map(({ headline }) => headline)).toContain(`${second} was withdrawn.`);
    expect((await talk.choose("ben", `card:mine=${second}`, "private", two)).headline).toBe(`${second} was withdrawn.`);
  });
});

describe("linking", () => {
  test("takes a moderator on both sides, a code that is not guessed, used up or over", async () => {
    await talk.say("ana", "hello", "valley");
    expect((await talk.say("ana", "link another place", "valley")).headline).toMatch(/Only a moderator/);
    expect((await talk.say("ana", "link another place")).headline).toMatch(/in the group's room/);
    const made = await talk.say("ana", "link another place", "valley", { moderates: true });
    const code = /\b[A-Z\d]{4}-[A-Z\d]{4}\b/.exec(made.headline)?.[0] ?? "";
    expect((await talk.say("ben", `link ${code}`, "valley two", two)).headline).toMatch(/Only a moderator/);
    expect((await talk.say("ben", "link A3C4-D6E7", "valley two", { ...two, moderates: true })).headline).toMatch(/no such code/);
    await talk.advance("PT31M");
    expect((await talk.say("ben", `link ${code}`, "valley two", { ...two, moderates: true })).headline).toMatch(/no such code/);
    const again = /\b[A-Z\d]{4}-[A-Z\d]{4}\b/.exec((await talk.say("ana", "link another place", "valley", { moderates: true })).headline)?.[0] ?? "";
    expect(again).not.toBe(code);
    expect((await talk.say("ben", `link ${again}`, "valley two", { ...two, moderates: true })).headline).toMatch(/now belongs/);
    expect((await talk.say("eve", `link ${again}`, "other room", { ...two, moderates: true })).headline).toMatch(/no such code/);
  });

  test("a ban of the group holds in all its places, and is lifted in any", async () => {
    await linked();
    await talk.records("ben", BEN, two);
    await talk.say("ana", "no burning until Friday", "valley", { moderates: true });
    expect((await talk.say("ben", "how much wood in one load?", "private", two)).numbers.load_kg).toBe(0);
    await talk.say("ben", "burn ban is over", "valley two", { ...two, moderates: true });
    expect((await talk.say("ben", "how much wood in one load?", "private", two)).numbers.load_kg).toBeGreaterThan(0);
  });
});

test("during a fire the guide is asked how it goes, not the group", async () => {
  await talk.records("ana", ANA);
  await talk.say("ana", "hello", "valley");
  await talk.say("ana", "walk me through a fire");
  await talk.say("ana", "it's lit");
  expect((await talk.say("ana", "how are we doing?")).topic).not.toBe("share-result");
});
