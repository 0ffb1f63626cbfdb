"""Prints the table of both readers: `side_by_side.py FOLDER`.

FOLDER holds rendered photos and `photos.json`, as the example `side_by_side` of
the crate `photo` writes them.
"""

import argparse
import json
import pathlib
from itertools import combinations

import numpy as np
from colour.difference import delta_E_CIE2000

import baseline

LEVELS = ("easy", "medium", "hard")
BASELINE, OURS, UNEVEN = READERS = ("baseline", "woadstone", "baseline, light not evened")
COLOUR = "a piece's colour"
NEAR = "two depths of a dye, one photo"
ANY = "any two pieces, one photo"
CHANGE = "a piece's change, from photo to photo"
STILL = "a piece that did not change, from photo to photo"
KEPT = "a piece's change, beside its keeper"
ROWS = (COLOUR, NEAR, ANY, CHANGE, KEPT, STILL)


def de00(a, b):
    return float(delta_E_CIE2000(np.array(a), np.array(b)))


def read(folder, photo, xyz):
    """The Lab of each piece by each reader; None where it was not read."""
    pieces = photo["pieces"]
    areas = [piece["polygon"] for piece in pieces]
    ids = [piece["id"] for piece in pieces]
    path = folder / photo["file"]
    found = {"truth": {p["id"]: p["truth"] for p in pieces}}
    found[OURS] = {p["id"]: p["woadstone"] for p in pieces if p["woadstone"]}
    for name, with_field in ((BASELINE, True), (UNEVEN, False)):
        labs, evened = baseline.read(path, photo["corners"], areas, xyz, with_field)
        found[name] = dict(zip(ids, labs))
        if with_field:
            found["evened"] = evened
    return found


def misses(one, other, reader):
    """Row and error of every figure from a pair of photos."""
    for photo in (one, other):
        labs, truth = photo[reader], photo["truth"]
        for piece, lab in labs.items():
            yield COLOUR, (piece,), de00(lab, truth[piece])
        for a, b in combinations(sorted(labs), 2):
            miss = abs(de00(labs[a], labs[b]) - de00(truth[a], truth[b]))
            yield ANY, (a, b), miss
            if a[:-1] == b[:-1]:
                yield NEAR, (a, b), miss
    # `0b` in the second photo is what has become of `0a`, which was in the first
    # photo, too, and lies in the second as the keeper.
    for kept in other[reader]:
        faded = kept[:-1] + "b"
        if kept.endswith("a") and faded in other[reader] and kept in one[reader]:
            true = de00(other["truth"][kept], other["truth"][faded])
            change = de00(one[reader][kept], other[reader][faded])
            beside = de00(other[reader][kept], other[reader][faded])
            yield CHANGE, (kept, faded), abs(change - true)
            yield KEPT, (kept, faded), abs(beside - true)
        if kept in one[reader]:
            yield STILL, (kept,), de00(one[reader][kept], other[reader][kept])


def table(tallies, share, readers):
    """The figure below which a share of the errors lies, by row, level and reader."""
    heads = [f"{level}: {reader}" for level in LEVELS for reader in readers]
    lines = ["| error of | " + " | ".join(heads) + " |", "|---" + "|---:" * len(heads) + "|"]
    for row in ROWS:
        figures = [tallies[level, reader, row] for level in LEVELS for reader in readers]
        cells = [f"{np.quantile(errors, share):.3f}" if errors else "-" for errors in figures]
        lines.append(f"| {row} | " + " | ".join(cells) + " |")
    return "\n".join(lines)


def case(photo, found):
    """Medians of one photo by each reader, in a line."""
    figures = []
    for reader in READERS:
        own = list(misses(found, found, reader))
        for kind in (COLOUR, NEAR, ANY):
            figures.append(f"{np.median([m for row, _, m in own if row == kind] or [np.nan]):.2f}")
    told = photo["refused"] or photo["model"]
    return " ".join([photo["file"], photo["difficulty"], "evened" if found["evened"] else "uneven", *figures, told])


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=pathlib.Path)
    parser.add_argument("--cases", action="store_true", help="print every photo's medians")
    arguments = parser.parse_args()
    with open(arguments.folder / "photos.json", encoding="utf-8") as file:
        photos = json.load(file)["photos"]
    xyz = baseline.chart_xyz()
    tallies = {(level, reader, row): [] for level in LEVELS for reader in READERS for row in ROWS}
    evened = dict.fromkeys(LEVELS, 0)
    for pair in zip(photos[::2], photos[1::2]):
        level = pair[0]["difficulty"]
        both = [read(arguments.folder, photo, xyz) for photo in pair]
        evened[level] += sum(found["evened"] for found in both)
        for reader in READERS:
            for row, _, miss in misses(*both, reader):
                tallies[level, reader, row].append(miss)
        if arguments.cases:
            print(*(case(photo, found) for photo, found in zip(pair, both)), sep="\n")
    for level in LEVELS:
        own = [photo for photo in photos if photo["difficulty"] == level]
        refused = sum(photo["refused"] is not None for photo in own)
        print(f"{level}: {len(own)} photos, {evened[level]} with a light evened by the baseline, {refused} refused by woadstone")
    for heading, share, readers in (
        ("Median error, CIEDE2000", 0.5, (BASELINE, OURS)),
        ("95th percentile of the error, CIEDE2000", 0.95, (BASELINE, OURS)),
        ("Median error of the baseline with and without evening the light", 0.5, (BASELINE, UNEVEN)),
    ):
        print(f"\n{heading}\n\n{table(tallies, share, readers)}")


if __name__ == "__main__":
    main()
