"""Files take their places all together or not at all, whatever the disk does."""

import errno
import os
import shutil
import subprocess
from pathlib import Path

import pytest

from patternmaker.drafting import staging
from patternmaker.drafting.staging import put_in_place
from patternmaker.errors import OutputFault

OLD = {"a.pdf": b"old pdf", "a.svg": b"old svg"}
NEW = {"a.pdf": b"new pdf", "a.svg": b"new svg", "cutlist.csv": b"new list"}


def held(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def fill(folder: Path) -> None:
    for name, content in OLD.items():
        (folder / name).write_bytes(content)


class FullDisk:
    """Fails at the nth call, as a full disk does."""

    def __init__(self, nth: int, fault: BaseException | None = None) -> None:
        self.left = nth
        self.fault = fault or OSError(errno.ENOSPC, "No space left on device")

    def __call__(self) -> None:
        self.left -= 1
        if self.left == 0:
            raise self.fault


def filling(monkeypatch: pytest.MonkeyPatch, verb: str, disk: FullDisk) -> None:
    real = getattr(Path, verb)

    def full(path: Path, *rest: object) -> object:
        disk()
        return real(path, *rest)

    monkeypatch.setattr(Path, verb, full)


def test_files_take_their_places(tmp_path):
    assert put_in_place(tmp_path, NEW) == tuple(tmp_path / name for name in NEW)
    assert held(tmp_path) == NEW


def test_earlier_files_give_way(tmp_path):
    fill(tmp_path)
    put_in_place(tmp_path, NEW)
    assert held(tmp_path) == NEW


def test_other_files_stay(tmp_path):
    (tmp_path / "notes.txt").write_bytes(b"mine")
    put_in_place(tmp_path, NEW)
    assert held(tmp_path) == {**NEW, "notes.txt": b"mine"}


@pytest.mark.parametrize("verb", ["write_bytes", "replace"])
@pytest.mark.parametrize("nth", [1, 2, 3])
def test_full_disk_leaves_the_earlier_files_as_they_were(verb, nth, tmp_path, monkeypatch):
    fill(tmp_path)
    filling(monkeypatch, verb, FullDisk(nth))
    with pytest.raises(OutputFault, match="No space left on device; nothing there was changed"):
        put_in_place(tmp_path, NEW)
    assert held(tmp_path) == OLD


@pytest.mark.parametrize("verb", ["write_bytes", "replace"])
@pytest.mark.parametrize("nth", [1, 2, 3])
def test_interruption_leaves_the_earlier_files_as_they_were(verb, nth, tmp_path, monkeypatch):
    fill(tmp_path)
    filling(monkeypatch, verb, FullDisk(nth, KeyboardInterrupt()))
    with pytest.raises(KeyboardInterrupt):
        put_in_place(tmp_path, NEW)
    assert held(tmp_path) == OLD


@pytest.mark.parametrize("nth", [2, 3])
def test_files_that_were_not_there_before_are_taken_away_again(nth, tmp_path, monkeypatch):
    filling(monkeypatch, "replace", FullDisk(nth))
    with pytest.raises(OutputFault):
        put_in_place(tmp_path, NEW)
    assert held(tmp_path) == {}


def without_second_names(monkeypatch: pytest.MonkeyPatch) -> None:
    def link(*names: object, follow_symlinks: bool) -> None:
        raise PermissionError(errno.EPERM, "Operation not permitted")

    monkeypatch.setattr(os, "link", link)


@pytest.mark.parametrize("nth", [1, 2, 3])
def test_disk_without_second_names_keeps_copies(nth, tmp_path, monkeypatch):
    fill(tmp_path)
    without_second_names(monkeypatch)
    filling(monkeypatch, "replace", FullDisk(nth))
    with pytest.raises(OutputFault):
        put_in_place(tmp_path, NEW)
    assert held(tmp_path) == OLD


@pytest.mark.parametrize("fault", [KeyboardInterrupt(), OSError(errno.ENOSPC, "full")])
def test_copy_that_is_cut_short_is_never_put_back(fault, tmp_path, monkeypatch):
    fill(tmp_path)
    without_second_names(monkeypatch)

    def half(source: Path, target: Path, *, follow_symlinks: bool) -> None:
        target.write_bytes(source.read_bytes()[:3])
        raise fault

    monkeypatch.setattr(shutil, "copy2", half)
    with pytest.raises((KeyboardInterrupt, OutputFault)):
        put_in_place(tmp_path, NEW)
    assert held(tmp_path) == OLD


@pytest.mark.parametrize("fault", [None, KeyboardInterrupt()])
def test_folders_made_for_nothing_are_taken_away(fault, tmp_path, monkeypatch):
    filling(monkeypatch, "write_bytes", FullDisk(2, fault))
    with pytest.raises((KeyboardInterrupt, OutputFault)):
        put_in_place(tmp_path / "a" / "b", NEW)
    assert held(tmp_path) == {}


def test_folder_that_was_there_stays(tmp_path, monkeypatch):
    (tmp_path / "a").mkdir()
    filling(monkeypatch, "write_bytes", FullDisk(1))
    with pytest.raises(OutputFault):
        put_in_place(tmp_path / "a" / "b", NEW)
    assert [path.name for path in tmp_path.iterdir()] == ["a"]


@pytest.mark.parametrize("beneath", [".", "x", "x/y"])
def test_file_where_a_folder_should_be_is_told(beneath, tmp_path):
    (tmp_path / "file").write_bytes(b"mine")
    with pytest.raises(OutputFault, match="can't write into"):
        put_in_place(tmp_path / "file" / beneath, NEW)
    assert held(tmp_path) == {"file": b"mine"}


def test_name_too_long_for_a_folder_is_told(tmp_path):
    with pytest.raises(OutputFault, match="File name too long"):
        put_in_place(tmp_path / ("x" * 300), NEW)
    assert held(tmp_path) == {}


@pytest.mark.skipif(not Path("/proc/self").exists(), reason="there is no such folder here")
def test_folder_that_takes_no_files_is_told():
    with pytest.raises(OutputFault, match="can't write into /proc/patterns"):
        put_in_place(Path("/proc/patterns"), NEW)


@pytest.mark.skipif(
    not hasattr(os, "geteuid") or os.geteuid() == 0, reason="the administrator may write anywhere"
)
def test_folder_without_rights_is_told(tmp_path):
    tmp_path.chmod(0o500)
    try:
        with pytest.raises(OutputFault, match="Permission denied"):
            put_in_place(tmp_path, NEW)
        assert held(tmp_path) == {}
    finally:
        tmp_path.chmod(0o700)


def test_link_to_elsewhere_is_replaced_and_its_target_untouched(tmp_path):
    elsewhere = tmp_path / "elsewhere.pdf"
    elsewhere.write_bytes(b"theirs")
    out = tmp_path / "out"
    out.mkdir()
    (out / "a.pdf").symlink_to(elsewhere)
    put_in_place(out, NEW)
    assert elsewhere.read_bytes() == b"theirs"
    assert held(out) == NEW
    assert not (out / "a.pdf").is_symlink()


def test_link_to_elsewhere_is_kept_when_the_disk_is_full(tmp_path, monkeypatch):
    elsewhere = tmp_path / "elsewhere.pdf"
    elsewhere.write_bytes(b"theirs")
    out = tmp_path / "out"
    out.mkdir()
    (out / "a.pdf").symlink_to(elsewhere)
    filling(monkeypatch, "replace", FullDisk(2))
    with pytest.raises(OutputFault):
        put_in_place(out, NEW)
    assert elsewhere.read_bytes() == b"theirs"
    assert (out / "a.pdf").readlink() == elsewhere
    assert [path.name for path in out.iterdir()] == ["a.pdf"]


def test_link_that_leads_nowhere_is_replaced(tmp_path):
    (tmp_path / "a.pdf").symlink_to(tmp_path / "gone" / "x.pdf")
    put_in_place(tmp_path, NEW)
    assert held(tmp_path) == NEW


def test_folder_called_as_a_file_would_be_is_told_and_stays(tmp_path):
    fill(tmp_path)
    (tmp_path / "cutlist.csv").mkdir()
    (tmp_path / "cutlist.csv" / "mine").write_bytes(b"mine")
    with pytest.raises(OutputFault, match=r"cutlist\.csv is a folder there"):
        put_in_place(tmp_path, NEW)
    assert held(tmp_path / "cutlist.csv") == {"mine": b"mine"}
    shutil.rmtree(tmp_path / "cutlist.csv")
    assert held(tmp_path) == OLD


def test_stage_is_beside_the_files_so_that_a_rename_is_enough(tmp_path, monkeypatch):
    seen = []
    real = Path.replace

    def watched(path: Path, target: Path) -> Path:
        seen.append((path.parent.name.startswith(staging.STAGE), path.parent.parent, target.parent))
        return real(path, target)

    monkeypatch.setattr(Path, "replace", watched)
    put_in_place(tmp_path, {"a.pdf": b"x"})
    assert seen == [(True, tmp_path, tmp_path)]


@pytest.fixture
def small_disk(tmp_path):
    """A disk of 64 KiB, where the administrator may make one."""
    disk = tmp_path / "disk"
    disk.mkdir()
    mount = shutil.which("mount")
    if not mount or not hasattr(os, "geteuid") or os.geteuid() != 0:
        pytest.skip("only the administrator may make a disk")
    words = [mount, "-t", "tmpfs", "-o", "size=64k", "tmpfs", str(disk)]
    if subprocess.run(words, capture_output=True, check=False).returncode:
        pytest.skip("no disk can be made here")
    yield disk
    subprocess.run([shutil.which("umount") or "umount", str(disk)], check=True)


def test_disk_that_is_really_full_keeps_the_earlier_files(small_disk):
    fill(small_disk)
    with pytest.raises(OutputFault, match="No space left on device"):
        put_in_place(small_disk, {"a.pdf": b"new", "a.svg": b"n" * 100_000})
    assert held(small_disk) == OLD
