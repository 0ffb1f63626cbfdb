//! Readings as text.

use std::fmt::Write;

use colour::Lab;
use photo::PhotoReading;

use super::{Read, across::Across};
use crate::text::command as say;

/// What came of one photo; nothing where it was refused, which is said at the end.
pub fn of(photo: &Read) -> String {
    match &photo.outcome {
        Ok(reading) => read(&photo.name, reading),
        Err(_) => String::new(),
    }
}

/// The differences across photos; nothing where there are none.
pub fn across(many: &[Read], across: &[Across]) -> String {
    let mut text = String::new();
    if !across.is_empty() {
        let _ = writeln!(text, "{}", say::across_photos());
    }
    for d in across {
        let _ = writeln!(
            text,
            "  {}",
            say::piece_across_photos(
                &d.difference.a,
                &many[d.from].name,
                &many[d.to].name,
                format_args!("{:.2}", d.difference.de00),
                format_args!("{:.2}", d.difference.low),
                format_args!("{:.2}", d.difference.high)
            )
        );
    }
    text
}

fn read(name: &str, r: &PhotoReading) -> String {
    let mut text = format!(
        "{name}: {} x {} px, {}\n{}\n",
        r.width,
        r.height,
        r.view,
        say::chart_read_with(
            &r.chart.model,
            format_args!("{:.2}", r.chart.loo_de00_median),
            format_args!("{:.2}", r.chart.loo_de00_p95)
        )
    );
    if let Some(board) = &r.board {
        let _ = writeln!(
            text,
            "{}",
            say::board_of_windows(board.kind.windows(), board.paper.name(), board.codes)
        );
        for window in board.windows.iter().filter(|w| w.polygon.is_none()) {
            let _ = match window.tag {
                None => writeln!(text, "  {}", say::window_is_empty(window.number)),
                Some(tag) => writeln!(
                    text,
                    "  {}",
                    say::window_has_a_tag_alone(window.number, tag)
                ),
            };
        }
    }
    for flag in &r.flags {
        let _ = writeln!(text, "{}", say::note(&flag.message));
    }
    for a in &r.readings {
        match a.lab {
            Some(lab) => {
                colour_line(&mut text, &a.id, lab, &a.cov, a.pixels);
            }
            None => {
                let _ = writeln!(text, "  {:<12} {}", a.id, say::not_read());
            }
        }
        if let Some(split) = &a.split {
            for (name, part) in [(say::pale(), &split.pale), (say::deep(), &split.deep)] {
                let id = format!("{}/{name}", a.id);
                colour_line(&mut text, &id, part.lab, &part.cov, part.pixels);
            }
        }
        for flag in &a.flags {
            let _ = writeln!(text, "               {}", flag.message);
        }
    }
    for d in &r.differences {
        let _ = writeln!(
            text,
            "  {}",
            say::to_to(
                &d.a,
                &d.b,
                format_args!("{:.2}", d.de00),
                format_args!("{:.2}", d.low),
                format_args!("{:.2}", d.high)
            )
        );
    }
    text
}

fn colour_line(text: &mut String, id: &str, lab: Lab, cov: &[[f64; 3]; 3], pixels: u64) {
    let half = |k: usize| 1.96 * cov[k][k].max(0.0).sqrt();
    let _ = writeln!(
        text,
        "  {id:<12} L* {:6.2} ±{:.2}   a* {:6.2} ±{:.2}   b* {:6.2} ±{:.2}   ({pixels} px)",
        lab.l,
        half(0),
        lab.a,
        half(1),
        lab.b,
        half(2),
    );
}
