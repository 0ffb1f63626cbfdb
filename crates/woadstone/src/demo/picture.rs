//! The demo's photographs, rendered from what is truly so on its pieces.

use scene::{
    Background, Camera, Cloth, Dye, Gradient, Jpeg, Light, Piece, Profile, Reflectance, Rendered,
    Scene, Texture, Viewpoint, WhiteBalance, linen, render,
};

use super::scenario::{DemoArm, PIECES_PER_ARM};

/// Depth of shade to which every napkin was dyed.
const DEPTH: f64 = 0.85;
/// How much depth differs from napkin to napkin, as offsets of a share of it.
const UNEVEN: [f64; 5] = [0.004, -0.009, 0.011, -0.006, 0.002];

/// The photograph of an arm's napkins, their keeper and their witness cloth after `stage` rounds.
///
/// Each stage has a light, a place of the camera and an exposure of its own, as
/// it comes in a kitchen by the window.
pub fn take(arm: &DemoArm, stage: u32) -> Rendered {
    let keeper = (arm.keeper(), napkin(arm, 0, 0));
    let tests = (1..=PIECES_PER_ARM).map(|i| (arm.test_piece(i), napkin(arm, i, stage)));
    let caught = brick_red().on(&linen(), DEPTH * arm.caught(stage));
    let witness = (arm.witness(), caught);
    let cloths: Vec<(String, Reflectance)> =
        [keeper].into_iter().chain(tests).chain([witness]).collect();
    let pieces = Piece::rows(cloths.iter().map(|(code, r)| (code.as_str(), r.clone())));
    let weave = Texture {
        cloth: Cloth::Weave,
        pitch_mm: 0.9,
        contrast: 0.14,
    };
    render(&Scene {
        pieces: pieces.into_iter().map(|p| p.with_texture(weave)).collect(),
        ..setting(arm.letter, stage)
    })
}

/// The colour of napkin `index` of an arm (0 is its keeper) after `rounds`.
fn napkin(arm: &DemoArm, index: usize, rounds: u32) -> Reflectance {
    // Which offset a napkin has runs on from arm to arm, so that no two arms
    // are dyed in step.
    let offset = UNEVEN[(index * 2 + arm.letter as usize) % UNEVEN.len()];
    let left = if index == 0 {
        1.0
    } else {
        arm.retained(rounds)
    };
    brick_red().on(&linen(), DEPTH * (1.0 + offset) * left)
}

/// An invented brick-red dye.
fn brick_red() -> Dye {
    Dye::new(
        "brick red",
        &[(500.0, 48.0, 5.4), (420.0, 45.0, 3.1), (560.0, 20.0, 1.3)],
    )
}

/// Everything of a photograph but the napkins.
fn setting(letter: char, stage: u32) -> Scene {
    let turn = f64::from(stage) + f64::from(letter as u32 - 'A' as u32) / 3.0;
    Scene {
        background: Background::Paper,
        light: if stage == 3 { Light::D50 } else { Light::D65 },
        gradient: Gradient {
            share: 0.05 + 0.01 * turn,
            towards_deg: 200.0 + 25.0 * turn,
        },
        viewpoint: Viewpoint {
            tilt_deg: 3.0 + turn,
            turn_deg: 2.0 * turn - 5.0,
            ..Viewpoint::default()
        },
        camera: Camera::plain(),
        white_balance: WhiteBalance {
            red: 1.0 + 0.008 * turn,
            blue: 1.0 - 0.006 * turn,
        },
        exposure_stops: -0.12 + 0.03 * turn,
        jpeg: Jpeg {
            profile: Profile::Srgb,
            ..Jpeg::default()
        },
        seed: 100 * u64::from(stage) + u64::from(letter as u32),
        ..Scene::default()
    }
}
