//! The smallest difference that so many pieces can prove.

use super::SetupCheck;
use inference::power::Test;
use serde::{Deserialize, Serialize};

/// How often a difference of that size is shown.
const POWER: f64 = 0.8;
/// Parts of a colour.
const PARTS: f64 = 3.0;
/// How often chance alone may show a difference: what a verdict's interval of
/// 95 % leaves on one side of it.
const TAIL: f64 = 0.025;
/// The same for a test along a direction named beforehand, to both sides of it.
const TAIL_ALONG: f64 = 0.05;
/// More pieces than this in an arm are not looked for.
const MOST_PIECES: usize = 60;

/// How a trial would be looked at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Plan {
    /// Test pieces in each arm, 2 at least.
    pub pieces: usize,
    /// Photos at each stage, pieces laid anew in between, 1 at least.
    pub photos: usize,
    /// SD from piece to piece of what is done to them (dyeing, washing), as a
    /// length in CIEDE2000, even in all directions; 0 counts the set-up alone.
    pub piece_sd_de00: f64,
}

impl Plan {
    /// So many pieces an arm on one photo a stage, the set-up alone.
    pub fn of(pieces: usize) -> Self {
        Self {
            pieces,
            photos: 1,
            piece_sd_de00: 0.0,
        }
    }
}

/// The smallest differences that are shown four times in five, CIEDE2000.
///
/// Shown is what a verdict demands: the lower end of the 95 % interval lies
/// above 0. How much above is another matter: a difference counts as visible
/// only when the whole interval lies above the margin. The figures hold in every
/// direction of colour; where a set-up scatters less it shows smaller ones.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Provable {
    /// Test pieces in each arm.
    pub pieces: usize,
    /// Of two arms' changes, each piece against its own start, all pieces on the
    /// same photos: what a trial's verdict rests on.
    pub changes_de00: f64,
    /// Of two arms on one photo.
    pub side_by_side_de00: f64,
    /// Of two arms on one photo along a direction named beforehand, such as
    /// lightness, by Student's two-sided test at 5 %.
    pub side_by_side_along_de00: f64,
    /// Of one arm's change from a photo to a later one, with an unwashed keeper
    /// beside it, which takes away the photo's shift and adds its own scatter.
    pub change_with_keeper_de00: f64,
    /// The same without a keeper: the shifts of both photos stay in.
    pub change_without_keeper_de00: f64,
}

/// The variance of a colour: over all directions and along the one with the most.
#[derive(Debug, Clone, Copy)]
struct Variance {
    all: f64,
    widest: f64,
}

impl Variance {
    fn of(sd: f64, widest_sd: f64) -> Self {
        Self {
            all: sd * sd,
            widest: widest_sd * widest_sd,
        }
    }

    fn times(self, factor: f64) -> Self {
        Self {
            all: self.all * factor,
            widest: self.widest * factor,
        }
    }

    /// With another that knows nothing of it; the widest directions are taken to
    /// be the same, which errs to the wide side.
    fn and(self, other: Self) -> Self {
        Self {
            all: self.all + other.all,
            widest: self.widest + other.widest,
        }
    }

    /// The smallest length of a vector with this error that is shown often enough.
    fn shown(self, df: f64) -> f64 {
        let parts = if self.widest > 0.0 {
            (self.all / self.widest).clamp(1.0, PARTS)
        } else {
            PARTS
        };
        self.smallest(parts, TAIL, df)
    }

    /// The same along one direction named beforehand.
    fn shown_along(self, df: f64) -> f64 {
        self.smallest(1.0, TAIL_ALONG, df)
    }

    fn smallest(self, parts: f64, tail: f64, df: f64) -> f64 {
        self.widest.sqrt() * Test { parts, df, tail }.smallest(POWER)
    }
}

/// Degrees of freedom by which a trial of two arms of `n` pieces knows its error:
/// 2 (n - 1), less what a verdict loses because it doesn't take both arms to scatter
/// alike: by so much, simulated verdicts show differences as often as said.
fn verdict_df(n: f64) -> f64 {
    2.0 * (n - 1.0) - 0.75
}

/// What readings and pieces scatter by in a plan.
struct Noise {
    /// Pieces in each arm.
    n: f64,
    within: Variance,
    between: Variance,
    /// From piece to piece by what is done to them.
    own: Variance,
}

impl SetupCheck {
    /// What a plan can prove with this set-up. Fewer pieces than 2 or photos than
    /// 1 are taken as those.
    pub fn provable(&self, plan: &Plan) -> Provable {
        let Noise { n, within, own, .. } = self.noise(plan);
        let df = verdict_df(n);
        let two_arms = within.and(own).times(2.0 / n);
        // One arm alone is judged by what this check knows.
        let keeper = within.and(own).times(1.0 / n + 1.0);
        Provable {
            pieces: plan.pieces.max(2),
            changes_de00: self.changes(plan),
            side_by_side_de00: two_arms.shown(df),
            side_by_side_along_de00: two_arms.shown_along(2.0 * (n - 1.0)),
            change_with_keeper_de00: keeper.shown(self.within_df),
            change_without_keeper_de00: self.without_keeper(plan),
        }
    }

    /// The smallest difference of two arms' changes, CIEDE2000.
    fn changes(&self, plan: &Plan) -> f64 {
        let Noise { n, within, own, .. } = self.noise(plan);
        let each = within.times(2.0).and(own);
        each.times(2.0 / n).shown(verdict_df(n))
    }

    /// The smallest change of one arm without a keeper, CIEDE2000. With more pieces
    /// its error rests more on the few photos and is known less well; since pieces
    /// may be left aside, more of them never prove less.
    fn without_keeper(&self, plan: &Plan) -> f64 {
        (2..=plan.pieces.max(2))
            .map(|pieces| {
                let noise = self.noise(&Plan { pieces, ..*plan });
                let (within, between) = (noise.within, noise.between);
                let start = within.times(2.0).and(noise.own).times(1.0 / noise.n);
                let df = self.without_keeper_df(within.widest, between.widest, noise.n);
                start.and(between.times(2.0)).shown(df)
            })
            .fold(f64::INFINITY, f64::min)
    }

    fn noise(&self, plan: &Plan) -> Noise {
        let once = 1.0 / plan.photos.max(1) as f64;
        Noise {
            n: plan.pieces.max(2) as f64,
            within: Variance::of(self.within_sd_de00, self.within_widest_sd_de00).times(once),
            between: Variance::of(self.between_sd_de00, self.between_widest_sd_de00).times(once),
            own: Variance::of(plan.piece_sd_de00, plan.piece_sd_de00 / PARTS.sqrt()),
        }
    }

    /// The fewest pieces an arm whose changes prove a difference of `margin_de00`,
    /// with the plan's photos and scatter of pieces; none if more than 60 are.
    pub fn pieces_for(&self, margin_de00: f64, plan: &Plan) -> Option<usize> {
        (2..=MOST_PIECES).find(|&pieces| {
            let plan = Plan { pieces, ..*plan };
            self.changes(&plan) <= margin_de00
        })
    }

    /// Degrees of freedom of a change over photos: Satterthwaite's, over the two
    /// mean squares that the scatters were got from.
    fn without_keeper_df(&self, within: f64, between: f64, n: f64) -> f64 {
        let copies = self.pieces_per_photo;
        let square = copies * between + within;
        let of_square = 2.0 * square / copies;
        let of_within = 2.0 * within * (1.0 / n - 1.0 / copies);
        let spread =
            of_square * of_square / self.between_df + of_within * of_within / self.within_df;
        let all = of_square + of_within;
        if spread > 0.0 {
            (all * all / spread).clamp(1.0, self.between_df + self.within_df)
        } else {
            self.within_df
        }
    }
}
