/**
 * Every statement on what can hurt somebody that the trade's brief makes (public advice of fire, rescue and health services, standards, and
 * common practice, merged; where they differ the safer one), and where it stands in the product: a file, and words found there. A statement
 * that is left out says why.
 */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";

type Stands = readonly [statement: string, file: string, words: string];
type Absent = readonly [statement: string, absent: null, why: string];

const CARDS = "src/emergency/cards/en.ts";
const CAUTIONS = "knowledge/cautions.yaml";
const OWN = "src/text/surroundings.en.yaml";
const howto = (id: string): string => `knowledge/howtos/${id}.yaml`;
const trouble = (id: string): string => `knowledge/troubles/${id}.yaml`;

const ROWS: readonly (Stands | Absent)[] = [
  // C: what every card has
  ["the emergency number is shown first and by region", "src/emergency/numbers.ts", "112 in Europe and on most mobiles, 911 in North America, 999 in the UK"],
  ["unknown region: several numbers with their regions", "src/emergency/numbers.ts", "several, each with its region, when the country is not given"],
  // C1: carbon monoxide
  ["everyone out to fresh air now", CARDS, "Everyone out to fresh air now: treat this as carbon monoxide."],
  ["wake everyone, pets too", CARDS, "Wake everyone. Get all people and pets out."],
  ["the door left open as you go, no time spent on windows or damper", CARDS, "Leave the door open as you go; stop for nothing else."],
  ["count heads, call from outside, say carbon monoxide", CARDS, "Count heads, then call from outside: say carbon monoxide."],
  ["unconscious: recovery position; not breathing: CPR as the call handler says", CARDS, "Unconscious but breathing: recovery position"],
  ["do not go back in for anyone", CARDS, "Go back in, for anyone or anything: rescuers collapse too."],
  ["stay out until measured and cleared", CARDS, "Stay out until the fire service has measured and cleared the house."],
  ["symptoms, pregnancy, weak heart, infant, old: medical check, say suspected CO", CARDS, "Anyone with symptoms, pregnant, with a weak heart, very young or old: see a doctor even if better"],
  ["no fire until the cause is found; alarm replaced if old", CARDS, "No fire until a sweep or the builder has found the cause and a working alarm, in date, hangs in place."],
  ["never silence and stay, never assume a false alarm", CARDS, "Silence the alarm and stay, or take it for a false alarm."],
  ["never sleep it off, never drive with symptoms", CARDS, "Sleep it off, or drive while you feel unwell."],
  ["never reopen the damper oneself with alarm or symptoms", CARDS, "Reopen the damper yourself when an alarm sounds or anyone feels ill: go out and call."],
  ["symptoms as flu without fever; several people or pets; better outdoors", "src/emergency/words/english-people.ts", "flu without"],
  ["response limits of alarms to EN 50291 and UL 2034: an alarm may stay silent for hours", OWN, "at low levels it may stay silent for hours"],
  ["symptoms beat the alarm", OWN, "count more than a quiet alarm"],
  ["a reading of 30 ppm or more in use is danger now", "src/emergency/readings.ts", "const ALARMING_PPM = 30;"],
  ["exposure guidance of WHO in mg/m3", null, "An owner has an alarm, not a meter of milligrams: any reading is answered by going out, and a table of permitted doses could be read as leave to stay."],
  ["effects by level from 200 to 12,800 ppm", null, "The order to get out stands at every level; a table of hours until unconsciousness could be read as time left."],
  ["four beeps and a pause: alarm; one chirp a minute: battery or end of life", OWN, "Four beeps and a pause - alarm. One chirp a minute - battery or end of life."],
  ["placement: room of the heater, one to three metres, ceiling or high wall; bedrooms at breathing height; leaflet first", OWN, "one to three metres from it"],
  ["not in draught, over the door, near cooking steam or in a dead corner", OWN, "Not over the door, in a draught, by the cooker or in a dead corner."],
  ["test monthly; follow the printed end date", OWN, "Test once a month"],
  ["the alarm is needed in ventilated houses too", CAUTIONS, "a working CO alarm stands in the heater's room and by the bedrooms"],
  ["a low-level monitor is no substitute", null, "Gleed asks for an alarm to a standard and knows no other device, so none can stand in its place."],
  // C2: chimney fire
  ["signs: roar as a train, sparks, glow", CAUTIONS, "A roar like a train, sparks from the top or a glowing flue is a chimney fire."],
  ["call first, even if it seems to fade", CARDS, "Call the fire service, even if it seems to fade."],
  ["all out, meet the crew", CARDS, "Wait outside, watch the roof, meet the crew."],
  ["only in seconds: door and air shut, damper left as it is", CARDS, "Only if safe and done in seconds: shut the heater's door and air inlets. Leave the flue damper as it is."],
  ["move furniture from the chimney breast, feel the wall in other rooms", null, "It sends people through the house while it may burn in the walls; the crew does it. The card has them outside."],
  ["never water: the steam can burst the flue", CARDS, "Pour water into the heater or the chimney: the steam can burst it."],
  ["never open fire door or cleanouts", CARDS, "Open the fire door or a cleanout."],
  ["never roof, loft, or back in", CARDS, "Climb on the roof, go into the loft, or go back in."],
  ["never let it burn itself clean; no salt, soda, wet paper", CARDS, "Let it burn itself clean, or try salt, soda or wet paper."],
  ["gentle water on an open fire (one page)", null, "Not for closed heaters; no answer advises water."],
  ["afterwards no use until the whole flue is inspected, inside and out", CARDS, "No fire until a sweep has inspected the whole flue, inside and out."],
  ["loft and walls smoulder for hours: call again at any smell", CARDS, "walls and loft can smoulder for hours. Call again at any smell or warmth."],
  // C3: hot ash
  ["live for days; metal bin with a tight lid, outdoors, three metres, four days", CAUTIONS, "Metal bin with a tight lid, outdoors, three metres from anything that burns, at least four days"],
  ["seven days in doubt", howto("ash-removal"), "Four days at least before you touch it again, seven in doubt."],
  ["not on deck, in cardboard, plastic, bin or compost", howto("ash-removal"), "Cardboard, plastic, paper bags, dustbin, compost or leaves."],
  ["damp before dumping; no water on hot ash close by", howto("ash-removal"), "no water on hot ash"],
  ["never vacuum", howto("ash-removal"), "A household vacuum cleaner, ever."],
  ["children, pets, wind", howto("ash-removal"), "In wind, or where children and pets reach it."],
  ["the bucket gives off carbon monoxide: never indoors", CARDS, "Bring the bucket indoors or into a garage: ash gives off carbon monoxide."],
  // C4, C5: surfaces, children, pets, birds
  ["door 150 to 300 °C, glass hotter", howto("children-and-clearance"), "Door 150 to 300 °C, glass up to 350 °C - a touch burns."],
  ["60 °C as the most where toddlers and old people reach (ISO 13732-1)", howto("children-and-clearance"), "take 60 °C as the most where toddlers and old people reach"],
  ["over 43 °C nobody sleeps against it; padding is no safety", howto("children-and-clearance"), "through a cushion too"],
  ["fixed screen; towels never hung on it", howto("children-and-clearance"), "A guard fixed to the wall before the door"],
  ["leather gloves", howto("reload"), "Glove on, face away."],
  ["a metre kept clear, matches locked away, no toys, teach hot", howto("children-and-clearance"), "matches and tongs locked away, no toys on the bench. Teach the word hot early."],
  ["birds out of the room for first fires", howto("children-and-clearance"), "Birds and infants out of the room for a new heater's first fires"],
  // C6: clearance
  ["a metre before, beside and above the door; data plate and local code decide", howto("children-and-clearance"), "The heater's data plate and your local code may ask for more; they decide."],
  ["floor plate of half a metre by 70 cm", howto("children-and-clearance"), "at least half a metre deep and 70 cm wide"],
  ["IRC, IBC, ASTM, AS/NZS distances in millimetres", null, "Distances to walls are the code's and the data plate's of each country; naming one would be taken for the rule of another. The answer defers to them."],
  ["never dry clothes or firewood on or near it", howto("children-and-clearance"), "No laundry, towels or firewood on the heater or within a metre."],
  ["wood kept hot for months catches fire sooner", CAUTIONS, "Wood kept hot for months can catch fire"],
  // C7: asbestos, silica, fibres
  ["old seals and boards may hold asbestos: hands off, have them tested", CAUTIONS, "Do not pull, scrape, cut or vacuum them; have them tested"],
  ["never a procedure for removing it oneself", trouble("door-leak"), "hands off, have it tested for asbestos first"],
  ["silica and ash dust: masked, damp, no dry sweeping", CAUTIONS, "Ash and mortar dust harm lungs. Work cold, damp and masked"],
  // C8: burns
  ["cool running water for 20 minutes, useful for three hours", howto("children-and-clearance"), "it helps up to three hours later"],
  ["rings and loose clothes off, warm, film laid on, no ice, butter, cream", CARDS, "Ice, butter, cream or powder."],
  ["who is seen by a doctor: child, face, hand, joint, large, deep, blistered", CARDS, "A child, face, hand, joint, large, deep or blistered: call for help."],
  ["smoke breathed in: emergency number", CARDS, "Breathed in smoke or hot gas, hoarse or coughing: call the emergency number."],
  // C9: what may not be burnt, and liquids
  ["no liquids; they flash on a warm bed", CAUTIONS, "Never petrol, spirit or any liquid firelighter, least of all on a warm bed - it flashes."],
  ["no painted, treated or glued wood, no driftwood, no plastic", CAUTIONS, "Never rubbish, plastic, painted, treated or glued wood, driftwood"],
  ["no coal or loose pellets unless the builder's sheet names them", howto("what-to-burn"), "Coal, coke or loose pellets, unless the builder's sheet names them."],
  // C10: back-puff, blocked flue, over-firing, door
  ["back-puff: clear of the door, do not open it, air slowly to full", CARDS, "Standing aside, open the air slowly, over a minute, to full."],
  ["a flue that may be blocked: no fire until the sweep looked", CAUTIONS, "No fire until the sweep has looked through it."],
  ["over-firing: no more wood, ash door shut, never the damper on a fire", CAUTIONS, "No more wood, ash door shut, stay with it, never close the flue damper on a fire."],
  ["the door opened a crack, ten seconds, slowly", CAUTIONS, "then a crack of a centimetre, wait ten seconds, then slowly, face away"],
  // C11: roof
  ["no owner on the roof: binoculars; the sweep has fall protection", CAUTIONS, "Nobody climbs the roof for this. Look from the ground with binoculars; the sweep has fall protection."],
  ["rules for ladders", null, "No answer sends anybody up, so none tells how to stand a ladder."],
  // C12: power
  ["generator outdoors, six metres from openings", howto("power-cut"), "A generator runs six metres from every door and window."],
  ["flue fan or motor damper: no fire unless proven open by hand", CAUTIONS, "No fire if the flue relies on a fan or a motor damper that you cannot prove open by hand"],
  // C13: tight houses
  ["hood, dryer, extractors off from the draught test to the black bed", CAUTIONS, "A hood, dryer or extractor can pull the flue gas into the room. All of them off from the draught test until the bed is black."],
  ["ventilation in frost mode may unbalance the house", OWN, "In hard frost its frost protection may stop the supply air"],
  ["asked, remembered, said at each lighting", OWN, "Your kitchen hood blows outdoors and nothing stops it while a fire burns"],
  ["new windows or fans since the last test: test again", OWN, "New windows, a new fan, a renovation - test again"],
  // C14: who goes first
  ["nobody is declared safe from a chat; sweep, builder, authority decide", CAUTIONS, "Nobody can declare a heater, flue or alarm safe from a chat."],
  ["smoke control and burn bans are obeyed", OWN, "I do not look up bans by myself. Your local authority or fire service knows."],
  ["sweeping intervals by law: the authority is asked", "knowledge/sweep-law.yaml", "authority"],
  // the one that stands over all
  ["no damper closed over flame or glow: bed raked, black in the dark, alarm working; in doubt open till morning", CAUTIONS, "A flue damper stays open until the raked bed is black in a dark room"],
  ["the air at the door: ten minutes without any flame", CAUTIONS, "Shut the air only when no flame of any colour has shown for ten minutes."],
];

const files = new Map<string, string>();
/** Line breaks, indents and joints of strings are no part of the words. */
function wordsOf(file: string): string {
  const known = files.get(file) ?? readFileSync(new URL(`../../${file}`, import.meta.url), "utf8").replace(/"\s*\+\s*"/g, "").replace(/\s+/g, " ");
  files.set(file, known);
  return known;
}

test.each(ROWS.filter((row): row is Stands => row[1] !== null))("%s", (_, file, words) => {
  expect(wordsOf(file)).toContain(words);
});

test("what is left out says why, and it is little", () => {
  const absent = ROWS.filter((row): row is Absent => row[1] === null);
  for (const [statement, , why] of absent) expect(why.length, statement).toBeGreaterThan(40);
  expect(absent.length / ROWS.length).toBeLessThan(0.12);
});
