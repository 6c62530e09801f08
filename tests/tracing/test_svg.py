"""What of an SVG counts as drawn, what its lines are called, and our own files read back."""

import math

import numpy as np
import pytest

from patternmaker.drawing.looks import PENS
from patternmaker.geometry.biarcs import fitted
from patternmaker.geometry.compass import Compass
from patternmaker.geometry.contour import Contour
from patternmaker.pattern.piece import LineKind
from patternmaker.tracing import gathering
from patternmaker.tracing.sketch import read_sketch
from patternmaker.writers.svg import svg_file
from tests.tracing.drawings import apart, drawn, only, svg, told

SEAT = '<circle id="seat" r="50"/>'


def names(body: str) -> list[str]:
    return [chain.name for chain in drawn(body).chains]


def test_line_is_called_by_its_id_its_title_or_its_place():
    titled = '<path d="M0 0h1"><title> left\n arm</title></path>'
    body = '<circle r="1"/><path id="leg" d="M0 0h1"/>' + titled
    assert names(body) == ["circle 1", "leg", "left arm"]
    assert names('<path d="M0 0h1"/><path d="M0 0"/><path d="M0 0h1"/>') == ["path 1", "path 3"]


def test_lines_of_one_name_are_numbered():
    assert names(SEAT * 3) == ["seat", "seat (2)", "seat (3)"]


@pytest.mark.parametrize(
    "body",
    [
        f"<defs>{SEAT}</defs>",
        f"<symbol>{SEAT}</symbol>",
        f"<clipPath>{SEAT}</clipPath>",
        f"<mask>{SEAT}</mask>",
        f"<pattern>{SEAT}</pattern>",
        f"<marker>{SEAT}</marker>",
        f"<metadata>{SEAT}</metadata>",
        f'<g display="none">{SEAT}</g>',
        f'<g style="fill:red;display:none">{SEAT}</g>',
        f'<g visibility="hidden">{SEAT}</g>',
        f'<g style="visibility: collapse"><g>{SEAT}</g></g>',
        f'<style>.off, .out {{fill:none; display: none}}</style><g class="a off">{SEAT}</g>',
        "<style>#seat{display:none}</style>" + SEAT,
        f'<other xmlns="urn:other">{SEAT}</other>',
    ],
)
def test_what_is_not_shown_is_no_line(body):
    assert drawn(body).chains == ()


@pytest.mark.parametrize(
    "body",
    [
        f"<g>{SEAT}</g>",
        f"<a>{SEAT}</a>",
        f"<switch>{SEAT}</switch>",
        f'<g display="none" style="display:inline">{SEAT}</g>',
        f'<g visibility="hidden"><g visibility="visible">{SEAT}</g></g>',
        f'<style>.off {{fill:none}} .out {{display:none}}</style><g class="off">{SEAT}</g>',
        f'<defs>{SEAT}</defs><use href="#seat"/>',
        f'<defs>{SEAT}</defs><use xlink:href="#seat"/>',
    ],
)
def test_what_is_shown_is_a_line(body):
    assert names(body) == ["seat"]


def test_private_elements_and_attributes_are_passed_over():
    body = f"""<x:view xmlns:x="urn:x" zoom="2"><x:page/></x:view>
        <g xmlns:x="urn:x" x:groupmode="layer" x:label="Trace" x:transform="scale(9)">{SEAT}</g>"""
    assert only(drawn(body)).path.width == pytest.approx(100)


def test_used_again_is_drawn_again_elsewhere():
    body = f'{SEAT}<use href="#seat" x="200" y="10" transform="scale(2)"/>'
    first, second = drawn(body).chains
    assert first.path.width == pytest.approx(100)
    assert second.path.bounds == pytest.approx((300, -120, 500, 80))


def test_symbol_is_shown_in_a_viewport_as_large_as_its_use_says():
    body = ('<symbol id="s" viewBox="0 0 10 10"><rect width="10" height="10"/></symbol>'
            '<use href="#s" x="5" width="40" height="80"/>')  # fmt: skip
    assert only(drawn(body)).path.bounds == pytest.approx((5, -60, 45, -20))


def test_hidden_symbol_is_not_shown():
    assert drawn(f'<symbol id="s" display="none">{SEAT}</symbol><use href="#s"/>').chains == ()


def test_what_is_skipped_is_noted():
    sketch = drawn('<text>Seat</text><text/><use href="#gone"/><use/>' + SEAT)
    assert sketch.notes == (
        "passed over in the drawing, as no lines to follow: 2 text, 2 use of nothing",
    )


@pytest.mark.parametrize(
    "body",
    [
        '<g id="a"><use href="#a"/></g>',
        '<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g>',
        '<symbol id="a"><use href="#a"/></symbol><use href="#a"/>',
    ],
)
def test_use_within_itself_is_refused(body):
    assert "uses itself" in told("a.svg", svg(body))


def test_uses_that_multiply_are_refused_soon():
    """Sixteen uses of sixteen uses ... of a group: four thousand million of them."""
    uses = {i: f'<use href="#g{i}"/>' * 16 for i in range(8)}
    groups = "".join(f'<g id="g{i + 1}">{inner}</g>' for i, inner in uses.items())
    message = told("a.svg", svg(f'<defs><g id="g0"/>{groups}</defs><use href="#g8"/>'))
    assert "over and over" in message


def test_uses_nested_too_deep_are_refused():
    chain = "".join(f'<g id="g{i}"><use href="#g{i - 1}"/></g>' for i in range(1, 200))
    body = f'<defs><circle id="g0" r="5"/>{chain}</defs><use href="#g199"/>'
    assert "over and over" in told("a.svg", svg(body))


def test_other_xml_is_refused():
    assert told("a.svg", b"<html><svg/></html>").startswith("is XML, but not a drawing;")


def test_point_far_outside_is_refused_with_the_line():
    assert told("a.svg", svg('<path id="leg" d="M0 0 L 1e8 5"/>')) == (
        "holds a point farther out than 1,000,000, or no number, in leg; "
        "mend that point, and check the unit"
    )


def test_ellipse_with_hardly_any_height_goes_out_and_home():
    chain = only(drawn('<ellipse rx="100" ry="1e-8"/>'))
    assert chain.path.length == pytest.approx(400, abs=0.001)


def test_scales_beyond_all_numbers_are_refused():
    scales = ["1e9 0 0 1e9 0 0"] * 34 + ["100 0 0 100 0 0", "1.7 1.7 -1.7 1.7 0 0"]
    body = SEAT
    for each in scales:
        body = f'<g transform="matrix({each})">{body}</g>'
    assert told("a.svg", svg(body)) == (
        "holds numbers too large; check the units and scales in it"
    )  # fmt: skip


RULED = (
    Compass(200j).joint("back").line(-180 + 200j).arc(-180 + 140j, math.pi / 2)
    .line(-240 - 100j).arc(-140 - 100j, math.pi / 2).line(140 - 200j)
    .arc(140 - 100j, math.pi / 2).line(240 + 140j).arc(180 + 140j, math.pi / 2)
    .line(200j).closed()
)  # fmt: skip


def oval() -> Contour:
    def curve(t: float) -> tuple[complex, complex]:
        way = complex(-250 * math.sin(t), 180 * math.cos(t))
        return complex(250 * math.cos(t), 180 * math.sin(t)), way / abs(way)

    return Contour(fitted(curve, 0.0, math.tau))


@pytest.mark.parametrize("contour", [RULED, oval()], ids=["ruled", "oval"])
def test_our_own_file_comes_back_as_it_went(contour):
    """Within what six digits after the point hold."""
    red = PENS[LineKind.CUT].colour
    placed = contour.mapped(1, 300 + 300j)
    sketch = read_sketch(
        "seat.svg", svg_file("Stool", (600, 600), {"cut": (red, [("top", placed)])})
    )
    chain = only(sketch)
    assert (chain.name, chain.closed, sketch.notes) == ("top", True, ())
    assert len(chain.segments) == len(contour.segments)
    back = chain.path.mapped(1, -300 + 300j)
    assert apart(back, np.array(contour.chords(1e-5))) < 2e-5
    assert back.length == pytest.approx(contour.length, abs=1e-5)


def test_our_own_circle_comes_back_as_it_went():
    circle = Contour(Compass(160 + 0j).arc(0j, math.pi).arc(0j, math.pi).closed().segments)
    red = PENS[LineKind.CUT].colour
    content = svg_file("Stool", (400, 400), {"cut": (red, [("top", circle.mapped(1, 200 + 200j))])})
    assert only(read_sketch("a.svg", content)).path.length == pytest.approx(320 * math.pi, abs=1e-6)


def test_hundred_thousand_points_are_read():
    data = " ".join(
        f"{100 * math.cos(i / 1e4):.5f},{100 * math.sin(i / 1e4):.5f}" for i in range(62_000)
    )
    assert len(only(drawn(f'<path d="M{data}z"/>')).points) == 62_000


def test_curves_that_take_too_many_arcs_are_refused(monkeypatch):
    monkeypatch.setattr(gathering, "MOST_ARCS", 100)
    body = '<ellipse rx="250" ry="180"/>'
    assert told("a.svg", svg(body)).startswith("holds 101 arcs or more, where at most 100 are read")


def test_too_many_points_are_refused_with_their_count():
    assert told("a.svg", svg(f'<path d="M{"1 2 " * 250_000}"/>')) == (
        "holds 250,000 points or more, where at most 200,000 are read; "
        "save the seat alone, or with fewer points"
    )
