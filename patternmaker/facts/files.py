"""Getting a file off the disk, whatever may lie there under its name."""

from __future__ import annotations

import stat
from typing import TYPE_CHECKING

from patternmaker.errors import Refusal

if TYPE_CHECKING:
    from pathlib import Path


def content_of(path: Path, largest: int, what: str) -> bytes:
    """Return what is in an ordinary file of at most ``largest`` bytes, which should be ``what``.

    Raises:
        Refusal: if it is none, is larger, or can't be read; its field is empty.
    """
    try:
        kind = path.stat()
        if stat.S_ISDIR(kind.st_mode):
            raise Refusal("", "is a folder", mend=f"name the {what} in it")
        if not stat.S_ISREG(kind.st_mode):
            raise Refusal(
                "", "is not an ordinary file", mend=f"save the {what} as a file and name that"
            )
        if kind.st_size > largest:
            raise _too_large(f"{kind.st_size:,}", largest, what)
        with path.open("rb") as file:
            content = file.read(largest + 1)  # it may hold more than it said
    except FileNotFoundError:
        raise Refusal("", "is not there", mend="check the name and the folder") from None
    except (OSError, ValueError) as fault:
        reason = getattr(fault, "strerror", None) or "it has no such name"
        raise Refusal("", f"can't be read: {reason}", mend="check its name and rights") from None
    if len(content) > largest:
        raise _too_large("", largest, what)
    return content


def _too_large(size: str, largest: int, what: str) -> Refusal:
    says = (
        f"has {size} bytes, more than {largest:,}" if size else f"has more than {largest:,} bytes"
    )
    return Refusal("", says, mend=f"is it a {what}?")
