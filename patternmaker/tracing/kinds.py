"""Which kind of file it is: by its ending, and by a look at what is in it."""

from __future__ import annotations

import re
from pathlib import PurePath

from patternmaker.errors import Refusal

LARGEST = 25_000_000  # bytes; 200,000 points of any kind take less
READ_HERE = "SVG (.svg), DXF (.dxf) and points as text (.csv, .txt) are read"
KINDS = {".svg": "SVG", ".dxf": "DXF", ".csv": "points", ".txt": "points"}
BINARY_DXF = b"AutoCAD Binary DXF\r\n\x1a\x00"  # DXF reference, binary DXF files
_MAGIC = {  # the first bytes of files that people take for drawings
    b"%PDF": "a PDF",
    b"%!PS": "PostScript",
    b"\x89PNG": "a PNG picture",
    b"\xff\xd8\xff": "a JPEG picture",
    b"GIF8": "a GIF picture",
    b"BM": "a BMP picture",
    b"II*\x00": "a TIFF picture",
    b"MM\x00*": "a TIFF picture",
    b"RIFF": "a WebP picture",
    b"\x1f\x8b": "packed by gzip",
    b"PK\x03\x04": "packed by zip",
    b"AC10": "a DWG",
    BINARY_DXF: "DXF",
}
MARKS = ((b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16"), (b"\xef\xbb\xbf", "utf-8-sig"))
_SVG = re.compile(r"<(\w+:)?svg[\s>/]")
_DXF = re.compile(r"\s*(999[ \t]*\r?\n.*\r?\n\s*)*0[ \t]*\r?\n\s*(SECTION|EOF)\b")
_MARKUP = re.compile(r"\s*<")
_NUMBER = re.compile(r"(?:^|[\r\n])[ \t]*[-+.]?\d")
_LOOK = 20_000  # bytes


def kind_of(name: str, content: bytes) -> str:
    """Return ``SVG``, ``DXF`` or ``points``.

    Raises:
        Refusal: if the file is too large or empty, ends otherwise, or holds something else.
    """
    if len(content) > LARGEST:
        raise Refusal(
            "",
            "has {value} bytes, more than {limit}",
            value=f"{len(content):,}",
            limit=f"{LARGEST:,}",
            mend="save the seat alone, or with fewer points",
        )
    if not content.strip(b" \t\r\n\0"):
        raise Refusal("", "is empty", mend="save the drawing again")
    kind, found = KINDS.get(PurePath(name).suffix.lower()), _look(content)
    if kind is None:
        says = "has an ending that is not known here, and looks like {value}"
        raise Refusal("", says, value=found, mend=READ_HERE)
    if kind != found:
        says = "looks like {value}, not like {limit}"
        raise Refusal("", says, value=found, limit=kind, mend=READ_HERE)
    return kind


def _look(content: bytes) -> str:
    for first, what in _MAGIC.items():
        if content.startswith(first):
            return what
    code = next((code for mark, code in MARKS if content.startswith(mark)), "utf-8")
    text = content[:_LOOK].decode(code, errors="replace")
    if "\0" in text:
        return "binary data"
    if _SVG.search(text):
        return "SVG"
    if _MARKUP.match(text):
        return "another kind of markup"
    if _DXF.match(text):
        return "DXF"
    return "points" if _NUMBER.search(text) else "plain text"
