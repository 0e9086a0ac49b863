import type { PhraseList } from "../senses.ts";

/** Phrases of what is only said, played, written, asked of the world or long past. */
export const ENGLISH_TOLD: PhraseList = {
  joke: `lets/let say/play/pretend/imagine
pretend/pretending
role play
translation please
how do/would you say
lyrics
crossword
quiz question/night
homework explain
writing/write a/an/my? story/book/novel/leaflet/note/sign/poster/guide/article/about
writing about
drafting a sign/note/leaflet
whats/what is? your answer/reply
what would you say/answer/tell/reply
what do you say/answer/reply
how do/would you react/respond
who sang
checking that/whether/how you/the/bot
trying out what/how
testing you/this
only a test
explain to/why/what`,
  history: `in/during the war
when we/i were/was students/young/little/small/kids
during our/my/the holiday/holidays
last tenants/tenant/owners/owner
before we/i had/bought/moved
in january/february/march/april/june/july/august/september/october/november/december
in the fifties/sixties/seventies/eighties/nineties/50s/60s/70s/80s/90s
from the? office/work/screen/screens/chopping/splitting/carrying/stacking/kneeling/shovelling/spinning/axe/maul/laughing/blowing/onions
after stacking/splitting/chopping/skiing/shovelling/hiking
on the news`,
  hypothetical: `has/have anyone/anybody
who had
in theory
how hot/fast/quickly must/does/do/is/are/could
what colour/color
what does/do a/an/the/my
is/isnt it true
is/are that/this/they true
i heard wet/that/of
do/can/could canaries/birds/cats/dogs/heaters/stoves/people
first aid
which burn/cream
good/bad for migraine/headaches/babies/dogs/asthma`,
  idle: `cant/cannot/doesnt/wont/not/isnt hold/holding the? heat/warmth/temperature/us
it gone/goes/went cold
wake/woke/woken up? shivering/freezing/cold
can/do/should/may/could/must/much i/we burn
flames/flame/fire out at/by/since/after
during/in a blackout`,
  damper: `damper/slide/plate/flap/lever/valve/gate/shutter is? wont/doesnt/isnt/not/cant move/moving/moves
cant/cannot/couldnt/wont/doesnt move the/my/our? damper/slide/plate/flap/lever/valve/gate/shutter`,
  stuck: `damper/slide/plate/flap/lever/valve/gate/shutter is? wont/doesnt/isnt/not/cant move/moving/moves
cant/cannot/couldnt/wont/doesnt move the/my/our? damper/slide/plate/flap/lever/valve/gate/shutter`,
  windy: `in the/a wind/winds/storm/storms/gale/gales/gusts
in strong/high winds/wind
when/whenever it windy/blows
during storms/gales`,
  away: "out the/of? lum",
  litter: `twigs
wool
straw
mud
moss
feathers
leaves
brick
nest
log
logs`,
  metal: "metal/steel/iron/zinc/galvanised/galvanized/lidded bucket/bin/pail/can/drum/tin/box/container",
};
