//! The command line's grammar.

use crate::text;
use std::{num::NonZeroUsize, path::PathBuf};

use clap::{Args, Parser, Subcommand, ValueEnum};
use colour::{Lab, View};
use trial::GreyScale;

/// Answers whether a dyed colour lasts, and whether an extra step is worth its price.
///
/// Without a command it serves your own bench on this machine.
#[derive(Debug, Parser)]
#[command(name = "woadstone", version, about, long_about = None)]
pub struct Cli {
    /// Where database and photos live (default: this platform's data folder).
    #[arg(long, global = true, value_name = "DIR")]
    pub home: Option<PathBuf>,
    /// What to do; `serve` when left out.
    #[command(subcommand)]
    pub command: Option<Command>,
}

/// What the program can be asked to do.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Serve the bench as a web app on this machine only.
    Serve(ServeArgs),
    /// Run the invented demo trial from photographs to verdict, then serve it.
    Demo(DemoArgs),
    /// Read colours from a photograph with a 24-patch chart on it.
    Read(ReadArgs),
    /// Grade a change in colour or a stain on the ISO 105 grey scales.
    Grade(GradeArgs),
    /// Colour difference of two colours by every formula.
    Difference(PairArgs),
    /// Decide between arms from a table of readings or of grades judged by eye.
    Decide(DecideArgs),
    /// Print what a plan can show and what it can't tell apart.
    Plan(PlanArgs),
    /// How often a difference is shown, and how many pieces it takes.
    Power(PowerArgs),
    /// Work a recipe out: amounts, baths, run sheet, cautions and cost.
    Bath(BathArgs),
    /// Check a set-up by photos of the same pieces, laid anew between shots.
    SetupCheck(SetupCheckArgs),
    /// Add spectra or Lab values that an instrument measured to a trial.
    AddReadings(AddReadingsArgs),
    /// Add a grade that someone judged by eye with a grey scale to a trial.
    GradeByEye(GradeByEyeArgs),
    /// Draw a board, the sheet on which pieces lie for a photo, to be printed.
    Board(BoardArgs),
    /// Draw the tags of a trial's pieces, to be printed and cut out.
    Tags(TagsArgs),
    /// Write a trial's report as one self-contained page.
    Publish(PublishArgs),
}

/// Arguments of `serve`.
#[derive(Debug, Args, Default)]
pub struct ServeArgs {
    /// Port on the loopback address; 0 takes a free one.
    #[arg(long, default_value_t = 7117)]
    pub port: u16,
}

/// Arguments of `demo`.
#[derive(Debug, Args)]
pub struct DemoArgs {
    /// Port on the loopback address; 0 takes a free one.
    #[arg(long, default_value_t = 0)]
    pub port: u16,
    /// Stop after the report is written, without serving.
    #[arg(long)]
    pub no_serve: bool,
}

/// Arguments of `read`.
#[derive(Debug, Args)]
pub struct ReadArgs {
    /// The photographs, JPEG or PNG, or folders of them.
    #[arg(required = true, value_name = "PHOTO")]
    pub photos: Vec<PathBuf>,
    /// Areas to read in each photo: JSON `[{"id":"P1","polygon":[[x,y],...]}]`, pixels of the
    /// upright photo. Without it, those of NAME.areas.json beside NAME.jpg.
    #[arg(long, value_name = "AREAS.json")]
    pub areas: Option<PathBuf>,
    /// How many photos are read at once; each takes about 3 bytes of memory a pixel, a few
    /// times that where it is a progressive JPEG.
    #[arg(long, default_value = "2", value_name = "N")]
    pub jobs: Jobs,
    /// Outer corners of the patch grid at the brown, the bluish-green, the black and the white patch.
    #[arg(long, value_name = "x,y;x,y;x,y;x,y", value_parser = corners, allow_hyphen_values = true)]
    pub chart_corners: Option<[photo::Point; 4]>,
    /// The chart's own reference values: CGATS text or a CSV, of spectra or Lab.
    #[arg(long, value_name = "FILE")]
    pub chart: Option<PathBuf>,
    /// Bare ground of one colour to read the light from: an outline; may be given several times.
    #[arg(long, value_name = "x,y;x,y;x,y;...", value_parser = outline, allow_hyphen_values = true)]
    pub ground: Vec<Outline>,
    /// Corners of a grey card, for a photo without a chart: differences alone, with wide intervals.
    #[arg(long, value_name = "x,y;x,y;x,y;x,y", value_parser = corners, allow_hyphen_values = true, conflicts_with_all = ["chart", "chart_corners", "ground"], requires = "areas")]
    pub grey_card: Option<[photo::Point; 4]>,
    /// The grey card's reflectance, 0.02 to 1.
    #[arg(long, default_value_t = 0.18, requires = "grey_card")]
    pub card_reflectance: f64,
    /// Light and observer of the answer: D65/10, D65/2, D50/2, A/10 or FL11/10.
    #[arg(long, default_value = "D65/10", value_parser = view)]
    pub view: View,
    /// Print JSON.
    #[arg(long)]
    pub json: bool,
}

/// Corners of an outline, pixels.
#[derive(Debug, Clone)]
pub struct Outline(pub Vec<photo::Point>);

/// How many things are done at once, 1 to 64.
#[derive(Debug, Clone, Copy)]
pub struct Jobs(NonZeroUsize);

impl From<Jobs> for NonZeroUsize {
    fn from(jobs: Jobs) -> Self {
        jobs.0
    }
}

impl std::str::FromStr for Jobs {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let jobs = text.trim().parse().ok().and_then(NonZeroUsize::new);
        jobs.filter(|n| n.get() <= 64)
            .map(Self)
            .ok_or_else(|| text::cli::is_no_number_of_photos_to_read(text))
    }
}

/// Arguments of `bath`.
#[derive(Debug, Args)]
pub struct BathArgs {
    /// The recipe; docs/recipes.md describes the file.
    #[arg(value_name = "RECIPE.toml")]
    pub recipe: PathBuf,
    /// Work it out for another dry weight of goods, as in "2.5 kg", and say what won't scale.
    #[arg(long, value_name = "WEIGHT")]
    pub goods: Option<dyeing::Mass>,
    /// Tell where the dye went, from readings of the spent bath and the rinses; docs/rinses.md describes the file.
    #[arg(long, value_name = "RINSES.toml")]
    pub rinses: Option<PathBuf>,
    /// A rinse is clear when it holds less than this share of the dye, percent.
    #[arg(
        long,
        value_name = "PERCENT",
        default_value_t = 0.1,
        requires = "rinses"
    )]
    pub clear_below: f64,
    /// Print JSON.
    #[arg(long)]
    pub json: bool,
}

/// Which grey scale.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub enum Scale {
    /// Change in colour, ISO 105-A05.
    Fade,
    /// Staining of white cloth, ISO 105-A04.
    Stain,
}

/// Arguments of `plan`.
#[derive(Debug, Args)]
pub struct PlanArgs {
    /// The plan: TOML as docs/plans/README.md describes it.
    #[arg(value_name = "PLAN.toml")]
    pub plan: PathBuf,
    /// Take the plan as an enquiry (question, arms, budget) and print the plan that answers it.
    #[arg(long)]
    pub propose: bool,
    /// Print JSON.
    #[arg(long)]
    pub json: bool,
}

/// Arguments of `power`.
#[derive(Debug, Args)]
pub struct PowerArgs {
    /// Standard deviation of equal pieces, in the margin's unit.
    #[arg(long)]
    pub sd: f64,
    /// The smallest difference that matters.
    #[arg(long)]
    pub margin: f64,
    /// Pieces in each arm.
    #[arg(long)]
    pub pieces: usize,
    /// Arms.
    #[arg(long, default_value_t = 2)]
    pub arms: usize,
    /// Print JSON.
    #[arg(long)]
    pub json: bool,
}

/// Arguments of `grade`.
#[derive(Debug, Args)]
pub struct GradeArgs {
    /// Which scale.
    pub scale: Scale,
    /// The two colours, before first.
    #[command(flatten)]
    pub pair: PairArgs,
}

/// Two colours.
#[derive(Debug, Args)]
pub struct PairArgs {
    /// The first colour (before, unstained, reference).
    #[arg(value_name = "L,a,b", value_parser = lab, allow_hyphen_values = true)]
    pub first: Lab,
    /// The second colour (after, stained, test).
    #[arg(value_name = "L,a,b", value_parser = lab, allow_hyphen_values = true)]
    pub second: Lab,
    /// Print JSON.
    #[arg(long)]
    pub json: bool,
}

/// Arguments of `decide`.
#[derive(Debug, Args)]
pub struct DecideArgs {
    /// Table with the columns arm,piece,role,load,stage,L,a,b; or, judged by eye, with judge,grade
    /// instead of L,a,b.
    pub readings: PathBuf,
    /// The smallest difference that matters, CIEDE2000.
    #[arg(long, value_parser = margin, allow_hyphen_values = true)]
    pub margin: f64,
    /// Print JSON.
    #[arg(long)]
    pub json: bool,
}

/// Arguments of `setup-check`.
#[derive(Debug, Args)]
pub struct SetupCheckArgs {
    /// Three photographs or more of the same pieces beside the chart.
    #[arg(required = true, value_name = "PHOTO")]
    pub photos: Vec<PathBuf>,
    /// Where the pieces lie, as for `read`: one file for all photos, or one for each in their order.
    #[arg(long, value_name = "AREAS.json")]
    pub areas: Vec<PathBuf>,
    /// Keep the check on the bench under this name of the set-up.
    #[arg(long)]
    pub name: Option<String>,
    /// Print JSON.
    #[arg(long)]
    pub json: bool,
}

/// Arguments of `add-readings`.
#[derive(Debug, Args)]
pub struct AddReadingsArgs {
    /// The trial's short name, as in its page's address.
    pub trial: String,
    /// CGATS text or CSV of spectra or Lab; the samples' names are the pieces' codes.
    pub file: PathBuf,
    /// How many rounds the pieces had been through.
    #[arg(long, value_name = "ROUNDS")]
    pub stage: u32,
    /// Who measured.
    #[arg(long, default_value = "")]
    pub by: String,
    /// When it was measured.
    #[arg(long, default_value = "")]
    pub on: String,
    /// With what, in words; the file's own word where left out.
    #[arg(long, default_value = "")]
    pub instrument: String,
    /// Light and observer of Lab values where the file doesn't say.
    #[arg(long, default_value = "D65/10", value_parser = view)]
    pub view: View,
    /// CIELAB distance of repeat measurements from their mean.
    #[arg(long, value_name = "DE", default_value_t = trial::USUAL_REPEATABILITY_DE)]
    pub repeatability: f64,
    /// Only show what would be added.
    #[arg(long)]
    pub dry_run: bool,
}

/// Arguments of `grade-by-eye`.
#[derive(Debug, Args)]
pub struct GradeByEyeArgs {
    /// The trial's short name, as in its page's address.
    pub trial: String,
    /// Code of the piece.
    pub piece: String,
    /// The grade: 5, 4-5, 4, ... 1.
    pub grade: String,
    /// How many rounds the piece had been through.
    #[arg(long, value_name = "ROUNDS")]
    pub stage: u32,
    /// The grey scale: change or staining.
    #[arg(long, default_value = "change")]
    pub scale: GreyScale,
    /// Code of the keeper or other piece it was judged against; its own original where left out.
    #[arg(long, value_name = "PIECE")]
    pub against: Option<String>,
    /// Who judged.
    #[arg(long)]
    pub by: String,
    /// Under which light.
    #[arg(long)]
    pub light: String,
    /// When it was judged.
    #[arg(long, default_value = "")]
    pub on: String,
    /// Anything else.
    #[arg(long, default_value = "")]
    pub remark: String,
}

/// Arguments of `publish`.
#[derive(Debug, Args)]
pub struct PublishArgs {
    /// The trial's short name, as in its page's address.
    pub trial: String,
    /// Where to write the page.
    #[arg(short, long, value_name = "report.html")]
    pub output: PathBuf,
}

/// Arguments of `board`.
#[derive(Debug, Args)]
pub struct BoardArgs {
    /// How many windows for pieces.
    #[arg(long, default_value = "6", value_parser = ["6", "12"])]
    pub windows: String,
    /// The paper.
    #[arg(long, value_enum, default_value_t)]
    pub paper: PaperName,
    /// Print the trial's short name into the corner codes.
    #[arg(long)]
    pub trial: Option<String>,
    /// Print the stage, rounds gone through, into the corner codes.
    #[arg(long)]
    pub stage: Option<u32>,
    /// Write the drawing alone (SVG) instead of a page to print (HTML).
    #[arg(long)]
    pub svg: bool,
    /// Where to write it; else it goes to standard output.
    #[arg(short, long, value_name = "FILE")]
    pub out: Option<PathBuf>,
}

/// Arguments of `tags`.
#[derive(Debug, Args)]
pub struct TagsArgs {
    /// The trial's short name, as in its page's address.
    pub trial: String,
    /// The paper.
    #[arg(long, value_enum, default_value_t)]
    pub paper: PaperName,
    /// Where to write the page; else it goes to standard output.
    #[arg(short, long, value_name = "FILE")]
    pub out: Option<PathBuf>,
}

/// Paper as the command line names it.
#[derive(Debug, Clone, Copy, Default, ValueEnum)]
pub enum PaperName {
    /// 210 x 297 mm.
    #[default]
    A4,
    /// 8.5 x 11 inches.
    Letter,
}

impl From<PaperName> for photo::board::Paper {
    fn from(name: PaperName) -> Self {
        match name {
            PaperName::A4 => Self::A4,
            PaperName::Letter => Self::Letter,
        }
    }
}

fn numbers<const N: usize>(text: &str, what: &str) -> Result<[f64; N], String> {
    let values: Vec<f64> = text
        .split(',')
        .map(|part| part.trim().parse::<f64>())
        .collect::<Result<_, _>>()
        .map_err(|_| format!("\"{text}\" is not {what}"))?;
    let values: [f64; N] = values
        .try_into()
        .map_err(|_| format!("\"{text}\" is not {what}"))?;
    if values.iter().all(|v| v.is_finite()) {
        Ok(values)
    } else {
        Err(format!("\"{text}\" holds a number without an end"))
    }
}

fn lab(text: &str) -> Result<Lab, String> {
    let lab: Lab = numbers(text, "a colour: write L,a,b as in 52.3,-28.4,-24.8")?.into();
    if !(0.0..=100.0).contains(&lab.l) {
        return Err(format!("L* is {}, but lightness goes from 0 to 100", lab.l));
    }
    if lab.a.abs() > 200.0 || lab.b.abs() > 200.0 {
        return Err(format!(
            "a* {} and b* {}: no surface lies further than 200 from grey",
            lab.a, lab.b
        ));
    }
    Ok(lab)
}

fn points(text: &str) -> Result<Vec<photo::Point>, String> {
    text.split(';')
        .map(|point| numbers(point, "a point: write x,y in pixels"))
        .collect()
}

fn outline(text: &str) -> Result<Outline, String> {
    let points = points(text)?;
    if points.len() < 3 {
        return Err(format!("\"{text}\" doesn't hold three points or more"));
    }
    Ok(Outline(points))
}

fn corners(text: &str) -> Result<[photo::Point; 4], String> {
    points(text)?
        .try_into()
        .map_err(|_| format!("\"{text}\" doesn't hold four points x,y;x,y;x,y;x,y"))
}

fn view(text: &str) -> Result<View, String> {
    text.parse().map_err(|e: colour::ColourError| e.to_string())
}

fn margin(text: &str) -> Result<f64, String> {
    match text.trim().parse::<f64>() {
        Ok(value) if value > 0.0 && value.is_finite() => Ok(value),
        _ => Err(format!(
            "the margin \"{text}\" has to be a number above zero, such as 1.0"
        )),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use clap::CommandFactory;

    #[test]
    fn the_grammar_is_sound() {
        Cli::command().debug_assert();
    }

    #[test]
    fn colours_are_read_and_nonsense_is_named() {
        assert_eq!(
            lab("52.3, -28.4,-24").unwrap(),
            Lab::new(52.3, -28.4, -24.0)
        );
        for wrong in [
            "", "52", "52,1", "52,1,2,3", "a,b,c", "nan,0,0", "101,0,0", "50,900,0",
        ] {
            assert!(lab(wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn corners_want_four_points() {
        assert!(corners("0,0;10,0;10,8;0,8").is_ok());
        assert!(corners("0,0;10,0;10,8").is_err());
        assert!(outline("0,0;10,0;10,8").is_ok());
        assert!(outline("0,0;10,0").is_err());
    }
}
