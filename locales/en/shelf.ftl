# A shop's stock list

stock-empty = Nothing is in this list. It needs a heading with a column “sight”, and a row for each sight.
stock-too-long = This list is { $read } bytes long. At most { $most } are read.
stock-no-sight-column = No column is headed “sight”. The headings read are { $read }; those known are { $known }.
stock-twice-named = Two columns are headed “{ $column }”. Keep one of them.
stock-open-quote = The quotation mark opened in line { $line } is never closed.
stock-row-sight = Line { $line }: { $why }.
stock-row-no-number = Line { $line }: “{ $read }” in { $column } is not a number.
stock-row-out-of-range = Line { $line }: { $column } is { $value }. { $least } to { $most } makes sense.
stock-row-unread = Line { $line }: “{ $words }” means nothing here and is left out.
stock-row-too-many = Line { $line } has { $cells } cells under { $columns } headings. Put text with a separator in it in quotation marks.
stock-row-beyond = Line { $line } and all after it: only { $most } rows are read.
