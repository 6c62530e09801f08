"""The operators of a content stream with their operands (ISO 32000-1:2008, 7.2, 7.3, 7.8.2)."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Iterator

TOKEN = re.compile(
    rb"""[\x00\t\n\f\r ]*(?:
      (?P<number>[+-]?(?:\d+\.?\d*|\.\d+))
    | (?P<word>[A-Za-z'"][A-Za-z0-9*'"]*)
    | (?P<name>/[^\x00\t\n\f\r ()<>\[\]{}/%]*)
    | (?P<text>\((?:[^()\\]|\\.)*\))
    | (?P<codes><[0-9A-Fa-f\s]*>)
    | (?P<bracket>\[|\]|<<|>>)
    | (?P<comment>%[^\r\n]*)
    | (?P<end>\Z))""",
    re.VERBOSE | re.DOTALL,
)
ESCAPED = re.compile(rb"\\([0-7]{1,3}|\r\n|.)", re.DOTALL)
SIGNS = {b"n": b"\n", b"r": b"\r", b"t": b"\t", b"b": b"\b", b"f": b"\f"}
LINE_ENDS = (b"\n", b"\r", b"\r\n")
END_OF_IMAGE = re.compile(rb"[\x00\t\n\f\r ]EI(?=[\x00\t\n\f\r ]|\Z)")


class Unreadable(Exception):
    """A content stream, or a file, that can't be read as what it says it is."""


def operations(content: bytes) -> Iterator[tuple[str, list[Any]]]:
    """Yield each operator with its operands: numbers, names with their slash, bytes, lists.

    Raises:
        Unreadable: at the first sign that begins no token.
    """
    operands: list[Any] = []
    open_lists: list[list[Any]] = []
    at = 0
    while match := TOKEN.match(content, at):
        at, kind = match.end(), match.lastgroup
        token = match[kind] if kind else b""
        if kind == "end":
            return
        if kind == "word" and not open_lists:
            yield token.decode(), operands
            operands = []
            at = _past_image(content, at) if token == b"ID" else at
        elif kind == "bracket":
            operands = _bracketed(token, operands, open_lists)
        elif kind != "comment":
            operands.append(_value(kind or "", token))
    raise Unreadable(f"its drawing breaks off at byte {at:,}")


def _bracketed(token: bytes, operands: list[Any], outer: list[list[Any]]) -> list[Any]:
    """Return the list that goes on after a bracket: a new one, or the one that it stands in."""
    if token in {b"[", b"<<"}:
        outer.append(operands)
        return []
    if not outer:
        raise Unreadable("its drawing closes a list that it never opened")
    whole = outer.pop()
    whole.append(operands)
    return whole


def _value(kind: str, token: bytes) -> Any:
    if kind == "number":
        return float(token)
    if kind == "text":
        return ESCAPED.sub(_sign, token[1:-1])
    if kind == "codes":
        digits = b"".join(token[1:-1].split())
        return bytes.fromhex((digits + b"0" * (len(digits) % 2)).decode())
    return token.decode("latin-1")


def _sign(match: re.Match[bytes]) -> bytes:
    code = match[1]
    if code.isdigit():
        return bytes([int(code, 8) % 256])
    return b"" if code in LINE_ENDS else SIGNS.get(code, code)


def _past_image(content: bytes, at: int) -> int:
    found = END_OF_IMAGE.search(content, at)
    if not found:
        raise Unreadable("it holds an image without an end")
    return found.end()
