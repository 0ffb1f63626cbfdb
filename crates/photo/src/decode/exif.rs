//! What EXIF data tell of orientation and colour space.

/// The colour space that EXIF data name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Named {
    /// sRGB.
    Srgb,
    /// The optional colour space of DCF: Adobe RGB (1998).
    AdobeRgb,
}

/// What is of use here of a photo's EXIF data.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Exif {
    /// Which visual sides the first row and column are, 1 to 8.
    pub orientation: u8,
    /// The colour space, where one is named.
    pub space: Option<Named>,
}

impl Exif {
    /// What broken or missing data say: upright, no colour space.
    const NOTHING: Self = Self {
        orientation: 1,
        space: None,
    };

    /// Reads a TIFF structure; what can't be read is passed over, since a photo
    /// with broken EXIF data is a whole photo all the same.
    ///
    /// # Source
    /// CIPA DC-008 (EXIF): tags 0x0112, 0x8769, 0xA001, 0xA005 and 0x0001 of the
    /// interoperability data; CIPA DC-009 (DCF): `R03` stands for Adobe RGB.
    pub fn of(tiff: Option<&[u8]>) -> Self {
        let Some(tiff) = tiff.and_then(Tiff::new) else {
            return Self::NOTHING;
        };
        let main = tiff.first();
        let orientation = main
            .and_then(|ifd| tiff.short(ifd, 0x0112))
            .and_then(|value| u8::try_from(value).ok())
            .filter(|value| (1..=8).contains(value))
            .unwrap_or(1);
        let space = main
            .and_then(|ifd| tiff.long(ifd, 0x8769))
            .and_then(|photo| space(&tiff, photo));
        Self { orientation, space }
    }
}

fn space(tiff: &Tiff, photo: usize) -> Option<Named> {
    if tiff.short(photo, 0xA001)? == 1 {
        return Some(Named::Srgb);
    }
    let interoperability = tiff.long(photo, 0xA005)?;
    let name = tiff.value(interoperability, 0x0001)?;
    name.starts_with(b"R03").then_some(Named::AdobeRgb)
}

/// Whether a TIFF file calls itself a DNG.
///
/// # Source
/// Adobe, Digital Negative Specification: tag 0xC612 (DNGVersion).
pub(super) fn is_dng(bytes: &[u8]) -> bool {
    Tiff::new(bytes)
        .and_then(|tiff| tiff.place(tiff.first()?, 0xC612))
        .is_some()
}

/// A TIFF structure: directories of tagged values.
struct Tiff<'a> {
    bytes: &'a [u8],
    is_big_endian: bool,
}

impl<'a> Tiff<'a> {
    fn new(bytes: &'a [u8]) -> Option<Self> {
        let is_big_endian = match bytes.get(..4)? {
            b"MM\0\x2a" => true,
            b"II\x2a\0" => false,
            _ => return None,
        };
        Some(Self {
            bytes,
            is_big_endian,
        })
    }

    fn u16_at(&self, at: usize) -> Option<u16> {
        let pair = [*self.bytes.get(at)?, *self.bytes.get(at.checked_add(1)?)?];
        Some(if self.is_big_endian {
            u16::from_be_bytes(pair)
        } else {
            u16::from_le_bytes(pair)
        })
    }

    fn u32_at(&self, at: usize) -> Option<usize> {
        let (first, second) = (self.u16_at(at)?, self.u16_at(at.checked_add(2)?)?);
        let (high, low) = if self.is_big_endian {
            (first, second)
        } else {
            (second, first)
        };
        Some(usize::from(high) << 16 | usize::from(low))
    }

    /// Where the first directory lies.
    fn first(&self) -> Option<usize> {
        self.u32_at(4)
    }

    /// The four bytes of an entry that hold its value, or where it lies.
    fn place(&self, directory: usize, tag: u16) -> Option<usize> {
        let count = usize::from(self.u16_at(directory)?);
        (0..count)
            .map(|i| directory + 2 + 12 * i)
            .find(|&entry| self.u16_at(entry) == Some(tag))
            .map(|entry| entry + 8)
    }

    fn short(&self, directory: usize, tag: u16) -> Option<u16> {
        self.u16_at(self.place(directory, tag)?)
    }

    fn long(&self, directory: usize, tag: u16) -> Option<usize> {
        self.u32_at(self.place(directory, tag)?)
    }

    fn value(&self, directory: usize, tag: u16) -> Option<&'a [u8]> {
        let place = self.place(directory, tag)?;
        self.bytes.get(place..place.checked_add(4)?)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Data of a camera set to Adobe RGB, lying on its side; little-endian.
    fn adobe_rgb() -> Vec<u8> {
        let mut tiff = b"II\x2a\0\x08\0\0\0".to_vec();
        let entry = |tag: u16, kind: u16, value: u32| {
            let mut bytes = tag.to_le_bytes().to_vec();
            bytes.extend(kind.to_le_bytes());
            bytes.extend(1u32.to_le_bytes());
            bytes.extend(value.to_le_bytes());
            bytes
        };
        let directory = |entries: [Vec<u8>; 2]| {
            let mut bytes = 2u16.to_le_bytes().to_vec();
            bytes.extend(entries.concat());
            bytes.extend([0; 4]);
            bytes
        };
        tiff.extend(directory([entry(0x0112, 3, 8), entry(0x8769, 4, 38)]));
        tiff.extend(directory([entry(0xA001, 3, 0xFFFF), entry(0xA005, 4, 68)]));
        let name = u32::from_le_bytes(*b"R03\0");
        tiff.extend(directory([entry(0x0001, 2, name), entry(0x0002, 7, 0)]));
        tiff
    }

    #[test]
    fn orientation_and_colour_space_are_read() {
        let whole = adobe_rgb();
        let found = Exif::of(Some(&whole));
        assert_eq!(found.orientation, 8);
        assert_eq!(found.space, Some(Named::AdobeRgb));
        let mut srgb = whole.clone();
        srgb[48..50].copy_from_slice(&[1, 0]);
        assert_eq!(Exif::of(Some(&srgb)).space, Some(Named::Srgb));
    }

    #[test]
    fn broken_data_say_nothing() {
        let whole = adobe_rgb();
        for end in 0..whole.len() {
            let _ = Exif::of(Some(&whole[..end]));
        }
        assert_eq!(Exif::of(None), Exif::NOTHING);
        assert_eq!(Exif::of(Some(b"II\x2a\0\xff\xff\xff\xff")), Exif::NOTHING);
        let mut ninth = whole;
        ninth[18] = 9;
        assert_eq!(Exif::of(Some(&ninth)).orientation, 1);
    }
}
