//! Plans of several kinds and sizes, for measuring what they take.

use trial::plan::Plan;

/// Plans with their names: those of the documentation, and others from small to large.
pub fn plans() -> Vec<(String, Plan)> {
    let kept = [
        (
            "two arms",
            include_str!("../../../../docs/plans/two-arms.toml"),
        ),
        (
            "shade ladder",
            include_str!("../../../../docs/plans/shade-ladder.toml"),
        ),
        (
            "after-treatments by temperature",
            include_str!("../../../../docs/plans/after-treatments-by-temperature.toml"),
        ),
    ];
    let kept = kept.map(|(name, text)| (name.to_owned(), text.to_owned()));
    let mut all = Vec::from(kept);
    for (asks, arms, pieces, keepers, washes) in [
        ("step_matters", 2, 2, 0, 1),
        ("step_matters", 2, 40, 2, 1),
        ("step_matters", 3, 8, 1, 4),
        ("step_matters", 6, 20, 2, 5),
        ("which_is_best", 4, 12, 2, 4),
        ("which_is_best", 5, 40, 0, 8),
        ("which_is_best", 8, 6, 1, 3),
    ] {
        let name = format!("{asks}, {arms} arms of {pieces} and {keepers} in {washes} washes");
        all.push((name, text(asks, arms, pieces, keepers, washes)));
    }
    let read = |(name, text): (String, String)| {
        let plan = Plan::from_toml(&text).expect("the plan is sound");
        (name, plan)
    };
    all.into_iter().map(read).collect()
}

fn text(asks: &str, arms: usize, pieces: usize, keepers: usize, washes: usize) -> String {
    let mut text = format!(
        "question = \"Which agent keeps the colour?\"\nasks = \"{asks}\"\nmargin = \"grade 4\"\nrounds = 10\n"
    );
    for arm in 0..arms {
        text.push_str(&format!(
            "[[arms]]\nname = \"agent {arm}\"\npieces = {pieces}\nkeepers = {keepers}\n"
        ));
    }
    let loads: Vec<String> = (1..=washes)
        .map(|wash| format!("\"wash {wash}\""))
        .collect();
    text.push_str(&format!(
        "[[steps]]\nkind = \"wash\"\nloads = [{}]\nwitnesses = [\"multifibre\"]\n",
        loads.join(", ")
    ));
    text
}
