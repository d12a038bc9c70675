# What stands behind the line, one statement a model. Numbers are this person's own.

## Headings
advice-troubles = What does not fit
advice-evening-behind = Behind this evening
advice-evening-ends = Until when, by how much must be told
advice-evening-steps = What one step is worth
advice-evening-air = Air, coat, weather
advice-evening-night = Your eye, and the Moon
advice-sunrise-at = The Sun rises at { $clock } then.
advice-flight = Your load on its way
advice-flight-sum = Zeroed at { $zero }. At { $range }: { $path }.
advice-rings = The rings
advice-rings-sum = { $tube } mm rings, axis { $height } over the rail.
advice-rings-sheet = The whole mounting sheet
sheet-title = Mounting sheet
sheet-lead = For { $line }. Computed heights and places; the maker’s figures come first.
sheet-none = Answer the questions, and here stand heights, ring places, rail and torques for your sight and rifle.
sheet-height = Height
sheet-along = Along the tube
sheet-hold = What holds it
flight-range = At
flight-path = Path, { $unit }
flight-wobble = Your wobble ±, { $unit }
flight-drift = Drift in 4 m/s, { $unit }
flight-speed = Speed, energy
flight-time = Time

## Directions in words
until-after = until { $minutes } after sunset
until-before = until { $minutes } before sunset
until-all-night = through the whole night
until-never = at no time of that evening
from-before = { $minutes } before sunrise
from-after = { $minutes } after sunrise
later-later = { $minutes } later
later-earlier = { $minutes } earlier
later-same = no earlier and no later
later-within = within { $spread } of the same
path-high = { $cm } high
path-low = { $cm } low
path-same = no change

## What does not fit
note-zero_out_of_reach = With { $bullet } at { $speed } the load never reaches a zero at { $zero }. The farthest it can be zeroed at is { $farthest }. Drop is not counted until the figures are put right.
note-falls_short = With { $bullet } at { $speed } the load falls to the ground after { $reach }; you asked for { $asked }. Nearer ranges, or other figures of the load, would do.
note-no_flight = One figure of the load reads { $value }. From { $least } to { $most } it can be computed with.
note-cannot_be_zeroed = On a base inclined by { $incline } the zero at { $zero } lies { $short } below the lower stop of this sight. A base inclined by { $largest } at most would do.
note-zero_too_high = On a base inclined by { $incline } the zero at { $zero } lies { $short } above the upper stop of this sight. A base inclined by { $smallest } or more would do.
note-kept_tube = Your rings of { $ring } mm do not hold this tube of { $tube } mm: they must match to the tenth.
note-kept_bell = In your rings the axis lies { $centre } over the rail. The bell of { $bell } is { $short } too low there: { $needed } would do, or a bell of { $largest } at most.
note-kept_bolt = In your rings the axis lies { $centre } over the rail. The eyepiece is { $short } too low for the bolt: { $needed } would do, or an eyepiece of { $largest } at most.
note-kept_stock = In your rings the axis lies { $centre } over the rail. On a straight stock that is { $short } too low: there the lowest mount is the wrong one, and { $needed } is where it begins.
note-no_room_to_clamp = The straight part of such a tube is { $short } too short for two rings { $ring } wide. Narrower rings, or a one-piece mount that reaches past the turret, would do.
note-polar_day = At latitude { $latitude } the Sun does not set in the middle of your season: there is no dusk to compute, and the strip shows when it stands lowest.
note-polar_night = At latitude { $latitude } the Sun does not rise in the middle of your season: there is no dusk to compute, and the strip shows when it stands lowest.

## Behind the evening
note-detection = That something stands there is seen { $until }: the whole body, a patch of { $side }. That is not yet what it is.
note-recognition = What it is, is told { $until }, by parts of { $side }. This is what the strip shows.
note-identification = Which one it is, is told { $until }, by parts of { $side }. Telling is still not leave to shoot.
note-second_opinion = At { $power } the threshold model says { $threshold }; a model of Landolt rings says { $ring }, which is { $apart }. The two share no data. Trust the first for the difference between two sights. For the clock trust neither to better than they lie apart.
note-difference = Against the other sight on the strip it ends { $later }, for a usual pupil of your age. With a pupil { $pupil } wider it is { $wide }, as much narrower { $narrow }.
note-difference_measured = Against the other sight on the strip it ends { $later } for your measured pupil of { $pupil }. For a mean person of { $age } years it would be { $mean }.
note-pupil_used = Your pupil opens to { $pupil } in the light you stop in. At { $power } the beam is { $beam } wide: { $used } of it enters your eye, and it fills { $filled } of your pupil.
note-adaptation = When you stop the ground gives { $luminance }. The eye’s day cells, the cones, do { $cones } of the seeing then; its night cells, the rods, do the rest. Twilight is blue, which suits rods: it counts with a ratio of { $ratio }. In light as warm as a lamp’s, { $warm }, it would end { $change }. Moonlight counts with 1.75.
note-step_objective = The next larger objective, { $to }: { $later }.
note-step_magnification = One step more power, { $to }: { $later }.
note-step_transmission = Five points more of transmission: { $later }.
note-step_age = The same evening ten years on, at { $to }: { $later }.
note-haze = At { $range } air that is clear to { $visibility } leaves { $left } of the contrast. There it ends { $later } than without any air.
note-coat = Dry and standing the coat differs from its ground by { $dry }; wet by { $wet }, which ends { $by_wet }; lying down by { $lying }, which ends { $by_lying }.
note-weather = Under a closed sky it ends { $closed }, under a dark rain cloud { $dark }.
note-dawn = In the morning it is told apart from { $from } on; with the bare eye from { $bare }.
note-moon_back = In the night of the full Moon nearest to that date it is told apart again from { $from } to { $to } after sunset, if the sky is clear. Night hours differ by place.
note-moon_all = In the night of the full Moon nearest to that date it is told apart all night, if the sky is clear. Night hours differ by place.
note-moon_none = Even in the night of the full Moon nearest to that date it is not told apart again after the dusk.
note-labels = Older figures for { $power }: twilight number { $number }, relative brightness { $brightness }. They are labels on a box: they know neither your eye nor the glass, and nothing here is ranked by them.
note-veil = This grade of glass passes { $day } of the light by day and { $night } by night. It lays { $sight } of the bright surround over the picture, your own eye { $eye }. Beside a sky { $surround } times as bright as the ground, { $left } of the contrast is left.

## Behind power, field and mark
note-lead = Across your line at { $range } and { $speed } the bullet is under way for { $time }: the lead is { $lead }, { $mrad } or { $lengths } body lengths, and the rifle swings { $swing } a second. Your own delay is not in it.
note-field_needed = At { $range }, your nearest, { $needed } of field are wanted. At { $power } this sight shows { $shown }; up to { $most } it is enough.
note-field_short = At { $range }, your nearest, { $needed } of field are wanted. At { $power } this sight shows { $shown }, less than that: so near no sight shows all.
note-crossing = At { $speed } square across the { $shown } are crossed in { $seconds }.
note-steady = Your usual hold wobbles by { $wobble }. Above { $ceiling } the picture shows the wobble rather than helps. On a sunny day shimmering air ends it between { $least } and { $most } at { $range }.
note-plane_error = In the second plane a hold of { $hold } for { $range } is true at { $reference } only. At { $half } it is { $miss } off, on a circle of { $circle }. In the first plane it stays.
note-mark_day = By day at { $power } the line looks { $line } wide, and { $needed } is just seen. It covers { $covered } of your circle of { $circle } at { $range }.
note-mark_late = In your last light at { $power } the line looks { $line } wide and the bars { $bars }; { $needed } is just seen.
note-lit_late = At the { $luminance } you stop in, the unlit line looks { $line } wide where { $needed } is needed. A night-fine light serves below { $dim }, a day-bright one above { $bright }.
note-parallax_at = At { $range }, free at { $free }: { $usual } with a usual cheek, { $clean } before a shadow warns you, { $extreme } at the very edge. The usual error is { $share } of your circle.

## Behind elevation
note-travel = Of { $total } of travel, { $up } lie above your zero and { $down } below it, on a base inclined by { $incline }. Your farthest, { $range }, asks for { $needed }.
note-incline = A base inclined by { $incline } would leave { $up } above the zero and { $down } below it.
note-incline_too_much = A base inclined by { $incline } would put the zero { $short } below the lower stop; { $largest } is the most this sight takes.
note-windage = With { $windage } of windage in use, { $lost } of elevation are lost each way, because the field of the turrets is round.
note-clicks = { $range } asks for { $needed }: { $tenth } clicks of 0.1 mrad, { $twentieth } of 0.05 mrad, { $quarter } of ¼ MOA, { $third } of ⅓ MOA or { $eighth } of ⅛ MOA.
note-mismatch = Marks in milliradians over clicks of ¼ MOA: one mark is { $clicks } clicks. Read { $needed } and dialled as minutes, you are { $miss } off at { $range }.
note-ring_changes = A ring or marks cut for this load are off at { $range } when something changes: { $slower } with 20 m/s less, { $cold } at 20 °C less, { $high } at 1000 m more height, { $tall } with the sight 10 mm higher.
note-range_error = A guess that is { $guess } long or short at { $range } is { $miss } of drop.

## The load on its way
note-load_typical = Typical figures: { $bullet } at { $speed }, drag figure { $drag } (±5 %), { $energy } at the muzzle, zeroed at { $zero }. Your own figures replace them.
note-load_own = Your own figures: { $bullet } at { $speed }, drag figure { $drag } (±5 %), { $energy } at the muzzle, zeroed at { $zero }.
note-dead_on = Zeroed at { $zero } and aimed dead on, the path stays within { $circle } to { $reach }; zeroed at { $best } it does to { $farther }. That is drop alone. Your own hold stays within that circle nine times in ten to { $steady }: a sense of scale, no promise and no leave.
note-inside = At { $range }, your farthest, the wobble of your usual hold keeps about { $centred } of 10 inside a circle of { $circle } if it is centred, and { $off } of 10 aimed dead on, where the path lies { $path }. A sense of scale, no promise: what is steadier, nearer or not shot at all is better.
note-highest = The path crosses the line of sight at { $first }, stands { $height } over it at { $at }, and comes down through it at { $zero }.
note-slope = On a slope of { $slope }, up or down, a hold as on the level strikes { $high } at { $range }. Taking the level distance instead is off by { $rule }.
note-cant = { $cant } of cant at { $range } puts it { $side } to the side, each degree { $one }.
note-place_air = At { $height } and { $temperature } the air has { $density } of its density at sea level. At { $range } that is { $change } against a table for sea level.
note-near = At { $near } it strikes { $path } with the sight { $bore } over the bore and the zero at { $zero }. Each 10 mm of height make that { $more } more.

## Behind eye relief and mass
note-recoil = With this sight on it the rifle comes back at { $velocity }, { $energy } of free recoil; { $powder } of powder are counted.
note-muzzle_bare = A moderator would leave { $moderator }, a brake { $brake }.
note-muzzle_device = Bare it would be { $bare }; what is on the muzzle leaves { $now }.
note-barrel = A barrel { $shorter } shorter costs { $velocity } of velocity and { $energy } of recoil energy.
note-relief_parts = Recoil asks for { $recoil } of eye relief, glasses for { $glasses } more, lying down or uphill for { $position } more: { $asked } for you. The older rule by energy says { $least } to { $most }. The least over the zoom counts.
note-eye_box_top = At { $power } the eye may be { $full } off the axis for a full picture and { $gone } until it is black; along the axis { $along } for a full edge, { $half } until the edge is half lit.
note-mount_load = At each shot the sight of { $mass } pulls at its mount with { $mean } on average and { $peak } at the peak.
note-mount_load_stop = At each shot the sight of { $mass } pulls at its mount with { $mean } on average and { $peak } at the peak: ask for a recoil stop or a cross bolt in a slot.
note-balance = The sight’s { $mass } are { $share } of the bare rifle. 15 to 18 % are usual, 20 % the most; a bench does not mind.

## The mounting sheet: height
note-height_bell = From the rail to the tube { $saddle }: the axis { $centre } over the rail, { $bore } over the bore. The bell of { $bell } decides, over a barrel of { $barrel }, with { $air } of air.
note-height_iron = From the rail to the tube { $saddle }: the axis { $centre } over the rail, { $bore } over the bore. The iron sights under the bell of { $bell } decide, with { $air } of air.
note-height_bolt = From the rail to the tube { $saddle }: the axis { $centre } over the rail, { $bore } over the bore. The lifted bolt decides.
note-height_ring = From the rail to the tube { $saddle }: the axis { $centre } over the rail, { $bore } over the bore. The lowest ring that is made decides; the bell of { $bell } would clear lower.
note-height_stock = From the rail to the tube { $saddle }: the axis { $centre } over the rail, { $bore } over the bore. The straight stock decides: the cheek cannot go lower, and the lowest mount is the wrong one. 36 to 43 mm over the rail are usual.
note-larger_bell = The next larger objective, { $objective }, would want { $more } more.
note-bolt_room = An eyepiece { $eyepiece } thick ends { $under } over the bore. The lifted bolt handle must stay below { $most }: try it before anything is tightened.
note-comb = The axis lies about { $axis } over a usual comb. { $least } to { $most } are comfortable; each 10 mm of height want 10 mm of comb.
note-comb_low = The axis lies about { $axis } over your comb. { $least } to { $most } are comfortable: raise the comb by { $short }. Each 10 mm of height want 10 mm of comb.
note-kept_fits = Your rings of { $ring } with the axis { $centre } over the rail fit: { $saddle } from the rail to the tube, { $spare } more than the least.

## The mounting sheet: along the tube
note-eye_place = The eye belongs { $relief } behind the eyepiece, about { $behind } behind the middle of the turret. The sight is about { $length } long.
note-rings_place = From the middle of the turret: the middle of the front ring { $front_from } to { $front_to } ahead, that of the rear ring { $rear_from } to { $rear_to } behind, clear of bell, turret housing and eyepiece. Rings { $ring } wide, { $least } to { $most } apart. A typical tube, ±10 mm: measure yours before ordering.
note-rings_slots = On a slotted rail that is { $least } to { $most } slots of { $pitch }.

## The mounting sheet: what holds it
note-rail_slotted = Slotted rail by MIL-STD-1913: slots of { $slot } every { $pitch }, { $width } over the edges. STANAG 4694 is its metric upgrade; mounts for either go on both. A mount for narrow slots goes on with play: push it forward before you tighten.
note-rail_narrow = A rail with narrow slots of { $slot }, their spacing by no standard. A cross bar for the slotted rail, { $wide }, does not go in; one for narrow slots does. Measure the spacing.
note-rail_small_dovetail = A dovetail of { $least } to { $most } follows no standard: measure width and angle of rail and clamp.
note-rail_wide_dovetail = A wide dovetail of { $least } to { $most } follows its maker: order the mount for that receiver, or measure both.
note-rail_two_piece = On two bases their distance is given: it must let the rings stand { $least } to { $most } apart. Measure height and distance of both.
note-rail_bare = Nothing is on the rifle yet. With a choice, a slotted rail by MIL-STD-1913 or STANAG 4694, { $width } over the edges, takes most mounts. Drilling and tapping is a gunsmith’s work.
note-torque_caps = Usual torques, the maker’s figure first. Ring caps: { $least } to { $most }, { $least_lb } to { $most_lb }.
note-torque_base = Base screws: { $least } to { $most }, { $least_lb } to { $most_lb }.
note-torque_cross_aluminium = Cross bolt in aluminium: { $least } to { $most }, { $least_lb } to { $most_lb }.
note-torque_cross_steel = Cross bolt in steel: { $least } to { $most }, { $least_lb } to { $most_lb }.

## Formula, source and validity behind the notes
source-ring = Landolt rings: acuity by luminance and contrast, Ikeda, Noda and Yamaguchi as quoted by a secondary page; solved for the part that must be told. Undefined below a contrast floor. Against the threshold model 0.06 in log₁₀ in the median, 0.25 at worst, over 40 cases.
source-mesopic = Light into the eye: plain area of the beam for rods, Stiles–Crawford area for cones. Rods and cones after CIE 191:2010 (MES2), 0.005 to 5 cd/m². Ratio of scotopic to photopic light: 2.5 in twilight (1.4 to 3.5), 1.75 by the Moon, 1.41 by lamps, from memory.
source-air = Contrast left = 1 / (1 + S · (e^(3.912 · range / visibility) − 1)), S the horizon’s brightness over the ground’s, (1 + ρ) / 2ρ. Koschmieder (1924) with airlight over ground; fog and smoke are not even.
source-light = Sun after the Astronomical Almanac, Moon after Meeus (1998), light after the Explanatory Supplement (1992): ±30 % to the end of civil twilight, a factor of 1.5 at 9° and 2 below 12°. Cloud 1/3 and 1/10 after U.S. Naval Observatory Circular 171, uncertain by 2 to 3; coats from cattle, an assumption. Computed for 1970 to 2100.
source-labels = Twilight number √(magnification · objective), relative brightness (objective / magnification)². Summary figures of the trade, older than any model of the eye.
source-veil = Contrast left = 1 / (1 + G · surround / ground), G the veiling glare: 6.5, 3 or 1.5 % by grade, an assumption; the eye’s own grows with the fourth power of age (IJspeert et al. 1990).
source-lead = Lead = speed · time of flight, square across; point-mass flight. Speeds are typical canters, an assumption.
source-steady = Visible wobble by position, common practice, held against hits in biathlon and stalking; a steady shooter has half of it, an unsteady one twice. Nine in ten inside the circle: radius / (2.146 · σ); off its centre the non-central χ² distribution. Ceiling 15 mrad in the picture, an assumption. Shimmer: Kolmogorov turbulence of a sunny day.
source-travel = Half travel H = √((T/2)² − windage²); up = H + incline − zero − misalignment, down = H − incline + zero − misalignment, with 1.5 mrad of misalignment, common practice. Travel by tube and use, a fit; ±3 mrad.
source-clicks = 1 mrad = 10 cm at 100 m = 3.438 MOA; a click of ¼ MOA is 7.27 mm at 100 m, of ⅓ 9.70, of ⅛ 3.64. Geometry.
source-cant = Side = drop below the bore’s line · sin(cant), low = the same · (1 − cos(cant)), sight set for that range. Exact for a point mass.
source-atmosphere = Standard atmosphere ISO 2533 by height, at your season’s temperature, half saturated.
source-eye-box = Full picture: half of exit pupil less pupil; black: half of both; along the axis the same over twice the tangent of half the apparent field. Geometry of two discs; at low power inner stops make it less.
source-load = Mass · recoil velocity / 1.3 ms, the peak twice that: an order of size, from memory. Not for spring air rifles, which strike both ways.
source-comb = Eye 55 to 70 mm over the cheek’s contact, common practice; a usual comb 15 mm under the bore’s axis, an assumption.
source-rings = Workshop geometry on a typical tube: housing 44 mm, eyepiece 85 mm, bell 1.1 · objective + 15 mm, 4 mm kept clear; rings 80 to 150 mm apart, common practice.
source-rail = MIL-STD-1913 (1995): slot 5.23, pitch 10.01, width 21.21 mm. STANAG 4694 keeps the profile. Dovetails and narrow slots follow no standard.
source-torque = Common practice, no source. The maker’s figure always comes first.
