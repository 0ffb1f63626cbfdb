"""Results of several trials pooled, and a published two-way layout, by statsmodels and SciPy."""

import math
import pathlib

import numpy as np
import pandas
import statsmodels.formula.api as smf
from scipy import optimize, stats
from statsmodels.stats.anova import anova_lm
from statsmodels.stats.meta_analysis import combine_effects

HERE = pathlib.Path(__file__).resolve().parent


def around(prefix, values, variances, between):
    """Everything that follows once the variance between trials is known."""
    weights = 1 / (variances + between)
    mean = weights @ values / weights.sum()
    error = 1 / math.sqrt(weights.sum())
    trials = len(values)
    spread = weights @ (values - mean) ** 2 / (trials - 1)
    adjusted = error * math.sqrt(spread)
    wide, far = stats.t.ppf(0.975, trials - 1), stats.t.ppf(0.975, trials - 2)
    next_one = far * math.sqrt(between + error**2)
    return {
        f"{prefix}_between": between,
        f"{prefix}_mean": mean,
        f"{prefix}_se": error,
        f"{prefix}_low": mean - stats.norm.ppf(0.975) * error,
        f"{prefix}_high": mean + stats.norm.ppf(0.975) * error,
        f"{prefix}_spread": spread,
        f"{prefix}_adjusted_se": adjusted,
        f"{prefix}_adjusted_p": 2 * stats.t.sf(abs(mean / adjusted), trials - 1),
        f"{prefix}_adjusted_low": mean - wide * adjusted,
        f"{prefix}_adjusted_high": mean + wide * adjusted,
        f"{prefix}_next_low": mean - next_one,
        f"{prefix}_next_high": mean + next_one,
    }


def pooled(name, value, variance):
    table = pandas.read_csv(HERE / f"data_{name}.csv")
    values, variances = table[value].to_numpy(), table[variance].to_numpy()
    plain = 1 / variances
    together = plain @ values / plain.sum()
    q = plain @ (values - together) ** 2
    df = len(values) - 1
    moments = combine_effects(values, variances, method_re="dl").tau2

    def score(between):
        weights = 1 / (variances + between)
        rest = values - weights @ values / weights.sum()
        return (weights**2) @ rest**2 - weights.sum() + (weights**2).sum() / weights.sum()

    restricted = optimize.brentq(score, 0, 10, xtol=1e-15, rtol=1e-15) if score(0) > 0 else 0.0
    found = {"q": q, "q_p": stats.chi2.sf(q, df), "percent_between": 100 * max(0, (q - df) / q)}
    return found | around("moments", values, variances, moments) | around("restricted", values, variances, restricted)


def denim():
    """Grades of denim by laundering (COLOR) and experimenter (BLOCK): Dean and Voss, Design and
    Analysis of Experiments, table 10.17. Sums of squares of type II; each laundering against the first."""
    table = pandas.read_csv(HERE / "data_denim.csv")
    parts = anova_lm(smf.ols("Y ~ C(BLOCK) * C(COLOR)", table).fit(), typ=2)
    names = {"C(COLOR)": "laundering", "C(BLOCK)": "experimenter", "C(BLOCK):C(COLOR)": "both", "Residual": "rest"}
    found = {}
    for theirs, ours in names.items():
        found[f"{ours}_squares"], found[f"{ours}_df"] = parts.sum_sq[theirs], parts.df[theirs]
    groups = [own.Y.to_numpy() for _, own in table.groupby("COLOR")]
    for laundering, own in enumerate(groups, start=1):
        found[f"mean_{laundering}"] = own.mean()
    against = stats.dunnett(*groups[1:], control=groups[0], random_state=np.random.default_rng(1))
    for laundering, t in enumerate(against.statistic, start=2):
        found[f"first_t_{laundering}"] = t
    return found
