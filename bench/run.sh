#!/usr/bin/env bash
# Both readers over the same rendered photos, and the table of both:
# bench/run.sh [PAIRS_PER_DIFFICULTY] [FIRST_SEED]
set -euo pipefail
cd "$(dirname "$0")/.."

photos=$(mktemp -d)
trap 'rm -rf "$photos"' EXIT
venv=bench/.venv
if [ ! -x "$venv/bin/python" ]; then
  python3 -m venv "$venv"
fi
"$venv/bin/pip" install --quiet --disable-pip-version-check -r bench/requirements.txt
cargo run --quiet --release -p photo --example side_by_side -- "$photos" "${1:-20}" "${2:-0}"
"$venv/bin/python" -W ignore bench/side_by_side.py "$photos"
