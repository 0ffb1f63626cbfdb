//! How a sentence begins.

/// Words with a capital letter, as a sentence begins; other letters stay.
///
/// ```
/// assert_eq!(locale::capital("été en Provence"), "Été en Provence");
/// assert_eq!(locale::capital(""), "");
/// ```
pub fn capital(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next().into_iter().flat_map(char::to_uppercase);
    first.chain(letters).collect()
}
