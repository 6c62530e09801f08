"""``patternmaker printer`` and ``draft --printer``, with settings in a folder of the test's own."""

import json
from pathlib import Path

import pytest

from tests.cli.command import STOOL, run, summary


class Desk:
    """Runs the program with the settings of one user, who is nobody real."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.file = folder / "settings" / "patternmaker" / "printers.json"

    def says(self, *words: str | Path, code: int = 0) -> str:
        done = run(*words, XDG_CONFIG_HOME=str(self.folder / "settings"),
                   HOME=str(self.folder), APPDATA=str(self.folder / "settings"))  # fmt: skip
        assert done.returncode == code, done.stderr
        assert "Traceback" not in done.stderr
        assert "fault of ours" not in done.stderr
        return done.stdout + done.stderr

    def printer(self, *words: str | Path, code: int = 0) -> str:
        return self.says("printer", *words, code=code)

    def measures(
        self, across: str = "181.1", up: str = "239", long: str = "300.1", code: int = 0
    ) -> str:
        return self.printer(
            "east wing", "--across", across, "--up", up, "--long-side", long, code=code
        )


@pytest.fixture
def desk(tmp_path):
    return Desk(tmp_path)


def test_printer_is_measured_kept_listed_and_forgotten(desk):
    assert "No printer has been measured yet" in desk.printer()
    said = desk.measures()
    assert "prints 0.61 % long" in said
    assert "prints 0.42 % short" in said
    assert "square" in said
    assert str(desk.file) in said
    assert "east wing  -0.61 %       +0.42 %   yes     A4" in desk.printer()
    assert "-0.61 % across, +0.42 % up" in desk.printer("East", "wing")
    assert desk.printer("east", "wing", "--reset") == "east wing is forgotten.\n"
    assert "No printer has been measured yet" in desk.printer()


def test_proof_page_is_drawn_and_what_to_type_is_said(desk):
    path = desk.folder / "proof.pdf"
    said = desk.printer("east", "wing", "--proof", path, "--units", "in", "--paper", "Letter")
    assert path.read_bytes().startswith(b"%PDF")
    assert ('patternmaker printer "east wing" --across ... --up ... --long-side ... '
            "--paper Letter --units in") in said  # fmt: skip
    assert not desk.file.exists()


def test_draft_for_a_printer_says_so_and_one_without_is_as_ever(desk):
    desk.measures()
    said = desk.says("draft", STOOL, "--out", desk.folder / "a", "--paper", "A4", "--margins",
                     "10mm,10mm,10mm,13mm", "--printer", "EAST wing")  # fmt: skip
    assert "drawn for east wing: -0.61 % across, +0.42 % up the paper" in said
    assert "Look at this first" not in said
    desk.says("draft", STOOL, "--out", desk.folder / "b", "--paper", "A4")
    desk.printer("east wing", "--reset")
    desk.says("draft", STOOL, "--out", desk.folder / "c", "--paper", "A4")
    a, b, c = ((desk.folder / n / "practice-rooms-east-wing.pdf").read_bytes() for n in "abc")
    assert a != b
    assert b == c


def test_draft_on_another_paper_warns(desk):
    desk.measures()
    said = desk.says("draft", STOOL, "--out", desk.folder, "--printer", "east wing")
    assert "Look at this first" in said
    assert "'east wing' was measured on A4, and this is Letter" in said
    assert "with other margins" in said


def test_json_names_the_printer_or_none(desk, monkeypatch):
    desk.measures()
    words = ("draft", STOOL, "--out", desk.folder, "--json", "--printer", "east wing")
    printer = json.loads(desk.says(*words))["sheets"]["printer"]
    assert printer["name"] == "east wing"
    assert printer["across"] == pytest.approx(1.1 / 180)
    assert printer["up"] == pytest.approx(-1 / 240)
    assert summary(STOOL, desk.folder)["sheets"]["printer"] is None


def test_unknown_printer_is_refused_with_the_nearest_and_nothing_is_drafted(desk):
    desk.measures()
    out = desk.folder / "out"
    said = desk.says("draft", STOOL, "--out", out, "--printer", "east wig", code=2)
    assert "'east wig' is not known; did you mean 'east wing'?" in said
    assert not out.exists()


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["--across", "180", "--up", "240"], "has no name"),
        (["a", "--across", "180"], "up: is not given; measure it too: --up"),
        (["a", "--reset"], "none has been measured yet"),
        (["--reset"], "has no name"),
        (["a", "--reset", "--across", "1", "--up", "2"], "one at a time"),
        (["a", "--across", "190", "--up", "240"], "5.56 % more than 180 mm: more than 3 %"),
        (["a", "--across", "240", "--up", "180"], "look swapped"),
        (["a", "--across", "4", "--up", "3"], 'if you read 4 in, say --across "4 in"'),
        (["x" * 41, "--across", "181", "--up", "240"], "41 letters"),
        (["{a}", "--across", "181"], "up: is not given"),
        (["{a}"], "'{a}' is not known"),
        (["--proof", "/"], "names no file"),
        (["--proof", "p.pdf", "--paper", "A9"], "'A9' is not known"),
        (["--proof", "p.pdf", "--margins", "120"], "larger than A4 itself"),
    ],
)
def test_what_can_not_be_done_is_refused_and_nothing_is_kept(desk, words, says):
    assert says in desk.printer(*words, code=2)
    assert not desk.file.exists()


def test_measuring_a_page_that_was_drawn_for_the_printer_does_not_undo_what_is_known(desk):
    desk.measures()
    before = desk.file.read_bytes()
    said = desk.measures(across="180", up="240.2", long="300", code=2)
    assert "these sides are true" in said
    assert "--reset" in said
    assert desk.file.read_bytes() == before


def test_measuring_again_tells_what_is_forgotten(desk):
    desk.measures()
    assert "known before: -0.61 % across, +0.42 % up" in desk.measures(across="182")


def test_damaged_settings_are_told_refused_and_kept_aside(desk):
    desk.file.parent.mkdir(parents=True)
    desk.file.write_bytes(b'{"format": 1,')
    assert "is damaged: it is no JSON at line 1, column 14" in desk.printer()
    said = desk.says("draft", STOOL, "--out", desk.folder / "o", "--printer", "east", code=2)
    assert "can't be read from" in said
    said = desk.measures()
    aside = desk.file.with_name("printers-damaged-1.json")
    assert f"kept as {aside}" in said
    assert aside.read_bytes() == b'{"format": 1,'


def test_draft_without_a_printer_never_looks_at_the_settings(desk):
    desk.file.parent.mkdir(parents=True)
    desk.file.write_bytes(b"\x00")
    desk.says("draft", STOOL, "--out", desk.folder)
    assert desk.file.read_bytes() == b"\x00"


def test_name_that_the_lettering_lacks_is_warned_of(desk):
    desk.printer("東", "--across", "181", "--up", "240")
    said = desk.says("draft", STOOL, "--out", desk.folder, "--printer", "東")
    assert "the lettering has no" in said


def test_proof_page_for_a_known_printer_is_drawn_for_it_and_another_paper_is_doubted(desk):
    desk.measures()
    said = desk.printer("east wing", "--proof", desk.folder / "p.pdf", "--paper", "A3")
    assert "for east wing as it is known: its sides must come out true" in said
    assert "was measured on A4, and this is A3" in said
    said = desk.printer("east wing", "--proof", desk.folder / "p.pdf")
    assert "was measured on" not in said


def test_print_that_was_drawn_for_a_printer_passes_its_check(desk):
    desk.measures()
    desk.says("draft", STOOL, "--out", desk.folder, "--printer", "east wing")
    assert "Every line is there" in desk.says("check", desk.folder / "practice-rooms-east-wing.pdf")
