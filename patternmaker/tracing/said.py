"""What a trace has to say, its lengths still to be told in the unit of whoever reads it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.facts import LENGTH

if TYPE_CHECKING:
    from patternmaker.geometry.segments import Box
    from patternmaker.units import Unit


@dataclass(frozen=True)
class Said:
    """A sentence with gaps for lengths (mm).

    >>> Said("closed a gap of {}", (0.25,))
    Said(says='closed a gap of {}', values=(0.25,))
    """

    says: str
    values: tuple[float, ...] = ()

    @classmethod
    def plainly(cls, text: str) -> Said:
        """Return a sentence without gaps, whatever signs are in it."""
        return cls(escaped(text))


def escaped(text: str) -> str:
    """Return a text that stands in a sentence with gaps, whatever signs are in it."""
    return text.replace("{", "{{").replace("}", "}}")


def shown(value: complex | float | str | None, unit: Unit | None) -> str:
    """Return a length, or a place as two lengths, as a message shows it.

    >>> shown(12 + 40j, None), shown(0.5, None)
    ('x 12 mm, y 40 mm', '0.5 mm')
    """
    if isinstance(value, complex):
        return f"x {LENGTH.show(value.real, unit)}, y {LENGTH.show(value.imag, unit)}"
    return LENGTH.show(value, unit) if isinstance(value, float) else str(value)


def near(place: complex, box: Box) -> str:
    """Return in words where in a box a place lies.

    >>> near(1 + 1j, (0, 0, 9, 9)), near(5 + 8j, (0, 0, 9, 9)), near(5 + 5j, (0, 0, 9, 9))
    ('near the left front', 'near the back', 'near the middle')
    """
    left, front, right, back = box
    across = (place.real - left) / max(right - left, 1e-9)
    along = (place.imag - front) / max(back - front, 1e-9)
    words = ("left" if across < 1 / 3 else "right" if across > 2 / 3 else "",
             "front" if along < 1 / 3 else "back" if along > 2 / 3 else "")  # fmt: skip
    return f"near the {' '.join(word for word in words if word) or 'middle'}"
