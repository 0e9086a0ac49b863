/** Everyday words, which a speller must leave as they are although they may lie one slip from a danger word. */
export const ORDINARY_WORDS = `
  halfway
able about above accept across act active actual add after again against agent agree ahead air aired airs alder allow allowed
almost alone along already also although amber among amount and angle animal another answer any anything anyway apart app appear
apple apply april arch area arm armed around arrive aside ask asked asking aspen ate august autumn available average avoid awake
back bake baked bakes baking ball band banging bangs bank banks barely bark barky bars bases bash basic basis basketball bat
batter beads beat beautiful became because become bedtime beech beef been bees beet before began begin behind being beings believe
bell bellow bells below bench benches beside best better between beyond birch birds birth bit bits bitter blacken blackened blame
blames blank blaster bleed blend bless blips block blocks bloom blooming blow blown board boards body boil boiled boiler boing
bold bomb book booming boot boots bored boss bother bottle bought bound bow bowl brain brake branch brand brave bread break breaks
brick bricks brief bright bring broad broke broken broom brother brought brown brute bucket buckets bug bugs build builder
builders building built bullet bunch burner burners busy butter button buying bypass cabin cable cake call called calls came
camera camp camper cannot capacity caper carbonate care careful carry cars carton cartoon case cases cash casket cat catch caught
cause causes cedar censor cent central cents ceramic certain chain chair chairs chance change changed channel channels char charge
charm chart chase chat chats cheap cheat check checked cheese cherry chest chestnut chief child children chile chimp chip chipped
chips chirpy choice choose chose chosen christmas circle city claim clamp class classes clay clean cleaned cleaner cleaning cleans
clear clearing click clicks cliff climate climb clips clock clocks clone close closer closet cloth clothes coach coal coaled
coarse coast coat coats coffee coil coils cold colder coldest colour come comes comfort coming common company compare complete
concrete condition conduct connect consider contact contain content continue contraflow control cook cooker cool cooling cools
copy cord cords corn corner correct cost costs cotton cough could count couple course cousin cover covered cozy crack cracked
cracks craft crane crash crate crates crazy cream create creosote cross crowd crown crude crumble crumbles crumbling cubic curing
curious current curve curved cut cute cycle daft daily damage damaged damages damp dampen dampened dampens dampness dance dark
dash dashes date dates days deal december decent decide deep deeper deeply degree degrees delay deliver dense dent depend depth
describe deserve design detail detect detected different difficult dig digit dim dinner direct dirty discord discuss dish distance
dive divide doing done donor door doors dose double doubt dough dour down dozen dozens dozy draft drafts drag drain draught
draughts draw drawn dream dressed drier dries drift drill drink dripping drips drive driven driver drone drop dropped drops drove
drown dry dryer drying dug dump during dust dusty duty each eager early earth easily east easy eating edge edges effect efficiency
effort eggs eight eighth either elbow elder electric elide elm else email embed emptied empties empty enemy energy engineer
english enjoy enough enter entire entry equal error escape especially estate etch etched even evening event ever every evil exact
exactly exam example except exist expect expensive experience expert explain explained explore explorer extra extreme eye fabric
face faced faces facing facings fact factor fade fail fainter fair fairly faith fall falls famous fancy farm fashion fast father
fault favourite feather feature february feed feel feels feet feint fell fellow felt fence fever few fiber fiction field fifteen
fifth fight figure file filed film filter final finally find finding fine finger fining finish finished fir fired fires fireside
firewood firing firm firs first firth fish fitted five fixed fizzy flag flags flair flake flare flares flashes flat flavour fleet
flight flips float flood floods floor flooring floors flour flow flown flows flue flues flute fly flying focus fold follow font
food fool foot force forecast forest forget forgive forgot form formal former forms fort forty forward found four fourth frame
frames free freeze frequent fresh friday friend friends fringe front frost frosty frozen fruit fuel full fully fumble funny
further future gain game gaper garden gases gash gasket gaskets gates gather gave general gentle get ghost giant gift ginger give
given gives giving glad glare glass glasses glide globe gloom glory gloss glove gloves goal goals going gold gone good goose got
grade grain grand grant grass grates great green greet grey grip groom gross ground group groups grow grown grows grumble guard
guess guide gust gusts habit half hall hammer hamper hand handle handler handles handy hang hanging hangs happen happened happens
happily happy hard hardly hardwood harm hash hat hate hater have having hazel head heal health healthy hear heard hearer hearing
heart heat heated heater heaters heather heating heatpump heats heavy height held hello help helped here hers hidden hide high
higher hill hint hire history hit hobby hold holds hole holes holiday hollow honest honey hood hoods hook hope hornbeam horse host
hot hotel hotter hottest hour hours hover however hug huge human humble hundred hunt hurry husky hut idea ideal idle ignite
ignites image important improve inch inches include increase index indoor infant inlet inner input insect inside instead
instruction insulation interest invite iron issue item itself jacket jail january jars jazz join joint joints joke july jump june
just keen keep keeping keeps kept keys kick kid kiln kind kindling king knee knew knife knock know known knows label labour lace
lack lacks ladder lady lake lame lames lamp lamps land lane larch large larger larm lash lashes last lasts latch late lately later
laugh launch lawn laws lawyer layer layers lazy lead leaf leak leaks lean learn leases least leather leave leaves left leg legs
lend length less lesson letter level levels lick lid lies life lift light lighter lighting lights like likely limb limit line
linear liner lines linger lining link lip list listed listen litre little live lived liver lives living load loaded loading loads
loaf loan lobby local lock log logic logs lonely long longer look looked looking looks loop loops loose lose loser loses loss lost
lot lots loud loudly love lovely loves low lower luck lucky lumber lump lunch lung lute machine made magic mail main maintain
major make makes making mallow manage manner mantle many maple march mark marry mash mask mason masonry mass match mate maths
matrix matter maximum maybe mayor meal mean means measure measured medal medium meet meeting melt member members mention menu mesh
mess message meter meters metre metres middle might mild mile milk mind mine minimum minor minute minutes mirror miss missed
mistake mix mixed mixer mixing model modern moisture moment monday money monitors month monthly months mood moods more morning
mortar moss most mostly motor mount mountain mouse mouth move moved much mud muddy mug muscle music must mute nail name narrow
native nature near nearly neat neck need needed needs neighbour neither nerve nest nests net never newer news next nice nick night
nightly nine noble noise noisy noon normal north nose note notes nothing notice novel november now number numbers nurse oaks oar
october odor off offer office often okay omit once only onto open opened opening operation operations opinion option orange order
ordered other ought ours outdoor outer outlet outside oven ovens over overnight owner pace pack packed packet page paid pail paint
painted painting pair pamper pans papers parent parents park parks part parts party passing past pattern pause pav pavlova pay
pear peep pellet pellets pens people percent perch perfect perhaps period person petty phone photo pick picks piece pieces piled
pin pine pinning pins pint pipe piped pipes pirate pixel pizza place placed places plain plait plan plane planes planning plans
plant plants plaster plastic plat plate plated plates play please plenty plugs plum plume plus poach pocket point poke polls pooch
pool poor poplar popular pose position possible post pouch pound pounds pour pouring powder power present press pressure pretty
previous price prime printed prints private probably problem process produce product program project projects promise proper
properly protect prove provide pull pump pure purpose push question quick quickly quiet quite race radiator rag rags rain raise
raised raising rake raked raking rambling ran rang range rash rat rate rated rather ratio reach reached read reading reads ready
real really reason receive recent record reds reduce register registers regular remain remember remind reminder remove render
repair repeat replace reply report rest resting result return rich ride ridge right rile ripe ripping rise river road roam roast
robot rock rocket rockets roll rolled room rooms root roots rope rose rough round route row rowan rub rubs rule rules running rust
safe safely safety said saint sale salute same sand saturday sauce save saved saw scale scaled scare scared scene school science
scrape scraped scrapes scratch scratches screen seal seals season seasoned seasoning seat second seconds section secure see seed
seem seems seen seeping select sell send sense sensor sent september serious serve service settle settled seven several shade
shall shallow shape share shared shark sharks sharp shavings shed sheds sheep sheet shelf shell shells shelter shift shine ship
shirt shoal shop short shorter shot should shoulder shout shoved shovel shovels show shower shown shows shred shuffle sickle side
sides sign signal silence silk simple simply since single sister six sixty size skip slack sleep sleeper sleeping sleeps sleeve
sleeves slept slice sliced slick slid slide sliding slightly slope slot slots slow slows slug slugs slurp smack small smaller
smart smell smells smelly smelt smooth smote snack snow soap soapstone soar sock socks soft softwood soil sold solid solve some
someone something sometimes soon soot sooty sorry sort sound source south space spare sparkle sparrow sparse speak special speed
spell spend spent spins spirit splashes split splits splitting spoke spoken sport spray spread spring spruce square stack stacked
stacks stage stain stains stair stairs stale stales stand standard stare start started starter starters starting starts startup
state statement stay stayed steady steal steam steel steep stem step steps stere steve stick sticks still stock stoke stoked
stokes stone stones stop stopped store stored stores storey storm story stove stoves straight strain strange stream streams street
strength stretch strike string strings strip stripped strong strove stuff style subject such sudden suddenly sugar suggest suit
summer sunday sunny supply support suppose sure surface swallow swear sweat sweater sweep sweeper sweeps sweet sweets swell swept
swing swinging system table tags taint take takes taking tale talk tall tamer tamper tape taper tapped taps task taste teach team
tell temperature tent terms terrain tested testing tests text texts than thank thanks that theater their them themselves then
there therefore thermostat these they thick thicker thin thing things think third thirty this those though thought thousand thread
threat three threshold throat through throughout throw thursday tick ticket ticks tied tight tile tiled tiles till tilt tilted
timber time timer times tinder tingle tins tiny tipping tips tired tires title today together told tomorrow tone tones tonight
took tools torch toss total touch tough toward town track tracks trade trail train trains trap trapped trash travel treat treated
tree trees trend trial trick tried trouble truck true trust truth try trying tuesday tumble turn turned turning turns twelve
twenty twice twig twigs type types umber under understand unit units until upon upper used useful user using usual usually valley
value valve various vegetable vent vents version very view village vine vinegar visit visitor voice void volume wait waited
waiting walk walking wall wallet walls walnut want wanted warm warmer warming warms warmth warnings warp warps wash washes waste
watch water waters wave ways weak weaker wear weather website wednesday week weekend weekly weeks weeping weigh weighed weight
welcome well went west what wheat wheel when where whether which while whistle whistles whistling white whole whose wick wicker
wide width wife wild will willow wind window windows windy wine wing wins winter winters wipe wire wish with within without woke
woman women wonder wonderful wood wooden woods woody wool word words work worked working works world worm worms worry worse worst
worth would wound woven wreck write writing wrong wrote year years yellow yesterday yet young your yours zoom
`;
