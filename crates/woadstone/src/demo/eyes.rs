//! Two invented people who judge the demo's napkins blind.

use anyhow::Context;
use colour::grade::Grade;
use store::Bench;
use trial::{
    Trial,
    eyes::{Given, Judge, Judging, Pair, PairKind, Vision, Way, Wish},
};

use super::scenario;

/// Of what order codes and turns are drawn.
const SEED: u64 = 5;

/// An invented person.
struct Invented {
    name: &'static str,
    /// By how many half-steps their grade is off, turn by turn, and over again.
    off: [i8; 7],
}

const PEOPLE: [Invented; 2] = [
    Invented {
        name: "Ida Fenn (invented)",
        off: [0, 0, -1, 0, 0, 1, 0],
    },
    Invented {
        name: "Joss Marl (invented)",
        off: [0, -1, 0, 0, 1, 0, -1],
    },
];

/// Has the invented people judge after the last round and closes their session; what is there
/// already stays, and a session that was cut short is taken up where it ended.
///
/// # Errors
/// The bench can't be read or written.
pub fn lay_out(bench: &mut Bench, trial: &Trial, now: &str) -> anyhow::Result<()> {
    let last = scenario::STAGES.into_iter().max().unwrap_or(0);
    let wish = Wish {
        stage: last,
        way: Way::Cloth,
        staining: true,
        catch: true,
        repeats: 2,
    };
    if bench.eye_sessions(trial.id)?.is_empty() {
        bench.begin_eye_session(trial, &wish, SEED, now)?;
    }
    for (at, person) in (1u64..).zip(&PEOPLE) {
        let judging = first(bench, trial)?;
        if judging.closed_at.is_some() {
            return Ok(());
        }
        let known = judging
            .sittings
            .iter()
            .find(|sitting| sitting.judge.name == person.name);
        let id = match known {
            Some(sitting) => sitting.id,
            None => {
                let judge = Judge {
                    name: person.name.to_owned(),
                    light: "north window, noon".to_owned(),
                    vision: Vision::Normal,
                    distance: "50 cm".to_owned(),
                };
                bench.begin_sitting(judging.id, judge, SEED + at, now)?
            }
        };
        let judging = first(bench, trial)?;
        let sitting = judging.sittings.iter().find(|sitting| sitting.id == id);
        let sitting = sitting.context("an invented person sat down and was then not found")?;
        for turn in sitting.done()..sitting.order.len() {
            let pair = &judging.session.pairs[sitting.order[turn].pair];
            let given = Given {
                grade: Some(person.grade(trial, pair, turn)?),
                remark: String::new(),
                made_at: now.to_owned(),
            };
            bench.give_grade(id, turn, &given)?;
        }
    }
    let id = first(bench, trial)?.id;
    bench.close_eye_session(trial.id, id, now)?;
    Ok(())
}

fn first(bench: &Bench, trial: &Trial) -> anyhow::Result<Judging> {
    let mut sessions = bench.eye_sessions(trial.id)?.into_iter();
    sessions
        .next()
        .context("the demo has no session of judging")
}

impl Invented {
    fn grade(&self, trial: &Trial, pair: &Pair, turn: usize) -> anyhow::Result<Grade> {
        let piece = trial.pieces.iter().find(|piece| piece.id == pair.piece);
        let arm = piece.and_then(|piece| trial.arm(piece.arm));
        let arm = arm.and_then(|arm| scenario::ARMS.iter().find(|known| known.name == arm.name));
        let arm = arm.context("a pair of no arm of the demo")?;
        let seen: u8 = match pair.kind {
            PairKind::Change => arm.seen_half_steps,
            PairKind::Staining => arm.stain_half_steps,
            PairKind::Catch => 10,
        };
        let off = self.off[turn % self.off.len()];
        Ok(Grade::from_half_steps(seen.saturating_add_signed(off)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use trial::decide::Verdict;

    const NOW: &str = "2030-04-01T09:00:00Z";

    fn laid_out() -> (tempfile::TempDir, Bench, Trial) {
        let home = tempfile::tempdir().unwrap();
        let mut bench = Bench::open(home.path()).unwrap();
        let id = bench.create_trial(&scenario::trial(), NOW).unwrap();
        let trial = bench.trial_by_id(id).unwrap().unwrap();
        lay_out(&mut bench, &trial, NOW).unwrap();
        (home, bench, trial)
    }

    #[test]
    fn two_invented_people_judge_all_pairs_and_the_session_is_closed() {
        let (_home, mut bench, trial) = laid_out();
        let sessions = bench.eye_sessions(trial.id).unwrap();
        assert_eq!(sessions.len(), 1);
        assert!(sessions[0].closed_at.is_some());
        assert_eq!(sessions[0].sittings.len(), 2);
        for sitting in &sessions[0].sittings {
            assert!(sitting.judge.name.contains("invented"));
            assert_eq!(sitting.next(), None, "{}", sitting.judge.name);
        }
        // A finished one is left alone, and every bench gets the same.
        lay_out(&mut bench, &trial, NOW).unwrap();
        assert_eq!(bench.eye_sessions(trial.id).unwrap(), sessions);
        let (_other, again, trial) = laid_out();
        assert_eq!(again.eye_sessions(trial.id).unwrap(), sessions);
    }

    #[test]
    fn eyes_see_which_arm_faded_and_agree() {
        let (_home, bench, trial) = laid_out();
        let eyes = bench.results(&trial.slug).unwrap().unwrap().eyes.unwrap();
        let found = eyes.verdict.unwrap();
        let of = |a: &str, b: &str| {
            let mut pairs = found.comparisons.iter();
            pairs.find(|c| c.a == a && c.b == b).unwrap().verdict
        };
        let [hot, rested, cold] = [0, 1, 2].map(|arm: usize| scenario::ARMS[arm].name);
        assert_eq!(of(hot, cold), Verdict::Visible);
        assert_eq!(of(rested, cold), Verdict::Visible);
        assert_eq!(of(hot, rested), Verdict::Alike);
        assert_eq!(eyes.agreement.len(), 1);
    }

    #[test]
    fn one_that_was_cut_short_is_taken_up_where_it_ended() {
        let (_home, bench, trial) = laid_out();
        let whole = bench.eye_sessions(trial.id).unwrap().remove(0);
        let home = tempfile::tempdir().unwrap();
        let mut bench = Bench::open(home.path()).unwrap();
        let id = bench.create_trial(&scenario::trial(), NOW).unwrap();
        let trial = bench.trial_by_id(id).unwrap().unwrap();
        let wish = Wish {
            stage: 5,
            way: Way::Cloth,
            staining: true,
            catch: true,
            repeats: 2,
        };
        let session = bench.begin_eye_session(&trial, &wish, SEED, NOW).unwrap();
        let one = &whole.sittings[0];
        let sitting = bench
            .begin_sitting(session, one.judge.clone(), SEED + 1, NOW)
            .unwrap();
        for turn in 0..3 {
            let given = one.given[turn].clone().unwrap();
            bench.give_grade(sitting, turn, &given).unwrap();
        }
        lay_out(&mut bench, &trial, NOW).unwrap();
        assert_eq!(bench.eye_sessions(trial.id).unwrap(), [whole]);
    }
}
