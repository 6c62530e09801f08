"""The SVG read back with lxml and svgpathtools: true size, and fit for a cutter to follow."""

import math
import re
from io import BytesIO, StringIO
from typing import Any

import numpy as np
import pytest
import svgpathtools
from lxml import etree  # type: ignore[import-untyped]

from tests.paper.forms import SEATS, Rounded
from tests.paper.samples import JOBS, made, told

SVG = "{http://www.w3.org/2000/svg}"
LENGTH = 1e-4  # mm


def root(content: bytes) -> Any:
    return etree.parse(BytesIO(content)).getroot()


@pytest.fixture(params=JOBS)
def job(request):
    return request.param


def lines(content: bytes, kind: str) -> list[tuple[str, Any]]:
    """Return title and element of every line in the group of a kind."""
    (group,) = [g for g in root(content).iter(SVG + "g") if g.get("id") == kind.replace(" ", "-")]
    return [(each.findtext(SVG + "title"), each) for each in group if each.tag != SVG + "title"]


def length(element: Any) -> float:
    if element.tag == SVG + "circle":
        return 2 * math.pi * float(element.get("r"))
    return float(svgpathtools.parse_path(element.get("d")).length(error=1e-10))


def test_one_unit_is_one_millimetre(job):
    """SVG 1.1, 7.2 and 7.7: a viewBox of the size that width and height give in mm."""
    drawing = root(made(job).svg)
    left, bottom, width, height = map(float, drawing.get("viewBox").split())
    assert (left, bottom) == (0, 0)
    assert drawing.get("width") == f"{drawing.get('viewBox').split()[2]}mm"
    assert drawing.get("height") == f"{drawing.get('viewBox').split()[3]}mm"
    assert min(width, height) > 300


def test_one_group_with_its_title_for_each_kind_of_line(job):
    groups = [each for each in root(made(job).svg) if each.tag == SVG + "g"]
    assert len(groups) >= 9
    ids = [group.get("id") for group in groups]
    assert len(set(ids)) == len(ids)
    for group in groups:
        assert group.findtext(SVG + "title").replace(" ", "-") == group.get("id")
        assert group.get("fill") == "none"
        assert re.fullmatch(r"#[0-9a-f]{6}", group.get("stroke"))
        assert float(group.get("stroke-width")) <= 0.18  # 0.5 point: a university's laser shop


def test_nothing_is_moved_filled_or_referred_to(job):
    drawing = root(made(job).svg)
    for each in drawing.iter():
        assert each.get("transform") is None
        assert each.get("fill") in (None, "none")
        assert each.get("style") is None
    tags = {each.tag.removeprefix(SVG) for each in drawing.iter()}
    assert tags <= {"svg", "title", "defs", "g", "path", "circle"}


def test_paths_keep_to_absolute_lines_and_arcs(job):
    """SVG 1.1, 8.3; some cutters read no other commands."""
    found = [each.get("d") for each in root(made(job).svg).iter(SVG + "path")]
    assert found
    for data in found:
        assert set(re.findall(r"[A-Za-z]", data)) <= set("MLAZ")
        assert data.startswith("M")
        assert data.count("M") == 1


def test_every_line_lies_on_the_drawing(job):
    drawing = root(made(job).svg)
    _, _, width, height = map(float, drawing.get("viewBox").split())
    for each in drawing.iter(SVG + "path"):
        left, right, top, bottom = svgpathtools.parse_path(each.get("d")).bbox()
        assert left >= 0
        assert top >= 0
        assert right <= width
        assert bottom <= height


@pytest.mark.parametrize("kind", ["cut line", "sew line"])
def test_lines_are_as_long_as_the_summary_says(job, kind):
    figure = {"cut line": "cut_length_mm", "sew line": "sew_length_mm"}[kind]
    figures = made(job).figures["seats"]
    said = {
        f"{seat['name']}, {piece['name']} ": piece[figure]
        for seat in figures
        for piece in seat["pieces"]
        if piece[figure]
    }
    drawn = lines(made(job).svg, kind)
    assert len(drawn) == len(said)
    for title, element in drawn:
        (expected,) = [value for name, value in said.items() if title.startswith(name)]
        assert length(element) == pytest.approx(expected, abs=LENGTH)


@pytest.mark.parametrize(
    ("seat", "form"),
    [(s, f) for s in SEATS for _, kind, f in s.closed_lines if kind == "cut line"
     if isinstance(f, Rounded)],
)  # fmt: skip
def test_every_cut_line_lies_where_its_formula_says(seat, form):
    """A circle is a circle; arcs are arcs, so that each point is within a thousandth of one."""
    found = [element for _, element in lines(made(seat.job).svg, "cut line")]
    if form.corner == form.width / 2:
        radii = [float(each.get("r")) for each in found if each.tag == SVG + "circle"]
        assert any(radius == pytest.approx(form.corner, abs=1e-5) for radius in radii)
        return
    for each in found:
        if each.tag == SVG + "path" and "A" in each.get("d"):
            path = svgpathtools.parse_path(each.get("d"))
            left, right, top, bottom = path.bbox()
            if (right - left, bottom - top) == pytest.approx(form.size, abs=1e-4):
                points = np.array([path.point(t) for t in np.linspace(0, 1, 999)])
                middle = complex(left + right, top + bottom) / 2
                assert form.distances(points - middle).max() < 1e-3
                assert sum(isinstance(s, svgpathtools.Arc) for s in path) >= 4
                return
    pytest.fail(f"no cut line of {form.size}")


def test_top_stands_the_right_way_up(job):
    """SVG runs downward: the double notch, the back, is the upper one on the drawing."""
    slits = [each for title, each in lines(made(job).svg, "notch") if ", top (" in title]
    tops = [each for title, each in lines(made(job).svg, "cut line") if ", top (" in title]
    assert len(tops) == len(made(job).figures["seats"])
    starts = [svgpathtools.parse_path(each.get("d")).start for each in slits]
    pairs = [(a + b) / 2 for i, a in enumerate(starts) for b in starts[:i] if abs(a - b) < 7]
    assert len(pairs) == len(tops)
    for each in tops:
        if each.tag == SVG + "circle":
            upper = float(each.get("cy")) - float(each.get("r"))
        else:
            upper = svgpathtools.parse_path(each.get("d")).bbox()[2]
        assert any(abs(pair.imag - upper) < 0.1 for pair in pairs)


def test_odd_names_leave_a_file_that_can_be_read():
    """XML 1.0, 2.2: no control characters; names come back as the job gave them."""
    name = 'Ä <stool> & "so" on [red] 凳子'
    content = told({
        "name": name, "units": "mm", "material": {"kind": "vinyl", "name": "a<b>&"},
        "seat": [{"name": "]]> one", "outline": {"shape": "circle", "diameter": 300},
                  "cover": {"style": "boxed", "drop": 70}}],
    }).svg  # fmt: skip
    assert root(content).findtext(SVG + "title") == name
    assert not re.search(rb"[\x00-\x08\x0b\x0c\x0e-\x1f]", content)
    assert any("]]> one" in title for title, _ in lines(content, "cut line"))
    paths, _, attributes = svgpathtools.svg2paths2(StringIO(content.decode()))
    assert len(paths) > 20
    assert attributes["viewBox"]
