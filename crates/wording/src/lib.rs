//! Compiles texts in [Fluent](https://projectfluent.org) files into Rust functions.
//!
//! Every text that a person sees stands in `text/LANGUAGE/CRATE/MODULE.ftl`. A crate's build
//! script calls [`compile`]; each message becomes a function of the module that its file is named
//! after, with the message's variables as parameters in the order of their first use:
//!
//! ```text
//! photos-read = { $done } of { $total ->
//!     [one] one photo
//!    *[other] { $total } photos
//! } read
//! ```
//!
//! becomes `fn photos_read(done: impl Display, total: impl Display) -> String`, and a message without
//! variables `fn add_a_photo() -> &'static str`. A text that nobody uses is then a warning of the
//! compiler, and one that is missing an error.
//!
//! English is the language of the sources. Other languages have a folder each, may leave messages
//! out, and are looked up while the program runs.

mod emit;
mod error;
mod message;
mod plural;
mod read;
mod script;

pub use error::WordingError;

use read::Folder;
use std::path::Path;

/// The language that every message has.
pub const SOURCE_LANGUAGE: &str = "en";

/// Rust for the texts of one crate, as the source of a module.
///
/// `root` holds a file `languages` with a line for each, as `en English`, a folder for each language,
/// and in those a folder named `of`. With more than
/// one language, `language` is the path of a function `fn() -> &'static str` that names the one to
/// speak, such as `::locale::language`.
///
/// A file whose module is one of `tables` tells of the entries of a table of data, whose keys are known
/// only when the program runs. Its module has one public function, `said(name: &str) ->
/// Option<&'static str>`, and for tests `NAMES`, the names of all its messages. None may have a variable.
///
/// # Errors
/// A file that can't be read or isn't Fluent, a construct that isn't compiled (functions, terms and
/// attributes), a name that Rust can't have, and a translation of something that isn't said in
/// English or with other variables. Each names the file and the message.
pub fn compile(
    root: &Path,
    of: &str,
    language: &str,
    tables: &[&str],
) -> Result<String, WordingError> {
    let source = Folder::read(root, SOURCE_LANGUAGE, of)?;
    let mut others = Vec::new();
    for name in read::languages(root)? {
        if name != SOURCE_LANGUAGE {
            let folder = Folder::read(root, &name, of)?;
            folder.translates(&source)?;
            others.push(folder);
        }
    }
    emit::modules(&source, &others, language, tables)
}

/// A JavaScript module for the texts of page scripts in one language, a function for each message:
/// `taken-in = { $count } taken in` becomes `takenIn(count)`. Names are kept apart by the caller:
/// no two files may have a message of one name.
///
/// # Errors
/// As [`compile`].
pub fn compile_script(root: &Path, of: &str, language: &str) -> Result<String, WordingError> {
    let source = Folder::read(root, SOURCE_LANGUAGE, of)?;
    let spoken = Folder::read(root, language, of)?;
    spoken.translates(&source)?;
    Ok(script::module(&source, &spoken))
}

/// Writes what [`compile`] gives to `OUT_DIR/text.rs`, and has cargo look at the texts again when
/// they change. For build scripts; `root` is relative to the crate. A fault ends the build with its
/// sentence.
pub fn build(root: &str, of: &str) {
    build_with_tables(root, of, &[]);
}

/// As [`build`], with files that tell of tables of data: see [`compile`].
pub fn build_with_tables(root: &str, of: &str, tables: &[&str]) {
    if let Err(fault) = written(Path::new(root), of, tables) {
        println!("cargo::error={fault}");
    }
}

/// Writes a function `text` to `OUT_DIR/scripts.rs` that gives what [`compile_script`] makes of the
/// texts, in the language that is spoken; for build scripts, as [`build`].
pub fn build_script(root: &str, of: &str) {
    if let Err(fault) = script_written(Path::new(root), of) {
        println!("cargo::error={fault}");
    }
}

fn script_written(root: &Path, of: &str) -> Result<(), WordingError> {
    let languages = watched(root, of)?;
    let mut arms = String::new();
    for language in languages.iter().filter(|name| *name != SOURCE_LANGUAGE) {
        let script = compile_script(root, of, language)?;
        arms += &format!("        {language:?} => {script:?},\n");
    }
    let script = compile_script(root, of, SOURCE_LANGUAGE)?;
    put(
        "scripts.rs",
        &format!(
            "#[allow(clippy::all)]\npub(crate) fn text() -> &'static str {{\n    match ::locale::language() {{\n{arms}        _ => {script:?},\n    }}\n}}\n"
        ),
    )
}

fn written(root: &Path, of: &str, tables: &[&str]) -> Result<(), WordingError> {
    watched(root, of)?;
    let rust = compile(root, of, "::locale::language", tables)?;
    put("text.rs", &rust)
}

/// The languages, after cargo was told to look at their texts again when they change.
fn watched(root: &Path, of: &str) -> Result<Vec<String>, WordingError> {
    let languages = read::languages(root)?;
    println!(
        "cargo::rerun-if-changed={}",
        root.join("languages").display()
    );
    for language in &languages {
        let folder = root.join(language).join(of);
        println!("cargo::rerun-if-changed={}", folder.display());
    }
    Ok(languages)
}

/// Writes a file where a build script has to put it.
fn put(name: &str, text: &str) -> Result<(), WordingError> {
    let out = std::env::var_os("OUT_DIR").ok_or(WordingError::NotABuildScript)?;
    let path = Path::new(&out).join(name);
    std::fs::write(&path, text).map_err(|cause| WordingError::File { path, cause })
}
