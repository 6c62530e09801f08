"""Putting files in place all together or not at all.

They are written beside their places first, in a folder of their own, so that a full disk, a
refusal or an interruption leaves every earlier file as it was. Then each takes its place by one
rename; if one of those fails, the ones before it are put back.
"""

from __future__ import annotations

import contextlib
import errno
import os
import shutil
import tempfile
from pathlib import Path
from typing import TYPE_CHECKING

from patternmaker.errors import OutputFault

if TYPE_CHECKING:
    from collections.abc import Mapping

STAGE = ".patternmaker-"  # how the name of the folder begins in which files are written first


def put_in_place(folder: Path, files: Mapping[str, bytes]) -> tuple[Path, ...]:
    """Write files into ``folder``, making it if need be, and return their paths.

    Raises:
        OutputFault: if that can't be done; the earlier files are then as they were.
    """
    made: list[Path] = []
    try:
        made += [parent for parent in (folder, *folder.parents) if not parent.exists()]
        folder.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryDirectory(
            prefix=STAGE, dir=folder, ignore_cleanup_errors=True
        ) as stage:
            for name, content in files.items():
                Path(stage, name).write_bytes(content)
            _swap(folder, Path(stage), list(files))
    except OSError as fault:
        _unmake(made)
        raise _fault(folder, fault) from fault
    except BaseException:
        _unmake(made)
        raise
    return tuple(folder / name for name in files)


def _swap(folder: Path, stage: Path, names: list[str]) -> None:
    """Put each file from the stage in its place, in one rename; undo it all on a fault.

    The earlier file is kept under a second name meanwhile, so that no moment is without one.
    """
    kept: list[tuple[Path, Path]] = []
    try:
        for name in names:
            place, earlier = folder / name, stage / f"{name}.earlier"
            kept.append((place, earlier))
            _keep(place, earlier)
            (stage / name).replace(place)
    except BaseException:
        for place, earlier in reversed(kept):
            if _is_there(stage / place.name):  # it never took its place
                continue
            with contextlib.suppress(OSError):
                if _is_there(earlier):
                    earlier.replace(place)
                else:
                    place.unlink(missing_ok=True)
        raise


def _is_there(path: Path) -> bool:
    return path.exists() or path.is_symlink()


def _keep(place: Path, earlier: Path) -> None:
    """Give the file at a place a second name, or a copy where the disk knows no second names.

    A link to elsewhere is kept, and later replaced, as the link that it is.
    """
    if not _is_there(place):
        return
    if place.is_dir() and not place.is_symlink():
        raise IsADirectoryError(errno.EISDIR, f"{place.name} is a folder there")
    try:
        os.link(place, earlier, follow_symlinks=False)
    except OSError:
        shutil.copy2(place, earlier, follow_symlinks=False)


def _unmake(made: list[Path]) -> None:
    """Take away the folders that were made for nothing."""
    for each in made:
        with contextlib.suppress(OSError):
            each.rmdir()


def _fault(folder: Path, fault: OSError) -> OutputFault:
    reason = fault.strerror or str(fault)
    return OutputFault(f"can't write into {folder}: {reason}; nothing there was changed")
