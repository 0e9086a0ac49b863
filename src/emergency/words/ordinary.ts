/** Everyday words that lie one slip from a danger word; a speller must leave them as they are. */
export const ORDINARY_WORDS = `
stoke stoked spoke spoken stokes poke woke smote sale pail
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
able about above accept across act active actual add after again against agree ahead allow allowed almost already also although among amount and animal another answer any anything
anyway apart app appear apply april area around arrive ask asked asking august autumn available average avoid back basic basis beat beautiful became because become bedtime before began begin behind
believe beside best better between beyond birds bit bits bless body bought bring broken brother brought build builder builders building built busy button buying called came cannot capacity care careful carry case
catch caught central certain change changed charge chart cheap check checked child children choice choose christmas circle city classes cleaning climb close closer coat coffee colour come comes comfort common company compare complete
concrete condition connect consider contact contain content continue control cook cooker copy corner correct cost costs could count couple course cover covered create cubic current curve curved cut cycle daily damage date dates days
december decide degree degrees delay deliver depend depth describe design detail different difficult dinner direct dirty discuss distance divide doing done double doubt down dozen draw dream dressed drink drive drop dropped during dust dusty duty each
early earth easily east easy eight either electric else email empty energy engineer english enjoy enter entire equal especially even evening event ever exact exactly example except expect expensive experience explain extra eye fact factor fail fair fairly
famous farm fast father favourite february feed feel feels feet fell felt fence few field fifth fifteen fight figure file final finally find fine finish finished first fish five fixed follow food force forecast forest forget forgot form forty forward found four fourth
free freeze fresh friday friend friends front fuel full fully further future garden gave general gentle get give given gives giving glad going gone good got great green ground group groups grow guess guide half happen happened happens happy hardly
hardwood have having head hear heard heart heavy height held hello help helped here hers high higher history hold holes holiday hope hour hours however huge human hundred hurry idea image important improve inch inches include increase inside instead interest
iron issue item itself january join joint joints july june just keen kept kind knew know known labour ladder large larger last later laugh layer layers learn least leave left length less letter level levels lies life lift like likely limit list listed listen little
litre live load loaded loading loads local long longer look looked looking looks lost lots lovely lower lunch machine made main maintain major make makes manage manner many march mason masonry maximum maybe mean means measure meet meeting mention message middle
might mile milk mind minimum minute minutes miss missed mistake mixed moment monday money month monthly more morning most mostly move moved much music must name narrow nature near nearly need needed needs neighbour never news next nice night nine noise normal north note
notes nothing notice november now number october off offer office often okay once only onto open opened opening opinion option orange order ordered other ought outer outside oven overnight owner pack packed page paid pair part parts party past pattern pay people percent
perfect perhaps period person phone photo pick piece pieces pine place plain plan planning plant plaster plastic play please plenty plus point pool poor popular position possible post pour powder power present press pressure pretty previous price private probably
problem process produce product program promise proper properly protect prove provide pull pure purpose push question quick quickly quiet quite rain raise raised raising rake raked raking ran rather ratio reach reached read reading real really reason receive recent record
reduce regular remain remember remind reminder remove repair repeat replace reply report rest result return rich ride right rise river road rock roll rolled rope rough round row rule rules running rust safe safely safety said same sand saturday save saved saw scale school
science screen season seasoned seat second seconds section secure see seed seem seems seen select sell send sense sent september serious serve service settle settled seven several shade shape sharp sheet shelf shelter shine ship shirt shop short shorter should shoulder
shout show shower shown sign simple simply since single sister six sixty size skip sleep slightly slope slot slots small smaller smell smells smelly smooth soap soft softwood soil sold solid some someone something sometimes soon sorry sort source south space spare speak
special speed spend spent spirit split splits splitting spray spring spruce square stage stairs stand standard start started starting state statement stay stayed steady steel steep step steps still stone stop stopped store storm straight strange street strength stretch
strike strong stuff style subject such sudden suddenly sugar suggest suit summer sunday sunny supply support suppose sure surface sweep system table takes talk taste teach team tell temperature terms than thank thanks that their them themselves then there therefore these
they thick thicker thin thing things think third thirty this those thought thousand three through throughout throw thursday ticket tied tight till time times tiny title today together told tomorrow tonight took tools total touch toward town trade travel treat treated tree
trees trial trick trouble truck true trust truth try trying tuesday turn twelve twenty twice type types under understand unit units until upper upon used useful user using usual usually valley value various vegetable version very view village visit voice volume wait waited
waiting walk walking wall want wanted warm warmer warmth wash waste watch water wave ways wear weather website wednesday week weekend weekly weeks weigh weighed weight welcome well went west what wheel when where whether which while white whole whose wide width wife will
willow wind window windows windy wine wing winter wish with within without woman women wonder wonderful wood wooden wool word words work worked working works world worry worse worst worth would write writing wrong wrote year years yellow yesterday yet young your yours
alder apple aspen bark beech birch cedar cherry chestnut elm hazel hornbeam larch maple oaks pear plum poplar rowan walnut
bell bells bench bypass channel channels contraflow cord cords creosote efficiency facing firewood firing gasket grates inlet insulation kiln kindling liner loaf mantle mesh moisture mortar nest nests novel outlet pellet pizza plate radiator render seasoning shavings soapstone
starter starters stere sticks tile tiles tinder twig twigs valve vinegar weather thermostat boiler stove heatpump pump baking bread roast pavlova pav dough tested heater brand bake bakes mix mixer mixing pixel matrix discord chat chats robot pirate rules
aside awake barely blend block boil boiled bored bother bottle bound bow bowl brain brake branch brave brief bright broad broke cabin cable camera chance chase cheese chest chief claim clay cliff climate coach coast coming corn cotton cousin crack cracked craft crazy cross crowd crude curious
daily dance decent deeply deliver dense dent depth deserve dig digit dim dish dive dozens drag drain drift drill dump eager eating edge edges effect effort eggs eighth elbow elder empty enemy enough entry error escape estate even event evil exam exist expert explore extreme fabric fade fancy
fashion fault feather feature fellow fever fiber fiction filter finding firm fitted flag flat flavour flight float focus fold fool forgive formal former frequent frozen fruit funny gain game gather ghost giant gift glad glory goose grade grand grant grass greet grey grip guard habit hammer handle
hang happily hate hidden hill hint hire hobby honest honey hook horse hotel hunt husky ideal idle index inner input insect invite jacket jail jazz joke jump keys kick kid king knee knife knock label lady lake lamp lane latch lately launch lawn lawyer lazy lend lesson lid lift light link lip
load loan lobby lock logic lonely loud loudly luck lucky lump lung magic mail marry mask mass match mate maths mayor meal medal medium melt menu mess mile minor mirror model modern mood motor mount mouse muddy mud muscle nail native neat neck nerve nest net noble noon nose nurse
slug slugs slurp plugs stair stare scare scared flag flags shed sheds limb lamps blips clips flips faith taint drops dozens sickle stick silk slick rough route lawn laws flood floods gases cases bases cat bat hat rat coal goal shoal smelt smell spell swell boss loss toss moss dose nose rose pose sparrow swallow tiled filed piled mild wild child
indoor outdoor gross char crates break breaks shell shells stains stain trapped trap frost frosty swinging swing warps warp prime ridge gust gusts chipped chip chips health healthy flake shovel shovels handler ignite ignites scrape scrapes scraped cream tone tones cent cents etch etched arch sweet sweets driven driver noisy chile scene lack lacks loop loops love loves void hover click clicks stream streams threat angle steve shift crate globe detect detected clone omit solve string strings parent parents agent scratch scratches strip stripped polls pinning pins pin bleed prints printed ours newer font project projects linear embed threshold rambling leases drone instruction operations operation monitors silence curing beads warnings gates register registers conduct infant visitor shoved pens pans tins wins spins whole hole stale steal stales tale scale scaled shallow swallow mallow sleeve sleeves rub rubs hug mug bug bugs dug rag rags tags cute mute flute lute route brute minutes salute trend spend
`;
