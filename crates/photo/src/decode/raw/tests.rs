use super::*;
use dng_files::{Dng, Packing, Tag};

#[path = "../../../tests/dng_files/mod.rs"]
mod dng_files;

const WIDTH: usize = 150;
const HEIGHT: usize = 140;
/// Saturation with black at 0, 12 bits.
const WHITE: u16 = 4000;

fn decoded(dng: &Dng) -> Stored {
    decode(&dng.write()).unwrap_or_else(|refusal| panic!("{refusal}"))
}

fn refused(dng: &Dng) -> Refusal {
    decode(&dng.write()).err().expect("it is refused")
}

fn white(level: u16) -> Tag {
    (50_717, 3, vec![u32::from(level)])
}

/// A mosaic of smooth colours, red first.
fn smooth(x: usize, y: usize) -> u16 {
    let channel = x % 2 + y % 2;
    (40 + 20 * (x / 2) + 15 * (y / 2) + 300 * channel) as u16
}

fn smooth_dng() -> Dng {
    Dng {
        bits: 12,
        raw: vec![white(WHITE)],
        ..Dng::mosaic(WIDTH, HEIGHT, smooth)
    }
}

/// Linear light of a stored picture's mean over some pixels.
fn mean(stored: &Stored, pixels: impl Iterator<Item = (usize, usize)>) -> [f64; 3] {
    let (mut sum, mut n) = ([0.0; 3], 0.0);
    for (x, y) in pixels {
        for (k, total) in sum.iter_mut().enumerate() {
            let code = stored.codes[(y * stored.width + x) * 3 + k];
            *total += stored.profile.0.linear[k][usize::from(code)];
        }
        n += 1.0;
    }
    sum.map(|total| total / n)
}

fn everywhere(stored: &Stored) -> impl Iterator<Item = (usize, usize)> + use<> {
    let (width, height) = (stored.width, stored.height);
    (0..width * height).map(move |i| (i % width, i / width))
}

/// The picture's mean light against what the sensor's shares come to.
fn assert_mean(stored: &Stored, share: [f64; 3], within: f64) {
    // A share of 1 becomes the light of the highest code below burnt out.
    let top = Profile::srgb().linear[0][252];
    let found = mean(stored, everywhere(stored));
    for k in 0..3 {
        let wanted = share[k] * top;
        assert!(
            (found[k] / wanted - 1.0).abs() < within,
            "{found:?} {share:?}"
        );
    }
}

/// Each code against that of its own share: rounding that is handed on may move
/// it by one more.
fn assert_codes(stored: &Stored, share: impl Fn(usize, usize) -> [f64; 3]) {
    let linear = &Profile::srgb().linear[0];
    for (x, y) in everywhere(stored) {
        for (k, share) in share(x, y).into_iter().enumerate() {
            let code = usize::from(stored.codes[(y * stored.width + x) * 3 + k]);
            let wanted = share * linear[252];
            let room = linear[code.saturating_sub(2)]..=linear[(code + 2).min(252)];
            assert!(room.contains(&wanted), "{x} {y} {k}: {code} for {share}");
        }
    }
}

/// Red, green and blue of a cell of a mosaic that begins with red.
fn cell(at: impl Fn(usize, usize) -> u16, x: usize, y: usize) -> [f64; 3] {
    let site = |dx: usize, dy: usize| f64::from(at(2 * x + dx, 2 * y + dy));
    [
        site(0, 0),
        f64::midpoint(site(1, 0), site(0, 1)),
        site(1, 1),
    ]
}

#[test]
fn a_cell_becomes_a_pixel_of_its_sites_light() {
    let stored = decoded(&smooth_dng());
    assert_eq!((stored.width, stored.height), (WIDTH / 2, HEIGHT / 2));
    let share = |x, y| cell(smooth, x, y).map(|v| v / f64::from(WHITE));
    assert_codes(&stored, share);
    let mut sum = [0.0; 3];
    for (x, y) in everywhere(&stored) {
        let one = share(x, y);
        sum = [0, 1, 2].map(|k| sum[k] + one[k]);
    }
    let pixels = (stored.width * stored.height) as f64;
    assert_mean(&stored, sum.map(|total| total / pixels), 2e-4);
}

#[test]
fn every_packing_gives_the_same_picture() {
    let plain = decoded(&smooth_dng()).codes;
    let packings = [
        Packing::Plain,
        Packing::Deflate,
        Packing::DeflateDifferences,
        Packing::LosslessJpeg,
    ];
    for packing in packings {
        for (is_big_endian, tile) in [
            (false, Some([64, 48])),
            (true, None),
            (true, Some([16, 16])),
        ] {
            for bits in [12, 14, 16] {
                if packing == Packing::DeflateDifferences && bits != 16 {
                    continue;
                }
                let dng = Dng {
                    is_big_endian,
                    packing,
                    tile,
                    bits,
                    ..smooth_dng()
                };
                let what = format!("{packing:?} {is_big_endian} {tile:?} {bits}");
                assert!(decoded(&dng).codes == plain, "{what}");
            }
        }
    }
}

/// Reference library: the file is by tifffile and imagecodecs (libjpeg-turbo and
/// liblj92): all seven predictors, one and two components. Its numbers are those
/// of `make_lossless.py`.
#[test]
fn lossless_jpeg_of_other_programs_is_read() {
    let stored = decode(include_bytes!("../../../tests/dng_files/lossless.dng"))
        .unwrap_or_else(|refusal| panic!("{refusal}"));
    assert_eq!((stored.width, stored.height), (120, 64));
    let at = |x: usize, y: usize| {
        let grain = (7 * x * x + 13 * y * y + 3 * x * y) % 64;
        (5 * x + 9 * y + grain + 400 * (x % 2) + 300 * (y % 2)) as u16
    };
    assert_codes(&stored, |x, y| cell(at, x, y).map(|v| v / (4095.0 - 512.0)));
}

#[test]
fn the_four_orders_of_a_cell_are_read() {
    for order in [[0, 1, 1, 2], [2, 1, 1, 0], [1, 0, 2, 1], [1, 2, 0, 1]] {
        let light = |x: usize, y: usize| [500, 1500, 2500][order[y % 2 * 2 + x % 2] as usize];
        let dng = Dng {
            raw: vec![white(WHITE), (33_422, 1, order.to_vec())],
            ..Dng::mosaic(WIDTH, HEIGHT, light)
        };
        assert_mean(&decoded(&dng), [0.125, 0.375, 0.625], 1e-3);
    }
}

#[test]
fn only_the_lit_and_chosen_part_is_shown() {
    let expected = decoded(&smooth_dng());
    // The dark margin has an odd width: the pattern begins where light falls.
    let margin = |x: usize, y: usize| match (x.checked_sub(3), y.checked_sub(5)) {
        (Some(x), Some(y)) => smooth(x, y),
        _ => 4095,
    };
    let (w, h) = (WIDTH as u32, HEIGHT as u32);
    let active = (50_829, 4, vec![5, 3, h + 5, w + 3]);
    let mut dng = Dng {
        raw: vec![white(WHITE), active],
        ..Dng::mosaic(WIDTH + 3, HEIGHT + 5, margin)
    };
    assert!(decoded(&dng).codes == expected.codes);
    dng.raw.push((50_719, 4, vec![7, 2]));
    dng.raw.push((50_720, 4, vec![131, 130]));
    let cropped = decoded(&dng);
    assert_eq!((cropped.width, cropped.height), (65, 65));
    let share = |x, y| cell(smooth, x + 4, y + 1).map(|v| v / f64::from(WHITE));
    assert_codes(&cropped, share);
}

#[test]
fn black_white_and_the_table_make_levels() {
    // Black repeats over two by two sites; the table doubles.
    let black = [100, 120, 140, 160_u16];
    let at = |x: usize, y: usize| smooth(x, y) / 2 + black[y % 2 * 2 + x % 2] / 2;
    let dng = Dng {
        raw: vec![
            white(WHITE),
            (50_712, 3, (0..2100).map(|v| 2 * v).collect()),
            (50_713, 3, vec![2, 2]),
            (
                50_714,
                5,
                black.iter().flat_map(|&b| [u32::from(b) * 4, 4]).collect(),
            ),
        ],
        ..Dng::mosaic(WIDTH, HEIGHT, at)
    };
    let stored = decoded(&dng);
    let share = |x: usize, y: usize| {
        let lit = |x: usize, y: usize| smooth(x, y) / 2 * 2;
        let [r, g, b] = cell(lit, x, y);
        [r / 3900.0, g / 3870.0, b / 3840.0]
    };
    assert_codes(&stored, share);
}

#[test]
fn the_dark_keeps_its_mean() {
    // Grain of 24 around 12 above black: a third of the samples lie below black.
    let at = |x: usize, y: usize| {
        let chance = (x * 7919 + y * 104_729 + x * y * 31) % 85;
        (256 + 12 + chance - 42) as u16
    };
    let dng = Dng {
        raw: vec![white(4256), (50_714, 3, vec![256])],
        ..Dng::mosaic(400, 400, at)
    };
    let mut sum = [0.0; 3];
    for i in 0..200 * 200 {
        let one = cell(at, i % 200, i / 200);
        sum = [0, 1, 2].map(|k| sum[k] + (one[k] - 256.0) / 4000.0 / 40_000.0);
    }
    assert_mean(&decoded(&dng), sum, 0.01);
}

#[test]
fn saturated_sites_are_burnt_out_and_no_others() {
    // One green site in a cell is full; red and blue are amplified most.
    let at = |x: usize, y: usize| match (x, y) {
        (21, 20) | (40, 40) => WHITE,
        (61, 61) => WHITE - 100,
        _ => 1000,
    };
    let dng = Dng {
        first: vec![(50_728, 5, vec![1, 2, 1, 1, 1, 2])],
        raw: vec![white(WHITE)],
        ..Dng::mosaic(WIDTH, HEIGHT, at)
    };
    let stored = decoded(&dng);
    let burnt: Vec<usize> = (0..stored.codes.len())
        .filter(|&i| usize::from(stored.codes[i]) >= crate::patches::CLIPPED_CODE)
        .collect();
    let place = |x: usize, y: usize, k: usize| (y * stored.width + x) * 3 + k;
    assert_eq!(burnt, [place(10, 10, 1), place(20, 20, 0)]);
    assert!(burnt.iter().all(|&i| stored.codes[i] == 255));
    assert!(stored.codes[place(30, 30, 2)] > 245);
}

#[test]
fn the_cameras_balance_or_grey_on_the_whole_evens_the_channels() {
    let grey = |x: usize, y: usize| [1000, 2000, 1500][x % 2 + y % 2];
    let told = Dng {
        first: vec![(50_728, 5, vec![1, 2, 1, 1, 3, 4])],
        raw: vec![white(WHITE)],
        ..Dng::mosaic(WIDTH, HEIGHT, grey)
    };
    assert_mean(&decoded(&told), [0.25; 3], 1e-3);
    let untold = Dng {
        first: vec![(50_728, 5, vec![0, 0, 1, 1, 1, 1])],
        ..told
    };
    let broken = decode(&untold.write()).err().expect("0 by 0 is no number");
    assert_eq!(broken.code, RefusalCode::DamagedFile);
    let untold = Dng {
        first: vec![(50_728, 5, vec![0, 1, 1, 1, 1, 1])],
        ..untold
    };
    assert_mean(&decoded(&untold), [0.25; 3], 1e-3);
}

/// Three channels a pixel, as programs write that put several pictures together.
fn linear_dng() -> Dng {
    let samples = (0..WIDTH * HEIGHT)
        .flat_map(|i| [i % WIDTH, i / WIDTH, 70])
        .map(|v| v as u16)
        .collect();
    Dng {
        channels: 3,
        bits: 8,
        samples,
        ..Dng::mosaic(WIDTH, HEIGHT, |_, _| 0)
    }
}

#[test]
fn linear_pictures_keep_their_size() {
    let shares = |x: usize, y: usize| [x, y, 70].map(|v| v as f64 / 255.0);
    for packing in [Packing::Plain, Packing::DeflateDifferences] {
        let stored = decoded(&Dng {
            packing,
            ..linear_dng()
        });
        assert_eq!((stored.width, stored.height), (WIDTH, HEIGHT));
        assert_codes(&stored, shares);
    }
}

#[test]
fn the_largest_whole_picture_is_taken_and_turned() {
    let dng = Dng {
        // The first directory pretends to be a small raw picture.
        first: vec![
            (262, 3, vec![32_803]),
            (256, 4, vec![20]),
            (257, 4, vec![20]),
            (274, 3, vec![6]),
        ],
        ..smooth_dng()
    };
    let stored = decoded(&dng);
    assert_eq!(stored.orientation, 6);
    assert_eq!((stored.width, stored.height), (WIDTH / 2, HEIGHT / 2));
}

#[test]
fn what_is_not_read_is_named() {
    let mosaic = |tags: Vec<Tag>| Dng {
        raw: tags,
        ..smooth_dng()
    };
    let six = |k: u32| k * 7 % 3;
    let cases = [
        (
            mosaic(vec![
                (33_421, 3, vec![6, 6]),
                (33_422, 1, (0..36).map(six).collect()),
            ]),
            "colour filters",
        ),
        (
            mosaic(vec![(33_422, 1, vec![0, 1, 2, 3])]),
            "colour filters",
        ),
        (mosaic(vec![(259, 3, vec![34_892])]), "with losses"),
        (mosaic(vec![(259, 3, vec![52_546])]), "JPEG XL"),
        (mosaic(vec![(259, 3, vec![5])]), "unknown here (5)"),
        (mosaic(vec![(258, 3, vec![32])]), "8 to 16 bits"),
        (mosaic(vec![(339, 3, vec![3])]), "floating-point"),
        (mosaic(vec![(262, 3, vec![2])]), "no raw picture"),
        (mosaic(vec![(277, 3, vec![4])]), "4 samples"),
    ];
    for (dng, word) in cases {
        let refusal = refused(&dng);
        assert_eq!(refusal.code, RefusalCode::NotAPhoto, "{word}");
        assert!(refusal.message.contains(word), "{refusal}");
        assert!(refusal.message.contains("Save the photo"), "{refusal}");
    }
    let grey = Dng {
        raw: vec![(262, 3, vec![34_892])],
        ..smooth_dng()
    };
    assert_eq!(refused(&grey).code, RefusalCode::GreyscalePhoto);
}

#[test]
fn sizes_that_the_file_cannot_hold_are_refused() {
    let sized = |width: u32, height: u32| Dng {
        raw: vec![
            (256, 4, vec![width]),
            (257, 4, vec![height]),
            (278, 4, vec![height]),
            (273, 4, vec![8]),
            (279, 4, vec![400]),
        ],
        ..smooth_dng()
    };
    for packing in [Packing::Plain, Packing::Deflate, Packing::LosslessJpeg] {
        let dng = Dng {
            packing,
            ..sized(20_000, 6000)
        };
        assert_eq!(refused(&dng).code, RefusalCode::DamagedFile);
    }
    for (width, height) in [(u32::MAX, u32::MAX), (40_000, 100), (20_000, 20_000)] {
        assert_eq!(refused(&sized(width, height)).code, RefusalCode::TooLarge);
    }
    assert_eq!(refused(&sized(20, 20)).code, RefusalCode::ChartMissing);
}

#[test]
fn contradictions_are_refused_as_damage() {
    for tag in [
        white(0),
        (50_714, 3, vec![1, 2, 3]),
        (50_713, 3, vec![0, 2]),
        (50_829, 4, vec![0, 0, 900, 900]),
        (50_829, 4, vec![10, 10, 10, 10]),
        (279, 4, vec![9, 9]),
        (322, 3, vec![0]),
    ] {
        let what = format!("{tag:?}");
        let dng = Dng {
            raw: vec![tag],
            ..smooth_dng()
        };
        let refusal = refused(&dng);
        assert_eq!(refusal.code, RefusalCode::DamagedFile, "{what} {refusal}");
    }
}

#[test]
fn directories_in_a_circle_end() {
    let mut bytes = smooth_dng().write();
    // The first directory names itself as the next one.
    let next = 8 + 2 + 12 * usize::from(bytes[8]);
    bytes[next] = 8;
    assert!(decode(&bytes).is_ok());
}

#[test]
fn files_cut_short_are_damaged() {
    for packing in [Packing::Plain, Packing::Deflate, Packing::LosslessJpeg] {
        let whole = Dng {
            packing,
            ..smooth_dng()
        }
        .write();
        for end in (8..1000).chain((1000..whole.len()).step_by(211)) {
            let refusal = decode(&whole[..end]).err();
            let refusal = refusal.unwrap_or_else(|| panic!("{packing:?} {end}"));
            let code = refusal.code;
            assert_eq!(
                code,
                RefusalCode::DamagedFile,
                "{packing:?} {end} {refusal}"
            );
        }
    }
}

#[test]
fn no_changed_byte_makes_it_panic() {
    for packing in [Packing::Plain, Packing::Deflate, Packing::LosslessJpeg] {
        let whole = Dng {
            packing,
            ..Dng::mosaic(128, 128, smooth)
        }
        .write();
        let places = (0..600).chain((600..whole.len()).step_by(97));
        for at in places {
            for change in [0x01, 0x80, 0xFF] {
                let mut changed = whole.clone();
                changed[at] ^= change;
                if let Err(refusal) = decode(&changed) {
                    assert!(refusal.message.ends_with('.'), "{refusal}");
                }
            }
        }
    }
}
