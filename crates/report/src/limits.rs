//! What a report can't say, said in it.

use crate::text;
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
        limits.push(text::limits::this_trial_is_invented_its_photographs().to_owned());
    }
    let elsewhere = results.readings.iter().any(|r| r.source != Source::Photo);
    let photos = results.readings.iter().any(|r| r.source == Source::Photo);
    if photos || !elsewhere {
        limits.push(text::limits::colours_were_read_from_photographs().to_owned());
    }
    if elsewhere {
        limits.push(text::limits::readings_from_elsewhere_are_given().to_owned());
    }
    limits.push(text::limits::the_intervals_cover_the_spread_between().to_owned());
    let findings = results.planned.iter().flat_map(|from| &from.findings);
    limits.extend(findings.map(|found| {
        text::limits::known_when_the_trial_was_planned(&found.sentence, &found.consequence)
    }));
    limits.extend(results.departures.iter().map(|departed| {
        text::limits::noted_while_it_was_dyed_the_verdict(&departed.title, &departed.sentence)
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
    limits.push(text::limits::washing_is_not_light_sweat_or_rubbing().to_owned());
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
            (!shared).then(|| text::limits::every_test_piece_of_went_through_load(&arm.name, load))
        })
        .collect()
}
