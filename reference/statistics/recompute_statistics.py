"""Recompute the check values of this folder and compare them with the file.

Tests of two means by SciPy, equivalence by statsmodels, smallest p-values of
a permutation test by counting splits; scatter by occasions by projection
matrices and by statsmodels' mixed model; power by SciPy's noncentral
distributions.
"""

import math
import pathlib
import sys

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent))

import numpy as np  # noqa: E402
from scipy import optimize, stats  # noqa: E402
from statsmodels.regression.mixed_linear_model import MixedLM  # noqa: E402
from statsmodels.stats.weightstats import CompareMeans, DescrStatsW  # noqa: E402

from printed import Comparison, rows  # noqa: E402


def arms(name):
    """The two arms of a data file, in the order in which they stand there."""
    found = {}
    for row in rows(HERE / name):
        found.setdefault(row["arm"], []).append(float(row["dE"]))
    return [np.array(values) for values in found.values()]


def welch(a, b):
    test = stats.ttest_ind(a, b, equal_var=False)
    interval = test.confidence_interval(0.95)
    return {
        "mean_a": a.mean(),
        "mean_b": b.mean(),
        "sd_a": a.std(ddof=1),
        "sd_b": b.std(ddof=1),
        "t": test.statistic,
        "df": test.df,
        "p_two_sided": test.pvalue,
        "ci95_low": interval.low,
        "ci95_high": interval.high,
        "se": math.sqrt(a.var(ddof=1) / a.size + b.var(ddof=1) / b.size),
    }


def student_pooled(a, b):
    test = stats.ttest_ind(a, b)
    return {"t": test.statistic, "p": test.pvalue}


def equivalence(a, b, usevar):
    compare = CompareMeans(DescrStatsW(a), DescrStatsW(b))
    found = {}
    for margin in (0.5, 0.3):
        p, (lower, upper) = compare.ttost_ind(-margin, margin, usevar=usevar)
        for name, value in (
            ("p", p),
            ("t_lower", lower[0]),
            ("p_lower", lower[1]),
            ("t_upper", upper[0]),
            ("p_upper", upper[1]),
            ("df", lower[2]),
        ):
            found[f"margin_{margin}_{name}"] = value
    if usevar == "unequal":
        found["diff"] = a.mean() - b.mean()
        found["se"] = compare.std_meandiff_separatevar
        low, high = compare.tconfint_diff(alpha=0.10, usevar="unequal")
        found["ci90_low"], found["ci90_high"] = low, high
    return found


def permutation(a, b):
    test = stats.permutation_test(
        (a, b), lambda x, y: x.mean() - y.mean(), n_resamples=np.inf
    )
    shift = abs(a.mean() - b.mean())
    found = {
        "6v6_count": sum(abs(test.null_distribution) >= shift - 1e-12),
        "6v6_total": math.comb(a.size + b.size, a.size),
        "6v6_p_scipy": test.pvalue,
    }
    found["6v6_p_two_sided_abs"] = found["6v6_count"] / found["6v6_total"]
    for n in (3, 4, 5):
        found[f"smallest_p_{n}v{n}"] = 2 / math.comb(2 * n, n)
    return found


def mann_whitney(a, b):
    test = stats.mannwhitneyu(a, b, method="exact")
    return {"U_6v6": min(test.statistic, a.size * b.size - test.statistic), "p_6v6": test.pvalue}


def dummies(names):
    """One column for each name, 1 where it stands."""
    return np.array([[float(name == one) for one in sorted(set(names))] for name in names])


def onto(columns):
    """The matrix that projects onto what the columns span."""
    return columns @ np.linalg.pinv(columns)


def occasions(name):
    """Method 3 of Henderson, written with projections of the whole design."""
    table = rows(HERE / name)
    y = np.array([float(row["value"]) for row in table])
    subject = dummies([row["subject"] for row in table])
    occasion = dummies([row["occasion"] for row in table])
    both = np.hstack([subject, occasion])
    by_subject, by_both = onto(subject), onto(both)
    free = np.eye(len(y)) - by_subject
    df_between = round(np.trace(by_both - by_subject))
    df_within = round(len(y) - np.trace(by_both))
    within = y @ (np.eye(len(y)) - by_both) @ y / df_within
    between_square = y @ (by_both - by_subject) @ y / df_between
    copies = np.trace(occasion.T @ free @ occasion) / df_between
    return {
        "within": within,
        "within_df": df_within,
        "between_square": between_square,
        "between": (between_square - within) / copies,
        "between_df": df_between,
        "within_sd_low": math.sqrt(within * df_within / stats.chi2.ppf(0.975, df_within)),
        "within_sd_high": math.sqrt(within * df_within / stats.chi2.ppf(0.025, df_within)),
    }


def occasions_reml(name):
    """Restricted likelihood of the mixed model: subjects fixed, occasions random."""
    table = rows(HERE / name)
    y = np.array([float(row["value"]) for row in table])
    subject = dummies([row["subject"] for row in table])
    fit = MixedLM(y, subject, [row["occasion"] for row in table]).fit(reml=True)
    return {"within": fit.scale, "between": float(np.asarray(fit.cov_re)[0, 0])}


def power():
    """Student's two-sided test by the noncentral t; a vector's by the noncentral F."""
    found = {}
    for d, n in ((2.0, 3), (2.0, 4), (2.0, 5), (2.0, 6), (0.5, 20), (1.2, 12)):
        df, shift = 2 * (n - 1), d * math.sqrt(n / 2)
        limit = stats.t.ppf(0.975, df)
        found[f"t_d{d}_n{n}"] = stats.nct.sf(limit, df, shift) + stats.nct.cdf(-limit, df, shift)
    for length, df in ((2.0, 4), (4.0, 8), (5.0, 22), (9.0, 2)):
        limit = stats.f.ppf(0.975, 3, df)
        found[f"vector_l{length}_df{df}"] = stats.ncf.sf(limit, 3, df, length**2)
        found[f"vector_smallest_df{df}"] = optimize.brentq(
            lambda l, df=df, limit=limit: stats.ncf.sf(limit, 3, df, l * l) - 0.8, 0.1, 100
        )
    return found


def main():
    two, near = arms("data_two_arms.csv"), arms("data_tost.csv")
    recomputed = {
        "welch": welch(*two),
        "student_pooled": student_pooled(*two),
        "tost_unequal": equivalence(*near, "unequal"),
        "tost_pooled": equivalence(*near, "pooled"),
        "permutation": permutation(*two),
        "mannwhitney": mann_whitney(*two),
        "occasions_judges": occasions("data_judges.csv"),
        "occasions_judges_reml": occasions_reml("data_judges.csv"),
        "occasions_holes": occasions("data_occasions.csv"),
        "power": power(),
    }
    check = Comparison(HERE)
    for row in rows(HERE / "check_statistics.csv"):
        where = f"check_statistics.csv {row['test']} {row['quantity']}"
        value = recomputed[row["test"]].get(row["quantity"], math.nan)
        check.number(where, row["value"], value)
    check.close()


if __name__ == "__main__":
    main()
