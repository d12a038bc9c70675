//! A shop's stock list: what is read, what is wrong, what fits. The stock is invented.

use proptest::prelude::*;
use scopewright::advice;
use scopewright::advice::versus::{Bench, Sight, versus};
use scopewright::need::answers::{Answers, Mount};
use scopewright::need::kinds::{KINDS, Kind};
use scopewright::need::resolve;
use scopewright::shelf::stock::RowWrong;
use scopewright::shelf::{Judged, StockProblem, order, rank, read};

const DEMO: &str = "Label;Sight;Price;Tube mm;Mass_g;light;plane;remark\n\
    demo 1;2,5-10 x 50;€ 899,00;30;540;lit;second;in the window\n\
    demo 2;\"8x56, capped\";1.299,00;30 mm;500 g;;;\"two\nlines\"\n\
    \n\
    demo 3;5-25x56;2199;34;1030;unlit;first plane;\n\
    demo 4;1-6x24;499,50;;;;;\n";

#[test]
fn a_list_is_read_as_spreadsheets_write_it() {
    let stock = read(DEMO).expect("a list");
    assert_eq!(stock.problems, []);
    assert_eq!(stock.ignored, ["remark"]);
    assert_eq!(stock.rows.len(), 4);
    let lines: Vec<usize> = stock.rows.iter().map(|row| row.line).collect();
    assert_eq!(lines, [2, 3, 6, 7]);
    let prices: Vec<_> = stock
        .rows
        .iter()
        .map(|row| row.price.expect("a price"))
        .collect();
    assert_eq!(prices, [899.0, 1299.0, 2199.0, 499.5]);
    assert_eq!(stock.rows[1].sight.mass_g, Some(500.0));
    assert_eq!(stock.rows[0].sight.tube_mm, Some(30.0));
    // What is not stated stays unknown.
    assert_eq!(stock.rows[3].sight.tube_mm, None);
    let commas = "\u{FEFF}sight,mass_g\r\n\"2,5-10x50\",540\r\n4-16x44,620\r\n";
    assert_eq!(read(commas).expect("a list").rows.len(), 2);
    let tabs = "mass_g\tsight\n540\t3-12x50\n";
    assert_eq!(
        read(tabs).expect("a list").rows[0].sight.mass_g,
        Some(540.0)
    );
}

#[test]
fn what_is_wrong_has_its_line() {
    assert_eq!(read(""), Err(StockProblem::Empty));
    assert_eq!(read("\n \n"), Err(StockProblem::Empty));
    assert!(
        matches!(read("item;price\nx;3"), Err(StockProblem::NoSightColumn { read }) if read == ["item", "price"])
    );
    assert_eq!(
        read("sight;Sight\n"),
        Err(StockProblem::TwiceNamed { column: "sight" })
    );
    assert_eq!(
        read("sight\n3-12x50\n\"4x32\n"),
        Err(StockProblem::OpenQuote { line: 3 })
    );
    let stock =
        read("sight;mass_g\n56x8;500\n3-12x50;heavy\n3-12x50;9\n3-12x50;600;x\nabc;\n6x42;380\n")
            .expect("a list");
    let wrong: Vec<_> = stock
        .problems
        .iter()
        .map(|problem| (problem.line, &problem.wrong))
        .collect();
    assert!(matches!(wrong[0], (2, RowWrong::Sight(_))));
    assert!(matches!(
        wrong[1],
        (
            3,
            RowWrong::NoNumber {
                column: "mass_g",
                ..
            }
        )
    ));
    assert!(matches!(
        wrong[2],
        (
            4,
            RowWrong::OutOfRange {
                column: "mass_g",
                ..
            }
        )
    ));
    assert!(matches!(
        wrong[3],
        (
            5,
            RowWrong::TooManyCells {
                cells: 3,
                columns: 2
            }
        )
    ));
    assert!(matches!(wrong[4], (6, RowWrong::Sight(_))));
    // The rest goes on, without the cells that cannot be.
    let kept: Vec<_> = stock
        .rows
        .iter()
        .map(|row| (row.line, row.sight.mass_g))
        .collect();
    assert_eq!(kept, [(3, None), (4, None), (7, Some(380.0))]);
    for problem in &stock.problems {
        let said = scopewright::wording::shelf::row_problem(problem);
        assert!(said.contains(&problem.line.to_string()), "{said}");
    }
}

/// What tills write, seen in lists of shops: common practice, no source.
#[test]
fn a_messy_list_is_read() {
    let price = |cell: &str| {
        let stock = read(&format!("sight;price\n8x56;{cell}\n")).expect("a list");
        assert_eq!(stock.rows.len(), 1, "{cell}");
        stock.rows[0].price
    };
    for (cell, right) in [
        ("899,-", 899.0),
        ("899,–", 899.0),
        ("899.-", 899.0),
        ("1.299,- €", 1299.0),
        ("EUR 1.299,00", 1299.0),
        ("1299 EUR", 1299.0),
        ("Fr. 1’299.—", 1299.0),
        ("CHF 1'299.50", 1299.5),
        ("1 299,50 kr", 1299.5),
        ("$1,299", 1299.0),
    ] {
        assert_eq!(price(cell), Some(right), "{cell}");
    }
    for cell in ["on request", "-", "12 to 15", "-899"] {
        assert_eq!(price(cell), None, "{cell}");
    }
    // One column has nothing to separate, whatever stands in it.
    let one = read("sight\n2,5-10x50, 30 mm, lit\n8x56\n").expect("a list");
    assert_eq!((one.rows.len(), one.problems.len()), (2, 0));
    assert_eq!(one.rows[0].sight.tube_mm, Some(30.0));
    // What separates is said first; rows are filled up with empty cells.
    let told = "\u{FEFF}sep=;\r\n\r\nsight;mass_g\r\n8x56, 30 mm;520;;;\r\n";
    let told = read(told).expect("a list");
    assert_eq!(told.problems, []);
    assert_eq!(
        (told.rows[0].line, told.rows[0].sight.mass_g),
        (4, Some(520.0))
    );
    assert_eq!(read("sep=;\n"), Err(StockProblem::Empty));
}

/// A message says what was read, what becomes of it, and what would be right.
#[test]
fn a_cell_that_is_no_number_is_told_with_what_would_be() {
    let list = "sight;tube_mm;eye_relief_mm;mass_g;price\n8x56;thick;near;heavy;on request\n";
    let stock = read(list).expect("a list");
    assert_eq!(stock.rows.len(), 1);
    let said: Vec<_> = stock
        .problems
        .iter()
        .map(scopewright::wording::shelf::row_problem)
        .collect();
    assert_eq!(
        said[0],
        "Line 2: “thick” in tube_mm cannot be read and is left out. A number would be right, as in 30."
    );
    assert_eq!(said.len(), 4);
    // A unit typed twice is a unit; a number that no sight has is told with those that have.
    let typed = read("sight;tube_mm\n8x56;30mmmm\n8x56;50mmmm\n").expect("a list");
    assert_eq!(typed.rows[0].sight.tube_mm, Some(30.0));
    assert_eq!(typed.rows[1].sight.tube_mm, None);
    assert_eq!(
        scopewright::wording::shelf::row_problem(&typed.problems[0]),
        "Line 3: tube_mm is 50 and is left out. 20 to 45 makes sense."
    );
    for right in ["90", "640", "899"] {
        let as_in = format!("as in {right}.");
        assert!(said.iter().any(|said| said.ends_with(&as_in)), "{said:?}");
        // What is named as right is.
        let mended = list
            .replace("near", "90")
            .replace("heavy", "640")
            .replace("on request", "899")
            .replace("thick", "30");
        assert_eq!(read(&mended).expect("a list").problems, []);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever file is dropped: an answer, never a panic.
    #[test]
    fn no_file_panics(text in "\\PC{0,200}", cells in "[-0-9a-zx;,.\"\n\t ]{0,200}") {
        let _ = read(&text);
        let _ = read(&format!("sight;mass_g;price\n{cells}"));
    }
}

/// What is not stated is never held against a sight, what lies outside a must is.
#[test]
fn unknown_stays_unknown() {
    let seat = KINDS[0].fill(&Answers::default());
    let advised = advice::advise(&seat).expect("valid answers");
    let pick = &advised.picks[0];
    let glass = format!(
        "{}-{}x{}",
        pick.line.mag_low, pick.line.mag_high, pick.line.objective_mm
    );
    let list = format!("label;sight;mass_g\nplain;{glass};\nheavy;{glass};2900\nspy;30-60x80;\n");
    let stock = read(&list).expect("a list");
    assert_eq!(stock.problems, []);
    let ranked = rank(&stock.rows, &pick.ranges);
    let place = |label: &str| {
        ranked
            .iter()
            .position(|each| each.row.label.as_deref() == Some(label))
            .expect("ranked")
    };
    assert!(ranked[place("plain")].serves());
    assert!(ranked[place("plain")].outside.is_empty());
    assert!(!ranked[place("plain")].unknown.is_empty());
    assert!(
        place("plain") <= place("heavy") && place("heavy") < place("spy"),
        "{ranked:#?}"
    );
    assert!(!ranked[place("spy")].outside.is_empty());
}

/// The list shown in DEVELOPERS.md is read without a problem.
#[test]
fn the_list_in_the_guide_is_valid() {
    let guide = include_str!("../DEVELOPERS.md");
    let list = guide
        .split("```")
        .find_map(|piece| {
            piece
                .strip_prefix("\nlabel;")
                .map(|rest| format!("label;{rest}"))
        })
        .expect("the guide shows a list");
    let stock = read(&list).expect("a list");
    assert_eq!(stock.problems, []);
    assert_eq!(stock.rows.len(), 2);
    assert_eq!(stock.rows[1].price, Some(1299.0));
}

#[test]
fn the_shelf_is_judged_as_two_sights_are() {
    let kind = Kind::from_key("boar_by_night").expect("a kind");
    let mut answers = kind.fill(&Answers::default());
    answers.mount = Some(Mount {
        rings_kept_mm: Some(30.0),
        ..Mount::default()
    });
    let need = resolve(&answers);
    let advice = advice::advise(&answers).expect("advice");
    let bench = Bench::new(&need);
    let stock = read(scopewright::shelf::DEMO).expect("a list");
    assert_eq!(stock.problems, []);
    let mut list: Vec<Judged> = stock
        .rows
        .iter()
        .map(|row| Judged::of(row, &bench, &advice.picks[0].ranges))
        .collect();
    order(&mut list);
    let sight = |at: usize| Sight::Typed(list[at].row.sight.clone());
    let both = versus(&need, &sight(0), &sight(1));
    assert_eq!((&both.one, &both.other), (&list[0].side, &list[1].side));
    // By night the sight for driven game is not first; what does not go into rings of 30 mm
    // stands last.
    assert!(list[0].row.sight.objective_mm >= 50.0);
    let fits = |each: &Judged| each.row.sight.tube_mm.is_none_or(|tube| tube == 30.0);
    let misfits = list.iter().filter(|each| !fits(each)).count();
    assert!(misfits > 0);
    assert!(list[list.len() - misfits..].iter().all(|each| !fits(each)));
}
