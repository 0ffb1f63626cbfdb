//! The language that texts are said in.

/// Code of the language that texts are said in, as BCP 47 writes it: always `en`, the only language
/// that `text/` holds. Texts ask for it as soon as there is a second one; the choice between them
/// belongs in [`Locale`](crate::Locale).
pub fn language() -> &'static str {
    "en"
}
