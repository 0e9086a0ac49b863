/** Words that mean the same in answers about a heater, by their stems, so that an answer's words are met in another's. */
const GROUPS: readonly string[] = [
  "uneven lopsided patchy unequal", "lukewarm tepid", "stuck jammed seized wedged", "scrape grind grate crunch rasp", "tar creosote pitch", "chirp cheep tweet peep",
  "flutter flap", "bang boom whump whoomph thud", "rattle clatter clank clink", "stink reek pong smell odour odor whiff", "musty mouldy moldy fusty",
  "render plaster stucco", "weak feeble faint", "fast quick rapid swift", "gradual slow creeping", "storm gale hurricane", "rain downpour drizzle", "fog mist foggy misty",
  "board plank chipboard plywood mdf osb pallet offcut", "paint varnish lacquer", "sloppy slack wobbly loose", "lean tilt", "frayed worn tattered", "sag droop drop", "black blackened", "brown browned",
  "flake flaky crumb", "sticky gooey tacky", "shiny glossy", "hole gap slit", "guest visitor party", "sofa couch settee", "cupboard wardrobe dresser", "noise sound", "wind windy gust gusty blustery squall", "roar thunder rumble", "buzz drone hum", "seller sold dealer vendor salesman",
  "calm still windless", "twig stick straw", "jackdaw crow starling", "vapour steam", "sour acrid sharp pungent", "baby young chick", "crammed stuffed packed", "whole entire", "glow ember coal", "handle lever knob",
];

/** Stem to the one that stands for its group. */
export const synonyms = (stemOf: (word: string) => string): ReadonlyMap<string, string> =>
  new Map(GROUPS.flatMap((group) => {
    const stems = group.split(" ").map(stemOf);
    return stems.map((one) => [one, stems[0] as string] as const);
  }));
