//! From a sample to its share of saturation, and the balance of the channels.

use super::{cells::Light, segments::Samples, tags::Directory, wrong};
use crate::Refusal;
use crate::text;

/// Share of the way from black to the white level from which on a site counts as
/// saturated: sites differ by some parts in a hundred in what they can hold.
const SATURATED: f32 = 0.99;
/// Most numbers in a pattern of black levels.
const MOST_BLACKS: usize = 4096;
/// Greatest ratio of two channels' amplification that a camera would choose.
const MOST_BALANCE: f64 = 30.0;

/// How samples become shares of saturation.
pub(super) struct Levels {
    table: Vec<u16>,
    /// Columns and rows of the pattern of black levels.
    repeat: [usize; 2],
    black: Vec<f32>,
    /// One over white minus black, for each black.
    scale: Vec<f32>,
    channels: usize,
}

impl Levels {
    /// By LinearizationTable, BlackLevel and WhiteLevel.
    pub fn of(raw: &Directory<'_>, samples: &Samples) -> Result<Self, Refusal> {
        let table: Vec<u16> = raw
            .numbers(50_712, 65_536)?
            .into_iter()
            .map(|v| v.clamp(0.0, 65_535.0) as u16)
            .collect();
        let channels = samples.channels;
        let repeat = match raw.numbers(50_713, 2)?[..] {
            [] => [1, 1],
            [rows, columns] if rows >= 1.0 && columns >= 1.0 && rows * columns <= 1024.0 => {
                [columns as usize, rows as usize]
            }
            _ => return Err(wrong(text::decode::its_pattern_of_black_levels_is())),
        };
        let count = repeat[0] * repeat[1] * channels;
        let mut black: Vec<f32> = raw
            .numbers(50_714, MOST_BLACKS)?
            .into_iter()
            .map(|v| v as f32)
            .collect();
        if black.is_empty() {
            black = vec![0.0; count];
        } else if black.len() == 1 {
            black = vec![black[0]; count];
        }
        if black.len() != count {
            return Err(wrong(text::decode::it_has_too_many_or_too_few()));
        }
        let full = ((1_u32 << samples.bits) - 1) as f64;
        let white = raw.numbers(50_717, 16)?;
        let white = |channel: usize| {
            let level = white.get(channel).or(white.first());
            level.copied().unwrap_or(full) as f32
        };
        let scale: Vec<f32> = black
            .iter()
            .enumerate()
            .map(|(i, black)| 1.0 / (white(i % channels) - black))
            .collect();
        let is_sound = scale.iter().all(|s| s.is_finite() && *s > 0.0);
        if !is_sound {
            return Err(wrong(text::decode::its_white_level_is_not_above()));
        }
        Ok(Self {
            table,
            repeat,
            black,
            scale,
            channels,
        })
    }

    /// The share of saturation of a sample, `x` and `y` counted from where light
    /// falls; below 0 where chance put it below black.
    pub fn share(&self, value: u16, [x, y]: [usize; 2], channel: usize) -> f32 {
        let level = match (self.table.get(usize::from(value)), self.table.last()) {
            (Some(&level), _) | (None, Some(&level)) => level,
            (None, None) => value,
        };
        let cell = y % self.repeat[1] * self.repeat[0] + x % self.repeat[0];
        let i = cell * self.channels + channel;
        (f32::from(level) - self.black[i]) * self.scale[i]
    }
}

/// Whether a share of saturation stands for no more than "as much or more".
pub(super) fn is_saturated(share: f32) -> bool {
    share >= SATURATED
}

/// What each channel is multiplied by, at most 1: by AsShotNeutral, or where
/// that is missing by taking the picture as grey on the whole.
pub(super) fn balance(first: &Directory<'_>, light: &Light<'_>) -> Result<[f32; 3], Refusal> {
    let of = |neutral: [f64; 3]| {
        let least = neutral.iter().copied().fold(f64::INFINITY, f64::min);
        let most = neutral.iter().copied().fold(0.0, f64::max);
        (least > 0.0 && most <= MOST_BALANCE * least)
            .then(|| neutral.map(|share| (least / share) as f32))
    };
    let told = first.numbers(50_728, 4)?;
    let told = <[f64; 3]>::try_from(told).ok().and_then(of);
    Ok(told.or_else(|| of(light.mean())).unwrap_or([1.0; 3]))
}
