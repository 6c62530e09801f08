"""The cover of panels: pieces traced from the old cover or the seat, sewn as the job says."""

from __future__ import annotations

from typing import TYPE_CHECKING, ClassVar

from patternmaker.covers.parts import bases, panels, steps, tops
from patternmaker.covers.registry import Cover, cover
from patternmaker.errors import Refusal
from patternmaker.errors import brief as shortly
from patternmaker.facts import unknown
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Fit, Pattern

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.covers.parts.panels import Sewn
    from patternmaker.pattern.brief import Brief, Panel, SeamWish

UNEQUAL = (
    "Seam {}: {} has {}, {} has {}: {} is longer by {}. Trace {} or {} again, or say how much "
    "is to be eased in"
)
MEETS = 0.5  # mm; two edges of a seam that differ by less are cut the same


@cover("panels")
class Panelled(Cover):
    """Panels of any shape, most often traced, each seam named by two joints and its partner.

    It is the way in for saddles that no flat top and upright strip would cover. The panels are
    cut as they are given: no take-up is taken off.
    """

    roles: ClassVar[tuple[str, ...]] = ("panel", "dust cover", "base template")

    def objections(self, brief: Brief) -> Iterator[Refusal]:
        """Yield whatever keeps the panels from being cut and sewn."""
        if not brief.panels:
            yield Refusal("panel", "there is none", mend="add one under [[seat.panel]]")
            return
        known = {panel.name: panel for panel in brief.panels}
        if len(known) < len(brief.panels):
            yield Refusal("panel", "two have the same name", mend="give each a name of its own")
        for number, panel in enumerate(brief.panels, 1):
            at = f"panel {number} {shortly(panel.name)}, allowances.seam"
            yield from tops.closing(at, panel.outline, brief.allowances.seam)
        for number, wish in enumerate(brief.seams, 1):
            yield from _misnamed(f"seam {number}", wish, known)
        yield from bases.objections(brief)

    def pattern(self, brief: Brief) -> Pattern:
        """Return the panels, base template and dust cover, the seams walked."""
        seams = panels.sewn(brief)
        cut = [panels.piece(brief, panel, seams) for panel in brief.panels]
        pieces = (*cut, bases.template(brief), bases.dust_cover(brief))
        walked = tuple(each.seam for each in seams)
        order = (
            *steps.marking(pieces),
            *steps.clipping(pieces),
            *steps.sewing(walked, brief.allowances.seam),
            *steps.stapling_on(brief, seam=""),
        )
        return Pattern(brief.outline, pieces, walked, _fit(brief, seams), order)


def _misnamed(place: str, wish: SeamWish, known: dict[str, Panel]) -> Iterator[Refusal]:
    """Yield each panel and joint of a seam that isn't there."""
    for field, name, joints in (
        ("panel", wish.panel, ("begins", "ends")),
        ("partner", wish.partner, ("partner_begins", "partner_ends")),
    ):
        if name not in known:
            yield unknown(f"{place}.{field}", name, known)
            continue
        for joint in joints:
            given = vars(wish)[joint]
            if given not in known[name].outline.joints:
                yield unknown(f"{place}.{joint}", given, known[name].outline.joints)
    if wish.reversed and wish.panel in known and not known[wish.panel].reversed:
        yield Refusal(f"{place}.reversed", "the seat takes no mirror image of {value}",
                      value=shortly(wish.panel), mend="say reversed = 1 under that panel, "
                      "or leave it away here")  # fmt: skip


def _fit(brief: Brief, seams: Sequence[Sewn]) -> Fit:
    """Return how well the edges of each seam meet."""
    says = [*brief.remarks, Note("Panels are cut as they are given: no take-up is taken off")]
    warnings = []
    for each, wish in zip(seams, brief.seams, strict=True):
        ease = each.seam.ease
        first = f"{wish.panel} reversed" if wish.reversed else wish.panel
        values = (str(each.number), first, each.one.length, wish.partner, each.two.length)
        if -MEETS <= ease <= max(MEETS, wish.ease + 1e-9):
            says.append(Note("Seam {}: {} {}, {} {}: they meet", values))
        else:
            longer, shorter = (first, wish.partner) if ease > 0 else (wish.partner, first)
            warnings.append(Note(UNEQUAL, (*values, longer, abs(ease), longer, shorter)))
    return Fit(1.0, tuple(says), tuple(warnings))
