# What stands round every picture
picture-where-from = Where does this come from
picture-keep-svg = Keep as SVG
picture-keep-png = Keep as PNG

# The dusk strip
strip-sunset = sunset
strip-civil = end of civil twilight
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
strip-spoken = The light from { $first } to { $last }.
strip-never-dark = It does not get dark in this night: the strip ends when the Sun stands lowest.

# Through the sight
view-title = Through the sight
view-power = Magnification
view-range = Range
view-dusk = Time of the evening
view-first = First focal plane
view-second = Second focal plane
view-times = { $power }×
view-centre-to-bar = centre to bar
view-mark-to-mark = one mark
view-centre-to-ring = centre to ring
view-post = width of the post
view-line = width of the line
view-covers = { $what }: { $mrad }, { $cm } on it
view-picture = { $quarry } at { $range }, { $power }, { $time }.
view-first-said = In the first plane { $what } is { $mrad } and covers { $cm } at { $range }: the same at every magnification. The finest line looks { $arcmin }′ wide.
view-second-said = In the second plane { $what } now covers { $mrad }, { $cm } at { $range }; the label of { $label } holds at { $reference } only. The finest line looks { $arcmin }′ wide at every magnification.
view-second-at-label = In the second plane { $what } covers { $mrad }, { $cm } at { $range }: at this magnification the label holds. The finest line looks { $arcmin }′ wide at every magnification.
view-body-apart = With this eye and this sight the body is told from its ground.
view-body-lost = With this eye and this sight the body is not told from its ground any more.
view-fine-lost = Of its finer parts { $share } % are lost in the dusk.
view-line-lost = The finest line of the reticle can no longer be told from the ground; { $bars ->
    [yes] the bars still can.
   *[no] nor can the bars.
}
view-thin = The finest line is { $px } px wide here and looks grey for that reason.
view-larger = It is larger than the field of { $field }.
view-no-light = There is no light to see by.
view-scale = To scale: the field is { $field } wide at { $range }; both pictures show the same animal at the same scale, one above the other or side by side.
view-leaves-out = Left out: edge blur, mirage, wobble, fog, lamps, and colour as any one eye has it. The brightness is compressed, because no screen shows a night; the ratios inside the picture are kept up to what your eye can tell apart.
view-identify = Telling a body from its ground is not knowing what it is, and neither is leave to shoot.
view-source-scale = Scale: tan ω′ = M·tan ω (ISO 14132-1), apparent field { $apparent }°, magnification M; a mark of s mrad covers s·R/10 cm at R metres. First plane: s constant. Second plane: s·{ $reference }/M.
view-source-light = Light: this evening’s illuminance on the ground, its reflectance { $ground }, coat { $coat }; your pupil { $pupil } mm, the beam that enters { $beam } mm; transmission { $transmission }, stray light { $glare } %.
view-source-threshold = Fading: every piece is drawn with the part of its contrast that exceeds the threshold, (C − C_th)/C. Threshold: A. Crumey, MNRAS 442:2600 (2014), field factor 2, one eye √2, age as in Jackson and Owsley (2000). Valid for a rested, adapted eye; the zero is uncertain by ±0.2 in log₁₀, about ±3 min.

# The page of all pictures
demo-title = The pictures
demo-note = A made-up shooter of 46 years, a made-up sight of 2.5–10 × 50, the evening of 1 October 2026 at 51° north.
demo-quarry = Shown
demo-reticle = Reticle
demo-bare-eye = bare eye
demo-this-sight = this sight
demo-that-sight = a 4 × 32
