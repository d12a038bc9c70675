//! Separated values, as RFC 4180 writes them and as spreadsheets really do.

/// One line of a table with the number of the text line on which it begins.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Record {
    /// Line in the text, from 1.
    pub line: usize,
    /// Its cells, trimmed.
    pub cells: Vec<String>,
}

/// The separator of a text: of comma, semicolon and tab the one that stands most often in
/// the heading, outside quotes; none where a single column has nothing to separate.
fn separator(heading: &str) -> Option<char> {
    let mut quoted = false;
    let mut counts = [(';', 0), ('\t', 0), (',', 0)];
    for c in heading.chars() {
        if c == '"' {
            quoted = !quoted;
        } else if !quoted && let Some(count) = counts.iter_mut().find(|(sign, _)| *sign == c) {
            count.1 += 1;
        }
    }
    let mut best = (None, 0);
    for (sign, count) in counts {
        if count > best.1 {
            best = (Some(sign), count);
        }
    }
    best.0
}

/// All lines that hold anything, or the line on which a quote was opened and never closed.
pub(super) fn records(text: &str) -> Result<Vec<Record>, usize> {
    let text = text.strip_prefix('\u{FEFF}').unwrap_or(text);
    let mut heads = text.lines().filter(|line| !line.trim().is_empty());
    let mut first = heads.next().unwrap_or_default();
    // Some spreadsheets say first what separates.
    let is_told = first.starts_with("sep=");
    if is_told {
        first = heads.next().unwrap_or_default();
    }
    let separator = separator(first);
    let mut found = Vec::new();
    let mut cells = Vec::new();
    let mut cell = String::new();
    let mut quote_opened = None;
    let (mut line, mut begun) = (1, 1);
    let mut chars = text.chars().peekable();
    let mut end = |cells: &mut Vec<String>, cell: &mut String, begun: usize| {
        cells.push(cell.trim().to_owned());
        cell.clear();
        let cells = core::mem::take(cells);
        if cells.iter().any(|cell| !cell.is_empty()) {
            found.push(Record { line: begun, cells });
        }
    };
    while let Some(c) = chars.next() {
        match (c, quote_opened) {
            ('"', Some(_)) if chars.peek() == Some(&'"') => {
                chars.next();
                cell.push('"');
            }
            ('"', Some(_)) => quote_opened = None,
            // An inch sign within a cell is no quote.
            ('"', None) if cell.trim().is_empty() => {
                cell.clear();
                quote_opened = Some(line);
            }
            ('\r', None) if chars.peek() == Some(&'\n') => {}
            ('\n' | '\r', None) => {
                end(&mut cells, &mut cell, begun);
                line += 1;
                begun = line;
            }
            (c, None) if Some(c) == separator => {
                cells.push(cell.trim().to_owned());
                cell.clear();
            }
            (c, _) => {
                line += usize::from(c == '\n');
                cell.push(if c == '\n' || c == '\r' { ' ' } else { c });
            }
        }
    }
    if let Some(line) = quote_opened {
        return Err(line);
    }
    end(&mut cells, &mut cell, begun);
    if is_told {
        found.remove(0);
    }
    Ok(found)
}
