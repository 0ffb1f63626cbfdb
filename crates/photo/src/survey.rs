//! A first look: can this photo be read at all, and where is its chart?

use crate::text;
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
    let correction = correct::choose(&chart, photo, centre, &corners, whereabouts)?;
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
            text::survey::no_chart_of_patches_was_found(count),
        ),
        NotFound::CutOff => cut_off(),
        NotFound::TwoCharts => Refusal::new(
            RefusalCode::TwoCharts,
            text::survey::there_are_two_charts_in_the_photo(),
        ),
        NotFound::Mirrored => Refusal::mirrored(),
        NotFound::RowsReversed => Refusal::new(
            RefusalCode::PoorFit,
            text::survey::the_charts_first_and_third_row_run(),
        ),
        NotFound::OtherColours(patches) => Refusal::new(
            RefusalCode::PoorFit,
            text::survey::a_chart_lies_in_the_photo_but(places(&patches, layout)),
        ),
        NotFound::Unrecognisable => Refusal::new(
            RefusalCode::ChartMissing,
            text::survey::a_chart_can_be_found(),
        ),
    }
}

/// The remark on patches that were left aside.
fn remark(covered: &[usize], layout: &Layout) -> Option<Flag> {
    (!covered.is_empty()).then(|| {
        Flag::new(
            FlagCode::PoorFit,
            text::survey::something_lies_shines_or_throws_a_shadow(places(covered, layout)),
        )
    })
}

/// Patches by row and number in it, in words.
fn places(patches: &[usize], layout: &Layout) -> String {
    let place = |k: &usize| {
        let (row, number) = (k / layout.columns() + 1, k % layout.columns() + 1);
        text::survey::patch_of_row(number, row)
    };
    let names: Vec<String> = patches.iter().map(place).collect();
    match names.split_last() {
        Some((last, others)) if !others.is_empty() => text::survey::and(others.join(", "), last),
        _ => names.concat(),
    }
}

fn no_layout() -> Refusal {
    Refusal::new(
        RefusalCode::PoorFit,
        text::survey::a_chart_needs_2_to_20_rows(),
    )
}

fn cut_off() -> Refusal {
    Refusal::new(
        RefusalCode::ChartCutOff,
        text::survey::part_of_the_chart_lies_outside(),
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
            text::survey::the_charts_corners_have_to_lie(width, height),
        ));
    }
    if crate::area::shoelace(&corners) < layout.count() as f64 * 16.0 {
        return Err(Refusal::new(
            RefusalCode::BadCorners,
            text::survey::the_four_chart_corners_have_to_go(),
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
