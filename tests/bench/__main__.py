"""Print how long a draft takes: ``python -m tests.bench [--rounds N] [--sheets N]``."""

import argparse

from tests.bench import offsets, pages, sheets, start, traces


def main() -> None:
    parser = argparse.ArgumentParser(prog="python -m tests.bench", description=__doc__)
    parser.add_argument("--rounds", type=int, default=15, help="how often each is run")
    parser.add_argument("--sheets", type=int, default=1000, help="how many sheets, about")
    asked = parser.parse_args()
    print(start.report(asked.rounds), flush=True)
    print(offsets.report(asked.rounds), flush=True)
    print(traces.report(asked.rounds), flush=True)
    print(pages.report(asked.sheets, asked.rounds), flush=True)
    print(sheets.report())


main()
