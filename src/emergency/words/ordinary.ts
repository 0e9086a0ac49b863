/** Everyday words that lie one slip from a danger word; a speller must leave them as they are. */
export const ORDINARY_WORDS = `
stoke stoked spoke spoken choke stokes poke woke smote sale pail
charm harm farm warm armed arm larm
fizzy busy dozy cozy
keep keeping keeps kept deep deeper peep seeping weeping beet been bees beef
frame frames blame blames lame lames game name same claim
shark sharks park parks sparse sport
board boards soar oar roam roast road
member members remember number numbers timber lumber amber umber
hamper camper dampen dampened dampens damp dampness tamper pamper damaged damages
slice sliced side sides glide elide sliding slid
place places placed plane plan plans plait late plates plated plat
chose chosen clothes cloth closet closer clear clean cleans cleaned cleaner lose loses loser loose
gasket gaskets casket task basketball
taper tape papers caper gaper
torch poach perch pooch pouch touch
carbonate carton cartoon
glove gloves grow grown grows slow slows blow flow flows low
coat coats goals loads coil coils cools cool cooling coaled cools coarse coast coats
read reads ready lead reds
bash cash dash hash lash mash rash wash gash lashes dashes washes flashes splashes
paint painted painting pint point feint saint fainter
sock socks stick sticks thick lick pick picks kick tick ticks nick
plum plume drown drawn crown brown
blank bank banks hang hangs rang range bring boing being beings
bomb book room rooms broom groom zoom gloom bloom
blaster plaster last lasts list
explore explorer explain explained
blow blown below bellow
flown flow fly flying flight flue flues
doors floor door odor donor dour
hard hand handy handle handles sand land band brand
tingle single signal fringe linger ginger finger
race lace pace face facing faces facings faced
lane leg legs log logs
throat float fleet foot feet
hater heat heats heated heating heather hearer theater heaters leather weather whether neither either wheat cheat
store stores stored storey story stone stones stove stoves strove drove
oven over even ovens woven cover
wire fine fires fired firing fireside firewood find film fir firs line lines lining fining
timer tamer tiles tile tiled title rile
weak week weeks wreck weaker
fort form forms
sleep sleeps sleeper sleeping slept sheep steep
dark mark bark barky park
tired tried tires
beech birch bunch bench benches
chirpy chimp
chair chairs chain
sold gold hold holds told bold cold colder coldest hole holds
hit hut hot hotter hottest hat host lot shot
glass grass class glasses gloss
glare flare flair flair flares share spare
water waters later matter
draft draught drafts draughts daft drift
stack stacks stacked stick track slack stock smack snack
round sound wound pound pounds bound found ground
mouth month months south
bucket buckets ticket
crane train trains rain drain grain brain strain trail terrain
planes plants plant
moisture meter metre meters metres
sensor censor
dryer drier drying dry dries
pellet pellets
should would could shout shoulder
pocket rocket rockets packet
vent vents event
right night light might tight lights lighting lighter nightly slightly
shed shred shade shared
pipe pipes wipe ripe piped
floors flood flour flooring
cough tough rough though through thought enough
lots lot lose loss
mood wood woods woody food good hood hoods moods
sauce cause causes pause
sweep sweeps swept sweeper
snow show shows shown known knows
birth firth
seal seals meal deal real heal
spread thread bread
clock block clocks blocks
mine nine vine
winter winters
lamp lamps clamp camp damp
hollow follow yellow
tall call calls wall walls ball fall falls
crash trash
wick wicker
bake baked baking cake make making take taking
rate rated ate
smart start starts started startup
sooty soot foot root roots boot boots
pretty petty
every very never fever
burner burners turn turns turned turning return
bars jars cars
ceramic
liver river live lived lives living lining
alone along among
cracks crack tracks
measure measured
wide side hide slide
steel steal steam stem
cream dream
hall shall small
brick bricks trick
sweat sweater swear
leaves leave leaf leak leaks lean
ripping dripping drips
tapped taps tape
whistle whistles whistling
tipping tips
warming warms worms worm
boards
batter better butter bitter
banging bangs hanging
fumble humble tumble grumble crumble crumbles crumbling
booming blooming
plates
shuffle
sparkle
lighter
blacken blackened
passing
hearing clearing
pouring
emptied empty empties
tilted tilt
aired airs air
resting testing
texts text tent tests
bullet wallet
mountain
`;
