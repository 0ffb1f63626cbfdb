//! `woadstone plan PLAN.toml`.

use crate::text;
use std::fmt::Write;

use serde::Serialize;
use trial::plan::{
    Carried, DoseDeparture, Enquiry, Finding, Order, Plan, Promise, RUNS, Staining, carried,
    critique, departures,
};

use crate::{
    cli::PlanArgs,
    command::file,
    outcome::{Outcome, Stop, print, print_json},
};

/// What is printed of a plan.
#[derive(Serialize)]
struct Looked {
    plan: Plan,
    promise: Promise,
    findings: Vec<Finding>,
    departures: Vec<DoseDeparture>,
    carried: Vec<Carried>,
    staining: Staining,
    order: Order,
}

/// Prints design, power and critique of a plan file, or the plan for an enquiry.
pub fn run(args: &PlanArgs) -> Outcome {
    let bytes = file(&args.plan)?;
    let name = args.plan.display();
    let text = String::from_utf8(bytes)
        .map_err(|_| Stop::refused(text::command::this_is_no_text_in_utf_8(&name)))?;
    let refused = |error: trial::plan::PlanError| {
        let at = if error.field.is_empty() {
            String::new()
        } else {
            format!(" ({})", error.field)
        };
        Stop::refused(format!("{name}{at}: {error}"))
    };
    if args.propose {
        let enquiry = Enquiry::from_toml(&text).map_err(refused)?;
        let proposal = enquiry.propose().map_err(refused)?;
        return if args.json {
            print_json(&proposal)
        } else {
            let plan = proposal.plan.to_toml().map_err(refused)?;
            print(&format!("# {}\n{plan}", proposal.sentence))
        };
    }
    let plan = Plan::from_toml(&text).map_err(refused)?;
    let looked = Looked {
        promise: plan.promise(RUNS).map_err(refused)?,
        findings: critique(&plan),
        departures: departures(&plan),
        carried: carried(&plan),
        staining: plan.staining_told(),
        order: plan.order(),
        plan,
    };
    if args.json {
        print_json(&looked)
    } else {
        print(&as_text(&looked))
    }
}

fn as_text(looked: &Looked) -> String {
    let mut text = String::new();
    design(&mut text, looked);
    power(&mut text, &looked.promise);
    criticism(&mut text, looked);
    drawn(&mut text, &looked.order);
    text
}

fn design(text: &mut String, looked: &Looked) {
    let plan = &looked.plan;
    let _ = writeln!(
        text,
        "{}\n{}\n",
        plan.question,
        text::command::margin_and_rounds(plan.margin, plan.rounds)
    );
    for (i, arm) in plan.arms.iter().enumerate() {
        let control = if i == plan.control() {
            text::command::compared_with()
        } else {
            ""
        };
        let _ = writeln!(
            text,
            "  {}",
            text::command::pieces_keepers(
                format_args!("{:<28}", arm.name),
                arm.pieces,
                arm.keepers,
                control
            )
        );
    }
}

fn power(text: &mut String, promise: &Promise) {
    let _ = writeln!(
        text,
        "\n{}",
        text::command::how_often_it_is_shown_of_100(&promise.scatter.origin)
    );
    text.push_str(&format!(
        "                                       {}\n",
        text::command::margin_grade_4_alike_by_chance()
    ));
    for promised in &promise.comparisons {
        let pair = format!("{} / {}", promised.second, promised.first);
        let hundred = |share: f64| 100.0 * share;
        let _ = writeln!(
            text,
            "  {pair:<36} {:>6.0}  {:>7.0}  {:>5.0}  {:>9.1}   {}",
            hundred(promised.shows_margin),
            hundred(promised.shows_grade_4),
            hundred(promised.shows_alike),
            hundred(promised.errs),
            promised.basis.words(),
        );
    }
    let sizes: Vec<String> = promise
        .by_pieces
        .iter()
        .map(|size| format!("{}: {:.0}", size.pieces, 100.0 * size.shows_margin))
        .collect();
    let _ = writeln!(
        text,
        "  {}",
        text::command::the_margin_by_pieces_per_arm_weakest(sizes.join(", "))
    );
}

fn criticism(text: &mut String, looked: &Looked) {
    if looked.findings.is_empty() {
        text.push_str(&format!(
            "\n{}\n",
            text::command::no_finding_this_plan_can_answer()
        ));
    } else {
        let _ = writeln!(text, "\n{}", text::command::findings(looked.findings.len()));
    }
    for finding in &looked.findings {
        let _ = writeln!(text, "- {}\n  {}", finding.sentence, finding.consequence);
        for mend in &finding.mends {
            let _ = writeln!(text, "  {}", text::command::mend(mend.label()));
        }
    }
    for departure in looked
        .departures
        .iter()
        .filter(|departure| departure.on_purpose)
    {
        let _ = writeln!(text, "{}", text::command::on_purpose(departure.sentence()));
    }
    let staining = looked.staining.sentence(looked.plan.staining);
    let _ = writeln!(text, "\n{staining}");
    if !looked.carried.is_empty() {
        text.push_str(&format!("\n{}\n", text::command::where_dye_can_travel()));
        for way in &looked.carried {
            let shows = if way.shows {
                text::command::would_show()
            } else {
                ""
            };
            let _ = writeln!(
                text,
                "  {}",
                text::command::in_what(&way.from, &way.to, &way.through, shows)
            );
        }
    }
}

fn drawn(text: &mut String, order: &Order) {
    let _ = writeln!(
        text,
        "\n{}",
        text::command::random_order_from_seed(order.seed)
    );
    for turns in &order.loads {
        let _ = writeln!(
            text,
            "  {}: {}",
            turns.kind,
            turns.loads.join(text::command::then())
        );
    }
    text.push_str(&format!(
        "  {}\n",
        text::command::piece_arm_blind_board_window_shares()
    ));
    for piece in &order.pieces {
        let shares: Vec<&str> = piece.shares.iter().map(|(_, name)| name.as_str()).collect();
        let _ = writeln!(
            text,
            "  {:<12} {:<28} {}  {:>4} {:>6}   {}",
            piece.piece.code,
            piece.arm_name,
            piece.blind,
            piece.board,
            piece.window,
            shares.join(", ")
        );
    }
}
