"""What is wanted of a trace."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Wishes:
    """What is wanted of a trace.

    Args:
        line: the name of the line to take; None for the only closed one.
        gap: mm; ends that lie closer are joined.
        smooth: mm; the most by which wobble may be smoothed away; 0 keeps every point.
        corner: degrees; a sharper turn of a drawn line is a corner and is kept.
        unit: mm of one unit of the file, where the file does not say it, or says it wrong.
        width: mm; the overall width, once the seat is turned the right way: scales the line.
        depth: mm; the same from front to back.
        ruler: the name of a straight line in the file whose true length is known.
        ruler_length: mm; that length.
        back: the side of the drawing at which the back of the seat is: up, down, left or right.
        turned_over: whether it was traced from below, so that left is right.
        symmetrical: whether the mean of its two halves is wanted.
    """

    line: str | None = None
    gap: float = 1.0
    smooth: float = 0.5
    corner: float = 30.0
    unit: float | None = None
    width: float | None = None
    depth: float | None = None
    ruler: str | None = None
    ruler_length: float | None = None
    back: str = "up"
    turned_over: bool = False
    symmetrical: bool = False
