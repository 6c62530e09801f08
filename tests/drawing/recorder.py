"""A surface that only notes what is drawn on it."""

from dataclasses import dataclass, field

from patternmaker.drawing.looks import Pen
from patternmaker.drawing.surface import Colour, Letters
from patternmaker.geometry.contour import Path


@dataclass
class Recorder:
    """What was drawn, in order."""

    strokes: list[tuple[Path, Pen]] = field(default_factory=list)
    fills: list[tuple[Path, Colour]] = field(default_factory=list)
    letters: list[Letters] = field(default_factory=list)

    def stroke(self, path: Path, pen: Pen) -> None:
        self.strokes.append((path, pen))

    def fill(self, path: Path, colour: Colour) -> None:
        self.fills.append((path, colour))

    def letter(self, letters: Letters) -> None:
        self.letters.append(letters)

    @property
    def text(self) -> str:
        return " ".join(each.text for each in self.letters)
