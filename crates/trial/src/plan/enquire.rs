//! Whether an enquiry can be worked with, field by field.

use super::{Enquiry, Plan, PlanError, check};

impl Enquiry {
    /// Whether everything that is asked can be taken; whether it fits the budget is
    /// for [`Enquiry::propose`] to say.
    ///
    /// # Errors
    /// The first field that can't be taken, such as `arms[1].amount`.
    pub fn check(&self) -> Result<(), PlanError> {
        // The least plan that holds the same fields; its own check knows their bounds.
        let plan = Plan {
            title: String::new(),
            question: self.question.clone(),
            asks: self.asks,
            staining: self.staining,
            fibre: self.fibre.clone(),
            dye_class: self.dye_class.clone(),
            margin: self.margin,
            rounds: self.rounds,
            stages: Vec::new(),
            seed: self.seed,
            scatter: self.scatter.clone(),
            arms: self.planned_arms(1),
            steps: Vec::new(),
            circumstances: Vec::new(),
            vessels: Vec::new(),
            instructions: Vec::new(),
        };
        plan.check()?;
        for (i, arm) in self.arms.iter().enumerate() {
            let at = format!("arms[{i}]");
            check::amounts(&at, &arm.amount, &arm.water)?;
            check::heat_and_time(&at, arm.minutes, arm.temperature_c)?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn enquiry() -> Enquiry {
        Enquiry::from_toml(
            r#"
            question = "Does the agent keep it?"
            margin = "grade 4"
            rounds = 5
            budget = { pieces = 24, washes = 2, days = 1 }
            [[arms]]
            name = "plain"
            [[arms]]
            name = "agent"
            agent = "agent F"
            amount = "2 tbsp"
            water = "1 gal"
            minutes = 20
            "#,
        )
        .unwrap()
    }

    type Fault = (&'static str, fn(&mut Enquiry));

    #[test]
    fn each_fault_names_its_field() {
        enquiry().check().unwrap();
        let faults: [Fault; 8] = [
            ("question", |e| e.question = " ".into()),
            ("rounds", |e| e.rounds = 0),
            ("arms[1].name", |e| e.arms[1].name = "plain".into()),
            ("arms[0].name", |e| e.arms[0].name.clear()),
            ("arms[1].amount", |e| e.arms[1].amount = "a glug".into()),
            ("arms[1].water", |e| e.arms[1].water = "the sink".into()),
            ("arms[1].minutes", |e| e.arms[1].minutes = Some(-1.0)),
            ("arms[1].temperature_c", |e| {
                e.arms[1].temperature_c = Some(400.0);
            }),
        ];
        for (field, spoil) in faults {
            let mut enquiry = enquiry();
            spoil(&mut enquiry);
            assert_eq!(enquiry.check().unwrap_err().field, field);
        }
    }
}
