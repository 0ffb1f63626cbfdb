//! The way through a trial, from the question to the report: what is done and what is next.

use crate::text;

/// What a person does at each place of the way, in order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Place {
    /// Say what is asked and which difference would matter.
    Ask,
    /// Deal pieces out to arms, loads and days.
    Plan,
    /// Work out the baths.
    Baths,
    /// Dye by the clock.
    Run,
    /// Photograph or measure the pieces at each stage.
    Look,
    /// Read the verdict.
    Decide,
    /// Hand on the report.
    Publish,
}

/// All places in order.
pub const PLACES: [Place; 7] = [
    Place::Ask,
    Place::Plan,
    Place::Baths,
    Place::Run,
    Place::Look,
    Place::Decide,
    Place::Publish,
];

/// How far a place is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum State {
    /// What belongs to it is there.
    Done,
    /// The first thing to do now.
    Next,
    /// It waits for another place.
    Later,
    /// The trial went on without it; it can still be done.
    LeftOut,
}

/// One place of a trial's way.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Step {
    /// Which.
    pub place: Place,
    /// How far.
    pub state: State,
    /// What is there, or what to do, in a few words.
    pub said: String,
}

/// What the bench holds of a trial, counted.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Progress {
    /// Rounds that the trial plans.
    pub rounds: u32,
    /// Whether it started from a plan.
    pub planned: bool,
    /// Recipes written for it or followed by its runs.
    pub recipes: u32,
    /// Runs begun.
    pub runs: u32,
    /// Runs that are over.
    pub runs_over: u32,
    /// Photos on which pieces have not been marked yet.
    pub unmarked: u32,
    /// Rounds after which pieces were read, rising, by how many arms.
    pub looked: Vec<(u32, u32)>,
}

impl Progress {
    /// The seven places in order, of which one at most is next.
    pub fn way(&self) -> [Step; 7] {
        let mut taken = false;
        PLACES.map(|place| {
            let (mut state, said) = self.at(place);
            if state == State::Next {
                if taken {
                    state = State::Later;
                }
                taken = true;
            }
            Step { place, state, said }
        })
    }

    /// `Next` for whatever could be done now; the way keeps the first.
    fn at(&self, place: Place) -> (State, String) {
        match place {
            Place::Ask => (State::Done, text::way::question_and_margin_set().to_owned()),
            Place::Plan if self.planned => (State::Done, text::way::pieces_dealt_out().to_owned()),
            Place::Plan => (State::LeftOut, text::way::entered_without().to_owned()),
            Place::Baths => self.baths(),
            Place::Run => self.run(),
            Place::Look => self.look(),
            Place::Decide => match self.last_compared() {
                Some(stage) => (State::Done, text::way::verdict(after(stage))),
                None => (
                    State::Later,
                    text::way::after_two_looks_at_two_arms().to_owned(),
                ),
            },
            Place::Publish => match self.last_compared() {
                Some(_) => (State::Next, text::way::hand_on_the_report().to_owned()),
                None => (State::Later, text::way::with_the_verdict().to_owned()),
            },
        }
    }

    fn baths(&self) -> (State, String) {
        match self.recipes {
            0 if self.looked.is_empty() => (State::Next, text::way::write_a_recipe().to_owned()),
            0 => (State::LeftOut, text::way::no_recipe_kept().to_owned()),
            1 => (State::Done, text::way::n_1_recipe().to_owned()),
            many => (State::Done, text::way::recipes(many)),
        }
    }

    fn run(&self) -> (State, String) {
        let going = self.runs - self.runs_over.min(self.runs);
        match (self.runs, going) {
            (0, _) if !self.looked.is_empty() => {
                (State::LeftOut, text::way::no_run_kept().to_owned())
            }
            (0, _) if self.recipes == 0 => (State::Later, text::way::by_the_recipe().to_owned()),
            (0, _) => (State::Next, text::way::begin_a_run().to_owned()),
            (1, 0) => (State::Done, text::way::n_1_run_over().to_owned()),
            (runs, 0) => (State::Done, text::way::runs_over(runs)),
            (_, 1) if self.looked.is_empty() => (State::Next, text::way::a_run_goes().to_owned()),
            (_, 1) => (State::Done, text::way::a_run_goes().to_owned()),
            (_, going) => (State::Next, text::way::runs_go(going)),
        }
    }

    fn look(&self) -> (State, String) {
        if self.unmarked > 0 {
            let photos = match self.unmarked {
                1 => text::way::a_photo().to_owned(),
                many => text::way::photos(many),
            };
            return (State::Next, text::way::mark_the_pieces(&photos));
        }
        match self.looked.last() {
            None => (
                State::Next,
                text::way::photograph_before_the_first_wash().to_owned(),
            ),
            Some(&(last, _)) if last >= self.rounds => (State::Done, text::way::seen(after(last))),
            Some(&(0, _)) => (
                State::Next,
                text::way::wash_then_photograph_again().to_owned(),
            ),
            Some(&(last, _)) => (State::Next, text::way::of_rounds_seen(last, self.rounds)),
        }
    }

    /// The last stage after the start at which two arms were read.
    fn last_compared(&self) -> Option<u32> {
        let compared = self
            .looked
            .iter()
            .filter(|(stage, arms)| *stage > 0 && *arms > 1);
        compared.map(|(stage, _)| *stage).next_back()
    }
}

fn after(stage: u32) -> String {
    match stage {
        1 => text::way::after_1_round().to_owned(),
        rounds => text::way::after_rounds(rounds),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn states(progress: &Progress) -> String {
        let letter = |step: &Step| match step.state {
            State::Done => 'd',
            State::Next => 'N',
            State::Later => '.',
            State::LeftOut => '-',
        };
        progress.way().iter().map(letter).collect()
    }

    #[test]
    fn each_thing_done_moves_what_is_next() {
        let mut trial = Progress {
            rounds: 5,
            planned: true,
            ..Progress::default()
        };
        assert_eq!(states(&trial), "ddN....");
        trial.recipes = 1;
        assert_eq!(states(&trial), "dddN...");
        trial.runs = 1;
        assert_eq!(states(&trial), "dddN...");
        trial.runs_over = 1;
        assert_eq!(states(&trial), "ddddN..");
        trial.looked = vec![(0, 2)];
        assert_eq!(states(&trial), "ddddN..");
        trial.looked.push((2, 2));
        // A verdict is there already, and the trial goes on.
        assert_eq!(states(&trial), "ddddNd.");
        trial.looked.push((5, 2));
        assert_eq!(states(&trial), "ddddddN");
        trial.unmarked = 1;
        assert_eq!(states(&trial), "ddddNd.");
    }

    #[test]
    fn what_a_trial_did_without_is_left_out_and_holds_nothing_up() {
        let trial = Progress {
            rounds: 5,
            looked: vec![(0, 2)],
            ..Progress::default()
        };
        assert_eq!(states(&trial), "d---N..");
        let one_arm = Progress {
            looked: vec![(0, 1), (5, 1)],
            ..trial
        };
        assert_eq!(states(&one_arm), "d---d..");
    }

    #[test]
    fn a_trial_without_arms_to_compare_has_something_next_while_rounds_are_left() {
        let said = |looked: Vec<(u32, u32)>| {
            let progress = Progress {
                rounds: 3,
                looked,
                ..Progress::default()
            };
            progress.way()[4].said.clone()
        };
        assert_eq!(said(vec![(0, 2), (1, 2)]), "1 of 3 rounds seen");
        assert_eq!(said(vec![(0, 2), (3, 2)]), "seen after 3 rounds");
    }
}
