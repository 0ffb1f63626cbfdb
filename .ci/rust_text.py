"""Finds sentences in Rust sources: what a person may read and a translator can't reach.

A literal counts as a sentence where two words stand side by side. Comments, tests, what a
panic says, SQL and headers of HTTP are left aside.
"""

import re

STRING = re.compile(r'"((?:[^"\\]|\\.)*)"', re.S)
RAW = re.compile(r'b?r(#*)".*?"\1', re.S)
CHARACTER = re.compile(r"'(\\.[^']*|[^'\\])'")
# Calls and macros whose words only a programmer sees.
UNSEEN = {
    "expect", "unreachable", "panic", "todo", "assert", "assert_eq", "assert_ne", "debug_assert",
    "debug_assert_eq", "error", "warn", "info", "debug", "trace", "include_str", "concat", "context",
}
SENTENCE = re.compile(r"[A-Za-z’']{2,}[,;:.]? +[a-z(“]{2,}")
# Written for another program.
FOREIGN = re.compile(
    r"\b(SELECT|INSERT|UPDATE|DELETE|CREATE|JOIN|WHERE|ORDER BY|VALUES)\b"
    r"|^[\w.?]+(?:,\s+[\w.?]+)*,?$|^[a-z_]+\.[a-z_]+,"
    r"|charset=|max-age|no-cache|default-src|filename=|</?[a-z]+"
)


def blanked(source):
    """The source with comments and the inside of literals blanked, and its string literals."""
    code = [" "] * len(source)
    strings = []
    at = 0
    while at < len(source):
        if source.startswith("//", at):
            end = source.find("\n", at)
            at = len(source) if end < 0 else end
            continue
        raw = RAW.match(source, at)
        if raw and not (source[at - 1].isalnum() or source[at - 1] == "_"):
            at = raw.end()
            continue
        if source[at] == '"':
            found = STRING.match(source, at)
            strings.append((at, found.end(), found.group(1)))
            code[at] = '"'
            at = found.end()
            continue
        if source[at] == "'" and (character := CHARACTER.match(source, at)):
            at = character.end()
            continue
        code[at] = source[at]
        at += 1
    return "".join(code), strings


def closing(code, opening):
    """Where the bracket that opens there is closed."""
    depth = 0
    for at in range(opening, len(code)):
        depth += (code[at] in "([{") - (code[at] in ")]}")
        if depth == 0:
            return at
    return len(code)


def caller(code, at):
    """The function or macro in whose brackets a place lies; empty where it is none."""
    depth = 0
    for back in range(at - 1, -1, -1):
        if code[back] in ")]}":
            depth += 1
        elif code[back] in "([{":
            if depth == 0:
                name = re.search(r"(\w+)!?\s*$", code[:back])
                return name.group(1) if name else ""
            depth -= 1
        elif code[back] == ";" and depth == 0:
            return ""
    return ""


def sentences(source):
    """Each sentence of a source outside its tests."""
    source = source.split("#[cfg(test)]\nmod tests")[0]
    code, strings = blanked(source)
    attributes = [
        (found.start(), closing(code, found.end() - 1))
        for found in re.finditer(r"#!?\[", code)
    ]
    for start, end, literal in strings:
        said = re.sub(r"\\\n\s*", "", literal).replace("\\n", "\n").replace('\\"', '"')
        bare = re.sub(r"\{[^{}]*\}", " ", said)
        within = next((code[a:start] for a, b in attributes if a <= start <= b), None)
        if within is not None:
            # What an error says, and the help of a command, however short.
            spoken = re.match(r"#\[(error\(|(arg|command|value)\(.*\b(help|about|long_help|long_about) *= *$)", within, re.S)
            if spoken and re.search(r"[A-Za-z]{2}", bare):
                yield said
            continue
        is_pattern = code[end:].lstrip().startswith("=>")
        if is_pattern or not SENTENCE.search(bare) or FOREIGN.search(said.strip()):
            continue
        if caller(code, start) not in UNSEEN:
            yield said
