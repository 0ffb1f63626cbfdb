//! What a search asks for: words, CIELAB values, or a colour picked on the screen.

use crate::form::Problems;
use crate::pages::elsewhere::new::VIEWS;
use crate::text;
use report::swatch;
use serde::Deserialize;

/// The fields of the search, as they came.
#[derive(Deserialize)]
pub(crate) struct Wanted {
    pub(super) q: Option<String>,
    pub(super) lab: Option<String>,
    pub(super) view: Option<String>,
    pub(super) hex: Option<String>,
}

/// What is asked for.
pub(super) enum Asked {
    Nothing,
    Words(String),
    Colour { lab: [f64; 3], view: &'static str },
}

impl Wanted {
    /// The first of words, Lab and a picked colour that was given.
    pub(super) fn asked(&self, problems: &mut Problems) -> Asked {
        let text = |part: &Option<String>| part.as_deref().unwrap_or_default().trim().to_owned();
        let (words, lab, hex) = (text(&self.q), text(&self.lab), text(&self.hex));
        if !words.is_empty() {
            if words.chars().any(char::is_alphanumeric) {
                return Asked::Words(words);
            }
            problems.add("q", text::search::give_words_or_beginnings_of_words_such());
        } else if !lab.is_empty() {
            let asked = self.view.as_deref().unwrap_or(VIEWS[0]);
            let view = VIEWS.into_iter().find(|known| *known == asked);
            match (read_lab(&lab), view) {
                (Some(lab), Some(view)) => return Asked::Colour { lab, view },
                (None, _) => problems.add("lab", text::search::give_l_a_and_b_as_three()),
                (_, None) => problems.add("view", text::search::choose_one_of_the_lights()),
            }
        } else if !hex.is_empty() {
            // A screen's colours hold for the 2 degree observer; as near as a screen comes to a
            // colour, they are looked up among readings for 10 degrees.
            match swatch::lab_of_hex(&hex) {
                Some(lab) => {
                    return Asked::Colour {
                        lab: [lab.l, lab.a, lab.b],
                        view: VIEWS[0],
                    };
                }
                None => {
                    problems.add(
                        "hex",
                        text::search::give_a_colour_as_six_hexadecimal_digits(),
                    );
                }
            }
        }
        Asked::Nothing
    }
}

/// A colour that a surface can have.
fn read_lab(text: &str) -> Option<[f64; 3]> {
    let lab = colour::typed_lab(text)?;
    let [l, a, b] = lab;
    let fits = (0.0..=100.0).contains(&l) && a.abs() <= 128.0 && b.abs() <= 128.0;
    fits.then_some(lab)
}

#[cfg(test)]
mod tests {
    use super::read_lab;

    #[test]
    fn only_colours_of_surfaces_are_taken() {
        assert_eq!(read_lab("40 20 -10"), Some([40.0, 20.0, -10.0]));
        for text in ["140 20 10", "40 900 1", "L a b"] {
            assert_eq!(read_lab(text), None, "{text}");
        }
    }
}
