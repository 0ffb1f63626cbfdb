//! What each cell of the contact sheet shows.

use scene::{
    Background, Bend, Camera, Difficulty, Dye, Flaws, Glare, Hand, Light, LocalTone, NearLamp,
    Optics, Piece, Reflectance, Resist, ResistDyed, Scene, SecondLight, Shadow, Texture, Tone, Wet,
    bleached_cotton, cotton, hemp, linen, silk, skin, wool,
};

/// Every cell from left to right, row by row.
pub fn cells() -> Vec<(String, Scene)> {
    let mut cells = Vec::new();
    for (difficulty, name, count) in [
        (Difficulty::Easy, "easy", 2),
        (Difficulty::Medium, "medium", 3),
        (Difficulty::Hard, "hard", 5),
    ] {
        for seed in 1..=count {
            let scene = Scene::wild(seed, difficulty, pieces());
            let relaid = scene.relaid(1);
            cells.push((told(&format!("{name}, seed {seed}"), &scene), scene));
            if seed == count && difficulty != Difficulty::Easy {
                cells.push((told("the same, laid anew", &relaid), relaid));
            }
        }
    }
    cells.extend(lamps());
    cells.extend(flaws());
    cells
}

fn told(name: &str, scene: &Scene) -> String {
    let light = match &scene.light {
        Light::Daylight { kelvin } => format!("daylight of {kelvin:.0} K"),
        Light::WhiteDiode { kelvin } => format!("white diode of {kelvin:.0} K"),
        Light::ThreeBand => "three-band lamp".to_owned(),
        Light::RgbDiodes => "red, green and blue diodes".to_owned(),
        Light::Mixed(_) => "window and lamp".to_owned(),
        Light::A => "incandescent lamp".to_owned(),
        Light::Fl2 => "fluorescent lamp".to_owned(),
        other => format!("{other:?}"),
    };
    format!("{name}: {light}")
}

/// Twelve dyes on six cloths.
fn pieces() -> Vec<Piece> {
    let cloths = [wool(), linen(), cotton(), silk(), hemp(), bleached_cotton()];
    let shade = |(i, dye): (usize, &Dye)| (dye.name.clone(), dye.on(&cloths[i % 6], 0.8));
    let shades: Vec<_> = Dye::wide().iter().enumerate().map(shade).collect();
    let mut pieces = Piece::rows(shades.iter().map(|(id, r)| (id.as_str(), r.clone())));
    for piece in pieces.iter_mut().step_by(3) {
        piece.texture = Texture::KNIT;
    }
    pieces
}

fn calm() -> Scene {
    Scene {
        pieces: pieces(),
        ..Scene::default()
    }
}

/// Pieces under lamps that show few wavelengths, and the patterns of resists.
fn lamps() -> Vec<(String, Scene)> {
    let under = |light: Light| Scene { light, ..calm() };
    let warm = Scene {
        white_balance: scene::WhiteBalance {
            red: 1.08,
            blue: 0.86,
        },
        ..under(Light::WhiteDiode { kelvin: 2700.0 })
    };
    let resists = [Resist::Stripes, Resist::Rings, Resist::Spots, Resist::Folds];
    let dyes = Dye::wide();
    let resisted = |(i, pattern): (usize, Resist)| {
        let x = 66.0 * (i as f64 - 1.5);
        let dye = &dyes[[2, 5, 7, 0][i]];
        Piece::square("resist", cotton(), [x, 45.0], 60.0).resisted(ResistDyed {
            pattern,
            pale: dye.on(&cotton(), 0.05),
            deep: dye.on(&cotton(), 1.0),
            deep_share: 0.55,
            border_mm: 2.0 + i as f64,
            pitch_mm: 15.0,
            seed: i as u64,
        })
    };
    let patterns = Scene {
        pieces: resists.into_iter().enumerate().map(resisted).collect(),
        ..calm()
    };
    let wet = Wet {
        soaked: 0.9,
        sparkle_share: 0.06,
        strength: 0.35,
    };
    let soaked = Scene {
        pieces: pieces()
            .into_iter()
            .map(|piece| piece.wetted(wet))
            .collect(),
        ..calm()
    };
    vec![
        (
            "resist-dyed: stripes, rings, spots, folds".to_owned(),
            patterns,
        ),
        ("wet pieces".to_owned(), soaked),
        ("a white diode of 2700 K, balanced badly".to_owned(), warm),
        ("a three-band lamp".to_owned(), under(Light::ThreeBand)),
    ]
}

fn flaws() -> Vec<(String, Scene)> {
    let flawed = |flaws| Scene { flaws, ..calm() };
    let by = |optics| Scene {
        camera: Camera {
            optics,
            ..Camera::phone()
        },
        background: Background::Checks,
        ..calm()
    };
    let second_light = flawed(Flaws {
        second_light: Some(SecondLight {
            light: Light::A,
            shares: [0.0, 0.8],
            towards_deg: 20.0,
        }),
        ..Flaws::default()
    });
    let near_lamp = flawed(Flaws {
        near_lamp: Some(NearLamp {
            at_mm: [-140.0, -80.0],
            height_mm: 350.0,
        }),
        ..Flaws::default()
    });
    let shadow = flawed(Flaws {
        shadow: Some(Shadow {
            through_mm: [40.0, 20.0],
            towards_deg: 40.0,
            soft_mm: 60.0,
            depth: 0.4,
        }),
        ..Flaws::default()
    });
    let local_tone = Scene {
        background: Background::plain(Reflectance::flat(0.85)),
        ..flawed(Flaws {
            local_tone: Some(LocalTone {
                strength: 0.3,
                reach: 0.07,
            }),
            ..Flaws::default()
        })
    };
    let lens = by(Optics {
        vignette: 0.35,
        barrel: 0.06,
        ..Optics::default()
    });
    let sharp = by(Optics {
        sharpening: 1.2,
        colour_smoothing_px: 3,
        ..Optics::default()
    });
    let hand = |at, towards_deg, dark| Hand {
        at,
        towards_deg,
        reach: 0.06,
        palm: 0.24,
        skin: skin(dark),
    };
    let hands = Scene {
        background: Background::Knit(Box::new(Dye::wide()[6].on(&wool(), 0.6))),
        ..flawed(Flaws {
            hands: vec![hand([0.15, 1.0], 275.0, 0.1), hand([0.8, 0.0], 80.0, 0.8)],
            ..Flaws::default()
        })
    };
    let glare = Scene {
        background: Background::DarkWood,
        camera: Camera {
            tone: Tone::Bent(Bend {
                contrast: 0.5,
                shoulder: 0.4,
                lift: 0.05,
                channels: [0.02, 0.0, -0.03],
            }),
            ..Camera::drawn(4)
        },
        ..flawed(Flaws {
            glare: Some(Glare {
                at_mm: [60.0, 40.0],
                radius_mm: 35.0,
                strength: 0.6,
            }),
            ..Flaws::default()
        })
    };
    [
        (
            "a second light towards the right: daylight and a lamp",
            second_light,
        ),
        ("a near lamp", near_lamp),
        ("the edge of a shadow", shadow),
        ("local tone mapping", local_tone),
        ("dark corners and bent lines, on checks", lens),
        ("sharpened edges and smoothed colour, on checks", sharp),
        ("hands, on a knitted blanket", hands),
        (
            "a shine, strong tones with lifted blacks, on dark wood",
            glare,
        ),
    ]
    .map(|(name, scene)| (name.to_owned(), scene))
    .into()
}
