//! Puts the demo trial on a bench the way a person would: photo by photo.

use anyhow::Context;
use store::{Bench, NewPhoto};
use trial::{PhotoArea, PhotoState, Trial};

use super::{dyeing, eyes, picture, scenario};

/// What has just happened, for whoever watches.
pub enum Step<'a> {
    /// A photograph is about to be taken.
    Photographing {
        /// After how many rounds.
        stage: u32,
        /// The arm on it.
        arm: &'a str,
    },
    /// A photograph went the whole way and was read.
    Read {
        /// The photograph's name.
        name: &'a str,
        /// What became of it.
        state: &'a PhotoState,
    },
}

/// Lays the demo trial out on `bench` and reads its photographs; returns the
/// trial's short name.
///
/// What is there already stays: a run that was cut short is taken up where it
/// ended, and a finished demo is left alone.
///
/// # Errors
/// The bench can't be written, or a photograph was not read.
pub fn lay_out(
    bench: &mut Bench,
    now: &str,
    watch: &mut dyn FnMut(Step<'_>),
) -> anyhow::Result<String> {
    let trial = match bench.trial(scenario::SLUG)? {
        Some(trial) => trial,
        None => {
            let id = bench.create_trial(&scenario::trial(), now)?;
            bench
                .trial_by_id(id)?
                .context("the demo trial was entered and then not found")?
        }
    };
    dyeing::lay_out(bench, now)?;
    let taken = bench.photos(trial.id)?;
    for stage in scenario::STAGES {
        for arm in &scenario::ARMS {
            let name = format!("round-{stage}-arm-{}.jpg", arm.letter.to_ascii_lowercase());
            let known = taken.iter().find(|photo| photo.name == name);
            if known.is_some_and(|photo| matches!(photo.state, PhotoState::Read { .. })) {
                continue;
            }
            watch(Step::Photographing {
                stage,
                arm: arm.name,
            });
            let picture = picture::take(arm, stage);
            let photo = match known {
                Some(photo) => photo.id,
                None => {
                    let survey = photo::survey(&picture.jpeg, None)
                        .map_err(|refusal| anyhow::anyhow!("{name}: {refusal}"))?;
                    let new = NewPhoto {
                        trial: trial.id,
                        stage,
                        name: &name,
                        bytes: &picture.jpeg,
                        width: survey.width,
                        height: survey.height,
                        corners: Some(survey.corners),
                        chart: None,
                        notices: &[],
                    };
                    bench.add_photo(new, now)?
                }
            };
            bench.mark_areas(photo, areas(&trial, &picture)?, now)?;
            while let Some((read, state)) = bench.read_next(now)? {
                if read == photo {
                    watch(Step::Read {
                        name: &name,
                        state: &state,
                    });
                }
            }
        }
    }
    eyes::lay_out(bench, &trial, now)?;
    Ok(trial.slug)
}

/// Where the pieces lie on a picture, as a person would mark them.
fn areas(trial: &Trial, picture: &scene::Rendered) -> anyhow::Result<Vec<PhotoArea>> {
    picture
        .truth
        .pieces
        .iter()
        .map(|piece| {
            let known = trial.pieces.iter().find(|p| p.code == piece.id);
            let known = known.with_context(|| format!("no piece {} in the demo", piece.id))?;
            Ok(PhotoArea {
                piece: known.id,
                polygon: piece.polygon.clone(),
            })
        })
        .collect()
}
