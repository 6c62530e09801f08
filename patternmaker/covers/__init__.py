"""Ways of covering a seat, each in a file of its own."""

from patternmaker.covers.registry import COVERS, Cover, cover

__all__ = ["COVERS", "Cover", "cover"]
