//! A sign for each verdict: two cloths and how they lie to each other.

use trial::decide::Verdict;

/// Two squares apart (visible), nearly touching (small), one on the other (alike), or one only
/// guessed at (open). Decoration beside the verdict's name, hidden from screen readers.
pub fn verdict_sign(verdict: Verdict) -> String {
    let body = match verdict {
        Verdict::Visible => {
            r#"<path d="M3 12h16v16H3z" fill="currentColor"/><path d="M29 13h14v14H29z" fill="none" stroke="currentColor" stroke-width="2"/>"#
        }
        Verdict::Small => {
            r#"<path d="M8 12h16v16H8z" fill="currentColor"/><path d="M26 13h14v14H26z" fill="none" stroke="currentColor" stroke-width="2"/>"#
        }
        Verdict::Alike => {
            r#"<path d="M12 9h16v16H12z" fill="currentColor"/><path d="M19 16h16v16H19z" fill="none" stroke="currentColor" stroke-width="2"/>"#
        }
        Verdict::Open => {
            r#"<path d="M4 13h15v15H4z" fill="none" stroke="currentColor" stroke-width="2"/><path d="M28 13h15v15H28z" fill="none" stroke="currentColor" stroke-width="2" stroke-dasharray="3 3"/>"#
        }
    };
    format!(
        r#"<svg class="sign" viewBox="0 0 46 40" width="46" height="40" aria-hidden="true">{body}</svg>"#
    )
}
