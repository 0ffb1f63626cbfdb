//! The photograph: does it show what the truth says?

use crate::decode::{mean_about, upright};
use colour::{Spectrum, View};
use scene::{
    Background, Dye, Flaws, Gradient, Light, Piece, Reflectance, Scene, Texture, Truth, Viewpoint,
    WhiteBalance, chart_spectra, linen, render, wool,
};

fn pieces() -> Vec<Piece> {
    Piece::rows([
        ("red", Dye::madder().on(&wool(), 1.0)),
        ("yellow", Dye::weld().on(&linen(), 1.0)),
        ("blue", Dye::indigo().on(&wool(), 0.5)),
    ])
}

/// Straight from above, evenly lit, perfectly balanced.
fn plain() -> Scene {
    Scene {
        width_px: 800,
        height_px: 600,
        pieces: pieces(),
        gradient: Gradient {
            share: 0.0,
            towards_deg: 0.0,
        },
        white_balance: WhiteBalance {
            red: 1.0,
            blue: 1.0,
        },
        viewpoint: Viewpoint {
            tilt_deg: 0.0,
            ..Viewpoint::default()
        },
        ..Scene::default()
    }
}

/// The middle of a patch, by its place between the chart's corners, in a photo
/// without tilt.
fn patch_middle(truth: &Truth, patch: usize) -> [f64; 2] {
    let [brown, green, _, white] = truth.chart_corners;
    let across = (10.0 + 23.0 * (patch % 6) as f64) / 135.0;
    let down = (10.0 + 23.0 * (patch / 6) as f64) / 89.0;
    [0, 1].map(|k| brown[k] + across * (green[k] - brown[k]) + down * (white[k] - brown[k]))
}

/// Source: published (the chart's spectra, and IEC 61966-2-1 for what sRGB they are).
#[test]
fn patches_stand_where_the_truth_says_in_about_their_colour() {
    let rendered = render(&plain());
    let image = upright(&rendered.jpeg);
    for (i, patch) in chart_spectra().iter().enumerate() {
        let xyz = Spectrum::new(380.0, 10.0, patch.0.to_vec())
            .unwrap()
            .xyz(View::D65_2);
        let wanted = [
            3.2406 * xyz.x - 1.5372 * xyz.y - 0.4986 * xyz.z,
            -0.9689 * xyz.x + 1.8758 * xyz.y + 0.0415 * xyz.z,
            0.0557 * xyz.x - 0.2040 * xyz.y + 1.0570 * xyz.z,
        ];
        let seen = mean_about(&image, patch_middle(&rendered.truth, i), 8);
        for k in 0..3 {
            let wanted = (0.88 * wanted[k] / 100.0).max(0.0);
            assert!(
                (seen[k] - wanted).abs() < 0.05,
                "{i} {k}: {} {wanted}",
                seen[k]
            );
        }
    }
}

#[test]
fn relief_leaves_the_mean_of_a_piece_alone() {
    let flat = Scene {
        pieces: pieces()
            .into_iter()
            .map(|piece| piece.with_texture(Texture::FLAT))
            .collect(),
        ..plain()
    };
    let (flat, woven) = (render(&flat), render(&plain()));
    let (flat_image, woven_image) = (upright(&flat.jpeg), upright(&woven.jpeg));
    for piece in &woven.truth.pieces {
        let middle = [0, 1].map(|k| piece.polygon.iter().map(|p| p[k]).sum::<f64>() / 4.0);
        let a = mean_about(&flat_image, middle, 30);
        let b = mean_about(&woven_image, middle, 30);
        for k in 0..3 {
            assert!((a[k] - b[k]).abs() < 0.004 + 0.01 * a[k], "{a:?} {b:?}");
        }
    }
}

#[test]
fn light_falls_off_as_asked() {
    let scene = Scene {
        chart: None,
        pieces: Vec::new(),
        background: Background::plain(Reflectance::flat(0.5)),
        gradient: Gradient {
            share: 0.15,
            towards_deg: 90.0,
        },
        ..plain()
    };
    let rendered = render(&scene);
    assert_eq!(rendered.truth.chart_corners, [[0.0; 2]; 4]);
    let image = upright(&rendered.jpeg);
    let [top, bottom] = [20.0, 580.0].map(|y| mean_about(&image, [400.0, y], 15)[1]);
    let expected = 0.88 * 0.5 * 0.15 * 560.0 / 600.0;
    assert!((bottom - top - expected).abs() < 0.003, "{top} {bottom}");
}

#[test]
fn the_same_seed_gives_the_same_photo() {
    let scene = |seed| Scene {
        width_px: 320,
        height_px: 240,
        ..Scene::varied(seed, pieces())
    };
    assert_eq!(render(&scene(5)), render(&scene(5)));
    assert_ne!(render(&scene(5)).jpeg, render(&scene(9)).jpeg);
}

#[test]
fn varied_scenes_keep_everything_in_the_photo() {
    let mut lights = [0; 4];
    for seed in 0..40 {
        let scene = Scene {
            width_px: 160,
            height_px: 120,
            ..Scene::varied(seed, pieces())
        };
        assert!(scene.viewpoint.tilt_deg <= 15.0);
        let light = [Light::D65, Light::D50, Light::Fl2, Light::Led]
            .iter()
            .position(|light| *light == scene.light);
        lights[light.unwrap()] += 1;
        let truth = render(&scene).truth;
        let areas = truth.pieces.iter().flat_map(|piece| &piece.polygon);
        for [x, y] in areas.chain(&truth.chart_corners) {
            assert!(
                (0.0..160.0).contains(x) && (0.0..120.0).contains(y),
                "{seed}"
            );
        }
    }
    assert_eq!(lights, [10; 4]);
}

#[test]
fn flaws_show() {
    let clean = render(&plain());
    let flawed = |flaws| render(&Scene { flaws, ..plain() });
    let winding = |truth: &Truth| {
        let [a, b, _, d] = truth.chart_corners;
        (b[0] - a[0]) * (d[1] - a[1]) - (b[1] - a[1]) * (d[0] - a[0])
    };
    let mirrored = flawed(Flaws {
        mirrored: true,
        ..Flaws::default()
    });
    assert!(winding(&clean.truth) > 0.0 && winding(&mirrored.truth) < 0.0);
    let grey = flawed(Flaws {
        greyscale: true,
        ..Flaws::default()
    });
    let coloured = upright(&grey.jpeg)
        .pixels()
        .filter(|pixel| {
            pixel.0[0]
                .abs_diff(pixel.0[1])
                .max(pixel.0[1].abs_diff(pixel.0[2]))
                > 3
        })
        .count();
    assert_eq!(coloured, 0);
    let blurred = flawed(Flaws {
        blur_px: 4.0,
        ..Flaws::default()
    });
    assert!(blurred.jpeg.len() < clean.jpeg.len());
}

#[test]
fn exposure_doubles_by_the_stop() {
    let darker = Scene {
        exposure_stops: -1.0,
        ..plain()
    };
    let (full, half) = (render(&plain()), render(&darker));
    let white = |rendered: &scene::Rendered| {
        mean_about(
            &upright(&rendered.jpeg),
            patch_middle(&rendered.truth, 18),
            8,
        )[1]
    };
    assert!((white(&full) / white(&half) - 2.0).abs() < 0.05);
}
