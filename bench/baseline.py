"""The straightforward way to read colours from a photo with a 24-patch chart.

Corners and areas are given. Pixels are made linear, the light is evened out by
the ground that shows around chart and pieces, each channel is bent until the
neutral patches are right, and a root-polynomial of the second degree leads to
XYZ under D65 for the 10 degree observer.
"""

import csv
import io
import pathlib
import warnings

import cv2
import numpy as np
from PIL import Image, ImageCms, ImageOps
from scipy.interpolate import PchipInterpolator

with warnings.catch_warnings():
    warnings.simplefilter("ignore")
    import colour
    from colour.characterisation import (
        apply_matrix_colour_correction_Finlayson2015 as apply_root_polynomial,
        matrix_colour_correction_Finlayson2015 as fit_root_polynomial,
    )

ROOT = pathlib.Path(__file__).resolve().parent.parent
SPECTRA = ROOT / "reference/colour/chart24_spectra_10nm.csv"
D65 = colour.CCS_ILLUMINANTS["CIE 1964 10 Degree Standard Observer"]["D65"]

# Patches lie in 4 rows of 6; the gap between two is 3 parts of 20.
GAP = 0.15
# From white to black.
NEUTRALS = slice(18, 24)


def chart_xyz():
    """XYZ of the patches under D65 for the 10 degree observer, white = 1."""
    observer = colour.MSDS_CMFS["CIE 1964 10 Degree Standard Observer"]
    light = colour.SDS_ILLUMINANTS["D65"]
    with open(SPECTRA, encoding="utf-8") as file:
        rows = list(csv.reader(line for line in file if not line.startswith("#")))
    wavelengths = [float(nm) for nm in rows[0][1:]]
    spectra = [dict(zip(wavelengths, map(float, row[1:]))) for row in rows[1:]]
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        xyz = [colour.sd_to_XYZ(colour.SpectralDistribution(s), observer, light) for s in spectra]
    return np.array(xyz) / 100


def load(path):
    """The upright photo's codes, height x width x 3, in a space with the tone curve of sRGB."""
    picture = Image.open(path)
    profile = picture.info.get("icc_profile")
    picture = ImageOps.exif_transpose(picture).convert("RGB")
    if profile:
        own = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        name = ImageCms.getProfileDescription(own)
        # Display P3 has the tone curve of sRGB; its primaries are left to the fit.
        if "sRGB" not in name and "P3" not in name:
            picture = ImageCms.profileToProfile(picture, own, ImageCms.createProfile("sRGB"))
    return np.asarray(picture)


LINEAR = colour.models.eotf_sRGB(np.arange(256) / 255)


def mask(shape, polygon):
    """Which pixels have their middle in a polygon."""
    # A pixel's middle is at a half here and at a whole number for OpenCV.
    points = np.round((np.asarray(polygon) - 0.5) * 16).astype(np.int32)
    drawn = np.zeros(shape[:2], np.uint8)
    cv2.fillPoly(drawn, [points], 1, shift=4)
    return drawn.astype(bool)


def patches(shape, corners):
    """Pixels (rows, columns) of the middle half of each patch, and its middle."""
    width, height = 6 + 5 * GAP, 4 + 3 * GAP
    flat = np.float32([[0, 0], [width, 0], [width, height], [0, height]])
    to_photo = cv2.getPerspectiveTransform(flat, np.float32(corners))
    found = []
    for row in range(4):
        for column in range(6):
            x, y = column * (1 + GAP), row * (1 + GAP)
            square = [[x + a, y + b] for a, b in ((0.25, 0.25), (0.75, 0.25), (0.75, 0.75), (0.25, 0.75))]
            square = cv2.perspectiveTransform(np.float64([square]), to_photo)[0]
            found.append((np.nonzero(mask(shape, square)), square.mean(axis=0)))
    return found


def tone_table(seen, wanted):
    """Light of each code, 256 x 3, by a monotone curve per channel through the neutrals.

    `seen` is the patches' light as recorded, `wanted` what it should be.
    """
    table = np.empty((256, 3))
    codes = np.log(np.maximum(LINEAR, 1e-5))
    for channel in range(3):
        # Cameras bend light by powers: a curve through logarithms follows them best.
        x, order = np.unique(np.log(np.maximum(seen[:, channel], 1e-5)), return_index=True)
        y = np.maximum.accumulate(np.log(wanted[order, channel]))
        curve = PchipInterpolator(x, y)(np.clip(codes, x[0], x[-1]))
        for side, end, at in ((codes < x[0], slice(0, 2), 0), (codes > x[-1], slice(-2, None), -1)):
            slope = np.diff(y[end])[0] / np.diff(x[end])[0]
            curve[side] = y[at] + slope * (codes[side] - x[at])
        table[:, channel] = np.exp(curve)
    return table


class Field:
    """The light as a polynomial of the second degree, in logarithms."""

    def __init__(self, shape, centre, coefficients=np.zeros((6, 3))):
        self.size, self.centre, self.coefficients = max(shape[:2]), centre, coefficients

    def terms(self, x, y):
        u, v = (x - self.centre[0]) / self.size, (y - self.centre[1]) / self.size
        return np.stack([np.ones_like(u), u, v, u * u, u * v, v * v], axis=-1)

    def at(self, x, y):
        """Light of each channel beside that in the chart's middle."""
        return np.exp(self.terms(x, y)[..., 1:] @ self.coefficients[1:])


def surround(shape, corners, areas):
    """Which pixels lie well outside chart and pieces."""
    is_open = np.ones(shape[:2], bool)
    for outline in [corners, *areas]:
        outline = np.asarray(outline)
        middle = outline.mean(axis=0)
        # The chart has a rim, and an area lies well inside its piece.
        is_open &= ~mask(shape, middle + (outline - middle) * 1.35)
    return is_open


def light_field(codes, table, is_open, even):
    """The light by the ground around chart and pieces; even light where too little of it is alike."""
    step = 16
    rows, columns = [n // step for n in codes.shape[:2]]

    def blocks(picture):
        cut = picture[: rows * step, : columns * step]
        return cut.reshape(rows, step, columns, step, -1).mean(axis=(1, 3))

    clipped = (codes >= 253).any(axis=2)
    usable = (blocks(is_open.astype(float)) > 0.999) & (blocks(clipped.astype(float)) < 0.02)
    row, column = np.nonzero(usable[..., 0])
    if len(row) < 100:
        return even
    light = blocks(np.stack([table[codes[..., k], k] for k in range(3)], axis=-1))
    values = np.log(np.maximum(light[row, column], 1e-4))
    terms = even.terms((column + 0.5) * step, (row + 0.5) * step)
    # Start near the most common light, then fit again without what lies far off.
    keep = np.abs(values - np.median(values, axis=0)).max(axis=1) < 0.35
    for _ in range(12):
        if keep.sum() < 100:
            return even
        fit = np.linalg.lstsq(terms[keep], values[keep], rcond=None)[0]
        off = np.abs(values - terms @ fit).max(axis=1)
        scatter = 1.4826 * np.median(off[keep])
        keep = off < max(2.5 * scatter, 0.01)
    if keep.mean() < 0.3 or scatter > 0.25:
        return even
    return Field(codes.shape, even.centre, fit)


def mean_light(codes, table, pixels, field):
    """Mean light of some pixels, the unevenness of the light taken off."""
    row, column = pixels
    light = np.stack([table[codes[row, column, k], k] for k in range(3)], axis=-1)
    return (light / field.at(column + 0.5, row + 0.5)).mean(axis=0)


def read(path, corners, areas, xyz, with_field=True):
    """CIELAB of the areas (D65/10), and whether the light was evened out."""
    codes = load(path)
    squares = patches(codes.shape, corners)
    middles = np.array([middle for _, middle in squares])
    even = Field(codes.shape, middles.mean(axis=0))
    plain = np.repeat(LINEAR[:, None], 3, axis=1)
    seen = np.array([mean_light(codes, plain, pixels, even) for pixels, _ in squares])
    is_open = surround(codes.shape, corners, areas)
    neutral = xyz[NEUTRALS, 1]
    field = even
    # The tone needs the light and the light needs the tone undone: take turns.
    for turn in range(4):
        wanted = neutral[:, None] * field.at(*middles[NEUTRALS].T)
        table = tone_table(seen[NEUTRALS], wanted)
        if not with_field or turn == 3:
            break
        field = light_field(codes, table, is_open, even)
    chart = np.array([mean_light(codes, table, pixels, field) for pixels, _ in squares])
    matrix = fit_root_polynomial(chart, xyz, degree=2)
    insides = [np.nonzero(mask(codes.shape, area)) for area in areas]
    light = np.array([mean_light(codes, table, pixels, field) for pixels in insides])
    found = apply_root_polynomial(light, matrix, degree=2)
    return colour.XYZ_to_Lab(found, D65), field is not even
