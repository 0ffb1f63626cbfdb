//! From strips and tiles to one field of samples.

use crate::text;
use std::io::{BufReader, Read};

use flate2::read::ZlibDecoder;

use super::{lossless::Lossless, tags::Directory, unreadable, wrong};
use crate::{Refusal, RefusalCode};

/// Most samples that are held, two bytes each: 48 million pixels of three.
const MOST_SAMPLES: usize = 150_000_000;
/// Most strips or tiles.
const MOST_SEGMENTS: usize = 1_000_000;

/// How samples are packed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Packing {
    Plain,
    Deflate,
    LosslessJpeg,
}

/// Samples of a whole picture, channel by channel, row by row.
pub(super) struct Samples {
    pub width: usize,
    pub height: usize,
    /// Samples of a pixel.
    pub channels: usize,
    /// Bits that the file gives a sample.
    pub bits: usize,
    pub values: Vec<u16>,
}

/// How the strips or tiles of a picture lie.
struct Segments<'a, 'f> {
    directory: &'a Directory<'f>,
    packing: Packing,
    /// Pixels.
    width: usize,
    height: usize,
    places: Vec<f64>,
    lengths: Vec<f64>,
    /// Whether samples are told by their difference from the one to the left.
    is_by_difference: bool,
}

impl Samples {
    /// Reads the picture of a directory, of a size that was checked.
    pub fn read(
        directory: &Directory<'_>,
        width: usize,
        height: usize,
        channels: usize,
    ) -> Result<Self, Refusal> {
        let depths = directory.numbers(258, 16)?;
        let bits = depths.first().map_or(1, |&depth| depth as usize);
        if depths.iter().any(|&depth| depth as usize != bits) || !(8..=16).contains(&bits) {
            return Err(unreadable(text::decode::with_other_than_8_to_16_bits()));
        }
        if directory.numbers(339, 16)?.iter().any(|&kind| kind != 1.0) {
            return Err(unreadable(text::decode::with_floating_point_samples()));
        }
        if channels > 1 && directory.whole(284, 1)? != 1 {
            return Err(unreadable(
                text::decode::with_its_channels_one_after_the_other(),
            ));
        }
        let mut samples = Self {
            width,
            height,
            channels,
            bits,
            values: Vec::new(),
        };
        let segments = Segments::of(directory, &samples)?;
        let count = width * height * channels;
        if count > MOST_SAMPLES {
            return Err(Refusal::new(
                RefusalCode::TooLarge,
                text::decode::the_dng_says_it_has_x_pixels(width, height, channels),
            ));
        }
        if count > segments.most_samples(bits)? {
            return Err(wrong(text::decode::it_has_less_data_than_its_size()));
        }
        samples.values = vec![0; count];
        segments.read(&mut samples)?;
        Ok(samples)
    }
}

impl<'a, 'f> Segments<'a, 'f> {
    fn of(directory: &'a Directory<'f>, picture: &Samples) -> Result<Self, Refusal> {
        let packing = match directory.whole(259, 1)? {
            1 => Packing::Plain,
            7 => Packing::LosslessJpeg,
            8 | 32_946 => Packing::Deflate,
            34_892 => return Err(unreadable(text::decode::packed_with_losses())),
            52_546 => return Err(unreadable(text::decode::packed_as_jpeg_xl())),
            other => {
                return Err(unreadable(&text::decode::packed_in_a_way_unknown_here(
                    other,
                )));
            }
        };
        let (width, height, at, long) = if directory.has(322) {
            (directory.whole(322, 0)?, directory.whole(323, 0)?, 324, 325)
        } else {
            let rows = directory.whole(278, picture.height)?;
            (picture.width, rows.min(picture.height), 273, 279)
        };
        let sides = 1..=65_535;
        if !sides.contains(&width) || !sides.contains(&height) {
            return Err(wrong(text::decode::its_strips_or_tiles_have_an_impossible()));
        }
        let count = picture.width.div_ceil(width) * picture.height.div_ceil(height);
        let places = directory.numbers(at, MOST_SEGMENTS)?;
        let lengths = directory.numbers(long, MOST_SEGMENTS)?;
        if places.len() != count || lengths.len() != count {
            return Err(wrong(text::decode::it_should_have_strips_or_tiles(
                count,
                places.len().min(lengths.len()),
            )));
        }
        let predictor = match packing {
            Packing::Deflate => directory.whole(317, 1)?,
            Packing::Plain | Packing::LosslessJpeg => 1,
        };
        let has_whole_bytes = matches!(picture.bits, 8 | 16);
        let is_by_difference = match predictor {
            1 => false,
            2 if has_whole_bytes => true,
            _ => {
                return Err(unreadable(
                    text::decode::with_an_unusual_kind_of_prediction(),
                ));
            }
        };
        Ok(Self {
            directory,
            packing,
            width,
            height,
            places,
            lengths,
            is_by_difference,
        })
    }

    fn bytes(&self, i: usize) -> Result<&'f [u8], Refusal> {
        self.directory
            .part(self.places[i] as usize, self.lengths[i] as usize)
    }

    /// The most samples that its data can hold, so that memory is asked for in
    /// the measure of the file and not of what the file says.
    fn most_samples(&self, bits: usize) -> Result<usize, Refusal> {
        let mut bytes = 0_usize;
        for i in 0..self.places.len() {
            bytes = bytes.saturating_add(self.bytes(i)?.len());
        }
        let bits_of_data = bytes.saturating_mul(8);
        Ok(match self.packing {
            Packing::Plain => bits_of_data / bits,
            // A sample takes one bit at least.
            Packing::LosslessJpeg => bits_of_data,
            // Deflate packs up to 1032 to 1 (RFC 1951: 258 bytes by two bits).
            Packing::Deflate => bits_of_data.saturating_mul(1032) / bits,
        })
    }

    fn read(&self, picture: &mut Samples) -> Result<(), Refusal> {
        let across = picture.width.div_ceil(self.width);
        let per_row = picture.width * picture.channels;
        let mut row = vec![0; self.width * picture.channels];
        for i in 0..self.places.len() {
            let (left, top) = (i % across * self.width, i / across * self.height);
            let rows = self.height.min(picture.height - top);
            let from = left * picture.channels;
            let used = row.len().min(per_row - from);
            let mut source =
                Source::new(self.packing, self.bytes(i)?, picture.bits, self.directory)?;
            for y in top..top + rows {
                source.row(&mut row)?;
                if self.is_by_difference {
                    sum_up(&mut row, picture.channels, picture.bits);
                }
                let begin = y * per_row + from;
                picture.values[begin..begin + used].copy_from_slice(&row[..used]);
            }
        }
        Ok(())
    }
}

/// Horizontal differencing undone.
///
/// # Source
/// TIFF 6.0, section 14.
fn sum_up(row: &mut [u16], channels: usize, bits: usize) {
    let mask = ((1_u32 << bits) - 1) as u16;
    for i in channels..row.len() {
        row[i] = row[i].wrapping_add(row[i - channels]) & mask;
    }
}

/// Where the rows of a strip or tile come from.
enum Source<'a> {
    Bytes {
        stream: Box<dyn Read + 'a>,
        packed: Vec<u8>,
        bits: usize,
        is_big_endian: bool,
    },
    Jpeg(Box<Lossless<'a>>),
}

impl<'a> Source<'a> {
    fn new(
        packing: Packing,
        bytes: &'a [u8],
        bits: usize,
        directory: &Directory<'_>,
    ) -> Result<Self, Refusal> {
        let stream: Box<dyn Read> = match packing {
            Packing::LosslessJpeg => return Ok(Self::Jpeg(Box::new(Lossless::new(bytes)?))),
            Packing::Plain => Box::new(bytes),
            Packing::Deflate => Box::new(BufReader::new(ZlibDecoder::new(bytes))),
        };
        Ok(Self::Bytes {
            stream,
            packed: Vec::new(),
            bits,
            is_big_endian: directory.is_big_endian(),
        })
    }

    /// The next row; rows begin at whole bytes.
    fn row(&mut self, row: &mut [u16]) -> Result<(), Refusal> {
        match self {
            Self::Jpeg(jpeg) => jpeg.fill(row),
            Self::Bytes {
                stream,
                packed,
                bits,
                is_big_endian,
            } => {
                packed.resize((row.len() * *bits).div_ceil(8), 0);
                stream
                    .read_exact(packed)
                    .map_err(|_| wrong(text::decode::a_strip_or_tile_is_cut_short()))?;
                unpack(packed, *bits, *is_big_endian, row);
                Ok(())
            }
        }
    }
}

/// Samples of whole bytes stand in the file's order, others high bit first.
fn unpack(packed: &[u8], bits: usize, is_big_endian: bool, row: &mut [u16]) {
    match bits {
        8 => {
            for (to, &from) in row.iter_mut().zip(packed) {
                *to = u16::from(from);
            }
        }
        16 => {
            let word = if is_big_endian {
                u16::from_be_bytes
            } else {
                u16::from_le_bytes
            };
            for (to, from) in row.iter_mut().zip(packed.as_chunks::<2>().0) {
                *to = word(*from);
            }
        }
        _ => {
            let (mut hold, mut held) = (0_u32, 0);
            let mut bytes = packed.iter();
            for to in row {
                while held < bits {
                    hold = hold << 8 | bytes.next().map_or(0, |&byte| u32::from(byte));
                    held += 8;
                }
                held -= bits;
                *to = (hold >> held) as u16 & ((1 << bits) - 1);
            }
        }
    }
}
