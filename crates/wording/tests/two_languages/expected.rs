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
