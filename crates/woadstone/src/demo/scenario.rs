//! The demo trial: invented people, invented napkins, invented numbers.

use trial::{NewArm, NewPiece, NewTrial, Role};

/// The stages at which the pieces were looked at, in rounds of washing.
pub const STAGES: [u32; 4] = [0, 1, 3, 5];
/// Test pieces in each arm.
pub const PIECES_PER_ARM: usize = 4;
/// The demo's address on the bench, made of its title.
pub const SLUG: &str = "brick-red-napkins-of-quillet-harbour";

/// An arm of the demo and what its washing does to the dye.
pub struct DemoArm {
    /// Its name.
    pub name: &'static str,
    /// What was done to its pieces.
    pub treatment: &'static str,
    /// First letter of its pieces' codes.
    pub letter: char,
    /// Share of the dye that washes out in the long run, 0 to 1.
    pub loose: f64,
    /// How fast it leaves, per round.
    pub rate: f64,
    /// What eyes see between a napkin after the last round and its keeper, in half-steps of the grey
    /// scale for change in colour, 10 for no change; as its colours give by ISO 105-A05.
    pub seen_half_steps: u8,
    /// The same of a witness cloth, on the grey scale for staining.
    pub stain_half_steps: u8,
}

/// The three arms. Resting a week truly does nothing here: its numbers are
/// those of the first arm.
pub const ARMS: [DemoArm; 3] = [
    DemoArm {
        name: "Soaped hot",
        treatment: "Rinsed cold, rinsed warm, then soaped near the boil for 15 minutes.",
        letter: 'A',
        loose: 0.035,
        rate: 0.5,
        seen_half_steps: 9,
        stain_half_steps: 10,
    },
    DemoArm {
        name: "Soaped hot, rested a week",
        treatment: "As the first arm, then left to lie dry in the dark for a week before the first wash.",
        letter: 'B',
        loose: 0.035,
        rate: 0.5,
        seen_half_steps: 9,
        stain_half_steps: 10,
    },
    DemoArm {
        name: "Rinsed cold only",
        treatment: "Rinsed cold until the water ran nearly clear; no hot soaping.",
        letter: 'C',
        loose: 0.38,
        rate: 0.45,
        seen_half_steps: 5,
        stain_half_steps: 9,
    },
];

impl DemoArm {
    /// Share of the dye still on a washed piece of this arm after `rounds`.
    pub fn retained(&self, rounds: u32) -> f64 {
        1.0 - self.loose * (1.0 - (-self.rate * f64::from(rounds)).exp())
    }

    /// Code of the arm's keeper.
    pub fn keeper(&self) -> String {
        format!("{}0", self.letter)
    }

    /// Code of the arm's witness cloth.
    pub fn witness(&self) -> String {
        format!("{}W", self.letter)
    }

    /// Dye on the arm's witness cloth after `rounds`, as a share of a napkin's: a little
    /// of what its own napkin loses in the bag, and less of what others lose in the load.
    pub fn caught(&self, rounds: u32) -> f64 {
        let lost = |arm: &Self| 1.0 - arm.retained(rounds);
        let load: f64 = ARMS.iter().map(lost).sum();
        0.03 * lost(self) + 0.001 * load
    }

    /// Code of its test piece `index`, counted from 1.
    pub fn test_piece(&self, index: usize) -> String {
        format!("{}{index}", self.letter)
    }
}

/// The demo as a trial to be entered.
pub fn trial() -> NewTrial {
    NewTrial {
        title: "Brick-red napkins of Quillet Harbour".into(),
        question: "Does soaping hot after dyeing keep a brick-red reactive dye on linen napkins, \
                   and is it worth letting them lie for a week before the first wash?"
            .into(),
        margin_de00: 1.5,
        rounds: 5,
        invented: true,
        method: "Linen napkins of about 50 g, dyed together in one bath with a brick-red warm \
                 reactive dye at 2 % on weight of fibre, then after-treated in three ways. Four \
                 napkins of each arm are washed; a fifth is the arm's keeper, unwashed and in the \
                 dark. Each wash load holds one napkin of every arm, in a bag of its own; a square \
                 of undyed linen, the arm's witness cloth, goes in the bag of its first napkin. A \
                 round is one machine wash at 40 °C with the usual detergent, dried on a line in \
                 the shade. After 0, 1, 3 and 5 rounds the dry napkins of an arm are photographed \
                 with their keeper and witness cloth beside a 24-patch chart. After 5 rounds two \
                 people judge them blind against the grey scales. People, place, napkins, grades \
                 and numbers are invented; the photographs are rendered."
            .into(),
        arms: ARMS.iter().map(new_arm).collect(),
    }
}

fn new_arm(arm: &DemoArm) -> NewArm {
    let tests = (1..=PIECES_PER_ARM).map(|i| NewPiece {
        code: arm.test_piece(i),
        role: Role::Test,
        load: Some(format!("wash {i}")),
    });
    let witness = NewPiece {
        code: arm.witness(),
        role: Role::Witness,
        load: Some("wash 1".into()),
    };
    let keeper = NewPiece {
        code: arm.keeper(),
        role: Role::Keeper,
        load: None,
    };
    NewArm {
        name: arm.name.into(),
        treatment: arm.treatment.into(),
        pieces: tests.chain([keeper, witness]).collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_demo_is_a_sound_trial_marked_as_invented() {
        let trial = trial();
        assert_eq!(trial.validate(), Ok(()));
        assert!(trial.invented);
        assert!(STAGES.len() >= 3);
    }

    #[test]
    fn two_arms_are_truly_alike_and_one_fades() {
        assert_eq!(ARMS[0].retained(5), ARMS[1].retained(5));
        assert!(ARMS[2].retained(5) < ARMS[0].retained(5) - 0.2);
    }
}
