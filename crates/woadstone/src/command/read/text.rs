//! Readings as text.

use std::fmt::Write;

use colour::Lab;
use photo::PhotoReading;

use super::{Read, across::Across};

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
        text.push_str("across photos\n");
    }
    for d in across {
        let _ = writeln!(
            text,
            "  {} in {} to {}: {:.2} ({:.2} to {:.2})",
            d.difference.a,
            many[d.from].name,
            many[d.to].name,
            d.difference.de00,
            d.difference.low,
            d.difference.high
        );
    }
    text
}

fn read(name: &str, r: &PhotoReading) -> String {
    let mut text = format!(
        "{name}: {} x {} px, {}\nchart read with {}; left out in turn, its patches are missed by {:.2} (median) and {:.2} (95 of 100), CIEDE2000\n",
        r.width, r.height, r.view, r.chart.model, r.chart.loo_de00_median, r.chart.loo_de00_p95
    );
    if let Some(board) = &r.board {
        let _ = writeln!(
            text,
            "board of {} windows on {}, {} of its 4 corner codes read",
            board.kind.windows(),
            board.paper.name(),
            board.codes
        );
        for window in board.windows.iter().filter(|w| w.polygon.is_none()) {
            let _ = match window.tag {
                None => writeln!(text, "  window {} is empty", window.number),
                Some(tag) => writeln!(
                    text,
                    "  window {} has the tag {tag} and nothing that differs from the paper",
                    window.number
                ),
            };
        }
    }
    for flag in &r.flags {
        let _ = writeln!(text, "note: {}", flag.message);
    }
    for a in &r.readings {
        match a.lab {
            Some(lab) => {
                colour_line(&mut text, &a.id, lab, &a.cov, a.pixels);
            }
            None => {
                let _ = writeln!(text, "  {:<12} not read", a.id);
            }
        }
        if let Some(split) = &a.split {
            for (name, part) in [("pale", &split.pale), ("deep", &split.deep)] {
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
            "  {} to {}: {:.2} ({:.2} to {:.2})",
            d.a, d.b, d.de00, d.low, d.high
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
