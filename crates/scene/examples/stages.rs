//! Photos for tests in a browser, with where everything lies on them.
//!
//! `cargo run -p scene --example stages -- FOLDER` writes a folded piece before and
//! after it took up another dye (`parts-0.jpg`, `parts-3.jpg`), and a chart that
//! nobody sells with its values (`own-chart.jpg`, `own-chart.csv`); beside each photo
//! the outline of its piece (`parts-0.txt`, ...), as the app's form takes it. `whole-0.jpg`,
//! `whole-2.jpg` and `whole-5.jpg` show two arms of four test pieces and a keeper from before the
//! first round to after five of them, of which the first arm fades; `whole-0.txt` and so on have
//! a line for each piece: `A1 x,y x,y ...`.

use scene::{
    Background, Dye, Piece, Reflectance, Rendered, Resist, ResistDyed, Scene, Texture, Viewpoint,
    cotton, render,
};
use std::{env, error::Error, fs, path::Path};

/// A folded piece whose pale part has taken up `stain` of another dye.
fn folded(stain: f64) -> Scene {
    let deep = Dye::madder().on(&cotton(), 0.9);
    let resist = ResistDyed {
        pattern: Resist::Folds,
        pale: Dye::weld().on(&cotton(), stain),
        deep: deep.clone(),
        deep_share: 0.6,
        border_mm: 1.0,
        pitch_mm: 13.0,
        seed: 4,
    };
    let rows = Piece::rows([("P1", deep.clone()), ("P2", deep)]);
    let lay = |(i, piece): (usize, Piece)| {
        if i == 0 {
            piece.resisted(resist.clone())
        } else {
            piece
        }
    };
    Scene {
        width_px: 1600,
        height_px: 1200,
        pieces: rows.into_iter().enumerate().map(lay).collect(),
        ..Scene::default()
    }
}

/// Share of the dye that is left on the first and on the second arm after rounds of washing.
const LEFT: [(u32, [f64; 2]); 3] = [(0, [1.0, 1.0]), (2, [0.78, 0.985]), (5, [0.62, 0.97])];

/// Two arms, `A` and `B`, each of four test pieces and a keeper `K`, with `left` of their dye.
fn arms(left: [f64; 2]) -> Scene {
    // Dyed a little unevenly, otherwise in each arm.
    let uneven = [0.004, -0.006, 0.009, -0.003, 0.0];
    let cloths = ["A", "B"].iter().zip(left).enumerate();
    let cloths: Vec<(String, Reflectance)> = cloths
        .flat_map(|(arm, (letter, left))| {
            ["1", "2", "3", "4", "K"]
                .iter()
                .enumerate()
                .map(move |(k, number)| {
                    let left = if *number == "K" { 1.0 } else { left };
                    let depth = 0.9 * left * (1.0 + uneven[(k + 2 * arm) % uneven.len()]);
                    let cloth = Dye::madder().on(&cotton(), depth);
                    (format!("{letter}{number}"), cloth)
                })
        })
        .collect();
    Scene {
        width_px: 1600,
        height_px: 1200,
        pieces: Piece::rows(
            cloths
                .iter()
                .map(|(id, cloth)| (id.as_str(), cloth.clone())),
        ),
        ..Scene::default()
    }
}

/// The columns of the chart that nobody sells.
const COLUMNS: usize = 5;

/// Its patches, row by row: colours, and greys in the last row.
fn patches() -> Vec<Reflectance> {
    let colour = |k: usize| {
        // Steps of the golden ratio never come back to the same place.
        let [peak, height, base] = [0.618, 0.755, 0.57].map(|step| (step * k as f64).fract());
        Reflectance::from_fn(move |nm| {
            let off = (nm - 400.0 - 300.0 * peak) / 55.0;
            0.04 + 0.25 * base * base + (0.2 + 0.5 * height) * (-0.5 * off * off).exp()
        })
    };
    let grey = |k: usize| Reflectance::flat(0.9 * 0.03_f64.powf(k as f64 / 4.0));
    (0..15).map(colour).chain((0..COLUMNS).map(grey)).collect()
}

/// The chart on black card, a piece below it.
fn own_chart(patches: &[Reflectance]) -> Scene {
    let rows = patches.len() / COLUMNS;
    let patch = |(k, colour): (usize, &Reflectance)| {
        let at = [(k % COLUMNS, COLUMNS), (k / COLUMNS, rows)]
            .map(|(n, of)| 23.0 * (n as f64 - (of as f64 - 1.0) / 2.0));
        Piece::square(&k.to_string(), colour.clone(), at, 20.0).with_texture(Texture::FLAT)
    };
    let cloth = Piece::square("P1", Dye::madder().on(&cotton(), 0.7), [0.0, 90.0], 45.0);
    Scene {
        pieces: patches
            .iter()
            .enumerate()
            .map(patch)
            .chain([cloth])
            .collect(),
        chart: None,
        background: Background::plain(Reflectance::flat(0.04)),
        viewpoint: Viewpoint {
            fill: 0.7,
            ..Viewpoint::default()
        },
        ..Scene::default()
    }
}

/// The values of the chart's patches as a CSV of Lab.
fn table(patches: &[Reflectance]) -> String {
    let head = format!(
        "# rows {} columns {COLUMNS}\npatch,L,a,b,view\n",
        patches.len() / COLUMNS
    );
    let row = |(k, colour): (usize, &Reflectance)| {
        let [l, a, b] = colour.lab_d65_10();
        format!("p{k},{l:.2},{a:.2},{b:.2},D65/10\n")
    };
    head + &patches.iter().enumerate().map(row).collect::<String>()
}

/// An outline as the app's form takes it.
fn outline(polygon: &[[f64; 2]]) -> String {
    let corners: Vec<String> = polygon
        .iter()
        .map(|[x, y]| format!("{x:.0},{y:.0}"))
        .collect();
    corners.join(" ")
}

fn keep(folder: &Path, name: &str, photo: &Rendered) -> Result<(), Box<dyn Error>> {
    fs::write(folder.join(format!("{name}.jpg")), &photo.jpeg)?;
    let piece = photo.truth.pieces.iter().find(|piece| piece.id == "P1");
    let piece = piece.ok_or("the scene has no piece P1")?;
    fs::write(folder.join(format!("{name}.txt")), outline(&piece.polygon))?;
    Ok(())
}

fn main() -> Result<(), Box<dyn Error>> {
    let folder = env::args().nth(1).ok_or("name a folder to write to")?;
    let folder = Path::new(&folder);
    fs::create_dir_all(folder)?;
    keep(folder, "parts-0", &render(&folded(0.0)))?;
    keep(folder, "parts-3", &render(&folded(0.25)))?;
    for (round, left) in LEFT {
        let photo = render(&arms(left));
        let pieces = photo.truth.pieces.iter();
        let lines: String = pieces
            .map(|piece| format!("{} {}\n", piece.id, outline(&piece.polygon)))
            .collect();
        fs::write(folder.join(format!("whole-{round}.jpg")), &photo.jpeg)?;
        fs::write(folder.join(format!("whole-{round}.txt")), lines)?;
    }
    let patches = patches();
    keep(folder, "own-chart", &render(&own_chart(&patches)))?;
    fs::write(folder.join("own-chart.csv"), table(&patches))?;
    Ok(())
}
