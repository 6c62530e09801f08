"""Seat shapes as seen from above, each in a file of its own."""

from patternmaker.outlines.registry import Outline, shape, shapes

__all__ = ["Outline", "shape", "shapes"]
