/** Answers of every shape, with the most hostile words a person could have typed in every place that shows words. */
import fc from "fast-check";
import { type Answer, answer, type Block, type Caution, type Choice, type FormField, type Text, text, verbatim } from "../../src/answer.ts";
import { q } from "../../src/quantities.ts";

export const HOSTILE = [
  "@everyone",
  "@here",
  "<@123456789012345678>",
  "<@&99>",
  "<#42>",
  "<:fire:1234>",
  "<a:x:1>",
  "<t:1700000000:R>",
  "</help:7>",
  "<id:browse>",
  "[free wood](https://evil.example/x)",
  "https://evil.example/a_b",
  "http://1.2.3.4/",
  "discord.gg/abcdef",
  "www.evil.example",
  "evil.com",
  "**bold**",
  "__under__",
  "_it_",
  "~~gone~~",
  "||spoiler||",
  "`code`",
  "```js\nalert(1)\n```",
  "# Heading",
  "-# small",
  "> quote",
  ">>> all",
  "- item",
  "1. item",
  "* star",
  "+ plus",
  "\\",
  "\\\\*",
  "\\@here",
  "\\`",
  ":fire:",
  ":100:",
  "a:b:c",
  "18:40",
  "1:2:3",
  "<script>alert(1)</script>",
  "<img src=x onerror=alert(1)>",
  '<a href="javascript:x">x</a>',
  "<font color=red>",
  "</p></div>",
  "&lt;b&gt;",
  "&amp;",
  "\"'",
  "@alice:evil.example",
  "#room:evil.example",
  "!id:evil.example",
  "@room",
  "mailto:a@evil.example",
  "matrix:u/alice:evil.example",
  "\u001b[31mred\u001b[0m",
  "\u001b]8;;https://evil.example\u0007link\u001b]8;;\u0007",
  "\u009b2J",
  "\u0007",
  "\u0000",
  "\b\b\b",
  "\r",
  "\t",
  "\u202Eevil\u202C",
  "\u2066x\u2069",
  "\u200Bzero\u200Bwidth",
  "\uFEFF",
  "\u200D",
  "\u{E0041}",
  "\uD800",
  "\uDC00x",
  "👨‍👩‍👧",
  "🔥",
  "木を割る",
  "дрова",
  "مدفأة",
  "e\u0301\u0301\u0301",
  "ﷺ",
  "",
  " ",
  "\n",
  "\n\n\n\n",
  "x".repeat(90),
  "木".repeat(60),
] as const;

const fragment = fc.constantFrom(...HOSTILE);
const sane = fc.constantFrom("The bed glows.", "split in May", "6.0 kg of birch", "Leave the air open.", "north wall", "never, ever");
const few = fc
  .array(fc.oneof({ weight: 2, arbitrary: fragment }, { weight: 1, arbitrary: sane }), { maxLength: 4 })
  .map((parts) => parts.join(" "));
/** now and then something of a novel's length */
const many = fc.tuple(few, fc.integer({ min: 1, max: 400 })).map(([words, times]) => `${words} Word. `.repeat(times));

const words: fc.Arbitrary<string> = fc.oneof({ weight: 40, arbitrary: few }, { weight: 1, arbitrary: many });
const anyText: fc.Arbitrary<Text> = fc.oneof(
  { weight: 4, arbitrary: words.map(verbatim) },
  { weight: 1, arbitrary: words.map((one) => text("test.of", { words: one, figure: q(12.5, "kg") })) },
  { weight: 1, arbitrary: fc.tuple(words, words).map(([one, two]) => text("test.two", { one: verbatim(one), two })) },
);
const shortText = few.map(verbatim);

const list = <T>(one: fc.Arbitrary<T>, usual: number, most: number, minLength = 0): fc.Arbitrary<T[]> =>
  fc.oneof(
    { weight: 12, arbitrary: fc.array(one, { minLength, maxLength: usual }) },
    { weight: 1, arbitrary: fc.array(one, { minLength: usual, maxLength: most, size: "max" }) },
  );

const choices: fc.Arbitrary<Choice[]> = list(shortText, 5, 30).map((labels) => labels.map((label, at) => ({ id: `c${at}`, label })));
const quantity = fc
  .tuple(fc.constantFrom("kg", "pct", "C", "h", "kWh", "m3"), fc.double({ min: -50, max: 500, noNaN: true }))
  .map(([unit, value]) => q(value, unit as "kg"));
const field: fc.Arbitrary<Omit<FormField, "key">> = fc.record({
  label: shortText,
  kind: fc.constantFrom("text", "number", "choice", "date", "yes-no" as const),
  unit: fc.option(fc.constantFrom("kg", "%"), { nil: undefined }),
  hint: fc.option(anyText, { nil: undefined }),
  value: fc.option(few, { nil: undefined }),
  choices: fc.option(choices, { nil: undefined }),
});

const CAUTION_IDS = Array.from({ length: 9 }, (_, at) => `k${at}`);
const cautioned = fc.oneof(
  { weight: 3, arbitrary: fc.constant<string[]>([]) },
  { weight: 1, arbitrary: fc.subarray(CAUTION_IDS, { maxLength: 2 }) },
);

const stepsBlock = fc.record({
  kind: fc.constant("steps" as const),
  ordered: fc.boolean(),
  steps: list(anyText, 6, 60, 1).map(([first, ...more]) => [text("test.two", { one: "⟪s", two: first ?? "" }), ...more]),
  title: fc.option(shortText, { nil: undefined }),
});
const tableBlock = fc.tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 0, max: 12 }), fc.boolean()).chain(([columns, rows, long]) =>
  fc.record({
    kind: fc.constant("table" as const),
    columns: fc.array(shortText, { minLength: columns, maxLength: columns }),
    rows: fc
      .array(fc.array(shortText, { minLength: columns, maxLength: columns }), { maxLength: rows })
      .map((made) => (long ? Array.from({ length: 8 }, () => made).flat() : made)),
    caption: fc.option(shortText, { nil: undefined }),
  }),
);

const block: fc.Arbitrary<Block> = fc
  .tuple(
    fc.oneof(
      fc.record({ kind: fc.constant("text" as const), text: anyText }),
      fc.record({ kind: fc.constant("heading" as const), text: shortText }),
      stepsBlock,
      tableBlock,
      fc.record({
        kind: fc.constant("numbers" as const),
        items: list(fc.record({ key: fc.constant("load_kg"), label: anyText, quantity }), 4, 20),
      }),
      fc.record({
        kind: fc.constant("causes" as const),
        items: list(
          fc.record({
            id: fc.constant("x"),
            title: shortText,
            share: fc.double({ min: 0, max: 1, noNaN: true }),
            because: fc.array(anyText, { maxLength: 3 }),
          }),
          3,
          12,
        ),
      }),
      fc.record({
        kind: fc.constant("picture" as const),
        picture: fc.record({
          chart: fc.constant("x"),
          data: fc.constant({}),
          alt: anyText,
          file: fc.option(fc.constantFrom("/tmp/a b/<x>.png", "c.svg", "none"), { nil: undefined }),
        }),
      }),
      fc.record({ kind: fc.constant("question" as const), id: fc.constant("q"), text: anyText, choices }),
      fc.record({ kind: fc.constant("choices" as const), choices }),
      fc.record({
        kind: fc.constant("form" as const),
        id: fc.constant("f"),
        title: anyText,
        fields: list(field, 4, 17).map((fields) => fields.map((one, at) => ({ ...one, key: `k${at}` }))),
      }),
      fc.record({ kind: fc.constant("quote" as const), who: shortText, words: anyText }),
      fc.record({
        kind: fc.constant("document" as const),
        document: fc.record({
          name: fc.constantFrom("for-guests.html", "season.csv", "brief.txt"),
          media_type: fc.constantFrom("text/html" as const, "text/csv" as const, "text/plain" as const),
          title: anyText,
          body: fc.array(
            fc.oneof(
              fc.record({ kind: fc.constant("text" as const), text: anyText, cautions: fc.constant<string[]>([]) }),
              tableBlock.map((table) => ({ ...table, cautions: [] as string[] })),
            ),
            { maxLength: 3 },
          ),
        }),
      }),
    ),
    cautioned,
  )
  .map(([body, cautions]) => ({ ...body, cautions }) as Block);

/** Marks around each caution's words prove that it came whole; the headline and the first step of each list bear others. */
const cautionText = (id: string, long: boolean, times: number): fc.Arbitrary<Caution> =>
  few.map((one) => ({ id, text: verbatim(`⟦${id} ${`${one} Never close it over glow. `.repeat(long ? times : 1)}${id}⟧`) }));

const catalogue = fc
  .tuple(fc.constantFrom(...CAUTION_IDS, ...CAUTION_IDS.map(() => "none")), fc.integer({ min: 2, max: 40 }))
  .chain(([long, times]) =>
    fc.tuple(...CAUTION_IDS.map((id) => cautionText(id, id === long, times))).map((all) => new Map(all.map((one) => [one.id, one]))),
  );

export interface Made {
  readonly answer: Answer;
  readonly maybe_repeat: boolean;
}

export const anyAnswer: fc.Arbitrary<Made> = fc
  .record({
    headline: few.map((one) => verbatim(`⟪h ${one} h⟫`)),
    blocks: list(block, 4, 12),
    cautions: cautioned,
    catalogue,
    emergency: fc.integer({ min: 0, max: 9 }).map((one) => one === 0),
    maybe_repeat: fc.integer({ min: 0, max: 9 }).map((one) => one === 0),
    live: fc.option(fc.constant("guide/1"), { nil: undefined }),
  })
  .map(({ catalogue: all, maybe_repeat, cautions, ...draft }) => ({
    answer: answer({ topic: "help", ...draft, cautions: draft.emergency ? [...cautions, "k0"] : cautions }, all),
    maybe_repeat,
  }));
