# What stands round every picture
picture-where-from = What is left out, and the sources
picture-keep-svg = Keep as SVG
picture-keep-png = Keep as PNG
picture-inputs = Computed from: { $what }.
picture-run = Let it run

# The dusk strip
strip-sunset = sunset
strip-sunrise = sunrise
strip-civil = end of civil twilight
strip-civil-begins = civil twilight begins
strip-moonrise = Moon rises
strip-moonset = Moon sets
strip-before = { $clock }, { $minutes } min before sunset
strip-at-sunset = { $clock }, at sunset
strip-after = { $clock }, { $minutes } min after sunset
strip-told-apart = { $name }: told apart
strip-not-told-apart = { $name }: no longer
strip-never = not told apart
strip-throughout = all evening
strip-minutes = { $clock } · { $minutes } min
strip-row-spoken = { $name }: { $until } after sunset
strip-row-dawn = { $name }: from { $from } before sunrise
strip-spoken = The light from { $first } to { $last }.
strip-never-dark = It does not get dark in this night: the strip ends when the Sun stands lowest.

# Through the sight
view-title = Through the sight
view-power = Magnification
view-range = Range
view-dusk = Time of the evening
view-first = First focal plane
view-second = Second focal plane
view-first-rule = A mark keeps its size on the target.
view-second-rule = A mark keeps its size to your eye.
view-first-rule-low = A mark keeps its size on the target: at { $low } it looks { $times } times thinner than at { $high }.
view-second-rule-low = A mark keeps its size to your eye: at { $low } it covers { $times } times as much as at { $high }.
view-lowest-said = At the lowest power, { $power }: in the first plane { $what } still covers { $first }, but the finest line looks { $arcmin }′ wide (under { $least }′ it is hard to see); in the second plane it looks as before and covers { $second }.
view-through = Through
view-reticle = Reticle
view-reticle-own = its own: { $name }
view-in-words = The picture in words
view-eye = Move the eye off its place
view-eye-aside = Eye sideways
view-eye-along = Eye along the axis
view-eye-at = at the eye point
view-eye-far = { $mm } mm back
view-eye-near = { $mm } mm forward
view-eye-room = The sight’s beam is { $exit } mm wide, your pupil { $pupil } mm: the picture stays full to { $aside } mm aside and is gone at { $gone } mm; { $along } mm too near or too far, its edge has half the light.
view-eye-off = With the eye { $aside }, { $along }: { $middle } % of the light in the middle, { $left } % at the left edge, { $right } % at the right.
view-eye-black = All is black.
view-eye-even = At the eye point the whole field darkens alike; a little nearer or farther the shadow comes in from one side.
view-source-eye = Shadow: the beam from the apparent angle ω lies z·tan ω aside when the eye is z off the eye point; the light is the overlap of beam and pupil. Geometry of two discs; the exit pupil’s own errors are left out.
view-source-lit = Lit centre: 0.03 cd/m² by night and 3000 cd/m² by day, an assumption; its veil one degree beside it is 10·(1 + (age/70)⁴)·E/θ² (Stiles and Holladay, CIE 146:2002, from memory; valid from 1° to 30°).
view-inputs = { $sight }, an eye of { $age } years, { $quarry } with an aiming circle of { $circle }, the eye { $height } over level ground
view-pick = , your pick
view-times = { $power } ×
view-centre-to-bar = the gap from centre to bar
view-mark-to-mark = one mark
view-centre-to-ring = the ring’s radius
view-post = the post’s width
view-line = the line’s width
view-short-bar = centre to thick bar
view-short-mark = mark to mark
view-short-ring = centre to ring
view-short-post = post
view-short-line = line
view-bare-eye = bare eye
view-lit = Lit centre
view-lit-off = off
view-lit-night = night strength
view-lit-day = day strength
view-lit-night-said = Lit for the night, at { $luminance } cd/m²:
view-lit-day-said = Lit for the day, at { $luminance } cd/m²:
view-lit-unseen = against this ground it is not seen, and the centre looks black.
view-lit-harmless = it stands off the ground, and its veil adds { $share } % to the picture’s light.
view-lit-veils = it stands off the ground, but its veil adds { $share } % to the picture’s light and takes contrast from the animal.
view-lit-veils-lost = its veil adds { $share } % to the picture’s light, and the animal beside it can no longer be told from the ground.
view-holds = { $one ->
    [yes] The small pointer shows where your bullet strikes, aimed dead on, at { $ranges }.
   *[no] The small pointers show where your bullet strikes, aimed dead on, at { $ranges }, from the top down.
}
view-hold = { $range }: { $place }
view-key = where your bullet strikes, aimed dead on
view-covers = { $what }: { $cm } at { $range }
view-picture = { $quarry } at { $range }, { $power }, { $time }.
view-first-said = In the first plane { $what } is { $angle } and covers { $cm } at { $range }: the same at every magnification. The finest line looks { $arcmin }′ wide.
view-second-said = In the second plane { $what } now covers { $angle }, { $cm } at { $range }; the label of { $label } holds at { $reference } only. The finest line looks { $arcmin }′ wide at every magnification.
view-second-at-label = In the second plane { $what } covers { $angle }, { $cm } at { $range }: at this magnification the label holds. The finest line looks { $arcmin }′ wide at every magnification.
view-body-apart = With this eye and this sight its shape is told from the ground.
view-body-lost = With this eye and this sight its shape is no longer told from the ground.
view-fine-lost = { $share } % of its finer parts are lost in the dusk.
view-line-lost = The finest line of the reticle can no longer be told from the ground; { $bars ->
    [yes] the bars still can.
   *[no] nor can the bars.
}
view-thin = Here it is { $px } px wide, and looks grey for that reason.
view-larger = It is larger than the field of { $field }.
view-no-light = There is no light to see by.
view-scale = To scale: the field is { $field } wide at { $range }; both pictures show the same animal at the same scale, one above the other or side by side.
view-leaves-out = Left out: slopes (the ground is level), the dazzle of a lit mark (it is drawn two and a half pixels wide at least), edge blur, mirage, wobble, fog, lamps, and colour as any one eye has it. The brightness is compressed, because no screen shows a night; the ratios inside the picture are kept up to what your eye can tell apart.
view-identify = Telling a shape from the ground is not knowing what it is, and neither is leave to shoot.
view-source-scale = Scale: tan ω′ = M·tan ω (ISO 14132-1), apparent field { $apparent }°, magnification M; a mark of s mrad covers s·R/10 cm at R metres. First plane: s constant. Second plane: s·{ $reference }/M.
view-source-light = Light: this evening’s illuminance on the ground, its reflectance { $ground }, coat { $coat }; your pupil { $pupil } mm, the beam that enters { $beam } mm; transmission { $transmission }, stray light { $glare } %.
view-source-threshold = Fading: every piece is drawn with the part of its contrast that exceeds the threshold, (C − C_th)/C. Threshold: A. Crumey, MNRAS 442:2600 (2014), field factor 2, one eye √2, age as in Jackson and Owsley (2000). Valid for a rested, adapted eye; the zero is uncertain by ±0.2 in log₁₀, about ±3 min.

# The page of all pictures
demo-title = The pictures
demo-own = Drawn for your answers: the first pick beside the next, your quarry, your eye, your load, your evening.
demo-note = A made-up shooter of 46 years, a made-up sight of 2.5–10 × 50, the evening of 1 October 2026 at 51° north.
demo-quarry = Shown
demo-bare-eye = bare eye
demo-this-sight = this sight
demo-that-sight = a 4 × 32

# The eye's aperture
aperture-title = What the eye takes in
aperture-age = Age
aperture-years = { $years } years
aperture-width-pupil = pupil { $mm } mm
aperture-width-beam = beam { $mm } mm
aperture-pupil = The pupil at { $years } years, in dusk: { $pupil } mm, give or take { $spread } from person to person (dotted).
aperture-over = { $name } at { $power }: a beam of { $beam } mm; { $enters } % of it enters, { $lost } % falls on the iris.
aperture-under = { $name } at { $power }: a beam of { $beam } mm; all of it enters and fills { $filled } % of the pupil.
aperture-inputs = { $name }: { $low } to { $high } ×, objective { $objective } mm
aperture-scale = To scale: the outer disc is an iris of 12 mm.
aperture-leaves-out = Left out: that light at the rim of the pupil counts less by day, glasses, and an eye that is not in the middle.
aperture-source = Beam: objective over magnification, at most 11 mm. What enters: the square of pupil over beam. The eye is adapted to { $luminance } cd/m².
aperture-source-pupil = Pupil: A. B. Watson and J. I. Yellott, Journal of Vision 12(10):12 (2012), 60° field; below 1 cd/m² an extrapolation that agrees with dark pupils of 263 persons (Bradley et al. 2011) to 0.2 mm.

# Parallax
parallax-title = Parallax
parallax-eye = Behind the eyepiece
parallax-target = On the target
parallax-eye-said = The exit pupil of { $exit } mm, a ring, and the eye’s pupil of { $pupil } mm behind it.
parallax-target-said = The aiming circle; the mark of the fixed sight and the mark of the adjustable one.
parallax-exit-pupil = exit pupil { $mm } mm
parallax-mark-fixed = fixed
parallax-mark-adjustable = adjustable
parallax-inputs = { $power } ×, objective { $objective } mm, pupil { $pupil } mm by day; one sight fixed at { $fixed }, one adjustable from { $nearest }
parallax-offset = Eye off the axis
parallax-eye-centred = in the middle
parallax-eye-right = { $mm } mm right
parallax-eye-left = { $mm } mm left
parallax-fixed-at = Fixed at { $free }, used at { $at }:
parallax-adjustable-from = Adjustable from { $nearest }, set to the range:
parallax-off = the mark lies { $cm } off, { $share } % of the circle.
parallax-still = the mark stays where it is.
parallax-black = the picture is black, because the eye no longer meets the exit pupil.
parallax-scale = To scale: the circle is { $circle } across, errors at the same scale; beside it the eye to a scale of its own, 17 mm across.
parallax-leaves-out = Left out: errors of the lenses, and that a usual cheek keeps within about a third of the widest error.
parallax-source = e = M·x·|R − R₀|/R₀, R₀ the distance at which the sight is free of parallax, x the middle of the part of the exit pupil that the eye uses. Thin lenses; exact for these.

# The field and a moving animal
crossing-title = The field and a moving animal
crossing-time = Way through the field
crossing-share = { $share } %
crossing-note = crossbar: the lead
crossing-at = { $sight } at { $power }
crossing-inputs = { $name } with an apparent field of { $apparent }° at { $power } ×
crossing-inputs-animal = { $animal } at { $speed } m/s; { $fields }
crossing-field = { $name }: { $width } wide; crossed in { $seconds } s.
crossing-lead = At { $speed } m/s and { $flight } s of flight it moves { $lead } on, { $lengths } of its lengths; the rifle swings { $swing }° a second.
crossing-scale = To scale: the wider field is { $width } at { $range }. The crossbar is the lead.
crossing-leaves-out = Left out: the time that the shooter needs, and an animal that does not run square across or does not keep its speed.
crossing-source = Width W = 2·R·tan ω′/M (ISO 14132-1); crossing time W/v; lead v·t(R), t from the flight of the load. Speeds are typical canters, a walk where what is shown stands; an assumption.

# The flight
flight-title = The flight
flight-on = on the line of sight
flight-low = { $cm } low
flight-high = { $cm } high
flight-dead-on = Aimed dead on at { $range }: { $place }, give or take { $spread }.
flight-hold = To meet the point of aim there: hold { $angle }, or { $clicks } clicks of { $click }.
flight-mark = The nearest mark is { $mark }: { $off } off.
flight-ring = A ring with a mark every { $every }, set to { $engraved }: { $off } off.
flight-means = What each does there
flight-means-note = at { $range }; shaded: the aiming circle
flight-means-dead-on = dead on
flight-means-mark = mark
flight-means-ring = ring
flight-means-dial = dial
flight-means-on = on it
flight-course-note = thin: line of sight; thick: path
flight-zero = zero { $range }
flight-leaves = leaves at { $range }
flight-inputs = { $velocity } (give or take { $spread }), { $drag } { $coefficient } lb/in², zero { $zero }, sight { $height } mm over the bore, distance known to { $guess } %
flight-reach = Dead on, the path stays within a circle of { $circle } to { $reach }: drop alone, no range to shoot at.
flight-caution = How still you hold and what lies behind decide more than drop does.
flight-scale = Height is drawn { $times } times as large as distance; the picture is { $range } long. In the second drawing the shaded band is the circle of { $circle }; an arrow lies beyond it.
flight-leaves-out = Left out: wind, slope, and what your own rifle does. The band is the aiming circle, the cloud the spread.
flight-source = Point mass with the standard drag laws G1 or G7 in the standard atmosphere ISO 2533, zeroed at the stated range. The spread joins velocity, ballistic coefficient and the estimate of distance. Your own load is to be shot and confirmed at two distances.

# On the rifle
rifle-title = On the rifle
rifle-saddle = Height of the ring’s saddle over the rail
rifle-heights = Saddle { $saddle } over the rail, axis { $centre } over the rail and { $bore } over the bore.
rifle-bell-touches = The bell touches: { $missing } are missing.
rifle-bell-close = The bell clears by { $air } only; { $wanted } are wanted.
rifle-bell-clear = The bell clears by { $air }.
rifle-bolt-touches = The eyepiece touches the lifted bolt: { $missing } are missing.
rifle-bolt-clear = The eyepiece clears the lifted bolt by { $air }.
rifle-eye = The eye belongs { $relief } behind the eyepiece.
rifle-least = The lowest saddle that clears everything is { $saddle }.
rifle-missing = { $missing } missing
rifle-inputs = bell { $bell }, tube { $tube }, barrel { $barrel }, rail { $rail } over the bore, { $air } of air wanted
rifle-scale = To scale: the picture is { $mm } mm long.
rifle-leaves-out = Left out: the cheek, caps and covers. The stock, and the lengths of bell and eyepiece, are typical; measure before you order. The maker’s figures and a gunsmith decide.
rifle-source = Axis over rail at least bell/2 + air − (rail − barrel); over bore: rail plus axis. Slots after MIL-STD-1913: 5.23 mm every 10.01 mm.

# The evening
evening-title = The evening
evening-scale = The line of time is linear, an hour is the same length everywhere; the colours follow the light under the open sky.
evening-leaves-out = Left out: hills, lamps, and changing weather. The ends are for the detail that recognising needs; a body is seen longer. Between two sights the difference is far surer than either end.
evening-inputs = an eye of { $age } years, ground of reflectance { $ground }, the eye { $eye } over it
evening-source = Sun and Moon after the Astronomical Almanac and Meeus, light after the Explanatory Supplement (1992), the eye as under the view through the sight. A single end is uncertain by 5 to 10 min, a difference by 0.3 min and by the person’s own pupil.
