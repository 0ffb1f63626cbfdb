//! From a recipe to the form that shows it.

use super::Draft;
use dyeing::recipe::{Written, WrittenAfter, WrittenAuxiliary, WrittenDye};

impl Draft {
    /// The form of a recipe that was written before.
    pub(crate) fn of(written: &Written) -> Self {
        let mut draft = Self::default();
        draft.set("name", &written.name);
        draft.set("class", &written.class);
        draft.set("fibre", &written.fibre);
        draft.set("kitchen", written.kitchen.key());
        draft.set("currency", &written.currency);
        let goods = &written.goods;
        draft.set_some("weight".into(), goods.weight.as_ref());
        draft.set_some("typical".into(), goods.typical.as_ref());
        draft.set_some(
            "pieces".into(),
            goods.pieces.map(|n| n.to_string()).as_ref(),
        );
        let (by, amount) = match (&written.water.liquor_ratio, &written.water.volume) {
            (Some(ratio), _) => ("ratio", ratio.as_str()),
            (None, Some(volume)) => ("volume", volume.as_str()),
            (None, None) => ("pot", ""),
        };
        draft.set("water", by);
        draft.set("water-amount", amount);
        if let Some(pot) = &written.pot {
            draft.set("pot", &pot.capacity);
            draft.set_some("headroom".into(), pot.headroom_percent.map(figure).as_ref());
            draft.set_some("heater".into(), pot.heater_kw.map(figure).as_ref());
        }
        let process = &written.process;
        draft.set_some("presoak".into(), process.presoak.as_ref());
        draft.set_some("hold".into(), process.hold.as_ref());
        draft.set_some("time".into(), process.time.as_ref());
        draft.set_some("ph".into(), process.ph.map(figure).as_ref());
        draft.arms_of(&written.arms);
        for (k, dye) in written.dye.iter().enumerate() {
            draft.dye(k + 1, dye);
        }
        for (k, auxiliary) in written.auxiliary.iter().enumerate() {
            draft.auxiliary(k + 1, auxiliary);
        }
        for (k, after) in written.after.iter().enumerate() {
            draft.after(k + 1, after);
        }
        draft.dyes = written.dye.len().max(1);
        draft.auxiliaries = written.auxiliary.len().max(1);
        draft.afters = written.after.len();
        draft
    }

    fn dye(&mut self, row: usize, dye: &WrittenDye) {
        let at = |field: &str| format!("dye-{row}-{field}");
        self.set(at("name"), &dye.name);
        self.set(at("amount"), &dye.amount);
        let (form, strength) = match (&dye.stock, &dye.liquid) {
            (Some(stock), _) => ("stock", stock.clone()),
            (None, Some(liquid)) if liquid.trim() == "unknown" => ("unknown", String::new()),
            (None, Some(liquid)) => ("liquid", liquid.clone()),
            (None, None) => (
                "powder",
                dye.strength_percent.map(figure).unwrap_or_default(),
            ),
        };
        self.set(at("form"), form);
        self.set(at("strength"), strength);
        self.set_some(at("bottle"), dye.bottle.as_ref());
        self.set_some(at("price"), dye.price.as_ref());
        self.set_some(at("in_bath"), dye.in_bath.as_ref());
    }

    fn auxiliary(&mut self, row: usize, auxiliary: &WrittenAuxiliary) {
        let at = |field: &str| format!("auxiliary-{row}-{field}");
        self.set(at("name"), &auxiliary.name);
        self.set(at("amount"), &auxiliary.amount);
        self.set_some(at("material"), auxiliary.material.as_ref());
        self.set_some(at("label"), auxiliary.label.as_ref());
        self.set_some(at("bottle"), auxiliary.bottle.as_ref());
        self.set_some(at("price"), auxiliary.price.as_ref());
        self.set_some(at("in_bath"), auxiliary.in_bath.as_ref());
    }

    fn after(&mut self, row: usize, after: &WrittenAfter) {
        let at = |field: &str| format!("after-{row}-{field}");
        self.set(at("name"), &after.name);
        self.set(at("amount"), &after.amount);
        self.set(at("temperature"), &after.temperature);
        self.set(at("time"), &after.time);
        self.set_some(at("material"), after.material.as_ref());
        self.set_some(at("label"), after.label.as_ref());
        self.set_some(at("bottle"), after.bottle.as_ref());
        self.set_some(at("price"), after.price.as_ref());
        self.set_some(at("water"), after.water.as_ref());
        self.set_some(
            at("arms"),
            after.arms.as_ref().map(|a| a.join("; ")).as_ref(),
        );
    }
}

fn figure(number: f64) -> String {
    number.to_string()
}
