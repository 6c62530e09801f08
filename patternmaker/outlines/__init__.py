"""Seat shapes as seen from above, each in a file of its own."""

from patternmaker.outlines.registry import SHAPES, Outline, shape

__all__ = ["SHAPES", "Outline", "shape"]
