"""Drawings made for the tests, and how far two lines lie apart."""

import io
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from ezdxf.filemanagement import new

from patternmaker.errors import Refusal
from patternmaker.geometry.contour import Path
from patternmaker.tracing.sketch import Chain, Sketch, read_sketch

XMLNS = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'
MM = 'width="1000mm" height="1000mm" viewBox="0 0 1000 1000"'


def svg(body: str, size: str = MM) -> bytes:
    return f"<svg {XMLNS} {size}>{body}</svg>".encode()


def drawn(body: str, size: str = MM) -> Sketch:
    return read_sketch("seat.svg", svg(body, size))


def only(sketch: Sketch) -> Chain:
    (chain,) = sketch.chains
    return chain


def dxf(fill: Callable[[Any], object], units: int = 4, fmt: str = "asc", version="R2010") -> bytes:
    """A DXF file, filled by a function that is given its model space."""
    document = new(version, units=units)
    fill(document.modelspace())
    if fmt == "bin":
        document.write(raw := io.BytesIO(), fmt=fmt)
        return raw.getvalue()
    document.write(text := io.StringIO())
    return text.getvalue().encode()


def told(name: str, content: bytes) -> str:
    """What a file is refused with."""
    with pytest.raises(Refusal) as refused:
        read_sketch(name, content)
    message = str(refused.value)
    assert message.isprintable()
    assert len(message) < 300
    return message


def apart(path: Path, reference: "np.ndarray[Any, Any]") -> float:
    """The most by which two lines lie apart, both ways; the reference is a string of points."""
    points = np.array(path.chords(1e-5))
    if len(points) > 4000:
        points = points[:: len(points) // 4000]
    to = max(min(each.distance(complex(z)) for each in path.segments) for z in reference)
    return max(float(to), float(_beside(points, reference).max()))


def _beside(points: "np.ndarray[Any, Any]", chain: "np.ndarray[Any, Any]") -> Any:
    """How far each point lies from a string of chords."""
    start, way = chain[:-1], np.diff(chain)
    start, way = start[way != 0], way[way != 0]
    result = np.empty(len(points))
    for i, z in enumerate(points):
        share = np.clip(((z - start) / way).real, 0, 1)
        result[i] = np.abs(z - start - share * way).min()
    return result
