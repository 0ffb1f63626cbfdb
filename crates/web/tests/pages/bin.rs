//! Studio, bin and journal, by forms alone.

use crate::desk::Desk;
use axum::http::StatusCode;

#[tokio::test]
async fn a_trial_goes_into_the_bin_and_comes_back() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let address = format!("/trials/{}", trial.slug);
    assert!(
        desk.get(&address)
            .await
            .text
            .contains("Move this trial to the bin")
    );
    let fields = |act| {
        [
            ("kind", "trial"),
            ("name", trial.slug.as_str()),
            ("do", act),
        ]
    };
    let moved = desk.post_form("/bin", &fields("put")).await;
    assert_eq!(
        (moved.status, moved.location()),
        (StatusCode::SEE_OTHER, "/bin")
    );
    assert!(!desk.get("/").await.text.contains(&address));
    let bin = desk.get("/bin").await.text;
    assert!(bin.contains("Onion &#38; alum") && bin.contains("Take it back"));
    assert!(
        desk.get("/studio")
            .await
            .text
            .contains("1 thing, to be taken back")
    );
    assert!(desk.get(&address).await.text.contains("lies in the bin"));
    let back = desk.post_form("/bin", &fields("restore")).await;
    assert_eq!(back.location(), address);
    assert!(desk.get("/").await.text.contains(&address));
    assert!(
        desk.get("/bin")
            .await
            .text
            .contains("Nothing lies in the bin")
    );
    for journal in [format!("{address}/journal"), "/journal".to_owned()] {
        let page = desk.get(&journal).await.text;
        assert!(
            page.contains("” was put in the bin.") && page.contains("” was taken out of the bin.")
        );
    }
}

#[tokio::test]
async fn plans_and_recipes_have_a_bin_too() {
    let desk = Desk::new().await;
    desk.post_form("/ask", &crate::plans::QUESTION).await;
    let plan = "/plans/agent-f-on-red";
    assert!(
        desk.get(plan)
            .await
            .text
            .contains("Move this plan to the bin")
    );
    let fields = [("kind", "plan"), ("name", "agent-f-on-red"), ("do", "put")];
    desk.post_form("/bin", &fields).await;
    assert!(!desk.get("/").await.text.contains(plan));
    assert!(desk.get(plan).await.text.contains("lies in the bin"));
}

#[tokio::test]
async fn a_trials_journal_leads_to_the_revisions_of_its_plan() {
    let desk = Desk::new().await;
    desk.post_form("/ask", &crate::plans::QUESTION).await;
    let trial = {
        let mut bench = desk.bench.lock().unwrap();
        let kept = bench.plan("agent-f-on-red", None).unwrap().unwrap();
        let why = "a <round> more";
        let mut plan = kept.plan;
        plan.rounds += 1;
        let now = "2030-04-02T10:00:00Z";
        bench
            .revise_plan("agent-f-on-red", 1, &plan, why, now)
            .unwrap();
        let id = bench.start_trial("agent-f-on-red", 2, now).unwrap();
        bench.trial_by_id(id).unwrap().unwrap().slug
    };
    let page = desk.get(&format!("/trials/{trial}/journal")).await.text;
    assert!(page.contains("was changed, revision 2: a &#60;round&#62; more."));
    let link = "/plans/agent-f-on-red?revision=2";
    assert!(
        page.contains(&format!("href=\"{link}\">See this revision")),
        "{page}"
    );
    assert_eq!(desk.get(link).await.status, StatusCode::OK);
    // Addresses of pages of a journal as they once were.
    let short = desk
        .get(&format!("/trials/{trial}/journal?before=1.2.3"))
        .await;
    assert_eq!(short.status, StatusCode::BAD_REQUEST);
}

#[tokio::test]
async fn nonsense_is_refused_and_changes_nothing() {
    let desk = Desk::new().await;
    for (kind, name) in [
        ("trial", "nothing"),
        ("vault", "x"),
        ("photo", "-1"),
        ("", ""),
    ] {
        let fields = [("kind", kind), ("name", name), ("do", "put")];
        let answer = desk.post_form("/bin", &fields).await;
        assert!(answer.status.is_client_error(), "{kind} {name}");
        assert!(answer.text.contains("There is no such"), "{}", answer.text);
    }
    let unsigned = desk.get("/journal?before=soon").await;
    assert_eq!(unsigned.status, StatusCode::BAD_REQUEST);
    assert!(
        desk.get("/journal")
            .await
            .text
            .contains("Nothing has happened yet")
    );
}
