"""Every seam of every sample, walked on the printed sheets from mark to mark.

The PDF is read back by an interpreter of its own. The pattern tells only which printed line and
mark belongs to which edge; every length is taken on paper. 0.03 mm is the paper's own limit.
"""

from dataclasses import replace
from functools import cache

import pytest

from patternmaker.covers.registry import COVERS
from patternmaker.job import load_job
from tests.paper.pieces import Laid, sewn_pieces
from tests.paper.samples import SAMPLES, made, told
from tests.paper.seams import Span, names_inside, walked

WALKED = 0.03  # mm
JOBS = sorted(path.stem for path in SAMPLES.glob("*.toml"))
SEAMS, SPANS = 105, 465  # in the samples so far
T_SHAPE = {"shape": "T shape", "width": 660, "depth": 560, "back_width": 500, "ear_depth": 130,
           "corner": 40, "inner_corner": 12}  # fmt: skip
EACH_JOB = pytest.mark.parametrize("job", JOBS)


@cache
def laid(job: str) -> list[dict[str, Laid]]:
    return sewn_pieces(made(job).book, made(job).patterns)


@cache
def spans(job: str) -> list[list[list[Span]]]:
    """Return the printed spans of each seam of each seat of a job."""
    seats = zip(made(job).patterns, laid(job), strict=True)
    return [[walked(seam, pieces) for seam in pattern.seams] for pattern, pieces in seats]


@EACH_JOB
def test_every_seam_walks_on_paper(job, record_property):
    """No seam is left out: one without a line or a mark on paper fails, as does a lost span."""
    figures = [seat["seams"] for seat in made(job).figures["seats"]]
    found = [span for seat in spans(job) for seam in seat for span in seam]
    assert [[len(seam) for seam in seat] for seat in spans(job)] == [
        [len(seam["spans"]) for seam in seat] for seat in figures
    ]
    record_property("seams", sum(map(len, figures)))
    record_property("spans", len(found))
    assert max((span.off for span in found), default=0.0) < WALKED


@EACH_JOB
def test_spans_told_are_those_printed(job):
    for seat, table in zip(spans(job), made(job).figures["seats"], strict=True):
        for seam, figures in zip(seat, table["seams"], strict=True):
            for span, figure in zip(seam, figures["spans"], strict=True):
                assert (span.begin, span.end) == (figure["from"], figure["to"])
                assert (span.a, span.b) == pytest.approx((figure["a_mm"], figure["b_mm"]),
                                                         abs=WALKED)  # fmt: skip


@EACH_JOB
def test_notches_that_meet_are_lettered_alike(job):
    for pattern, pieces in zip(made(job).patterns, laid(job), strict=True):
        for seam in pattern.seams:
            for edge in (seam.a, seam.b):
                for name, lettered in names_inside(edge, pieces[edge.piece]):
                    assert name in lettered, f"{edge}: {lettered}"


def test_every_cover_is_among_them():
    """A pull-over cover is sewn at its corners only, and that in the sample of square corners."""
    jobs = [load_job(SAMPLES / f"{job}.toml") for job in JOBS]
    sewn = {
        type(seat.cover)
        for job, name in zip(jobs, JOBS, strict=True)
        for seat, seams in zip(job.seats, spans(name), strict=True)
        if seams
    }
    assert sewn == set(COVERS.all.values())
    assert sum(len(seams) for job in JOBS for seams in spans(job)) >= SEAMS
    assert sum(len(seam) for job in JOBS for seat in spans(job) for seam in seat) >= SPANS


@pytest.mark.parametrize("style", ["boxed", "box cushion", "fluted", "knife edge", "waterfall"])
def test_seams_round_corners_that_turn_inward_walk_on_paper(style):
    """No sample has one; a notch leads to the middle of such a corner's arc."""
    height = {"height": 75} if style in ("box cushion", "knife edge") else {"drop": 75}
    height |= {"roll": 6} if style == "fluted" else {}
    seat = {"name": "Choir bench", "outline": T_SHAPE, "cover": {"style": style, **height}}
    job = {"name": "Choir room", "units": "mm", "material": {"kind": "vinyl"}, "seat": [seat]}
    draft = told(job, whole=True)
    (pattern,), (pieces,) = draft.patterns, sewn_pieces(draft.book, draft.patterns)
    names = {name for seam in pattern.seams for name, _ in seam.a.stations}
    assert {"inner left", "inner right"} <= names
    assert max(span.off for seam in pattern.seams for span in walked(seam, pieces)) < WALKED


@pytest.mark.parametrize("aside", [0.05j, -0.05j])
def test_slit_that_is_printed_a_little_aside_is_found(aside):
    """The walk is on paper: a notch moved there, not in the pattern, no longer meets."""
    (pattern,), (pieces,) = made("round-piano-stool").patterns, laid("round-piano-stool")
    top = pieces["top"]
    slit = top.notches[1].curves[0]
    moved = slit.moved(1, aside * (slit.end - slit.start) / slit.length)
    drawn = tuple((kind, moved if curve is slit else curve) for kind, curve in top.drawn)
    wrong = pieces | {"top": replace(top, drawn=drawn)}
    assert sum(span.off > WALKED for span in walked(pattern.seams[0], wrong)) == 2
