"""Hold the crates to the arrows that ARCHITECTURE.md names as invariants.

Reads `cargo metadata`; a crate may depend on another of this workspace, or on a
guarded library, only where the tables below allow it.
"""

import json
import subprocess
import sys

# Crates of ours that a crate may use outside its tests.
ARROWS = {
    "colour": {"locale"},
    "inference": {"locale"},
    "locale": set(),
    "dyeing": {"locale"},
    "scene": set(),
    "photo": {"colour", "locale"},
    "trial": {"colour", "dyeing", "locale", "photo", "inference"},
    "store": {"colour", "dyeing", "locale", "photo", "trial"},
    "report": {"colour", "dyeing", "locale", "photo", "trial"},
    "web": {"colour", "dyeing", "locale", "photo", "trial", "store", "report"},
    "woadstone": {"colour", "dyeing", "locale", "photo", "inference", "trial", "store", "report", "web", "scene"},
    "wording": set(),
}
# Libraries that only the named crates may use.
GUARDED = {
    "rusqlite": {"store"},
    "rusqlite_migration": {"store"},
    "axum": {"web"},
    "askama": {"web", "report"},
    "image": {"photo"},
    "anyhow": {"woadstone"},
    "clap": {"woadstone"},
}
# Crates that know no clock, file, network or chance of their own.
PURE = {"colour", "dyeing", "inference", "locale", "photo", "trial"}
IMPURE = {"jiff", "chrono", "time", "rand", "tokio", "tempfile", "rusqlite", "axum"}


def faults(metadata):
    """Every dependency that the tables don't allow, as a sentence."""
    ours = {package["name"]: package for package in metadata["packages"]}
    for name, package in sorted(ours.items()):
        if name not in ARROWS:
            yield f"crate {name} is not in the tables of .ci/layers.py; say there what it may use"
            continue
        for dependency in package["dependencies"]:
            used = dependency["name"]
            # Tests may use anything: photo's tests render scenes, a store's test may read a photo.
            if dependency["kind"] == "dev":
                continue
            # Build scripts compile texts.
            if dependency["kind"] == "build" and used == "wording":
                continue
            if used in ours and used not in ARROWS[name]:
                yield f"crate {name} must not depend on {used}"
            if name not in GUARDED.get(used, {name}):
                allowed = " and ".join(sorted(GUARDED[used]))
                yield f"crate {name} must not depend on {used}; only {allowed} may"
            if name in PURE and used in IMPURE:
                yield f"crate {name} is pure and must not depend on {used}"


def main():
    command = ["cargo", "metadata", "--format-version", "1", "--no-deps"]
    metadata = json.loads(subprocess.run(command, check=True, capture_output=True).stdout)
    found = list(faults(metadata))
    for sentence in found:
        print(f"  {sentence}")
    arrows = sum(len(package["dependencies"]) for package in metadata["packages"])
    print(f"layers: {len(metadata['packages'])} crates, {arrows} dependencies, {len(found)} not allowed")
    sys.exit(1 if found else 0)


if __name__ == "__main__":
    main()
