//! Figures as print sets them: what a line must not break, and true minus signs.
//!
//! Sentences and amounts are written, kept and compared with plain spaces and hyphens. Where a page or
//! a print shows them, `5 g`, `60 °C`, `26 Nov` and `L* 41.0` get a no-break space (U+00A0) and `-15`
//! a minus (U+2212), as the SI brochure and ISO 80000-1 ask: a number and its unit stay together.

/// Elements whose text is kept to the letter: it is code, is typed, or is sent as it stands.
const KEPT: &[&str] = &[
    "script", "style", "textarea", "pre", "code", "kbd", "samp", "option", "svg",
];
/// What stays on the line of the number before it.
const UNITS: &[&str] = &[
    "°C", "°F", "°", "K", "g", "kg", "mg", "µg", "L", "l", "ml", "mL", "cl", "dl", "cm", "mm",
    "µm", "m", "nm", "oz", "lb", "US", "fl", "gal", "qt", "pt", "tsp", "tbsp", "cup", "cups",
    "min", "h", "s", "%", "‰", "kW", "W", "kB", "MB", "GB", "px", "am", "pm", "±",
];
/// What stays on the line of the number behind it.
const SIGNS: &[&str] = &["L*", "a*", "b*", "pH", "±", "≤"];
/// Words of a unit that has several.
const CHAINS: &[(&str, &[&str])] = &[
    (
        "US",
        &["fl", "gal", "qt", "pt", "cup", "cups", "tsp", "tbsp"],
    ),
    ("fl", &["oz"]),
    ("%", &["owf", "w/v"]),
];
const MONTHS: &[&str] = &[
    "Jan",
    "Feb",
    "Mar",
    "Apr",
    "May",
    "Jun",
    "Jul",
    "Aug",
    "Sep",
    "Oct",
    "Nov",
    "Dec",
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];
const NO_BREAK: char = '\u{a0}';
const MINUS: char = '\u{2212}';

/// A page with its figures set; tags, attributes, scripts and code stay as they are. Setting it again
/// changes nothing.
///
/// ```
/// let set = report::typeset("<p title=\"5 g\">Add 5 g, at -3 °C.</p>");
/// assert_eq!(set, "<p title=\"5 g\">Add 5\u{a0}g, at \u{2212}3\u{a0}°C.</p>");
/// ```
pub fn typeset(html: &str) -> String {
    let mut out = String::with_capacity(html.len() + html.len() / 32);
    let mut rest = html;
    while let Some(at) = rest.find('<') {
        let (words, from) = rest.split_at(at);
        set(words, &mut out);
        let tag = &from[..tag_end(from)];
        out.push_str(tag);
        rest = &from[tag.len()..];
        let Some(name) = opened(tag) else { continue };
        if KEPT.iter().any(|kept| name.eq_ignore_ascii_case(kept)) {
            let kept = closing(rest, name);
            out.push_str(&rest[..kept]);
            rest = &rest[kept..];
        }
    }
    set(rest, &mut out);
    out
}

/// Where a tag or comment ends; the whole of it where it doesn't.
fn tag_end(from: &str) -> usize {
    if from.starts_with("<!--") {
        return from.find("-->").map_or(from.len(), |at| at + 3);
    }
    let mut quote = None;
    for (at, byte) in from.bytes().enumerate() {
        match (quote, byte) {
            (None, b'>') => return at + 1,
            (None, b'"' | b'\'') => quote = Some(byte),
            (Some(open), byte) if open == byte => quote = None,
            _ => {}
        }
    }
    from.len()
}

/// The name of the element that a tag opens.
fn opened(tag: &str) -> Option<&str> {
    let name = tag.strip_prefix('<')?;
    let end = name.find(|c: char| !c.is_ascii_alphanumeric())?;
    (end > 0 && !tag.ends_with("/>")).then(|| &name[..end])
}

/// Where the element of that name is closed.
fn closing(rest: &str, name: &str) -> usize {
    let mut from = 0;
    while let Some(at) = rest[from..].find("</") {
        let found = from + at;
        let closed = rest.as_bytes().get(found + 2..found + 2 + name.len());
        if closed.is_some_and(|closed| closed.eq_ignore_ascii_case(name.as_bytes())) {
            return found;
        }
        from = found + 2;
    }
    rest.len()
}

/// Sets words between two tags.
fn set(words: &str, out: &mut String) {
    let mut before = None;
    let mut from = 0;
    for (at, letter) in words.char_indices() {
        let (head, tail) = (&words[..at], &words[at + letter.len_utf8()..]);
        let set = match letter {
            ' ' if stays_together(head, tail) => Some(NO_BREAK),
            '-' if is_minus(before, tail) => Some(MINUS),
            _ => None,
        };
        if let Some(set) = set {
            out.push_str(&words[from..at]);
            out.push(set);
            from = at + letter.len_utf8();
        }
        before = Some(letter);
    }
    out.push_str(&words[from..]);
}

/// Whether a hyphen is the sign of a number.
fn is_minus(before: Option<char>, tail: &str) -> bool {
    before.is_none_or(|c| c.is_whitespace() || "(\u{201c}[".contains(c))
        && tail.starts_with(|c: char| c.is_ascii_digit())
}

/// Whether a line must not break between what stands before a space and what comes after it.
fn stays_together(head: &str, tail: &str) -> bool {
    let next = &tail[..tail
        .find(|c: char| c.is_whitespace() || ",;:.()".contains(c))
        .unwrap_or(tail.len())];
    let begins = head.rfind(|c: char| c.is_whitespace() || c == '(');
    let last = &head[begins.map_or(0, |at| {
        at + head[at..].chars().next().map_or(1, char::len_utf8)
    })..];
    let is_number =
        |word: &str| word.ends_with(|c: char| c.is_ascii_digit() || "½¼¾⅓⅔⅛".contains(c));
    let is_day =
        |word: &str| matches!(word.len(), 1 | 2) && word.bytes().all(|b| b.is_ascii_digit());
    let is_code = |word: &str| word.len() == 3 && word.bytes().all(|b| b.is_ascii_uppercase());
    if is_number(last) {
        let unit = next.split('/').next().unwrap_or_default();
        return UNITS.contains(&unit) || is_code(next) || is_day(last) && MONTHS.contains(&next);
    }
    let unsigned = next.strip_prefix(['-', '+', MINUS]).unwrap_or(next);
    if unsigned.starts_with(|c: char| c.is_ascii_digit()) {
        return SIGNS.contains(&last) || is_code(last) || is_day(next) && MONTHS.contains(&last);
    }
    CHAINS
        .iter()
        .any(|(first, then)| *first == last && then.contains(&next))
}

#[cfg(test)]
mod tests {
    use super::typeset;
    use proptest::prelude::*;

    /// With `~` for a no-break space.
    fn shown(html: &str) -> String {
        typeset(html).replace('\u{a0}', "~")
    }

    /// SI brochure (9th edition, 2019), 5.4.3: a space between number and unit, also before % and °C;
    /// ISO 80000-1, 7.1.4, likewise; that no line breaks there is common practice, from memory.
    #[test]
    fn numbers_stay_with_their_units() {
        for (plain, set) in [
            ("Add 5 g to 2 L.", "Add 5~g to 2~L."),
            (
                "at 60 °C (140 °F) for 20 min",
                "at 60~°C (140~°F) for 20~min",
            ),
            ("2.5 % owf, 12 g/L", "2.5~%~owf, 12~g/L"),
            ("6.76 US fl oz (200 ml)", "6.76~US~fl~oz (200~ml)"),
            ("2 1/2 tsp, 1½ cups", "2 1/2~tsp, 1½~cups"),
            ("0.74 EUR or EUR 0.74", "0.74~EUR or EUR~0.74"),
            ("L* 41.0 a* -20.5", "L*~41.0 a*~−20.5"),
            ("Nov 26, 2026, 6:05 pm", "Nov~26, 2026, 6:05~pm"),
            ("26 November 2026", "26~November 2026"),
            ("-15 to +17 %", "−15 to +17~%"),
            ("grade 4-5, 2026-11-26, A1-3", "grade 4-5, 2026-11-26, A1-3"),
            ("5 pieces of 3 arms", "5 pieces of 3 arms"),
            ("step 3 goes", "step 3 goes"),
            ("", ""),
        ] {
            assert_eq!(shown(plain), set);
        }
    }

    #[test]
    fn tags_and_code_stay_to_the_letter() {
        for html in [
            "<input value=\"5 g\" data-a='>5 g'>",
            "<textarea name=t>5 g -3</textarea>",
            "<pre>5 g</pre><code>-3 g</code><option>60 °C</option>",
            "<script>a -3 < 5 g</script>",
            "<svg><text>5 g</text></svg>",
            "<!-- 5 g -->",
            "<p title=\"5 g",
        ] {
            assert_eq!(typeset(html), html);
        }
        assert_eq!(
            shown("<b>5 g</b><PRE>5 g</PRE>5 g"),
            "<b>5~g</b><PRE>5 g</PRE>5~g"
        );
    }

    proptest! {
        #[test]
        fn it_changes_spaces_and_hyphens_only_and_only_once(html in "[<>a-z0-9 \"'°C%g/-]{0,60}") {
            let set = typeset(&html);
            let plain = set.replace('\u{a0}', " ").replace('\u{2212}', "-");
            prop_assert_eq!(&plain, &html);
            prop_assert_eq!(typeset(&set), set);
        }
    }
}
