"""Recompute the check values of this folder and compare them with the file.

Tests of two means by SciPy, equivalence by statsmodels, smallest p-values of
a permutation test by counting splits; scatter by occasions by projection
matrices and by statsmodels' mixed model; power by SciPy's noncentral
distributions, sample sizes and Holm's rule by statsmodels; power of equivalence and limits of
several tests against a control by integrals.
"""

import math
import pathlib
import sys

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent))

import numpy as np  # noqa: E402
import pandas  # noqa: E402
import statsmodels.formula.api as smf  # noqa: E402
from scipy import integrate, optimize, stats  # noqa: E402
from statsmodels.regression.mixed_linear_model import MixedLM  # noqa: E402
from statsmodels.stats.multitest import multipletests  # noqa: E402
from statsmodels.stats.power import TTestIndPower  # noqa: E402
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


def two_arm_power(d, n):
    """Student's two-sided test at 0.05 by the noncentral t, n per arm."""
    df, shift = 2 * (n - 1), d * math.sqrt(n / 2)
    limit = stats.t.ppf(0.975, df)
    return stats.nct.sf(limit, df, shift) + stats.nct.cdf(-limit, df, shift)


def sample_size():
    found = {}
    for d in (0.5, 0.8, 1.2, 2.0):
        for wanted in (0.8, 0.9):
            exact = TTestIndPower().solve_power(d, alpha=0.05, power=wanted)
            found[f"d{d}_power{wanted}_exact"] = exact
            found[f"d{d}_power{wanted}_whole"] = math.ceil(exact)
            found[f"d{d}_n{math.ceil(exact)}"] = two_arm_power(d, math.ceil(exact))
    return found


def power_grid():
    return {
        f"d{d}_n{n}": TTestIndPower().power(d, n, 0.05)
        for d in (0.5, 0.8, 1.2, 2.0)
        for n in (3, 4, 5, 6, 8, 10, 12, 20)
    }


def tost_power(margin, truly, n):
    """Two one-sided tests at 0.05: the share of means within what the scatter leaves."""
    df, error = 2 * (n - 1), math.sqrt(2 / n)
    limit = stats.t.ppf(0.95, df)

    def shown(chi_square):
        half = margin - limit * error * math.sqrt(chi_square / df)
        within = stats.norm.cdf((half - truly) / error) - stats.norm.cdf((-half - truly) / error)
        return within * stats.chi2.pdf(chi_square, df)

    most = min(df * (margin / (limit * error)) ** 2, stats.chi2.isf(1e-15, df))
    return integrate.quad(shown, 0, most, epsabs=1e-12, epsrel=1e-12, limit=500)[0]


def equivalence_size():
    found = {}
    for margin in (0.5, 1.0, 1.5, 2.0):
        n = next(n for n in range(2, 1000) if tost_power(margin, 0, n) >= 0.8)
        found[f"margin{margin}_whole"] = n
        found[f"margin{margin}_n{n}"] = tost_power(margin, 0, n)
    for margin, truly, n in ((1.0, 0.3, 20), (2.0, 1.0, 6), (1.5, 0.5, 3), (0.5, 0.5, 70)):
        found[f"margin{margin}_truly{truly}_n{n}"] = tost_power(margin, truly, n)
    return found


def dunnett(several, df, correlation=0.5, tail=0.05):
    """The greatest of several t's against one control, by a double integral."""
    z, z_weights = np.polynomial.legendre.leggauss(200)
    z, z_weights = 9 * z, 9 * z_weights * stats.norm.pdf(9 * z)
    most = math.sqrt(stats.chi2.isf(1e-14, df) / df)
    s, s_weights = np.polynomial.legendre.leggauss(200)
    s, s_weights = most * (s + 1) / 2, most / 2 * s_weights
    s_weights = s_weights * stats.chi2.pdf(df * s * s, df) * 2 * df * s
    shared, own = math.sqrt(correlation), math.sqrt(1 - correlation)

    def within(limit):
        ends = limit * s[:, None]
        one = stats.norm.cdf((ends - shared * z) / own) - stats.norm.cdf((-ends - shared * z) / own)
        return s_weights @ one**several @ z_weights

    limit = optimize.brentq(lambda limit: within(limit) - (1 - tail), 0.5, 50)
    if df != 10:
        return limit
    # An independent way, by chance: slow, and it agrees to a few thousandths.
    shape = np.full((several, several), correlation) + (1 - correlation) * np.eye(several)
    t = stats.multivariate_t(shape=shape, df=df, seed=1)
    by_chance = t.cdf(np.full(several, limit), lower_limit=np.full(several, -limit), maxpts=100_000)
    assert abs(by_chance - (1 - tail)) < 3e-3, (several, df, by_chance)
    return limit


def dunnett_limits():
    found = {f"several{k}_df{df}": dunnett(k, df) for k in (1, 2, 3, 5, 9) for df in (2, 5, 10, 20, 60)}
    found |= {f"several3_df12_correlation{r}": dunnett(3, 12, r) for r in (0.2, 0.8)}
    found["several3_df12_tail0.01"] = dunnett(3, 12, tail=0.01)
    return found


def within_loads(name):
    """Arms, baths and washes as additive parts, by ordinary least squares."""
    fit = smf.ols("value ~ C(arm) + C(bath) + C(wash)", pandas.read_csv(HERE / name)).fit()
    found = {"df": fit.df_resid}
    for what, contrast in (
        ("a_b", "C(arm)[T.b] = 0"),
        ("a_c", "C(arm)[T.c] = 0"),
        ("b_c", "C(arm)[T.c] - C(arm)[T.b] = 0"),
    ):
        test = fit.t_test(contrast)
        found[f"{what}_difference"] = float(test.effect[0])
        found[f"{what}_se"] = float(np.squeeze(test.sd))
        found[f"{what}_p"] = float(test.pvalue)
    return found


def holm():
    adjusted = multipletests([0.012, 0.2, 0.001, 0.04, 0.03, 0.9], method="holm")[1]
    return {f"p{at}": p for at, p in enumerate(adjusted)}


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
        "sample_size": sample_size(),
        "power_grid": power_grid(),
        "equivalence_size": equivalence_size(),
        "dunnett": dunnett_limits(),
        "holm": holm(),
        "within_loads": within_loads("data_loads.csv"),
    }
    check = Comparison(HERE)
    for row in rows(HERE / "check_statistics.csv"):
        where = f"check_statistics.csv {row['test']} {row['quantity']}"
        value = recomputed[row["test"]].get(row["quantity"], math.nan)
        check.number(where, row["value"], value)
    check.close()


if __name__ == "__main__":
    main()
