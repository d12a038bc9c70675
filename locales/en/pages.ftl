# Words of the pages around the questions and the advice.

## Every page
page-name = Scopewright
page-skip = To the content
page-back = Back
page-next = Next
page-home = Start page
page-theme-day = Colours: day
page-theme-night = Colours: night
page-theme-system = Colours: system
page-units-metric = Metres and grams
page-units-imperial = Yards and grains
page-close = Close
page-more = Numbers, formula, source
page-unknown-place = There is no page at { $place }. Here is the start page.

## Opening
opening-title = Which riflescope serves you
opening-lead = You say what you shoot at, from where, in what light and with which rifle. The page computes what that asks of a sight, and gives you one line to read out in a shop, with every reason in numbers and the view to scale.
opening-start = Start with the first question
opening-go-on = Go on where you stopped
opening-to-advice = To your advice
opening-again = Start again from nothing
opening-length = Eight questions, about two minutes. Nothing has to be typed.
opening-is = It gives a specification, never a brand.
opening-covers = Riflescopes only: no electronic sights, no handguns, no crossbows.
opening-private = Answers stay on this device. Nothing is sent anywhere.
opening-figures = The figures are about a sight. They never say whether to shoot.
opening-doors = Without questions
opening-door-compare = This one or that one
opening-door-compare-hint = Two sights side by side, for your shooting
opening-door-rings = Which ring height
opening-door-rings-hint = Bell, barrel, rail: the saddle height in ten seconds
opening-door-zero = Zero clicks
opening-door-zero-hint = Group on paper, clicks on the turret
opening-door-counter = At the counter
opening-door-counter-hint = Every question on one screen, for a shop's tablet

## Questions
question-progress = { $here } of { $all }, { $minutes ->
    [0] the last one
    [1] about a minute left
   *[other] about { $minutes } minutes left
  }
question-sharpen = To sharpen the advice
question-forming = Your line so far
question-unsure-assumes = Assumed then: { $assumption }
question-errors = { $count ->
    [one] One thing to put right
   *[other] { $count } things to put right
  }

## All answers
check-title = Your answers
check-lead = Look them over. Each can be changed, and the advice follows.
check-change = Change
check-change-what = Change: { $question }
check-unanswered = Not answered, so assumed: { $assumption }
check-unsure = Not sure: { $assumption }
check-advice = Show the advice
check-sharpen = Sharpen the advice
check-sharpen-lead = Not needed, but each of these can move the line.
check-forget = Forget all answers
check-forget-sure = Forget everything stored on this device?
check-forget-yes = Forget them
check-forget-no = Keep them
check-forgotten = Everything stored here is forgotten.

## Stored answers
stored-damaged = The answers stored on this device could not be read, so you start afresh. { $why } What was stored is set aside, not thrown away.
stored-partly = Some of the answers stored on this device could not be read and are open again: { $why }. What was stored is set aside as it was.
stored-later = The answers stored on this device were written by a later version of this page (version { $version }; this one knows { $known }). What this one understands is filled in; what was stored is set aside as it was. Reload to get the later page.
stored-denied = This browser keeps nothing for this page, so your answers last until the tab is closed. Save them with a link at the end.
stored-full = The browser has no room left, so your answers last until the tab is closed. Save them with a link at the end.
stored-elsewhere = Your answers were changed in another tab. Nothing here is lost.
stored-elsewhere-take = Take those
link-not-opened = { $why } Your own answers are untouched.
link-opened-partly = The answers of the link are open. Some of them could not be read and are open questions again.
link-opened = The answers of the link are open.
link-opened-undo = Back to mine
worker-absent = This browser gives the page no helper, so it computes by itself in small steps. That takes a little longer.

## What to try in the shop
shop-title = In the shop, sight in hand
shop-lead = No computation can tell how a sight tracks, how it seals, how its edge looks. Your eye and hand can, in ten minutes. The sight off the rifle where possible.
shop-caution = Never aim at people, doors or the street. Never look at the sun. The rifle is unloaded and checked twice, or it stays in its case.
shop-bring = Bring
shop-bring-list = The rifle, unloaded and cased, cartridges apart, papers; your winter jacket; the glasses you shoot with; a ruler.
shop-try = Try, in this order
shop-1-title = Focus the eyepiece first
shop-1 = Look away, look in: the mark must be sharp within a second. Again in the dark corner.
shop-2-title = The dark corner
shop-2 = Rest your eyes five minutes. Same power, same spot in both sights; look for detail, not for brightness. Then each at its best power. Then a lamp just outside the field: how much does the black turn grey?
shop-3-title = Eye relief
shop-3 = At lowest, middle and top power, hold a card behind the eyepiece and measure to where the bright disc is smallest. Take the least of the three: you need { $relief }. The disc is the exit pupil: measure it too.
shop-4-title = The picture forgives
shop-4 = Move the eye 5 mm sideways and 10 mm back. The picture should stay.
shop-5-title = Parallax at your distance
shop-5 = Rest the sight, aim at a mark { $usual } away, move only the head. The aim should stay on the mark.
shop-6-title = Clicks come back
shop-6 = 5 mrad up, right, down, left: the aim must be where it began.
shop-7-title = The zoom does not move the aim
shop-7 = Run the zoom from end to end. The aim may move a quarter of a line, not more.
shop-8-title = Lowest power, both eyes open
shop-8 = Swing along the wall. The edge of the picture should not trouble you.
shop-9-title = The lit mark in the dark
shop-9 = At its lowest setting in the dark corner only the centre may glow, not the wall of the tube.
shop-10-title = In the jacket
shop-10 = Eyes shut, to the shoulder, eyes open: a full picture at once, or the height is wrong.
shop-11-title = Gloves, and your hand
shop-11 = Everything once with gloves on, and from the left if you shoot left-handed.
shop-12-title = The papers
shop-12 = Mass, night transmission and how it was measured, least eye relief over the zoom, guarantee and service.
shop-print = Print this page

## After buying
after-title = After: mount, zero, keep
after-lead = The maker's figures come first, and a licensed gunsmith for work on the rifle.
after-mount = Mount
after-mount-1 = Rifle empty, checked twice, bolt out.
after-mount-2 = Base screws free of grease, tightened to the maker's figure; thread-lock on the bases only.
after-mount-3 = Set the eye relief at top power, in the lowest or steepest position you shoot from, with glasses and jacket; then as far forward as the picture allows.
after-mount-4 = Level the rifle, then the reticle on a plumb line.
after-mount-5 = Ring caps crosswise with even gaps. Usual is 1.7 to 2.8 N·m; the maker's figure comes first. Witness marks on the screws.
after-bore = Bore sighting
after-bore-1 = Through the bore, or with a tool in it. Take the tool out and look through the barrel before loading.
after-zero = First zero
after-zero-1 = Start at 25 m with a firm hold, one cartridge, head back, hearing and eye protection on. Know what lies behind the target.
after-zero-2 = Then 100 m: groups of three, better five, corrected from the centre of the group. The last group from a cold barrel.
after-zero-3 = Zero clicks does the sum: group on paper to clicks.
after-confirm = Confirm
after-confirm-1 = Shoot at your usual and your farthest range. Two distances before you believe any card.
after-confirm-2 = Write down load, batch, air and date.
after-confirm-3 = A mount that comes off: off and on five times, a shot each. Within 3 cm at 100 m is usable, 1 to 1.5 cm good.
after-confirm-4 = After twenty shots check the screws again.
after-lost = It no longer holds
after-lost-lead = Likely and cheap first:
after-lost-list = the batch of ammunition; action and base screws; ring caps; something touching barrel or bell; the stock; magazine or bipod pressure; cheek and parallax; crown, copper; a loose eyepiece; a turret at its end; then the sight itself.
after-lost-send = If it is the sight: send it in alone, with pictures of the targets and what you ruled out.
after-care = Care
after-care-1 = Blow, brush, rinse grit off, then tissue. Deionised or distilled water rather than tap water; a little pure alcohol for grease; no solvent on rubber or coatings.
after-care-2 = Warm it up in a closed bag. Battery out over the summer, button cells away from children.
after-brow = After a cut on the brow: stop, and mount it again.
after-more = Also mind
after-more-1 = The cartridge's marking must equal the barrel's.
after-more-2 = Moderator or brake: thread and alignment checked, then zero again.
after-more-3 = Rimfire and slug ricochet, from frozen ground and water too.
after-more-4 = Know the transport rules on the way to shop and range.
after-more-5 = What to do about a wounded animal is outside this page.

## About
about-title = How this works, and what it keeps
about-what = What it does
about-what-1 = Your answers become several hundred of your own occasions: animal, range, minute of the evening, ground, cloud, position. Every specification the trade could build is put through them. What it fails is booked to a cause, and what is left is weighed against mass, height and money as you weigh them.
about-not = What it does not do
about-not-1 = It names no brand and no price. It knows no law: lit marks, night hours, attachments, calibres and energies differ by place and are not checked here.
about-not-2 = Its figures are about a sight, never about whether to shoot. Detection is not identification, identification is not permission. What lies behind the target decides first.
about-sources = Where the numbers come from
about-source-pupil = Pupil by light and age: Watson and Yellott (2012), A unified formula for light-adapted pupil size, Journal of Vision 12(10):12.
about-source-threshold = What can be told apart: Blackwell (1946), Contrast thresholds of the human eye, Journal of the Optical Society of America 36:624, as fitted by Crumey (2014), Human contrast threshold and astronomical visibility, MNRAS 442:2600.
about-source-sun = Sun and Moon: Meeus (1998), Astronomical Algorithms.
about-source-light = Light by the Sun's height: Seidelmann (ed., 1992), Explanatory Supplement to the Astronomical Almanac.
about-source-flight = Flight: point-mass trajectory with the standard drag functions G1 and G7 and the ICAO standard atmosphere.
about-source-practice = Manners, ranges, rings, what is usual: common practice, no source; marked so where it is used.
about-kept = What is kept on this device
about-kept-1 = Your answers, your choice of colours and, in a shop, its stock list, in this browser. Nothing else, and nothing anywhere else. The page makes no request to any other place.
about-offline = After the first visit it works without a network.
about-kept-answers = Your answers
about-kept-typed = What stands in fields as you typed it
about-kept-set-aside = Answers that could not be read whole, set aside as they were
about-kept-theme = Your choice of colours
about-kept-shelf = A shop’s stock list
about-kept-where = In this browser’s local storage, as { $name }, until you forget it.
about-kept-copy = A copy of this page
about-kept-copy-where = In this browser’s cache, so that it works without a network. No answers are in it.
about-kept-not = Inside another site’s page nothing is stored: answers there last as long as the page is open. A shared link holds its answers itself.
about-drop-copy = Remove the offline copy
about-copy-dropped = The offline copy is removed. The next visit makes it again.
about-colours = Colours
about-units = Units

## Controls
answer-none = not said
number-exactly = Or exactly
age-exactly = Or your exact age in years
decade = { $from }–{ $to }
often-label = How often: { $what }
quarry-group-deer = More deer and antelope
quarry-group-mountain = In the mountains
quarry-group-other = Bear, heavy game, coyote
quarry-group-small = Small game and birds
quarry-group-targets = More targets
quarry-group-chosen = ({ $count } chosen)
cartridge-choose = Choose from the list
ranges-scale = Each is drawn as large as the bare eye sees it there, with this screen at arm’s length. What is larger than its frame is cut.
range-nearest = Nearest
range-usual = Usual
range-farthest = Farthest
range-more = { $what }: up to { $to }
range-less = { $what }: down to { $to }
ranges-farthest-before-nearest = Farthest is { $farthest }, nearer than nearest at { $nearest }. The farthest has to be { $nearest } or more; perhaps the two are swapped.
ranges-usual-beyond = Usual is { $usual }, beyond farthest at { $farthest }. It has to lie between nearest and farthest.
ranges-usual-before = Usual is { $usual }, nearer than nearest at { $nearest }. It has to lie between nearest and farthest.
question-more = More, if you know it
question-terms = Tap a word for what it means: { $terms }
question-how = How to find out
line-forming-nothing = – × –
line-forming-glass = { $power } × { $objective }
question-missing = There is no such question here any more.

## Sharing
share-title = Keep it, or take it along
share-sum = As a link, or as a code to photograph.
share-lead = The link holds your answers themselves. Whoever opens it sees them; nothing is stored anywhere else.
share-send = Send the link
share-copy = Copy the link
share-copied = Copied.
share-qr = QR code of the link
share-label = Link

## The counter
counter-kind = What for, and how
counter-kind-seat_evening = Deer, fox from seat
counter-kind-boar_by_night = Boar, late
counter-kind-woodland_on_foot = Wood, on foot
counter-kind-driven = Driven
counter-kind-hill = Hill
counter-kind-deer_stand = White-tail stand
counter-kind-plains = Plains game
counter-kind-dangerous_game = Dangerous game
counter-kind-fox_by_moon = Fox by Moon
counter-kind-rabbits = Rabbits, tins
counter-kind-air_rats = Rats, pigeons
counter-kind-prairie = Prairie dogs
counter-kind-paper_100 = Paper 100 m
counter-kind-steel = Steel, far
counter-kind-field_target = Field target
counter-open = not said
counter-other = other
counter-undo = Undo
counter-next = Next customer
counter-done = Done
counter-begin = Touch a usual kind of shooting, then correct what differs. What is left open counts as usual. A second touch takes an answer back.
counter-says = What is advised
counter-faces = What is shown
counter-face-line = Line
counter-face-why = Reasons
counter-face-view = View
counter-face-shelf = Shelf
counter-turn = Show the customer
counter-turn-back = Back to the questions
counter-turn-across = Upside down, for across the counter
counter-link = Customer’s link
counter-link-lead = Paste the link that the customer brought, or hold its code before the camera. The answers open here and go on.
counter-link-open = Open it
counter-camera = Read a code with the camera
counter-camera-view = What the camera sees
counter-camera-cannot = This browser cannot read codes with the camera. Paste the link, or read the code with the camera of the device itself.
counter-camera-denied = There is no camera, or this page may not use it. Allow it in the browser, or paste the link.
counter-cartridge = Rifle
counter-cartridge-308_win_10_7_g = .308 Win.
counter-cartridge-30_06_spring_11_7_g = .30-06 Spring.
counter-cartridge-6_5x55_se_9_1_g = 6.5×55 SE
counter-cartridge-9_3x62_18_5_g = 9.3×62
counter-cartridge-223_rem_3_56_g = .223 Rem.
counter-cartridge-22_lr_2_6_g_standard = .22 LR
counter-sight_line = On it now
counter-sight_line-none = nothing
counter-base = Base
counter-base-slotted_rail = slotted rail
counter-base-narrow_slots = narrow slots
counter-base-small_dovetail = small dovetail
counter-base-wide_dovetail = wide dovetail
counter-base-two_piece = two-piece
counter-base-bare = bare
counter-until = Till
counter-until-daylight = day
counter-until-sunset = sunset
counter-until-half_hour_after_sunset = 30 min after
counter-until-hour_after_sunset = 60 min after
counter-until-end_of_seeing = last light
counter-until-moon = Moon
counter-until-lit_range = lit range
counter-age = Age
counter-age-15 = < 20
counter-age-25 = 20s
counter-age-35 = 30s
counter-age-45 = 40s
counter-age-55 = 50s
counter-age-65 = 60s
counter-age-75 = 70 +
counter-glasses = Glasses
counter-glasses-no_glasses = none
counter-glasses-distance = distance
counter-glasses-varifocal = varifocal
counter-glasses-thick_frame = thick frame
counter-annoys = Annoys
counter-annoys-too_dark = dark
counter-annoys-too_narrow = narrow
counter-annoys-too_heavy = heavy
counter-annoys-hard_to_find_picture = hard to find
counter-annoys-not_far_enough = not far enough
counter-rings = Rings
counter-rings-none = none
counter-rings-25_4 = 25.4
counter-rings-26 = 26
counter-rings-30 = 30
counter-rings-34 = 34
counter-rings-35 = 35
counter-rings-36 = 36
counter-rings-40 = 40
counter-band = All in
counter-band-A = 320 €
counter-band-B = 750 €
counter-band-C = 1500 €
counter-band-D = 2800 €
counter-band-E = more
counter-zoom = Zoom
counter-zoom-never = never
counter-zoom-before_sitting = set once
counter-zoom-each_shot = each shot

## Inside another page
embed-preset-left = A preset of the page around was left out: { $why }
place-from-zone = As your clock says: { $zone }, latitude { $latitude }°, longitude { $longitude }°
embed-language = The page around asks for the language “{ $read }”. There is { $known }.
