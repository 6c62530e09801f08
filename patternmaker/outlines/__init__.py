"""Seat shapes as seen from above, each in a file of its own."""

from patternmaker.outlines.registry import SHAPES, Handed, Outline, Taken, shape

__all__ = ["SHAPES", "Handed", "Outline", "Taken", "shape"]
