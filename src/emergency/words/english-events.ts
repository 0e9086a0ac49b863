import type { PhraseList } from "../senses.ts";

/** Phrases about alarms, smoke, fire, ash, dampers and burns. */
export const ENGLISH_EVENTS: PhraseList = {
  co_alarm: `carbon? monoxide alarm/alarms/detector/detectors/sensor/thing/monitor/warning/box/warner
co/co2 alarm/alarms/detector/detectors/monitor/meter/sensor/thing/thingy/unit/machine/box/reader/warning`,
  alarm: `carbon? monoxide alarm/alarms/detector/detectors/sensor/thing/monitor/warning/box
carbon alarm/detector
co/co2 alarm/alarms/detector/detectors/monitor/meter/sensor/thing/unit/machine/box/reader/warning
smoke/gas/heat/fire alarm/alarms/detector/detectors
gas/co/carbon thing/thingy/gadget/box
thing/thingy/gadget/disc/gizmo on/in the/our ceiling/wall/hall/hallway/landing
box on the/our wall/ceiling
the? white/round/little thing/box/disc`,
  sounding: `has? just? started/starting
going off
goes/went/gone/go off
gone mental/mad/crazy/ballistic/nuts/bananas/bonkers
going/goes/went mental/mad/crazy/ballistic/nuts/bananas/bonkers/wild/berserk
set off
all going
keeps going
is on and/now/at/again
making a/an? racket/noise/din/row/hell/awful?
going/goes/went of
wont/doesnt/cant/will not? stop/shut/quit/be up?/quiet? beeping?
on red
red light on?
four/4 beeps
keeps/kept/started/starts/start beeping/screaming/sounding/ringing/screeching/blaring/going
kicked/kicking off
crying/cried out
in alarm
reads/says/shows/flashing/displays danger/evacuate/gas/co/alarm/high/warning`,
  beeps: `beep beep
beep beep beep
beeep beeep`,
  thing: "wood/log/firewood pile/stack/basket/store/rack/heap",
  wood_place: `wood/log/firewood pile/stack/basket/store/rack/heap
flower bed/bed/pot
wooden/timber floor/steps/table/bench/wall/crate/box/step`,
  co: `carbon/carbone/carbin/carban/corbon monoxide/monoxcide/monoxyde/monixide/monoxid/manoxide/minoxide/dioxide
monoxide gas`,
  roof: `chimney/flue/stack/lum top/pot/cap
top of the/my/our/your? chimney/flue/stack/lum/pot`,
  chimney: `chimney/chimny/flue/stack/chimley/chimmney fire/blaze
chimney breast/stack/pot/top/flue/cap
flue/stack/lum top/pot
top of the/my/our/your? chimney/flue/stack/lum/pot
smoke/stove/flue/vent pipe/stack`,
  chimney_fire: `chimney/chimny/flue/stack/chimley/chimmney fire/blaze
soot/creosote fire
fire has? got/gone/spread/went/is in/into/up/inside my?/the?/our? chimney/flue/stack/lum
fire/flames/blaze in/inside/up my/our/the/their? chimney/flue/chimny/stack/pipe/lum
fire/flames are?/is? up in the chimney/flue
chimney/flue/lum/stack/chimny has?/have? is?/its? on fire
chimney/flue/lum/stack/chimny is?/has? alight/ablaze/burning/caught/lit
chimney/flue/lum/stack has? caught/gone up/fire
lum is? on fire
creosote/soot is?/has? caught/burning/alight/lit/ignited fire?`,
  burning_roof: `roof/loft/attic/rafters is? on/caught fire
roof/loft/attic is? full of? smoke
roof/loft/attic is? alight/burning/smoking/smouldering
fire/flames/smoke in/coming from the? loft/attic/roof`,
  alight: `on fire
caught/cought/catching/catches/cuaght/cauht fire
lit up
in flames
up in flames
gone up in? flames/smoke
went up in? flames/smoke
set/setting fire/alight/light`,
  burn_hurt: `nasty/bad/serious/severe/big/degree burn/burns
got/have/has a burn
kid/child/baby/toddler/son/daughter/boy/girl/he/she burned/burnt/burn
im/am/been/got burned/burnt`,
  beside: `next/close to the/our/my? heater/stove
beside/behind/by/near/around the/our/my? heater/stove`,
  behind: `behind/under/beneath the/our/my? wall/walls/heater/stove/floor/ceiling/skirting/panel/panelling
in/inside the/our/my? wall/walls/floor/ceiling/skirting/panel/panelling`,
  damper_shut: `slide/plate/damper/gate/flue/schieber/pelti/register is?/was?/fully? in/across/home/shut/closed/down
slide/plate/damper/gate/flue is?/was? all? the? way in/shut/closed`,
  under_hearth: `fire/flames on the/our/my floor/carpet/rug/mat/bench
fire/flames outside the? stove/heater
fire/flames/smoke/glow under the? hearth/floor/stove/heater`,
  redhot: `glowing red/orange/cherry/hot/white
turned/gone/went/turning/going bright? red/orange/cherry
bright red/orange
red/white/cherry hot/red/orange
cherry red pipe
glowing like`,
  emerging: "at the top of?",
  over: "at the top of?",
  fireball: "ball of fire/flame",
  bang: `pressure wave
like a gun/gunshot/shot/bomb/cannon/grenade
went up like a bomb`,
  ash_bucket: "ash can/bucket/bin/pail/pan/box/tray/tub/drawer",
  ash: `glowing/hot/red/live stuff/bits/lumps/pieces/contents/remains
ash can/bucket/bin/pail/drawer/pan/box/tray/tub
last night fire
yesterday fire
contents of the? stove/heater/firebox/fire`,
  fled: "run/ran/went/gone/go/got/are/standing/fled/moved/stood outside/outdoors/out",
  blister: "skin is? came/come/comes/coming/peeled/peeling/falling/fell off",
  fire_in: `there is? still? fire/flame/flames
with fire in it?
fire in it
fire/stove/heater lit half/an/ten/five/twenty/just/a/minutes
`,
  get_out: `get everyone out
should/must/shall we/i get out/outside
should/must/shall we/i evacuate
evacuate now
safe to stay/remain
safe to go back
safe to sleep in? here/tonight`,
  brigade: "fire brigade/department/dept/service/engine",
  room: `in here
all over the/my/our room/house/kitchen/place`,
  sounds_like: "sounds/sounding/sound like a/an/the",
  four: "four/4 times/beeps",
  at_me: `at me/us/him/her
in my/his/her face`,
  caught: "went/going/gone up",
  damper_open: "damper/flue/plate/slide/gate is? still? open",
  too_hot: `too hot to touch
burning hot
really/very/so/getting hot`,
  fill: `all over the/my/our room/house/kitchen/place
in every/each room
every/each room
whole/entire house/home/place/room/downstairs/floor
full of/off
filled with/up
filling with/up
cant/cannot/hardly/barely/couldnt/can see
so thick
like a? fog/smokehouse/kipper
wont/doesnt stop
so/too much
a lot of
lots/loads/heaps/tons of
stinging/burning/streaming/watering eyes
eyes are?/is? stinging/burning/streaming/watering/running/sting/burn/water
pouring out/into/from/in/back/through
billowing out/into/from/in/back
rolling out/into/in
black with`,
  smoke_filled: `black/blue/grey/gray/white/thick/dense with smoke/haze/fumes
cant/cannot see my/your/the hand
cant/cannot/hardly/barely see across/anything/each/further
cant/cannot/hardly/barely see in here
like fog in here
like a? thick? fog in here
like a? smokehouse/smokery/kipper
smoke filled
room/house/kitchen/lounge is? all? gray/grey/blue/hazy/foggy/white
smoked us? out
smoking us out
house/room is? smoked/smoky
smoky/smokey as
smoke is? so? bad/heavy/dense/terrible`,
  ash_smoking: `bin/bag/box/bucket/sack/dustbin/trash/can/pail/garbage/compost is?/has?/started? smoking/smouldering/smoldering/hot/warm/melting/melted/glowing/burning/alight/scorched/steaming
bin/bag/box/bucket/sack/dustbin/trash/can/pail/garbage/compost is?/has?/started? to? smoke/smoulder/smolder/melt/burn/glow/steam
smoke/steam/glow coming? from/in the? ash/bin/bag/box/bucket/sack/dustbin/trash/garbage/pail/compost`,
  soft_container: "garbage/trash/rubbish can/bag/bin",
  vacuum: `shop vac/vacuum
vacuum/vac cleaner`,
  wrong_shut: `by mistake
by accident
too/to early/soon/quick/quickly
without thinking
in error`,
  stuck: `stuck/jammed/seized shut/closed
wont/doesnt/cant/will not? open`,
  glow: `fire going
full fire
still some? fire/going/in/lit/alive/burning/on
fire is/was still? going/on/lit/burning/not
fire still going/on/lit/burning
half burned/burnt log/logs
wasnt/isnt/not/werent fully/quite/completely/all/properly/totally/entirely? out/black/dead
a? log/logs burning/alight
bit of? red
some red
fire still in`,
  fell_on: "fell/fallen/stumbled/leaned/leant/tripped/tumbled on/onto/against/into the/our/my?",
  damper_shut_lit: `closed/shut and lit
lit/started it?/the?/a? fire?/heater?/stove? with the damper/slide/flue/plate closed/shut
forgot/forgotten to open the damper/slide/flue/plate/gate
forgot the damper/slide/flue/plate/gate was? closed/shut
damper/slide/flue/plate/gate was?/is? still closed/shut`,
  air: `air slide/inlet/intake/control/damper/flap/vent/gate/shutter/register/slider/supply/wash
the air
primary/secondary air`,
  flew: `flew/flies/blew/burst/popped/sprang/swung/flung/thrown/blown/jumped open
flew/blew/burst off/out/across`,
  whump: `whump whump
whoomp whoomp
woof woof woof
puff puff
huffing and puffing
huffs and puffs
smoke spurts/spurting
chuffing`,
  hot_part: "hot plate/tile/tiles/brick/bricks",
  body: "my/his/her back",
  burn_on: "burn/burns on/to/across/over",
  touched: `put his?/her?/my?/a? hand on/against
picked/picks/picking up`,
};
