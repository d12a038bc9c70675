//! Named figures answered from the direct formulas, JSON in and JSON out.
//!
//! One line in, one line out: `{"figure": name, …fields}` gives `{"value": …}` with
//! further fields where a figure has more to tell, or `{"error": "…"}`. A line that is
//! no JSON, an unknown figure, and a missing, mistyped, surplus or impossible field are
//! answered with an error that names what is wrong, what was read and what would do.
//!
//! Figures never answer from the ranking's tables. Each file of this room holds one
//! family and offers its `FIGURES`; the register below joins them.

pub mod beside;
mod fields;
mod flight;
mod light;

pub use fields::{Fields, Refusal, Reply};

/// Computes one figure from its fields.
pub type Figure = fn(&mut Fields) -> Result<Reply, Refusal>;

/// Every family of figures.
const FAMILIES: [&[(&str, Figure)]; 2] = [light::FIGURES, flight::FIGURES];

/// The names of all figures, in the order of the register.
pub fn names() -> impl Iterator<Item = &'static str> {
    FAMILIES
        .iter()
        .flat_map(|family| family.iter())
        .map(|f| f.0)
}

/// The answer to one line of JSON, itself one line of JSON.
///
/// # Example
/// ```
/// let line = r#"{"figure": "pupil_diameter", "luminance_cd_m2": 0.01, "age_years": 65}"#;
/// assert!(scopewright::figure::answer(line).starts_with(r#"{"value":5.41"#));
/// let line = r#"{"figure": "pupil_diameter", "luminance_cd_m2": 0.01, "age_years": 3}"#;
/// assert_eq!(
///     scopewright::figure::answer(line),
///     r#"{"error":"age_years is 3, which lies outside 8 to 95"}"#
/// );
/// ```
#[must_use]
pub fn answer(line: &str) -> String {
    match computed(line) {
        Ok(reply) => reply.into_line(),
        Err(refusal) => refusal.into_line(),
    }
}

fn computed(line: &str) -> Result<Reply, Refusal> {
    let mut fields = Fields::parse(line)?;
    let name = fields.text("figure")?;
    let figure = FAMILIES
        .iter()
        .flat_map(|family| family.iter())
        .find(|(known, _)| *known == name)
        .map(|(_, figure)| figure)
        .ok_or_else(|| {
            let known: Vec<&str> = names().collect();
            Refusal::new(format!(
                "figure \"{name}\" is not known; the figures are {}",
                known.join(", ")
            ))
        })?;
    let reply = figure(&mut fields);
    // A surplus field is a misspelt one more often than not: say so before anything else
    // but a field that could not be read.
    match reply {
        Ok(reply) => {
            fields.all_read()?;
            Ok(reply)
        }
        Err(refusal) => Err(fields.misspelt(refusal)),
    }
}
