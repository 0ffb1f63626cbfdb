"""Recompute check_models.csv and compare with the file (`--write` writes it).

Hotelling's tests by SciPy and statsmodels' multivariate analysis of variance. Mixed models by statsmodels and, where the design is balanced, by the sums of
squares of its analysis of variance; for unbalanced designs with loads, by the
restricted likelihood written out with whole covariance matrices. Curves of decay by
SciPy's nonlinear least squares. Results of several trials pooled and a published layout: `pool.py`.
"""

import csv
import itertools
import math
import pathlib
import sys
import warnings

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent))

import numpy as np  # noqa: E402
import pandas  # noqa: E402
from nltk.metrics import agreement, distance as agreement_distance  # noqa: E402
import statsmodels.formula.api as smf  # noqa: E402
from scipy import optimize, stats  # noqa: E402
from statsmodels.multivariate.manova import MANOVA  # noqa: E402
from statsmodels.stats import inter_rater  # noqa: E402

from pool import denim, pooled  # noqa: E402
from printed import Comparison, rows  # noqa: E402

FORMULA = "dE ~ wash * treated"
NAMES = {"Intercept": "Intercept", "treated": "treatment", "wash": "wash", "wash:treated": "wash:treatment"}


def washes():
    table = pandas.read_csv(HERE / "data_lmm.csv")
    table["treated"] = (table.treatment == "fixative").astype(float)
    return table


def lmm_reml():
    """The reference library's search stops near the fifth digit of a variance."""
    fit = smf.mixedlm(FORMULA, washes(), groups="piece").fit(reml=True)
    found = {}
    for theirs, ours in NAMES.items():
        found[f"fe_{ours}"], found[f"se_{ours}"] = fit.fe_params[theirs], fit.bse[theirs]
    piece = float(np.asarray(fit.cov_re)[0, 0])
    return found | {
        "var_piece": piece,
        "var_resid": fit.scale,
        "loglik_reml": fit.llf,
        "ICC": piece / (piece + fit.scale),
    }


def lmm_ml():
    table = washes()
    full = smf.mixedlm(FORMULA, table, groups="piece").fit(reml=False)
    fewer = smf.mixedlm("dE ~ wash + treated", table, groups="piece").fit(reml=False)
    ratio = 2 * (full.llf - fewer.llf)
    return {"LR_interaction": ratio, "p_LR_1df": stats.chi2.sf(ratio, 1)}


def lmm_two_stage():
    slopes = {}
    for (_, treated), own in washes().groupby(["piece", "treated"]):
        slopes.setdefault(treated, []).append(stats.linregress(own.wash, own.dE).slope)
    test = stats.ttest_ind(slopes[1.0], slopes[0.0], equal_var=False)
    return {"slope_diff": np.mean(slopes[1.0]) - np.mean(slopes[0.0]), "welch_p": test.pvalue}


def lmm_closed_form():
    """Balanced data: mean squares between and within pieces, each with its degrees of
    freedom (Searle, Casella and McCulloch, Variance Components, 1992)."""
    table = washes()
    pieces, stages, arms = table.piece.nunique(), table.wash.nunique(), 2
    means = table.groupby(["treated", "piece"]).dE.mean()
    between = stages * sum(((own - own.mean()) ** 2).sum() for _, own in means.groupby(level=0))
    df_between = pieces - arms
    own = table.dE - table.groupby("piece").dE.transform("mean")
    time = table.wash - table.wash.mean()
    within = 0.0
    for _, part in table.assign(own=own, time=time).groupby("treated"):
        slope = (part.own * part.time).sum() / (part.time**2).sum()
        within += ((part.own - slope * part.time) ** 2).sum()
    df_within = len(table) - pieces - arms
    between, within = between / df_between, within / df_within
    squares = (time[table.piece == table.piece.iloc[0]] ** 2).sum()
    per_arm, middle = pieces // arms, table.wash.mean()
    # Variance as a weighted sum of the two mean squares.
    of_means = 1 / (per_arm * stages)
    of_slopes = 1 / (per_arm * squares)
    weights = {
        "Intercept": (of_means, middle**2 * of_slopes),
        "treatment": (2 * of_means, 2 * middle**2 * of_slopes),
        "wash": (0, of_slopes),
        "wash:treatment": (0, 2 * of_slopes),
    }
    found = {"var_resid": within, "var_piece": (between - within) / stages}
    fit = smf.ols(FORMULA, table).fit()
    for theirs, ours in NAMES.items():
        one, other = weights[ours][0] * between, weights[ours][1] * within
        found[f"fe_{ours}"] = fit.params[theirs]
        found[f"se_{ours}"] = math.sqrt(one + other)
        found[f"df_{ours}"] = (one + other) ** 2 / (one**2 / df_between + other**2 / df_within)
    found["loglik_reml"] = Likelihood(table, "dE", FORMULA.split("~")[1], ["piece"]).log_at(
        [found["var_resid"], found["var_piece"]]
    )
    return found


class Likelihood:
    """The restricted likelihood with the whole covariance matrix of the values."""

    def __init__(self, table, value, fixed, random):
        self.y = table[value].to_numpy(float)
        self.x = smf.ols(f"{value} ~ {fixed}", table).exog
        self.parts = [np.eye(len(table))]
        for name in random:
            dummies = pandas.get_dummies(table[name]).to_numpy(float)
            self.parts.append(dummies @ dummies.T)

    def solved(self, variances):
        covariance = sum(v * part for v, part in zip(variances, self.parts))
        inverse = np.linalg.inv(covariance)
        of_effects = np.linalg.inv(self.x.T @ inverse @ self.x)
        effects = of_effects @ self.x.T @ inverse @ self.y
        projected = inverse - inverse @ self.x @ of_effects @ self.x.T @ inverse
        return covariance, of_effects, effects, projected

    def log_at(self, variances):
        covariance, of_effects, _, projected = self.solved(variances)
        free = self.x.shape[0] - self.x.shape[1]
        return -0.5 * (
            free * math.log(2 * math.pi)
            + np.linalg.slogdet(covariance)[1]
            - np.linalg.slogdet(of_effects)[1]
            + self.y @ projected @ self.y
        )

    def slopes(self, variances):
        _, _, _, projected = self.solved(variances)
        py = projected @ self.y
        return np.array([np.sum(projected * part) - py @ part @ py for part in self.parts])

    def curvature(self, variances):
        """Second derivatives of -2 log likelihood."""
        _, _, _, projected = self.solved(variances)
        py = projected @ self.y
        through = [projected @ part for part in self.parts]
        return np.array(
            [[-np.sum(a * b.T) + 2 * (py @ p) @ projected @ (q @ py) for b, q in zip(through, self.parts)]
             for a, p in zip(through, self.parts)]
        )

    def best(self):
        logs = optimize.minimize(
            lambda logs: -2 * self.log_at(np.exp(logs)),
            np.zeros(len(self.parts)),
            method="Nelder-Mead",
            options={"xatol": 1e-6, "fatol": 1e-10, "maxiter": 10_000},
        ).x
        variances = np.exp(logs)
        for _ in range(50):
            variances = variances - np.linalg.solve(self.curvature(variances), self.slopes(variances))
        return variances

    def errors(self, contrast, variances):
        """Standard error as if the variances were known; with the addition of Kenward
        and Roger (Biometrics 53 (1997) 983-997); degrees of freedom of Satterthwaite."""
        covariance, of_effects, _, projected = self.solved(variances)
        weights = np.linalg.inv(covariance) @ self.x @ of_effects @ contrast
        variance = contrast @ of_effects @ contrast
        slopes = np.array([weights @ part @ weights for part in self.parts])
        known = 2 * np.linalg.inv(self.curvature(variances))
        added = np.array([[weights @ p @ projected @ q @ weights for q in self.parts] for p in self.parts])
        doubt = slopes @ known @ slopes
        return math.sqrt(variance), math.sqrt(variance + 2 * np.sum(known * added)), 2 * variance**2 / doubt


def unbalanced():
    """Three arms, sparse, pieces that change wash loads and stay in their bath."""
    table = pandas.read_csv(HERE / "data_sparse.csv")
    whole = Likelihood(table, "value", "0 + C(cell)", ["piece", "bath", "wash"])
    variances = whole.best()
    found = dict(zip(("var_resid", "var_piece", "var_bath", "var_wash"), variances))
    found["loglik_reml"] = whole.log_at(variances)
    cells = sorted(set(table.cell))
    _, _, effects, _ = whole.solved(variances)
    for first, second in (("a0", "b0"), ("a3", "b3"), ("a3", "c3"), ("a0", "a3")):
        contrast = np.array([float(cell == second) - float(cell == first) for cell in cells])
        name = f"{first}_{second}"
        found[f"{name}_difference"] = contrast @ effects
        names = [f"{name}_{what}" for what in ("se_if_known", "se", "df")]
        found |= zip(names, whole.errors(contrast, variances))
    return found


def lab():
    table = pandas.read_csv(HERE / "data_hotelling_lab.csv")
    groups = [own[["L", "a", "b"]].to_numpy() for _, own in table.groupby("group", sort=True)]
    return table, groups


def t_squared(a, b):
    share = 1 / len(a) + 1 / len(b)
    pooled = (np.cov(a.T) * (len(a) - 1) + np.cov(b.T) * (len(b) - 1)) / (len(a) + len(b) - 2)
    shift = a.mean(axis=0) - b.mean(axis=0)
    return shift @ np.linalg.solve(pooled, shift) / share


def hotelling_lab():
    """Two samples; every split of the vectors; the true distance that the noncentral F
    leaves possible."""
    table, (a, b) = lab()
    n, p = len(a) + len(b), 3
    found = dict(zip(("dL", "da", "db"), a.mean(axis=0) - b.mean(axis=0)))
    found["T2"] = t_squared(a, b)
    found["df1"], found["df2"] = p, n - 1 - p
    found["F"] = found["T2"] * (n - 1 - p) / ((n - 2) * p)
    found["p"] = stats.f.sf(found["F"], p, n - 1 - p)
    wilks = MANOVA.from_formula("L + a + b ~ group", table).mv_test().results["group"]["stat"].loc["Wilks' lambda"]
    found["manova_F"], found["manova_p"] = float(wilks["F Value"]), float(wilks["Pr > F"])
    every, seen, count = np.vstack([a, b]), found["T2"], 0
    lengths = 0
    for own in itertools.combinations(range(n), len(a)):
        rest = [at for at in range(n) if at not in own]
        one, other = every[list(own)], every[rest]
        count += t_squared(one, other) >= seen - 1e-9
        lengths += np.linalg.norm(one.mean(axis=0) - other.mean(axis=0)) >= np.linalg.norm(list(found.values())[:3]) - 1e-12
    found["exact_perm_p_T2"] = count / math.comb(n, len(a))
    found["exact_perm_p_length"] = lengths / math.comb(n, len(a))
    share = 1 / len(a) + 1 / len(b)
    for name, tail in (("low", 0.025), ("high", 0.975)):
        root = optimize.brentq(
            lambda d, tail=tail: stats.ncf.sf(found["F"], p, n - 1 - p, d * d / share) - tail, 0.01, 60, xtol=1e-12
        )
        found[f"distance_{name}"] = root
    return found


def hotelling_one():
    """One sample: the first group's vectors less their piece in the second."""
    _, (a, b) = lab()
    change = a - b[: len(a)]
    n, p = change.shape
    mean = change.mean(axis=0)
    found = {"T2": n * mean @ np.linalg.solve(np.cov(change.T), mean)}
    found["F"] = found["T2"] * (n - p) / ((n - 1) * p)
    found["p"] = stats.f.sf(found["F"], p, n - p)
    turned = 0
    inverse = np.linalg.inv(change.T @ change)
    for signs in itertools.product((-1, 1), repeat=n):
        total = np.array(signs) @ change
        turned += total @ inverse @ total >= change.sum(axis=0) @ inverse @ change.sum(axis=0) - 1e-9
    found["signs_p_T2"] = turned / 2**n
    return found


def decay(columns, model, first):
    """One curve through single values by nonlinear least squares."""
    table = pandas.read_csv(HERE / f"data_decay{columns}.csv")
    best, covariance = optimize.curve_fit(
        model, table.wash, table.K_S, p0=first, method="lm", ftol=1e-15, xtol=1e-15, gtol=1e-15, maxfev=100_000
    )
    free = len(table) - len(best)
    found = {}
    for name, value, variance in zip(("A", "k", "c"), best, np.diag(covariance)):
        half = stats.t.ppf(0.975, free) * math.sqrt(variance)
        found |= {name: value, f"{name}_se": math.sqrt(variance), f"{name}_ci95_low": value - half, f"{name}_ci95_high": value + half}
    found["RSS"] = ((table.K_S - model(table.wash, *best)) ** 2).sum()
    return found


def left_over(n, floor, rate):
    return floor + (1 - floor) * np.exp(-rate * n)


def fades():
    """Pieces at stages, some missing: the curve from 1 by bounded least squares, and the
    three shapes by the full likelihood of values with shifts of pieces and stages,
    linearised at each shape's best fit, with whole covariance matrices."""
    table = pandas.read_csv(HERE / "data_fades.csv")
    n, left = table["round"].to_numpy(float), table.left.to_numpy()
    best = optimize.least_squares(
        lambda p: left_over(n, *p) - left, (0.5, 0.3), bounds=((0, 0), (1, np.inf)), ftol=1e-15, xtol=1e-15, gtol=1e-15
    )
    floor, rate = best.x
    found = {"S_inf": floor, "k": rate, "RSS": 2 * best.cost, "round_of_0.8": math.log((1 - floor) / (0.8 - floor)) / rate}
    slope = ((1 - left) * n).sum() / (n**2).sum()
    found["slope"] = slope
    gone = np.exp(-rate * n)
    shapes = {
        "no_change": (np.ones_like(n), np.zeros((len(n), 0))),
        "line": (1 - slope * n, n[:, None]),
        "curve": (left_over(n, floor, rate), np.column_stack([1 - gone, (1 - floor) * n * gone])),
    }
    units = [pandas.get_dummies(table[name]).to_numpy(float) for name in ("piece", "round")]
    for name, (mean, slopes) in shapes.items():
        figures = slopes.shape[1] + 3
        free = len(n) - figures - 1
        found[f"aicc_{name}"] = deviance(left - mean, slopes, units) + 2 * figures + 2 * figures * (figures + 1) / free
    return found


def deviance(values, slopes, units):
    """-2 log of the greatest full likelihood; shares of scatter by search of their roots."""

    def at(roots):
        covariance = np.eye(len(values)) + sum(r * r * unit @ unit.T for r, unit in zip(roots, units))
        inverse = np.linalg.inv(covariance)
        rest = values
        if slopes.shape[1]:
            rest = values - slopes @ np.linalg.solve(slopes.T @ inverse @ slopes, slopes.T @ inverse @ values)
        variance = rest @ inverse @ rest / len(values)
        return len(values) * (math.log(2 * math.pi * variance) + 1) + np.linalg.slogdet(covariance)[1]

    starts = itertools.product((0.0, 0.5, 2.0, 10.0), repeat=2)
    options = {"xatol": 1e-9, "fatol": 1e-12, "maxiter": 20_000}
    return min(optimize.minimize(at, start, method="Nelder-Mead", options=options).fun for start in starts)


def grades():
    table = pandas.read_csv(HERE / "data_grades.csv")
    return [(2 * table[who] - 2).astype(int).to_numpy() for who in ("first", "second", "third")]


def kappa():
    """Half-steps of a grey scale, 1 to 5, as categories 0 to 8."""
    first, second, third = grades()
    table = np.zeros((9, 9))
    np.add.at(table, (first, second), 1)
    found = {}
    for name in (None, "linear", "quadratic"):
        fit = inter_rater.cohens_kappa(table, wt=name)
        for what, value in (("kappa", fit.kappa), ("se", fit.std_kappa), ("se_of_none", fit.std_kappa0), ("p", fit.pvalue_two_sided)):
            found[f"{name or 'plain'}_{what}"] = value
    counts = np.array([[sum(g[at] == c for g in (first, second, third)) for c in range(9)] for at in range(len(first))])
    found["fleiss"] = inter_rater.fleiss_kappa(counts, method="fleiss")
    return found


def alpha():
    """Three people's grades with every fifth judgement of the first and every seventh of the last missing."""
    first, second, third = grades()
    given = [("first", at, int(grade)) for at, grade in enumerate(first) if at % 5]
    given += [("second", at, int(grade)) for at, grade in enumerate(second)]
    given += [("third", at, int(grade)) for at, grade in enumerate(third) if at % 7 != 3]
    kinds = {"nominal": agreement_distance.binary_distance, "interval": agreement_distance.interval_distance}
    return {f"{name}_alpha": agreement.AnnotationTask(data=given, distance=apart).alpha() for name, apart in kinds.items()}


def share():
    """Both ends of the interval of a share, few tries and many."""
    found = {}
    for count, tries in ((0, 10), (1, 4), (3, 12), (12, 12), (37, 400)):
        interval = stats.binomtest(count, tries).proportion_ci(0.95, "exact")
        found[f"{count}_of_{tries}_low"], found[f"{count}_of_{tries}_high"] = interval.low, interval.high
    return found


SOURCES = {
    "alpha": "nltk AnnotationTask",
    "share": "scipy binomtest, exact interval",
    "decay3": "scipy curve_fit, A exp(-k n) + c",
    "decay2": "scipy curve_fit, A exp(-k n)",
    "fades": "scipy least_squares; full likelihood with whole matrices, numpy and scipy",
    "kappa": "statsmodels inter_rater",
    "hotelling_lab": "numpy and scipy; statsmodels MANOVA",
    "hotelling_one": "numpy and scipy",
    "lmm_reml": "statsmodels MixedLM REML",
    "lmm_ml": "statsmodels MixedLM ML",
    "lmm_two_stage": "scipy linregress and ttest_ind",
    "lmm_closed_form": "mean squares, numpy",
    "lmm_sparse": "restricted likelihood with whole matrices, numpy and scipy",
    "pool_bcg": "statsmodels combine_effects; scipy brentq",
    "pool_dye": "statsmodels combine_effects; scipy brentq",
    "denim": "statsmodels anova_lm; scipy dunnett",
}


def recomputed():
    warnings.simplefilter("ignore")
    return {
        "decay3": decay("", lambda n, a, k, c: a * np.exp(-k * n) + c, (4, 0.2, 6)),
        "decay2": decay("_pure", lambda n, a, k: a * np.exp(-k * n), (10, 0.1)),
        "fades": fades(),
        "kappa": kappa(),
        "alpha": alpha(),
        "share": share(),
        "hotelling_lab": hotelling_lab(),
        "hotelling_one": hotelling_one(),
        "lmm_reml": lmm_reml(),
        "lmm_ml": lmm_ml(),
        "lmm_two_stage": lmm_two_stage(),
        "lmm_closed_form": lmm_closed_form(),
        "lmm_sparse": unbalanced(),
        "pool_bcg": pooled("bcg", "yi", "vi"),
        "pool_dye": pooled("pool", "yi", "vi"),
        "denim": denim(),
    }


def main():
    found = recomputed()
    if "--write" in sys.argv:
        with open(HERE / "check_models.csv", "w", newline="", encoding="utf-8") as file:
            to = csv.writer(file, lineterminator="\n")
            to.writerow(["test", "quantity", "value", "source"])
            for test, values in found.items():
                to.writerows([test, name, repr(float(value)), SOURCES[test]] for name, value in values.items())
    check = Comparison(HERE)
    for row in rows(HERE / "check_models.csv"):
        where = f"check_models.csv {row['test']} {row['quantity']}"
        value = found[row["test"]].get(row["quantity"], math.nan)
        # A search by another build of the libraries stops elsewhere in the last digits.
        searched = ("lmm_reml", "lmm_ml", "decay3", "decay2", "fades")
        allowed = 1e-6 * max(abs(float(row["value"])), 1e-3) if row["test"] in searched else None
        check.number(where, row["value"], value, allowed)
    check.close()


if __name__ == "__main__":
    main()
