"""Thirty jobs of a music school: samples, other shapes and covers, on papers large and small."""

from dataclasses import dataclass
from pathlib import Path
from typing import Any

SAMPLES = Path(__file__).parents[2] / "samples"


@dataclass(frozen=True)
class Mixed:
    """A job, by the name of its sample or as a table, and how it is printed."""

    name: str
    job: str | dict[str, Any]
    paper: str
    whole: bool = False


def _sample(name: str, paper: str, *, whole: bool = False) -> Mixed:
    return Mixed(f"{name} {paper}{' whole' if whole else ''}", name, paper, whole)


def _job(name: str, paper: str, *seats: tuple[dict[str, Any], dict[str, Any]]) -> Mixed:
    table = {
        "name": name, "units": "mm", "material": {"kind": "woven cloth"},
        "seat": [{"name": f"Seat {i}", "outline": outline, "cover": cover}
                 for i, (outline, cover) in enumerate(seats, 1)],
    }  # fmt: skip
    return Mixed(f"{name} {paper}", table, paper)


def _boxed(drop: float) -> dict[str, Any]:
    return {"style": "boxed", "drop": drop}


def _disc(diameter: float) -> dict[str, Any]:
    return {"shape": "circle", "diameter": diameter}


def _board(width: float, depth: float, corner: float = 20) -> dict[str, Any]:
    return {"shape": "rounded rectangle", "width": width, "depth": depth, "corner": corner}


PAD = {"style": "loose pad"}

JOBS = (
    *(
        _sample(name, "A4")
        for name in (
            "cello-chairs",
            "drum-throne",
            "duet-bench",
            "fluted-drum-throne",
            "listening-room-bench",
            "loose-cushions",
            "music-school",
            "organ-bench",
            "round-piano-stool",
            "slip-seats",
            "sloping-seats",
            "traced-seats",
            "welted-seats",
        )
    ),
    *(
        _sample(name, "Letter")
        for name in (
            "music-school",
            "round-piano-stool",
            "cello-chairs",
            "loose-cushions",
        )
    ),
    *(_sample(name, "A3") for name in ("music-school", "slip-seats", "welted-seats")),
    _sample("music-school", "A4", whole=True),
    _sample("duet-bench", "Letter", whole=True),
    _job("Six small stools", "A4", *((_disc(220 + 15 * i), _boxed(50)) for i in range(6))),
    _job("Bench pads", "A4", (_board(1100, 300), PAD), (_board(700, 260, 60), PAD)),
    _job(
        "Ovals",
        "A4",
        *(
            ({"shape": "oval", "width": w, "depth": d}, _boxed(60))
            for w, d in ((420, 300), (360, 240), (500, 340))
        ),
    ),
    _job(
        "Half rounds",
        "Letter",
        *(
            ({"shape": "half round", "width": w, "depth": d}, _boxed(45))
            for w, d in ((400, 260), (300, 200))
        ),
    ),
    _job(
        "L and T benches",
        "A3",
        (
            {"shape": "L shape", "width": 900, "depth": 700, "back_depth": 330, "leg_width": 320},
            _boxed(80),
        ),
    ),
    _job(
        "Hexagon stools",
        "A4",
        *(
            ({"shape": "regular polygon", "sides": 6, "side": a}, _boxed(55))
            for a in (160, 185, 205)
        ),
    ),
    _job("Practice boxes", "A2", *((_board(430 + 20 * i, 380), _boxed(70)) for i in range(6))),
    _job("Stools on small paper", "180x250mm", (_disc(260), _boxed(40)), (_disc(300), _boxed(40))),
)
