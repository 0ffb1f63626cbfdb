//! Every code there is, with a photo or file that brings it up: a code without a
//! case does not compile, and each says what to do.
//!
//! Source: rendered photos, which share no code with `photo`, and made-up files.

#[allow(dead_code, reason = "each test file uses its share")]
mod board_scenes;

use board_scenes::Laid;
use photo::{
    Area, FlagCode, RefusalCode, Request,
    board::{Board, Kind, Paper},
    read, survey,
};
use scene::{
    Chart, Dye, Flaws, Glare, Gradient, Jpeg, LocalTone, Piece, Profile, Reflectance, Scene,
    Texture, Wet, cotton, render, skin,
};

/// What is sent in, and what is asked of it.
struct Sent {
    bytes: Vec<u8>,
    request: Request,
}

/// The list of all codes and the case of each, from one table.
macro_rules! cases {
    ($type:ident, $case:ident: $($code:ident => $sent:expr,)*) => {
        const ALL: &[$type] = &[$($type::$code),*];
        fn $case(code: $type) -> Sent {
            match code {
                $($type::$code => $sent,)*
            }
        }
    };
}

const BOARD: Board = Board {
    kind: Kind::Six,
    paper: Paper::A4,
};

fn file(bytes: &[u8]) -> Sent {
    Sent {
        bytes: bytes.to_vec(),
        request: Request::default(),
    }
}

/// A photo of a scene, all its pieces asked for.
fn photo_of(scene: Scene) -> Sent {
    let rendered = render(&scene);
    let areas = rendered.truth.pieces.iter().map(|piece| Area {
        id: piece.id.clone(),
        polygon: piece.polygon.clone(),
    });
    Sent {
        request: Request {
            areas: areas.collect(),
            ..Request::default()
        },
        bytes: rendered.jpeg,
    }
}

/// The same with the chart's corners given, for photos in which it can't be found.
fn with_corners(scene: Scene) -> Sent {
    let corners = render(&scene).truth.chart_corners;
    let mut sent = photo_of(scene);
    sent.request.corners = Some(corners);
    sent
}

/// The plain scene with an area asked for.
fn area(polygon: &[[f64; 2]]) -> Sent {
    let mut sent = photo_of(Scene::default());
    sent.request.areas.push(Area {
        id: "a".into(),
        polygon: polygon.to_vec(),
    });
    sent
}

fn square(x: f64, y: f64, side: f64) -> [[f64; 2]; 4] {
    [[x, y], [x + side, y], [x + side, y + side], [x, y + side]]
}

fn flawed(flaws: Flaws) -> Scene {
    Scene {
        flaws,
        ..Scene::default()
    }
}

fn with_piece(piece: Piece) -> Scene {
    Scene {
        pieces: vec![piece],
        ..Scene::default()
    }
}

fn madder() -> Piece {
    Piece::square("a", Dye::madder().on(&cotton(), 0.5), [0.0, 60.0], 40.0)
}

fn exposed(exposure_stops: f64) -> Scene {
    Scene {
        exposure_stops,
        ..Scene::default()
    }
}

fn with_profile(profile: Profile) -> Sent {
    photo_of(Scene {
        jpeg: Jpeg {
            profile,
            ..Jpeg::default()
        },
        ..Scene::default()
    })
}

/// A photo whose colour profile is spoilt where it says what kind it is.
fn with_spoilt_profile() -> Sent {
    let mut sent = with_profile(Profile::Srgb);
    let start = sent
        .bytes
        .windows(12)
        .position(|w| w == b"ICC_PROFILE\0")
        .expect("the photo has a profile");
    // ISO 15076-1: the colour space stands 16 bytes into the profile, which comes
    // after the marker's name and two numbers.
    sent.bytes[start + 14 + 16..][..4].copy_from_slice(b"CMYK");
    sent
}

/// A PNG header of 60,000 x 60,000 pixels.
fn huge() -> Vec<u8> {
    let mut png = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR".to_vec();
    png.extend(60_000u32.to_be_bytes());
    png.extend(60_000u32.to_be_bytes());
    png.extend([8, 2, 0, 0, 0]);
    // CRC-32 of the header chunk (ISO 3309).
    let crc = png[12..].iter().fold(u32::MAX, |crc, byte| {
        (0..8).fold(crc ^ u32::from(*byte), |crc, _| {
            (crc >> 1) ^ (0xEDB8_8320 * (crc & 1))
        })
    });
    png.extend((!crc).to_be_bytes());
    png.extend(b"\0\0\0\0IDAT\x35\xaf\x06\x1e\0\0\0\0IEND\xae\x42\x60\x82");
    png
}

fn cut_short() -> Sent {
    let mut sent = photo_of(Scene::default());
    sent.bytes.truncate(sent.bytes.len() / 2);
    sent
}

/// The last column of the chart lies outside the photo.
fn cut_off() -> Sent {
    let mut scene = Scene::default();
    scene.viewpoint.shift = [0.2, 0.0];
    photo_of(scene)
}

fn two_corners_covered() -> Sent {
    let mut laid = Laid::full(BOARD);
    laid.cover(0);
    laid.cover(2);
    file(&laid.photograph().jpeg)
}

fn flags_up(sent: &Sent) -> Vec<(FlagCode, String)> {
    let looked = survey(&sent.bytes, sent.request.corners);
    let read = read(&sent.bytes, &sent.request);
    let mut flags = looked.map_or_else(|_| Vec::new(), |survey| survey.flags);
    if let Ok(reading) = read {
        flags.extend(reading.flags);
        flags.extend(reading.readings.into_iter().flat_map(|r| r.flags));
    }
    flags.into_iter().map(|f| (f.code, f.message)).collect()
}

/// Whether a message is made of sentences and says what to do: one of the words
/// with which a remedy begins here.
fn helps(message: &str) -> bool {
    const REMEDIES: &[&str] = &[
        "Choose",
        "Photograph",
        "Take",
        "take",
        "Lay",
        "Give",
        "give",
        "Mark",
        "mark",
        "Copy",
        "Save",
        "save",
        "Use",
        "use",
        "Turn",
        "Expose",
        "expose",
        "Switch",
        "Set",
        "set",
        "Leave",
        "Keep",
        "keep",
        "Check",
        "Hold",
        "Send",
        "Dry",
        "dry",
        "softer",
        "only",
        "Print",
        "Show",
        "show",
        "Open",
        "fit",
        "needs",
    ];
    let mut words = message.split(|c: char| !c.is_alphabetic());
    words.any(|word| REMEDIES.contains(&word)) && message.ends_with('.')
}

#[test]
fn every_refusal_has_a_case_and_says_what_to_do() {
    cases! {
        RefusalCode, case:
        NotAPhoto => file(b"dear diary, today I dyed a napkin"),
        DamagedFile => cut_short(),
        TooLarge => file(&huge()),
        HeicUnsupported => file(b"\0\0\0\x18ftypheic\0\0\0\0mif1heic"),
        ChartMissing => photo_of(Scene { chart: None, ..with_piece(madder()) }),
        ChartCutOff => cut_off(),
        TwoCharts => photo_of(flawed(Flaws {
            second_chart: Some(Chart { middle_mm: [0.0, 90.0], ..Chart::default() }),
            ..Flaws::default()
        })),
        Mirrored => photo_of(flawed(Flaws { mirrored: true, ..Flaws::default() })),
        GreyscalePhoto => photo_of(flawed(Flaws { greyscale: true, ..Flaws::default() })),
        OverExposed => with_corners(exposed(2.5)),
        UnderExposed => with_corners(exposed(-7.0)),
        PoorFit => {
            let mut sent = photo_of(Scene::default());
            sent.request.corners = Some(square(10.0, 10.0, 300.0));
            sent
        },
        BadCorners => {
            let mut sent = photo_of(Scene::default());
            sent.request.corners = Some(square(9000.0, 10.0, 300.0));
            sent
        },
        BoardUnread => two_corners_covered(),
        BoardVersion => file(&Laid::of_another_version(BOARD).photograph().jpeg),
        BoardMixed => file(&Laid::of_two_boards(BOARD).photograph().jpeg),
    }
    let mut wrong = Vec::new();
    for &code in ALL {
        let sent = case(code);
        let refusal = read(&sent.bytes, &sent.request).expect_err(code.as_str());
        println!("{}: {refusal}", code.as_str());
        if refusal.code != code || !helps(&refusal.message) {
            wrong.push((code, refusal));
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn every_flag_has_a_case_and_says_what_to_do() {
    const SHINE: Glare = Glare {
        at_mm: [-25.0, 60.0],
        radius_mm: 3.0,
        strength: 0.9,
    };
    const LAMP: Gradient = Gradient {
        share: 0.8,
        towards_deg: 180.0,
    };
    const WET: Wet = Wet {
        soaked: 0.8,
        sparkle_share: 0.08,
        strength: 0.7,
    };
    const TONE: LocalTone = LocalTone {
        strength: 0.25,
        reach: 0.08,
    };
    fn flat(id: &str, reflectance: Reflectance, middle_mm: [f64; 2]) -> Piece {
        Piece::square(id, reflectance, middle_mm, 30.0).with_texture(Texture::FLAT)
    }
    fn dark() -> Piece {
        Piece::square("a", Dye::indigo().on(&cotton(), 1.0), [-30.0, 60.0], 40.0)
    }
    cases! {
        FlagCode, case:
        Clipped => photo_of(Scene {
            exposure_stops: 0.3,
            ..with_piece(flat("a", Reflectance::flat(0.99), [0.0, 60.0]))
        }),
        Glare => photo_of(Scene {
            flaws: Flaws { glare: Some(SHINE), ..Flaws::default() },
            ..with_piece(dark())
        }),
        OverExposed => photo_of(exposed(0.25)),
        Blurred => photo_of(flawed(Flaws { blur_px: 12.0, ..Flaws::default() })),
        UnderExposed => photo_of(with_piece(flat("a", Reflectance::flat(0.0005), [0.0, 60.0]))),
        WetLook => photo_of(with_piece(madder().wetted(WET))),
        LocalToneMapping => photo_of(Scene {
            flaws: Flaws { local_tone: Some(TONE), ..Flaws::default() },
            ..with_piece(dark())
        }),
        UnevenLight => photo_of(Scene { gradient: LAMP, ..with_piece(madder()) }),
        AreaTooSmall => area(&square(50.0, 50.0, 4.0)),
        AreaOutside => area(&square(9000.0, 10.0, 90.0)),
        AreaOnChart => {
            let corners = render(&Scene::default()).truth.chart_corners;
            area(&corners)
        },
        AreaOutline => area(&[[5.0, 5.0], [80.0, 80.0]]),
        ProfileMissing => with_profile(Profile::None),
        ProfileUnusable => with_spoilt_profile(),
        PoorFit => photo_of(with_piece(flat("thumb", skin(0.4), [-60.0, -12.0]))),
        BoardUnread => two_corners_covered(),
    }
    let mut wrong = Vec::new();
    for &code in ALL {
        let flags = flags_up(&case(code));
        let told = flags.iter().find(|(own, _)| *own == code);
        println!("{}: {told:?}", code.as_str());
        if !told.is_some_and(|(_, message)| helps(message)) {
            wrong.push((code, flags));
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}
