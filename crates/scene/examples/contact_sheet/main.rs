//! Writes one JPEG with a grid of small rendered photographs, to see what the
//! reading of photographs is tested with, and prints what stands in each cell.
//!
//! `cargo run -p scene --example contact_sheet -- FILE.jpg [FOLDER]`
//!
//! With a folder, every photograph is written there too, at full size.

mod cells;

use image::{
    DynamicImage, ImageDecoder, RgbImage,
    codecs::jpeg::{JpegDecoder, JpegEncoder},
    imageops::{self, FilterType},
};
use scene::render;
use std::{error::Error, fs, io::Cursor, path::PathBuf, time::Instant};

const COLUMNS: usize = 6;
/// A cell, and the paper between two, px.
const CELL_PX: [u32; 2] = [320, 240];
const GAP_PX: u32 = 6;
const QUALITY: u8 = 82;

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = std::env::args().skip(1);
    let file: PathBuf = arguments
        .next()
        .ok_or("Name the JPEG file to write the contact sheet to.")?
        .into();
    let folder: Option<PathBuf> = arguments.next().map(Into::into);
    if let Some(folder) = &folder {
        fs::create_dir_all(folder)?;
    }
    let cells = cells::cells();
    let step = CELL_PX.map(|side| side + GAP_PX);
    let rows = cells.len().div_ceil(COLUMNS) as u32;
    let [width, height] = [COLUMNS as u32 * step[0], rows * step[1]].map(|side| side + GAP_PX);
    let mut sheet = RgbImage::from_pixel(width, height, image::Rgb([255, 255, 255]));
    println!("| row | column | shows |\n|---|---|---|");
    let begun = Instant::now();
    for (i, (shows, scene)) in cells.iter().enumerate() {
        let jpeg = render(scene).jpeg;
        let (row, column) = (i / COLUMNS, i % COLUMNS);
        println!("| {} | {} | {shows} |", row + 1, column + 1);
        if let Some(folder) = &folder {
            fs::write(
                folder.join(format!("{}-{}.jpg", row + 1, column + 1)),
                &jpeg,
            )?;
        }
        let [x, y] = [column as u32 * step[0], row as u32 * step[1]].map(|at| at + GAP_PX);
        imageops::replace(&mut sheet, &thumbnail(&jpeg)?, x.into(), y.into());
    }
    let each = begun.elapsed().as_secs_f64() / cells.len() as f64;
    eprintln!("{each:.2} s for each photograph");
    let mut bytes = Vec::new();
    JpegEncoder::new_with_quality(&mut bytes, QUALITY).encode_image(&sheet)?;
    fs::write(&file, bytes)?;
    Ok(())
}

/// A photograph set upright and made small.
fn thumbnail(jpeg: &[u8]) -> Result<RgbImage, Box<dyn Error>> {
    let mut decoder = JpegDecoder::new(Cursor::new(jpeg))?;
    let orientation = decoder.orientation()?;
    let mut photo = DynamicImage::from_decoder(decoder)?;
    photo.apply_orientation(orientation);
    let [width, height] = CELL_PX;
    let small = photo.resize_exact(width, height, FilterType::Triangle);
    Ok(small.to_rgb8())
}
