/** Three answers made by hand, as long and as mixed as real ones: a trouble, an emergency, a check-in of a live guide with a form. */
import { type Answer, answer, ask, type Caution, heading, numbers, say, steps, verbatim } from "../../src/answer.ts";
import { q } from "../../src/quantities.ts";

const caution = (id: string, words: string): [string, Caution] => [id, { id, text: verbatim(words) }];
const CAUTIONS = new Map([
  caution(
    "co",
    "Shut air makes the bed glow longer and gives off carbon monoxide. Never close the flue damper over flame or glow; if you are not sure, leave it open till morning.",
  ),
  caution("burns", "The door and the glass stay hot for hours after the last flame. Keep children and cloths away."),
  caution(
    "doors",
    "Carbon monoxide cannot be seen or smelt. Everyone who feels ill goes out at once, and nobody goes back in for anything.",
  ),
]);

export const trouble: Answer = answer(
  {
    topic: "black-glass",
    headline: verbatim("Damp wood is the most likely reason for the black glass"),
    cautions: ["burns"],
    blocks: [
      say(
        verbatim(
          "Your last fire was 6.0 kg of birch at 27 % moisture. Wet wood burns cool, and soot and tar settle on the coldest thing the flames meet: the door glass.",
        ),
      ),
      {
        kind: "causes",
        cautions: [],
        items: [
          {
            id: "damp",
            title: verbatim("Damp wood"),
            share: 0.64,
            because: [verbatim("your last load read 27 %"), verbatim("it was split in May")],
          },
          {
            id: "small",
            title: verbatim("A load too small for this firebox"),
            share: 0.22,
            because: [verbatim("your last load was 6 of 16 kg")],
          },
          { id: "air", title: verbatim("Air shut too early"), share: 0.03, because: [] },
        ],
      },
      numbers(
        { key: "load_kg", label: verbatim("Next load"), quantity: q(12.5, "kg", { low: 11, high: 14 }) },
        { key: "moisture_pct_wet", label: verbatim("Moisture of the pile by the door"), quantity: q(27, "pct") },
      ),
      heading(verbatim("Your last fires")),
      {
        kind: "table",
        cautions: [],
        columns: ["Lit", "Load", "Wood", "What was noted"].map(verbatim),
        rows: [
          ["Mon 18:10", "12.0 kg", "birch, 17 %", ""],
          ["Tue 18:40", "6.0 kg", "birch, 27 %", "glass black all over, *again*"],
          ["Wed 17:55", "11.5 kg", "spruce, 16 %", "clean"],
        ].map((row) => row.map(verbatim)),
      },
      {
        kind: "picture",
        cautions: [],
        picture: {
          chart: "moisture",
          data: {},
          alt: verbatim("Moisture of the last three loads: 17 %, 27 % and 16 %; anything above 20 % is too wet."),
          file: "/tmp/figures/moisture.png",
        },
      },
      steps(
        [
          verbatim("Burn the stack by the south wall first; it read 16 %."),
          verbatim("Bring tomorrow's load indoors tonight."),
          verbatim("Light from the top and leave the air fully open while there is flame."),
        ],
        { title: verbatim("Before the next fire") },
      ),
      {
        kind: "quote",
        cautions: [],
        who: verbatim("Your builder says"),
        words: verbatim("Nothing above 18 %.\nAnd never less than 8 kg at a time."),
      },
      ask("where", verbatim("Where is the glass black?"), [
        { id: "all", label: verbatim("All over") },
        { id: "corners", label: verbatim("Only in the corners") },
        { id: "unsure", label: verbatim("I cannot tell") },
      ]),
    ],
  },
  CAUTIONS,
);

export const emergency: Answer = answer(
  {
    topic: "co-alarm",
    headline: verbatim("Get everyone out now, then call 112"),
    emergency: true,
    cautions: ["doors"],
    blocks: [
      steps([
        verbatim("Wake everyone and go outside into fresh air."),
        verbatim("Open doors and windows only on your way out."),
        verbatim("Call 112 from outside. Say that it may be carbon monoxide and how many of you feel ill."),
        verbatim("Stay out until the fire service lets you back in."),
      ]),
      say(verbatim("Leave the fire as it is and every damper open.")),
      ask("out", verbatim("Is everyone outside?"), [
        { id: "yes", label: verbatim("Yes, all of us are out") },
        { id: "no", label: verbatim("No, someone is still inside") },
      ]),
    ],
  },
  CAUTIONS,
);

export const checkIn: Answer = answer(
  {
    topic: "close-down",
    live: "guide/1",
    headline: verbatim("20:15 · what do you see through the glass?"),
    cautions: ["co"],
    blocks: [
      say(verbatim("Lit at 18:10 with 12.5 kg. The stack should have collapsed by now."), "co"),
      ask("flame", verbatim("Look closely, with the light off:"), [
        { id: "yellow", label: verbatim("Yellow flames") },
        { id: "blue", label: verbatim("Small blue flames") },
        { id: "glow", label: verbatim("No flame, the bed glows") },
        { id: "black", label: verbatim("No flame, raked together, black in the dark") },
      ]),
      {
        kind: "form",
        id: "fire",
        title: verbatim("Write this fire down"),
        cautions: [],
        fields: [
          { key: "load_kg", label: verbatim("Load"), kind: "number", unit: "kg", value: "12.5" },
          {
            key: "species",
            label: verbatim("Species"),
            kind: "choice",
            choices: [
              { id: "birch", label: verbatim("Birch") },
              { id: "spruce", label: verbatim("Spruce") },
            ],
          },
          {
            key: "moisture_pct_wet",
            label: verbatim("Moisture"),
            kind: "number",
            unit: "%",
            hint: verbatim("wet basis, as most pin meters do not read"),
          },
          { key: "flame_out_at", label: verbatim("Last flame at"), kind: "date" },
          { key: "clean", label: verbatim("Glass clean"), kind: "yes-no" },
          { key: "note", label: verbatim("Note"), kind: "text" },
        ],
      },
    ],
  },
  CAUTIONS,
);

export const three = { trouble, emergency, checkIn };
