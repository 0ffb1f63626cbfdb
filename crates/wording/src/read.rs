//! Reading the texts of a crate in one language.

use crate::error::WordingError;
use crate::message::{self, Pattern};
use fluent_syntax::{ast, parser};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// The texts of one crate in one language.
pub(crate) struct Folder {
    pub(crate) language: String,
    /// By module.
    pub(crate) files: BTreeMap<String, File>,
}

/// The texts of a module.
pub(crate) struct File {
    pub(crate) path: PathBuf,
    /// By name, in the file's order.
    pub(crate) messages: Vec<(String, Pattern)>,
}

impl Folder {
    /// The files `root/language/of/*.ftl`; none if there is no such folder.
    pub(crate) fn read(root: &Path, language: &str, of: &str) -> Result<Self, WordingError> {
        let folder = root.join(language).join(of);
        let mut files = BTreeMap::new();
        for path in listed(&folder)? {
            if path.extension().is_some_and(|end| end == "ftl") {
                let module = stem(&path);
                files.insert(module, File::read(path)?);
            }
        }
        Ok(Self {
            language: language.to_owned(),
            files,
        })
    }

    /// That each message is one of the source's, with its variables.
    pub(crate) fn translates(&self, source: &Self) -> Result<(), WordingError> {
        for (module, file) in &self.files {
            for (name, pattern) in &file.messages {
                let said = source.files.get(module).and_then(|file| file.message(name));
                let Some(said) = said else {
                    return Err(file.fault(name, "there is no such message in English".to_owned()));
                };
                let known = message::variables(said);
                for variable in message::variables(pattern) {
                    if !known.contains(&variable) {
                        let why = format!("the English message has no variable ${variable}");
                        return Err(file.fault(name, why));
                    }
                }
            }
        }
        Ok(())
    }
}

impl File {
    fn read(path: PathBuf) -> Result<Self, WordingError> {
        let text = match std::fs::read_to_string(&path) {
            Ok(text) => text,
            Err(cause) => return Err(WordingError::File { path, cause }),
        };
        let parsed = match parser::parse(text) {
            Ok(parsed) => parsed,
            Err((parsed, _)) => {
                let junk = parsed.body.into_iter().find_map(|entry| match entry {
                    ast::Entry::Junk { content } => Some(content.chars().take(60).collect()),
                    _ => None,
                });
                let junk = junk.unwrap_or_default();
                return Err(WordingError::NotFluent { path, junk });
            }
        };
        let mut file = Self {
            path,
            messages: Vec::new(),
        };
        for entry in parsed.body {
            match entry {
                ast::Entry::Message(message) => file.add(message)?,
                ast::Entry::Term(term) => {
                    let why = "terms aren't compiled; write the words out".to_owned();
                    return Err(file.fault(&term.id.name, why));
                }
                _ => {}
            }
        }
        Ok(file)
    }

    fn add(&mut self, message: ast::Message<String>) -> Result<(), WordingError> {
        let name = message.id.name;
        if !message.attributes.is_empty() {
            let why = "attributes aren't compiled; make each a message".to_owned();
            return Err(self.fault(&name, why));
        }
        if self.message(&name).is_some() {
            return Err(self.fault(&name, "it is there twice".to_owned()));
        }
        let value = message.value.as_ref().map(message::pattern).transpose();
        match value {
            Ok(pattern) => self.messages.push((name, pattern.unwrap_or_default())),
            Err(why) => return Err(self.fault(&name, why.to_owned())),
        }
        Ok(())
    }

    pub(crate) fn message(&self, name: &str) -> Option<&Pattern> {
        let found = self.messages.iter().find(|(known, _)| known == name);
        found.map(|(_, pattern)| pattern)
    }

    /// A fault of one message.
    pub(crate) fn fault(&self, message: &str, why: String) -> WordingError {
        WordingError::Message {
            path: self.path.clone(),
            message: message.to_owned(),
            why,
        }
    }
}

/// The languages that `root/languages` lists, each on a line as `en English`: only the codes.
pub(crate) fn languages(root: &Path) -> Result<Vec<String>, WordingError> {
    let path = root.join("languages");
    let listed = match std::fs::read_to_string(&path) {
        Ok(listed) => listed,
        Err(cause) => return Err(WordingError::File { path, cause }),
    };
    let codes = listed
        .lines()
        .filter_map(|line| line.split_whitespace().next());
    Ok(codes.map(str::to_owned).collect())
}

/// What lies in a folder, in the order of the names; nothing if there is no such folder.
fn listed(folder: &Path) -> Result<Vec<PathBuf>, WordingError> {
    let fault = |cause| WordingError::File {
        path: folder.to_owned(),
        cause,
    };
    if !folder.is_dir() {
        return Ok(Vec::new());
    }
    let mut paths = Vec::new();
    for entry in folder.read_dir().map_err(fault)? {
        paths.push(entry.map_err(fault)?.path());
    }
    paths.sort();
    Ok(paths)
}

fn stem(path: &Path) -> String {
    path.file_stem()
        .map(|stem| stem.to_string_lossy().into_owned())
        .unwrap_or_default()
}
