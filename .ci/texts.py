"""Hold pages to the rule that every visible text stands in text/.

A template may hold markup, expressions and a few names and symbols that no language
changes; a run of letters beside them is a text that belongs in a Fluent file.
"""

import html
import pathlib
import re
import sys

# Said alike in every language: names, units, formats.
NAMES = {
    "Woadstone", "CIEDE", "A", "Letter", "CSV", "JSON", "mm", "px", "L", "a", "b", "C", "min", "g", "cm",
}
# What a person reads of a tag.
SPOKEN = ("aria-label", "placeholder", "title", "alt")
CODE = re.compile(r"\{#.*?#\}|\{%.*?%\}|\{\{.*?\}\}|<!--.*?-->|<!doctype[^>]*>", re.S)
UNREAD = re.compile(r"<(script|style|svg)\b.*?</\1>", re.S)
TAG = re.compile(r"</?[A-Za-z][^>]*>", re.S)
ATTRIBUTE = re.compile(rf'\s({"|".join(SPOKEN)})="([^"]*)"')


def texts(template):
    """What of a template a person would read as it stands there."""
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


def main():
    faults = count = 0
    for path in sorted(pathlib.Path("crates").glob("*/templates/**/*.html")):
        count += 1
        for text in texts(path.read_text(encoding="utf-8")):
            if words(text):
                print(f"{path}: “{text.strip()}” belongs in text/en/")
                faults += 1
    messages = sum(
        len(re.findall(r"^[a-z][a-z0-9-]* =", path.read_text(encoding="utf-8"), re.M))
        for path in pathlib.Path("text/en").glob("*/*.ftl")
    )
    print(f"texts: {messages} messages, {count} templates, {faults} faults")
    return faults != 0


if __name__ == "__main__":
    sys.exit(main())
