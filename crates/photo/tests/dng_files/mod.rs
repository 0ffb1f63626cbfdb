//! A writer of DNG files that shares nothing with the reader.
//!
//! # Source
//! Adobe, Digital Negative Specification 1.4; TIFF 6.0.

/// How samples are packed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Packing {
    Plain,
    Deflate,
    /// Deflate of differences.
    DeflateDifferences,
    LosslessJpeg,
}

/// A tag: its number, its type (1 byte, 3 short, 4 long, 5 rational) and values;
/// a rational takes two.
pub type Tag = (u16, u16, Vec<u32>);

/// A DNG to be written.
#[derive(Debug, Clone)]
pub struct Dng {
    pub is_big_endian: bool,
    pub width: usize,
    pub height: usize,
    /// Samples a pixel: 1 behind colour filters, 3 where linear.
    pub channels: usize,
    pub bits: usize,
    pub packing: Packing,
    /// Width and height of tiles; strips of 32 rows without.
    pub tile: Option<[usize; 2]>,
    /// Tags of the first directory in place of the usual ones.
    pub first: Vec<Tag>,
    /// Tags of the raw picture in place of the usual ones.
    pub raw: Vec<Tag>,
    /// Samples, row by row.
    pub samples: Vec<u16>,
}

impl Dng {
    /// A Bayer mosaic, red first, with 14 plain bits and an even balance.
    pub fn mosaic(width: usize, height: usize, at: impl Fn(usize, usize) -> u16) -> Self {
        let place = (0..width * height).map(|i| at(i % width, i / width));
        Self {
            is_big_endian: false,
            width,
            height,
            channels: 1,
            bits: 14,
            packing: Packing::Plain,
            tile: None,
            first: Vec::new(),
            raw: Vec::new(),
            samples: place.collect(),
        }
    }

    /// The file's bytes.
    pub fn write(&self) -> Vec<u8> {
        let (tile, parts) = self.parts();
        let counts = parts.iter().map(|part| part.len() as u32).collect();
        let photometric = if self.channels == 1 { 32_803 } else { 34_892 };
        let first = merged(
            vec![
                (254, 4, vec![1]),
                (274, 3, vec![1]),
                (330, 4, vec![0]),
                (50_706, 1, vec![1, 4, 0, 0]),
                (50_728, 5, vec![1; 6]),
            ],
            &self.first,
        );
        let [at, long] = if self.tile.is_some() {
            [324, 325]
        } else {
            [273, 279]
        };
        let size = if self.tile.is_some() {
            vec![
                (322, 3, vec![tile[0] as u32]),
                (323, 3, vec![tile[1] as u32]),
            ]
        } else {
            vec![(278, 3, vec![tile[1] as u32])]
        };
        let packing = match self.packing {
            Packing::Plain => 1,
            Packing::LosslessJpeg => 7,
            Packing::Deflate | Packing::DeflateDifferences => 8,
        };
        let by_difference = self.packing == Packing::DeflateDifferences;
        let mut usual = vec![
            (254, 4, vec![0]),
            (256, 4, vec![self.width as u32]),
            (257, 4, vec![self.height as u32]),
            (258, 3, vec![self.bits as u32; self.channels]),
            (259, 3, vec![packing]),
            (262, 3, vec![photometric]),
            (277, 3, vec![self.channels as u32]),
            (317, 3, vec![1 + u32::from(by_difference)]),
            (at, 4, vec![0; parts.len()]),
            (long, 4, counts),
        ];
        usual.extend(size);
        if self.channels == 1 {
            usual.push((33_421, 3, vec![2, 2]));
            usual.push((33_422, 1, vec![0, 1, 1, 2]));
        }
        let mut raw = merged(usual, &self.raw);
        let first_at = 8;
        let raw_at = first_at + self.directory(&first, first_at).len();
        let data_at = raw_at + self.directory(&raw, raw_at).len();
        let first = merged(first, &[(330, 4, vec![raw_at as u32])]);
        let is_told = self.raw.iter().any(|tag| tag.0 == at);
        if !is_told {
            let begins = parts.iter().scan(data_at, |next, part| {
                let begin = *next;
                *next += part.len();
                Some(begin as u32)
            });
            raw = merged(raw, &[(at, 4, begins.collect())]);
        }
        let mut bytes = if self.is_big_endian { b"MM" } else { b"II" }.to_vec();
        bytes.extend(self.short(42));
        bytes.extend(self.long(first_at as u32));
        bytes.extend(self.directory(&first, first_at));
        bytes.extend(self.directory(&raw, raw_at));
        bytes.extend(parts.concat());
        bytes
    }

    fn short(&self, value: u32) -> [u8; 2] {
        let value = value as u16;
        if self.is_big_endian {
            value.to_be_bytes()
        } else {
            value.to_le_bytes()
        }
    }

    fn long(&self, value: u32) -> [u8; 4] {
        if self.is_big_endian {
            value.to_be_bytes()
        } else {
            value.to_le_bytes()
        }
    }

    /// A directory that lies at `at`, with what its entries have no room for.
    fn directory(&self, tags: &[Tag], at: usize) -> Vec<u8> {
        let mut bytes = self.short(tags.len() as u32).to_vec();
        let mut behind = Vec::new();
        let behind_at = at + 2 + 12 * tags.len() + 4;
        for (tag, kind, values) in tags {
            let mut data: Vec<u8> = match kind {
                1 => values.iter().map(|&v| v as u8).collect(),
                3 => values.iter().flat_map(|&v| self.short(v)).collect(),
                _ => values.iter().flat_map(|&v| self.long(v)).collect(),
            };
            let count = if *kind == 5 {
                values.len() / 2
            } else {
                values.len()
            };
            bytes.extend(self.short(u32::from(*tag)));
            bytes.extend(self.short(u32::from(*kind)));
            bytes.extend(self.long(count as u32));
            if data.len() > 4 {
                bytes.extend(self.long((behind_at + behind.len()) as u32));
                data.resize(data.len().next_multiple_of(2), 0);
                behind.extend(data);
            } else {
                data.resize(4, 0);
                bytes.extend(data);
            }
        }
        bytes.extend([0; 4]);
        bytes.extend(behind);
        bytes
    }

    /// The size of a strip or tile, and all of them packed.
    fn parts(&self) -> ([usize; 2], Vec<Vec<u8>>) {
        let [w, h] = self.tile.unwrap_or([self.width, 32.min(self.height)]);
        let mut parts = Vec::new();
        for top in (0..self.height).step_by(h) {
            for left in (0..self.width).step_by(w) {
                let whole = if self.tile.is_some() {
                    h
                } else {
                    h.min(self.height - top)
                };
                let rows: Vec<Vec<u16>> =
                    (top..top + whole).map(|y| self.row(left, y, w)).collect();
                parts.push(self.pack(&rows));
            }
        }
        ([w, h], parts)
    }

    /// A row of a part; beyond the picture its last pixel is repeated.
    fn row(&self, left: usize, y: usize, w: usize) -> Vec<u16> {
        let y = y.min(self.height - 1);
        let pixel = |x: usize| (y * self.width + x.min(self.width - 1)) * self.channels;
        (left..left + w)
            .flat_map(|x| self.samples[pixel(x)..pixel(x) + self.channels].to_vec())
            .collect()
    }

    fn pack(&self, rows: &[Vec<u16>]) -> Vec<u8> {
        let squeeze = |bytes: Vec<u8>| {
            use std::io::Write;
            let mut writer =
                flate2::write::ZlibEncoder::new(Vec::new(), flate2::Compression::fast());
            writer.write_all(&bytes).expect("memory takes it");
            writer.finish().expect("memory takes it")
        };
        match self.packing {
            Packing::LosslessJpeg => lossless_jpeg(rows, self.bits),
            Packing::Plain => self.plain(rows),
            Packing::Deflate => squeeze(self.plain(rows)),
            Packing::DeflateDifferences => {
                let n = self.channels;
                let differ = |row: &Vec<u16>| {
                    let from = |i: usize| i.checked_sub(n).map_or(0, |k| row[k]);
                    (0..row.len())
                        .map(|i| row[i].wrapping_sub(from(i)))
                        .collect()
                };
                let rows: Vec<Vec<u16>> = rows.iter().map(differ).collect();
                squeeze(self.plain(&rows))
            }
        }
    }

    fn plain(&self, rows: &[Vec<u16>]) -> Vec<u8> {
        let mut bytes = Vec::new();
        for row in rows {
            match self.bits {
                8 => bytes.extend(row.iter().map(|&v| v as u8)),
                16 => bytes.extend(row.iter().flat_map(|&v| self.short(u32::from(v)))),
                bits => {
                    let mut writer = BitWriter::default();
                    for &v in row {
                        writer.put(u32::from(v), bits);
                    }
                    bytes.extend(writer.finish(0));
                }
            }
        }
        bytes
    }
}

/// `usual` with those of `own` in their place or added, by number.
fn merged(mut usual: Vec<Tag>, own: &[Tag]) -> Vec<Tag> {
    usual.retain(|tag| own.iter().all(|other| other.0 != tag.0));
    usual.extend(own.iter().cloned());
    usual.sort_by_key(|tag| tag.0);
    usual
}

#[derive(Default)]
struct BitWriter {
    bytes: Vec<u8>,
    hold: u64,
    held: usize,
}

impl BitWriter {
    fn put(&mut self, value: u32, bits: usize) {
        self.hold = self.hold << bits | u64::from(value);
        self.held += bits;
        while self.held >= 8 {
            self.held -= 8;
            self.bytes.push((self.hold >> self.held) as u8);
        }
    }

    fn finish(mut self, padding: u32) -> Vec<u8> {
        let missing = (8 - self.held % 8) % 8;
        self.put(padding & ((1 << missing) - 1), missing);
        self.bytes
    }
}

/// ISO/IEC 10918-1, process 14, as raw pictures use it: two components that share
/// a row, predictor 1, one table of 17 codes of five bits; it begins anew
/// after every row.
fn lossless_jpeg(rows: &[Vec<u16>], bits: usize) -> Vec<u8> {
    let width = rows[0].len() / 2;
    let mut bytes = vec![0xFF, 0xD8];
    let mut segment = |marker: u8, body: Vec<u8>| {
        bytes.extend([0xFF, marker]);
        bytes.extend((body.len() as u16 + 2).to_be_bytes());
        bytes.extend(body);
    };
    let mut table = vec![0, 0, 0, 0, 0, 17];
    table.resize(17, 0);
    table.extend(0..=16);
    segment(0xC4, table);
    let mut frame = vec![bits as u8];
    frame.extend((rows.len() as u16).to_be_bytes());
    frame.extend((width as u16).to_be_bytes());
    frame.extend([2, 0, 0x11, 0, 1, 0x11, 0]);
    segment(0xC3, frame);
    segment(0xDD, (width as u16).to_be_bytes().to_vec());
    segment(0xDA, vec![2, 0, 0, 1, 0, 1, 0, 0]);
    for (y, row) in rows.iter().enumerate() {
        if y > 0 {
            bytes.extend([0xFF, 0xD0 + ((y - 1) % 8) as u8]);
        }
        let mut writer = BitWriter::default();
        for (i, &value) in row.iter().enumerate() {
            let before = i
                .checked_sub(2)
                .map_or(1 << (bits - 1), |k| i32::from(row[k]));
            let difference = i32::from(value) - before;
            let size = 32 - difference.unsigned_abs().leading_zeros();
            writer.put(size, 5);
            let below = if difference < 0 { (1 << size) - 1 } else { 0 };
            writer.put((difference + below) as u32, size as usize);
        }
        for byte in writer.finish(0xFF) {
            bytes.push(byte);
            if byte == 0xFF {
                bytes.push(0);
            }
        }
    }
    bytes.extend([0xFF, 0xD9]);
    bytes
}
