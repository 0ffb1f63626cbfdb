"""Time a mixed model beside the same fit of a reference library, in one run.

    reference/.venv/bin/python bench/mixed_model.py

Values of arms at stages, each cell with a mean of its own, a random part for each
piece; restricted likelihood in both. The library is given the same columns as a
matrix, so that reading a formula isn't counted. Wall time, the least of some rounds.
"""

import pathlib
import subprocess
import tempfile
import time
import warnings

import numpy as np
from statsmodels.regression.mixed_linear_model import MixedLM

ROOT = pathlib.Path(__file__).resolve().parent.parent
ARMS, STAGES, ROUNDS = 4, 12, 3


def values(pieces):
    chance = np.random.default_rng(pieces)
    piece = np.repeat(np.arange(pieces), STAGES)
    stage = np.tile(np.arange(STAGES), pieces)
    arm = piece % ARMS
    own = chance.normal(0, 0.6, pieces)[piece]
    return piece, arm, stage, 0.3 * stage * (1 + 0.2 * arm) + own + chance.normal(0, 0.4, piece.size)


def theirs(piece, arm, stage, value):
    """The library's fit: least seconds, and what it found."""
    columns = (arm * STAGES + stage)[:, None] == np.arange(ARMS * STAGES)
    least = float("inf")
    for _ in range(ROUNDS):
        begun = time.perf_counter()
        fit = MixedLM(value, columns.astype(float), piece).fit(reml=True)
        least = min(least, time.perf_counter() - begun)
    contrast = np.zeros(ARMS * STAGES)
    contrast[STAGES - 1], contrast[2 * STAGES - 1] = -1, 1
    test = fit.t_test(contrast[None, :])
    return least * 1e3, {
        "pieces": float(np.asarray(fit.cov_re)[0, 0]),
        "residual": fit.scale,
        "log_likelihood": fit.llf,
        "difference": float(test.effect[0]),
        "standard_error": float(np.squeeze(test.sd)),
    }


def ours(piece, arm, stage, value):
    with tempfile.TemporaryDirectory() as folder:
        path = pathlib.Path(folder) / "values.csv"
        rows = zip(piece, arm, stage, value)
        path.write_text("piece,arm,stage,value\n" + "".join(f"{p},{a},{s},{v!r}\n" for p, a, s, v in map(
            lambda row: (int(row[0]), int(row[1]), int(row[2]), float(row[3])), rows)))
        command = ["cargo", "run", "--quiet", "--release", "-p", "inference", "--example", "fit_mixed", "--", str(path)]
        printed = subprocess.run(command, cwd=ROOT, check=True, capture_output=True, text=True).stdout
    # Later lines are those of quicker rounds.
    found = {name: float(figure) for name, figure in (line.split() for line in printed.splitlines())}
    return found.pop("ms"), found


def main():
    warnings.simplefilter("ignore")
    print("| pieces x stages | reference library, ms | here, ms | times as fast | farthest apart |")
    print("|---|---|---|---|---|")
    for pieces in (50, 500):
        data = values(pieces)
        slow, expected = theirs(*data)
        fast, found = ours(*data)
        apart = max(abs(found[name] / expected[name] - 1) for name in expected)
        print(f"| {pieces} x {STAGES} | {slow:.0f} | {fast:.2f} | {slow / fast:.0f} | {apart:.1e} |")
        assert apart < 1e-3, (found, expected)
    for pieces in (5_000, 50_000, 83_334):
        fast, _ = ours(*values(pieces))
        print(f"| {pieces} x {STAGES} | - | {fast:.2f} | - | - |")


if __name__ == "__main__":
    main()
