# Words of the advice: the line, what it does, reasons, warnings, sayings.
# After the first hyphen stands the key of the report as it is.

## The page
advice-title = Your line
advice-share = Share
advice-print = Print
advice-change = Answers
advice-pending = Working out your line
advice-pending-hint = The page stays usable meanwhile.
advice-failed = With these answers nothing can be computed: { $why }
advice-legend = Underlined: a must. Dotted: a wish. Grey: take what is there. Tap a word for what it means.
advice-sure = How sure it is
advice-serves-too = What serves as well
advice-tonight = Your typical evening
advice-dawn = The morning after
advice-day = What decides by day
advice-day-why = You stop while it is light, so the dusk decides nothing and its strip is left out. What counts is how small these lengths are beside your aiming circle, and how much you see at once.
advice-not-needed = What you do not need
advice-not-needed-lead = None of these serves more of your occasions.
advice-decisions = Yours to decide
advice-disagree = Advisors disagree here; both sides are right.
advice-reasons = Why this line
advice-reasons-lead = The weightiest first. Open one for the numbers.
advice-reasons-sum = { $count } reasons. The weightiest: { $first }.
advice-others = Other choices
advice-others-name = Sight
advice-others-gain = Gains
advice-others-loss = Gives up
advice-others-served = Served
advice-this-one = This line
advice-warnings = What to avoid and check
advice-warnings-sum = { $count } in all. The first: { $first }
advice-unused = Paid for and not used
advice-sayings = What is said at counters
advice-sayings-lead = Each put to the test with your own figures.
advice-sayings-sum = { $right } true for you, { $half } half true, { $wrong } false.
advice-change-what = What would change it
advice-change-sum = { $count ->
    [one] Another answer to one question would.
   *[other] Another answer to { $count } questions would.
  }
advice-change-none = No other answer would.
advice-assumed-sum = { $count ->
    [one] One answer is assumed so far.
   *[other] { $count } answers are assumed so far.
  }
advice-not-counted = Not counted
advice-not-counted-sum = { $count } things no computation covers.
advice-not-counted-lead = Nothing above rests on these. Ask, and try in the shop.
advice-assumed = Assumed, because not answered
advice-shop = What to try in the shop
advice-after = Mounting, zeroing, keeping
advice-pictures = All pictures
advice-extent = Tried: { $candidates } specifications on { $occasions } occasions drawn from your answers. Two that differ by less than { $tie } count as equal.
advice-rates-sum = 100 g count like { $mass } of your occasions, 10 mm of height like { $height }, a price band like { $money }.
advice-rates-lead = Say what weighs more or less to you; the line follows.
advice-rates = How you weigh
advice-rates-mass = 100 g weigh as much to you as { $amount } of your occasions.
advice-rates-height = 10 mm of height weigh { $amount }.
advice-rates-money = One price band weighs { $amount }.
advice-rates-less = Less
advice-rates-more = More
advice-cautions = Keep in mind
advice-caution = What lies behind the target decides first. Law, the maker’s figures and a licensed gunsmith come before this page.

## The sentence of need
need-ranges = mostly at { $usual }, out to { $farthest }
need-range = at { $usual }
need-dusk = You shoot at { $what } { $manner }, { $ranges }, until { $minutes } after sunset, with a { $age }‑year‑old eye.
need-before-sunset = You shoot at { $what } { $manner }, { $ranges }, until { $minutes } before sunset, with a { $age }‑year‑old eye.
need-sunset = You shoot at { $what } { $manner }, { $ranges }, until sunset, with a { $age }‑year‑old eye.
need-day = You shoot at { $what } { $manner }, { $ranges }, in full daylight, with a { $age }‑year‑old eye.
need-moon = You shoot at { $what } { $manner }, { $ranges }, by the Moon too, with a { $age }‑year‑old eye.
need-lit_range = You shoot at { $what } { $manner }, { $ranges }, on a lit range, with a { $age }‑year‑old eye.


## The line
line-means = { $power } times larger, front lens { $objective } mm
line-tube = { $tube } mm tube
line-unknown = –
plane-first = first focal plane
plane-second = second focal plane
reticle-fine_crosshair = fine crosshair
reticle-thick_thin = thick–thin crosshair
reticle-three_post = three-post reticle
reticle-heavy_night = heavy night reticle
reticle-post = post from below
reticle-centre_dot = centre dot
reticle-circle_dot = circle with dot
reticle-mrad_marks = marks every milliradian
reticle-moa_marks = marks in minutes of angle
reticle-hold_marks = hold marks for one load
reticle-mark_grid = mark grid
lit-none = unlit
lit-night_fine = lit, night-fine
lit-day_bright = lit, day-bright
lit-both = lit, day and night
parallax-fixed = parallax-free at { $range }
parallax-adjustable = adjustable parallax from { $range }
parallax-kind-fixed = fixed
parallax-kind-adjustable = adjustable
turret-capped = capped turrets
turret-ring_for_load = elevation ring for your load
turret-dial_zero_stop = elevation dial with zero stop
grade-basic = plain glass
grade-good = good glass
grade-best = best glass
field-narrow = usual field
field-usual = good field
field-wide = wide field
band-A = the lowest price band
band-B = the second price band
band-C = the middle price band
band-D = the fourth price band
band-E = the highest price band
line-eye-relief = eye relief { $relief } or more
line-field = field { $field } m at 100 m or more
line-mass = about { $mass }
span-range = { $least } to { $most }
span-only = { $least }
choices-or = { $one } or { $other }

## Elements
element-mag_low = lowest power
element-mag_high = top power
element-objective_mm = objective
element-tube_mm = tube
element-plane = focal plane
element-reticle = reticle
element-illumination = lit mark
element-parallax = parallax
element-elevation = elevation turret
element-eye_relief_mm = eye relief
element-field_low_m_per100m = field
element-grade = glass
element-mass_g = mass
element-centre_height_mm = height over the rail
element-price_band = price
element-mag_in_use = power in use
element-centre_line_mm_per100m = centre line
element-dot_mm_per100m = dot
element-up_from_zero_mrad = elevation from zero
element-mount = rings and base
element-exit_pupil_mm = exit pupil

## What it does
does-evening = With it { $what } can be told apart { $until }, { $later } later than with the bare eye.
does-evening-alone = With it { $what } can be told apart { $until }.
does-night = With it { $what } can be told apart all through that night.
does-day = In that light the sight is not the limit: { $what } at { $farthest } stands out at any power.
does-field = At { $nearest } you see { $field } across.

## What the last answer changed
changed-by = Changed by your last answer ({ $what }):
changed-by-weights = Changed by how you weigh it now:
changed-line = the line goes from { $from } to { $to };
changed-same = the line stays;
changed-served = served from about { $from } to { $to } of 10.
changed-served-points = served { $way ->
    [more] { $points } of 100 situations more.
   *[less] { $points } of 100 situations less.
}
changed-served-same = served as before.
changed-loss = { $way ->
    [more] What stops more shots now: { $cause } ({ $from } to { $to } of 100).
   *[less] What stops fewer shots now: { $cause } ({ $from } to { $to } of 100).
}
changed-weight = { $way ->
    [more] What matters more now: { $element }.
   *[less] What matters less now: { $element }.
}

## The sight owned now
owned-title = The sight you have now
owned-served = { $line }: in about { $tenths } of 10 situations it is not what stops you; with the line above in about { $pick }. What was not said of it is taken as usual.
owned-keep = That is as good. Keep what you have: nobody could tell the difference.
owned-gain = The line above { $gains }.
owned-lose = It { $losses }.
annoys-mended = Mended: the line above { $change }.
annoys-not-mended = Not mended, or hardly: the line above { $change }.
annoys-reached = With the line above: { $name } { $value }.
annoys-now = yours has
annoys-usual = a usual { $line } has
annoys-moves-too_dark = so { $to } of 100 of your situations are taken in the last light, not { $from }.
annoys-moves-too_heavy = so 100 g weigh as much to you as { $to } % of your occasions, not { $from } %.
annoys-moves-too_narrow = so up to { $charge } % of your occasions are charged to a sight that shows less than { $to } at 100 m turned down ({ $now } { $from }).
annoys-moves-hard_to_find_picture = so your eye is taken to come to rest { $to } mm off the middle, not { $from } mm.
annoys-moves-not_far_enough = so up to { $charge } % of your occasions are charged to a top power below { $to } × ({ $now } { $from } ×).
annoys-moves-no-dusk = it moves nothing here: by day no sight is too dark. Say until when you shoot, if dusk is the trouble.
annoys-moves-all-dusk = it moves nothing here: all you described is in that light already.
annoys-moves-no-mass = it moves nothing here: you have set yourself what grams weigh.
annoys-moves-no-power = it moves nothing here: your hold and the air leave no more power of use. A steadier rest gains more.
annoys-otherwise = Without that it would be { $line }.
annoys-same = The line would be the same without it.

## Stated ranges
ranges-taken = Distances that are guessed are mostly stated 10 to 15 % long. Your { $stated } is counted as { $taken }, give or take { $spread }; measured, it would count as it is. What is told of your nearest and farthest shot holds for them as stated.

ranges-measured = Say how you find the distance.

## How sure
sure-share = In about { $tenths } of 10 of the situations you described the sight is not what stops you.
sure-none = No sight serves these situations as they are described. What is assumed stands under Answers: above all, how you aim when it is far.
sure-best = No sight that can be built does better than { $tenths } of 10.
sure-between = What is uncertain moves that share between { $least } and { $most } of 10.
sure-between-first = By a first estimate, what is uncertain moves that share between { $least } and { $most } of 10.
sure-trying = Being tried with other guesses for what is uncertain: { $tried } of { $worlds } so far.
sure-worlds = Tried { $worlds } times with other guesses for what is uncertain: { $first } times this line stays first or as good.
sure-unseated = What changes it most often: { $doubt }. Then it would be { $line }.
sure-firm = Nothing that is uncertain changes it.

doubt-pupil = your own pupil
doubt-field_factor = how much the field differs from the laboratory
doubt-contrast = coat against ground
doubt-ground = how bright the ground is
doubt-cloud = cloud
doubt-velocity = your load’s velocity and drag
doubt-steadiness = how steady you are
doubt-fits = what sights of a kind really weigh and show
doubt-price = what sights of a kind really cost
doubt-weight_of_mass = how you weigh grams
doubt-weight_of_money = how you weigh money
doubt-weight_of_height = how you weigh height
doubt-ranges = how far your stated distances are off
doubt-glare = how much the glass veils

## Picks
because-best = Best for what it weighs and costs
because-serves_most = Serves most, whatever it costs
because-lightest = Lightest that serves almost as well
because-least_money = Least money that serves almost as well
because-latest = Latest into the evening
because-widest_field = Widest field
because-keeps_rings = Keeps the rings you have
because-fixed_power = Fixed power: no zoom left in the wrong place
pick-tied = a tie, within the doubt
pick-nothing-lost = nothing that counts
pick-nothing-gained = nothing that counts

cause-told_apart = not told apart in that light
cause-detail = the detail is not seen
cause-aim = the aiming point cannot be chosen finely enough
cause-field = the field is too narrow
cause-steady = the wobble is chased
cause-eye_placed = the eye is not placed in time
cause-parallax = parallax
cause-eye_relief = the eye relief is too short for this recoil
cause-mark = the mark is not seen, or hides the aiming point
cause-drop = drop without a means to meet it
cause-zoom_left = the zoom was left where it was

## What an effect is called, and what it does as a change
quantity-served_points = occasions served
quantity-minutes_tonight = told apart, that evening
quantity-seconds_tonight = told apart, that evening
quantity-mass_g = mass
quantity-mass_percent_of_rifle = share of the rifle’s mass
quantity-centre_height_mm = height over the rail
quantity-price_bands = price bands
quantity-field_at_nearest_m = field at your nearest shot
quantity-field_m_per100m = field at 100 m
quantity-crossing_seconds = time across the field
quantity-detail_at_farthest_mm = smallest detail at your farthest shot
quantity-exit_pupil_mm = exit pupil
quantity-pupil_mm = your pupil in that light
quantity-on_iris_percent = light stopped by your iris
quantity-parallax_cm = error by parallax
quantity-covered_cm = covered by the mark at your farthest shot
quantity-error_cm = change of the point of impact
quantity-circle_cm = aiming circle
quantity-drop_cm = drop at your farthest shot
quantity-needed_mrad = elevation needed
quantity-travel_mrad = elevation left to adjust
quantity-clicks = clicks
quantity-range_m = range
quantity-eye_relief_mm = eye relief
quantity-recoil_m_s = recoil velocity
quantity-recoil_j = recoil energy
quantity-wobble_mrad = wobble as seen
quantity-magnification = magnification
quantity-mark_arcmin = width of the mark as seen
quantity-line_needed_arcmin = width of a line just seen
quantity-width_mm_per100m = width at 100 m
quantity-luminance_cd_m2 = luminance of the ground
quantity-contrast = contrast
quantity-ratio = ratio
quantity-nights = nights of 30
quantity-force_kn = force
quantity-percent = share
quantity-length_mm = length
quantity-angle_mm_per100m = angle at 100 m
quantity-age_years = age
quantity-until_min = told apart until, after sunset
quantity-before_sunrise_min = told apart from, before sunrise
quantity-later_min = later in the evening
quantity-speed_m_s = speed
quantity-energy_j = energy
quantity-flight_seconds = time of flight
quantity-angle_mrad = angle
quantity-angle_deg = angle
quantity-torque_nm = torque
quantity-torque_in_lb = torque
quantity-height_m = height above the sea
quantity-temperature_c = temperature
quantity-width_m = width
quantity-visibility_m = visibility
quantity-bullet_g = mass
quantity-path_cm = over or under the aim
quantity-exact_mm = measure

change-served_points = { $way ->
    [more] serves { $amount } more of your occasions
   *[less] serves { $amount } fewer of your occasions
  }
change-minutes_tonight = { $way ->
    [more] reaches { $amount } later into the evening
   *[less] ends { $amount } earlier in the evening
  }
change-mass_g = { $way ->
    [more] weighs { $amount } more
   *[less] saves { $amount }
  }
change-mass_percent_of_rifle = { $way ->
    [more] adds { $amount } of the rifle’s mass
   *[less] saves { $amount } of the rifle’s mass
  }
change-centre_height_mm = { $way ->
    [more] sits { $amount } higher
   *[less] sits { $amount } lower
  }
change-price_bands = { $way ->
    [more] costs { $amount } more
   *[less] costs { $amount } less
  }
change-field = { $way ->
    [more] shows { $amount } more { $where }
   *[less] shows { $amount } less { $where }
  }
where-nearest = at your nearest shot
where-100m = at 100 m
change-detail_at_farthest_mm = { $way ->
    [more] shows detail { $amount } coarser at your farthest shot
   *[less] shows detail { $amount } finer at your farthest shot
  }
change-parallax_cm = { $way ->
    [more] can put you { $amount } farther off by parallax
   *[less] takes { $amount } off the parallax error
  }
change-covered_cm = { $way ->
    [more] covers { $amount } more
   *[less] covers { $amount } less
  }
change-travel_mrad = { $way ->
    [more] leaves { $amount } more to adjust in height
   *[less] leaves { $amount } less to adjust in height
  }
change-mark_arcmin = { $way ->
    [more] makes the mark look { $amount } wider
   *[less] makes the mark look { $amount } narrower
  }
change-other = { $way ->
    [more] brings { $amount } more { $name }
   *[less] brings { $amount } less { $name }
  }
change-nothing = makes no difference you would notice

## Putting sentences together
told-and = { $most } and { $last }
told-comma = { $one }, { $other }
change-less = One step less, { $setting }, { $changes }.
change-more = One step more, { $setting }, { $changes }.
change-instead = { $setting } instead { $changes }.
change-value = { $name } { $value }
reason-here = { $setting }.
not-needed-why = It { $changes }.
decision-said = { $other } rather than { $one }: it { $changes }.
warning-rule = Leave aside: { $rule }.
rule-less = { $element } below { $limit }
rule-at-most = { $element } of { $limit } or less
rule-more = { $element } above { $limit }
rule-or-more = { $limit } or more
rule-at-least = { $element } of { $limit } or more
rule-is = { $limit }
rule-is-not = anything but { $limit }
setting-mag = { $value } ×
setting-objective = { $value } mm objective
setting-tube = { $value } mm tube
setting-mm = { $value } mm
setting-at-100m = { $value } mm at 100 m
setting-eye-relief = { $value } mm eye relief
setting-number = { $value }
setting-field = { $value } m field at 100 m
setting-exit-pupil = { $value } mm exit pupil
setting-parallax-free = parallax-free at { $range }
setting-low = { $value } × at the lowest
setting-high = { $value } × at the top
setting-in-use = { $value } × in use

## Decisions
decision-grams_against_minutes = Grams or a larger objective
decision-field_against_top_power = Wide field or top power
decision-low_mount_against_bell = A low mount or a large bell
decision-first_or_second_plane = First or second focal plane
decision-lit_or_heavy_bars = A lit mark or heavy bars
decision-dial_or_dead_on = A dial or aiming dead on
decision-marks_or_dial = Marks or a dial
decision-adjustable_parallax = Adjustable or fixed parallax
decision-one_wide_or_two_sights = One wide zoom or two sights
decision-fixed_or_zoom = Fixed power or a zoom
decision-keep_rings = Keep the rings or change the tube
decision-glass_against_money = Better glass or the money
decision-money_against_occasions = A step of money
decision-forward_or_receiver = Forward or over the receiver
decision-comb_or_bell = A higher comb or a smaller bell
decision-second_sight = A second, unmagnified sight on the same base

## Warnings
warning-large_objective = A larger objective brings you little and weighs on the rifle.
warning-small_objective = A smaller objective leaves less light, and less room for your eye.
warning-high_lowest_power = Too much power at the low end shows you too little of the field.
warning-high_top_power = More top power brings you less than it weighs and costs.
warning-low_top_power = Less top power costs you more than it saves.
warning-magnification_in_use = Turned up further, this eye and objective have too little light.
warning-narrow_field = A narrower field loses what you follow.
warning-fine_first_plane = A fine mark in the first plane vanishes when you turn down.
warning-mark_not_seen = A thin mark is not seen when it matters.
warning-mark_covers = A thick mark hides the point you aim at.
warning-battery_only = A mark that needs its battery leaves you with none.
warning-lit_not_allowed = A lit mark is not allowed where you shoot.
warning-lit_dot_stars = A lit dot turns into a star in an astigmatic eye. Try it at its dimmest first.
warning-exposed_dial = An open dial without a use gets turned by the sleeve.
warning-parallax_distance = Parallax set for another distance moves the aim with your eye.
warning-parallax_fixed = Fixed parallax does not cover your ranges.
warning-nearest_focus = It must come into focus at your nearest range.
warning-side_wheel = A side wheel sits where the hand or bolt goes. Try it on the rifle.
warning-bolt_clearance = The bolt needs room under the eyepiece. Try it on the rifle.
warning-short_eye_relief = Less eye relief can cut your brow with this recoil.
warning-long_eye_relief = More eye relief than needed costs you field.
warning-heavy = Too heavy for this rifle.
warning-heavy_mount = A heavy mount undoes what a light sight saves.
warning-thick_tube = A thicker tube buys travel you never use. It is not brighter.
warning-rings_not_built = Sights for your ring bore are no longer built: count on new rings, or look for a used sight.
warning-wrong_tube = The tube must fit the rings to the tenth: 25.4 is not 26.
warning-rings_unchecked = Read or measure the bore of the rings before you buy.
warning-tall_rings = Tall rings lift your cheek off the wood.
warning-low_rings = In low rings the bell touches the barrel. Leave 2 to 3 mm.
warning-weak_mount = Rings and base must carry this recoil.
warning-loose_joint = A joint between barrel and receiver that is loose moves the zero; no sight mends it.
warning-little_travel = Too little elevation for your farthest range; a base that slopes forward gains some.
warning-too_much_incline = A base that is too steep leaves no zero; steepest for this line:
warning-mixed_units = Marks and clicks in different units invite an error in a hurry.
warning-second_plane_holds = In the second plane marks hold at one power only.
warning-another_load = Marks or a ring for another load or other air are wrong by centimetres.
warning-focus_drift = Range marks on the focus drift with temperature.
warning-mirage = On a hot day shimmering air sets the limit before the sight does.
warning-rulebook = Check the rule book: it may forbid a telescope, a power or a lit mark.
warning-limits_unmet = No sight meets all limits you gave. This one comes nearest.
warning-forward_dusk = Mounted forward, a sight has a narrow field and little light at dusk.
warning-wobble = At your farthest range your own wobble is larger than the circle. No sight changes that.

unused-exit_pupil_beyond_pupil = Exit pupil wider than your pupil
unused-travel_beyond_farthest = Travel beyond your farthest range
unused-power_above_use = Power above what you use
unused-light_where_detail_limits = Light where detail is the limit
unused-lit_by_day = A lit mark by day only

not-counted-tracking = how the turrets repeat
not-counted-sealing = sealing against water and fog
not-counted-edge_sharpness = sharpness towards the edge
not-counted-click_feel = how the clicks feel
not-counted-service = guarantee and service
not-counted-moon = moonlight
not-counted-mirage = shimmer of the air
not-counted-law = the law of your place
not-counted-attachment = an electronic attachment
not-counted-spring_recoil = the double blow of a spring air rifle

## Sayings
verdict-true = true for you
verdict-half = half true for you
verdict-false = false for you
saying-thick_tube_is_brighter = A thicker tube is brighter.
saying-thick_tube_is_brighter-why = The tube holds the lenses. Objective, power and coating make the light.
saying-thick_tube_for_long_range = For long range you need a thick tube.
saying-thick_tube_for_long_range-why = It holds more elevation. What counts is how much you need.
saying-five_points_are_twenty_minutes = Five points of transmission are twenty minutes.
saying-five_points_are_twenty_minutes-why = Light falls by half in a few minutes at dusk, so five points are seconds.
saying-one_sees_dear_glass = One sees dear glass against cheap.
saying-one_sees_dear_glass-why = Less veiling glare: the black stays black beside a bright sky.
saying-everyone_needs_seven_millimetres = Everybody needs seven millimetres of exit pupil.
saying-everyone_needs_seven_millimetres-why = What is wider than your pupil falls on the iris.
saying-past_fifty_a56_is_wasted = Past fifty, a 56 is wasted.
saying-past_fifty_a56_is_wasted-why = It depends on the power you set: more power makes use of the larger bell.
saying-eight_by56_is_the_night_sight = 8 × 56 is the night sight.
saying-eight_by56_is_the_night_sight-why = For a pupil of seven millimetres it is; smaller pupils do as well with more power.
saying-turn_down_when_dark = Turn it down when it gets dark.
saying-turn_down_when_dark-why = Only until the exit pupil fills your pupil; below that you lose size and gain nothing.
saying-turn_up_when_dark = Turn it up when it gets dark.
saying-turn_up_when_dark-why = More power helps until the exit pupil is smaller than your pupil, and a little beyond.
saying-twilight_number_decides = The twilight number decides.
saying-twilight_number_decides-why = The same number can end minutes apart: it knows neither eye nor glass.
saying-snow_doubles_the_light = Snow doubles the light.
saying-snow_doubles_the_light-why = It adds up to about nine tenths, but the ground is ten times brighter and dark game stands out.
saying-cloud_costs_twenty_minutes = Cloud costs twenty minutes.
saying-cloud_costs_twenty_minutes-why = A usual cover takes two thirds of the light: some minutes of the evening.
saying-moon_needs_electronics = By the Moon one needs electronics.
saying-moon_needs_electronics-why = On some nights of the month the light is enough for a sight; on most it is not.
saying-first_plane_for_far = First plane for far, second for hunting.
saying-first_plane_for_far-why = It is about marks: the first plane keeps them true at every power and thin at low power.
saying-first_plane_covers_target = In the first plane the target gets covered at high power.
saying-first_plane_covers_target-why = The mark grows with the target: it always covers the same.
saying-half_a_mark_at_any_power = Half a mark is the same at any power.
saying-half_a_mark_at_any_power-why = In the second plane a mark is worth more on the target the lower the power.
saying-set_at_hundred_useless_at300 = Set at 100 it is useless at 300.
saying-set_at_hundred_useless_at300-why = It is the parallax error against the circle that counts.
saying-black_ring_is_parallax = The black ring is parallax.
saying-black_ring_is_parallax-why = It is the position of the eye.
saying-side_focus_is_for_sharpness = The side focus is for sharpness.
saying-side_focus_is_for_sharpness-why = It puts the picture in the plane of the mark. Sharp is not yet parallax-free.
saying-four_high_and_forget = Four high at 100 and forget it.
saying-four_high_and_forget-why = It holds as far as the path stays inside your circle.
saying-flat_cartridge_needs_no_dial = A flat cartridge needs no dial.
saying-flat_cartridge_needs_no_dial-why = Up to the reach for your circle it needs none.
saying-dial_is_precision = A dial is precision.
saying-dial_is_precision-why = Only with your own measured velocity.
saying-moa_is_finer = MOA is finer than mrad.
saying-moa_is_finer-why = A quarter of a minute is 7.3 mm at 100 m, a tenth of a milliradian 10 mm; your group is larger.
saying-one_moa_is_an_inch = One MOA is an inch at a hundred yards.
saying-one_moa_is_an_inch-why = The difference counts far out only.
saying-more_power_better_shot = More power, better shot.
saying-more_power_better_shot-why = Only as far as your wobble lets you use it.
saying-high_power_makes_me_shake = High power makes me shake.
saying-high_power_makes_me_shake-why = It shows the wobble that is there.
saying-low_mount_is_always_better = The low mount is always better.
saying-low_mount_is_always_better-why = For the cheek mostly yes; a straight stock wants it high.
saying-height_does_not_matter = Height over the bore does not matter.
saying-height_does_not_matter-why = At your nearest shot it is the distance between aim and hit.
saying-eye_relief_is_on_the_box = Eye relief is on the box.
saying-eye_relief_is_on_the_box-why = Often for one power only. Measure the least over the zoom.
saying-only_a_small_cartridge = It is only a small cartridge.
saying-only_a_small_cartridge-why = A light rifle comes back fast in a mild cartridge too.
saying-magnums_kill_sights = Magnums kill sights, air rifles do not.
saying-magnums_kill_sights-why = A spring air rifle strikes both ways.
saying-rings_are_just_rings = Rings are just rings.
saying-rings_are_just_rings-why = They hold the sight against this force at every shot.
saying-lit_means_night = Lit means night.
saying-lit_means_night-why = A mark made for the day may not dim far enough.
saying-no_battery_no_aim = No battery, no aim.
saying-no_battery_no_aim-why = Bars that are heavy enough are seen without light.
saying-fixed_is_brighter = Fixed power is brighter.
saying-fixed_is_brighter-why = By a point or two of transmission: seconds.
saying-bigger_bell_narrows_field = A bigger bell narrows the field.
saying-bigger_bell_narrows_field-why = Field comes from the eyepiece and the power.
saying-wide_zoom_does_it_all = A wide zoom does it all.
saying-wide_zoom_does_it_all-why = It covers the powers; it costs mass and money, and must be turned.
saying-both_eyes_double_field = Both eyes open double the field.
saying-both_eyes_double_field-why = At the lowest powers they do, above that the pictures no longer join.
saying-moderator_changes_only_noise = A moderator changes only the noise.
saying-moderator_changes_only_noise-why = It takes recoil off too, adds mass in front, and moves the zero.
saying-uphill_high_downhill_low = Uphill high, downhill low.
saying-uphill_high_downhill_low-why = Both ways a little high: the drop follows the level distance.

## Amounts and kinds
amount-plus-minus = { $value }{ "\u00A0" }±{ "\u00A0" }{ $spread }
amount-degrees = { $value }°
amount-bands = { $bands } price bands
bands-quarter = a quarter of a price band
bands-half = half a price band
bands-three-quarters = three quarters of a price band
bands-one = a price band
bands-many = { $bands } price bands
standing-must = a must
standing-wish = a wish
standing-free = free
warning-it = It { $changes }.
advice-reasons-all = All { $count } reasons
advice-lost-to = Lost to

## Formula and source behind a reason
source-told-apart = Told apart while the contrast C of the animal, divided by the veil of the glass, is above the threshold of your eye for that size and light: log₁₀ of the ratio, spread 0.15. Blackwell (1946), as fitted by Crumey (2014), 10⁻⁵ cd/m² to daylight; times 2 for the field, √2 for one eye, and age after Jackson and Owsley (2000). Pupil by Watson and Yellott (2012). A clock time is good to 5 to 10 min, a difference to 0.3 min and the pupil.
source-field = Width W = 2 · tan(apparent field / 2) · range / magnification (ISO 14132-1), exact; apparent field 19, 21 or 23° by grade of eyepiece, a fit over generic classes.
source-detail = Smallest detail = 1.8 · smallest angle your eye resolves in that light · range / magnification, not better than the objective’s own limit.
source-pupil = Exit pupil = objective / magnification; what is wider than your pupil falls on the iris. Pupil by light and age: Watson and Yellott (2012).
source-mass = Fit over generic classes of sights, with the spread of the fit. What a gram weighs to you can be moved.
source-height = Lowest centre that clears the barrel by 2 to 3 mm: half the bell + barrel radius + gap. Geometry.
source-price = Fit over generic classes of sights; it misses them by 0.8 of a band on average.
source-parallax = Error = 0.35 · half of what the eye can wander in the exit pupil · distance from the parallax-free range / that range. Geometry; share of the wandering: assumption.
source-mark = Width on the target = width at 100 m · range / 100 m; seen by the eye times the magnification. In the second plane it changes with the power. Geometry.
source-drop = Point-mass flight with the standard drag functions G1 or G7 in the air of your place, zeroed at your range. Good to 0.1 mm as a computation; the drag figure itself to 5 %, and little below the speed of sound.
source-recoil = Free recoil from the momentum of bullet and powder gases against the mass of rifle and sight; eye relief of about 60 mm + 7 mm for each m/s, common practice.
source-served = Share of your own occasions in which the sight is not what stops the shot: the product of the margins of all needs, each with its spread.
strip-bare-eye = bare eye
strip-this-sight = this sight
strip-own-sight = yours now
short-same = the same
short-more = { $amount } more
short-less = { $amount } less
advice-would-be = Answered otherwise, { $elements } would change: { $line }. This line would then be { $behind } % behind.
advice-would-be-out = Answered otherwise, { $elements } would change: { $line }. This line would then be out of the question.
