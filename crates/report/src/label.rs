//! Labels to be cut out: exact millimetres, marks to cut along, nothing fetched.

use crate::board::{Style, page, path, svg, text};
use crate::text;
use photo::board::{Code, Paper, TAG, tag_code};
use std::fmt::Write;
use trial::{Trial, plan::Order};

/// White at the edge of a sheet of labels, mm.
const EDGE: f64 = 10.0;
/// From label to label, mm: room for the marks.
const GAP: f64 = 4.0;
/// Length of a mark to cut along and its distance from the label, mm.
const MARK: [f64; 2] = [1.6, 0.4];
/// Radius of a hole for a pin or a thread, mm.
const HOLE: f64 = 2.0;

/// A tag to be cut out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tag {
    /// Its code, in the QR code and in words.
    pub code: Code,
    /// What else is written on it, such as the piece's own code.
    pub label: String,
}

impl Tag {
    /// The tags of a trial's pieces, in their order.
    pub fn of(trial: &Trial) -> Vec<Self> {
        let tag = |piece: &trial::Piece| Self {
            code: piece.tag,
            label: piece.code.clone(),
        };
        trial.pieces.iter().map(tag).collect()
    }
}

/// What a tag is cut out as.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum TagSize {
    /// A card for the board, 40 by 17 mm.
    #[default]
    Card,
    /// A strip of Tyvek that stays on the piece through the wash, 100 by 17 mm, with
    /// a hole at its end.
    Strip,
    /// A tag to hang on a safety pin, 24 by 34 mm, with a hole at its top.
    Pin,
}

impl TagSize {
    /// All of them, in the order of a form.
    pub const ALL: [Self; 3] = [Self::Card, Self::Strip, Self::Pin];

    /// The size of that name, such as `strip`.
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|size| size.as_str() == name)
    }

    /// As written in addresses.
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Card => "card",
            Self::Strip => "strip",
            Self::Pin => "pin",
        }
    }

    /// As said to a person.
    pub fn words(self) -> &'static str {
        match self {
            Self::Card => text::label::cards_for_the_board_40_by_17(),
            Self::Strip => text::label::tyvek_strips_100_by_17_mm(),
            Self::Pin => text::label::pin_tags_24_by_34_mm(),
        }
    }

    /// Width and height, mm.
    pub const fn size_mm(self) -> [f64; 2] {
        match self {
            Self::Card => TAG,
            Self::Strip => [100.0, TAG[1]],
            Self::Pin => [24.0, 34.0],
        }
    }
}

/// Tags to be cut out, on as many pages as they need.
pub fn tags(paper: Paper, size: TagSize, tags: &[Tag]) -> String {
    sheets(
        text::label::tags(),
        paper,
        size.size_mm(),
        tags,
        |body, at, tag| {
            draw_tag(body, size, at, tag);
        },
    )
}

/// A label under which a cloth is judged by eye.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BlindLabel {
    /// The code that is seen.
    pub code: Code,
    /// What the cloth is, on the half that is folded under.
    pub cloth: String,
}

impl BlindLabel {
    /// One for each piece of a plan's order.
    pub fn of(order: &Order) -> Vec<Self> {
        let label = |piece: &trial::plan::Allotted| Self {
            code: piece.blind,
            cloth: piece.piece.code.clone(),
        };
        order.pieces.iter().map(label).collect()
    }
}

/// Labels for judging by eye, on as many pages as they need: what the cloth is on the half
/// that is folded under, its blind code on the half that is seen.
pub fn blind_labels(paper: Paper, labels: &[BlindLabel]) -> String {
    const SIZE: [f64; 2] = [64.0, 17.0];
    let draw = |body: &mut String, [x, y]: [f64; 2], label: &BlindLabel| {
        let middle = x + SIZE[0] / 2.0;
        let _ = write!(
            body,
            r##"<line x1="{middle}" x2="{middle}" y1="{y}" y2="{}" stroke="#888" stroke-width="0.2" stroke-dasharray="1.2 0.8"/>"##,
            y + SIZE[1]
        );
        text(
            body,
            [x + SIZE[0] / 4.0, y + 7.5],
            Style::Middle,
            &short(&label.cloth, 16),
        );
        text(
            body,
            [x + SIZE[0] / 4.0, y + 12.5],
            Style::Hint,
            text::label::fold_under_staple(),
        );
        text(
            body,
            [middle + 4.0, y + 10.0],
            Style::Code,
            &label.code.to_string(),
        );
    };
    // By cloth, so that whoever folds finds each; the codes' own order tells nothing.
    let mut labels = labels.to_vec();
    labels.sort_by(|a, b| a.cloth.cmp(&b.cloth));
    sheets(text::label::blind_labels(), paper, SIZE, &labels, draw)
}

/// As many labels of a size as fit on each sheet, with marks to cut along.
fn sheets<T>(
    title: &str,
    paper: Paper,
    size: [f64; 2],
    labels: &[T],
    draw: impl Fn(&mut String, [f64; 2], &T),
) -> String {
    let sheet = paper.size_mm();
    let fit = |k: usize| ((sheet[k] - 2.0 * EDGE + GAP) / (size[k] + GAP)) as usize;
    let (columns, rows) = (fit(0), fit(1));
    let pages: Vec<String> = labels
        .chunks(columns * rows)
        .map(|some| {
            let mut body = String::new();
            for (i, label) in some.iter().enumerate() {
                let x = EDGE + (i % columns) as f64 * (size[0] + GAP);
                let y = EDGE + (i / columns) as f64 * (size[1] + GAP);
                cut_marks(&mut body, [x, y], size);
                draw(&mut body, [x, y], label);
            }
            svg(sheet, &text::label::to_cut_out(title), &body)
        })
        .collect();
    page(title, paper, &pages)
}

/// Two short lines at each corner, outside of the label.
fn cut_marks(body: &mut String, [x, y]: [f64; 2], [width, height]: [f64; 2]) {
    let [long, off] = MARK;
    let mut d = String::new();
    for (at, out) in [(x, -1.0), (x + width, 1.0)] {
        for (level, away) in [(y, -1.0), (y + height, 1.0)] {
            let _ = write!(
                d,
                "M{:.3} {level:.3}h{:.3}M{at:.3} {:.3}v{:.3}",
                at + out * off,
                out * long,
                level + away * off,
                away * long
            );
        }
    }
    let _ = write!(
        body,
        r#"<path class="cut" d="{d}" fill="none" stroke="black" stroke-width="0.15"/>"#
    );
}

fn draw_tag(body: &mut String, size: TagSize, [x, y]: [f64; 2], tag: &Tag) {
    let [width, _] = size.size_mm();
    let code = tag.code.to_string();
    match size {
        TagSize::Card => {
            body.push_str(&path(&tag_code(tag.code), [x, y]));
            text(body, [x + 17.0, y + 8.2], Style::Code, &code);
            text(
                body,
                [x + 17.0, y + 13.0],
                Style::Small,
                &short(&tag.label, 16),
            );
        }
        TagSize::Strip => {
            body.push_str(&path(&tag_code(tag.code), [x, y]));
            text(body, [x + 18.0, y + 8.2], Style::Code, &code);
            text(
                body,
                [x + 18.0, y + 13.0],
                Style::Small,
                &short(&tag.label, 44),
            );
            hole(body, [x + width - 6.0, y + TAG[1] / 2.0]);
        }
        TagSize::Pin => {
            hole(body, [x + width / 2.0, y + 4.0]);
            // The tag's code with its white margin, in the middle of the width.
            let side = TAG[1];
            body.push_str(&path(
                &tag_code(tag.code),
                [x + (width - side) / 2.0, y + 6.5],
            ));
            let middle = x + width / 2.0;
            text(body, [middle, y + 26.3], Style::MiddleCode, &code);
            text(
                body,
                [middle, y + 30.8],
                Style::Middle,
                &short(&tag.label, 14),
            );
        }
    }
}

fn hole(body: &mut String, [x, y]: [f64; 2]) {
    let _ = write!(
        body,
        r##"<circle cx="{x:.3}" cy="{y:.3}" r="{HOLE}" fill="none" stroke="#666" stroke-width="0.2"/>"##
    );
}

fn short(label: &str, most: usize) -> String {
    label.chars().take(most).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn many() -> Vec<Tag> {
        (0..90)
            .map(|i| Tag {
                code: Code::from_number(i),
                label: "<A&B>".to_owned(),
            })
            .collect()
    }

    #[test]
    fn tags_go_on_to_further_pages_and_their_words_are_text() {
        let many = many();
        for (size, pages) in [(TagSize::Card, 2), (TagSize::Strip, 7), (TagSize::Pin, 3)] {
            let page = tags(Paper::A4, size, &many);
            assert_eq!(page.matches("<svg").count(), pages, "{size:?}");
            assert!(page.contains("&lt;A&amp;B&gt;") && page.contains(&many[89].code.to_string()));
            assert_eq!(page.matches("class=\"cut\"").count(), many.len());
        }
    }

    #[test]
    fn names_of_sizes_are_read_as_they_are_written() {
        for size in TagSize::ALL {
            assert_eq!(TagSize::named(size.as_str()), Some(size));
        }
        assert_eq!(TagSize::named("flag"), None);
    }
}
