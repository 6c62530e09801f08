"""Pieces that seats of a job share: printed once, cut for all of them."""

from dataclasses import replace
from typing import Any

import pytest

from patternmaker.cutlist.rows import Drafted, cut_rows
from patternmaker.cutlist.sharing import alike, in_short, shared
from patternmaker.facts import HAIR
from patternmaker.job.reading import read_job
from patternmaker.sheets.book import laid_out
from tests.paper.samples import told
from tests.sheets.prints import A4

ROUND = {"shape": "circle", "diameter": 340}


def seat(name: str, **changes: Any) -> dict[str, Any]:
    return {
        "name": name, "make": 2, "outline": ROUND, "cover": {"style": "boxed", "drop": 75},
    } | changes  # fmt: skip


def table(*seats: dict[str, Any]) -> dict[str, Any]:
    material = {"kind": "woven cloth"}
    return {"name": "Set", "units": "mm", "material": material, "seat": list(seats)}


def drafted(*seats: dict[str, Any]) -> Drafted:
    job = read_job(table(*seats))
    return Drafted(job, tuple(each.pattern() for each in job.seats))


def names(job: Drafted) -> dict[str, list[tuple[str, ...]]]:
    found: dict[str, list[tuple[str, ...]]] = {}
    for each in shared(job):
        found.setdefault(each.piece.name, []).append(each.names)
    return found


def test_seats_that_differ_in_their_drop_share_top_base_and_dust_cover():
    job = drafted(seat("Low"), seat("High", cover={"style": "boxed", "drop": 100}))
    found = names(job)
    assert found["boxing"] == [("Low",), ("High",)]
    for name in ("top", "base template", "dust cover"):
        assert found[name] == [("Low", "High")]


def test_label_counts_all_seats_and_names_them():
    printed = told(table(seat("Low", make=3), seat("High", make=37)))
    words = [
        word.text
        for sheets in printed.book.plates.values()
        for word in sheets[0].page.words
        if word.placed and word.placed.form == sheets[0].placed.form
    ]
    assert words.count("Top: cut 40") == 1
    assert words.count("Base template: cut 1") == 1
    assert "Low, High · Set" in words


def test_cut_list_keeps_a_row_for_each_seat():
    job = drafted(seat("Low"), seat("High"))
    assert [row.seat for row in cut_rows(job)].count("High") == len(job.patterns[1].pieces)


def test_forty_seats_take_the_sheets_of_one():
    one = laid_out(drafted(seat("Chair 1")), A4, whole=False, most_sheets=500)
    seats = [seat(f"Chair {i}") for i in range(1, 41)]
    all_of_them = laid_out(drafted(*seats), A4, whole=False, most_sheets=500)
    assert all_of_them.count == one.count
    assert {each.seat for p in all_of_them.plates for each in p.plate.prints} == {"Chair 1–40"}


def test_mirror_images_are_counted_beside_the_others():
    slanted = {"shape": "polygon", "corners": [[0, 0], [400, 0], [300, 300], [0, 300]]}
    job = drafted(seat("One", outline=slanted), seat("Two", outline=slanted, make=1, reversed=4))
    (top,) = [each for each in shared(job) if each.piece.name == "top"]
    assert str(top.tally) == "3 + 4 reversed"


@pytest.mark.parametrize(
    "changes",
    [
        {"material": {"kind": "velour"}},
        {"material": {"kind": "woven cloth", "name": "Green"}},
        {"outline": {"shape": "circle", "diameter": 341}},
        {"allowances": {"seam": 13}},
        {"allowances": {"notch_spacing": 60}},
    ],
)
def test_what_differs_in_shape_material_or_marks_is_not_shared(changes):
    assert names(drafted(seat("One"), seat("Two", **changes)))["top"] == [("One",), ("Two",)]


def test_pieces_are_alike_to_a_hair():
    top = drafted(seat("One")).patterns[0].pieces[0]
    for off, same in ((HAIR / 3, True), (HAIR * 3, False)):
        assert alike(top, replace(top, cut=top.cut.mapped(1, off))) is same
    assert not alike(top, replace(top, guides=top.guides[1:]))
    assert not alike(top, replace(top, notes=()))


def test_names_in_short():
    assert list(in_short(["A 2", "A 1", "A 3", "B"])) == ["A 1–3", "B"]
    assert list(in_short(["Stool", "Seat 07"])) == ["Stool", "Seat 07"]
    assert list(in_short(["Bay 1", "Bay 3"])) == ["Bay 1, 3"]
