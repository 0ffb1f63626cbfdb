//! Run sheets as who stands at the pot reads them: each step says what to do now, and no step says
//! what was done before.

use dyeing::{
    Plan, Recipe, class,
    run_sheet::{Step, StepKind},
};

/// The steps of a class's usual bath with everything that usually helps it.
fn steps(class: &class::DyeClass, with_helpers: bool) -> Vec<Step> {
    let helpers: Vec<String> = class
        .helper
        .iter()
        .filter(|_| with_helpers)
        .map(|h| format!("{{ name = \"{}\", amount = \"5 g/L\" }}", h.material))
        .collect();
    let text = format!(
        "name = \"test\"\nclass = \"{}\"\nfibre = \"{}\"\ngoods = {{ weight = \"250 g\" }}\n\
         water = {{ liquor_ratio = \"20:1\" }}\ndye = [{{ name = \"blue\", amount = \"1 % owf\" }}]\n\
         auxiliary = [{}]",
        class.key,
        class.fibres[0],
        helpers.join(", ")
    );
    let recipe = Recipe::read(&text).expect("a recipe");
    Plan::of(&recipe).expect("a plan").steps
}

#[test]
fn no_step_repeats_another_or_its_own_title() {
    for class in class::all() {
        for with_helpers in [true, false] {
            for step in steps(class, with_helpers) {
                let of = format!("{} {}: {}", class.key, step.number, step.text);
                assert!(step.text.ends_with('.'), "{of}");
                assert!(
                    !step.text.contains("  ") && !step.text.contains(".."),
                    "{of}"
                );
                if step.kind == StepKind::Hold {
                    assert!(!step.text.contains("Raise") && !step.text.contains("Go slowly"));
                    assert!(!step.text.contains("Stir in"), "{of}");
                    let is_told_twice = step.title.replace("Hold", "Keep") + ".";
                    assert!(step.text == is_told_twice || !step.text.contains(&is_told_twice));
                }
            }
        }
    }
}

#[test]
fn portions_are_named_where_something_goes_in_and_nowhere_else() {
    let class = class::find("reactive-warm").unwrap();
    let with = steps(class, true);
    let salt = with.iter().position(|s| s.title.contains("salt")).unwrap();
    assert_eq!(
        with[salt].text,
        "Stir in 25 g glauber's salt: a third now, and the other two thirds five minutes apart; lift the goods out each time."
    );
    assert_eq!(
        with[salt + 1].text,
        "Add the other two thirds five minutes apart. Keep the goods moving."
    );
    let without = steps(class, false);
    assert!(!without.iter().any(|step| step.text.contains("thirds")));
}

#[test]
fn arms_are_named_where_there_are_several() {
    let text = include_str!("../../../docs/recipes/napkins.toml");
    let said = |recipe: &str| {
        let plan = Plan::of(&Recipe::read(recipe).unwrap()).unwrap();
        let texts: Vec<String> = plan.steps.into_iter().map(|step| step.text).collect();
        texts.join("\n")
    };
    let one = said(text);
    assert!(!one.contains("arms"), "{one}");
    let two = said(&format!("{text}\n[arms]\nplain = 3\nfixed = 2\n"));
    assert_eq!(two.matches("ll arms alike").count(), 4, "{two}");
    assert!(two.contains("out of the sun, arms apart; look"));
}

/// Common practice, no source: goods go into a vat when it is reduced, not before.
#[test]
fn goods_stay_out_of_a_vat_until_it_is_ready() {
    let put_in = "put the wet goods in";
    for class in class::all() {
        let steps = steps(class, true);
        let first = steps.iter().find(|s| s.text.contains(put_in));
        match class.key.as_str() {
            "vat" => assert_eq!(first.unwrap().kind, StepKind::Hold),
            "indigo" => {
                assert!(first.is_none());
                assert!(steps.iter().any(|s| s.text.starts_with("Dip wetted goods")));
            }
            key => assert_eq!(first.unwrap().kind, StepKind::Add, "{key}"),
        }
    }
}
