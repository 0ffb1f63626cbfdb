//! `woadstone grade fade|stain L,a,b L,a,b`.

use crate::text;
use colour::grade::{fade, stain};
use serde_json::json;

use crate::{
    cli::{GradeArgs, Scale},
    outcome::{Outcome, print, print_json},
};

/// Prints the grade of a change or of a stain.
pub fn run(args: &GradeArgs) -> Outcome {
    let (first, second) = (args.pair.first, args.pair.second);
    match args.scale {
        Scale::Fade => {
            let f = fade(first, second);
            if args.pair.json {
                return print_json(&json!({
                    "kind": "fade", "value": f.value, "grade": f.grade.to_string(),
                    "dL": f.d_l, "dC": f.d_c, "dH": f.d_h, "CM": f.mean_chroma,
                    "hM": f.mean_hue_deg, "x": f.x, "D": f.d, "dCK": f.d_ck, "dHK": f.d_hk,
                    "dCF": f.d_cf, "dHF": f.d_hf, "dEF": f.d_ef,
                }));
            }
            let [value, d_ef] = [f.value, f.d_ef].map(|v| format!("{v:.2}"));
            print(&format!(
                "{}\n",
                text::command::change_in_colour(f.grade, value, d_ef)
            ))
        }
        Scale::Stain => {
            let s = stain(first, second);
            if args.pair.json {
                return print_json(&json!({
                    "kind": "stain", "value": s.value, "grade": s.grade.to_string(),
                    "dE": s.d_e, "dL": s.d_l, "dE_GS": s.d_e_gs,
                }));
            }
            let [value, d_e_gs] = [s.value, s.d_e_gs].map(|v| format!("{v:.2}"));
            print(&format!(
                "{}\n",
                text::command::staining_of_white(s.grade, value, d_e_gs)
            ))
        }
    }
}
