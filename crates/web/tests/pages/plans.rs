//! From a question to a plan and its trial, by forms alone.

use crate::desk::Desk;
use axum::http::StatusCode;

pub const QUESTION: [(&str, &str); 19] = [
    ("question", "Does agent F keep <it> red?"),
    ("title", "Agent F on red"),
    ("asks", "step_matters"),
    ("fibre", "cotton"),
    ("dye_class", "direct"),
    ("margin", "4"),
    ("margin-own", ""),
    ("rounds", "5"),
    ("pieces", "24"),
    ("washes", "2"),
    ("days", "1"),
    ("arm-1-name", "plain"),
    ("arm-2-name", ""),
    ("arm-3-name", "agent F"),
    ("arm-3-agent", "agent F"),
    ("arm-3-amount", "2 tbsp"),
    ("arm-3-water", "1 gal"),
    ("arm-3-minutes", "20"),
    ("arm-3-temperature", "40"),
];

/// The question with other values in some fields.
fn with(other: &[(&'static str, &'static str)]) -> Vec<(&'static str, &'static str)> {
    let changed = QUESTION.iter().map(|(name, value)| {
        let found = other.iter().find(|(changed, _)| changed == name);
        (*name, found.map_or(*value, |(_, value)| *value))
    });
    changed.collect()
}

/// The text of the plan in its page.
fn plan_of(desk: &Desk, slug: &str) -> trial::plan::Plan {
    desk.bench
        .lock()
        .unwrap()
        .plan(slug, None)
        .unwrap()
        .unwrap()
        .plan
}

#[tokio::test]
async fn what_is_wrong_is_said_at_its_field_and_nothing_typed_is_lost() {
    let desk = Desk::new().await;
    for (field, value, marked) in [
        ("arm-3-amount", "a glug", "arm-3-amount"),
        ("arm-3-minutes", "soon", "arm-3-minutes"),
        ("arm-3-name", "plain", "arm-3-name"),
        ("margin", "own", "margin"),
        ("pieces", "3", "pieces"),
        ("pieces", "many", "pieces"),
        ("rounds", "0", "rounds"),
        ("arm-1-name", "", "arms"),
    ] {
        let answer = desk.post_form("/ask", &with(&[(field, value)])).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{field}");
        assert!(
            answer.text.contains(&format!("id=\"{marked}-problem\"")),
            "{field}: {value}"
        );
        assert!(answer.text.contains("Does agent F keep &#60;it&#62; red?"));
        assert!(answer.text.contains("value=\"1 gal\""));
    }
    assert!(desk.bench.lock().unwrap().plans().unwrap().is_empty());
}

#[tokio::test]
async fn a_question_becomes_a_plan_that_is_mended_and_started() {
    let desk = Desk::new().await;
    let answer = desk.post_form("/ask", &QUESTION).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    assert_eq!(answer.location(), "/plans/agent-f-on-red");
    let page = desk.get("/plans/agent-f-on-red").await;
    assert_eq!(page.status, StatusCode::OK);
    assert!(page.text.contains("Nothing found"));
    assert!(desk.get("/").await.text.contains("/plans/agent-f-on-red"));

    // Text that is no plan is told of in words, with its line.
    let broken = [
        ("revision", "1"),
        ("write", "1"),
        ("text", "question = Why?"),
    ];
    let broken = desk.post_form("/plans/agent-f-on-red", &broken).await;
    assert_eq!(broken.status, StatusCode::UNPROCESSABLE_ENTITY);
    let problem = broken.problem("text");
    assert!(problem.contains(
        "line 1 of the plan can&#39;t be used, at character 12: text needs quotation marks"
    ));
    assert!(problem.contains("question = Why?") && problem.contains("The parser says: "));

    // The line stays to the letter, so that it can be copied back: no minus sign as print has it.
    let negative = [("revision", "1"), ("write", "1"), ("text", "rounds = -3")];
    let negative = desk.post_form("/plans/agent-f-on-red", &negative).await;
    let (_, shown) = negative.set.split_once("<code class=\"pointed\">").unwrap();
    let (shown, _) = shown.split_once("</code>").unwrap();
    assert!(shown.contains("rounds = -3\n"), "{shown}");

    // A flaw by text, its mend by the button on the page.
    let mut plan = plan_of(&desk, "agent-f-on-red");
    let keepers = plan.arms[0].keepers;
    plan.arms[0].keepers = 0;
    let text = plan.to_toml().unwrap();
    let flawed = [("revision", "1"), ("write", "1"), ("text", text.as_str())];
    let answer = desk.post_form("/plans/agent-f-on-red", &flawed).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    let page = desk.get("/plans/agent-f-on-red").await;
    assert!(page.text.contains("has no keeper"));
    let stale = desk.post_form("/plans/agent-f-on-red", &flawed).await;
    assert_eq!(stale.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(stale.text.contains("changed in the meantime"));
    let mend = r#"{"mend":"add_keeper","arm":"plain"}"#;
    desk.post_form(
        "/plans/agent-f-on-red",
        &[("revision", "2"), ("mend", mend)],
    )
    .await;
    assert_eq!(plan_of(&desk, "agent-f-on-red").arms[0].keepers, 1);

    // Back to the first, with other numbers, another seed, then as flawed as before.
    let back = [("revision", "3"), ("back", "1")];
    desk.post_form("/plans/agent-f-on-red", &back).await;
    assert_eq!(plan_of(&desk, "agent-f-on-red").arms[0].keepers, keepers);
    let sizes = [
        ("revision", "4"),
        ("sizes", "1"),
        ("rounds", "7"),
        ("pieces-1", "3"),
        ("keepers-1", "1"),
        ("pieces-2", "0"),
        ("keepers-2", "1"),
    ];
    let none = desk.post_form("/plans/agent-f-on-red", &sizes).await;
    assert!(none.text.contains("id=\"pieces-2-problem\""));
    let seed = [("revision", "4"), ("draw", "1"), ("seed", "77")];
    desk.post_form("/plans/agent-f-on-red", &seed).await;
    assert_eq!(plan_of(&desk, "agent-f-on-red").seed, 77);
    let back = [("revision", "5"), ("back", "2")];
    desk.post_form("/plans/agent-f-on-red", &back).await;

    let started = desk
        .post_form("/plans/agent-f-on-red/start", &[("revision", "6")])
        .await;
    assert_eq!(started.status, StatusCode::SEE_OTHER, "{}", started.text);
    let trial = started.location().to_owned();
    let page = desk.get(&trial).await;
    assert!(page.text.contains("Known when it was planned") && page.text.contains("has no keeper"));
    let report = desk.get(&format!("{trial}/report")).await;
    assert!(report.text.contains("Known when the trial was planned"));
    let earlier = desk.get("/plans/agent-f-on-red?revision=1").await;
    assert!(earlier.text.contains("not the newest"));
}

#[tokio::test]
async fn a_started_trial_has_places_labels_a_list_and_hidden_codes() {
    let desk = Desk::new().await;
    desk.post_form("/ask", &QUESTION).await;
    let start = "/plans/agent-f-on-red/start";
    let started = desk.post_form(start, &[("revision", "1")]).await;
    let trial = started.location().to_owned();
    let order = plan_of(&desk, "agent-f-on-red").order();

    let boards = desk.get(&format!("{trial}/boards?paper=letter")).await;
    assert!(boards.text.contains("size: 215.9mm 279.4mm"));
    let packing = desk.get(&format!("{trial}/packing")).await;
    for piece in &order.pieces {
        assert!(boards.text.contains(&format!("{}, tag ", piece.piece.code)));
        assert!(packing.text.contains(&piece.piece.code));
    }
    assert!(packing.text.contains("agent F, 2 tbsp to 1 gal water"));
    let strips = desk.get(&format!("{trial}/tags?size=strip")).await;
    assert!(strips.text.contains("<circle"));

    let code = order.pieces[0].blind.to_string();
    let hidden = desk.get(&format!("{trial}/blind")).await;
    assert!(!hidden.text.contains(&code));
    assert!(
        !desk
            .get(&format!("{trial}.json"))
            .await
            .text
            .contains(&code)
    );
    assert!(!desk.get("/plans/agent-f-on-red").await.text.contains(&code));
    let labels = desk.get(&format!("{trial}/blind/labels")).await;
    assert!(labels.text.contains(&code));
    desk.post_form(&format!("{trial}/blind"), &[]).await;
    let open = desk.get(&format!("{trial}/blind")).await;
    assert!(open.text.contains(&code) && open.text.contains("Opened on"));
}

#[tokio::test]
async fn a_trial_without_a_plan_says_that_there_is_none() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    for page in ["boards", "packing", "blind", "blind/labels"] {
        let answer = desk.get(&format!("/trials/{}/{page}", trial.slug)).await;
        assert_eq!(answer.status, StatusCode::NOT_FOUND, "{page}");
        assert!(answer.text.contains("without a plan"), "{page}");
    }
    assert_eq!(
        desk.get("/plans/nothing").await.status,
        StatusCode::NOT_FOUND
    );
}

#[tokio::test]
async fn a_plan_that_is_kept_is_shown_though_its_promise_cant_be() {
    let desk = Desk::new().await;
    let database = rusqlite::Connection::open(desk.home.path().join("woadstone.sqlite")).unwrap();
    database.execute_batch("DROP TABLE plan_promise").unwrap();
    let answer = desk.post_form("/ask", &QUESTION).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    assert_eq!(answer.location(), "/plans/agent-f-on-red");
    let seed = [("revision", "1"), ("draw", "1"), ("seed", "77")];
    let answer = desk.post_form("/plans/agent-f-on-red", &seed).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    assert_eq!(plan_of(&desk, "agent-f-on-red").seed, 77);
}

#[tokio::test]
async fn which_arm_stains_more_can_be_asked_and_the_plan_says_whether_it_can_tell() {
    let desk = Desk::new().await;
    desk.post_form("/ask", &QUESTION).await;
    let shared = desk.get("/plans/agent-f-on-red").await.text;
    assert!(shared.contains("To compare the arms by what they stain"));

    let mut asked = QUESTION.to_vec();
    asked.push(("staining", "yes"));
    let refused = desk.post_form("/ask", &asked).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(refused.problem("washes").contains("leave staining out"));
    let ticked = "name=\"staining\" value=\"yes\" checked";
    assert!(refused.text.contains(ticked));

    let washes = with(&[("washes", "8")]);
    let asked: Vec<_> = washes.into_iter().chain([("staining", "yes")]).collect();
    let answer = desk.post_form("/ask", &asked).await;
    let page = desk.get(answer.location()).await.text;
    assert!(page.contains("Staining can be compared: each arm is washed by itself"));
    let slug = answer.location().trim_start_matches("/plans/");
    let mut plan = plan_of(&desk, slug);
    assert!(plan.staining);

    // Each piece in a jar with a strip of its own, written by hand.
    let wash = |step: &&mut trial::plan::Step| step.kind == trial::plan::StepKind::Wash;
    plan.steps
        .iter_mut()
        .filter(wash)
        .for_each(|step| step.loads.clear());
    let text = plan.to_toml().unwrap();
    let jars = [("revision", "1"), ("write", "1"), ("text", text.as_str())];
    let answer = desk.post_form(answer.location(), &jars).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    let page = desk.get(answer.location()).await.text;
    assert!(page.contains("each piece by itself with multifibre tied or sewn to it"));
    let start = format!("{}/start", answer.location());
    let answer = desk.post_form(&start, &[("revision", "2")]).await;
    let trial = desk.get(&format!("{}.json", answer.location())).await.text;
    assert!(trial.contains("\"A1, multifibre\""), "{trial}");
}

/// A plan of so many arms, whose trials take long to draw.
fn large(arms: usize, pieces: usize) -> trial::plan::Plan {
    let arm = |arm| format!("[[arms]]\nname = \"agent {arm}\"\npieces = {pieces}\n");
    let arms: String = (0..arms).map(arm).collect();
    trial::plan::Plan::from_toml(&format!(
        "question = \"Which?\"\nasks = \"which_is_best\"\nmargin = \"grade 4\"\nrounds = 2\n{arms}\
         [[steps]]\nkind = \"wash\"\nloads = [\"wash 1\", \"wash 2\", \"wash 3\"]\n"
    ))
    .expect("the plan is sound")
}

fn keep(desk: &Desk, plan: &trial::plan::Plan) -> String {
    let mut bench = desk.bench.lock().expect("nobody failed at the bench");
    let kept = bench.keep_plan(plan, "written", "2030-01-01T00:00:00Z");
    kept.expect("the plan is kept")
}

#[tokio::test]
async fn a_plan_is_shown_before_what_it_can_show_is_worked_out() {
    let desk = Desk::new().await;
    let plan = large(12, 40);
    let slug = keep(&desk, &plan);
    let (page, part) = (format!("/plans/{slug}"), format!("/plans/{slug}/power"));
    let first = desk.get(&page).await;
    assert_eq!(first.status, StatusCode::OK);
    assert!(first.text.contains("Being worked out"));
    let again = format!("href=\"{page}?revision=1&amp;look=1#power\"");
    assert!(first.text.contains(&again) && first.text.contains("All 480 pieces"));
    let awaited = format!("data-awaited=\"{part}?revision=1\"");
    assert!(first.text.contains(&awaited));
    assert_eq!(desk.get(&part).await.status, StatusCode::ACCEPTED);
    let shown = loop {
        let answer = desk.get(&part).await;
        if answer.status != StatusCode::ACCEPTED {
            break answer;
        }
        tokio::time::sleep(std::time::Duration::from_millis(50)).await;
    };
    assert_eq!(shown.status, StatusCode::OK);
    assert!(shown.text.contains("show a difference by chance"));
    assert!(!shown.text.contains("<html"));
    let promise = {
        let bench = desk.bench.lock().unwrap();
        assert!(bench.unpromised_plans(9).unwrap().plans.is_empty());
        bench.kept_promise(&plan).unwrap().unwrap()
    };
    assert_eq!(promise.comparisons.len(), 66);
    let later = desk.get(&page).await.text;
    assert!(!later.contains("data-awaited") && later.contains("agent 11 against agent 0"));
}

/// Two kinds of load with a load for each piece are more than can be fitted.
#[tokio::test]
async fn why_a_plan_can_promise_nothing_is_said() {
    let desk = Desk::new().await;
    let mut plan = large(2, 200);
    plan.steps[0].loads = (0..200).map(|load| format!("wash {load}")).collect();
    let mut soak = trial::plan::Step::of(trial::plan::StepKind::Soak);
    soak.loads = (0..200).map(|load| format!("jar {load}")).collect();
    plan.steps.push(soak);
    let slug = keep(&desk, &plan);
    for _ in 0..2 {
        let page = loop {
            let page = desk.get(&format!("/plans/{slug}")).await.text;
            if !page.contains("Being worked out") {
                break page;
            }
        };
        assert!(page.contains("400"), "{page}");
    }
}

#[tokio::test]
async fn a_plan_of_two_washes_a_round_is_started_with_the_witnesses_of_both() {
    let desk = Desk::new().await;
    let wash = "[[steps]]\nkind = \"wash\"\nwitnesses = [\"plain\"]\n";
    let head = "title = \"Two washes\"\nquestion = \"Which stains?\"\nstaining = true\nmargin = 2.7\nrounds = 2\n";
    let arms = "[[arms]]\nname = \"a\"\npieces = 4\n[[arms]]\nname = \"b\"\npieces = 4\n";
    let plan = trial::plan::Plan::from_toml(&[head, arms, wash, wash].concat()).unwrap();
    let kept = desk
        .bench
        .lock()
        .unwrap()
        .keep_plan(&plan, "", "2031-05-01T08:00:00Z");
    let slug = kept.unwrap();
    let page = desk.get(&format!("/plans/{slug}")).await;
    assert!(page.text.contains("with 4 witness cloths"));
    let start = format!("/plans/{slug}/start");
    let started = desk.post_form(&start, &[("revision", "1")]).await;
    assert_eq!(started.status, StatusCode::SEE_OTHER, "{}", started.text);
    let trial = started.location().trim_start_matches("/trials/");
    let bench = desk.bench.lock().unwrap();
    let trial = bench.trial(trial).unwrap().unwrap();
    let codes: Vec<String> = trial.pieces.into_iter().map(|piece| piece.code).collect();
    assert!(codes.contains(&"C4, wash 2, plain".to_owned()), "{codes:?}");
}
