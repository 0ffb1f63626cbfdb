//! The directories of a TIFF file, every place checked before it is read.

use super::wrong;
use crate::Refusal;
use crate::text;

/// Most directories that are looked at; a chain of them may run in a circle.
const MOST_DIRECTORIES: usize = 32;

/// The numbers of a file, in its byte order.
#[derive(Clone, Copy)]
struct Words<'a> {
    bytes: &'a [u8],
    is_big_endian: bool,
}

impl<'a> Words<'a> {
    fn slice(self, at: usize, length: usize) -> Option<&'a [u8]> {
        self.bytes.get(at..at.checked_add(length)?)
    }

    /// An unsigned number of up to eight bytes.
    fn number(self, bytes: &[u8]) -> u64 {
        let push = |sum: u64, &byte: &u8| sum << 8 | u64::from(byte);
        if self.is_big_endian {
            bytes.iter().fold(0, push)
        } else {
            bytes.iter().rev().fold(0, push)
        }
    }

    fn at(self, at: usize, length: usize) -> Option<usize> {
        usize::try_from(self.number(self.slice(at, length)?)).ok()
    }
}

/// One tagged value.
struct Entry<'a> {
    tag: u16,
    kind: usize,
    /// None where the value lies outside the file or is of an unknown type.
    data: Option<&'a [u8]>,
}

/// A directory: what is said of one picture.
pub(super) struct Directory<'a> {
    words: Words<'a>,
    entries: Vec<Entry<'a>>,
}

/// Bytes of a value of each TIFF type, by the type's number.
///
/// # Source
/// TIFF 6.0, section 2; type 13 (IFD) by its Technical Note 1.
const TYPE_BYTES: [usize; 14] = [0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4];

/// Every directory of a file, the first one first, each followed by its own
/// sub-directories.
pub(super) fn directories(bytes: &[u8]) -> Result<Vec<Directory<'_>>, Refusal> {
    let words = Words {
        bytes,
        is_big_endian: bytes.starts_with(b"MM"),
    };
    let first = words
        .at(4, 4)
        .ok_or_else(|| wrong(text::decode::it_ends_in_its_first_line()))?;
    let mut waiting = vec![first];
    let mut seen = Vec::new();
    let mut found = Vec::new();
    while let Some(at) = waiting.pop() {
        if seen.contains(&at) || seen.len() == MOST_DIRECTORIES {
            continue;
        }
        seen.push(at);
        let (directory, next) = directory(words, at)?;
        if next != 0 {
            waiting.push(next);
        }
        let below = directory.numbers(SUB_DIRECTORIES, MOST_DIRECTORIES)?;
        waiting.extend(below.iter().rev().map(|&at| at as usize));
        found.push(directory);
    }
    Ok(found)
}

const SUB_DIRECTORIES: u16 = 330;

fn directory(words: Words<'_>, at: usize) -> Result<(Directory<'_>, usize), Refusal> {
    let outside = || wrong(text::decode::a_directory_lies_outside_the_file());
    let count = words.at(at, 2).ok_or_else(outside)?;
    let begin = at + 2;
    let body = words.slice(begin, 12 * count).ok_or_else(outside)?;
    let entries = body
        .as_chunks::<12>()
        .0
        .iter()
        .map(|entry| {
            let kind = words.number(&entry[2..4]) as usize;
            let size = TYPE_BYTES.get(kind).copied().unwrap_or(0);
            let length = size.checked_mul(words.number(&entry[4..8]) as usize);
            let data = match length {
                None | Some(0) => None,
                Some(length @ 1..=4) => entry.get(8..8 + length),
                Some(length) => words.slice(words.number(&entry[8..12]) as usize, length),
            };
            Entry {
                tag: words.number(&entry[..2]) as u16,
                kind,
                data,
            }
        })
        .collect();
    // The last directory may end with the file.
    let next = words.at(begin + 12 * count, 4).unwrap_or(0);
    Ok((Directory { words, entries }, next))
}

impl<'a> Directory<'a> {
    /// Whether a tag is there, sound or not.
    pub fn has(&self, tag: u16) -> bool {
        self.entries.iter().any(|entry| entry.tag == tag)
    }

    /// Whether numbers of this file stand with their high byte first.
    pub const fn is_big_endian(&self) -> bool {
        self.words.is_big_endian
    }

    /// A part of the file.
    pub fn part(&self, at: usize, length: usize) -> Result<&'a [u8], Refusal> {
        self.words
            .slice(at, length)
            .ok_or_else(|| wrong(text::decode::part_of_the_picture_lies_outside()))
    }

    /// The numbers of a tag, none where it is absent; at most `most` of them.
    pub fn numbers(&self, tag: u16, most: usize) -> Result<Vec<f64>, Refusal> {
        let Some(entry) = self.entries.iter().find(|entry| entry.tag == tag) else {
            return Ok(Vec::new());
        };
        let data = entry
            .data
            .ok_or_else(|| wrong(text::decode::its_tag_points_outside_the_file(tag)))?;
        let size = TYPE_BYTES[entry.kind];
        if data.len() / size > most {
            return Err(wrong(text::decode::its_tag_holds_too_many_numbers(tag)));
        }
        let numbers: Vec<f64> = data
            .chunks_exact(size)
            .map(|bytes| self.number(entry.kind, bytes))
            .collect();
        if numbers.iter().any(|number| !number.is_finite()) {
            return Err(wrong(text::decode::its_tag_holds_no_number(tag)));
        }
        Ok(numbers)
    }

    /// A number of one of the TIFF types.
    fn number(&self, kind: usize, bytes: &[u8]) -> f64 {
        let bits = self.words.number(bytes);
        let half = |half: &[u8]| self.words.number(half) as u32;
        match kind {
            6 => f64::from(bits as u8 as i8),
            8 => f64::from(bits as u16 as i16),
            9 => f64::from(bits as u32 as i32),
            11 => f64::from(f32::from_bits(bits as u32)),
            12 => f64::from_bits(bits),
            5 => f64::from(half(&bytes[..4])) / f64::from(half(&bytes[4..])),
            10 => f64::from(half(&bytes[..4]) as i32) / f64::from(half(&bytes[4..]) as i32),
            _ => bits as f64,
        }
    }

    /// The whole number of a tag, `otherwise` where it is absent.
    pub fn whole(&self, tag: u16, otherwise: usize) -> Result<usize, Refusal> {
        match self.numbers(tag, 64)?.first() {
            None => Ok(otherwise),
            Some(&number) if number >= 0.0 => Ok(number as usize),
            Some(_) => Err(wrong(text::decode::its_tag_is_negative(tag))),
        }
    }
}
