"""Hold the program to the rule that every visible text stands in text/.

A template may hold markup, expressions and a few names and symbols that no language
changes; a run of letters beside them, or a sentence within an expression, is a text that
belongs in a Fluent file. So is a sentence in Rust, the words of an error and the help of a
command, and in a table of data whatever isn't a key, a word that files may use or where a figure
comes from; see docs/decisions/0012-texts-are-functions.md for what may stay.
"""

import html
import pathlib
import re
import sys
import tomllib

from rust_text import sentences

# Said alike in every language: names, units, formats.
NAMES = {
    "Woadstone", "CIEDE", "A", "Letter", "CSV", "JSON", "mm", "px", "L", "a", "b", "C", "min", "g", "cm",
}
# Rust whose sentences may stay where they are, and why.
KEPT = {
    "crates/woadstone/src/demo/": "the demo's invented trial is data, like a trial that a person typed",
    "crates/locale/src/codes.rs": "names of currencies as ISO 4217 lists them",
    "crates/wording/": "said to who builds the program",
    "crates/scene/": "renders pictures for tests and the demo",
    "crates/dyeing/src/entries/": "words of the reader of TOML, which it says in our own",
    "crates/dyeing/src/quantity/retold.rs": "units that it reads in kept sentences",
    "crates/store/src/told/mod.rs": "words that the journal keeps, which it tells as sentences",
}
# Entries of tables whose words are no text: keys, words that files may use, sources of figures.
KEYS = {
    "key", "also", "source", "kind", "role", "by", "need", "material", "fibres", "hazards", "add", "after",
}
# Words of others that Rust looks for.
THEIRS = {"already exists": "SQLite, of a table"}
# Where the names of the journal's events are listed with their words; they are kept as keys.
EVENTS = pathlib.Path("crates/store/src/event_words.rs")
# What a person reads of a tag.
SPOKEN = ("aria-label", "placeholder", "title", "alt")
CODE = re.compile(r"\{#.*?#\}|\{%.*?%\}|\{\{.*?\}\}|<!--.*?-->|<!doctype[^>]*>", re.S)
UNREAD = re.compile(r"<(script|style|svg)\b.*?</\1>", re.S)
TAG = re.compile(r"</?[A-Za-z][^>]*>", re.S)
ATTRIBUTE = re.compile(rf'\s({"|".join(SPOKEN)})="([^"]*)"')
# A literal of an expression that reads as words and not as a name in the code.
WORDY = re.compile(r"^[A-Z][a-z]|[A-Za-z’]{2,}[,;:.]? +[a-z(“]|^ [a-z]+ ?$|^ ?[a-z]+ $")


def texts(template):
    """What of a template a person would read as it stands there."""
    for expression in re.findall(r"\{%.*?%\}|\{\{.*?\}\}", template, re.S):
        yield from (text for text in re.findall(r'"([^"]*)"', expression) if WORDY.search(text))
    # An expression may hold quotes and ">", so it goes first.
    bare = UNREAD.sub(" ", CODE.sub("\x00", template))
    for tag in TAG.findall(bare):
        for name, value in ATTRIBUTE.findall(tag):
            yield f"{name}={value}"
    # Attributes that a macro writes into its caller's tag.
    rest = re.sub(r'[a-z-]+="[^"]*"', " ", TAG.sub("\n", bare))
    yield from re.split(r"[\x00\n]", rest)


def words(text):
    """The words of a text that a translator would want."""
    spoken = re.sub(rf'^({"|".join(SPOKEN)})=', "", html.unescape(text))
    return [word for word in re.findall(r"[A-Za-z]+", spoken) if word not in NAMES]


def in_rust():
    """Each source with the sentences in it that no exception covers."""
    events = set(re.findall(r'^\s+"([^"]+)" => ', EVENTS.read_text(encoding="utf-8"), re.M))
    for path in sorted(pathlib.Path("crates").glob("*/src/**/*.rs")):
        if path.name == "tests.rs" or any(path.as_posix().startswith(kept) for kept in KEPT):
            continue
        found = sentences(path.read_text(encoding="utf-8"))
        yield path, [text for text in found if text not in events and text not in THEIRS]


def entries(table, name=""):
    """Each string of a table of data with the name of its entry."""
    if isinstance(table, dict):
        for key, value in table.items():
            yield from entries(value, key)
    elif isinstance(table, list):
        for value in table:
            yield from entries(value, name)
    elif isinstance(table, str):
        yield name, table


def in_tables():
    """Each table of data with the texts in it."""
    for path in sorted(pathlib.Path("crates").glob("*/data/**/*.toml")):
        found = entries(tomllib.loads(path.read_text(encoding="utf-8")))
        yield path, [f"{name} = {text}" for name, text in found if name not in KEYS]


def main():
    faults = templates = sources = tables = 0
    for path in sorted(pathlib.Path("crates").glob("*/templates/**/*.html")):
        templates += 1
        for text in texts(path.read_text(encoding="utf-8")):
            if words(text):
                print(f"{path}: “{text.strip()}” belongs in text/en/")
                faults += 1
    for path, found in in_rust():
        sources += 1
        for text in found:
            print(f"{path}: “{text.strip()}” belongs in text/en/")
            faults += 1
    for path, found in in_tables():
        tables += 1
        for text in found:
            print(f"{path}: “{text}” belongs in text/en/")
            faults += 1
    messages = sum(
        len(re.findall(r"^[a-z][a-z0-9-]* =", path.read_text(encoding="utf-8"), re.M))
        for path in pathlib.Path("text/en").glob("*/*.ftl")
    )
    print(f"texts: {messages} messages, {templates} templates, {sources} sources, {tables} tables, {faults} faults")
    return faults != 0


if __name__ == "__main__":
    sys.exit(main())
