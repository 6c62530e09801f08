"""Whatever stands in its tables, a job is either read, and can be drafted, or refused in words."""

import copy
from datetime import date
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from patternmaker.errors import Refusals
from patternmaker.job import Job, read_job

GOOD: dict[str, Any] = {
    "name": "Practice rooms",
    "units": "in",
    "date": "summer",
    "material": {"kind": "vinyl", "take_up": "1%", "boxing": {"kind": "velour", "give": 0.02}},
    "stitching": {"seams": "8 per inch", "spare": "10%"},
    "allowances": {"seam": "1/2", "wrap": 1, "boxing_longest": 64, "round_cut_to": "1/4"},
    "seat": [
        {
            "name": "Organ bench",
            "make": 2,
            "outline": {"shape": "rounded rectangle", "width": 30, "depth": 14, "corner": 2},
            "cover": {"style": "boxed", "drop": 3},
            "base": {"shape": "circle", "diameter": 13},
            "measured_round": 84,
            "taken": "flat",
            "trust": "round",
            "allowances": {"seam": "3/4", "topstitch": "1/4", "reference_line": 0.5},
            "material": {"kind": "woven cloth", "take_up_across": 0.01},
        },
        {
            "name": "Round piano stool",
            "outline": {"shape": "circle", "diameter": "12 1/2"},
            "cover": {"style": "boxed", "drop": "70 mm"},
            "base": {"inset": "1/8"},
            "welt": [{"seam": "top seam", "cord": "1/4", "cut": "bias"}],
            "stitching": {"topstitch": "5 per inch"},
            "padding": {"foam": 2, "wadding": "1/2"},
            "without": ["dust cover"],
        },
    ],
}
LEAVES = (
    st.none()  # takes the field away
    | st.booleans()
    | st.integers()
    | st.floats()
    | st.floats(0, 60)
    | st.text(max_size=5)
    | st.sampled_from(
        ["mm", "in", "circle", "boxed", "velour", "2 1/2", "-3", "1e9 m", "5%", "crown"]
    )
    | st.just(date(2031, 8, 1))
)
VALUES = st.recursive(
    LEAVES,
    lambda inner: (
        st.lists(inner, max_size=2)
        | st.dictionaries(
            st.sampled_from(["shape", "kind", "width", "seam", "{x}"]), inner, max_size=2
        )
    ),
    max_leaves=4,
)


def places(tables: Any, at: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    keys = tables if isinstance(tables, dict) else range(len(tables))
    found = [(*at, key) for key in keys]
    inner = [tables[key] for key in keys]
    return found + [
        place
        for key, each in zip(keys, inner, strict=True)
        if isinstance(each, dict | list)
        for place in places(each, (*at, key))
    ]


def changed(changes: list[tuple[tuple[Any, ...], Any]]) -> dict[str, Any]:
    tables: Any = copy.deepcopy(GOOD)
    for (*way, last), value in changes:
        table = tables
        try:
            for key in way:
                table = table[key]
            table[last] = value
        except (KeyError, IndexError, TypeError):  # an earlier change has taken the place away
            continue
        if value is None:
            del table[last]
    return tables  # type: ignore[no-any-return]


def read(tables: dict[str, Any]) -> Job | Refusals:
    try:
        return read_job(tables)
    except Refusals as refused:
        return refused


def test_unchanged_job_is_read():
    assert isinstance(read(GOOD), Job)


@given(st.lists(st.tuples(st.sampled_from(places(GOOD)), VALUES), min_size=1, max_size=4))
def test_job_is_drafted_or_refused_in_short_lines(changes):
    outcome = read(changed(changes))
    if isinstance(outcome, Job):
        assert all(seat.pattern().pieces for seat in outcome.seats)
    else:
        told = [mistake.told(outcome.unit) for mistake in outcome]
        assert told
        assert all(0 < len(line) < 400 and line.isprintable() for line in told)
