"""A job is read whole: what stands in its tables, and every mistake in them at once."""

import math
import tomllib

import pytest

from patternmaker.errors import Refusals
from patternmaker.job import Job, read_job
from patternmaker.job.model import MOST_SEATS
from patternmaker.units import Unit

STOOL = """
[[seat]]
name    = "Round piano stool"
outline = { shape = "circle", diameter = 318 }
cover   = { style = "boxed", drop = 70 }
"""
THRONE = STOOL.replace("Round piano stool", "Drum throne")


def read(body: str, head: str = 'name = "Practice rooms"\nunits = "mm"\n') -> Job:
    return read_job(tomllib.loads(head + body))


def mistakes(body: str, head: str = 'name = "Practice rooms"\nunits = "mm"\n') -> list[str]:
    with pytest.raises(Refusals) as refused:
        read(body, head)
    return str(refused.value).splitlines()


def fields(body: str) -> list[str]:
    return [mistake.split(": ")[0].removeprefix("seat 1 ") for mistake in mistakes(body)]


def test_job_holds_its_seats_in_order():
    job = read(STOOL + THRONE + "make = 2")
    assert (job.name, job.unit, job.date) == ("Practice rooms", Unit.MM, None)
    assert [(seat.name, seat.make) for seat in job.seats] == [
        ("Round piano stool", 1), ("Drum throne", 2),
    ]  # fmt: skip


def test_bare_numbers_are_in_the_unit_of_the_job():
    job = read(
        '[[seat]]\nname = "Stool"\noutline = { shape = "circle", diameter = "12 1/2" }\n'
        'cover = { style = "boxed", drop = "70 mm" }',
        'name = "x"\nunits = "in"\n',
    )
    assert job.seats[0].outline.contour().width == pytest.approx(317.5)
    assert job.seats[0].brief.allowances.seam == pytest.approx(12.7)


def test_seat_overrides_the_allowances_of_the_job():
    job = read("[allowances]\nseam = 10\nwrap = 30\n" + STOOL + "allowances = { wrap = 40 }")
    allowances = job.seats[0].brief.allowances
    assert (allowances.seam, allowances.wrap) == (10, 40)


def test_seat_overrides_the_material_of_the_job_in_part():
    job = read(
        '[material]\nkind = "vinyl"\nname = "black"\ntake_up = "1%"\n'
        + STOOL + 'material = { name = "red" }\n'
    )  # fmt: skip
    material = job.seats[0].brief.material("top")
    assert (material.kind, material.name, material.take_up) == ("vinyl", "red", 0.01)


def test_another_kind_of_material_starts_afresh():
    job = read(
        '[material]\nkind = "vinyl"\nname = "black"\ntake_up = "1%"\n'
        + STOOL + 'material = { kind = "velour" }\n'
    )  # fmt: skip
    material = job.seats[0].brief.material("top")
    assert (material.kind, material.name, material.take_up) == ("velour", None, None)


def test_boxing_has_a_material_of_its_own_over_that_of_the_whole():
    job = read(
        '[material]\nkind = "velour"\ntake_up = "1%"\n[material.boxing]\nname = "wine"\n' + STOOL
    )
    brief = job.seats[0].brief
    assert brief.material("top").name is None
    assert (brief.material("boxing").kind, brief.material("boxing").name) == ("velour", "wine")


TEST = "stretch_test = { mark = 250, pulled_to = 260 }\nuse = 0.4\n"


def test_stretch_test_of_a_seat_replaces_the_take_up_of_the_job_and_the_other_way_round():
    own = "material = { stretch_test = { mark = 200, pulled_to = 206 } }\n"
    tested = read('[material]\ntake_up = "2%"\ngive = "5%"\n' + STOOL + own).seats[0].brief
    assert tested.material("top").gives_across == pytest.approx(0.03)
    assert tested.material("top").across == pytest.approx(0.015)
    told = read("[material]\n" + TEST + STOOL + 'material = { take_up = "1%" }').seats[0].brief
    assert told.material("top").across == 0.01


def test_stretch_test_that_is_half_written_is_refused_by_its_field():
    wrong = mistakes("[material]\nstretch_test = { mark = 10 }\n" + STOOL)
    assert wrong[0].endswith("; write it as { mark = 10, pulled_to = 10.4 }")
    assert fields("[material]\nstretch_test = 3\n" + STOOL) == ["material.stretch_test"]
    wrong = mistakes('[material]\nstretch_test = { mark = 250, pulled_to = "x" }\n' + STOOL)
    assert wrong[0].startswith("material.stretch_test, pulled_to: 'x' is not a length")


def test_stretch_test_of_a_seat_is_refused_though_that_of_the_job_is_wrong_too():
    bad = "stretch_test = { mark = 250, pulled_to = 240 }"
    assert fields(f"[material]\n{bad}\n{STOOL}material = {{ {bad} }}") == [
        "material.stretch_test, pulled_to",
        '"Round piano stool", material.stretch_test, pulled_to',
    ]


def test_dust_cover_is_not_made_of_what_the_seat_is_covered_with():
    job = read('[material]\nname = "wine"\n[material.dust_cover]\nkind = "cambric"\n' + STOOL)
    assert job.seats[0].brief.material("dust cover").name is None


def test_base_has_its_own_measurements_or_follows_the_seam():
    own = read(STOOL + 'base = { shape = "circle", diameter = 300 }').seats[0].brief.base
    inset = read(STOOL + "base = { inset = 10 }").seats[0].brief.base
    assert own.width == pytest.approx(300)
    assert inset.width == pytest.approx(298)


def test_mistake_of_the_job_is_not_told_again_beneath_a_seat_that_overrides_another_field():
    assert mistakes(
        "[allowances]\nseam = 1\nwarp = 2\n" + STOOL + "allowances = { wrap = 30 }"
    ) == [
        "allowances.warp: is not a field here; did you mean 'wrap'?",
        "allowances.seam: 1 mm is less than 6 mm; make it 6 mm or more",
    ]


def test_mistake_in_the_material_of_the_job_is_told_once():
    body = '[material]\ntake_up = "x"\nboxing = { kind = "vynil" }\n'
    own = 'material = { name = "red", dust_cover = { name = 5 } }\n'
    assert fields(body + STOOL + own) == [
        "material.take_up", "material.boxing.kind", '"Round piano stool", material.dust_cover.name',
    ]  # fmt: skip


def test_role_that_is_no_table_is_told_once():
    assert fields('[material]\nboxing = "vinyl"\n' + STOOL + 'material = { name = "red" }\n') == [
        "material.boxing"
    ]


def test_seat_repeating_a_mistake_of_the_job_is_told_of_its_own():
    assert fields("[allowances]\nseam = 1\n" + STOOL + "allowances = { seam = 2 }") == [
        "allowances.seam", '"Round piano stool", allowances.seam',
    ]  # fmt: skip


def test_mistakes_of_a_seat_are_told_beside_those_of_the_job():
    body = '[allowances]\nseam = 1\n[material]\nkind = "x"\n'
    own = 'allowances = { wrap = -1 }\nmaterial = { kind = "y" }\n'
    assert fields(body + STOOL + own) == [
        "material.kind", "allowances.seam", '"Round piano stool", allowances.wrap',
        '"Round piano stool", material.kind',
    ]  # fmt: skip


def test_what_cannot_be_drawn_is_told_once_every_field_is_good():
    assert fields(STOOL + "base = { inset = 170 }\nmeasured_round = 400") == [
        '"Round piano stool", base.inset'
    ]
    assert fields(STOOL + "measured_round = 400") == ['"Round piano stool", measured_round']


def test_seat_that_is_no_table_is_one_mistake():
    assert mistakes("seat = [5]") == [
        "seat 1: 5 is not a table; write it as { name = value, ... }"
    ]  # fmt: skip


@pytest.mark.parametrize("shape", ["5", "[]", "{}", "2031-08-01", "true", '""'])
def test_shape_that_is_no_word_is_refused(shape):
    assert fields(STOOL.replace('"circle"', shape)) == ['"Round piano stool", outline.shape']


def test_mistyped_shape_of_a_base_is_told_the_field():
    told = mistakes(STOOL + 'base = { shap = "circle" }')
    assert told == [
        "seat 1 \"Round piano stool\", base.shap: is not a field here; did you mean 'shape'?"
    ]


def test_too_many_seats_are_refused_before_any_is_read():
    many = "".join(STOOL.replace("stool", f"stool {i}") for i in range(MOST_SEATS + 1))
    assert mistakes(many.replace("318", "-1")) == [
        "seat: there are 201, more than 200; split the job"
    ]


def test_as_many_seats_as_are_allowed_are_read():
    many = "".join(STOOL.replace("stool", f"stool {i}") for i in range(MOST_SEATS))
    assert len(read(many).seats) == MOST_SEATS


def test_names_of_ten_thousand_letters_are_refused_by_their_length():
    long = "o" * 10_000
    told = mistakes(STOOL.replace("Round piano stool", long), f'name = "{long}"\nunits = "mm"\n')
    assert told[0] == "name: has 10,000 letters, more than 120; shorten it"
    assert told[1].endswith('…", name: has 10,000 letters, more than 60; shorten it')
    assert len(told) == 2
    assert len(told[1]) < 120


@pytest.mark.parametrize(
    "name", ["a/b", "../..", "[red]", "{x}", "{0}", "%s", "NUL", "=1+1", "椅子", "\\u00e9"]
)
def test_names_of_any_printable_letters_are_read(name):
    job = read(STOOL.replace("Round piano stool", name), f'name = "{name}"\nunits = "mm"\n')
    assert job.name == job.seats[0].name


def test_braces_in_a_mistaken_name_are_told_as_they_are():
    told = mistakes(STOOL.replace("Round piano stool", "{x} {0}").replace("318", "1"))
    assert told == [
        'seat 1 "{x} {0}", outline.diameter: 1 mm is less than 50 mm; make it 50 mm or more'
    ]


def test_braces_in_a_mistaken_key_are_told_as_they_are():
    assert mistakes('"{x}" = 1\n' + STOOL)[0].startswith("{x}: is not a field here")


def test_units_decide_nothing_when_they_are_wrong():
    assert mistakes('[allowances]\nseam = "1/2"\n' + STOOL, 'name = "x"\nunits = "yards"\n') == [
        "units: 'yards' is not known; it can be mm, cm, in"
    ]


def test_a_base_that_follows_the_seam_follows_the_tape_round_it_where_that_wins():
    seat = {
        "name": "Stool",
        "outline": {"shape": "circle", "diameter": 300},
        "cover": {"style": "boxed", "drop": 70},
        "base": {"inset": 5},
        "measured_round": 310 * math.pi,
        "trust": "round",
    }
    job = read_job({"name": "Job", "units": "mm", "seat": [seat]})
    assert job.seats[0].brief.base.width == pytest.approx(300)


PANELS = STOOL.replace('style = "boxed", drop = 70', 'style = "panels"')


def test_panels_and_seams_of_a_seat_are_read():
    panel = '[[seat.panel]]\nname = "{}"\noutline = {{ shape = "circle", diameter = 300 }}\n'
    seam = """[[seat.seam]]
panel = "crown"
begins = "back"
ends = "front"
partner = "skirt"
partner_begins = "back"
partner_ends = "front"
"""
    (seat,) = read(PANELS + panel.format("crown") + panel.format("skirt") + seam).seats
    assert [(panel.name, panel.cut) for panel in seat.brief.panels] == [("crown", 1), ("skirt", 1)]
    assert [(wish.panel, wish.partner) for wish in seat.brief.seams] == [("crown", "skirt")]


def test_panels_that_are_no_list_are_told_how_to_be_one():
    (mistake,) = mistakes(PANELS + 'panel = "crown"\n')
    assert mistake == (
        'seat 1 "Round piano stool", panel: is not a list of at most 60 tables; '
        "write each under [[seat.panel]]"
    )


def test_mistakes_within_panels_and_seams_are_told_by_number():
    body = PANELS + '[[seat.panel]]\nname = "crown"\n[[seat.seam]]\npanel = "crown"\n'
    told = [mistake.split(": ")[0].split(", ")[1] for mistake in mistakes(body)]
    assert told[0] == "panel 1.outline"
    assert "seam 1.partner" in told


def test_lone_welt_stands_in_its_seat_and_several_in_a_list():
    (lone,) = read(STOOL + 'welt = { seam = "top seam", cord = 5 }').seats[0].brief.finishing.welts
    assert (lone.seam, lone.cord, lone.topstitch) == ("top seam", 5, False)
    both = read(STOOL + '[[seat.welt]]\nseam = "top seam"\n[[seat.welt]]\nseam = "join"\n')
    assert [welt.seam for welt in both.seats[0].brief.finishing.welts] == ["top seam", "join"]


def test_welt_may_have_a_material_of_its_own():
    body = '[material.welt]\nname = "black leather"\n' + STOOL + 'welt = { seam = "top seam" }'
    (strip,) = (p for p in read(body).seats[0].pattern().pieces if p.role == "welt")
    assert strip.material.title == "black leather"


def test_seat_overrides_the_stitches_of_the_job():
    job = '[stitching]\nseams = "8 per inch"\ntopstitch = 5\n'
    rules = read(job + STOOL + "stitching = { topstitch = 6 }").seats[0].brief.finishing.stitches
    assert rules.seams == pytest.approx(3.175)
    assert rules.topstitch == 6


def test_mistake_in_the_stitches_of_the_job_is_told_once():
    told = mistakes("[stitching]\nseams = 30\n" + STOOL + "stitching = { topstitch = 6 }")
    assert [line.split(":")[0] for line in told] == ["stitching.seams"]


def test_seat_says_what_lies_under_its_cover_and_which_pieces_it_goes_without():
    body = STOOL + 'padding = { foam = 50, wadding = 12 }\nwithout = ["dust cover"]'
    names = [piece.name for piece in read(body).seats[0].pattern().pieces]
    assert names == ["top", "boxing", "base template", "foam template", "wadding"]


def test_seat_whose_cover_objects_is_not_asked_for_its_seams():
    told = mistakes(STOOL + 'allowances = { sewing_open = 300 }\nwelt = { seam = "hem" }')
    assert [line.split(": ")[0] for line in told] == [
        'seat 1 "Round piano stool", allowances.sewing_open'
    ]


@pytest.mark.parametrize("key", ["welt", "padding", "stitching"])
def test_what_finishes_a_seat_is_written_in_tables(key):
    assert fields(STOOL + f'{key} = "yes"')[0] == f'"Round piano stool", {key}'
