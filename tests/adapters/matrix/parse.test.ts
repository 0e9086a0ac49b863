import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { budget } from "../../../adapters/matrix/budget.ts";
import { isInvited } from "../../../adapters/matrix/invites.ts";
import { keyFor, numberOf, parse, type Surroundings } from "../../../adapters/matrix/parse.ts";

const me = "@gleed:home.example";
const around: Surroundings = { me, my_name: "Gleed", is_private: false, prefix: "!gleed", isOurs: (id) => id === "$ours" };
const said = (content: object, more: Partial<Surroundings> = {}, sender = "@a:x") =>
  parse({ event_id: "$1", sender, type: "m.room.message", content: { msgtype: "m.text", ...content } }, { ...around, ...more });

describe("what an event says", () => {
  test.each([
    ["mentioned", { body: "hello Gleed", "m.mentions": { user_ids: [me] } }, true, "hello Gleed"],
    ["somebody else mentioned", { body: "hello", "m.mentions": { user_ids: ["@b:x"] } }, false, "hello"],
    ["a mention of old", { body: "Gleed: hello", formatted_body: `<a href="https://matrix.to/#/${me}">Gleed</a>: hello` }, true, "hello"],
    ["the prefix", { body: "!gleed  two words" }, true, "two words"],
    ["the prefix in other letters", { body: "!GLEED: x" }, true, "x"],
    ["no prefix, a longer word", { body: "!gleedish" }, false, "!gleedish"],
    ["the name with a colon", { body: "gleed: x" }, true, "x"],
    ["a reply to us", { body: "> <@gleed:home.example> it was so\n> and so\n\nyes", "m.relates_to": { "m.in_reply_to": { event_id: "$ours" } } }, true, "yes"],
    ["a reply to another", { body: "yes", "m.relates_to": { "m.in_reply_to": { event_id: "$theirs" } } }, false, "yes"],
    ["a thread that we began", { body: "yes", "m.relates_to": { rel_type: "m.thread", event_id: "$ours", is_falling_back: true, "m.in_reply_to": { event_id: "$x" } } }, true, "yes"],
    ["fall-back of a thread", { body: "yes", "m.relates_to": { rel_type: "m.thread", event_id: "$t", is_falling_back: true, "m.in_reply_to": { event_id: "$ours" } } }, false, "yes"],
  ] as const)("%s", (_, content, addressed, text) => expect(said(content)).toMatchObject({ kind: "said", addressed, text }));

  test("in private everything is meant for us, notices and our own words never", () => {
    expect(said({ body: "x" }, { is_private: true })).toMatchObject({ addressed: true });
    expect(said({ msgtype: "m.notice", body: "!gleed x" }, { is_private: true })).toEqual({ kind: "nothing" });
    expect(said({ body: "x" }, { is_private: true }, me)).toEqual({ kind: "nothing" });
  });

  test("a sign as prefix needs no space", () => expect(said({ body: "?what now" }, { prefix: "?" })).toMatchObject({ addressed: true, text: "what now" }));

  test("whatever anybody writes into an event, nothing is thrown and nothing longer than allowed comes out", () => {
    fc.assert(
      fc.property(fc.dictionary(fc.constantFrom("msgtype", "body", "formatted_body", "m.relates_to", "m.mentions", "m.new_content"), fc.jsonValue()), fc.constantFrom("m.room.message", "m.reaction", "x"), (content, type) => {
        const parsed = parse({ event_id: "$1", sender: "@a:x", type, content: content as never }, around);
        if (parsed.kind === "said") expect(parsed.text.length).toBeLessThanOrEqual(6_000);
      }),
      { numRuns: 500, seed: 1 },
    );
  });

  test("numbers and their keys go both ways", () => {
    for (let number = 1; number <= 40; number++) expect(numberOf(keyFor(number))).toBe(number);
    expect(numberOf("2\u20E3")).toBe(2);
    for (const key of ["", "\u{1F44D}", "0", "100", "1x", "-1"]) expect(numberOf(key)).toBeNull();
  });
});

describe("who may bring us in", () => {
  test.each([
    [[], "@a:home.example", true],
    [[], "@a:elsewhere.example", false],
    [["*"], "@a:elsewhere.example", true],
    [["elsewhere.example"], "@a:Elsewhere.example", true],
    [["@a:x.example"], "@a:x.example", true],
    [["@a:x.example"], "@b:x.example", false],
    [["!room:x"], "@b:y.example", true],
    [["home.example"], null, false],
  ] as const)("%j, %s", (list, inviter, is) => expect(isInvited(list, me, "!room:x", inviter)).toBe(is));
});

describe("how much is taken", () => {
  const limits = { most: 3, in_ms: 1_000, same: 2, same_in_ms: 10_000 };
  test("so many in a while, by the time at which they were sent", () => {
    const one = budget(limits);
    expect([0, 1, 2, 3, 1_500].map((at) => one.take("a", `${at}`, at))).toEqual([true, true, true, false, true]);
    expect(one.take("b", "x", 3)).toBe(true);
  });
  test("the same words only so often", () => {
    const one = budget(limits);
    expect([0, 2_000, 4_000, 20_000].map((at) => one.take("a", "hello", at))).toEqual([true, true, false, true]);
  });
});
