import type { PhraseList } from "../senses.ts";

/** Phrases of several words, one a line. The senses of a phrase replace those of the words in it. */
export const ENGLISH_PHRASES: PhraseList = {
  many: `all of us
us all
we all
both of us
all/the two/three/four/five/six of us/them?
two/three/four/half/most/some of us/them
all two/three/four/five/six of us
the? whole family
the? whole household
wife and i
husband and i
my wife and me
half the family`,
  pet: "guinea pig/pigs",
  ill: `passed/passing/passes/pass out
blacked/blacking/blacks/black out
threw/throw/throwing/throws/thrown up
chucked/chucking up
being/been/be sick
like we/i/they/hes/shes/he/she? have/has/had/got a? hangover/flu/hangovers
hardly/barely/struggle/struggling to? breathe
nobody/noone/none of? us? here? is? feel/feels/feeling well/right/good/great
no one here? feels well/right/good
light headed
head/heads is?/are?/keeps? hurt/hurts/hurting/aches/aching/ache/pounding/throbbing/splitting/banging/spinning/swimming/thumping/killing/pounds/throbs/spins/swims/sore
head is like? cotton
head feels/feel/felt heavy/fuzzy/thick/funny/foggy/light/woolly/weird/stuffed/full
banging/splitting/pounding/thumping/raging/bad/sore/thick/heavy/fuzzy/throbbing/killer head/heads
head/skull/brain/temples/head feels? is?/are? about to explode/burst/split
head/skull/brain/temples is?/are? exploding/bursting/buzzing/throb/throbbing/pounding/bursting/fuzzy/heavy
breathing fast/heavily/funny/strangely/weird/shallow/hard
heads are? splitting
head ache/aches/ake
hed ake/ache
room is?/was? spinning
everything is? spinning
seeing double/stars/spots
blurry/blurred/double vision
vision is? blurry/blurred/going
cant think straight
cant/cannot/can't stand up
cant/cannot stay awake
cant keep his?/her?/my?/their?/our? eyes open
cannot keep his?/her?/my?/their?/our? eyes open
wont/doesnt/isnt/not/cant/hardly wake/waking/rouse/wakes up?
cant/cannot/couldnt/not seem/manage to wake/rouse/waken/get
cant/cannot/couldnt/not wake/rouse her/him/them/anyone/mum/mom/dad/up up?
cant/cannot wake my/the one?
hard to wake
wont/doesnt get/stand up
not/isnt responding
isnt/not/hardly breathing properly?
cant/cannot/couldnt/hard to? breathe/breath
short of breath
trouble/difficulty/struggling to? breathing/breathe
tight chest
chest is? tight/hurts/pain/pains
chest pain/pains/tightness
heart is? racing/pounding
legs like/are/feel/gave/went/turned to? jelly/way/weak/rubber
legs gave way
weak at/in the knees/legs
cherry red
bright pink/red cheeks/lips/face/skin
pink cheeks
lips are? blue/cherry
carbon monoxide poisoning
co poisoning
co2 poisoning
monoxide poisoning
feels/feel/feeling/felt like a? flu/hangover
like a hangover
like we/i are?/am? hungover/drunk/pissed
flu without
flu like
flulike symptoms
going to faint/collapse/vomit/puke
about to faint/collapse/vomit/puke/pass
feel/feels/feeling/felt faint
nodding/nodded/nods/drifting off
drunk without
out cold
about to pass out
coming over queer/faint/dizzy
come over all? queer/faint/dizzy
ears are? ringing
cant see straight
slurring his?/her? words/speech
talking nonsense/gibberish/rubbish
making no sense
tunnel vision`,
  felled: `wont/doesnt/cant/not/isnt get/getting off/up/out
like ghosts/zombies/death
like a ghost/zombie/corpse
as if drunk
out of sorts
worse for wear
not myself
wont/doesnt/not/isnt/cant/stopped/hardly move/moving/answer/answering/respond/responding/talk/talking/eat/eating/stand/focus
found/lying/lies/passed/fell/is on the floor
on his/her/its side
lying/lies on his/her/its/the floor/side/back
like im/ive/i been? floating/drinking/drunk/underwater/drugged/dreaming
like i am? floating
eyes cant focus
like i have been drinking
fell/fallen/falling/falls/dropped/toppled off/from its?/his?/her?/the? perch
off its/his/her/the perch
lying/lies/laying flat/still/motionless/down
on the bottom of the? cage
bottom of the? cage
bottom of its cage
acting/acts/behaving/behaves/walking/talking/looks/looking so?/really?/very?/all? weird/strange/funny/strangely/odd/oddly/drunk/weirdly/confused
seems/seem drunk/confused/weird/spaced/odd
not himself/herself/themselves/itself
not right
keeps/keep falling/stumbling/bumping/dropping over?
fell/keeled/falling/falls over
falling about
cant walk
out of it
just lies/lying/lays there
dropped dead`,
  dead: `is/are/was/were/found/lying/lies/lay/dropped/both/all dead
died/dead in/on the/its/his/her cage/perch/bed/bowl`,
  unwell: `feel/feels/feeling/felt so?/really?/very?/a? bit? sick/ill/unwell/poorly/off/funny/strange/rough/bad/awful/weird/odd/horrible/crap/terrible/lousy/queer/shaky/crook/dreadful/dead/drunk/shocking/ropey/grotty
dont/doesnt/didnt/not/isnt feel/feeling/felt too/so/very/at? all? well/good/right/great/flash
dont feel well/good/right
not well
under the weather
off colour/color
white as a sheet
gone/went/turned/looks/look/turning white/grey/green/pale`,
  sleepy: `falling/fell/fall/fallen/dropping/drop asleep
keeps falling asleep
wants/want to sleep
cant stop yawning
so/very/really/weirdly/strangely tired/sleepy/weak
dead tired`,
  better_out: `goes/go/going/went/clears/cleared/clear/gone/stops/stopped/fades/better/fine/ok/okay/disappears/eases/lifts/improves/vanishes/passes away? when/once/if/as/soon/outside/outdoors/out/in we/i/they/he/she/the? go/goes/step/are/am/get/leave/leaves/went/fresh/garden/air outside?/out?/outdoors?/air?
better/fine/ok/okay/gone/clears/clear/goes/go/disappears/stops away? outside/outdoors
better out of doors
better in the fresh? air/garden
feel/feels/feeling better/fine/ok when? we/i/they? go? out/outside/outdoors
only at home
only in this/the house/room
only indoors/inside/when
as soon as we/i/they leave/go/step out?
until we/i/they went/go/step/leave outside/out
fresh air helps/helped/fixes`,
  co_alarm: `carbon? monoxide alarm/alarms/detector/detectors/sensor/thing/monitor/warning/box/warner
co/co2 alarm/alarms/detector/detectors/monitor/meter/sensor/thing/thingy/unit/machine/box/reader/warning`,
  alarm: `carbon? monoxide alarm/alarms/detector/detectors/sensor/thing/monitor/warning/box
carbon alarm/detector
co/co2 alarm/alarms/detector/detectors/monitor/meter/sensor/thing/unit/machine/box/reader/warning
smoke/gas/heat/fire alarm/alarms/detector/detectors
gas/co/carbon thing/thingy/gadget/box
thing/thingy/box/gadget/unit/disc/gizmo on/in the/our ceiling/wall/hall/hallway/landing
the? white/round/little thing/box/disc`,
  sounding: `going off
goes/went/gone/go off
gone mental/mad/crazy/ballistic/nuts/bananas/bonkers
going/goes/went mental/mad/crazy/ballistic/nuts/bananas/bonkers/wild/berserk
set off
making a/an? racket/noise/din/row/hell/awful?
going/goes/went of
wont/doesnt/cant/will not? stop/shut/quit/be up?/quiet? beeping?
on red
red light on?
four/4 beeps
four/4 times
keeps/kept/started/starts/start beeping/screaming/sounding/ringing/screeching/blaring/going
kicked/kicking off
crying/cried out
in alarm
reads/says/shows/flashing/displays danger/evacuate/gas/co/alarm/high/warning`,
  beeps: `beep beep
beep beep beep
beeep beeep`,
  alarm_quiet: `alarm is? quiet/silent
alarm hasnt/isnt gone/going off
alarm has/is not gone/going off`,
  excuse: "in bed",
  thing: "wood/log/firewood pile/stack/basket/store/rack/heap",
  wood_place: `wood/log/firewood pile/stack/basket/store/rack/heap
flower bed/bed/pot
wooden/timber floor/steps/table/bench/wall/crate/box/step`,
  on_opening: `when i/we/you? opened/opening/reloading/open
when the? door is? open/opened/opens/opening
when opening/reloading/lighting/loading/starting
opened the? door too
on opening`,
  topical: `what temperature/temp
how loud/loudly`,
  resolved: `all? good/fine/ok/okay/gone/normal now
gone in/after
all good/clear/well`,
  maybe: `what does/do it/this/that mean when/if/that
is it normal that/for`,
  testing: `press/pressed/pressing/push/pushed/hit the? test? button
self test
false alarm
fire drill`,
  setting_alarm: `set an/the/my/a alarm
alarm clock
wake me
alarm for
alarm at
set me an?/a? alarm
wake up alarm
alarm on my phone
car/burglar/phone/morning/intruder alarm`,
  battery: `low/flat/dead/new battery/batteries
battery low/flat/dead
end of life`,
  once_a_minute: `every/each/once/per a? minute/minutes
every 30/40/60/45 seconds/s/sec
every few/couple minutes/mins/of
one/single/1 chirp/beep
once in a while
now and then`,
  co: `carbon/carbone/carbin/carban/corbon monoxide/monoxcide/monoxyde/monixide/monoxid/manoxide/minoxide/dioxide
monoxide gas`,
  roof: `chimney/flue/stack/lum top/pot/cap
top of the/my/our/your? chimney/flue/stack/lum/pot`,
  chimney: `chimney breast/stack/pot/top/flue/cap
flue/stack/lum top/pot
top of the/my/our/your? chimney/flue/stack/lum/pot
smoke/stove/flue/vent pipe/stack`,
  chimney_fire: `chimney/chimny/flue/stack/chimley/chimmney fire/fires/blaze
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
  burn_hurt: "third?/second?/first? nasty/bad/serious/severe/big/degree burn/burns",
  behind: "behind/inside/under/beneath/in the/our/my? wall/walls/heater/stove/floor/ceiling/skirting/panel/panelling",
  damper_shut: `slide/plate/damper/gate/flue/schieber/pelti/register is?/was?/fully? in/across/home/shut/closed/down
slide/plate/damper/gate/flue is?/was? all? the? way in/shut/closed`,
  under_hearth: "fire/flames/smoke/glow under the? hearth/floor/stove/heater",
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
smoked us? out
smoking us out
house/room is? smoked/smoky
smoky/smokey as
smoke is? so? bad/heavy/dense/terrible`,
  room: "all over the/my/our room/house/kitchen/place",
  ash_smoking: `bin/bag/box/bucket/sack/dustbin/trash/can/pail/garbage/compost is?/has?/started? smoking/smouldering/smoldering/hot/warm/melting/melted/glowing/burning/alight/scorched/steaming
bin/bag/box/bucket/sack/dustbin/trash/can/pail/garbage/compost is?/has?/started? to? smoke/smoulder/smolder/melt/burn/glow/steam
smoke/steam/glow coming? from/in the? ash/bin/bag/box/bucket/sack/dustbin/trash/garbage/pail/compost`,
  soft_container: "garbage/trash/rubbish can/bag/bin",
  vacuum: `shop vac/vacuum
vacuum/vac cleaner`,
  idle: `sick of
sick and tired of?
fed up
tired of
at once
once i/we/it/its/the/she/he/you/they/outside/lit/again/more/that/my/our/a/this
is dead tired
sick in the head
neighbour/neighbours/neighbor/neighbors/friend/friends alarm/detector
smoke tube/pot/bomb
sick leave/note/pay/day
on the other hand
second hand
by hand
hand split/splitting/made/held/tool/saw/axe/warm
arms length
in hand
close at/to hand
on hand
first hand
handy
head start
a/real/huge/major/such/big headache to/getting/with/trying
give/gives/giving/gave me/us a? headache/headaches to?
headache trying/getting/choosing
is/was/be/are such?/a/real? headache
home/off sick
smoke channels/channel/gases/box/path
banged/slammed/bangs/slams shut
roaring fire/nicely/trade/success/log/blaze
nice/lovely/good/cosy/cozy/warm roaring fire?
roars/roaring away? nicely/well/beautifully/happily/along
dead easy/simple/slow/right/good/set/straight/wood/keen
faint smell/glow/line/hum/whiff/haze/smoke/mark
confused about/by/how/why/which/with/over/whether
weak draught/draft/fire/flame/heat/spot
burn time/times/rate/cycle/wood/well/clean/hot/bans/ban
burns well/clean/hot/fast/out/down/nicely
burning well/clean/hot/fast/nicely/wood/season
burnt/burned/burns black/out/down/away/offerings/through/up/clean/well
smoke test/test?/control/signal/shelf/chamber/bell/free
fire alarm test
cant/cannot see the? embers/flames/fire/point/why/how/any/glow/wood/inside/in/through/damper/marks
see if/whether
full load/loads/day/tank/season/stack/firing/size/burn/basket/open/fire/air/heat/speed/batch
full of wood/ash/ashes/soot/logs/water/charcoal/it
fill the/my/up
thick soot/creosote/layer/walls/logs/pieces/splits/wall/wood/stick/branches/gloves
bad head for
house plate
data/rating/name/type plate
cold ash/ashes
wood ash/ashes
ash tree/logs/wood/firewood/split/splits/trees/log
cigarette/cigar/bbq smoke/ash
old ash/ashes
dying of/to heat?/know/try/have
killing me/us
died laughing
flat out
last embers
black coals/embers/coal/ember
coals/embers/bed is/are/was/were all? completely?/fully? black/dead/cold/out/dark
embers/bed/coals black/cold/dead
all black
no glow left?
no? more glow/glowing
stopped glowing/smoking/beeping
how do/does/can/could you/i/we/one know/tell/recognise/recognize/spot
out of order
feeling/feel like a? cosy/baking/lighting/cold
wife/husband says hi
alarm bell/bells
warning signs
not/isnt/no co/carbon/smoke/alarm problem/problems/issue
in no smoke
smoke free
smoking meat/fish/ham/salmon/cheese/sausages/bacon
smoked meat/fish/ham/salmon/cheese/sausages/bacon
hot/cold smoked/smoking
train station/set/track/tracks/journey/home/ride/driver/late
big bang theory
bang for your? the?/my? buck/money
bang on
bang up
bang goes
out/off/start with a bang
bang for
exploded in price/cost/size
dizzy with joy/excitement/happiness
exploding prices
bed/embers/coals black
do alarms/detectors`,
  history: `last/previous year/winter/season/week/month/summer/autumn/spring/fall/time/decade/century/owner/christmas/january/february/march/april/may/june/july/august/september/october/november/december/monday/tuesday/wednesday/thursday/friday/saturday/sunday
years/year/months/month/weeks/week/winters/seasons/days ago/back
long ago
few/couple of? years/months/weeks/days
in 1998/2001/2005
back in the?
used to
when i was a?
as a kid/child/boy/girl
previous owner/owners/tenant
has been swept/inspected/repaired
as a student/teen/teenager/boy/girl
all summer/spring
in the news
once in
the other day/week/night
had a/an chimney fire last?/in?
after a/the/our/my/that chimney fire
years before`,
  yesterday: `last night
this morning
earlier today
yesterday evening/morning/night
night before`,
  recent: `two/2 days ago
just now
hour/hours/minute/minutes/mins/min/sec/moment/moments/half ago
an hour/minute/moment ago
half an hour ago
hours/minutes/mins ago
right now
at the moment
just/justnow happened
for hours/ages`,
  now: `is this
if this is
right now
as we/i speak/type/write
at the? moment/minute
what do/should/shall/must i/we do
what to do
what now
help me/us
please help
call/ring/phone/dial the? fire brigade/department/service/dept/company
is this/it normal/bad/dangerous/serious`,
  hypothetical: `just so i know
for my information
what should/do/must/would/shall i/we/you/guests/they do if/when/in/during
when/if the/an/a? co/smoke/carbon? monoxide? alarm/detector goes/sounds/rings/beeps
what/which/how ppm/level/loud/loudly does/is/do the/an/my/a? co? alarm/detector/alarms
is it possible to
what if
what happens if/when
what would
in case
in the event
should/must i/we do? if/when
just wondering
just curious
theoretically
out of curiosity
how likely
chance of
chances of
risk of
danger of
worried about
what causes
what is a/an
what are the
prevent a?
preventing
avoid a?
to avoid
signs of
symptoms of
can you/a/it get/get/cause/be
does a/co/carbon
how does/do a/co/the/alarms/carbon`,
  joke: `just kidding
only joking/kidding
just joking
im joking/kidding
only a joke
was a joke
j k
jk`,
  asking: `what kind/sort/type of
ok/okay/good/suitable/fine for
can i/we/you
could i/we/you
may i/we
shall i/we
should i/we
do i/we
is it ok/okay/safe/fine/alright/allowed/bad/dangerous/wrong/possible to/if
ok/okay/safe/fine to
ok if
want/wants/wanted/wanna/need/going/like/trying/about/have to
wanna
when can/do/should/is/to
how do/can/long/soon/early/late/often
how to
how much/many/full/far/big
before closing/shutting/i/you
thinking of/about
plan/planning to/on
where can/do/should/to
what can/should/happens
wait/waiting until/till/to
am i allowed
mustnt
never close/shut
dont close/shut
not close/shut
better to
supposed to
allowed to`,
  habit: `every time
each time
all the time
every day/evening/night/morning/winter/autumn/year/sunday/saturday
each day/evening/morning
when i/we/you open/light/start/load/reload/add/bake/cook/rake
when it/she/heater warms/heats/cools/burns/starts
on opening
at startup/lighting
at start up`,
  slight: `a bit of?
a little
little puff`,
  wrong_shut: `by mistake
by accident
too/to early/soon/quick/quickly
without thinking
in error`,
  stuck: `stuck/jammed/seized shut/closed
wont/doesnt/cant/will not? open`,
  glow: `still some? fire/going/in/lit/alive/burning/on
fire is? still? going/on/lit/burning/not
half burned/burnt log/logs
wasnt/isnt/not/werent fully/quite/completely/all/properly/totally/entirely? out/black/dead
a? log/logs burning/alight
bit of? red
some red
fire still? in`,
  fell_on: `fell/fallen/stumbled/leaned/leant/tripped/tumbled on/onto/against/into the/our/my?`,
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
  outdoors: `from the chimney top`,
};
