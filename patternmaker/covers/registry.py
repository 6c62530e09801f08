"""How a cover makes itself known: by the decorator `cover`, in a file of this folder."""

from __future__ import annotations

from abc import abstractmethod
from typing import TYPE_CHECKING, ClassVar, TypeVar, dataclass_transform

from patternmaker.facts import Measured, Registry, choice, count, length, rate, rows, switch

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from patternmaker.errors import Refusal
    from patternmaker.geometry.contour import Contour
    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Pattern


class Cover(Measured):
    """A way of covering a seat, in its own measurements."""

    roles: ClassVar[tuple[str, ...]] = ()
    """The roles that its pieces play; a job may give each a material of its own."""

    def plan(self, taped: Contour, taken: str) -> Contour:
        """Return the outline as it lies in plan, of one that was measured in a way of `TAKEN`."""
        del taken
        return taped

    @abstractmethod
    def objections(self, brief: Brief) -> Iterator[Refusal]:
        """Yield whatever keeps this cover from being drafted for this seat."""

    @abstractmethod
    def pattern(self, brief: Brief) -> Pattern:
        """Return the pattern; the brief must have met no objection."""


COVERS: Registry[Cover] = Registry("patternmaker.covers")
C = TypeVar("C", bound=Cover)


@dataclass_transform(
    frozen_default=True,
    kw_only_default=True,
    field_specifiers=(length, count, rate, choice, switch, rows),
)
def cover(name: str) -> Callable[[type[C]], type[C]]:
    """Make a class of facts a known cover, called ``name`` in a job file."""
    return COVERS.known_as(name)  # type: ignore[return-value]
