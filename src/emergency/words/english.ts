import type { WordList } from "../senses.ts";

/** Single words. A word may stand under several senses; a phrase (english-people, -events, -company) overrules the words it is made of. */
export const ENGLISH_WORDS: WordList = {
  // who
  i: "i im ive me",
  many: `
    they them everyone everybody we weve were us kids children childrens family guests boys girls lads folks twins parents visitors
    both tenants grandkids grandchildren bairns littluns whanau
  `,
  one: `
    my our wife husband son daughter baby babys toddler toddlers infant mum mom mother dad father gran grandma granny nan nana
    grandpa grandad partner girlfriend boyfriend kid kids child childs boy girl he she him her his hes shes tenant roommate flatmate
    housemate sister brother aunt auntie uncle missus hubby guest lad lass newborn bub bairn littlun nipper daughters sons nephew
    niece babysitter lodger mate grandson granddaughter grandchild kiddo kiddos tot hubs wifey pops mama papa mummy daddy nanna
    cousin colleague
  `,
  pet: `
    cat cats kitty kitten kittens moggy dog dogs puppy pup pooch terrier labrador collie canary canaries budgie budgies parrot
    parrots parakeet cockatiel lovebird bird birds finch finches hamster rabbit gerbil pet pets hens chook chooks chicks ferret
    guineapig
  `,
  somebody: "someone somebody",
  generic: "you someone anyone people somebody anybody one's person",
  // how they are
  ill: `
    dizzy dizziness diziness dizy giddy lightheaded lightheadedness woozy queasy nauseous nausea nauseated nauseaus vomit vomiting
    vomited vomits puke puked puking pukes chunder chundering barf barfing barfed retching headache headaches headachey headachy
    migraine migraines fainted fainting unconscious drowsy drowsiness groggy disoriented disorientated palpitations convulsing
    convulsions seizure seizures fitting hallucinating gassed poisoned hungover muzzy woozie queezy sickening headspin slurs
    slurring slur nauseating intoxicated asphyxiated suffocated suffocating woosy lethargic delirious hedache headake
    headakes headacke headach swooning swimmy unresponsive
  `,
  felled: `
    collapsed collapse collapsing limp floppy lifeless staggering staggers stumbling stumbles wobbly wobbling slumped motionless
    mumbling mumbles babbling keeled crumpled comatose listless dazed drunk tipsy plastered trembling shivering quivering twitching
    convulses drooling foaming jerky clumsy uncoordinated delirium panting unsteady weaving staggered toppled incoherent swaying
    slurring zonked faint faints heaving throbbing pounding
  `,
  flu: "flu",
  dead: "died",
  face: "face faces lips cheeks cheek skin ears fingernails nails",
  flush: "red purple pink cherry bluish blue grey gray",
  unwell: `
    sick ill unwell poorly pale peaky peakish confused queer crook rough ropey ashen flushed clammy sickly nauseus bilious feverish
    peculiar wan pallid seedy
  `,
  sleepy: "sleepy tired weak exhausted knackered yawning sluggish dozy dopey dozing nodding",
  // alarms
  alarm: "alarm alarms allarm alrm alarmed detector detectors detecter dectector smokealarm coalarm sounder siren klaxon",
  detector_word: "monitor sensor",
  sounding: `
    beeping beeps beeped beep bleeping bleeps bleep blaring blares blared screaming screams screeching screeches shrieking shrieks
    ringing rings rang wailing wails sounding sounds sounded triggered triggering tripped tripping activated howling hooting shrill
    squealing screamed screech piercing peeping yelling yells yelled alarming whining buzzing buzzes buzzed flashing flashes honking
    hollering tooting nonstop continuous continuously crying singing shouting bellowing warbling whistling trilling
  `,
  co_alarm: "coalarm",
  heard: "hearing loud",
  chirp: "chirp chirps chirping chirped chirrup chirruping tweet tweets tweeting",
  silent: "quiet silent silence",
  co: "co c0 co2 monoxide carbonmonoxide",
  carbon: "carbon",
  ppm: "ppm",
  shown: "reads reading read shows showing show says displays displaying display climbing rising hit hits reached measured at",
  readout: "display readout",
  degree: "c f degrees degree percent kg lb cm mm",
  norm: "must should limit threshold standard 50291 2034 gas flue battery setting",
  testing: "test testing tested tests drill button",
  admin: `
    battery batteries install installing installed mount mounting buy buying bought replace replacing recommend expires expired
    expiry expire certified brand model cheap cheaper price cost costs manual instructions location position ceiling-mounted
  `,
  hairball: "hairball hairballs furball",
  other_device: `
    moisture clock phone wake waking alexa oven-timer timer microwave burglar car doorbell freezer fridge dishwasher washing dryer
    thermometer probe
  `,
  cooking: "baking bake bread pizza toast cook cooks cooked cooking frying bacon shower steam roast steak fryer pancakes candle candles",
  // fire where it should not be
  calm_cause: "draught draft wind windy gust cold cools cooling splits splitting knot resin sap expansion",
  bits: "bits pieces lumps flakes chunks scraps",
  hazy: "hazy foggy smoky misty grey gray murky dim",
  throat: "throat eyes nose lungs",
  rough_air: "burning burns stinging stings scratchy raw itching watering sore tickling",
  warner: "warns warning detects",
  four: "four fours 4",
  chimney: `
    chimney chimneys chimmny chimny chimmney chimley chiminey chimneybreast flue flues fluepipe stovepipe smokestack smokepipe lum
    stack
  `,
  pipe: "pipe pipes liner lining",
  roof: "roof rooftop roofs pot cowl cap loft attic",
  call: "call phone ring dial calling need needed fetch",
  roar: `
    roar roars roaring roared thunder thunders rumble rumbling rumbles rumbled thundering bellowing vibrating vibrates vibration
    shaking shakes whooshing whoosh howls hammering
  `,
  likeness: "hear heard like sounds sound noise looks resembles",
  crackle: "crackling crackles crackle shaking shakes vibrating vibrates vibration",
  deposit: "creosote soot tar",
  over: "over above top",
  loud: "loud louder deafening tremendous enormous growing",
  noise: "noise noises sound sounds roar howl drone droning humming din",
  street: "road street outside garden yard lawn sky snow driveway",
  torch: "flare lantern candle torch sparkler volcano firework fireworks beacon bonfire lighthouse flamethrower rocket",
  emerging: `
    out from shooting shoot shot coming flying fly flew top above leaping leaps throwing spitting spewing licking lick off raining
    shower inside dancing leaving rising spraying falling erupting
  `,
  gleam: "glow glowing flickering flicker orange red light lights lit glows",
  fireball: "fireball fireballs",
  head_part: "head heads temples stomach stomachs tummy tummies chest eyes belly guts skull",
  feels_bad: `
    thick fuzzy light cloudy dizzy numb tingling tingly burst bursts splits hurts hurt hurting aches aching ache mush foggy weird
    funny strange tight pain pains pressure spinning turning sore heavy buzzing exploding cramps cramping upset churning swimming
    throbs killing banging splitting pounding burning stinging woolly muzzy
  `,
  child: "baby toddler kid kids child children son daughter boy girl grandson granddaughter grandchild littlun bairn nephew niece",
  engine: `
    train trains jet jumbo airplane aeroplane plane locomotive helicopter tornado hurricane rocket blowtorch afterburner jetliner
    boeing turbine lorry tractor
  `,
  flame: "flame flames flaming tongue tongues",
  fire: "fire fires blaze bonfire inferno",
  spark: "sparks spark sparking",
  alight: `
    alight ablaze blazing burning smouldering smoldering aflame flaming smolders smoulders scorching charring ignited melting
    singeing
  `,
  burns: "burns",
  chimney_fire: "chimneyfire",
  thing: `
    carpet rug rugs curtain curtains sofa couch floor floorboards floorboard laundry clothes towel towels mat doormat woodpile
    basket wall walls ceiling joist joists beam beams mantel mantelpiece skirting wallpaper furniture chair armchair cushion blanket
    shed garage barn deck decking porch fence hedge bin dustbin binbag bedding mattress dresser bookcase insulation panelling
    cladding lino hearthrug shelf firewood
  `,
  building: "house home room kitchen cabin cottage sauna lounge hallway bedroom",
  smoke_filled: "smokefilled smokedout",
  smell: "smell smells smelled smelt smelly odour odor scent stinks",
  vac: "vacuum vacuumed vacuuming hoover hoovered hoovering vac shopvac dyson",
  tepid: "lukewarm barely tepid seconds glove gloves clean cleaned cleaning wipe wiped pleasant pleasantly nice lovely",
  arrest: "grabbed grabs picked held swallowed trod stepped caught touched",
  smoking: "smoking charring scorching smouldering smoldering glowing",
  garment: `
    dress skirt apron robe coat gloves socks sleeve sleeves hair shirt jumper sweater cardigan pyjamas pajamas nightie trousers
    jeans dressing-gown scarf
  `,
  // smoke indoors
  smoke: "smokier smoke smok smoke's smoky smokey smokes smoking smoked fumes fume smog reek haze",
  fill: `
    fill full fulls filling fills filled thick pouring pours poured billowing billows billowed belching belches engulfed flooding
    flooded swamped heaps tons tonnes loads lots masses clouds cloud plumes choking chokes everywhere gushing rolling blinding dense
    heavy solid engulfing
  `,
  room: `
    room rooms house kitchen lounge livingroom bedroom bedrooms upstairs downstairs hallway hall indoors inside home apartment flat
    cabin cottage basement cellar parlour study den conservatory landing attic loft bathroom nursery studio snug loungeroom sauna
    place
  `,
  cough: "choking coughing cough coughs spluttering wheezing gasping choked suffocating",
  leak: `
    leaks spews pukes belches spits coughs leaking seeping escaping coming pumping streaming gushing pushing backing puffing puffs
    trickling wafting creeping curling billowing pouring rolling blowing blows drifting spilling spills
  `,
  // ash
  leak_place: `
    cleanout seam seams joint joints crack cracks gap gaps lid panel panels plate edges door wall walls floor ceiling socket vent
    hatch oven tiles tile bricks brick light fitting outlet plinth base
  `,
  next: "next",
  away: "neighbours neighbour neighbor chimney outside outdoors roof top stack",
  empties: "emptied emptying cleared dumped tipped cleaned scooped shovelled shoveled",
  ash: "ash ashes ashs ashe cinders clinker coals embers coal ember ashpan charcoal",
  hot: "hot warm glowing glow glows glowed live smouldering smoldering smoking red fresh orange steaming lit",
  cold: "cold cooled",
  soft_container: `
    cardboard carton plastic paper box bag bags sack bin dustbin binbag binliner trash garbage trashcan wheelie wheeliebin skip tub
    compost composter vacuum vacuumed vac hoover hoovered hoovering wooden crate bucket pail tote recycling rubbish newspaper
    shopvac dyson carrier shoebox envelope basket tupperware sacks boxes pillowcase drum
  `,
  scorch: "scorch scorched scorching brown blackened melting melted",
  safe_ash: "stones stone gravel concrete roses",
  metal: "metal steel tin galvanised galvanized iron zinc",
  wood_place: `
    deck decking porch balcony verandah veranda garage shed woodpile woodshed fence hedge carport hallway hall mudroom barn lean-to
    doormat leaves mulch stairs cellar basement patio utility lawn grass parquet laminate linoleum lino carpet rug floorboards
    flowerbed cupboard bench timber woodchips terrace woodstack siding leaf hay straw bush bushes hayloft car boot trunk field bark
  `,
  put: `
    put tipped emptied dumped threw thrown left stuck chucked poured shoved placed tossed shovelled shoveled scooped dropped stored
    sitting sits standing stands sat bagged swept moved carried vacuumed hoovered slung lobbed stashed piffed went ended leaning
  `,
  // burns
  burn_noun: "burn burns",
  remedy: "butter ice cream ointment aloe plaster bandage cling toothpaste honey cold salve",
  burnt: "burned burnt burnd brunt scalded scald scalding scorched singed seared branded sizzled blistered blistering",
  body: `
    myself himself herself themselves itself han hand hands finger fingers thumb palm palms arm arms forearm wrist elbow knuckles
    leg legs knee foot feet toe toes face cheek cheeks eye eyes lip tongue heel ankle shin thigh hip chest back-side soles sole
    eyebrow eyebrows eyelashes lips nose ear ears forehead skin bum bottom belly tummy neck shoulder knees paw paws fingertips
  `,
  wood_name: "beech birch oak spruce pine ash wood logs larch alder",
  draught: "draught draft draws drawing pulled",
  blister: "blister blisters blistered blistering peeling",
  touched: `
    jumped picked touched touching grabbed grabs grab touch brushed pressed leaned leant fell fallen falls tripped stumbled landed
    sat trod stepped crawled bumped
  `,
  cry: `
    raw stinging stings sore swollen swelling ouch ow oww aargh hurts hurt hurting crying screaming cries howling sobbing screams
    bawling
  `,
  emberish: "ember embers coal spark sparks cinder",
  hot_part: "glass door stove heater hotplate grate embers ember coal tiles oven latch handle poker coals firebox",
  // damper
  damper: `
    damper dampers dampner dampper slide plate gate shutter flueplate spjall pelti schieber zasuvka vyushka register baffle flap
    shutoff slider
  `,
  shut_done: "closed closd shut slid pushed down",
  shut_base: "close",
  glow: `
    burned blazing crackling smoking smouldering smoldering glow glowed glowing glows ember embers coals coal red orange flame
    flames burning alight flaming roaring flickering live hot glowy glimmering blue cinders redhot brasas
  `,
  black: "black dark dead cold extinguished",
  stuck: "stuck jammed seized broken",
  // back-puff
  shattered: "shattered shattering smashed burst bursting",
  caught: "caught",
  pop: "pop pops popped popping thud thump thumps thumping crash",
  mess: "soot ash ashes smoke dust",
  bang: `
    backfired backfire gunshot whoompf bang banged boom boomed explosion exploded explode explodes explosive blew blast blasted
    whoomph whump woomph kaboom detonated whumpf whoomp fwoomp woof deflagration detonation burst
  `,
  leapt: "jumped leapt leaped lept jump shot shoot whooshed blasted licked lashed",
  flew: "flew flung blown sprang popped swung thrown",
  flash: "flash",
  puff: "puff puffed puffs puffing belched spat",
  heater: `
    heater heaters heator stove stoves fire fires oven hearth furnace firebox fireplace kachelofen grundofen pechka fireside wood
    logs log woodstove masonry tiled-stove woodburner burner chimney
  `,
  moved: "shot flew flung rattled rattling rattle lifted jumped broke cracked dislodged thrown",
  odd_place: "cleanout seam seams joint joints gap gaps wall ceiling bricks hatch",
  gas: "gas gases fumes",
  door: "front handle damper pane window door doors lid glass hatch latch cleanout",
  // links between fire and people
  link: `
    here lit fire heater stove oven hearth smoke smoky fumes fumy smell damper embers alarm monoxide co chimney since indoors inside
    room stuffy woodstove flue burning closed shut detector kitchen house airless fireplace furnace warm
  `,
  // time, doubt and other company
  now: "now currently help helpp sos immediately quick quickly urgent urgently emergency mayday tonight",
  today: "today",
  history: `
    once photo picture film movie book story novel
    childhood previously yesteryear grew remember historical 1990s 1980s
  `,
  yesterday: "yesterday",
  habit: "always usually often sometimes whenever occasionally normally generally never regularly typically",
  hypothetical: "if whether suppose imagine would unless hypothetically scenario",
  topical: `
    cause causes caused prevent prevents preventing prevention avoid avoiding insurance discount risk risks likely likelihood
    arrestor arrester emoji protected protect protection odds chance statistics
  `,
  maybe: "might may maybe perhaps probably possibly could",
  excuse_plain: "paperwork price prices numbers settings manual maths options rates bill moisture chickenpox measles hayfever",
  excuse: `
    covid chickenpox measles norovirus hayfever school pills bed walk hike skiing hunting moisture marathon pollen hay pregnant
    gastro surgery operation
  `,
  brigade: "brigade firemen firefighters ambulance paramedics 911 999 112 000 fireman",
  woke: "woke woken waking silenced muted silencing muting hushed",
  neg: `
    no not nobody none never without isnt doesnt didnt wasnt arent werent havent hasnt hadnt neither nor noone nothing dont zero
    aint cannot cant non
  `,
  past: "was were had went felt did got told used said happened",
  laugh: "lol haha hahaha lmao rofl",
  warn: `
    driver cyclist honked pointed pointing shouted knocked yelled villager walker neighbour neighbor neighbours neighbors passerby
    postman mailman
  `,
};
