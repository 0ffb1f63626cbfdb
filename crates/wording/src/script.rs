//! Writing texts as a module of JavaScript, for scripts of pages.

use crate::message::{self, Part, Pattern};
use crate::read::Folder;
use std::fmt::Write as _;

/// One exported function for each message; texts that a language lacks are said in the source's.
pub(crate) fn module(source: &Folder, spoken: &Folder) -> String {
    let mut script = String::new();
    if has_choice(source) || has_choice(spoken) {
        let _ = writeln!(
            script,
            "const rules = new Intl.PluralRules({:?});",
            spoken.language
        );
    }
    for (module, file) in &source.files {
        for (name, pattern) in &file.messages {
            let translated = spoken.files.get(module).and_then(|file| file.message(name));
            let parameters: Vec<String> =
                message::variables(pattern).into_iter().map(camel).collect();
            let _ = writeln!(
                script,
                "export const {} = ({}) => {};",
                camel(name),
                parameters.join(", "),
                literal(translated.unwrap_or(pattern))
            );
        }
    }
    script
}

fn has_choice(folder: &Folder) -> bool {
    let mut patterns = folder.files.values().flat_map(|file| &file.messages);
    patterns.any(|(_, pattern)| {
        pattern
            .iter()
            .any(|part| matches!(part, Part::Choice { .. }))
    })
}

/// A template literal.
fn literal(pattern: &Pattern) -> String {
    let mut script = String::from("`");
    for part in pattern {
        match part {
            Part::Text(text) => {
                let safe = text.replace('\\', "\\\\").replace('`', "\\`");
                script += &safe.replace("${", "\\${");
            }
            Part::Variable(name) => {
                let _ = write!(script, "${{{}}}", camel(name));
            }
            Part::Choice {
                variable,
                variants,
                otherwise,
            } => {
                let name = camel(variable);
                script += "${";
                for (key, text) in variants {
                    let condition = match crate::plural::is_category(key) {
                        true => format!("rules.select({name}) === {key:?}"),
                        false => format!("String({name}) === {key:?}"),
                    };
                    let _ = write!(script, "{condition} ? {} : ", literal(text));
                }
                script += &literal(otherwise);
                script.push('}');
            }
        }
    }
    script.push('`');
    script
}

/// A name as JavaScript writes it: `taken-in` is `takenIn`.
fn camel(name: &str) -> String {
    let mut words = name.split(['-', '_']);
    let mut camel = words.next().unwrap_or_default().to_owned();
    for word in words {
        let (first, rest) = word.split_at(word.len().min(1));
        camel += &first.to_uppercase();
        camel += rest;
    }
    camel
}
