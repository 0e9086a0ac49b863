/** Requests for the album, and what words beside a picture say. Wordings are common practice, no source. */
import { describe, expect, test } from "vitest";
import { readAlbumRequest } from "../../../src/conversation/reading/read-album.ts";
import { sameSpot, shows, spotIn, widthIn } from "../../../src/conversation/reading/read-picture.ts";

describe("requests", () => {
  test.each([
    ["show my album", { wants: "list" }], ["my pictures", { wants: "list" }], ["can i see the photos", { wants: "list" }], ["show the crack pictures", { wants: "list", what: "crack" }],
    ["show me pictures of the glass", { wants: "list", what: "glass" }], ["show picture 3", { wants: "one", which: 3 }], ["picture 12", { wants: "one", which: 12 }], ["show me photo no. 4", { wants: "one", which: 4 }],
    ["show the last picture", { wants: "one", which: "newest" }], ["show me the oldest crack picture", { wants: "one", which: "oldest", what: "crack" }], ["compare the crack", { wants: "compare", what: "crack" }],
    ["compare the crack above the door", { wants: "compare", what: "crack", spot: "above the door" }], ["compare my pictures", { wants: "compare" }], ["delete picture 3", { wants: "delete", which: 3 }],
    ["please remove photo 2", { wants: "delete", which: 2 }], ["delete the last picture", { wants: "delete", which: "newest" }], ["delete all my pictures", { wants: "delete-all" }],
    ["picture 3 is 0.5 mm wide", { wants: "width", which: 3, width_mm: 0.5 }],
  ])("%s", (words, wanted) => {
    expect(readAlbumRequest(words)).toEqual(wanted);
  });
  test.each([
    "how do i delete a picture", "i sent you pictures of the crack", "compare oak and birch", "show my fires", "delete my data", "what should i do about the crack in picture 3", "delete everything", "can i send you a picture",
    "show the first fires", "the picture fell off the wall above the heater", "show my reminders",
  ])("not: %s", (words) => {
    expect(readAlbumRequest(words)).toBeNull();
  });
});

describe("words beside a picture", () => {
  test.each([["new crack above the door", "above the door"], ["Riss über der Tür, 0,5 mm", "über der Tür"], ["the crack on the left side of the bench", "on the left side"], ["crack again", undefined], ["crack seen in spring", undefined], ["crack in the winter", undefined], ["look at it", undefined]])("spot: %s", (words, spot) => {
    expect(spotIn(words)).toBe(spot);
  });
  test.each([["above the door", "over the door", true], ["above the door", "über der Tür", true], ["above the door", "below the door", false], ["by the door", "above the oven", false]])("%s / %s", (one, other, same) => {
    expect(sameSpot(one, other)).toBe(same);
  });
  test.each([["0.5 mm wide", 0.5], ["0,8 mm breit", 0.8], ["about 2mm", 2], ["crack, 300 mm long, 1 mm wide", 1], ["1/16 inch", 1.59], ["20 cm long", undefined], ["a crack", undefined], ["5 mm above the door", undefined], ["2 m from the door", undefined]])("width: %s", (words, mm) => {
    expect(widthIn(words)).toBe(mm);
  });
  test("what it shows", () => {
    expect(["the crack", "Haarriss", "black glass", "soot in the flue", "my heater", "ein Briss"].map(shows)).toEqual(["crack", "crack", "glass", "soot", null, null]);
  });
});
