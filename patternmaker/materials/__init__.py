"""The materials that a cover is cut from."""

from patternmaker.materials.kinds import EITHER_WAY, KINDS, SLIT_IN_LEATHER, Kind
from patternmaker.materials.material import Material
from patternmaker.materials.quarrels import MOST_TAKE_UP, RIVALS

__all__ = ["EITHER_WAY", "KINDS", "MOST_TAKE_UP", "RIVALS", "SLIT_IN_LEATHER", "Kind", "Material"]
