# The questions: heading, one line of why, what "not sure" assumes, and for some how to find out.

## The first eight

question-quarry = What do you shoot at, and which most?
    .short = What
    .why = Size and speed of the target decide almost everything.
    .unsure = roe deer, wild boar and fox, equally often
    .unsure-america = white-tailed deer mostly, sometimes coyote and paper at 100 m
question-manner = How do you usually shoot?
    .short = How
    .why = How steady you are caps the magnification you can use. Think of your last five shots.
    .unsure = what is usual for it: { $list }
question-light = When do you stop, and what is around you then?
    .short = Light
    .why = The last half hour decides the size of the front lens.
    .unsure = half an hour after sunset from a seat, else sunset; wood’s edge and open ground half each; cloud on four evenings of ten
question-ranges = How near, how far, how far mostly?
    .short = Ranges
    .why = The nearest shot sets the lowest power, the farthest sets drop and detail.
    .unsure = what is usual: { $list }
    .how = Think of your last five shots, and for the farthest of what you really fired at in three seasons. Pace it (a pace is about 0.75 m) or look at a map: people remember distances as longer than they were.
    .row-all = { $nearest }, mostly { $usual }, up to { $farthest }
    .row = { $manner }: { $nearest }, mostly { $usual }, up to { $farthest }
question-eye = How old are you, and do you wear glasses when you shoot?
    .short = Eye
    .why = Your pupil decides how much of the light gets in; glasses keep the eye farther from the sight.
    .unsure = 48 years, give or take 15; one in three wears glasses
    .how = The pupil narrows with age, so age alone is a fair guess. To measure it: five minutes in dim light, then a photograph with a ruler held to the cheek.
question-rifle = Which rifle, and what does it fire?
    .short = Rifle
    .why = Recoil decides how far from the eye the sight must sit.
    .unsure = { $load } at { $velocity }; the rifle { $mass }, give or take { $spread }
    .how = The cartridge is engraved on the barrel and stamped on the case head. Go by the engraving, never by what seems to fit: two similar names can be a danger. Mass: bathroom scales with the rifle and without it, unloaded.
question-mount = What is on the rifle to hold a sight?
    .short = Mount
    .why = Rings must match the tube exactly: 25.4 is not 26.
    .unsure = no rings to keep; six of ten rifles have a slotted rail
    .how = The bore is engraved on most rings. Else lay a paper strip round the old tube: 79.8 mm round is 25.4, 81.7 is 26, 94.2 is 30, 106.8 is 34. Rail: about 21 mm wide with 5.2 mm slots every 10.0 mm is the slotted rail; narrower or uneven slots are the narrow kind; smooth grooves 9.5 to 13.5 mm apart are a small dovetail. Unsure: take the rifle along, unloaded and cased.
question-money = What may it cost, all in?
    .short = Money
    .why = A quarter of it goes to rings, mounting and the cartridges to zero it.
    .unsure = no limit named; a sight is weighed by what it is worth

## To sharpen the advice

question-sight_now = Which sight have you now, and what annoys you?
    .short = Sight now
    .why = It is the one to beat.
    .unsure = nothing to compare with
question-zoom = Do you turn the zoom?
    .short = Zoom
    .why = A power left in the wrong place is the commonest reason why a good sight fails.
    .unsure = it is left where it was in eight shots of ten
question-detail = What must you make out before you may shoot?
    .short = Detail
    .why = It decides how much magnification you need. What must be made out is for the law of the place; it is not checked here.
    .unsure = sex or age in about six of ten shots at deer and four of ten at boar
question-carry = How far do you carry the rifle?
    .short = Carry
    .why = Every 100 g is felt on the hill and hardly in a seat.
    .unsure = what goes with how you shoot
question-distance = How do you aim when it is far?
    .short = Distance
    .why = It decides whether marks or a dial are worth their price.
    .unsure = aims dead on, and guesses the distance to within a fifth
question-lit_mark = Is a lit mark lawful where you shoot, and do you want one?
    .short = Lit mark
    .why = A lit centre helps on moving game and in the last light. Whether it is lawful differs by place and is not checked here.
    .unsure = lawful and neither wanted nor refused
question-rulebook = Does a rule book bind you?
    .short = Rule book
    .why = Classes limit power, lit marks, refocusing or mass, and some forbid a telescope altogether: check the rule book.
    .unsure = nothing is limited
question-cheek = Does your cheek stay on the wood?
    .short = Cheek
    .why = A high sight over a low comb lifts the cheek off, and the picture goes black.
    .unsure = the comb is right, and you shoot from the right
    .how = Rifle unloaded and checked twice: eyes shut, cheek down where it is comfortable, open your eyes. Full picture: right. Only its lower half, or the top of the sight: too low.
question-barrel = What is under the front of the sight?
    .short = Barrel
    .why = The barrel, a rail or an iron sight decides how low a large bell can sit.
    .unsure = a barrel of 9 mm radius, no rail and no iron sight under the bell
    .how = Lay a paper strip round the barrel where the bell will be, and divide its length by 6.28.
question-place = Where and when do you shoot?
    .short = Place
    .why = Latitude and season decide how long dusk lasts.
    .unsure = { $latitude }°, { $first } to { $last }
question-habits = Anything else that matters?
    .short = Habits
    .why = These change what to ask of the mount and the eyepiece.
    .unsure = nothing of the kind

## Parts of a page

part-uses = What you shoot at
part-manners = How you shoot
part-until = You stop
part-minutes_after_sunset = Minutes after sunset
    .hint = Drag the strip to where you stop, or type the minutes.
stop-label = When you stop
stop-drag = Drag to where you stop, or choose below.
stop-at = You stop at { $when }.
stop-evening = A clear evening in the middle of your season.
part-morning = I am out in the morning too
part-covers = Around you then
part-snow = Snow
part-town_glow = A town’s glow in the sky
part-haze = The air
    .hint = Haze takes the contrast before it takes the light, most at your farthest range.
part-ranges = Ranges
part-age = Your age
    .hint = From 8 to 95.
part-dark_pupil = Your pupil in the dark
    .hint = Only if it was measured. Your age is enough otherwise.
part-glasses = Glasses when you shoot
part-astigmatism = A lit dot looks like a star to me
    .hint = A sign of astigmatism: the dot is not at fault.
part-lens = The lens of your eye
part-cartridge = Cartridge
    .hint = Choose by the engraving on the barrel.
part-bullet_mass = Bullet
part-velocity = Muzzle velocity
    .hint = Measured with your rifle if you can; tables often promise too much.
part-bc_g1 = Ballistic coefficient G1
part-bc_g7 = Ballistic coefficient G7
    .hint = If you know both, G7 decides.
part-powder_mass = Powder
part-rifle_kind = Kind of rifle
part-rifle_mass = The rifle without a sight
    .hint = Bare, unloaded, without a moderator.
part-muzzle = On the muzzle
part-barrel_length = Barrel length
part-rings = Rings you want to keep
part-rings_height = Ring centre above the rail
part-base = The base on the rifle
part-incline = The base is inclined forward by
    .hint = Usual is nothing. 20 MOA is 5.8 mrad.
part-rail_under_bell = A rail runs on under the bell
part-band = All in
    .hint = In euro as a yardstick; think of the same worth in your own money.
part-attitude = How you weigh money
part-all_in = The exact amount, in your own money
    .hint = Only for your record.
part-used = Used is fine
part-sight_line = What stands on it
    .hint = As on the box: “3-12x50” is enough.
part-annoys = What annoys you about it
part-zoom = You turn it
part-detail = You must make out
part-distance_habit = You
part-rangefinder = You measure the distance
part-angle_unit = The unit you know
part-power_most = Magnification at most
part-lit_forbidden = Lit marks are forbidden
part-refocus_forbidden = Refocusing is forbidden
part-focus_finds_range = The range is found by focusing
part-sight_mass_most = The sight may weigh
part-lit_mark = A lit mark
part-left_handed = I shoot from the left shoulder
part-both_eyes_open = Both eyes stay open
part-comb = The comb
part-carry = You carry it
part-barrel_radius = Radius of the barrel under the bell
part-iron_sights = Iron sights stand there, or must stay usable
part-latitude = Latitude
    .hint = North is positive. One decimal is enough.
part-longitude = Longitude
    .hint = East is positive.
part-height_above_sea = Height above the sea
part-first_month = From
part-last_month = To
part-coldest = Coldest day
part-others_use_it = Somebody else uses it too
part-comes_off = It must come off and go back on

## How often

often-4 = often
often-2 = sometimes
often-1 = rarely
answer-yes = Yes
answer-no = No
answer-unsure = Not sure
answer-often = { $name }: { $often }
answer-age = { $years } years
answer-named = { $name }: { $words }
list-and = { $rest } and { $last }
list-comma = { ", " }
list-semicolon = { "; " }

## Manners

option-manners-seat_rail = From a seat, on the rail
option-manners-two_point_sticks = On foot, two-point sticks
option-manners-single_stick = On foot, one stick or a tree
option-manners-driven = Driven game, swinging
option-manners-prone_pack = Prone on the hill, over a pack
option-manners-bench = Bench, or bipod and rear bag
option-manners-walking_up = Walking up game
option-manners-kneeling = Kneeling or sitting, unsupported
option-manners-standing_free = Standing, unsupported

manner-phrase-seat_rail = from a seat
manner-phrase-two_point_sticks = on foot with sticks
manner-phrase-single_stick = on foot with one stick
manner-phrase-driven = driven
manner-phrase-prone_pack = prone over a pack
manner-phrase-bench = from a bench
manner-phrase-walking_up = walking up
manner-phrase-kneeling = kneeling
manner-phrase-standing_free = standing

## Light

option-until-daylight = In full daylight
option-until-sunset = At sunset
option-until-half_hour_after_sunset = Half an hour after sunset
option-until-hour_after_sunset = An hour after sunset
option-until-end_of_seeing = When I see nothing any more
option-until-moon = By the Moon
option-until-lit_range = On a lit range
option-covers-open = Open ground
option-covers-edge = The edge of a wood
option-covers-ride = A ride between trees
option-covers-bare_wood = A wood without leaves
option-covers-in_leaf = A wood in leaf
option-covers-dense_conifer = Dense conifers
option-snow-never = Hardly ever
option-snow-sometimes = Sometimes
option-snow-often = Mostly
option-town_glow-dark = None to speak of
option-town_glow-village = A village
option-town_glow-town = A town
option-town_glow-city = A city
option-haze-clear = Mostly clear
option-haze-hazy = Often hazy, some 8 km
option-haze-misty = Often misty, some 2 km

## Eye

option-age-15 = Under 20
option-age-25 = 20 to 29
option-age-35 = 30 to 39
option-age-45 = 40 to 49
option-age-55 = 50 to 59
option-age-65 = 60 to 69
option-age-75 = 70 and over
option-glasses-no_glasses = None
option-glasses-distance = For distance
option-glasses-varifocal = Varifocal
option-glasses-thick_frame = Protective, or a thick frame
option-lens-natural = As it was
option-lens-cataract = Cataract
option-lens-replaced = Replaced

## Rifle

cartridge-group-none = Air rifles
cartridge-group-rimfire = Rimfire
cartridge-group-light = Light recoil
cartridge-group-medium = Medium recoil
cartridge-group-strong = Strong recoil
cartridge-group-heavy = Heavy recoil
cartridge-group-slug = Slugs and muzzle loaders
cartridge-often-met = Often met
cartridge-load = { $designation }, { $mass }
option-rifle_kind-bolt = Bolt action or straight pull
option-rifle_kind-single_shot = Single shot or combination
option-rifle_kind-double = Double rifle
option-rifle_kind-straight_stock = Self-loader, straight stock
option-rifle_kind-lever = Lever action
option-rifle_kind-slug_gun = Slug gun
option-rifle_kind-spring_air = Spring air rifle
option-rifle_kind-precharged_air = Pre-charged air rifle
option-rifle_kind-muzzle_loader = Muzzle loader
option-rifle_kind-forward_rail = Rail forward of the receiver
option-muzzle-bare = Nothing
option-muzzle-moderator = Moderator
option-muzzle-brake = Brake

## Mount

option-rings-none = None to keep
option-rings-25_4 = 25.4 mm (1{ "\u202F" }in)
option-rings-26 = 26 mm
option-rings-30 = 30 mm
option-rings-34 = 34 mm
option-rings-35 = 35 mm
option-rings-36 = 36 mm
option-rings-40 = 40 mm
option-base-slotted_rail = Slotted rail (MIL-STD-1913)
option-base-narrow_slots = Rail with narrow slots
option-base-small_dovetail = Small dovetail, 9.5 to 13.5 mm
option-base-wide_dovetail = Wide receiver dovetail
option-base-two_piece = Two-piece bases
option-base-bare = Nothing yet

## Money. The bands are those of the sight alone, A < 250, B 250–600, C 600–1200, D 1200–2200 €; all in is about a quarter more.

option-band-A = Up to about 320 €
    .hint = the sight under 250 €
option-band-B = Up to about 750 €
    .hint = the sight 250 to 600 €
option-band-C = Up to about 1500 €
    .hint = the sight 600 to 1200 €
option-band-D = Up to about 2800 €
    .hint = the sight 1200 to 2200 €
option-band-E = More than that
    .hint = the sight over 2200 €
option-attitude-little_as_sensible = As little as is sensible
option-attitude-what_it_is_worth = What it is worth
option-attitude-no_limit = No limit

## Sharpening

option-annoys-too_dark = Too dark
option-annoys-too_narrow = Field too narrow
option-annoys-too_heavy = Too heavy
option-annoys-hard_to_find_picture = The picture is hard to find
option-annoys-not_far_enough = Not enough magnification
option-zoom-never = Never
    .hint = nine shots of ten at the power it was left at
option-zoom-before_sitting = Before I sit down
    .hint = six shots of ten at the power it was left at
option-zoom-each_shot = For each shot
    .hint = two shots of ten at the power it was left at
option-detail-body_shape = The shape of the body
option-detail-young = A young one, or teats
    .hint = a detail of about 50 mm
option-detail-antler = Points of an antler
    .hint = a detail of 20 to 25 mm
option-carry-short = From the car to the seat
option-carry-few_km = A few kilometres
option-carry-all_day_hill = All day on the hill
option-distance_habit-dead_on = Aim dead on
option-distance_habit-marks = Hold with marks in the reticle
option-distance_habit-dial = Turn a ring or dial
option-distance_habit-dial_and_marks = Both, by the occasion
option-angle_unit-mrad = Milliradian
option-angle_unit-moa = Minute of angle
option-angle_unit-neither = Neither
option-lit_mark-wanted = Lawful and wanted
option-lit_mark-indifferent = Lawful, all the same to me
option-lit_mark-not_wanted = Not wanted
option-lit_mark-not_allowed = Not allowed where I shoot
option-comb-low = Too low: my cheek lifts
option-comb-right = Right
option-comb-adjustable = Adjustable
month-1 = January
month-2 = February
month-3 = March
month-4 = April
month-5 = May
month-6 = June
month-7 = July
month-8 = August
month-9 = September
month-10 = October
month-11 = November
month-12 = December

## Animals and targets

what-roe_deer = roe deer
what-wild_boar = wild boar
what-red_fox = red fox
what-red_deer = red deer
what-fallow_deer = fallow deer
what-sika_deer = sika deer
what-chamois = chamois
what-mouflon = mouflon
what-ibex = ibex
what-muntjac = muntjac
what-white_tailed_deer = white-tailed deer
what-wapiti = wapiti
what-moose = moose
what-pronghorn = pronghorn
what-plains_antelope = large plains antelope
what-dangerous_game = buffalo-sized dangerous game
what-black_bear = black bear
what-coyote_or_jackal = coyote or jackal
what-ground_game = badger-sized ground game
what-marmot_or_groundhog = marmot or groundhog
what-brown_hare = brown hare
what-rabbit = rabbit
what-prairie_dog = prairie dog
what-ground_squirrel_or_rat = ground squirrel or rat
what-tree_squirrel = tree squirrel
what-crow = crow
what-wood_pigeon = wood pigeon
what-wild_turkey = wild turkey, where a rifle is lawful
what-capercaillie = capercaillie-sized bird, where a rifle is lawful
what-paper_50_m = 50 m rimfire paper
what-paper_100_m = 100 m paper
what-paper_300_m = 300 m paper
what-air_rifle_10_m = paper, air rifle 10 m
what-field_target_15_mm = field target, 15 mm zone
what-field_target_25_mm = field target, 25 mm zone
what-field_target_40_mm = field target, 40 mm zone
what-biathlon_prone = biathlon disc, prone
what-biathlon_standing = biathlon disc, standing
what-running_boar_50_m = running boar target
what-running_moose_80_m = running moose target
what-steel_disc_20_cm = steel disc, 20 cm
what-steel_plate_30_by_45_cm = steel plate, 30 by 45 cm
what-steel_plate_60_by_60_cm = steel plate, 60 by 60 cm
what-silhouette_chicken = metal silhouette, chicken
what-silhouette_ram = metal silhouette, ram
what-rimfire_silhouette_chicken = rimfire silhouette, chicken
what-rimfire_silhouette_ram = rimfire silhouette, ram

## Kinds of shooting: one tap fills quarry, manner, ranges and light

kind-seat_evening = Deer and fox from the seat
kind-boar_by_night = Boar from the seat, late
kind-woodland_on_foot = Deer in the wood, on foot
kind-driven = Driven game
kind-hill = The hill
kind-deer_stand = White-tailed deer from a stand
kind-plains = Plains game
kind-dangerous_game = Dangerous game
kind-fox_by_moon = Fox by the Moon
kind-rabbits = Rabbits and tins
kind-air_rats = Rats and pigeons
kind-prairie = Prairie dogs and coyotes
kind-paper_100 = Paper at 100 m
kind-steel = Steel far out
kind-field_target = Field target

## What is wrong with a number, beside its field

input-empty = Nothing stands here. Type a number, or choose “not sure”.
input-no-number = “{ $typed }” is not a number. Type digits, as in { $example }.
input-unknown-unit = “{ $unit }” in “{ $typed }” is not a unit known here. Type it in { $wanted }, or without a unit.
input-other-unit = { $unit } does not measure this. Type it in { $wanted }.
input-ambiguous = This can be read as { $thousands } or as { $decimal }. Which is meant?
input-other-meant = { $value } makes no sense here. Did you mean { $meant }, which is { $metric }?
input-out-of-range = { $value } was read. { $least } to { $most } makes sense here.
input-age = { $value } was read. Ages from { $least } to { $most } can be computed with.
input-take = Yes, { $value }

## A figure that is possible but unusual: asked about, never changed silently

doubt-unit = { $value } was read, far from what is usual here. Did you mean { $meant }, which is { $metric }?
doubt-coefficient = { $value } lb/in² was read; no bullet has that. Was it kg/m², which is { $meant } lb/in²?
doubt-g1-as-g7 = No bullet of this mass has so high a G7 coefficient (form factor { $factor }; real ones are above 0.85). Is it the G1 figure?
doubt-g7-slow = G7 describes long bullets above the speed of sound. For this one the G1 figure fits better.

## What is wrong with a set of answers. Field is the path in the answers, as uses[0].share.

problem-out-of-range = { $field } is { $value }. { $least } to { $most } makes sense.
problem-not-finite = { $field } is not a finite number.
problem-unknown-key = { $field } is “{ $read }”, which is not known here.{ $nearest ->
    [none] { "" }
   *[other] { " " }Is “{ $nearest }” meant?
  }
problem-farthest-nearer = { $field }: the farthest, { $farthest }, is nearer than the nearest, { $nearest }. The farthest must be at least as far.
problem-usual-outside = { $field }: the usual range, { $usual }, must lie from the nearest, { $nearest }, to the farthest, { $farthest }.
problem-all-zero = { $field }: all shares are 0. At least one must be above 0.
problem-negative-share = { $field } is { $value }. A share cannot be negative.
problem-not-offered = { $field } is { $value }. It can be { $offered }.
problem-contradiction = { $field } says one thing and { $other } the opposite. Keep one of them.
problem-too-long = { $field } is { $length } long. At most { $most } are kept.
parse-not-json = This is not JSON: line { $line }, column { $column }.
parse-not-answers = This is JSON, but not a set of answers: it must be an object, as in { "{" }"version": 1{ "}" }.
parse-too-long = This is { $length } characters long, far too long for a set of answers.
parse-no-version = The version is missing. Write "version": 1.
parse-later = These answers are of version { $read }. This program reads up to { $known }; a later one reads them.
parse-unreadable = { $field } could not be read: { $why }.

## A share link

share-empty = There are no answers in this link.
share-foreign = This is not a link made here.
share-truncated = A part of this link is missing. Copy it whole.
share-altered = This link was altered on its way, so it is not trusted. Ask for it again.
share-later-version = This link was made by a later version of this page. Reload the page and open it again.

## Trade terms, explained on a tap

term-told_apart = told apart
    .means = Known for what it is against its ground, by its smaller parts, with your eye in that light. Not yet which one it is, and no leave to shoot.
term-exit_pupil = exit pupil
    .means = The bright disc behind the eyepiece through which all light leaves: objective divided by magnification. What is wider than your own pupil falls on the iris and is lost to the night, but the picture is easier to find.
term-eye_relief = eye relief
    .means = How far behind the eyepiece the eye sees the whole picture. Recoil uses it up; too little cuts the brow.
term-objective = objective
    .means = The front lens. Its diameter divided by the magnification is the exit pupil.
term-bell = bell
    .means = The wide front of the sight that holds the objective, 5 to 8 mm wider than the lens.
term-tube = tube
    .means = The middle of the sight that the rings hold. Its diameter gives room for adjustment, never light.
term-focal_plane = focal plane
    .means = Where the reticle sits. In the first plane it grows with the zoom and its marks are true at every power. In the second it looks the same at every power and its marks are true at one.
term-reticle = reticle
    .means = The lines, dots or marks you aim with.
term-parallax = parallax
    .means = Moving the eye moves the aim unless the target lies at the distance for which the sight is set. It errs only at other distances, and only while the eye is off the middle.
term-mrad = mrad
    .means = Milliradian: 10 cm at 100 m. A click of 0.1 mrad is 1 cm at 100 m.
term-moa = MOA
    .means = Minute of angle: 2.91 cm at 100 m, 1.047 inch at 100 yards.
term-field_of_view = field of view
    .means = How much is seen at once, as a width at a distance. It shrinks as the power grows.
term-twilight = twilight
    .means = The time from sunset until it is fully dark. Civil twilight ends with the Sun 6° below the horizon.
term-transmission = transmission
    .means = The share of light that gets through the glass. 5 % more are seconds of an evening.
term-glare = veiling glare
    .means = Light scattered inside the sight that greys what is dark. Coatings and baffles keep it down; in the dusk against a bright sky it matters more than transmission.
term-comb = comb
    .means = The upper edge of the stock, where the cheek lies.
term-capped = capped turret
    .means = An adjustment under a cap: set at zeroing and then left.
term-dial = dial
    .means = A turret made to be turned for each distance, with a stop at zero.
term-point_blank = dead-on reach
    .means = As far as the bullet stays inside the circle you must hit without holding over. It is a figure of the flight, not a range to shoot at.
term-recoil_velocity = recoil velocity
    .means = How fast the rifle comes back. It decides how much eye relief is enough.
term-rail = slotted rail
    .means = A rail to MIL-STD-1913 or STANAG 4694, about 21 mm wide with slots every 10 mm.
term-dovetail = dovetail
    .means = Grooves cut along the receiver that clamps grip.
term-moderator = moderator
    .means = A silencer on the muzzle. It takes off noise and a fifth to a third of the recoil, and adds about 0.35 kg.
term-brake = brake
    .means = Ports on the muzzle that turn the gas sideways. A third to a half less recoil, and much louder for everyone beside you.
term-aiming_circle = aiming circle
    .means = The circle on the animal or target that has to be hit.
term-price_band = price band
    .means = A step of price of the sight alone, A under 250 € to E over 2200 €.
term-ballistic_coefficient = ballistic coefficient
    .means = How well the bullet keeps its speed. G1 and G7 are two yardsticks: a figure is only good for its own.

## Cautions

caution-unloaded = Rifle unloaded and checked twice while you mount, measure or try.
caution-sun = Never look at the Sun through a sight.
caution-no_binocular = A sight is no binocular: never aim a rifle at what you would not shoot.
caution-shop = In the shop no aiming at people, doors or windows.
caution-behind = Know what lies behind the target.
caution-identify = Seen is not identified, and identified is not permitted.
caution-figures = The figures are about a sight, never about whether to shoot.
caution-eye_relief = Keep the eye relief and a firm hold. After a cut on the brow: stop, and mount it again.
caution-first_shot = First shot with a bag, one cartridge, head back.
caution-bore_tool = Bore tool out, and look through the barrel before loading.
caution-marking = The cartridge’s marking must equal the barrel’s.
caution-muzzle_device = Check thread and alignment of a moderator or brake, and zero again with it.
caution-ricochet = Rimfire bullets and slugs ricochet from frozen ground, stones and water.
caution-protection = Hearing and eye protection, also for who stands beside you.
caution-transport = Mind the transport law on the way to the shop.
caution-law = Lit aids, night hours, attachments, calibres and energies differ by place and are not checked here.
caution-maker = The maker’s load and torque figures come first; work on the rifle is for a licensed gunsmith.
caution-button_cells = Keep button cells away from children.
caution-wounded = What to do about a wounded animal is outside this tool.
caution-spring_air = A spring air rifle kicks both ways: only a sight rated for it holds.
caution-telescope = Some disciplines allow no telescope at all: check the rule book.
caution-dangerous_game = Check the mount before every trip; iron sights that stay usable are the reserve.
caution-both_eyes = With both eyes open a wide field at 1 to 1.5 × helps on moving game.
caution-comes_off = A mount that comes off must come back: off and on five times, a shot each, within 3 cm at 100 m.
caution-others = Someone else’s eye needs its own eyepiece setting and eye relief: try it with both of you.
caution-left_handed = Try controls, dial and bolt with your own hand: many sights are laid out for the other one.
caution-lens = With a cataract glare weighs more than any figure here says; with a replaced lens more blue light gets in. Try it in the dusk.
caution-thick_frame = Try it with the glasses you shoot with: the frame must not meet the eyepiece.

## Units within a sentence

unit-years = years
unit-none = plain numbers
