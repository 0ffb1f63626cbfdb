//! A first look: can this photo be read at all, and where is its chart?

use colour::View;

use crate::{
    ChartReference, Flag, FlagCode, Point, Refusal, RefusalCode, blur,
    board::{self, BoardSeen},
    chart::{self, Found, Layout, NotFound, Search},
    correct::{self, Chart, Correction},
    decode::{self, Upright},
    light::Whereabouts,
    patches,
};

/// What a first look at a photo tells.
#[derive(Debug, Clone, PartialEq)]
pub struct Survey {
    /// Width of the upright photo, pixels.
    pub width: u32,
    /// Height of the upright photo, pixels.
    pub height: u32,
    /// Outer corners of the chart's patch grid at the brown, the bluish-green,
    /// the black and the white patch, pixels of the upright photo.
    pub corners: [Point; 4],
    /// What was noticed about the photo as a whole.
    pub flags: Vec<Flag>,
    /// The board that the pieces lie on, if they lie on one.
    pub board: Option<BoardSeen>,
}

/// Decodes a photo, finds its chart (or takes the corners given) and tries the
/// correction, so that a photo that can't be read is refused at the door.
///
/// # Errors
/// A [`Refusal`] says what is wrong with the photo and how to mend it.
pub fn survey(bytes: &[u8], corners: Option<[Point; 4]>) -> Result<Survey, Refusal> {
    survey_by(bytes, corners, &ChartReference::published())
}

/// Like [`survey`], with a chart of the person's own on the photo.
///
/// # Errors
/// As of [`survey`].
pub fn survey_by(
    bytes: &[u8],
    corners: Option<[Point; 4]>,
    reference: &ChartReference,
) -> Result<Survey, Refusal> {
    let photo = decode::decode(bytes)?;
    let (board, trouble) = board::noticed(&photo)?;
    let mut prepared = prepare(
        &photo,
        &Setting {
            corners,
            reference,
            view: View::D65_10,
            areas: &[],
            ground: &[],
            board: board.as_ref(),
        },
    )?;
    prepared.flags.extend(trouble);
    Ok(Survey {
        width: photo.width as u32,
        height: photo.height as u32,
        corners: prepared.corners,
        flags: prepared.flags,
        board,
    })
}

/// Whether photos can be read by a chart at all: how many patches it has, and how laid.
///
/// # Errors
/// What is wrong with its size.
pub fn chart_is_usable(reference: &ChartReference) -> Result<(), Refusal> {
    Layout::of(reference).map(|_| ()).ok_or_else(no_layout)
}

/// A photo with its chart found and its correction made.
pub(crate) struct Prepared {
    pub corners: [Point; 4],
    pub correction: Correction,
    pub flags: Vec<Flag>,
}

/// What is known of a photo before its correction is made.
pub(crate) struct Setting<'a> {
    pub corners: Option<[Point; 4]>,
    pub reference: &'a ChartReference,
    pub view: View,
    /// Outlines of what is to be read.
    pub areas: &'a [Vec<Point>],
    /// Outlines that surely show bare ground.
    pub ground: &'a [Vec<Point>],
    pub board: Option<&'a BoardSeen>,
}

impl Setting<'_> {
    /// Where the ground is bare: as told, or the board's paper.
    fn bare(&self, photo: &Upright) -> Vec<Vec<Point>> {
        match self.board {
            Some(board) if self.ground.is_empty() => board
                .paper_places(photo.width as u32, photo.height as u32)
                .into_iter()
                .map(Vec::from)
                .collect(),
            _ => self.ground.to_vec(),
        }
    }
}

/// The way that a survey and a reading share.
pub(crate) fn prepare(photo: &Upright, setting: &Setting<'_>) -> Result<Prepared, Refusal> {
    let Setting {
        reference, board, ..
    } = *setting;
    refuse_greyscale(photo)?;
    let layout = Layout::of(reference).ok_or_else(no_layout)?;
    let (corners, covered) = match setting.corners {
        Some(corners) => (given(corners, photo, &layout)?, Vec::new()),
        None => board::chart_in_dock(photo, board, &layout)
            .map_or_else(|| find(photo, &layout), Ok)
            .map(|found| (found.corners, found.covered))?,
    };
    let patches = patches::sample(photo, corners, &layout, &covered).ok_or_else(cut_off)?;
    let chart = Chart::new(&patches, &photo.profile.linear, reference, setting.view)?;
    let centre = middle(&corners);
    let hidden = hidden(setting.areas.iter().map(Vec::as_slice), &corners);
    let bare = setting.bare(photo);
    let whereabouts = Whereabouts {
        hidden: &hidden,
        bare: &bare,
    };
    let correction = correct::choose(&chart, photo, centre, whereabouts)?;
    let mut flags = photo.flags.clone();
    flags.extend(remark(&covered, &layout));
    flags.extend(chart.remark());
    flags.extend(correction.judge()?);
    flags.extend(correction.sight.light.remark());
    flags.extend(blur::remark(photo, corners, &layout));
    Ok(Prepared {
        corners,
        correction,
        flags,
    })
}

/// The mean of an outline's corners.
pub(crate) fn middle(outline: &[Point]) -> Point {
    let n = outline.len().max(1) as f64;
    [0, 1].map(|k| outline.iter().map(|p| p[k]).sum::<f64>() / n)
}

/// What hides the ground: areas and the chart (or card), each with its edges.
pub(crate) fn hidden<'a>(
    areas: impl Iterator<Item = &'a [Point]>,
    chart: &'a [Point],
) -> Vec<Vec<Point>> {
    const WITH_EDGES: f64 = 1.25;
    areas
        .chain([chart])
        .map(|outline| grown(outline, WITH_EDGES))
        .collect()
}

/// An outline drawn out about its middle, so that frame and edges are covered.
fn grown(outline: &[Point], factor: f64) -> Vec<Point> {
    let m = middle(outline);
    outline
        .iter()
        .map(|p| [0, 1].map(|k| m[k] + factor * (p[k] - m[k])))
        .collect()
}

/// Finds a chart in a photo.
fn find(photo: &Upright, layout: &Layout) -> Result<Found, Refusal> {
    let linear = photo.linear();
    let search = Search::new(photo.width, photo.height, |x, y| linear(photo.at(x, y)))
        .by_columns(photo.is_sideways());
    chart::find(&search, layout).map_err(|why| refusal(why, layout))
}

/// What is said where no chart can be used.
fn refusal(why: NotFound, layout: &Layout) -> Refusal {
    let count = layout.count();
    match why {
        NotFound::Missing => Refusal::new(
            RefusalCode::ChartMissing,
            format!(
                "No chart of {count} patches was found in the photo. Lay it flat beside the pieces, whole and in the same light, and take the photo again; or give its corners."
            ),
        ),
        NotFound::CutOff => cut_off(),
        NotFound::TwoCharts => Refusal::new(
            RefusalCode::TwoCharts,
            "There are two charts in the photo. Leave one of them out, or give the corners of the one to use.",
        ),
        NotFound::Mirrored => Refusal::mirrored(),
        NotFound::RowsReversed => Refusal::new(
            RefusalCode::PoorFit,
            "The chart's first and third row run the other way than in the values used for it, as makers differ. Give the values of this very chart, row by row as its patches lie.",
        ),
        NotFound::OtherColours(patches) => Refusal::new(
            RefusalCode::PoorFit,
            format!(
                "A chart lies in the photo, but not with the colours that were expected: {} differ from it. If it is another chart, give its own values; if patches are stained or faded, use a fresh one.",
                places(&patches, layout)
            ),
        ),
        NotFound::Unrecognisable => Refusal::new(
            RefusalCode::ChartMissing,
            "A chart can be found in a photo only by many different colours, and this one's are too much alike, or look the same turned round. Give its corners: first patch, end of the first row, last patch, start of the last row.",
        ),
    }
}

/// The remark on patches that were left aside.
fn remark(covered: &[usize], layout: &Layout) -> Option<Flag> {
    (!covered.is_empty()).then(|| {
        Flag::new(
            FlagCode::PoorFit,
            format!(
                "Something lies, shines or throws a shadow on the chart at {}; what it hides was left aside. Keep the chart clear for surer colours.",
                places(covered, layout)
            ),
        )
    })
}

/// Patches by row and number in it, in words.
fn places(patches: &[usize], layout: &Layout) -> String {
    let place = |k: &usize| {
        let (row, number) = (k / layout.columns() + 1, k % layout.columns() + 1);
        format!("patch {number} of row {row}")
    };
    let names: Vec<String> = patches.iter().map(place).collect();
    match names.split_last() {
        Some((last, others)) if !others.is_empty() => format!("{} and {last}", others.join(", ")),
        _ => names.concat(),
    }
}

fn no_layout() -> Refusal {
    Refusal::new(
        RefusalCode::PoorFit,
        "A chart needs 2 to 20 rows and columns and 12 to 300 patches to correct a photo by; this one's table has another size.",
    )
}

fn cut_off() -> Refusal {
    Refusal::new(
        RefusalCode::ChartCutOff,
        "Part of the chart lies outside the photo. Take it again with the whole chart in the picture.",
    )
}

/// Corners a person gave: they have to lie in the photo and go round the right way.
fn given(corners: [Point; 4], photo: &Upright, layout: &Layout) -> Result<[Point; 4], Refusal> {
    let (width, height) = (photo.width as f64, photo.height as f64);
    let inside = corners
        .iter()
        .all(|[x, y]| (-1.0..=width + 1.0).contains(x) && (-1.0..=height + 1.0).contains(y));
    if !inside {
        return Err(Refusal::new(
            RefusalCode::BadCorners,
            format!(
                "The chart's corners have to lie in the upright photo, which is {width} x {height} pixels. Mark them there."
            ),
        ));
    }
    if crate::area::shoelace(&corners) < layout.count() as f64 * 16.0 {
        return Err(Refusal::new(
            RefusalCode::BadCorners,
            "The four chart corners have to go round from the first patch (brown) to the end of its row (bluish-green), the last patch (black) and the start of the last row (white), and hold at least a few pixels a patch.",
        ));
    }
    Ok(corners)
}

/// A colour photo with a grey first look still has coloured pixels somewhere.
pub(crate) fn refuse_greyscale(photo: &Upright) -> Result<(), Refusal> {
    let colourless = photo
        .codes
        .chunks_exact(3)
        .step_by((photo.codes.len() / 3 / 20_000).max(1))
        .all(|p| {
            p.iter()
                .max()
                .zip(p.iter().min())
                .is_some_and(|(a, b)| a - b <= 3)
        });
    if colourless {
        Err(decode::greyscale())
    } else {
        Ok(())
    }
}
