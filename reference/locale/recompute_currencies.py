"""Compare the currencies of this folder with a general-purpose library's.

The library carries the table of the maintenance agency of ISO 4217 and names
the table's day in its version.
"""

import pathlib
import sys

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent))

from iso4217 import Currency  # noqa: E402

from printed import rows  # noqa: E402


def main():
    printed = {row["code"]: row["minor_units"] for row in rows(HERE / "iso4217_minor_units.csv")}
    given = {c.code: "" if c.exponent is None else str(c.exponent) for c in Currency}
    faults = sorted(
        f"{code}: printed {printed.get(code)!r}, the library says {given.get(code)!r}"
        for code in printed.keys() | given.keys()
        if printed.get(code) != given.get(code)
    )
    for sentence in faults:
        print(f"  {sentence}")
    print(f"currencies: {len(printed)} compared, {len(faults)} differ")
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
