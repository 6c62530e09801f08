"""A print held against the job that it carries: every line, join, length of proof and page."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.checking.bodies import bodies_of
from patternmaker.checking.file import File
from patternmaker.checking.finding import Finder, drawn_on
from patternmaker.checking.leaf import Press
from patternmaker.checking.measuring import HIDDEN, Measured, Showing, measured, strays
from patternmaker.checking.proof import ACROSS, UP, has_triangle, proofs_of
from patternmaker.checking.sheets import join_faults, plates_of, sheet_of
from patternmaker.checking.tokens import Unreadable
from patternmaker.cutlist.rows import Drafted
from patternmaker.errors import Refusal, Refusals
from patternmaker.facts.files import content_of
from patternmaker.job.enclosure import ANEW, Enclosure
from patternmaker.pattern.piece import LineKind

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from pathlib import Path

    from patternmaker.checking.leaf import Leaf
    from patternmaker.checking.proof import Proof
    from patternmaker.checking.sheets import Plate
    from patternmaker.job.enclosure import Printed
    from patternmaker.job.model import Job
    from patternmaker.units import Unit

LIMIT = 0.05  # mm; a tenth of a fine pen's line, and finer than a knife follows
LARGEST = 60_000_000  # bytes; ten thousand sheets take a tenth of it
PAPER_OFF = 0.2  # mm; programs round the size of a page
ENCLOSED = "patternmaker.json"


class Unchecked(Refusals):
    """A file that can't be checked, and why."""

    outcome = "nothing was checked"


class NotAsDrafted(Refusals):
    """A print that was checked, and all that isn't as it was drafted."""

    outcome = "do not cut by this print"


@dataclass(frozen=True)
class Checked:
    """What a print was found to be.

    Args:
        job: that it was held against.
        version: that drafted it.
        printed: what it was printed on, as it says.
        pages: how many it has.
        sheets: of them that show pieces.
        joins: how many were measured.
        apart: how far crosses of one join lie apart at most, mm.
        proofs: the lengths of proof.
        lines: each line of each piece.
        faults: all that isn't as it was drafted, in words.
    """

    job: Job
    version: str
    printed: Printed
    pages: int
    sheets: int
    joins: int
    apart: float
    proofs: tuple[Proof, ...]
    lines: tuple[Measured, ...]
    faults: tuple[str, ...]

    def scale(self, way: str) -> float:
        """Return the scale of the proof along a way that is furthest off, 1 if there is none."""
        scales = (proof.scale for proof in self.proofs if proof.way == way)
        return max(scales, key=lambda scale: abs(scale - 1), default=1.0)

    @property
    def off(self) -> float:
        """How far a line lies from the model at most, mm."""
        return max((line.off for line in self.lines), default=0.0)


def checked(path: Path, job: Job | None = None) -> Checked:
    """Read a print and hold it against the job that it carries, or against another.

    Raises:
        Unchecked: if it can't be read, or is no print of this version.
    """
    try:
        content = content_of(path, LARGEST, "PDF that patternmaker wrote")
        return _checked(content, job)
    except Refusal as mistake:
        raise Unchecked([mistake.at(_name(path))]) from None
    except Refusals as refusals:
        found = [mistake.at(_name(path)) for mistake in refusals.mistakes]
        raise Unchecked(found, refusals.unit) from None


def _name(path: Path) -> str:
    from patternmaker.errors import printable

    return printable(path.name or str(path))[-80:]


def _checked(content: bytes, job: Job | None) -> Checked:
    if b"%PDF-" not in content[:1024]:
        raise Refusal("", "is not a PDF", mend="name the PDF that patternmaker wrote")
    try:
        file, enclosure = _opened(content)
        leaves = _leaves(file, enclosure.printed)
        asks, elsewhere = file.asks_not_to_scale, file.fonts_elsewhere()
    except Unreadable as fault:
        raise _damaged(str(fault)) from None
    except (Refusal, Refusals):
        raise
    except Exception as fault:  # noqa: BLE001  a damaged file may raise anything in its reader
        raise _damaged(f"{type(fault).__name__}: {fault}") from None
    own = enclosure.job()
    check = _Check(job or own, own.unit, enclosure, leaves)
    faults = [*check.faults()]
    if not asks:
        faults.append("it no longer asks the viewer to print at actual size: another program kept "
                      "it anew")  # fmt: skip
    faults += [f"the font {name} is not in the file: letters may come out wrong"
               for name in elsewhere]  # fmt: skip
    return check.told(tuple(faults))


def _damaged(says: str) -> Refusal:
    says = " ".join(says.replace("{", "(").replace("}", ")").split())
    return Refusal("", f"is damaged: {says[:160]}", mend=ANEW)


def _opened(content: bytes) -> tuple[File, Enclosure]:
    file = File(content)
    if file.is_locked:
        raise Refusal("", "is locked by a password", mend="keep a copy without one, and check that")
    enclosed = file.enclosed(ENCLOSED)
    if enclosed is None:
        raise _foreign(file)
    return file, Enclosure.read(enclosed)


def _foreign(file: File) -> Refusal:
    if file.is_ours:
        says = "was drafted by an earlier version, or stripped of the job that it carried"
        return Refusal("", says, mend=ANEW)
    return Refusal(
        "", "carries no job: patternmaker did not write it, or a viewer or printer driver wrote it "
        "anew and may have scaled it", mend="check the file that patternmaker wrote",
    )  # fmt: skip


def _leaves(file: File, printed: Printed) -> list[Leaf]:
    press = Press(file, printed.drawn)
    return [press.leaf(page) for page in file.pages()]


class _Check:
    """One print held against one job."""

    def __init__(self, job: Job, unit: Unit, enclosure: Enclosure, leaves: Sequence[Leaf]) -> None:
        self.job, self.enclosure, self.leaves = job, enclosure, leaves
        self.sheets = [sheet for leaf in leaves if (sheet := sheet_of(leaf))]
        self.proofs = [proof for leaf in leaves for proof in proofs_of(leaf, unit)]
        self.plates = plates_of(self.sheets)
        self.lines: list[Measured] = []

    def told(self, faults: tuple[str, ...]) -> Checked:
        """Return what was found."""
        apart = [far for plate in self.plates for far in plate.apart.values()]
        return Checked(
            self.job, self.enclosure.version, self.enclosure.printed, len(self.leaves),
            len(self.sheets), len(apart), max(apart, default=0.0), tuple(self.proofs),
            tuple(self.lines), faults,
        )  # fmt: skip

    def faults(self) -> Iterator[str]:
        """Yield all that isn't as it was drafted; where the scale is off, that alone."""
        if scaled := list(_scaled(self.proofs)):
            yield from scaled
            yield from _sizes(self.leaves, self.enclosure.printed)
            return
        yield from _sizes(self.leaves, self.enclosure.printed)
        yield from self._proof_lacks()
        if not self.sheets:
            yield "no page of it is a sheet: the pages were changed"
            return
        yield from join_faults(self.sheets)
        yield from _joined(self.plates)
        yield from self._measured()

    def _proof_lacks(self) -> Iterator[str]:
        if not any(has_triangle(leaf) for leaf in self.leaves):
            yield "the proof triangle is missing: print the overview too"
        proved: dict[int, set[str]] = defaultdict(set)
        for proof in self.proofs:
            proved[proof.page].add(proof.way)
        bare = [sheet.number for sheet in self.sheets
                if not {ACROSS, UP} <= proved[sheet.leaf.number]]  # fmt: skip
        if bare:
            yield f"sheet {bare[0]} and {len(bare) - 1} more lack a scale bar"

    def _measured(self) -> Iterator[str]:
        drafted = Drafted(self.job, tuple(seat.pattern() for seat in self.job.seats))
        finder = Finder(drawn_on(self.plates))
        found = finder.all_of(list(bodies_of(drafted, self.enclosure.printed.only)))
        showings = [Showing.of(plate) for plate in self.plates]
        for each in found:
            lines = measured(each, self.plates, showings)
            self.lines += lines
            if each.placing is None:
                yield f"{each.body.seat}: {each.body.piece} is not on the sheets as it was drafted"
            else:
                yield from (fault for line in lines for fault in _line_faults(line))
        for kind, sheet, count in strays(list(finder.free), self.plates):
            if kind is not LineKind.CENTRE:  # the bars and arrows are drawn by its pen
                yield f"sheet {sheet} and those joined to it show {count} x {kind} of no piece"


def _scaled(proofs: Sequence[Proof]) -> Iterator[str]:
    worst: dict[str, Proof] = {}
    for proof in sorted(proofs, key=lambda proof: abs(proof.off)):
        if abs(proof.off) > LIMIT:
            worst[proof.way] = proof
    for way, proof in worst.items():
        yield (
            f"it was scaled to {proof.scale:.2%} {way} after it was drafted: on page {proof.page} "
            f"{proof.true:g} mm are {proof.drawn:.2f} mm"
        )


def _sizes(leaves: Sequence[Leaf], printed: Printed) -> Iterator[str]:
    paper = sorted((printed.width_mm, printed.height_mm))
    for leaf in leaves:
        size = sorted(leaf.paper)
        if max(abs(a - b) for a, b in zip(size, paper, strict=True)) > PAPER_OFF:
            yield (
                f"page {leaf.number} is {size[0]:.1f} x {size[1]:.1f} mm, not {printed.paper} "
                f"({paper[0]:g} x {paper[1]:g} mm): it was cropped or laid on other paper"
            )


def _joined(plates: Sequence[Plate]) -> Iterator[str]:
    for plate in plates:
        for number, far in plate.apart.items():
            if far > LIMIT:
                yield f"join {number}: its crosses lie {far:.2f} mm apart"
        for number in plate.loose:
            yield f"sheet {number}: no join leads to it"


def _line_faults(line: Measured) -> Iterator[str]:
    where = f"{line.seat}: {line.piece}, {line.kind}"
    if line.drawn is None:
        yield f"{where} of {line.length:.1f} mm is missing"
        return
    if line.off > LIMIT:
        yield f"{where}: {line.off:.2f} mm from the model{_at(line)}"
    elif abs(line.longer) > LIMIT:
        more = "longer" if line.longer > 0 else "shorter"
        yield f"{where}: {abs(line.longer):.2f} mm {more} than in the model"
    if line.hidden > HIDDEN:
        yield f"{where}: {line.hidden:.1f} mm of it are on no sheet"


def _at(line: Measured) -> str:
    if line.spot is None:
        return ""
    x, y = line.spot.at.real, line.spot.at.imag
    return f" on sheet {line.spot.sheet}, {x:.0f} mm from its left and {y:.0f} from its lower edge"
