/**
 * What Gleed can be asked about: one id for each topic, the group it belongs to and the words that tell a reader what it is.
 * The ids are part of the outside interface and never change meaning. `careful` marks the topics that can touch a hazard
 * whatever the wording: routing gives them the benefit of the doubt.
 */

export type TopicGroup = "trouble" | "how-to" | "reckoning" | "upkeep" | "records" | "group" | "other";

interface TopicFacts {
  readonly group: TopicGroup;
  /** Completes "Is it about ...?" */
  readonly about: string;
  readonly careful?: true;
}

const FACTS = {
  "smoke-at-lighting": { group: "trouble", about: "smoke coming into the room while lighting", careful: true },
  "smoke-on-opening": { group: "trouble", about: "smoke rolling out when the door is opened", careful: true },
  "smoke-mid-burn": { group: "trouble", about: "smoke in the room while the fire burns with the door shut", careful: true },
  "black-glass": { group: "trouble", about: "door glass going black", },
  "hazy-glass": { group: "trouble", about: "a white or cloudy film on the glass" },
  "slow-ignition": { group: "trouble", about: "logs that are slow to catch" },
  "fire-dies": { group: "trouble", about: "a fire that goes out too early" },
  "over-firing": { group: "trouble", about: "a fire that roars or burns too hot", careful: true },
  "cold-morning": { group: "trouble", about: "a heater that is cold by morning" },
  "hot-surface": { group: "trouble", about: "a heater face, or something near it, that is too hot", careful: true },
  "room-too-warm": { group: "trouble", about: "a room that gets too warm" },
  "uneven-heat": { group: "trouble", about: "one side warm and the other cold" },
  "cracks": { group: "trouble", about: "cracks in the heater" },
  "co-alarm": { group: "trouble", about: "a carbon monoxide alarm, or people feeling ill", careful: true },
  "chimney-fire": { group: "trouble", about: "a fire in the chimney", careful: true },
  "heavy-soot": { group: "trouble", about: "a lot of soot or tar", careful: true },
  "damp-flue": { group: "trouble", about: "damp, drips or tar stains at the flue" },
  "cold-smell": { group: "trouble", about: "a smell or cold air from the unlit heater" },
  "back-puff": { group: "trouble", about: "a bang or puff from the firebox", careful: true },
  "charcoal-left": { group: "trouble", about: "unburnt charcoal after the fire" },
  "door-leak": { group: "trouble", about: "a door, seal or latch that leaks" },
  "stuck-damper": { group: "trouble", about: "a damper that is stuck or broken", careful: true },
  "nest-in-flue": { group: "trouble", about: "a nest or something else blocking the flue", careful: true },
  "high-wood-use": { group: "trouble", about: "using too much wood" },
  "visible-smoke": { group: "trouble", about: "smoke from the chimney top" },
  "noise": { group: "trouble", about: "noises from the heater" },
  "first-fire-smell": { group: "trouble", about: "a smell at the first fires" },
  "oven-trouble": { group: "trouble", about: "trouble with the oven" },
  "light-fire": { group: "how-to", about: "lighting a fire" },
  "close-down": { group: "how-to", about: "closing the air and the damper after a fire", careful: true },
  "first-fires": { group: "how-to", about: "the first fires in a new or long unused heater" },
  "deep-cold": { group: "how-to", about: "firing in very cold weather", careful: true },
  "mild-weather": { group: "how-to", about: "firing in mild weather" },
  "reload": { group: "how-to", about: "adding wood during a fire", careful: true },
  "ash-removal": { group: "how-to", about: "taking out ash safely", careful: true },
  "use-oven": { group: "how-to", about: "baking and cooking in the oven" },
  "what-to-burn": { group: "how-to", about: "what may be burnt", careful: true },
  "clean-glass": { group: "how-to", about: "cleaning the glass" },
  "power-cut": { group: "how-to", about: "heating during a power cut", careful: true },
  "children-and-clearance": { group: "how-to", about: "children, burns, and keeping things clear of the heater", careful: true },
  "load-size": { group: "reckoning", about: "how much wood goes in one load" },
  "wood-dryness": { group: "reckoning", about: "whether the wood is dry enough" },
  "meter-reading": { group: "reckoning", about: "reading a moisture meter" },
  "fuel-energy": { group: "reckoning", about: "how much heat is in the wood" },
  "wood-volume": { group: "reckoning", about: "measuring, converting or buying wood" },
  "wood-stock": { group: "reckoning", about: "how long the wood will last" },
  "seasoning": { group: "reckoning", about: "how long wood takes to dry" },
  "heat-curve": { group: "reckoning", about: "when the heater is warmest and how long it stays warm" },
  "fire-plan": { group: "reckoning", about: "when and how much to fire for the weather" },
  "draught": { group: "reckoning", about: "how strong the chimney's draught is" },
  "upkeep-list": { group: "upkeep", about: "what upkeep is due in the year" },
  "sweep-due": { group: "upkeep", about: "when the chimney needs the sweep" },
  "reminder-set": { group: "upkeep", about: "setting a reminder" },
  "reminder-list": { group: "upkeep", about: "seeing your reminders" },
  "reminder-done": { group: "upkeep", about: "ticking off or putting off a reminder" },
  "log-fire": { group: "records", about: "writing down a fire" },
  "show-fires": { group: "records", about: "seeing the fires you wrote down" },
  "set-heater": { group: "records", about: "the facts of your heater" },
  "set-house": { group: "records", about: "the facts of your house" },
  "set-units": { group: "records", about: "kilograms or pounds, Celsius or Fahrenheit" },
  "woodpile": { group: "records", about: "the wood you have noted down" },
  "share-result": { group: "group", about: "sharing results with the group" },
  "help": { group: "other", about: "what Gleed can do" },
  "my-data": { group: "other", about: "what is kept about you" },
  "out-of-scope": { group: "other", about: "something else" },
} as const satisfies Record<string, TopicFacts>;

/**
 * The topics the router was trained for. A trouble that comes in as a file of knowledge/ with an id of its own passes for one of them from
 * knowledge/load.ts on; whatever asks for facts of it gets those of a trouble.
 */
export type TopicId = keyof typeof FACTS;

export const TOPICS = Object.keys(FACTS) as readonly TopicId[];

export const isTopic = (id: string): id is TopicId => Object.hasOwn(FACTS, id);

export const topicFacts = (id: TopicId): TopicFacts => (isTopic(id) ? FACTS[id] : { group: "trouble", about: id });
