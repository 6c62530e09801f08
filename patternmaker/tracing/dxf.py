"""The lines of a DXF drawing, in mm if it says its unit.

ezdxf takes the file apart; what its entities draw is told in `dxf_shapes`, exactly, since ezdxf's
own paths go through Beziers.
"""

from __future__ import annotations

import io
import logging
import math
import struct
from typing import TYPE_CHECKING, Any

from patternmaker.errors import Refusal
from patternmaker.geometry.segments import turned
from patternmaker.tracing.curves import Affine
from patternmaker.tracing.dxf_shapes import called, facing, strokes
from patternmaker.tracing.gathering import Gathering
from patternmaker.tracing.kinds import BINARY_DXF

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.tracing.sketch import Sketch

UNITS = {  # mm, by $INSUNITS; those that measure no seat are not listed
    1: 25.4, 2: 304.8, 4: 1.0, 5: 10.0, 6: 1000.0, 8: 25.4e-6, 9: 0.0254, 10: 914.4,
    13: 0.001, 14: 100.0,
}  # fmt: skip
DEEPEST = 16  # blocks within blocks
MOST_LINES = 2_500_000  # of a file; 100,000 vertices take that, and ezdxf ten seconds
MOST = 100_000  # entities drawn, those of blocks counted each time
BROKEN = (  # what ezdxf may raise at a file that is, beside its own errors
    ArithmeticError, AttributeError, LookupError, OSError, RuntimeError, StopIteration, TypeError,
    ValueError, struct.error,
)  # fmt: skip


def read_dxf(content: bytes) -> Sketch:
    """Return the lines in the model space of a DXF file, ASCII or binary.

    Raises:
        Refusal: if it is broken, or holds lines that are not flat.
    """
    if content.count(b"\n") > MOST_LINES:
        says = "has more than {limit} lines"
        raise Refusal("", says, limit=f"{MOST_LINES:,}", mend="save the seat alone")
    logging.getLogger("ezdxf").addHandler(logging.NullHandler())  # it speaks of what it mends
    from ezdxf.lldxf.const import DXFError

    try:
        document = _document(content)
        told = document.header.get("$INSUNITS", 0) if b"$INSUNITS" in content else 0
        unit = UNITS.get(told)  # without a header ezdxf would take metres
        walk = _Walk(document)
        walk.draw(document.modelspace(), Affine(unit or 1.0), ())
    except (DXFError, *BROKEN):
        says = "is cut off or broken, and can't be read as DXF"
        raise Refusal("", says, mend="save it again") from None
    return walk.gathered.sketch(unit)


def _document(content: bytes) -> Any:
    from ezdxf.document import Drawing
    from ezdxf.filemanagement import dxf_stream_info, read
    from ezdxf.lldxf.tagger import binary_tags_loader

    if content.startswith(BINARY_DXF):
        return Drawing.load(binary_tags_loader(content))
    head = dxf_stream_info(io.StringIO(content.decode("utf-8", "ignore"), newline=None))
    return read(io.StringIO(content.decode(head.encoding, "surrogateescape"), newline=None))


class _Walk:
    """Goes through the entities of a drawing, and of its blocks, and gathers their lines."""

    def __init__(self, document: Any) -> None:
        self.gathered = Gathering()
        self._blocks = document.blocks
        self._hidden = {
            layer.dxf.name.lower()
            for layer in document.layers
            if layer.is_off() or layer.is_frozen()
        }
        self._count = 0

    def draw(self, entities: Any, place: Affine, within: tuple[str, ...]) -> None:
        """Draw entities, and the blocks that they insert."""
        for each in entities:
            self._counted()
            if each.dxf.get("invisible", 0) or each.dxf.layer.lower() in self._hidden:
                self.gathered.skip(f"hidden {each.dxftype()}")
            elif each.dxftype() == "INSERT":
                self._insert(each, place, within)
            else:
                self._shape(each, place)

    def _counted(self) -> None:
        self._count += 1
        if self._count > MOST:
            says = "draws more than {limit} things, or the same blocks over and over"
            raise Refusal("", says, limit=f"{MOST:,}", mend="save the seat alone")

    def _shape(self, entity: Any, place: Affine) -> None:
        drawn = strokes(entity)
        if drawn is None:
            self.gathered.skip(entity.dxftype())
            return
        for stroke in drawn:
            name = f"{entity.dxf.layer} {entity.dxf.handle}"
            self.gathered.add(name, stroke.mapped(place))

    def _insert(self, insert: Any, place: Affine, within: tuple[str, ...]) -> None:
        name = insert.dxf.name.lower()
        if name in within or len(within) >= DEEPEST:
            raise Refusal("", "holds a block within itself: {value}", value=called(insert),
                          mend="take that block apart")  # fmt: skip
        block = self._blocks.get(name)
        if block is None:
            self.gathered.skip("INSERT of nothing")
            return
        for map_ in _maps(insert, block):
            self._counted()
            whole = place.after(map_)
            if not whole.is_flat:
                self.draw(block, whole, (*within, name))


def _maps(insert: Any, block: Any) -> Iterator[Affine]:
    """Yield where a block is inserted: once, or in rows and columns (codes 44, 45, 70, 71)."""
    dxf = insert.dxf
    base, at = block.block.dxf.base_point, dxf.insert
    way = turned(math.radians(math.remainder(dxf.rotation, 360)))
    inner = Affine.matrix(dxf.xscale, 0, 0, dxf.yscale, 0, 0).after(
        Affine(shift=-complex(base.x, base.y))
    )
    for row in range(max(1, dxf.row_count)):
        for column in range(max(1, dxf.column_count)):
            step = complex(column * dxf.column_spacing, row * dxf.row_spacing)
            outer = Affine(way, 0, complex(at.x, at.y) + way * step)
            yield facing(insert).after(outer).after(inner)
