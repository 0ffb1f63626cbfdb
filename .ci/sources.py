"""Every standard that code cites has its row in docs/SOURCES.md, and none stands there unused."""

import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parent.parent
STANDARD = re.compile(
    r"\b(ISO/CIE|ISO/IEC|ISO|CIE|IEC|ASTM|CIPA) "
    r"((?:[A-Z]{1,2}-?)?\d{3,5}(?:-[A-Z]?\d+)*)"
)
# Years of an observer, not numbers of a document.
NOT_DOCUMENTS = {"CIE 1931", "CIE 1964"}


def cited(text):
    # A line break, with the comment mark of the next line, may stand in the middle of a name.
    text = re.sub(r"\s*\n\s*(//[/!]?|#|\*)?\s*", " ", text)
    return {" ".join(found) for found in STANDARD.findall(text)} - NOT_DOCUMENTS


def main():
    table = (ROOT / "docs/SOURCES.md").read_text(encoding="utf-8")
    first_cells = "\n".join(line.split("|")[1] for line in table.splitlines() if line.startswith("| "))
    keys = cited(first_cells)
    used = {}
    for folder, kinds in (("crates", ("*.rs",)), ("e2e", ("*.mjs",)), ("reference", ("*.py", "*.md"))):
        for kind in kinds:
            for path in (ROOT / folder).rglob(kind):
                if "node_modules" in path.parts or ".venv" in path.parts or "target" in path.parts:
                    continue
                for name in cited(path.read_text(encoding="utf-8")):
                    used.setdefault(name, path.relative_to(ROOT))
    # "ISO 105" stands for its parts.
    known = keys | {key.rsplit("-", 1)[0] for key in keys}
    faults = [f"{path} cites {name}, which has no row in docs/SOURCES.md" for name, path in used.items() if name not in known]
    faults += [f"docs/SOURCES.md has a row {name} that nothing cites" for name in keys - set(used)]
    for sentence in sorted(faults):
        print(f"  {sentence}")
    print(f"sources: {len(used)} standards cited, {len(faults)} faults")
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
