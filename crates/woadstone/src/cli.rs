//! The command line's grammar.

use crate::text;
use std::{num::NonZeroUsize, path::PathBuf, str::FromStr};

use clap::{Args, Parser, Subcommand, ValueEnum};
use colour::{Lab, View};
use trial::GreyScale;

/// The whole command line; without a command it serves the bench.
#[derive(Debug, Parser)]
#[command(name = "woadstone", version, about = text::cli::answers_whether_a_dyed_colour_lasts(), after_help = text::cli::without_a_command_it_serves())]
pub struct Cli {
    #[arg(help = text::cli::where_database_and_photos_live_default(), long, global = true, value_name = "DIR")]
    pub home: Option<PathBuf>,
    /// What to do; `serve` when left out.
    #[command(subcommand)]
    pub command: Option<Command>,
}

/// What the program can be asked to do.
#[derive(Debug, Subcommand)]
pub enum Command {
    #[command(about = text::cli::serve_the_bench_as_a_web_app())]
    Serve(ServeArgs),
    #[command(about = text::cli::run_the_invented_demo_trial_from())]
    Demo(DemoArgs),
    #[command(about = text::cli::read_colours_from_a_photograph())]
    Read(ReadArgs),
    #[command(about = text::cli::grade_a_change_in_colour())]
    Grade(GradeArgs),
    #[command(about = text::cli::colour_difference_of_two_colours_by())]
    Difference(PairArgs),
    #[command(about = text::cli::decide_between_arms_from_a_table())]
    Decide(DecideArgs),
    #[command(about = text::cli::print_what_a_plan_can_show())]
    Plan(PlanArgs),
    #[command(about = text::cli::how_often_a_difference_is_shown())]
    Power(PowerArgs),
    #[command(about = text::cli::work_a_recipe_out_amounts_baths_run())]
    Bath(BathArgs),
    #[command(about = text::cli::check_a_set_up_by_photos())]
    SetupCheck(SetupCheckArgs),
    #[command(about = text::cli::add_spectra_or_lab_values())]
    AddReadings(AddReadingsArgs),
    #[command(about = text::cli::add_a_grade_that_someone_judged())]
    GradeByEye(GradeByEyeArgs),
    #[command(about = text::cli::draw_a_board_the_sheet())]
    Board(BoardArgs),
    #[command(about = text::cli::draw_the_tags_of_a_trials_pieces())]
    Tags(TagsArgs),
    #[command(about = text::cli::write_a_trials_report_as_one_self())]
    Publish(PublishArgs),
}

/// Arguments of `serve`.
#[derive(Debug, Args, Default)]
pub struct ServeArgs {
    #[arg(help = text::cli::port_on_the_loopback_address_0_takes(), long, default_value_t = 7117, value_parser = whole::<u16>)]
    pub port: u16,
}

/// Arguments of `demo`.
#[derive(Debug, Args)]
pub struct DemoArgs {
    #[arg(help = text::cli::port_on_the_loopback_address_0_takes(), long, default_value_t = 0, value_parser = whole::<u16>)]
    pub port: u16,
    #[arg(help = text::cli::stop_after_the_report_is_written_without(), long)]
    pub no_serve: bool,
}

/// Arguments of `read`.
#[derive(Debug, Args)]
pub struct ReadArgs {
    #[arg(help = text::cli::the_photographs_jpeg_or_png_or_folders(), required = true, value_name = "PHOTO")]
    pub photos: Vec<PathBuf>,
    #[arg(help = text::cli::areas_to_read_in_each_photo_json(), long, value_name = "AREAS.json")]
    pub areas: Option<PathBuf>,
    #[arg(help = text::cli::how_many_photos_are_read_at_once(), long, default_value = "2", value_name = "N")]
    pub jobs: Jobs,
    #[arg(help = text::cli::outer_corners_of_the_patch_grid(), long, value_name = "x,y;x,y;x,y;x,y", value_parser = corners, allow_hyphen_values = true)]
    pub chart_corners: Option<[photo::Point; 4]>,
    #[arg(help = text::cli::the_charts_own_reference_values_cgats(), long, value_name = "FILE")]
    pub chart: Option<PathBuf>,
    #[arg(help = text::cli::bare_ground_of_one_colour_to_read(), long, value_name = "x,y;x,y;x,y;...", value_parser = outline, allow_hyphen_values = true)]
    pub ground: Vec<Outline>,
    #[arg(help = text::cli::corners_of_a_grey_card(), long, value_name = "x,y;x,y;x,y;x,y", value_parser = corners, allow_hyphen_values = true, conflicts_with_all = ["chart", "chart_corners", "ground"], requires = "areas")]
    pub grey_card: Option<[photo::Point; 4]>,
    #[arg(help = text::cli::the_grey_cards_reflectance_0_02(), long, default_value_t = 0.18, requires = "grey_card", value_parser = number)]
    pub card_reflectance: f64,
    #[arg(help = text::cli::light_and_observer_of_the_answer_d65(), long, default_value = "D65/10", value_parser = view)]
    pub view: View,
    #[arg(help = text::cli::print_json(), long)]
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
    #[arg(help = text::cli::the_recipe_docs_recipes_md_describes(), value_name = "RECIPE.toml")]
    pub recipe: PathBuf,
    #[arg(help = text::cli::work_it_out_for_another_dry_weight(), long, value_name = "WEIGHT")]
    pub goods: Option<dyeing::Mass>,
    #[arg(help = text::cli::tell_where_the_dye_went_from_readings(), long, value_name = "RINSES.toml")]
    pub rinses: Option<PathBuf>,
    #[arg(help = text::cli::a_rinse_is_clear_when_it_holds(),
        long,
        value_name = "PERCENT",
        default_value_t = 0.1,
        requires = "rinses", value_parser = number)]
    pub clear_below: f64,
    #[arg(help = text::cli::print_json(), long)]
    pub json: bool,
}

/// Which grey scale.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub enum Scale {
    #[value(help = text::cli::change_in_colour_iso_105_a05())]
    Fade,
    #[value(help = text::cli::staining_of_white_cloth_iso_105_a04())]
    Stain,
}

/// Arguments of `plan`.
#[derive(Debug, Args)]
pub struct PlanArgs {
    #[arg(help = text::cli::the_plan_toml_as_docs_plans_readme(), value_name = "PLAN.toml")]
    pub plan: PathBuf,
    #[arg(help = text::cli::take_the_plan_as_an_enquiry_question(), long)]
    pub propose: bool,
    #[arg(help = text::cli::print_json(), long)]
    pub json: bool,
}

/// Arguments of `power`.
#[derive(Debug, Args)]
pub struct PowerArgs {
    #[arg(help = text::cli::standard_deviation_of_equal_pieces(), long, value_parser = number)]
    pub sd: f64,
    #[arg(help = text::cli::the_smallest_difference_that_matters(), long, value_parser = number)]
    pub margin: f64,
    #[arg(help = text::cli::pieces_in_each_arm(), long, value_parser = whole::<usize>)]
    pub pieces: usize,
    #[arg(help = text::cli::arms(), long, default_value_t = 2, value_parser = whole::<usize>)]
    pub arms: usize,
    #[arg(help = text::cli::print_json(), long)]
    pub json: bool,
}

/// Arguments of `grade`.
#[derive(Debug, Args)]
pub struct GradeArgs {
    #[arg(help = text::cli::which_scale())]
    pub scale: Scale,
    /// The two colours, before first.
    #[command(flatten)]
    pub pair: PairArgs,
}

/// Two colours.
#[derive(Debug, Args)]
pub struct PairArgs {
    #[arg(help = text::cli::the_first_colour_before_unstained(), value_name = "L,a,b", value_parser = lab, allow_hyphen_values = true)]
    pub first: Lab,
    #[arg(help = text::cli::the_second_colour_after_stained_test(), value_name = "L,a,b", value_parser = lab, allow_hyphen_values = true)]
    pub second: Lab,
    #[arg(help = text::cli::print_json(), long)]
    pub json: bool,
}

/// Arguments of `decide`.
#[derive(Debug, Args)]
pub struct DecideArgs {
    #[arg(help = text::cli::table_with_the_columns_arm_piece_role())]
    pub readings: PathBuf,
    #[arg(help = text::cli::the_smallest_difference_that_matters_2(), long, value_parser = margin, allow_hyphen_values = true)]
    pub margin: f64,
    #[arg(help = text::cli::print_json(), long)]
    pub json: bool,
}

/// Arguments of `setup-check`.
#[derive(Debug, Args)]
pub struct SetupCheckArgs {
    #[arg(help = text::cli::three_photographs_or_more_of_the_same(), required = true, value_name = "PHOTO")]
    pub photos: Vec<PathBuf>,
    #[arg(help = text::cli::where_the_pieces_lie_as_for_read(), long, value_name = "AREAS.json")]
    pub areas: Vec<PathBuf>,
    #[arg(help = text::cli::keep_the_check_on_the_bench_under(), long)]
    pub name: Option<String>,
    #[arg(help = text::cli::print_json(), long)]
    pub json: bool,
}

/// Arguments of `add-readings`.
#[derive(Debug, Args)]
pub struct AddReadingsArgs {
    #[arg(help = text::cli::the_trials_short_name())]
    pub trial: String,
    #[arg(help = text::cli::cgats_text_or_csv_of_spectra())]
    pub file: PathBuf,
    #[arg(help = text::cli::how_many_rounds_the_pieces_had_been(), long, value_name = "ROUNDS", value_parser = whole::<u32>)]
    pub stage: u32,
    #[arg(help = text::cli::who_measured(), long, default_value = "", hide_default_value = true)]
    pub by: String,
    #[arg(help = text::cli::when_it_was_measured(), long, default_value = "", hide_default_value = true)]
    pub on: String,
    #[arg(help = text::cli::with_what_in_words_the_files_own(), long, default_value = "", hide_default_value = true)]
    pub instrument: String,
    #[arg(help = text::cli::light_and_observer_of_lab_values_where(), long, default_value = "D65/10", value_parser = view)]
    pub view: View,
    #[arg(help = text::cli::cielab_distance_of_repeat_measurements(), long, value_name = "DE", default_value_t = trial::USUAL_REPEATABILITY_DE, value_parser = number)]
    pub repeatability: f64,
    #[arg(help = text::cli::only_show_what_would_be_added(), long)]
    pub dry_run: bool,
}

/// Arguments of `grade-by-eye`.
#[derive(Debug, Args)]
pub struct GradeByEyeArgs {
    #[arg(help = text::cli::the_trials_short_name())]
    pub trial: String,
    #[arg(help = text::cli::code_of_the_piece())]
    pub piece: String,
    #[arg(help = text::cli::the_grade_5_4_5_4_1())]
    pub grade: String,
    #[arg(help = text::cli::how_many_rounds_the_piece_had_been(), long, value_name = "ROUNDS", value_parser = whole::<u32>)]
    pub stage: u32,
    #[arg(help = text::cli::the_grey_scale_change_or_staining(), long, default_value = "change")]
    pub scale: GreyScale,
    #[arg(help = text::cli::code_of_the_keeper_or_other_piece(), long, value_name = "PIECE")]
    pub against: Option<String>,
    #[arg(help = text::cli::who_judged(), long)]
    pub by: String,
    #[arg(help = text::cli::under_which_light(), long)]
    pub light: String,
    #[arg(help = text::cli::when_it_was_judged(), long, default_value = "", hide_default_value = true)]
    pub on: String,
    #[arg(help = text::cli::anything_else(), long, default_value = "", hide_default_value = true)]
    pub remark: String,
}

/// Arguments of `publish`.
#[derive(Debug, Args)]
pub struct PublishArgs {
    #[arg(help = text::cli::the_trials_short_name())]
    pub trial: String,
    #[arg(help = text::cli::where_to_write_the_page(), short, long, value_name = "report.html")]
    pub output: PathBuf,
}

/// Arguments of `board`.
#[derive(Debug, Args)]
pub struct BoardArgs {
    #[arg(help = text::cli::how_many_windows_for_pieces(), long, default_value = "6", value_parser = ["6", "12"])]
    pub windows: String,
    #[arg(help = text::cli::the_paper(), long, value_enum, default_value_t)]
    pub paper: PaperName,
    #[arg(help = text::cli::print_the_trials_short_name_into(), long)]
    pub trial: Option<String>,
    #[arg(help = text::cli::print_the_stage_rounds_gone_through_into(), long, value_parser = whole::<u32>)]
    pub stage: Option<u32>,
    #[arg(help = text::cli::write_the_drawing_alone_svg_instead(), long)]
    pub svg: bool,
    #[arg(help = text::cli::where_to_write_it_else_it_goes(), short, long, value_name = "FILE")]
    pub out: Option<PathBuf>,
}

/// Arguments of `tags`.
#[derive(Debug, Args)]
pub struct TagsArgs {
    #[arg(help = text::cli::the_trials_short_name())]
    pub trial: String,
    #[arg(help = text::cli::the_paper(), long, value_enum, default_value_t)]
    pub paper: PaperName,
    #[arg(help = text::cli::where_to_write_the_page_else(), short, long, value_name = "FILE")]
    pub out: Option<PathBuf>,
}

/// Paper as the command line names it.
#[derive(Debug, Clone, Copy, Default, ValueEnum)]
pub enum PaperName {
    #[default]
    #[value(help = text::cli::n_210_x_297_mm())]
    A4,
    #[value(help = text::cli::n_8_5_x_11_inches())]
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
        .map_err(|_| text::cli::is_not(text, what))?;
    let values: [f64; N] = values
        .try_into()
        .map_err(|_| text::cli::is_not(text, what))?;
    if values.iter().all(|v| v.is_finite()) {
        Ok(values)
    } else {
        Err(text::cli::holds_a_number_without_an_end(text))
    }
}

fn lab(text: &str) -> Result<Lab, String> {
    let lab: Lab = colour::typed_lab(text)
        .ok_or_else(|| text::cli::is_not(text, text::cli::a_colour_write_l_a_b()))?
        .into();
    if !(0.0..=100.0).contains(&lab.l) {
        return Err(text::cli::l_is_but_lightness_goes_from_0(lab.l));
    }
    if lab.a.abs() > 200.0 || lab.b.abs() > 200.0 {
        return Err(text::cli::a_and_b_no_surface_lies_further(lab.a, lab.b));
    }
    Ok(lab)
}

fn points(text: &str) -> Result<Vec<photo::Point>, String> {
    text.split(';')
        .map(|point| numbers(point, text::cli::a_point_write_x_y_in_pixels()))
        .collect()
}

fn outline(text: &str) -> Result<Outline, String> {
    let points = points(text)?;
    if points.len() < 3 {
        return Err(text::cli::doesnt_hold_three_points_or_more(text));
    }
    Ok(Outline(points))
}

fn corners(text: &str) -> Result<[photo::Point; 4], String> {
    points(text)?
        .try_into()
        .map_err(|_| text::cli::doesnt_hold_four_points_x_y_x(text))
}

fn view(text: &str) -> Result<View, String> {
    text.parse().map_err(|e: colour::ColourError| e.to_string())
}

fn number(text: &str) -> Result<f64, String> {
    let value = text.trim().parse::<f64>().ok();
    value
        .filter(|value| value.is_finite())
        .ok_or_else(|| text::cli::is_no_number(text))
}

fn whole<T: FromStr>(text: &str) -> Result<T, String> {
    let value = text.trim().parse();
    value.map_err(|_| text::cli::is_no_whole_number(text))
}

fn margin(text: &str) -> Result<f64, String> {
    match text.trim().parse::<f64>() {
        Ok(value) if value > 0.0 && value.is_finite() => Ok(value),
        _ => Err(text::cli::the_margin_has_to_be_a_number(text)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use clap::CommandFactory;

    #[test]
    fn what_is_no_number_is_said_in_a_sentence() {
        for line in [
            "woadstone power --sd x --margin 1 --pieces 5",
            "woadstone power --sd 1 --margin inf --pieces 5",
            "woadstone power --sd 1 --margin 1 --pieces 2.5",
            "woadstone serve --port 70000",
        ] {
            let refused = Cli::try_parse_from(line.split(' ')).expect_err(line);
            let said = refused.to_string();
            assert!(said.contains("number, such as"), "{line}: {said}");
        }
    }

    #[test]
    fn the_grammar_is_sound() {
        Cli::command().debug_assert();
    }

    /// Help is given by expressions, which nothing else asks for.
    #[test]
    fn everything_has_its_help() {
        let mut command = Cli::command();
        command.build();
        for sub in command.get_subcommands() {
            assert!(sub.get_about().is_some(), "{}", sub.get_name());
            for arg in sub.get_arguments() {
                assert!(
                    arg.get_help().is_some(),
                    "{} {}",
                    sub.get_name(),
                    arg.get_id()
                );
                for value in arg.get_possible_values() {
                    let said = value.get_help().is_some() || value.get_name().parse::<u8>().is_ok();
                    let is_flag = matches!(value.get_name(), "true" | "false");
                    assert!(said || is_flag, "{} {}", sub.get_name(), value.get_name());
                }
            }
        }
    }

    #[test]
    fn colours_are_read_and_nonsense_is_named() {
        assert_eq!(
            lab("52.3, -28.4,-24").unwrap(),
            Lab::new(52.3, -28.4, -24.0)
        );
        // As print and other languages write it.
        for text in ["40 20 \u{2212}10", "40,0 20,0 -10,0"] {
            assert_eq!(lab(text).unwrap(), Lab::new(40.0, 20.0, -10.0), "{text}");
        }
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
