import type { PhraseList } from "../senses.ts";

/** Phrases about people and animals, and how they are. */
export const ENGLISH_PEOPLE: PhraseList = {
  many: `two/three/four people/guests/friends
all of us
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
  ill: `hardly/barely/cant/cannot/couldnt/can keep my/his/her/our? balance
cant/cannot/hardly/barely keep/stay/stand awake/upright/standing/conscious
budgie/budgies/canary/canaries/parrot/parakeet/cat/dog/hamster/rabbit/bird/birds dead
nobody/noone can keep/stay/think/stand/focus/wake
seeing things/spots/stars
want/wants to vomit/puke/throw
feel/feels/feeling/felt like vomiting/fainting/puking/throwing/passing/collapsing/dying
wobbly legs
going dark/black/grey before my? eyes?
vision blurred/blurry/blurs/swims/darkens/narrowing
heart/pulse is? beating/hammering/thumping/fluttering/going fast?/hard/wild?
splitting/thumping/blinding/awful/terrible/weird/strange/dull/slight/mild/bit headache
felt/feel/feels/feeling the? need to vomit/faint
stomach/belly/tummy turning/churning/upset/cramps
isnt/not making any? sense
dull/constant/nasty ache in my/the/our head/heads
like im/ive/i am/been/have? been? floating/drinking/drunk/underwater/drugged/dreaming
like im/ive/i floating/drinking/drunk/underwater/drugged/dreaming
passed/passing/passes/pass out
blacked/blacking/blacks/black out
threw/throw/throwing/throws/thrown up
chucked/chucking up
being/been/be sick
like we/i/they/hes/shes/he/she? have/has/had/got a? hangover/flu/hangovers
hardly/barely/struggle/struggling to? breathe
pressure behind/in my/the/our? eyes/head/ears
nobody/noone/none is? waking/wakes up?
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
  felled: `cant/doesnt/wont/couldnt/hardly/barely/cannot/didnt/not lift/raise/hold/read/remember/speak/swallow/follow/concentrate/walk/recognise/recognize/react/reacting/sit
on the kitchen/bathroom/bedroom/hall/stairs/landing floor?
spots in front of my/his/her eyes
spots/stars before my/his/her eyes
went/gone/going/goes blue/stiff/limp/quiet/still/rigid/cold
dropped like a stone
hit the floor
bumping into things
repeating himself/herself/themselves/things
cant/cannot keep his/her/their/my? food/balance/feet/down
lost his/her/my/their balance/footing
short/out of breath
no strength/energy
unusually/very/strangely/weirdly/oddly quiet/still/slow/hot/grumpy/clumsy
jelly legs
woke/woken/came/come up/to/round/around on the floor
cage floor
floor of the/its? cage
wont/doesnt/cant/not/isnt get/getting off/up/out
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
eyes cant focus
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
  unwell: `gone/went/turned/turning/is a? funny/odd/strange/weird/bad colour/color
feel/feels/feeling/felt so?/really?/very?/a? bit? sick/ill/unwell/poorly/off/funny/strange/rough/bad/awful/weird/odd/horrible/crap/terrible/lousy/queer/shaky/crook/dreadful/dead/drunk/shocking/ropey/grotty
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
};
