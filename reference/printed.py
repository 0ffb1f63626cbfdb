"""Compare recomputed numbers with numbers printed in a table of check values.

Tolerance comes from the digits that are printed: one unit in the last place,
so that a number printed from the last bit of a different maths library still
agrees. Numbers printed in full (15 digits or more) agree to 1 in 10^9.
"""

import csv
import pathlib
import sys
from decimal import Decimal


def rows(path):
    """The rows of a CSV as dictionaries of text."""
    with open(path, newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def tolerance(text):
    """Largest difference at which a recomputed number still agrees with `text`."""
    number = Decimal(text)
    digits = len(number.as_tuple().digits)
    if digits >= 15:
        return max(1e-9 * abs(float(number)), 1e-12)
    return 1.0001 * 10.0 ** number.as_tuple().exponent


class Comparison:
    """Counts the numbers of a table that agree and tells those that don't."""

    def __init__(self, folder):
        self.folder = pathlib.Path(folder)
        self.compared = 0
        self.wrong = []

    def number(self, where, printed, recomputed, allowed=None):
        """One number; `allowed` overrides the tolerance of the printed digits."""
        self.compared += 1
        allowed = tolerance(printed) if allowed is None else allowed
        if not abs(float(printed) - float(recomputed)) <= allowed:
            self.wrong.append(f"{where}: printed {printed}, recomputed {recomputed!r}")

    def word(self, where, printed, recomputed):
        """One word, such as a grade."""
        self.compared += 1
        if printed != recomputed:
            self.wrong.append(f"{where}: printed {printed}, recomputed {recomputed}")

    def close(self):
        """Print the count and end the script: 0 all agree, 1 some don't."""
        for line in self.wrong[:20]:
            print(f"  {self.folder.name}/{line}")
        agree = self.compared - len(self.wrong)
        print(f"reference/{self.folder.name}: {agree} of {self.compared} values agree")
        sys.exit(1 if self.wrong or not self.compared else 0)
