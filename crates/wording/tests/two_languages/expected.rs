#[allow(clippy::all)]
pub mod wool {
    #[must_use]
    fn merino() -> &'static str {
        match crate::language() {
            "nl" => "merinowol",
            _ => "merino",
        }
    }
    #[must_use]
    fn merino_about() -> &'static str {
        match crate::language() {
            "nl" => "Fijn en zacht.",
            _ => "Fine and soft.",
        }
    }
    #[must_use]
    fn longhair() -> &'static str {
        "long-haired wool"
    }
    #[must_use]
    pub fn said(name: &str) -> Option<&'static str> {
        Some(match name {
            "merino" => merino(),
            "merino-about" => merino_about(),
            "longhair" => longhair(),
            _ => return None,
        })
    }
    #[cfg(test)]
    pub const NAMES: [&str; 3] = ["merino", "merino-about", "longhair"];
}
#[allow(clippy::all)]
pub mod yarn {
    #[must_use]
    pub fn soak_first() -> &'static str {
        match crate::language() {
            "nl" => "Week het garen eerst",
            _ => "Soak the yarn first",
        }
    }
    #[must_use]
    pub fn half_full(share: impl ::std::fmt::Display, what: impl ::std::fmt::Display) -> String {
        format!("The pot is {share} % full of {what}.")
    }
    #[must_use]
    pub fn skeins_left(count: impl ::std::fmt::Display, colour: impl ::std::fmt::Display) -> String {
        let count = count.to_string();
        match crate::language() {
            "nl" => format!("{}.", match count.as_str() { n if n == "1" => format!("Er is één streng {colour}"), _ => format!("Er zijn {count} strengen {colour}") }),
            _ => format!("{}.", match count.as_str() { "0" => format!("No skein of {colour} is left"), n if n == "1" => format!("One skein of {colour} is left"), _ => format!("{count} skeins of {colour} are left") }),
        }
    }
    #[must_use]
    pub fn braces() -> &'static str {
        "{blue} and \"red\""
    }
}
const _: fn() -> &'static str = crate::language;
