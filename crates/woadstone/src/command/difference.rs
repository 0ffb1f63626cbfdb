//! `woadstone difference L,a,b L,a,b`.

use colour::difference::{cie76, cie94_textile, ciede2000, cmc};
use serde_json::json;

use crate::{
    cli::PairArgs,
    outcome::{Outcome, print, print_json},
};

/// Prints the difference of two colours by every formula.
pub fn run(args: &PairArgs) -> Outcome {
    let (a, b) = (args.first, args.second);
    if args.json {
        return print_json(&json!({
            "de76": cie76(a, b),
            "de94_textile": cie94_textile(a, b),
            "cmc_2_1": cmc(a, b, 2.0, 1.0),
            "cmc_1_1": cmc(a, b, 1.0, 1.0),
            "de2000": ciede2000(a, b),
        }));
    }
    print(&format!(
        "CIEDE2000        {:.4}\nCMC(2:1)         {:.4}\nCMC(1:1)         {:.4}\nCIE94 textile    {:.4}\nCIELAB dE*ab     {:.4}\n",
        ciede2000(a, b),
        cmc(a, b, 2.0, 1.0),
        cmc(a, b, 1.0, 1.0),
        cie94_textile(a, b),
        cie76(a, b),
    ))
}
