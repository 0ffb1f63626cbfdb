//! Names of trials in addresses.

use std::collections::HashSet;
use unicode_normalization::UnicodeNormalization;

/// Letters of a slug before its number.
const LONGEST: usize = 60;
/// The slug of a title without a letter that can stand in an address.
const NAMELESS: &str = "trial";
/// Addresses beside those of trials, which no trial may take.
const TAKEN_BY_PAGES: [&str; 1] = ["new"];

/// Lower-case ASCII letters and digits of a title, hyphens for what lies between.
pub(crate) fn plain(title: &str) -> String {
    let mut slug = String::new();
    let mut gap = false;
    // Compatibility decomposition parts accents from their letters.
    for c in title.nfkd() {
        if c.is_ascii_alphanumeric() {
            let hyphen = gap && !slug.is_empty();
            if slug.len() + usize::from(hyphen) >= LONGEST {
                break;
            }
            if hyphen {
                slug.push('-');
            }
            slug.push(c.to_ascii_lowercase());
            gap = false;
        } else if !unicode_normalization::char::is_combining_mark(c) && c != '\'' && c != '\u{2019}'
        {
            gap = true;
        }
    }
    if slug.is_empty() {
        NAMELESS.to_owned()
    } else {
        slug
    }
}

/// The plain slug, or the first of `-2`, `-3`, ... that is free.
pub(crate) fn free(plain: &str, taken: &HashSet<String>) -> String {
    let is_free = |slug: &str| !taken.contains(slug) && !TAKEN_BY_PAGES.contains(&slug);
    if is_free(plain) {
        return plain.to_owned();
    }
    (2_u64..)
        .map(|n| format!("{plain}-{n}"))
        .find(|slug| is_free(slug))
        .expect("finitely many slugs are taken")
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn titles_become_slugs() {
        for (title, slug) in [
            ("Onion & alum", "onion-alum"),
            ("  Weld, 2nd bath!  ", "weld-2nd-bath"),
            ("Färöer crème brûlée", "faroer-creme-brulee"),
            ("The dyer's oak", "the-dyers-oak"),
            ("藍染", "trial"),
            ("", "trial"),
        ] {
            assert_eq!(plain(title), slug, "{title}");
        }
    }

    #[test]
    fn a_taken_slug_gets_a_number() {
        let taken = HashSet::from(["weld".to_owned(), "weld-2".to_owned()]);
        assert_eq!(free("madder", &taken), "madder");
        assert_eq!(free("weld", &taken), "weld-3");
        assert_eq!(free("new", &taken), "new-2");
    }

    proptest! {
        #[test]
        fn every_title_has_a_slug(title in "\\PC{0,90}") {
            let slug = plain(&title);
            prop_assert!(!slug.is_empty() && slug.len() <= LONGEST);
            prop_assert!(slug.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-'));
            prop_assert!(!slug.starts_with('-') && !slug.ends_with('-') && !slug.contains("--"));
        }
    }
}
