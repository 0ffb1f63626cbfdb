"""Recompute the check values of this folder and compare them with the files.

Differences, spectra and white points: by colour-science. Grades of fade and
stain: no general-purpose library has them, so they are computed here a second
time, apart from the Rust code, from the formulas of ISO 105-A05 and A04.
"""

import math
import pathlib
import sys
import warnings

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent))

import numpy as np  # noqa: E402

from printed import Comparison, rows  # noqa: E402

with warnings.catch_warnings():
    warnings.simplefilter("ignore")
    import colour  # noqa: E402
# ASTM E308 trims a chart's spectrum to the observer's range and says so each time.
warnings.filterwarnings("ignore", category=colour.utilities.ColourRuntimeWarning)

VIEWS = {
    "D65/10": ("D65", "CIE 1964 10 Degree Standard Observer"),
    "D65/2": ("D65", "CIE 1931 2 Degree Standard Observer"),
    "D50/2": ("D50", "CIE 1931 2 Degree Standard Observer"),
    "A/10": ("A", "CIE 1964 10 Degree Standard Observer"),
    "FL2/10": ("FL2", "CIE 1964 10 Degree Standard Observer"),
    "FL11/10": ("FL11", "CIE 1964 10 Degree Standard Observer"),
}
HALF_STEPS = ["5", "4-5", "4", "3-4", "3", "2-3", "2", "1-2", "1"]


def triple(row, names):
    return np.array([float(row[name]) for name in names])


def ciede2000_pairs(check):
    for row in rows(HERE / "ciede2000_sharma_34.csv"):
        one = triple(row, ["L1", "a1", "b1"])
        two = triple(row, ["L2", "a2", "b2"])
        for way, value in (
            ("", colour.difference.delta_E_CIE2000(one, two)),
            (" swapped", colour.difference.delta_E_CIE2000(two, one)),
        ):
            where = f"ciede2000_sharma_34.csv pair {row['pair']}{way}"
            check.word(where, row["dE00_published_4dp"], f"{value:.4f}")
            check.number(where, row["dE00_colour"], value)


def differences(check):
    d = colour.difference
    formulas = {
        "dE76": d.delta_E_CIE1976,
        "dE94_textiles_kL2": lambda r, t: d.delta_E_CIE1994(r, t, textiles=True),
        "colour_dE94_textiles": lambda r, t: d.delta_E_CIE1994(r, t, textiles=True),
        "dE_CMC_2_1": lambda r, t: d.delta_E_CMC(r, t, l=2, c=1),
        "colour_CMC_2_1": lambda r, t: d.delta_E_CMC(r, t, l=2, c=1),
        "dE_CMC_1_1": lambda r, t: d.delta_E_CMC(r, t, l=1, c=1),
        "dE2000_111": d.delta_E_CIE2000,
        "colour_dE2000_111": d.delta_E_CIE2000,
        "dE2000_211": lambda r, t: d.delta_E_CIE2000(r, t, textiles=True),
    }
    for row in rows(HERE / "check_colour_difference.csv"):
        reference = triple(row, ["L_ref", "a_ref", "b_ref"])
        test = triple(row, ["L_test", "a_test", "b_test"])
        for column, formula in formulas.items():
            where = f"check_colour_difference.csv {row['id']} {column}"
            check.number(where, row[column], formula(reference, test))


def hue_deg(lab):
    return math.degrees(math.atan2(lab[2], lab[1])) % 360.0


def fade_terms(reference, treated):
    """ISO 105-A05: the terms of the grade of fade, treated minus reference."""
    c_r, c_t = math.hypot(*reference[1:]), math.hypot(*treated[1:])
    h_r, h_t = hue_deg(reference), hue_deg(treated)
    turn = (h_t - h_r + 180.0) % 360.0 - 180.0
    terms = {
        "dL": treated[0] - reference[0],
        "dC": c_t - c_r,
        "dH": 2.0 * math.sqrt(c_t * c_r) * math.sin(math.radians(turn) / 2.0),
        "CM": (c_t + c_r) / 2.0,
    }
    middle = (h_t + h_r) / 2.0
    if abs(h_t - h_r) > 180.0:
        middle += 180.0 if h_t + h_r < 360.0 else -180.0
    away = abs(middle - 280.0)
    terms["hM"] = middle
    terms["x"] = (min(away, 360.0 - away) / 30.0) ** 2
    terms["D"] = terms["dC"] * terms["CM"] * math.exp(-terms["x"]) / 100.0
    terms["dCK"] = terms["dC"] - terms["D"]
    terms["dHK"] = terms["dH"] - terms["D"]
    terms["dCF"] = terms["dCK"] / (1.0 + (20.0 * terms["CM"] / 1000.0) ** 2)
    terms["dHF"] = terms["dHK"] / (1.0 + (10.0 * terms["CM"] / 1000.0) ** 2)
    d_ef = math.sqrt(terms["dL"] ** 2 + terms["dCF"] ** 2 + terms["dHF"] ** 2)
    terms["dEF"] = d_ef
    terms["GSc_raw"] = 5.0 - (d_ef / 1.7 if d_ef <= 3.4 else math.log2(d_ef / 0.85))
    terms["GSc_min1"] = max(1.0, terms["GSc_raw"])
    return terms


def fades(check):
    limits = [0.40, 1.25, 2.10, 2.95, 4.10, 5.80, 8.20, 11.60]
    for row in rows(HERE / "check_iso105_A05.csv"):
        terms = fade_terms(
            triple(row, ["L_ref", "a_ref", "b_ref"]),
            triple(row, ["L_test", "a_test", "b_test"]),
        )
        where = f"check_iso105_A05.csv {row['id']}"
        for column, value in terms.items():
            if row[column]:
                check.number(f"{where} {column}", row[column], value)
        grade = HALF_STEPS[sum(terms["dEF"] >= limit for limit in limits)]
        check.word(where, row["reported_grade"], grade)


def stains(check):
    limits = [4.75, 4.25, 3.75, 3.25, 2.75, 2.25, 1.75, 1.25]
    for row in rows(HERE / "check_iso105_A04.csv"):
        unstained = triple(row, ["L_ref", "a_ref", "b_ref"])
        stained = triple(row, ["L_stained", "a_stained", "b_stained"])
        d_e = float(colour.difference.delta_E_CIE1976(unstained, stained))
        d_l = float(stained[0] - unstained[0])
        d_gs = d_e - 0.4 * math.sqrt(max(d_e**2 - d_l**2, 0.0))
        value, branch = 5.0, "zero"
        if d_gs > 0.0:
            value, branch = 6.1 - 1.45 * math.log(d_gs), "ln"
            if value > 4.0:
                value, branch = 5.0 - 0.23 * d_gs, "linear"
        where = f"check_iso105_A04.csv {row['id']}"
        for column, number in (
            ("dE76", d_e),
            ("dL", d_l),
            ("dE_GS", d_gs),
            ("SSR", value),
        ):
            check.number(f"{where} {column}", row[column], number)
        check.word(f"{where} branch", row["branch"], branch)
        grade = HALF_STEPS[sum(round(value, 2) < limit for limit in limits)]
        check.word(where, row["reported_grade"], grade)


def view(condition):
    illuminant, observer = VIEWS[condition]
    return colour.MSDS_CMFS[observer], colour.SDS_ILLUMINANTS[illuminant]


def xyz_e308(spectrum, condition):
    observer, light = view(condition)
    return colour.sd_to_XYZ(spectrum, observer, light, method="ASTM E308")


def xyz_by_1_nm(spectrum, condition):
    """The plain sum by 1 nm of 360 to 780 nm, ends held, Sprague in between."""
    shape = colour.SpectralShape(360, 780, 1)
    observer, light = view(condition)
    observer = observer.copy().align(shape)
    light = light.copy().align(shape)
    inner = colour.SpectralShape(spectrum.shape.start, spectrum.shape.end, 1)
    fine = spectrum.copy().interpolate(inner, interpolator=colour.SpragueInterpolator)
    fine = fine.extrapolate(
        shape, extrapolator_kwargs={"method": "Constant", "left": None, "right": None}
    )
    weights = observer.values * light.values[:, None]
    return 100.0 * (fine.values @ weights) / weights[:, 1].sum()


def spectra(check):
    table = {}
    for row in rows(HERE / "chart24_spectra_10nm.csv"):
        name = row.pop("patch")
        table[name] = colour.SpectralDistribution(
            {float(nm): float(value) for nm, value in row.items()}, name=name
        )
    library = [
        averaged
        for averaged in colour.characterisation.SDS_COLOURCHECKERS.values()
        if all(name in averaged and averaged[name].shape == sd.shape for name, sd in table.items())
    ]
    for name, spectrum in table.items():
        for nm, value in zip(spectrum.wavelengths, spectrum.values):
            where = f"chart24_spectra_10nm.csv {name} {nm:.0f} nm"
            check.number(where, f"{value:.4f}", library[0][name][nm])

    flat = colour.SpectralDistribution({float(nm): 1.0 for nm in range(360, 790, 10)})
    whites = {}
    for row in rows(HERE / "check_white_points.csv"):
        condition = row["condition"]
        whites[condition] = {
            "E308": xyz_e308(flat, condition),
            "own1nm": xyz_by_1_nm(flat, condition),
        }
        for route, white in whites[condition].items():
            for axis, value in zip("XYZ", white):
                column = f"{axis}n_{route}"
                where = f"check_white_points.csv {condition} {column}"
                check.number(where, row[column], value)

    for row in rows(HERE / "check_spectral_lab.csv"):
        spectrum, condition = table[row["patch"]], row["condition"]
        for route, xyz in (
            ("E308", xyz_e308(spectrum, condition)),
            ("own1nm", xyz_by_1_nm(spectrum, condition)),
        ):
            white = colour.XYZ_to_xy(whites[condition][route])
            lab = colour.XYZ_to_Lab(xyz / 100.0, white)
            for axis, value in zip("XYZLab", [*xyz, *lab]):
                column = f"{axis}_{route}"
                where = f"check_spectral_lab.csv {row['patch']} {condition} {column}"
                check.number(where, row[column], value)


def k_over_s(r):
    return (1 - r) ** 2 / (2 * r)


def strengths(check):
    """Kubelka and Munk's K/S, mixtures of two dyes, and strength of one dyeing against another."""
    for row in rows(HERE / "check_ks_table.csv"):
        r, k_s = float(row["R"]), float(row["K_over_S"])
        check.number(f"check_ks_table.csv {row['R']}", row["K_over_S"], k_over_s(r))
        check.number(f"check_ks_table.csv {row['R']} back", row["R_back"], 1 + k_s - math.sqrt(k_s**2 + 2 * k_s), 1e-9)
    table = rows(HERE / "check_km_two_colorant.csv")
    column = {name: np.array([float(row[name]) for row in table]) for name in table[0]}
    mixtures = {
        "R_yellow_1pct": (1, 0), "R_blue_1pct": (0, 1), "R_green_0.80Y_0.50B": (0.8, 0.5),
        "R_green_batch_0.84Y_0.46B": (0.84, 0.46), "R_blue_2pct": (0, 2),
    }
    for name, (yellow, blue) in mixtures.items():
        total = (
            k_over_s(column["R_substrate"])
            + yellow * column["unitKS_yellow_per_pct"]
            + blue * column["unitKS_blue_per_pct"]
        )
        for row, value in zip(table, 1 + total - np.sqrt(total**2 + 2 * total)):
            check.number(f"check_km_two_colorant.csv {row['nm']} {name}", row[name], value, 5e-8)
    pairs = {
        "green_batch_vs_green": ("R_green_batch_0.84Y_0.46B", "R_green_0.80Y_0.50B"),
        "blue_2pct_vs_blue_1pct": ("R_blue_2pct", "R_blue_1pct"),
    }
    bare = k_over_s(column["R_substrate"])
    for row in rows(HERE / "check_colour_strength.csv"):
        batch, standard = (k_over_s(column[name]) for name in pairs[row["pair"]])
        darkest = np.argmax(standard)
        where = f"check_colour_strength.csv {row['pair']}"
        check.number(where, row["lambda_max_nm"], column["nm"][darkest])
        for name, (b, s) in {
            "at_lmax": (batch[darkest], standard[darkest]),
            "sum": (batch.sum(), standard.sum()),
            "at_lmax_substrate_subtracted": ((batch - bare)[darkest], (standard - bare)[darkest]),
            "sum_substrate_subtracted": ((batch - bare).sum(), (standard - bare).sum()),
        }.items():
            check.number(f"{where} {name}", row[f"strength_{name}_pct"], 100 * b / s, 2e-5)


def main():
    check = Comparison(HERE)
    ciede2000_pairs(check)
    differences(check)
    fades(check)
    stains(check)
    spectra(check)
    strengths(check)
    check.close()


if __name__ == "__main__":
    main()
