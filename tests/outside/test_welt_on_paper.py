"""A welt as it is printed, read back from the PDF and compared with sums done by hand."""

import math
from typing import Any

import pytest

from tests.paper.samples import Made, told
from tests.paper.sheets import plain

IN = 25.4
PRINTED = 0.02  # mm


def stool(**welt: Any) -> dict[str, Any]:
    """A round stool of 12 1/2 in in cloth of no thickness, with a welt in its top seam."""
    return {
        "name": "Welted",
        "units": "in",
        "material": {"kind": "woven cloth", "thickness": 0},
        "allowances": {"seam": "1/2"},
        "seat": [
            {
                "name": "Stool",
                "outline": {"shape": "circle", "diameter": "12 1/2"},
                "cover": {"style": "boxed", "drop": 3},
                "welt": {"seam": "top seam", **welt},
            }
        ],
    }


def narrow(made: Made) -> Any:
    """Return the one closed cut line on paper that is as narrow as a welt."""
    cuts = (curve for _, curve in made.book.drawn("cut line") if curve.is_closed)
    (found,) = (curve for curve in cuts if min(curve.size) < 60)
    return found


@pytest.mark.parametrize(("cord", "width"), [("5/32", 37.868), ("1/4", 45.349)])
def test_strip_is_printed_as_wide_and_long_as_a_cord_and_a_seam_take(cord, width):
    """pi d + 2 x 1/2 in (a sewing page's formula), 12 1/2 pi in and a join of 1/4 in square to 45.

    A strip with slanting ends is as large as the rectangle of its long edge.
    """
    strip = narrow(told(stool(cord=cord), whole=True))
    assert min(strip.size) == pytest.approx(width, abs=PRINTED)
    edge = 12.5 * math.pi * IN + 2 * IN / 4 * math.sqrt(2)
    assert max(strip.size) == pytest.approx(edge + width, abs=PRINTED)
    assert abs(strip.area) == pytest.approx(edge * width, rel=1e-4)


def test_its_ends_say_how_it_is_cut_and_joined():
    words = plain(w for page in told(stool()).book.paper.pages for w in page.words)
    assert "Top seam welt: cut 1" in words
    assert "39 1/4 in from join line to join line" in words
    assert "length on the bias, at 45° to the threads" in words
    assert "Round a cord of 5/32 in, folded along the middle; seam allowance 1/2 in" in words


def test_boxing_beside_it_is_printed_without_a_topstitch():
    assert not list(told(stool()).book.drawn("topstitch"))
    assert list(told(stool(topstitch=True)).book.drawn("topstitch"))
