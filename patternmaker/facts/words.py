"""Other words of the trade for what a job file knows by one name, for whoever writes another."""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Collection, Mapping

ALSO_CALLED: Mapping[str, tuple[str, ...]] = MappingProxyType({
    "circle": ("round", "disc"),
    "oval": ("ellipse",),
    "half round": ("d", "d shape", "semicircle"),
    "rounded rectangle": ("square", "oblong"),
    "rounded trapezoid": ("trapeze", "tapered"),
    "pull-over": ("slip seat", "drop-in", "drop-in seat", "pulled over"),
    "boxed": ("box", "box top"),
    "box cushion": ("boxed cushion",),
    "fluted": ("channelled", "channeled", "channels", "ribbed"),
    "welt": ("piping", "pipe", "cording"),
    "woven cloth": ("cloth", "fabric", "textile", "moquette"),
    "velour": ("velvet", "plush"),
    "vinyl": ("leatherette", "leathercloth", "pvc"),
    "upholstery leather": ("hide",),
})  # fmt: skip


def meant(word: str, known: Collection[str]) -> str | None:
    """Return the known name that the trade also calls by a word, if there is one.

    >>> meant("Slip seat", ["boxed", "pull-over"]), meant("slip seat", ["boxed"])
    ('pull-over', None)
    """
    said = word.strip().lower().replace("_", " ")
    return next((name for name in known if said in ALSO_CALLED.get(name, ())), None)
