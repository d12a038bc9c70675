# Doors without questions: ring height and zero clicks.
rings-title = Which ring height
rings-lead = Four figures with a calliper, rifle unloaded and checked twice. The answer changes as you type.
rings-bell = Bell, outside diameter
rings-bell-hint = With its rim. A cap adds to it: tick it below.
rings-tube = Tube
rings-barrel = Barrel under the bell, diameter
rings-barrel-hint = A strip of paper round it, divided by 3.14.
rings-rail = Top of the rail over the bore axis
rings-rail-hint = { $usual } is usual on a bolt-action rifle.
rings-made = The rail is told by
rings-made-hint = Its height over the bore, or measured where it sits: a calliper over the receiver, and from there up to the top of the rail.
rings-made-bore = height over the bore
rings-made-mil_std_1913 = MIL-STD-1913
rings-made-stanag_4694 = STANAG 4694
rings-made-dovetail_11 = dovetail 11 mm
rings-made-dovetail_14_5 = dovetail 14.5 mm
rings-made-own = own measure
rings-receiver = Receiver under the rail, diameter
rings-receiver-hint = Round, and in line with the bore. A flat top: measure over the bore instead.
rings-over = Top of the rail over the receiver
rings-over-hint = A dovetail milled into the receiver: 0.
rings-width = Rail, width over its edges
rings-width-hint = { $usual } by its kind. Empty: not measured.
rings-made-over = That puts the top of the rail { $over } over the bore axis.
rings-made-other = At { $width } it is another rail than this, which is { $usual } wide: measure again, or choose another.
rings-under = The rail runs on under the bell
rings-cap = A cap stays on the objective
rings-straight = A straight in-line stock
rings-more = Iron sights, bolt, rings you have
rings-iron = Iron sights under the bell, height over the barrel
rings-iron-hint = { $least } to { $most } are usual. Empty: none.
rings-bolt = Lifted bolt handle, highest point over the bore axis
rings-bolt-hint = Under the eyepiece. Empty: not measured.
rings-apart = Middle of one ring to middle of the other
rings-apart-hint = Of rings or bases that are there. Empty: none.
rings-apart-fit = Rings { $spacing } apart both fit on such a tube, and the sight can still be moved { $room } for the eye. A typical tube, ±10 mm: measure yours.
rings-apart-miss = Rings { $spacing } apart cannot both hold such a tube: { $short } are missing between bell, turret and eyepiece. { $least } to { $most } apart would do.
rings-apart-close = Rings { $spacing } apart are too close to hold steady: { $least } at the least.
rings-apart-none = The straight part of such a tube is { $short } too short for two rings.
rings-answer = Saddle height
rings-means = That puts the axis { $centre } over the rail and { $bore } over the bore.
rings-least = { $least } is the lowest that clears, with { $air } of air.
rings-measured-how = Makers measure ring height differently: from the rail to the saddle, or to the middle of the tube ({ $centre } here). Say which.
rings-limit-bell = The bell decides.
rings-limit-ring = The ring itself decides: there is always { $metal } of metal under the tube.
rings-limit-iron = The iron sights decide.
rings-limit-bolt = The bolt decides.
rings-limit-stock = The stock decides: your cheek cannot go lower.
rings-cautions = Close the bolt and lift it: the eyepiece must clear it too. The maker’s figures come first.

zero-title = Zero clicks
zero-lead = Where the centre of your group lies, seen from where you shoot. A group of five tells more than one of three.
zero-distance = Distance to the target
zero-height = Above or below
zero-side = Left or right
zero-above = above
zero-below = below
zero-left = left
zero-right = right
zero-by-height = High or low by
zero-by-side = Left or right by
zero-click = One click
zero-click-tenth_mrad = 0.1 mrad
zero-click-twentieth_mrad = 0.05 mrad
zero-click-quarter_moa = ¼ MOA
zero-click-third_moa = ⅓ MOA
zero-click-eighth_moa = ⅛ MOA
zero-turn = Turn
zero-turn-up = { $clicks ->
    [one] up 1 click
   *[other] up { $clicks } clicks
  }
zero-turn-down = { $clicks ->
    [one] down 1 click
   *[other] down { $clicks } clicks
  }
zero-turn-left = { $clicks ->
    [one] left 1 click
   *[other] left { $clicks } clicks
  }
zero-turn-right = { $clicks ->
    [one] right 1 click
   *[other] right { $clicks } clicks
  }
zero-turn-none-height = nothing in height
zero-turn-none-side = nothing sideways
zero-both = { $height }, { $side }
zero-one-click = One click moves the hit by { $click } at { $distance }.
zero-left-over = { $height } in height and { $side } sideways are left: less than half a click.
zero-marked = Turrets are marked by the way the hit moves. If yours says otherwise, follow it.
zero-cautions = Then fire another group. What lies behind the target is yours to know.
zero-drawing = The paper, to scale: the mark, and the centre of your group.
zero-paper = The square is { $side } wide.

club-title = On a club’s page
club-lead = Choose what your members are asked and how it looks. Put the lines that this gives into your page: one script, one element, from any host.
club-door = It opens with
club-door-questions = the questions
club-door-counter = the counter
club-door-compare = this one or that one
club-door-rings = ring height
club-door-zero = zero clicks
club-quarry = What your members shoot at
club-nearest = Nearest shot, m
club-usual = Usual shot, m
club-farthest = Farthest shot, m
club-power-most = Highest power allowed
club-latitude = Latitude, degrees north
club-longitude = Longitude, degrees east
club-lit = Lit marks are forbidden
club-language = Language
club-as-browser = as the browser has it
club-colour-ground = ground
club-colour-surface = surface
club-colour-ink = words
club-colour-ink-soft = lesser words
club-colour-line = lines of controls
club-colour-accent = accent
club-colour-on-accent = words on the accent
club-usual-colours = The usual colours again
club-faint = The { $colour } on the { $ground } has a contrast of { $contrast }. It needs { $least }: until then the usual colours are shown.
club-readable = These colours can be read.
club-snippet = The lines for your page
club-snippet-lead = Without JavaScript the link inside stays.
club-copy = Copy the lines
club-preview = As your members see it
club-event = What your page hears
club-event-lead = Each advice is told to your page as an event “advice” on the element. Its detail is this, as of the last one in the preview above:
club-event-none = nothing yet
