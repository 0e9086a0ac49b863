import type { Language } from "../card.ts";

/**
 * Orders as in the handbook: out before calling for gas; the call before anything else for a chimney fire; the flue before the air
 * for a damper shut over embers. Merged from fire services' public advice; where they differ, the safer one stands.
 */
export const ENGLISH: Language = {
  words: {
    call: "Emergency number:",
    never: "Never:",
    afterwards: "Afterwards:",
    fire: "fire",
    ambulance: "ambulance",
    several: "112 in Europe and on most mobiles, 911 in North America, 999 in the UK, 000 in Australia, 111 in New Zealand",
  },
  cards: {
    "co-alarm": {
      headline: "Everyone out to fresh air now: treat this as carbon monoxide.",
      now: [
        "Wake everyone. Get all people and pets out.",
        "Leave the door open as you go; stop for nothing else.",
        "Count heads, then call from outside: say carbon monoxide.",
        "Stay out until the fire service has measured and cleared the house.",
      ],
      brief: "Alarm or anyone ill: everyone out, call from outside.",
      never: [
        "Go back in, for anyone or anything: rescuers collapse too.",
        "Silence the alarm and stay, or take it for a false alarm.",
        "Spend time on windows, the damper or the fire.",
        "Sleep it off, or drive while you feel unwell.",
      ],
      afterwards: [
        "Unconscious but breathing: recovery position, in fresh air. Not breathing: CPR as the call handler tells you.",
        "Anyone with symptoms, pregnant, with a weak heart, very young or old: see a doctor even if better, and say suspected carbon "
          + "monoxide.",
        "No fire until a sweep or the builder has found the cause and a working alarm, in date, hangs in place.",
      ],
      question:
        "Once you are outside: is anyone dizzy, headachy, sick or unusually sleepy, or is the alarm sounding in fours or without a stop? "
        + "Any yes, or any doubt: call. If it was only one chirp a minute and nobody feels unwell, it is most likely the battery or the"
        + " end "
        + "of the alarm's life: no fire until a new one hangs.",
      cautions: ["carbon-monoxide"],
    },
    "chimney-fire": {
      headline: "Call the fire service now and get everyone out: treat this as a chimney fire.",
      now: [
        "Call the fire service, even if it seems to fade.",
        "Get all people and pets out.",
        "Only if safe and done in seconds: shut the heater's door and air inlets. Leave the flue damper as it is.",
        "Wait outside, watch the roof, meet the crew.",
      ],
      brief: "Roar, sparks or flames at the chimney: call, out.",
      never: [
        "Pour water into the heater or the chimney: the steam can burst it.",
        "Open the fire door or a cleanout.",
        "Climb on the roof, go into the loft, or go back in.",
        "Let it burn itself clean, or try salt, soda or wet paper.",
      ],
      afterwards: [
        "Tell the crew which rooms the chimney passes; walls and loft can smoulder for hours. Call again at any smell or warmth.",
        "No fire until a sweep has inspected the whole flue, inside and out.",
      ],
      question:
        "From outside: do you see sparks, flames or glowing at the chimney top, or hear it roar like a train? "
        + "Any yes, or any doubt: the fire service decides, not you.",
      cautions: ["chimney-fire", "carbon-monoxide"],
    },
    "house-fire": {
      headline: "Everyone out now and call the fire service: something outside the heater is burning.",
      now: [
        "Get all people and pets out; stay low under smoke.",
        "Pull room doors shut behind you if it costs no time.",
        "Call the fire service from outside.",
        "Stay out, whatever is left inside.",
      ],
      brief: "Something burning outside the heater: everyone out, call.",
      never: [
        "Go back in.",
        "Open a hot door.",
        "Fight it when it is more than a spark you can cover, or with the way out behind the fire.",
      ],
      afterwards: [
        "Clothes on fire: stop, drop, roll. Burns: cool running water for 20 minutes.",
        "A scorched floor, wall or roof can smoulder for hours: have the fire service look, even if it seems out.",
      ],
      question: "From outside: what is burning or smoking, and is it still? Any doubt: call.",
      cautions: ["fire-outside-the-heater", "carbon-monoxide"],
    },
    "room-smoke": {
      headline: "Everyone out of the smoke now, into fresh air.",
      now: [
        "Get all people and pets out; stay low.",
        "Only if it costs no time: window open, hood and fans off.",
        "Leave the flue open and the heater's door shut; no more wood.",
        "It fills the room, goes on, or anyone feels ill: call from outside.",
      ],
      brief: "Room full of smoke: everyone out, stay low.",
      never: [
        "Move the flue damper towards shut: the smoke and the gas would have nowhere to go but the room.",
        "Go back into the smoke.",
        "Open the fire door, add wood or pour water.",
      ],
      afterwards: [
        "Coughing, short of breath, headachy or sick from it: see a doctor and say smoke and suspected carbon monoxide.",
        "No fire until a sweep or the builder has found where it came from.",
      ],
      question:
        "From fresh air: is the smoke still coming, and is anyone dizzy, headachy, sick or sleepy, or an alarm sounding? Any yes: "
        + "call.",
      cautions: ["carbon-monoxide", "smoke"],
    },
    "hot-ash": {
      headline: "Treat that ash as alight: away from anything that burns, now.",
      now: [
        "Smoke, flame or melting: everyone out, call the fire service from outside.",
        "If not: gloved, shovel it into a metal bucket with a tight metal lid.",
        "Set it outdoors on stone or bare earth, 3 m from house, wood and fence.",
      ],
      brief: "Hot ash: metal bucket, lid, outdoors, 3 m clear.",
      never: [
        "Leave it in paper, cardboard, plastic, a rubbish bin, or on a wooden deck or porch.",
        "Bring the bucket indoors or into a garage: ash gives off carbon monoxide.",
        "Vacuum it, or pour water on hot ash from close by: the steam scalds.",
      ],
      afterwards: [
        "Look at the place it stood, and under it, again after an hour and before bed: wood smoulders unseen. Any smell or smoke: call.",
        "Ash stays live for days: wait at least 4 days, 7 if in doubt, before it goes anywhere else. Keep children and pets away.",
      ],
      question: "When was the last fire, and what is the ash lying in or on now? Less than 4 days ago: it is hot, whatever it looks like.",
      cautions: ["hot-ash", "carbon-monoxide"],
    },
    burn: {
      headline: "Cool the burn under cool running water now, for 20 minutes.",
      now: [
        "Away from the heat. Clothes alight: stop, drop, roll.",
        "Cool running water over the burn, 20 minutes.",
        "Rings and loose clothing off; leave what sticks. Keep the person warm.",
        "A child, face, hand, joint, large, deep or blistered: call for help.",
      ],
      brief: "Burns: cool running water, 20 minutes.",
      never: [
        "Ice, butter, cream or powder.",
        "Break blisters, or pull off what sticks to the skin.",
        "Rub an eye: rinse it and have it seen at once.",
      ],
      afterwards: [
        "Cover loosely with cling film or a clean cloth.",
        "Breathed in smoke or hot gas, hoarse or coughing: call the emergency number.",
      ],
      question: "Is it a child, the face, a hand or joint, larger than a palm, deep or blistered? Any yes: get medical help now.",
      cautions: ["burns"],
    },
    "damper-over-embers": {
      headline: "Everyone out of that room now: a flue shut over embers lets carbon monoxide in.",
      now: [
        "Alarm sounding or anyone ill: everyone out of the house, call from outside, touch nothing.",
        "Otherwise everyone out of the room; window open.",
        "Open the flue damper first, fully. Wait two minutes, then open the air.",
        "Do not open the fire door.",
      ],
      brief: "Flue shut over embers: gas; keep everyone out of it.",
      never: [
        "Go to bed or stay in the room with the flue shut over flame, glow or warm embers.",
        "Open the fire door: gas collected inside can flash.",
        "Reopen the damper yourself when an alarm sounds or anyone feels ill: go out and call.",
      ],
      afterwards: [
        "Leave the flue open till morning; the heat lost is small.",
        "Headache, dizziness, sickness or sleepiness later tonight: everyone out and call.",
        "If it will not move: no force. Everyone out and call the fire service.",
      ],
      question: "Is anyone dizzy, headachy, sick or unusually sleepy, or is an alarm sounding? Any yes: out of the house and call.",
      cautions: ["carbon-monoxide", "close-down"],
    },
    "back-puff": {
      headline: "Stand clear of the heater now: a second puff is usual.",
      now: [
        "Everyone clear of the heater's door. Do not open it.",
        "Standing aside, open the air slowly, over a minute, to full.",
        "Anyone burned: cool running water, 20 minutes.",
        "Smoke filling the room, anything alight, an alarm or anyone ill: everyone out, call.",
      ],
      brief: "Keep clear of the heater's door; leave it shut.",
      never: [
        "Open the fire door, look in from the front, or add wood.",
        "Cut the air to calm it: starved fire makes the gas that goes off.",
        "Pour water into the heater.",
      ],
      afterwards: [
        "When it is cold: look at door, latch, glass, cleanout lids, joints and flue for anything moved or streaked with soot.",
        "If anything moved or broke, no fire until a sweep or the builder has looked.",
      ],
      question: "Is anyone hurt, is anything alight outside the heater, and did the door, glass or a lid move?",
      cautions: ["back-puff", "carbon-monoxide"],
    },
  },
  cautions: {
    "carbon-monoxide": "Carbon monoxide has no smell and kills while you sleep. Symptoms count even when the alarm is quiet.",
    "chimney-fire": "A chimney fire can break into the house through cracks you cannot see: the fire service decides when it is out.",
    "fire-outside-the-heater": "A small fire fills a house with deadly smoke in minutes.",
    smoke: "Wood smoke indoors carries carbon monoxide: a few breaths of thick smoke can make you collapse.",
    "hot-ash": "Ash and charcoal stay live for days under a grey skin.",
    burns: "Your local emergency medical advice comes before this card.",
    "close-down": "The flue stays open until the bed, raked and seen in the dark, is black and a working carbon monoxide alarm hangs.",
    "back-puff": "Unburnt gas in a starved fire can explode when it gets air.",
  },
};
