//! What a report can't say, said in it.

use std::collections::BTreeSet;
use trial::{
    Results, Role, Source, Trial,
    plan::{Finding, FindingCode},
};

/// The limits that hold for this trial, each a sentence or two.
pub(crate) fn of(results: &Results) -> Vec<String> {
    let trial = &results.trial;
    let mut limits = Vec::new();
    if trial.invented {
        limits.push(
            "This trial is invented: its photographs were drawn by a program to show how a trial works. \
             It says nothing about any real dye, fibre or treatment."
                .to_owned(),
        );
    }
    let elsewhere = results.readings.iter().any(|r| r.source != Source::Photo);
    let photos = results.readings.iter().any(|r| r.source == Source::Photo);
    if photos || !elsewhere {
        limits.push(
            "Colours were read from photographs beside a colour chart, not with a spectrophotometer. They hold for \
             daylight (D65) and the 10 degree observer; two cloths that match there may differ under a lamp."
                .to_owned(),
        );
    }
    if elsewhere {
        limits.push(
            "Readings from elsewhere are given as they were handed in. A change is only ever taken between readings \
             of one source and one light, and each verdict says on which it rests."
                .to_owned(),
        );
    }
    limits.push(
        "The intervals cover the spread between the pieces of this trial. They do not cover another dye lot, \
         water, fibre, machine or pair of hands: repeating the trial does."
            .to_owned(),
    );
    let findings = results.planned.iter().flat_map(|from| &from.findings);
    limits.extend(findings.map(|found| {
        format!(
            "Known when the trial was planned: {} {}",
            found.sentence, found.consequence
        )
    }));
    limits.extend(results.departures.iter().map(|departed| {
        format!(
            "Noted while it was dyed ({}): {} The verdict holds for what was done, not for what was planned.",
            departed.title, departed.sentence
        )
    }));
    let said = |found: &Finding| found.code == FindingCode::LoadIsArm;
    if !results
        .planned
        .iter()
        .flat_map(|from| &from.findings)
        .any(said)
    {
        limits.extend(shared_loads(trial));
    }
    limits.push(
        "Washing is not light, sweat or rubbing: a cloth that lasts here may still fail there."
            .to_owned(),
    );
    limits
}

/// Arms that had a load all to themselves: the load explains a difference as well as the treatment does.
fn shared_loads(trial: &Trial) -> Vec<String> {
    let loads_of = |arm| -> Option<BTreeSet<&str>> {
        trial
            .pieces
            .iter()
            .filter(|p| p.arm == arm && p.role == Role::Test)
            .map(|p| p.load.as_deref())
            .collect()
    };
    trial
        .arms
        .iter()
        .filter_map(|arm| {
            let own = loads_of(arm.id)?;
            let [load] = own.iter().collect::<Vec<_>>()[..] else {
                return None;
            };
            let shared = trial
                .arms
                .iter()
                .filter(|other| other.id != arm.id)
                .any(|other| loads_of(other.id).is_some_and(|l| l.contains(load)));
            (!shared).then(|| {
                format!(
                    "Every test piece of {} went through load {load}, and no other arm did: whatever that load did \
                     explains a difference as well as the treatment does.",
                    arm.name
                )
            })
        })
        .collect()
}
