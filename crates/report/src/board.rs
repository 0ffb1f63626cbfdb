//! Boards to be printed: exact millimetres, one page each, nothing fetched.

use crate::text;
use std::fmt::Write;

use photo::board::{Paper, Printed, Rect};

use crate::svg::escape;

/// Characters of a line of words beside the chart.
const WORDS: usize = 27;

/// A board as a page to be printed: HTML with the drawing inside and the paper's
/// size in its print stylesheet.
pub fn board(printed: &Printed) -> String {
    let paper = printed.board().paper;
    page(text::board::board(), paper, &[board_svg(printed)])
}

/// Boards of one paper as pages to be printed, with what is to lie where: for each
/// board its windows' numbers, from 1, with words for the piece.
pub fn boards(paper: Paper, boards: &[(Printed, Vec<(usize, String)>)]) -> String {
    let drawings: Vec<String> = boards
        .iter()
        .enumerate()
        .map(|(i, (printed, places))| {
            let which = (boards.len() > 1).then(|| text::board::board_of(i + 1, boards.len()));
            drawn(printed, places, which)
        })
        .collect();
    page(text::board::boards_with_their_places(), paper, &drawings)
}

/// A board as a drawing (SVG) whose units are millimetres.
pub fn board_svg(printed: &Printed) -> String {
    drawn(printed, &[], None)
}

fn drawn(printed: &Printed, places: &[(usize, String)], which: Option<String>) -> String {
    let board = printed.board();
    let layout = board.layout();
    let title = text::board::woadstone_board_windows(board.kind.windows(), board.paper.name());
    let mut ink = printed.corner_codes();
    ink.extend(printed.marks());
    ink.extend(printed.ruler());
    let mut body = path(&ink, [0.0, 0.0]);
    for window in &layout.windows {
        let [x, y] = window.tag.middle();
        let planned = places.iter().find(|(number, _)| *number == window.number);
        let words = match planned {
            Some((_, piece)) => piece.clone(),
            None if places.is_empty() => text::board::window_tag_here(window.number),
            None => text::board::stays_empty().to_owned(),
        };
        text(&mut body, [x, y + 1.0], Style::Hint, &words);
    }
    let [x, y] = layout.dock.middle();
    text(
        &mut body,
        [x, y - 2.0],
        Style::Hint,
        text::board::n_24_patch_chart_here(),
    );
    text(
        &mut body,
        [x, y + 2.5],
        Style::Hint,
        text::board::pocket_size_card_about_108_x_64(),
    );
    let [left, right, below] = layout.words;
    let mut about = vec![text::board::windows(
        board.kind.windows(),
        board.paper.name(),
    )];
    about.extend(which);
    if let Some(trial) = printed.trial() {
        about.extend(
            wrapped(&text::board::trial(trial).replace('-', "- "), WORDS)
                .into_iter()
                .map(
                    // A trial's name has hyphens and no spaces, so that only its hyphens can part it.
                    |line| line.replace("- ", "-"),
                ),
        );
    }
    if let Some(stage) = printed.stage() {
        about.push(text::board::after_round(stage));
    }
    about.push(text::board::one_dry_piece_flat_in_each_window().to_owned());
    about.push(text::board::leave_the_paper_between_the_windows_bare().to_owned());
    let mut y = left.y + 3.5;
    text(
        &mut body,
        [left.x, y],
        Style::Title,
        text::board::woadstone_board(),
    );
    y += 1.0;
    for line in about.iter().flat_map(|words| wrapped(words, WORDS)) {
        y += 3.3;
        text(&mut body, [left.x, y], Style::Small, &line);
    }
    let how = text::board::print_at_100_not_fit_to_page();
    let mut y = right.y + 1.2;
    for line in wrapped(how, WORDS) {
        y += 3.3;
        text(&mut body, [right.x, y], Style::Small, &line);
    }
    let inches = match board.paper {
        Paper::A4 => "",
        Paper::Letter => text::board::the_marks_above_it_1_inch_apart(),
    };
    let measure = text::board::this_ruler_is_100_mm_long(inches);
    text(
        &mut body,
        [below.middle()[0], below.y + 3.5],
        Style::Middle,
        &measure,
    );
    svg(layout.size_mm, &title, &body)
}

/// All rectangles as one path, so that no seam shows between them.
pub(crate) fn path(dark: &[Rect], [x, y]: [f64; 2]) -> String {
    let mut d = String::new();
    for r in dark {
        let _ = write!(
            d,
            "M{:.3} {:.3}h{:.3}v{:.3}h{:.3}z",
            r.x + x,
            r.y + y,
            r.width,
            r.height,
            -r.width
        );
    }
    format!(r#"<path d="{d}" fill="black"/>"#)
}

/// How words are set.
#[derive(Clone, Copy)]
pub(crate) enum Style {
    Title,
    Small,
    Middle,
    Hint,
    Code,
    MiddleCode,
}

pub(crate) fn text(body: &mut String, [x, y]: [f64; 2], style: Style, words: &str) {
    let look = match style {
        Style::Title => r#"font-size="3.6" font-weight="bold""#,
        Style::Small => r#"font-size="2.6""#,
        Style::Middle => r#"font-size="2.8" text-anchor="middle""#,
        Style::Hint => r##"font-size="2.8" text-anchor="middle" fill="#999""##,
        Style::MiddleCode => {
            r#"font-size="3.8" text-anchor="middle" font-family="monospace" font-weight="bold""#
        }
        Style::Code => r#"font-size="4.4" font-family="monospace" font-weight="bold""#,
    };
    let _ = write!(
        body,
        r#"<text x="{x:.3}" y="{y:.3}" {look}>{}</text>"#,
        escape(words)
    );
}

/// Words in lines of at most `longest` characters, where words allow.
fn wrapped(words: &str, longest: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in words.split(' ') {
        match lines.last_mut() {
            Some(line) if line.chars().count() + word.chars().count() < longest => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

pub(crate) fn svg([width, height]: [f64; 2], title: &str, body: &str) -> String {
    format!(
        r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}" width="{width}mm" height="{height}mm" role="img" aria-label="{title}" font-family="sans-serif" shape-rendering="geometricPrecision"><title>{title}</title><rect width="{width}" height="{height}" fill="white"/>{body}</svg>"#
    )
}

pub(crate) fn page(title: &str, paper: Paper, drawings: &[String]) -> String {
    let [width, height] = paper.size_mm();
    let mut sheets = String::new();
    for drawing in drawings {
        let _ = writeln!(sheets, r#"<div class="sheet">{drawing}</div>"#);
    }
    format!(
        r#"<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{title}, {name} · Woadstone</title>
<style>
@page {{ size: {width}mm {height}mm; margin: 0 }}
html, body {{ margin: 0; padding: 0; background: white }}
.sheet {{ width: {width}mm; height: {height}mm; overflow: hidden; break-inside: avoid }}
.sheet + .sheet {{ break-before: page }}
svg {{ display: block; print-color-adjust: exact }}
@media print {{ h1 {{ display: none }} }}
@media screen {{
h1 {{ margin: 1rem; font: 600 1.125rem/1.3 sans-serif; color: black }}
.sheet {{ width: auto; max-width: {width}mm; height: auto; margin: 1rem; outline: 1px solid gray }}
svg {{ width: 100%; height: auto }}
}}
</style>
</head>
<body>
<main>
<h1>{title}, {name}</h1>
{sheets}</main>
</body>
</html>
"#,
        name = paper.name()
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use photo::board::Board;

    #[test]
    fn every_board_is_one_page_of_its_paper() {
        for which in Board::ALL {
            let page = board(&Printed::new(which, Some("madder"), Some(2)));
            let [width, height] = which.paper.size_mm();
            assert!(page.contains(&format!("size: {width}mm {height}mm; margin: 0")));
            assert_eq!(page.matches("<svg").count(), 1);
            assert!(page.contains("Trial madder.") && page.contains("After round 2."));
            assert!(!page.contains("<script") && !page.contains("href"));
        }
    }

    #[test]
    fn a_planned_board_says_what_lies_where() {
        let printed = Printed::new(Board::ALL[0], Some("madder"), None);
        let places = vec![(2, "A<3>".to_owned()), (5, "C1".to_owned())];
        let page = boards(
            Paper::A4,
            &[(printed.clone(), places.clone()), (printed, places)],
        );
        assert_eq!(page.matches("<svg").count(), 2);
        assert_eq!(page.matches("A&lt;3&gt;").count(), 2);
        assert_eq!(page.matches("stays empty").count(), 8);
        assert!(page.contains("Board 1 of 2.") && !page.contains("tag here"));
    }

    #[test]
    fn lines_keep_their_words() {
        assert_eq!(wrapped("one two three", 8), ["one two", "three"]);
        assert_eq!(wrapped("unbreakable", 3), ["unbreakable"]);
    }
}
