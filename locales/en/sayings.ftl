# One sentence to say aloud for each saying and verdict. Numbers are this person's own.
said-about = about { $value } (give or take { $spread })

said-thick_tube_is_brighter-true = With the thicker tube the evening ends { $seconds } later for you.
said-thick_tube_is_brighter-half = The thicker tube changes your evening by { $seconds }, and weighs { $mass } more.
said-thick_tube_is_brighter-false = Same lens, same power, same glass: the thicker tube changes your evening by { $seconds }. It brings { $travel } of elevation and weighs { $mass } more.

said-thick_tube_for_long_range-true = At { $range } you need { $needed } up from the zero, and a 30 mm tube leaves only { $thin }. 34 mm leave { $thick }.
said-thick_tube_for_long_range-half = At { $range } you need { $needed }. A 30 mm tube leaves { $thin }: enough, with little to spare. 34 mm leave { $thick }.
said-thick_tube_for_long_range-false = At { $range }, your farthest, you need { $needed }. A dial in a 30 mm tube leaves { $thin }.

said-five_points_are_twenty_minutes-true = On your evening five points more are { $seconds }.
said-five_points_are_twenty_minutes-half = On your evening five points more are { $seconds }: something, far from twenty minutes.
said-five_points_are_twenty_minutes-false = On your evening five points more are { $seconds }. Seconds, not minutes.

said-one_sees_dear_glass-true = Beside the bright sky plain glass leaves { $plain } of contrast, the best { $best }. You see that side by side; on your evening it is { $minutes }.
said-one_sees_dear_glass-half = Plain glass leaves { $plain } of contrast where you shoot, the best { $best }. You have to look for it; on your evening it is { $minutes }.
said-one_sees_dear_glass-false = Where you shoot there is little glare to hold off: { $plain } of contrast with plain glass, { $best } with the best.

said-everyone_needs_seven_millimetres-true = Your pupil opens to { $pupil } in the light you stop in. 7 mm is right for you.
said-everyone_needs_seven_millimetres-half = Your pupil opens to { $pupil } in the light you stop in. Of a beam of 7 mm { $iris } falls on your iris.
said-everyone_needs_seven_millimetres-false = Your pupil is at { $pupil } in the light you stop in. Of a beam of 7 mm { $iris } would fall on your iris.

said-past_fifty_a56_is_wasted-true = From 42 to 56 mm you gain { $eight } at 8 × and { $eleven } at 11 ×: nothing you would notice.
said-past_fifty_a56_is_wasted-half = At 8 × a 56 brings you { $eight } over a 42. Turn it to 11 × and it brings { $eleven }.
said-past_fifty_a56_is_wasted-false = Your dark pupil is { $pupil }. A 56 brings you { $eight } over a 42 even at 8 ×.

said-eight_by56_is_the_night_sight-true = For your eye 8 × 56 ends { $minutes } later than 10 × 50, for { $mass } more.
said-eight_by56_is_the_night_sight-half = For your eye 8 × 56 and 10 × 50 end within a minute of each other. The 56 weighs { $mass } more.
said-eight_by56_is_the_night_sight-false = For your eye 10 × 50 lasts { $minutes } longer, and weighs { $mass } less.

said-turn_down_when_dark-true = In your last light { $best } serves longest. Left at { $top } you lose { $top_lost }.
said-turn_down_when_dark-half = In your last light { $best } serves longest. Left at { $top } you lose { $top_lost }; turned all the way down, { $low_lost }.
said-turn_down_when_dark-false = Turned all the way down you lose { $low_lost }. Left at { $top } you lose { $top_lost }.

said-turn_up_when_dark-true = Up to { $best } it pays: at the lowest power you lose { $low_lost }, at the top { $top_lost }.
said-turn_up_when_dark-half = Up to { $best } it pays. Beyond that, at { $top }, you lose { $top_lost }.
said-turn_up_when_dark-false = Past { $best } it costs: at { $top } you lose { $top_lost }.

said-twilight_number_decides-true = 8 × 50 and 10 × 40 share the number { $number }, and for your eye they end within { $minutes }.
said-twilight_number_decides-half = 8 × 50 and 10 × 40 share the number { $number }. For your eye they end { $minutes } apart.
said-twilight_number_decides-false = 8 × 50 and 10 × 40 share the number { $number }. For your eye one lasts { $minutes } longer.

said-snow_doubles_the_light-true = Under your skies snow brings { $clear } to { $overcast } times the light.
said-snow_doubles_the_light-half = The light itself grows { $clear } times under a clear sky and { $overcast } times under cloud. But the ground is { $ground } times as bright, and your game stands out by { $snow } instead of { $grass }.
said-snow_doubles_the_light-false = Snow brings { $clear } times the light, no more. The ground is { $ground } times as bright: that is what you see.

said-cloud_costs_twenty_minutes-true = Where and when you shoot, a closed sky costs { $closed } of the evening, a dark rain cloud { $dark }.
said-cloud_costs_twenty_minutes-half = A closed sky costs you { $closed }, a dark rain cloud { $dark }.
said-cloud_costs_twenty_minutes-false = A closed sky costs you { $closed } only, a dark rain cloud { $dark }.

said-moon_needs_electronics-true = On { $nights } of 30 nights the Moon lights your ground enough for a sight. What else is lawful differs by place.
said-moon_needs_electronics-half = On { $nights } of 30 nights the Moon lights your ground enough for at least an hour, if it is clear. On the others it does not.
said-moon_needs_electronics-false = On { $nights } of 30 nights the Moon lights your ground enough, if it is clear. Night hours and what is lawful differ by place.

said-first_plane_for_far-true = You hold off at your farthest: in the second plane, at two thirds of its power, that hold is { $miss } off, on a circle of { $circle }.
said-first_plane_for_far-half = Off its power a second-plane hold is { $miss } out, on a circle of { $circle }. But a fine first-plane line looks { $line } wide at the lowest power, and in your last light { $needed } is just seen.
said-first_plane_for_far-false = Your shots need no hold: off its power the second plane would cost { $miss } on a circle of { $circle }. A fine first-plane line looks { $line } wide at the lowest power.

said-first_plane_covers_target-true = At the top power the line covers { $high } instead of { $low }.
said-first_plane_covers_target-half = The line covers { $high } at your farthest, at any power. On a circle of { $circle } that is much.
said-first_plane_covers_target-false = The line covers { $low } at the lowest power and { $high } at the top. Line and target grow alike.

said-half_a_mark_at_any_power-true = Held at half the power, half a mark is { $miss } off at { $range }: too little to matter on your circle of { $circle }.
said-half_a_mark_at_any_power-half = Held at half the power, half a mark is { $miss } off at { $range }, on a circle of { $circle }.
said-half_a_mark_at_any_power-false = Held at half the power, half a mark is { $miss } off at { $range }. Your circle is { $circle }.

said-set_at_hundred_useless_at300-true = With a usual cheek the error at 300 is { $usual }: more than a quarter of your circle of { $circle }.
said-set_at_hundred_useless_at300-half = With a usual cheek the error at 300 is { $usual } on your circle of { $circle }. With a careless one it grows to { $extreme }.
said-set_at_hundred_useless_at300-false = With a usual cheek the error at 300 is { $usual }, with the picture almost black { $extreme }. Your circle is { $circle }.

said-black_ring_is_parallax-true = With the eye 2 mm off the error is { $error }.
said-black_ring_is_parallax-half = With the eye 2 mm off the error is { $error }; the ring itself shows where your eye is.
said-black_ring_is_parallax-false = At the distance it is set for, the error is { $error } with your eye 2 mm off, ring or no ring. The ring says your eye has left the { $full } of full picture.

said-side_focus_is_for_sharpness-true = When your picture is sharp at { $range }, no more than { $left } of parallax is left. On a circle of { $circle } that will do.
said-side_focus_is_for_sharpness-half = Your eye makes good { $dioptres } dioptres by itself. At { $range } the picture can be sharp with { $left } of parallax left, on a circle of { $circle }.
said-side_focus_is_for_sharpness-false = Your eye makes good { $dioptres } dioptres by itself. At { $range } the picture can be sharp with { $left } of parallax left: too much for a circle of { $circle }.

said-four_high_and_forget-true = That is a zero at { $zero }. You can aim dead on at a circle of { $circle } to { $reach }, and your farthest is { $farthest }. Your hold may end sooner.
said-four_high_and_forget-half = That is a zero at { $zero }. On a circle of { $circle } it holds to { $reach }; your farthest is { $farthest }.
said-four_high_and_forget-false = Four high leaves a circle of { $circle } after { $reach }. With your load and target it is the wrong zero.

said-flat_cartridge_needs_no_dial-true = Zeroed at { $zero } your load stays inside your circle to { $reach }. You need { $farthest }: no dial. Your hold may end sooner.
said-flat_cartridge_needs_no_dial-half = Zeroed at { $zero } your load stays inside your circle to { $reach }. For the last stretch to { $farthest } a mark will do.
said-flat_cartridge_needs_no_dial-false = Zeroed at { $zero } your load stays inside your circle to { $reach }. At { $farthest } you are { $drop } low with the usual zero: marks or a dial.

said-dial_is_precision-true = You have { $clicks } clicks to turn at your farthest. The load leaves { $load } open and the distance { $range }, on a circle of { $circle }.
said-dial_is_precision-half = You have { $clicks } clicks to turn at your farthest. The load leaves { $load } open and the distance { $range }, on a circle of { $circle }.
said-dial_is_precision-false = You have { $clicks } clicks to turn. But the load leaves { $load } open and the distance { $range }, on a circle of { $circle }. Measure your velocity and the distance first.

said-moa_is_finer-true = A click is { $quarter } instead of { $tenth } at 100 m. Your groups of { $group } are small enough to show it.
said-moa_is_finer-half = A click is { $quarter } instead of { $tenth } at 100 m. Your groups are { $group }: you will not see the difference.
said-moa_is_finer-false = A click is { $quarter } instead of { $tenth } at 100 m. Beside groups of { $group } it is nothing.

said-one_moa_is_an_inch-true = It is { $percent } more. At { $range } that makes { $miss } for you: less than half a click.
said-one_moa_is_an_inch-half = It is { $percent } more. At { $range } that makes { $miss }, { $clicks } clicks.
said-one_moa_is_an_inch-false = It is { $percent } more. At { $range } that makes { $miss }, { $clicks } clicks: a miss by counting.

said-more_power_better_shot-true = From 4 to 12 × more of your shots stay inside the circle, about { $points } more. Above { $ceiling } you chase the picture.
said-more_power_better_shot-half = From 4 to 12 × about { $points } more stay inside the circle. Your hold decides, not the power.
said-more_power_better_shot-false = From 4 to 12 × your shots lie as they did: aiming stops being the limit at about { $below }. Above { $ceiling } you chase the picture.

said-high_power_makes_me_shake-true = Your hold moves by { $wobble }, and 20 × shows it as { $shown }.
said-high_power_makes_me_shake-half = Your hold moves by { $wobble } at any power. 20 × shows it as { $shown }, more than you can use: stay below { $ceiling }.
said-high_power_makes_me_shake-false = Your hold moves by { $wobble } at any power. 20 × shows it as { $shown }, which you can live with.

said-low_mount_is_always_better-true = On your stock it is: the lowest that clears is { $height } over the rail, { $bore } over the bore.
said-low_mount_is_always_better-half = Your comb follows, so it need not be low. The lowest that clears is { $height } over the rail.
said-low_mount_is_always_better-false = On a straight stock your cheek cannot go lower: { $height } over the rail is where the eye is.

said-height_does_not_matter-true = 20 mm more change { $change } at { $range } and { $far } at your farthest. On a circle of { $circle } that is nothing.
said-height_does_not_matter-half = At { $range } you hit { $near } off the mark. 20 mm more of height change that by { $change }, on a circle of { $circle }.
said-height_does_not_matter-false = 20 mm more change { $change } at { $range } and { $far } at your farthest. Your circle is { $circle }.

said-eye_relief_is_on_the_box-true = You need { $needed }. A box that says { $box } keeps { $least } at the top power: enough.
said-eye_relief_is_on_the_box-half = You need { $needed }. A box that says { $box } may keep { $least } at the top power: measure the least.
said-eye_relief_is_on_the_box-false = You need { $needed }. { $box } on the box is not enough at any power.

said-only_a_small_cartridge-true = In your rifle it comes back at { $velocity } with { $energy }. { $relief } of eye relief will do.
said-only_a_small_cartridge-half = In your rifle it comes back at { $velocity } with { $energy }. That asks for { $relief } of eye relief.
said-only_a_small_cartridge-false = In your rifle it comes back at { $velocity } with { $energy }. That asks for { $relief } of eye relief, small or not.

said-magnums_kill_sights-true = Yours pulls at the sight with { $force }.
said-magnums_kill_sights-half = Yours pulls at the sight with { $force } at every shot: ask what recoil it is made for. A spring air rifle strikes both ways and needs a sight made for that.
said-magnums_kill_sights-false = Yours pulls with { $force }, coming back at { $velocity }. A spring air rifle strikes both ways, and many sights are not made for that.

said-rings_are_just_rings-true = Your rings hold { $peak } at the peak. Any that are true and fit will do.
said-rings_are_just_rings-half = Your rings hold { $peak } at every shot. They must fit and stay tight.
said-rings_are_just_rings-false = Your rings and base hold { $peak } at every shot, with { $energy } of recoil. They need a stop against it, and the maker’s torque.

said-lit_means_night-true = When you stop, the dark line looks { $line } wide and { $needed } is just seen. You need the light, dimmed.
said-lit_means_night-half = When you stop, the dark line looks { $line } wide and { $needed } is just seen. But on moving game a bright mark serves you by day.
said-lit_means_night-false = When you stop, the dark line still looks { $line } wide, and { $needed } is just seen. You do not need the light for the night.

said-no_battery_no_aim-true = When you stop, bars of { $width } at 100 m look { $bars } wide and { $needed } is just seen. Take heavier bars, or a spare battery.
said-no_battery_no_aim-half = When you stop, bars of { $width } at 100 m look { $bars } wide and { $needed } is just seen. Heavier bars would do.
said-no_battery_no_aim-false = When you stop, bars of { $width } at 100 m look { $bars } wide, and { $needed } is just seen. You aim without a battery.

said-fixed_is_brighter-true = Fewer lenses let through more: { $seconds } on your evening.
said-fixed_is_brighter-half = Fewer lenses let through a little more: { $seconds } on your evening. It also saves { $mass } and { $bands }.
said-fixed_is_brighter-false = On your evening it is { $seconds }. What it saves is { $mass } and { $bands }.

said-bigger_bell_narrows_field-true = With 42 mm you see { $small } at 100 m, with 56 mm { $large }.
said-bigger_bell_narrows_field-half = With 42 mm you see { $small } at 100 m, with 56 mm { $large }: hardly less.
said-bigger_bell_narrows_field-false = With 42 mm you see { $small } at 100 m, with 56 mm { $large }. What the larger one costs is { $mass }.

said-wide_zoom_does_it_all-true = A 1–8 × 24 shows { $field } at { $range } where you want { $needed }, and { $told } of detail at your farthest where you need { $asked }.
said-wide_zoom_does_it_all-half = A 1–8 × 24 shows { $field } at { $range } where you want { $needed }. In the evening it ends { $minutes } before an 8 × 56.
said-wide_zoom_does_it_all-false = A 1–8 × 24 ends { $minutes } before an 8 × 56, and tells { $told } at your farthest where you need { $asked }.

said-both_eyes_double_field-true = At { $power } both pictures are the same size and join: your field is as wide as your eyes. Through the sight alone game crosses in { $seconds }.
said-both_eyes_double_field-half = At { $power } one picture is { $percent } larger. Some eyes join them, some do not: try it.
said-both_eyes_double_field-false = At { $power } one picture is { $percent } larger than the other. They do not join; through the sight you see { $field }.

said-moderator_changes_only_noise-true = It changes your recoil by { $energy }.
said-moderator_changes_only_noise-half = There is little recoil to take: { $energy }. It adds { $mass } in front, and the zero moves.
said-moderator_changes_only_noise-false = It takes { $energy } and { $velocity } of recoil, so that { $relief } less eye relief will do. It adds { $mass } in front, and the zero moves.

said-uphill_high_downhill_low-true = On a slope of 30° you are { $up } off uphill and { $down } downhill at { $range }.
said-uphill_high_downhill_low-half = On a slope of 30° you are { $up } high at { $range }, up or down: nothing to think of.
said-uphill_high_downhill_low-false = On a slope of 30° you are { $up } high uphill and { $down } high downhill at { $range }. Take { $percent } of the distance, both ways.
