import type { PhraseList } from "../senses.ts";

/** Phrases that say when, whether and in what spirit a thing is told; "idle" ones only look like danger. */
export const ENGLISH_COMPANY: PhraseList = {
  alarm_quiet: `alarm is? quiet/silent
alarm hasnt/isnt gone/going off
alarm has/is not gone/going off`,
  excuse: `so we/i heat/fire/keep/light/ill/have
in bed
please log/remind/show/set/skip/cancel/add`,
  on_opening: `when i/we/you? opened/opening/reloading/open
when the? door is? open/opened/opens/opening
when opening/reloading/lighting/loading/starting
opened the? door too
on opening`,
  topical: `how does it start
which/what bucket/bin/container
loud enough
spark guard/guards
fire brigades
emergency number/numbers
do fire brigade/departments charge/cost
how much per
what temperature/temp
how loud/loudly`,
  resolved: `all? good/fine/ok/okay/gone/normal now
gone in/after
all good/clear/well`,
  maybe: `if i/we/you close/shut/closed the damper/slide/flue/plate/heater
what does/do it/this/that mean when/if/that
is it normal that/for`,
  testing: `press/pressed/pressing/push/pushed/hit the? test? button
self test
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
once every minute/30/40/45/60/hour seconds?
every 30/40/60/45 seconds/s/sec
every few/couple minutes/mins/of
one/single/1 chirp/beep
once in a while
now and then`,
  idle: `cold/dead ash/ashes
after two/three/four/five/six/seven/ten/4/5/7/10 days
exploded view
exploded in price
dizzy heights/height
stack of
hands burn/burned after/from
next door
sick of
sick and tired of?
fed up
tired of
at once
once every/a/per/each
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
closed/closes/shut/shuts with a bang
cork went bang
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
explosion/explosions of
if cold
if its/it is/was? cold
dizzy with joy/excitement/happiness
exploding prices
bed/embers/coals black
do alarms/detectors`,
  history: `in the past
last/previous year/winter/season/week/month/summer/autumn/spring/fall/time/decade/century/owner/christmas/january/february/march/april/may/june/july/august/september/october/november/december/monday/tuesday/wednesday/thursday/friday/saturday/sunday
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
  hypothetical: `when should/must/do we/i evacuate/leave/get/go/call
just so i know
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
you ever
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
how much per
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
};
