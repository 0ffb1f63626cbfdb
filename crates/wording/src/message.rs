//! A message as far as it is compiled: text, variables and choices.

use fluent_syntax::ast;

/// A text with holes.
pub(crate) type Pattern = Vec<Part>;

/// A part of a text.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Part {
    /// Said as it stands.
    Text(String),
    /// The value of a variable.
    Variable(String),
    /// One of several texts, by a variable's value.
    Choice {
        variable: String,
        /// By exact value or plural category, in order.
        variants: Vec<(String, Pattern)>,
        /// If none fits.
        otherwise: Pattern,
    },
}

/// The parts of a pattern, or why it can't be compiled.
pub(crate) fn pattern(ast: &ast::Pattern<String>) -> Result<Pattern, &'static str> {
    let mut parts: Pattern = Vec::new();
    for element in &ast.elements {
        let part = match element {
            ast::PatternElement::TextElement { value } => Part::Text(value.clone()),
            ast::PatternElement::Placeable { expression } => placeable(expression)?,
        };
        // The parser gives each line for itself.
        match (parts.last_mut(), part) {
            (Some(Part::Text(before)), Part::Text(more)) => before.push_str(&more),
            (_, part) => parts.push(part),
        }
    }
    Ok(parts)
}

fn placeable(expression: &ast::Expression<String>) -> Result<Part, &'static str> {
    match expression {
        ast::Expression::Inline(inline) => match inline {
            ast::InlineExpression::StringLiteral { value } => Ok(Part::Text(unescaped(value)?)),
            ast::InlineExpression::NumberLiteral { value } => Ok(Part::Text(value.clone())),
            ast::InlineExpression::VariableReference { id } => Ok(Part::Variable(id.name.clone())),
            _ => Err(
                "only variables, literals and choices are compiled; write other messages and terms out",
            ),
        },
        ast::Expression::Select { selector, variants } => {
            let ast::InlineExpression::VariableReference { id } = selector else {
                return Err("a choice is made by a variable, as in { $count -> … }");
            };
            choice(id.name.clone(), variants)
        }
    }
}

fn choice(variable: String, all: &[ast::Variant<String>]) -> Result<Part, &'static str> {
    let mut variants = Vec::new();
    let mut otherwise = Vec::new();
    for variant in all {
        let text = pattern(&variant.value)?;
        let key = match &variant.key {
            ast::VariantKey::Identifier { name } => name,
            ast::VariantKey::NumberLiteral { value } => value,
        };
        if variant.default {
            otherwise = text;
        } else {
            variants.push((key.clone(), text));
        }
    }
    Ok(Part::Choice {
        variable,
        variants,
        otherwise,
    })
}

/// A string literal's value. `\"` and `\\` are the escapes that texts need.
fn unescaped(literal: &str) -> Result<String, &'static str> {
    let mut text = String::new();
    let mut letters = literal.chars();
    while let Some(letter) = letters.next() {
        match letter {
            '\\' => match letters.next() {
                Some(escaped @ ('"' | '\\')) => text.push(escaped),
                _ => return Err("write the letter itself rather than its number"),
            },
            _ => text.push(letter),
        }
    }
    Ok(text)
}

/// The variables of a pattern, in the order of their first use.
pub(crate) fn variables(pattern: &Pattern) -> Vec<&str> {
    let mut found = Vec::new();
    collect(pattern, &mut found);
    found
}

fn collect<'p>(pattern: &'p Pattern, found: &mut Vec<&'p str>) {
    for part in pattern {
        match part {
            Part::Text(_) => {}
            Part::Variable(name) => note(name, found),
            Part::Choice {
                variable,
                variants,
                otherwise,
            } => {
                note(variable, found);
                for (_, text) in variants {
                    collect(text, found);
                }
                collect(otherwise, found);
            }
        }
    }
}

fn note<'p>(name: &'p str, found: &mut Vec<&'p str>) {
    if !found.contains(&name) {
        found.push(name);
    }
}
