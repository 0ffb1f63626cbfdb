//! Writing texts as Rust.

use crate::error::WordingError;
use crate::message::{self, Part, Pattern};
use crate::plural;
use crate::read::{File, Folder};
use std::fmt::Write as _;

/// Words that Rust keeps for itself, as far as someone might name a text or a value so.
const KEPT: [&str; 20] = [
    "as", "box", "do", "else", "final", "for", "if", "in", "let", "loop", "match", "mod", "move",
    "ref", "self", "type", "use", "where", "while", "yield",
];

/// One module for each file.
pub(crate) fn modules(
    source: &Folder,
    others: &[Folder],
    language: &str,
    tables: &[&str],
) -> Result<String, WordingError> {
    let mut rust = String::new();
    for (module, file) in &source.files {
        let translated: Vec<(&str, &File)> = others
            .iter()
            .filter_map(|other| Some((other.language.as_str(), other.files.get(module)?)))
            .collect();
        let _ = write!(rust, "#[allow(clippy::all)]\npub mod {module} {{\n");
        for (name, pattern) in &file.messages {
            let fault = |why| file.fault(name, why);
            let mut said = vec![(source.language.as_str(), pattern)];
            said.extend(
                translated
                    .iter()
                    .filter_map(|(language, file)| Some((*language, file.message(name)?))),
            );
            let is_looked_up = tables.contains(&module.as_str());
            if is_looked_up && !message::variables(pattern).is_empty() {
                let why = "what is told of a table's entry can't have variables".to_owned();
                return Err(fault(why));
            }
            let public = if is_looked_up { "" } else { "pub " };
            rust += &function(public, name, &said, language).map_err(fault)?;
        }
        if tables.contains(&module.as_str()) {
            rust += &lookup(file).map_err(|(name, why)| file.fault(&name, why))?;
        }
        rust += "}\n";
    }
    // With one language only, nothing asks for it; a second one must find it all the same.
    let _ = writeln!(rust, "const _: fn() -> &'static str = {language};");
    Ok(rust)
}

/// The function that finds a message of a table by its name, and the names of all; or which name Rust
/// can't have, and why.
fn lookup(file: &File) -> Result<String, (String, String)> {
    let mut rust = String::from(
        "    #[must_use]\n    pub fn said(name: &str) -> Option<&'static str> {\n        Some(match name {\n",
    );
    for (name, _) in &file.messages {
        let function = identifier(name).map_err(|why| (name.clone(), why))?;
        let _ = writeln!(rust, "            {name:?} => {function}(),");
    }
    rust += "            _ => return None,\n        })\n    }\n";
    let names: Vec<&str> = file.messages.iter().map(|(name, _)| &**name).collect();
    let _ = writeln!(
        rust,
        "    #[cfg(test)]\n    pub const NAMES: [&str; {}] = {names:?};",
        names.len()
    );
    Ok(rust)
}

/// The function of a message, said in the source's language first.
fn function(
    public: &str,
    name: &str,
    said: &[(&str, &Pattern)],
    language: &str,
) -> Result<String, String> {
    let (source_language, source) = said[0];
    let variables = message::variables(source);
    let parameters: Vec<String> = variables
        .iter()
        .map(|variable| {
            Ok(format!(
                "{}: impl ::std::fmt::Display",
                identifier(variable)?
            ))
        })
        .collect::<Result<_, String>>()?;
    let gives = if variables.is_empty() {
        "&'static str"
    } else {
        "String"
    };
    let mut rust = String::new();
    let _ = write!(
        rust,
        "    #[must_use]\n    {public}fn {}({}) -> {gives} {{\n",
        identifier(name)?,
        parameters.join(", ")
    );
    for variable in chosen_by(said) {
        let variable = identifier(variable)?;
        let _ = writeln!(rust, "        let {variable} = {variable}.to_string();");
    }
    let body = |language: &str, pattern: &Pattern| match variables.is_empty() {
        true => Ok(format!("{:?}", plain(pattern))),
        false => expression(language, pattern),
    };
    let source_body = body(source_language, source)?;
    if said.len() == 1 {
        let _ = writeln!(rust, "        {source_body}");
    } else {
        let _ = writeln!(rust, "        match {language}() {{");
        for (language, pattern) in &said[1..] {
            let _ = writeln!(
                rust,
                "            {language:?} => {},",
                body(language, pattern)?
            );
        }
        let _ = writeln!(rust, "            _ => {source_body},\n        }}");
    }
    rust += "    }\n";
    Ok(rust)
}

/// The variables that some language chooses by.
fn chosen_by<'p>(said: &[(&str, &'p Pattern)]) -> Vec<&'p str> {
    fn collect<'p>(pattern: &'p Pattern, found: &mut Vec<&'p str>) {
        for part in pattern {
            if let Part::Choice {
                variable,
                variants,
                otherwise,
            } = part
            {
                if !found.contains(&variable.as_str()) {
                    found.push(variable);
                }
                variants.iter().for_each(|(_, text)| collect(text, found));
                collect(otherwise, found);
            }
        }
    }
    let mut found = Vec::new();
    said.iter()
        .for_each(|(_, pattern)| collect(pattern, &mut found));
    found
}

/// A text without variables.
fn plain(pattern: &Pattern) -> String {
    let texts = pattern.iter().map(|part| match part {
        Part::Text(text) => text.as_str(),
        Part::Variable(_) | Part::Choice { .. } => "",
    });
    texts.collect()
}

/// A pattern as an expression that gives a `String`.
fn expression(language: &str, pattern: &Pattern) -> Result<String, String> {
    let mut format = String::new();
    let mut values = Vec::new();
    for part in pattern {
        match part {
            Part::Text(text) => format += &text.replace('{', "{{").replace('}', "}}"),
            Part::Variable(name) => {
                let _ = write!(format, "{{{}}}", identifier(name)?);
            }
            Part::Choice {
                variable,
                variants,
                otherwise,
            } => {
                format += "{}";
                values.push(choice(
                    language,
                    &identifier(variable)?,
                    variants,
                    otherwise,
                )?);
            }
        }
    }
    let mut rust = format!("format!({format:?}");
    for value in values {
        rust += ", ";
        rust += &value;
    }
    rust.push(')');
    Ok(rust)
}

fn choice(
    language: &str,
    variable: &str,
    variants: &[(String, Pattern)],
    otherwise: &Pattern,
) -> Result<String, String> {
    let mut rust = format!("match {variable}.as_str() {{ ");
    for (key, text) in variants {
        let value = expression(language, text)?;
        if !plural::is_category(key) {
            let _ = write!(rust, "{key:?} => {value}, ");
        } else if let Some(condition) = plural::condition(language, key)? {
            let _ = write!(rust, "n if {condition} => {value}, ");
        }
    }
    let _ = write!(rust, "_ => {} }}", expression(language, otherwise)?);
    Ok(rust)
}

/// A name as Rust writes it.
fn identifier(name: &str) -> Result<String, String> {
    let name = name.replace('-', "_").to_lowercase();
    match KEPT.contains(&name.as_str()) {
        true => Err(format!(
            "Rust keeps the word {name} for itself; take another one"
        )),
        false => Ok(name),
    }
}
