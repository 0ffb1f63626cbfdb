//! JPEG (ISO/IEC 10918-1) to pixels, or a refusal where its inside is damaged.

use crate::text;
use std::cell::Cell;

use zune_core::{
    bytestream::{ZByteIoError, ZByteReaderTrait, ZCursor, ZSeekFrom},
    colorspace::ColorSpace,
    options::DecoderOptions,
};
use zune_jpeg::JpegDecoder;

use super::{Stored, check_size, damaged, exif::Exif, greyscale, profile::Profile};
use crate::Refusal;

/// Bytes that a decoder may have read ahead of the last pixel, or left of padding.
const AHEAD: usize = 16;
/// Zeros put behind the picture data: a decoder that lacks data eats into them.
const BEHIND: usize = 64;

/// Decodes the first picture of a file, whose end marker lies at `end`.
///
/// A decoder, strict or not, that lost its place in damaged data has its pixels
/// too soon or too late; it paints the rest grey and says nothing. So it is
/// watched where its reading of picture data stops.
pub(super) fn decode(bytes: &[u8], end: usize) -> Result<Stored, Refusal> {
    let options = DecoderOptions::default()
        .set_strict_mode(true)
        .set_max_width(usize::MAX)
        .set_max_height(usize::MAX)
        .jpeg_set_out_colorspace(ColorSpace::RGB);
    let mut data = Vec::with_capacity(end + BEHIND + 2);
    data.extend_from_slice(&bytes[..end]);
    data.resize(end + BEHIND, 0);
    data.extend([0xFF, 0xD9]);
    let reached = Cell::new(0);
    let watched = Watched {
        bytes: ZCursor::new(&data),
        reached: &reached,
    };
    let mut decoder = JpegDecoder::new_with_options(watched, options);
    decoder.decode_headers().map_err(damaged)?;
    let info = decoder
        .info()
        .ok_or_else(|| damaged(text::decode::it_has_no_picture_header()))?;
    check_size(u32::from(info.width), u32::from(info.height))?;
    if decoder.input_colorspace() == Some(ColorSpace::Luma) {
        return Err(greyscale());
    }
    let exif = Exif::of(decoder.exif().map(Vec::as_slice));
    let icc = decoder.icc_profile();
    let codes = decoder.decode().map_err(damaged)?;
    let (width, height) = (usize::from(info.width), usize::from(info.height));
    if codes.len() != width * height * 3 {
        return Err(damaged(text::decode::it_has_another_number_of_pixels()));
    }
    let reached = reached.get();
    if reached + AHEAD < end || reached > end + AHEAD {
        return Err(damaged(text::decode::its_inside_doesnt_fit_its_size()));
    }
    Ok(Stored {
        width,
        height,
        codes,
        profile: Profile::of(icc.as_deref(), exif.space),
        orientation: exif.orientation,
    })
}

/// A file that tells how far picture data were read. In search of a marker the
/// decoder reads single bytes with an eye on the end, picture data otherwise.
struct Watched<'a> {
    bytes: ZCursor<&'a [u8]>,
    reached: &'a Cell<usize>,
}

impl Watched<'_> {
    #[inline(always)]
    fn note(&mut self) {
        if let Ok(at) = self.bytes.z_position() {
            self.reached.set(at as usize);
        }
    }
}

impl ZByteReaderTrait for Watched<'_> {
    #[inline(always)]
    fn read_byte_no_error(&mut self) -> u8 {
        let byte = self.bytes.read_byte_no_error();
        self.note();
        byte
    }

    #[inline(always)]
    fn read_exact_bytes(&mut self, buf: &mut [u8]) -> Result<(), ZByteIoError> {
        let outcome = self.bytes.read_exact_bytes(buf);
        if buf.len() > 1 && outcome.is_ok() {
            self.note();
        }
        outcome
    }

    fn read_bytes(&mut self, buf: &mut [u8]) -> Result<usize, ZByteIoError> {
        self.bytes.read_bytes(buf)
    }

    #[inline(always)]
    fn peek_bytes(&mut self, buf: &mut [u8]) -> Result<usize, ZByteIoError> {
        self.bytes.peek_bytes(buf)
    }

    #[inline(always)]
    fn peek_exact_bytes(&mut self, buf: &mut [u8]) -> Result<(), ZByteIoError> {
        self.bytes.peek_exact_bytes(buf)
    }

    #[inline(always)]
    fn z_seek(&mut self, from: ZSeekFrom) -> Result<u64, ZByteIoError> {
        self.bytes.z_seek(from)
    }

    #[inline(always)]
    fn is_eof(&mut self) -> Result<bool, ZByteIoError> {
        self.bytes.is_eof()
    }

    #[inline(always)]
    fn z_position(&mut self) -> Result<u64, ZByteIoError> {
        self.bytes.z_position()
    }

    fn read_remaining(&mut self, sink: &mut Vec<u8>) -> Result<usize, ZByteIoError> {
        self.bytes.read_remaining(sink)
    }
}
