"""Seats to be covered, as the tests of several rooms need them."""

import math
from collections.abc import Iterable, Mapping

from patternmaker.covers.boxed import Boxed
from patternmaker.geometry.compass import Compass
from patternmaker.geometry.contour import Contour, Path
from patternmaker.materials import Material
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.pattern.allowances import Allowances
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Guide, LineKind, Pattern, Piece
from patternmaker.units import Unit

IN = 25.4  # mm
ROUND = Circle(diameter=320).contour()
BENCH = RoundedRectangle(width=760, depth=360, corner=40).contour()
SHARP = RoundedRectangle(width=400, depth=300, corner=0).contour()
CLOTH = Material(kind="woven cloth")  # no take-up, so the sew line is the outline


def brief(
    outline: Contour = ROUND,
    material: Material = CLOTH,
    *,
    base: Contour | None = None,
    roles: Mapping[str, Material] | None = None,
    taken: str = "flat",
    tape: float | None = None,
    trusts_tape: bool = False,
    **allowances: float,
) -> Brief:
    """Return a seat whose base stands 3 mm inside its seam unless it has one of its own."""
    materials = {"": material, **(roles or {})}
    base = base or outline.grown(-3)
    return Brief(outline, base, Allowances(**allowances), materials, taken, tape, trusts_tape)


def boxed(seat: Brief, drop: float = 80.0) -> Pattern:
    """Return the pattern of a boxed seat that met no objection."""
    cover = Boxed(drop=drop)
    assert not list(cover.objections(seat))
    return cover.pattern(seat)


def objections(seat: Brief, drop: float = 80.0) -> list[str]:
    """Return what keeps a seat from being boxed."""
    return [mistake.told() for mistake in Boxed(drop=drop).objections(seat)]


def pieces(pattern: Pattern, role: str) -> list[Piece]:
    return [piece for piece in pattern.pieces if piece.role == role]


def piece(pattern: Pattern, name: str) -> Piece:
    (found,) = (piece for piece in pattern.pieces if piece.name == name)
    return found


def guides(piece: Piece, kind: LineKind) -> list[Guide]:
    return [guide for guide in piece.guides if guide.kind is kind]


def guide(piece: Piece, kind: LineKind) -> Guide:
    (found,) = guides(piece, kind)
    return found


def told(notes: Iterable[Note], unit: Unit = Unit.MM) -> str:
    """Return notes in one text."""
    return "\n".join(note.told(unit) for note in notes)


def with_bay(
    width: float = 400.0, depth: float = 300.0, mouth: float = 160.0, reach: float = 90.0,
    corner: float = 0.0,
) -> Contour:  # fmt: skip
    """Return a rectangle with a bay in its front, whose inner corners turn to the right."""
    x, y, b = width / 2, depth / 2, mouth / 2
    floor = reach - y
    compass = Compass(1j * y).joint("back").line(complex(-x, y)).joint("back left")
    compass.line(-x + 0j).joint("left").line(complex(-x, -y)).joint("front left")
    compass.line(complex(-b, -y)).joint("mouth left").line(complex(-b, floor - corner))
    _inner(compass, "bay left", complex(corner - b, floor - corner), corner)
    compass.line(1j * floor).joint("front").line(complex(b - corner, floor))
    _inner(compass, "bay right", complex(b - corner, floor - corner), corner)
    compass.line(complex(b, -y)).joint("mouth right").line(complex(x, -y)).joint("front right")
    compass.line(x + 0j).joint("right").line(complex(x, y)).joint("back right")
    return compass.line(1j * y).closed()


def _inner(compass: Compass, name: str, centre: complex, radius: float) -> None:
    if not radius:
        compass.joint(name)
        return
    compass.joint(f"{name} begins").arc(centre, -math.pi / 4)
    compass.joint(name).arc(centre, -math.pi / 4).joint(f"{name} ends")


def kite(half: float = 200.0) -> Contour:
    """Return a square on its corner: the widest points are its corners, the back one of them."""
    compass = Compass(1j * half).joint("back").line(-half + 0j).joint("left")
    return (
        compass.line(-1j * half)
        .joint("front")
        .line(half + 0j)
        .joint("right")
        .line(1j * half)
        .closed()
    )


def closed(path: Path) -> Contour:
    """Return a guide's path that goes all the way round."""
    assert isinstance(path, Contour)
    return path
