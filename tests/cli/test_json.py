"""What ``draft --json`` holds: a contract for programs."""

from typing import Any

import pytest

from tests.cli.command import SAMPLES, STOOL, ended, job, summary

# What draft --json must hold, by the type of each value.
SEAT = {
    "name": str, "make": int,
    "outline": {"shape": str, "width_mm": float, "depth_mm": float, "perimeter_mm": float,
                "area_mm2": float},
    "pieces": [{"name": str, "role": str, "cut": int, "width_mm": float, "height_mm": float,
                "area_mm2": float, "cut_length_mm": float, "sew_length_mm": float,
                "notches": int}],
    "seams": [{"a": str, "b": str, "a_mm": float, "b_mm": float, "ease_mm": float,
               "spans": [{"from": str, "to": str, "a_mm": float, "b_mm": float}]}],
    "stitches": [{"seam": str, "stitch": str, "seam_type": str, "per_inch": float,
                  "stitch_mm": float, "run_mm": float, "thickness_mm": float,
                  "thread_mm": float}],
    "thread_mm": float,
    "fit": {"stretch_round": float, "warnings": [str]},
}  # fmt: skip
CONTRACT = {
    "job": str, "units": str, "version": str, "seats": [SEAT],
    "sheets": {"paper": str, "count": int, "fewest_possible": int},
    "thread_mm": float, "files": [str], "warnings": [str],
}  # fmt: skip


def broken(contract: Any, value: Any, at: str = "") -> list[str]:
    """Return where a value breaks the contract."""
    if isinstance(contract, dict):
        lacking = [f"{at}.{key} is missing" for key in contract if key not in value]
        held = [key for key in contract if key in value]
        return lacking + [
            b for key in held for b in broken(contract[key], value[key], f"{at}.{key}")
        ]
    if isinstance(contract, list):
        if not isinstance(value, list):
            return [f"{at} is no list"]
        return [b for i, each in enumerate(value) for b in broken(contract[0], each, f"{at}[{i}]")]
    return [] if type(value) is contract else [f"{at} is {type(value)}"]


def test_contract_is_told_apart_from_what_breaks_it():
    assert broken({"a": [int], "b": {"c": str}}, {"a": [1, 1.0], "b": {}}) == [
        ".a[1] is <class 'float'>", ".b.c is missing",
    ]  # fmt: skip


@pytest.mark.parametrize("path", sorted(SAMPLES.glob("*.toml")), ids=lambda path: path.stem)
def test_json_keeps_its_contract(path, tmp_path):
    found = summary(path, tmp_path)
    assert broken(CONTRACT, found) == []
    assert found["seats"]
    assert all(seat["pieces"] for seat in found["seats"])
    if path.stem != "slip-seats":  # in one piece each
        assert all(seat["seams"] for seat in found["seats"])


def test_json_holds_the_figures_of_the_stool(tmp_path):
    found = summary(STOOL, tmp_path, "--svg", "--cut-list")
    (seat,) = found["seats"]
    top, boxing = (next(p for p in seat["pieces"] if p["role"] == r) for r in ("top", "boxing"))
    assert (found["job"], found["units"]) == ("Practice rooms, east wing", "in")
    assert (seat["name"], seat["make"]) == ("Round piano stool", 6)
    assert seat["outline"]["shape"] == "circle"
    assert seat["outline"]["width_mm"] == pytest.approx(12.5 * 25.4)
    assert seat["outline"]["perimeter_mm"] == pytest.approx(12.5 * 25.4 * 3.141592653589793)
    assert seat["outline"]["area_mm2"] == pytest.approx((6.25 * 25.4) ** 2 * 3.141592653589793)
    cut = 13.5 * 0.975 * 25.4
    assert top["width_mm"] == pytest.approx(cut)
    assert top["cut_length_mm"] == pytest.approx(3.141592653589793 * cut)
    sewn = 3.141592653589793 * (cut - 25.4)
    assert top["sew_length_mm"] == pytest.approx(sewn)
    assert boxing["sew_length_mm"] == pytest.approx(sewn)
    assert boxing["height_mm"] == pytest.approx((2.75 + 0.5 + 1) * 25.4)
    assert boxing["width_mm"] == pytest.approx(sewn + (0.5 + 0.5 + 3) * 25.4)
    assert seat["fit"]["stretch_round"] == pytest.approx(12.5 * 25.4 / (cut - 25.4))
    assert found["files"] == [
        str(tmp_path / name)
        for name in (
            "practice-rooms-east-wing.pdf",
            "practice-rooms-east-wing.svg",
            "cutlist.csv",
            "sewinglist.csv",
        )
    ]
    assert found["sheets"]["count"] >= found["sheets"]["fewest_possible"] >= 1
    assert found["warnings"] == []


def test_spans_of_a_seam_add_up_to_it_and_its_ease_is_the_difference(tmp_path):
    for seat in summary(SAMPLES / "organ-bench.toml", tmp_path)["seats"]:
        for seam in seat["seams"]:
            assert seam["ease_mm"] == pytest.approx(seam["a_mm"] - seam["b_mm"], abs=1e-9)
            for side in ("a_mm", "b_mm"):
                assert sum(span[side] for span in seam["spans"]) == pytest.approx(seam[side])


def test_thread_of_a_job_is_that_of_its_rows_times_its_seats(tmp_path):
    found = summary(STOOL, tmp_path)
    (seat,) = found["seats"]
    rows = {row["seam_type"][:3]: row for row in seat["stitches"]}
    assert seat["thread_mm"] == pytest.approx(sum(r["thread_mm"] for r in seat["stitches"]))
    assert found["thread_mm"] == pytest.approx(6 * seat["thread_mm"])
    assert rows["LSq"]["stitch_mm"] == pytest.approx(25.4 / 6)
    assert rows["SSa"]["per_inch"] == pytest.approx(8)


def test_names_reach_the_json_as_they_are(tmp_path):
    found = summary(job(tmp_path, "[red] {x} Übung", "[/foo] %s"), tmp_path)
    assert found["job"] == "[red] {x} Übung"
    assert found["seats"][0]["name"] == "[/foo] %s"


def test_tape_that_disagrees_is_warned_of_in_both_reports(tmp_path):
    path = job(tmp_path, more="measured_round = 1030\n")
    (warning,) = summary(path, tmp_path)["seats"][0]["fit"]["warnings"]
    assert warning.startswith("The tape round the seam (1030 mm) disagrees")
    report = ended(path, "--out", tmp_path, code=0).stdout
    assert f"Look at this first\n  Round piano stool: {warning}" in report


def test_letters_that_the_lettering_lacks_are_warned_of_and_drafted(tmp_path):
    path = job(tmp_path, "Music 椅子")
    (warning,) = summary(path, tmp_path)["warnings"]
    assert "'椅' (U+6905), '子' (U+5B50)" in warning
    assert warning in ended(path, "--out", tmp_path, code=0).stdout


def test_json_tells_what_matching_takes_and_how_a_piece_may_be_turned(tmp_path):
    found = summary(SAMPLES / "cello-chairs.toml", tmp_path)
    tweed, *others = found["materials"]
    assert (tweed["name"], tweed["kind"]) == ("striped tweed", "woven cloth")
    assert tweed["matching_mm2"] > 0
    assert not any(each["matching_mm2"] for each in others)
    turns = {
        (piece["material"], piece["turn_deg"])
        for seat in found["seats"]
        for piece in seat["pieces"]
        if not piece["role"].startswith(("base", "dust"))
    }
    assert turns == {("striped tweed", 180), ("wine velour", 360)}
    (side,) = (p for p in found["seats"][2]["pieces"] if p["name"] == "side")
    assert (side["cut"], side["reversed"]) == (1, 1)
