# A shop's stock list

stock-empty = Nothing is in this list. It needs a heading with a column “sight”, and a row for each sight.
stock-too-long = This list is { $read } bytes long. At most { $most } are read.
stock-no-sight-column = No column is headed “sight”. The headings read are { $read }; those known are { $known }.
stock-twice-named = Two columns are headed “{ $column }”. Keep one of them.
stock-open-quote = The quotation mark opened in line { $line } is never closed.
stock-row-sight = Line { $line } is left out: { $why }.
stock-row-no-number = Line { $line }: “{ $read }” in { $column } cannot be read and is left out. A number would be right, as in { $right }.
stock-row-out-of-range = Line { $line }: { $column } is { $value } and is left out. { $least } to { $most } makes sense.
stock-row-unread = Line { $line }: “{ $words }” means nothing here and is left out.
stock-row-too-many = Line { $line } is left out: { $cells } cells under { $columns } headings. Put text with a separator in it in quotation marks.
stock-row-beyond = Line { $line } and all after it: only { $most } rows are read.

shelf-title = Your shelf
shelf-lead = Load your own stock list and see what each sight on it does for the customer whose answers are open. The list stays on this device and works without a network.
shelf-file = A list from your till, as a table (CSV)
shelf-text = Or paste it here
shelf-hint = The first line names the columns. One is called “sight” and holds what stands on the box, as in 3-12x50, 30 mm, lit. Others are optional: label, price, tube_mm, plane, reticle, light, parallax, turret, glass, eye_relief_mm, mass_g.
shelf-demo = Try an invented list
shelf-is-demo = This list is invented, to try the page with.
shelf-forget = Forget this list
shelf-forgotten = The list is forgotten.
shelf-denied = This browser keeps nothing for this page, so the list lasts until the tab is closed.
shelf-full = The browser has no room left for this list, so it lasts until the tab is closed.
shelf-judged = For this customer
shelf-none = No stock list is loaded on this device.
shelf-load = Load one
shelf-judging = Judging { $count ->
    [one] one sight
   *[other] { $count } sights
  }.
shelf-more = The best { $shown } of { $all } are shown.
shelf-read = { $count ->
    [one] One sight was read.
   *[other] { $count } sights were read.
  }
shelf-ignored = Not read, because such columns mean nothing here: { $columns }.
shelf-served = { $tenths } of 10 situations
shelf-until = told apart until { $minutes } after sunset
shelf-until-before = told apart until { $minutes } before sunset
shelf-always = told apart throughout
shelf-price = price { $price }
shelf-lost = What stops it most often: { $cause }.
shelf-rings = It does not go into the rings that stay.
shelf-relief = Its eye relief is { $short } short of what the recoil asks for.
shelf-outside = Outside what serves: { $elements }.
shelf-measure = Not stated, so measure: { $elements }.
