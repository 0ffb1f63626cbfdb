//! Which part of the sensor is the picture.

use super::{tags::Directory, wrong};
use crate::Refusal;
use crate::text;

/// The picture on the sensor, sites from its top left corner.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Frame {
    /// Where light falls; the colour filters' pattern begins there.
    pub origin: [usize; 2],
    /// Where the picture begins, from `origin`, an even number each way.
    pub skip: [usize; 2],
    /// Width and height of the picture.
    pub size: [usize; 2],
}

impl Frame {
    /// By ActiveArea and DefaultCrop, the whole of a picture without them.
    pub fn of(raw: &Directory<'_>, width: usize, height: usize) -> Result<Self, Refusal> {
        let outside = || wrong(text::decode::the_part_to_be_shown_lies_outside());
        let active = raw.numbers(50_829, 4)?;
        let [top, left, bottom, right] = match active[..] {
            [] => [0, 0, height, width],
            [a, b, c, d] => [a as usize, b as usize, c as usize, d as usize],
            _ => return Err(outside()),
        };
        if top >= bottom || left >= right || bottom > height || right > width {
            return Err(outside());
        }
        let lit = [right - left, bottom - top];
        let (begin, size) = (raw.numbers(50_719, 2)?, raw.numbers(50_720, 2)?);
        let (skip, size) = match (&begin[..], &size[..]) {
            (&[x, y], &[w, h]) if [x, y, w, h].iter().all(|&v| (0.0..1e6).contains(&v)) => {
                let even = |v: f64| (v.ceil() as usize).next_multiple_of(2);
                ([even(x), even(y)], [w as usize, h as usize])
            }
            ([], []) => ([0, 0], lit),
            _ => return Err(outside()),
        };
        // Rounding up may have left a site too few.
        let room = |k: usize| lit[k].checked_sub(skip[k]).ok_or_else(outside);
        let size = [size[0].min(room(0)?), size[1].min(room(1)?)];
        Ok(Self {
            origin: [left, top],
            skip,
            size,
        })
    }
}
