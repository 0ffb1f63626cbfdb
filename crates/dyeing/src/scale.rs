//! From a tested sample to a lot: what has to stay the same, and what won't.

use crate::text;
use crate::{
    check::{Check, Level},
    heat,
    plan::Plan,
    quantity::figure,
};

/// What differs between a sample's plan and a lot's, so that the shade may too.
///
/// `heater_kw` is the power below the lot's pot, if it is known.
pub fn checks(sample: &Plan, lot: &Plan, heater_kw: Option<f64>) -> Vec<Check> {
    let mut checks = Vec::new();
    let (a, b) = (sample.baths.ratio, lot.baths.ratio);
    let off = b.litres_per_kilogram() / a.litres_per_kilogram() - 1.0;
    if off.abs() > 0.05 {
        let partition = crate::exhaustion::Partition::from_share(sample.uptake.pot.after, a);
        let what = partition.map_or_else(|e| e.to_string(), |p| p.change_of_pot(a, b).sentence());
        let sentence = text::scale::the_sample_was_dyed_at_the_lot(a, b, &what);
        checks.push(Check::new(Level::Doubtful, "ratio_not_held", sentence));
    }
    if let Some(kw) = heater_kw {
        let [from, to] = [lot.programme.points[0].celsius, lot.programme.hottest()];
        let planned: f64 = sample.programme.stages.iter().map(|s| s.raising_min).sum();
        if let Ok(takes) = heat::minutes_to_heat(lot.baths.each_liquor, from, to, kw)
            && takes.minutes() > planned * 1.1
        {
            let sentence = text::scale::heating_from_to_with_kw_takes_about_2(
                lot.baths.each_liquor.shown(),
                from,
                to,
                kw,
                format_args!("{:.0}", takes.minutes()),
                format_args!("{planned:.0}"),
            );
            checks.push(Check::new(Level::Note, "slower_heating", sentence));
        }
    }
    if lot.baths.count > sample.baths.count {
        let sentence =
            text::scale::the_lot_takes_baths_where_the_sample(lot.baths.count, sample.baths.count);
        checks.push(Check::new(Level::Doubtful, "more_baths", sentence));
    }
    let times = lot.goods.mass.grams() / sample.goods.mass.grams();
    if times > 20.0 {
        let sentence = text::scale::the_lot_is_times_the_sample(figure(times));
        checks.push(Check::new(Level::Note, "large_step", sentence));
    }
    checks
}
