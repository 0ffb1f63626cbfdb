//! Lossless JPEG, as raw pictures use it: rows of samples, decoded as they are
//! asked for.
//!
//! # Source
//! ISO/IEC 10918-1, annexes B, C and H.

use super::{unreadable, wrong};
use crate::Refusal;
use crate::text;

/// A lossless JPEG that is being decoded.
pub(super) struct Lossless<'a> {
    bits: Bits<'a>,
    /// A table for each component, in the order of the scan.
    tables: Vec<Huffman>,
    frame: Frame,
    scan: Scan,
    /// Rows between two restart markers, 0 for none.
    restart_rows: usize,
    rows_done: usize,
    above: Vec<i32>,
    row: Vec<i32>,
    /// Samples of the row that were handed on.
    taken: usize,
}

/// What the frame's header tells.
#[derive(Clone, Copy)]
struct Frame {
    precision: u8,
    height: usize,
    width: usize,
    components: usize,
}

/// What the scan's header tells.
#[derive(Clone, Copy)]
struct Scan {
    selector: u8,
    /// Bits that the samples were shifted down by.
    shift: u8,
}

impl<'a> Lossless<'a> {
    /// Reads the headers of a picture.
    pub fn new(bytes: &'a [u8]) -> Result<Self, Refusal> {
        let mut rest = bytes
            .strip_prefix(&[0xFF, 0xD8])
            .ok_or_else(|| wrong(text::decode::a_part_that_should_be_a_jpeg()))?;
        let mut defined: [Option<Huffman>; 4] = Default::default();
        let (mut frame, mut restart) = (None, 0);
        let (body, data) = loop {
            let (marker, body, behind) = segment(rest).ok_or_else(cut)?;
            rest = behind;
            match marker {
                0xC3 => frame = Some(Frame::of(body)?),
                0xC4 => define(body, &mut defined)?,
                0xC0..=0xCF => return Err(unreadable(text::decode::packed_with_losses())),
                0xDD => restart = usize::from(word(body, 0).ok_or_else(cut)?),
                0xDA => break (body, behind),
                _ => {}
            }
        };
        let frame = frame.ok_or_else(cut)?;
        let (scan, chosen) = Scan::of(body, &frame)?;
        let tables = chosen
            .into_iter()
            .map(|k| defined.get(k).cloned().flatten().ok_or_else(cut))
            .collect::<Result<Vec<Huffman>, Refusal>>()?;
        if restart % frame.width != 0 {
            return Err(wrong(text::decode::a_jpeg_in_it_begins_anew_amidst()));
        }
        let per_row = frame.width * frame.components;
        Ok(Self {
            bits: Bits::new(data),
            tables,
            frame,
            scan,
            restart_rows: restart / frame.width,
            rows_done: 0,
            above: vec![0; per_row],
            row: vec![0; per_row],
            taken: per_row,
        })
    }

    /// Hands on the next samples, component by component, row by row.
    pub fn fill(&mut self, mut samples: &mut [u16]) -> Result<(), Refusal> {
        while !samples.is_empty() {
            if self.taken == self.row.len() {
                self.next_row()?;
            }
            let count = samples.len().min(self.row.len() - self.taken);
            let (now, later) = samples.split_at_mut(count);
            for (to, from) in now.iter_mut().zip(&self.row[self.taken..]) {
                *to = (*from << self.scan.shift) as u16;
            }
            self.taken += count;
            samples = later;
        }
        Ok(())
    }

    fn next_row(&mut self) -> Result<(), Refusal> {
        if self.rows_done == self.frame.height {
            return Err(wrong(text::decode::a_part_of_it_holds_too_few()));
        }
        std::mem::swap(&mut self.above, &mut self.row);
        let since_restart = self
            .rows_done
            .checked_rem(self.restart_rows)
            .unwrap_or(self.rows_done);
        if since_restart == 0 && self.rows_done > 0 {
            self.bits.restart()?;
        }
        let n = self.frame.components;
        for i in 0..self.row.len() {
            let difference = self.bits.difference(&self.tables[i % n])?;
            let foretold = match (since_restart, i < n) {
                (0, true) => 1 << (self.frame.precision - self.scan.shift - 1),
                (0, false) => self.row[i - n],
                (_, true) => self.above[i],
                (_, false) => self
                    .scan
                    .foretell(self.row[i - n], self.above[i], self.above[i - n]),
            };
            self.row[i] = (foretold + difference) & 0xFFFF;
        }
        if self.bits.is_overdrawn() {
            return Err(cut());
        }
        self.rows_done += 1;
        self.taken = 0;
        Ok(())
    }
}

impl Frame {
    fn of(body: &[u8]) -> Result<Self, Refusal> {
        let (&[precision, h1, h0, w1, w0, components], each) =
            body.split_first_chunk().ok_or_else(cut)?;
        let frame = Self {
            precision,
            height: usize::from(u16::from_be_bytes([h1, h0])),
            width: usize::from(u16::from_be_bytes([w1, w0])),
            components: usize::from(components),
        };
        let sound = (2..=16).contains(&precision)
            && frame.height > 0
            && frame.width > 0
            && (1..=4).contains(&components)
            && each.len() >= 3 * frame.components;
        if !sound {
            return Err(wrong(text::decode::a_jpeg_in_it_has_an_impossible()));
        }
        let even = each.chunks_exact(3).all(|one| one[1] == each[1]);
        if !even {
            return Err(unreadable(text::decode::with_channels_of_unlike_size()));
        }
        Ok(frame)
    }
}

impl Scan {
    /// The scan, and the number of each component's table.
    fn of(body: &[u8], frame: &Frame) -> Result<(Self, Vec<usize>), Refusal> {
        let (&count, rest) = body.split_first().ok_or_else(cut)?;
        if usize::from(count) != frame.components {
            return Err(unreadable(text::decode::with_one_scan_for_each_channel()));
        }
        let (each, rest) = rest
            .split_at_checked(2 * frame.components)
            .ok_or_else(cut)?;
        let &[selector, _, low] = rest.first_chunk().ok_or_else(cut)?;
        let shift = low & 15;
        if !(1..=7).contains(&selector) || shift >= frame.precision {
            return Err(wrong(text::decode::a_jpeg_in_it_has_an_impossible()));
        }
        let chosen = each
            .chunks_exact(2)
            .map(|one| usize::from(one[1] >> 4))
            .collect();
        Ok((Self { selector, shift }, chosen))
    }

    /// What a sample is expected to be, by those to its left, above it and
    /// above that to its left.
    fn foretell(self, left: i32, above: i32, corner: i32) -> i32 {
        match self.selector {
            1 => left,
            2 => above,
            3 => corner,
            4 => left + above - corner,
            5 => left + ((above - corner) >> 1),
            6 => above + ((left - corner) >> 1),
            _ => (left + above) >> 1,
        }
    }
}

fn cut() -> Refusal {
    wrong(text::decode::a_jpeg_in_it_is_cut_short())
}

fn word(bytes: &[u8], at: usize) -> Option<u16> {
    Some(u16::from_be_bytes([*bytes.get(at)?, *bytes.get(at + 1)?]))
}

/// The next marker, its segment, and what lies behind.
fn segment(bytes: &[u8]) -> Option<(u8, &[u8], &[u8])> {
    let bytes = bytes.strip_prefix(&[0xFF])?;
    let fill = bytes.iter().take_while(|&&byte| byte == 0xFF).count();
    let (&marker, bytes) = bytes.get(fill..)?.split_first()?;
    let length = usize::from(word(bytes, 0)?);
    Some((marker, bytes.get(2..length)?, bytes.get(length..)?))
}

/// Takes in the tables of a segment.
fn define(mut body: &[u8], defined: &mut [Option<Huffman>; 4]) -> Result<(), Refusal> {
    while let Some((&name, rest)) = body.split_first() {
        let (counts, rest) = rest.split_first_chunk::<16>().ok_or_else(cut)?;
        let total = counts.iter().map(|&n| usize::from(n)).sum();
        let (values, rest) = rest.split_at_checked(total).ok_or_else(cut)?;
        let place = defined.get_mut(usize::from(name)).ok_or_else(cut)?;
        *place = Some(Huffman::new(counts, values)?);
        body = rest;
    }
    Ok(())
}

/// A table from the coming bits to a difference's length.
#[derive(Clone)]
struct Huffman {
    /// Bits of the longest code.
    longest: u32,
    /// Bits of the code and of the difference, by the next `longest` bits.
    found: Vec<(u8, u8)>,
}

impl Huffman {
    fn new(counts: &[u8; 16], values: &[u8]) -> Result<Self, Refusal> {
        let longest = counts.iter().rposition(|&n| n > 0).ok_or_else(cut)? as u32 + 1;
        let mut found = Vec::with_capacity(1 << longest);
        let mut values = values.iter();
        for (length, &count) in (1..=longest).zip(counts) {
            for &value in values.by_ref().take(usize::from(count)) {
                let end = found.len() + (1 << (longest - length));
                if value > 16 || end > 1 << longest {
                    return Err(cut());
                }
                found.resize(end, (length as u8, value));
            }
        }
        // Codes that are not given out: a length of 0 tells them.
        found.resize(1 << longest, (0, 0));
        Ok(Self { longest, found })
    }
}

/// The bits of a scan; zeros behind their end, which are counted.
struct Bits<'a> {
    bytes: &'a [u8],
    at: usize,
    /// Coming bits, the next one highest.
    hold: u64,
    held: u32,
    /// How many of the held bits are not of the file.
    lent: u32,
}

impl<'a> Bits<'a> {
    const fn new(bytes: &'a [u8]) -> Self {
        Self {
            bytes,
            at: 0,
            hold: 0,
            held: 0,
            lent: 0,
        }
    }

    fn refill(&mut self) {
        while self.held <= 56 {
            let byte = match (self.bytes.get(self.at), self.bytes.get(self.at + 1)) {
                (Some(0xFF), Some(0)) => {
                    self.at += 2;
                    0xFF
                }
                (None | Some(0xFF), _) => {
                    self.lent += 8;
                    0
                }
                (Some(&byte), _) => {
                    self.at += 1;
                    byte
                }
            };
            self.hold |= u64::from(byte) << (56 - self.held);
            self.held += 8;
        }
    }

    fn take(&mut self, count: u32) -> i32 {
        let bits = (self.hold >> (64 - count)) as i32;
        self.drop(count);
        bits
    }

    fn drop(&mut self, count: u32) {
        self.hold <<= count;
        self.held -= count;
    }

    fn difference(&mut self, table: &Huffman) -> Result<i32, Refusal> {
        if self.held < 32 {
            self.refill();
        }
        let (length, size) = table.found[(self.hold >> (64 - table.longest)) as usize];
        if length == 0 {
            return Err(cut());
        }
        self.drop(u32::from(length));
        Ok(match size {
            0 => 0,
            16 => 32_768,
            _ => {
                let bits = self.take(u32::from(size));
                let is_negative = bits < 1 << (size - 1);
                if is_negative {
                    bits - (1 << size) + 1
                } else {
                    bits
                }
            }
        })
    }

    /// Whether more bits were used than the file has.
    const fn is_overdrawn(&self) -> bool {
        self.held < self.lent
    }

    /// Passes a restart marker.
    fn restart(&mut self) -> Result<(), Refusal> {
        let rest = self.bytes.get(self.at..).unwrap_or_default();
        let fill = rest.iter().take_while(|&&byte| byte == 0xFF).count();
        match rest.get(fill) {
            Some(0xD0..=0xD7) if fill > 0 => {
                *self = Self::new(&rest[fill + 1..]);
                Ok(())
            }
            _ => Err(cut()),
        }
    }
}
