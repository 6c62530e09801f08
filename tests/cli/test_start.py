"""``patternmaker start``: a job file to begin from."""

import json
import os
import signal
import subprocess
import sys
import tomllib
from pathlib import Path
from typing import Any

import pytest

from patternmaker.cli.start import begun, next_step
from patternmaker.cutlist.rows import Drafted
from patternmaker.drawing.measures import usual
from patternmaker.errors import Refusals
from patternmaker.facts import facts_of, file, measured
from patternmaker.job import Job, load_job, read_job
from patternmaker.outlines import SHAPES
from patternmaker.outlines.circle import Circle
from patternmaker.units import Unit
from tests.cli.command import leaves, run
from tests.cli.talk import Answering

UNITS = pytest.mark.parametrize("unit", list(Unit))


class Drawn(Circle):
    """A seat drawn before."""

    file: Any = file("a drawing of the outline")


DRAWN = measured(Drawn)
DRAWN.called = "drawn before"


def asked(
    folder: Path, answers: list[str], shape: str = "rounded rectangle", unit: Unit | None = None
) -> tuple[Job, Answering]:
    """Answer the questions for a shape, and return the job that came of it, and what was said."""
    talk = Answering(answers)
    path = begun([shape], unit, folder / "job.toml", over=False, talk=talk)
    return load_job(path), talk


@pytest.mark.parametrize("name", list(SHAPES.all))
@UNITS
def test_every_shape_begins_as_a_job_that_can_be_drafted(name, unit, tmp_path):
    path = begun([name], unit, tmp_path / "job.toml", over=False, talk=None)
    seat = usual(SHAPES.all[name], unit)
    if seat is None:
        with pytest.raises(Refusals) as refused:
            load_job(path)
        assert [mistake for mistake in refused.value if "is not there" not in mistake.says] == []
        return
    job = load_job(path)
    drafted = Drafted(job, tuple(each.pattern() for each in job.seats))
    ((made, pattern),) = drafted.seats
    assert (job.unit, made.make) == (unit, 1)
    for field, fact in facts_of(type(seat)).items():
        values = getattr(made.outline, field), getattr(seat, field)
        one, two = (value if value is None else fact.quantity.show(value, unit) for value in values)
        assert one == two
    assert {"top", "boxing"} <= {piece.role for piece in pattern.pieces}


def test_begun_job_is_drafted_by_the_program(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    done = run("start", "rounded", "rectangle", "--units", "in")
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout == (
        "Written: rounded-rectangle.toml\n"
        "When its measurements are yours: patternmaker draft rounded-rectangle.toml\n"
    )
    made = json.loads(run("draft", "rounded-rectangle.toml", "--json").stdout)
    assert made["seats"][0]["outline"]["width_mm"] == pytest.approx(16 * 25.4)


def test_name_of_a_file_with_blanks_is_quoted_for_the_next_step():
    assert next_step(Path("a b.toml")).endswith("patternmaker draft 'a b.toml'")


def test_shape_from_a_file_is_refused_only_for_the_missing_file(tmp_path, monkeypatch):
    monkeypatch.setitem(SHAPES.all, "drawn before", DRAWN)
    path = begun(["drawn before"], None, tmp_path / "job.toml", over=False, talk=None)
    assert 'file = "outline.svg"  # put your drawing beside this file' in path.read_text()
    with pytest.raises(Refusals) as refused:
        load_job(path)
    assert [mistake.field for mistake in refused.value] == ['seat 1 "Drawn before", outline.file']


def test_earlier_file_stays_unless_it_may_be_replaced(tmp_path):
    path = tmp_path / "circle.toml"
    path.write_text("mine")
    done = run("start", "circle", "--out", path)
    assert (done.returncode, done.stdout) == (2, "")
    assert f"out: {path} is there already; give another name, or allow it" in done.stderr
    assert path.read_text() == "mine"
    assert run("start", "circle", "--out", path, "--replace").returncode == 0
    assert path.read_text().startswith("# A job to fill in")


def test_earlier_file_is_told_before_anything_is_asked(tmp_path):
    (tmp_path / "job.toml").write_text("mine")
    talk = Answering([])
    with pytest.raises(Refusals, match="is there already"):
        begun(["circle"], None, tmp_path / "job.toml", over=False, talk=talk)
    assert talk.asked == []


def test_file_that_appears_while_one_answers_stays(tmp_path):
    class Slow(Answering):
        def ask(self, prompt: str) -> str:
            (tmp_path / "job.toml").write_text("mine")
            return super().ask(prompt)

    with pytest.raises(Refusals, match="is there already"):
        begun(["circle"], Unit.MM, tmp_path / "job.toml", over=False, talk=Slow([""] * 4))
    assert (tmp_path / "job.toml").read_text() == "mine"


def test_link_to_nowhere_is_a_file_that_is_there(tmp_path):
    (tmp_path / "job.toml").symlink_to(tmp_path / "gone")
    with pytest.raises(Refusals, match="is there already"):
        begun(["circle"], None, tmp_path / "job.toml", over=False, talk=None)


@pytest.mark.parametrize("out", ["", "."])
def test_folder_is_no_file_to_write(out):
    done = run("start", "circle", "--out", out)
    assert done.returncode == 2
    assert "is a folder; name a file in it" in done.stderr


@pytest.mark.parametrize(
    ("word", "says"), [("cirkle", "did you mean 'circle'"), ("boxed", "shape")]
)
def test_only_a_shape_can_be_begun(word, says):
    done = run("start", word)
    assert (done.returncode, done.stdout) == (2, "")
    assert says in done.stderr


def test_answers_become_the_job(tmp_path):
    answers = ["in", "16", '14 1/2"', "2", "", "", "", "1", "2 3/4", "Practice bench", "6"]
    job, talk = asked(tmp_path, answers)
    (seat,) = job.seats
    assert (job.unit, job.name, seat.name, seat.make) == (
        Unit.IN, "Practice bench", "Practice bench", 6,
    )  # fmt: skip
    assert vars(seat.outline) == pytest.approx({
        "width": 16 * 25.4, "depth": 14.5 * 25.4, "corner": 50.8, "back_left": None,
        "back_right": None, "front_left": None, "front_right": 25.4,
    })  # fmt: skip
    assert vars(seat.cover)["drop"] == pytest.approx(2.75 * 25.4)
    assert "depth = '14 1/2\"'" in (tmp_path / "job.toml").read_text()
    assert talk.answers == []


def test_sizes_and_the_cut_size_of_the_top_are_told_before_the_name_is_asked(tmp_path):
    _, talk = asked(tmp_path, ["400", "", "Stool", ""], "circle", Unit.MM)
    assert "This seat: 400 x 400 mm, 1256.5 mm round, 0.126 m²." in talk.heard
    assert pytest.approx(413.4) == (400 + 2 * 12) * (1 - 0.025)
    assert "Its top is cut 413.5 x 413.5 mm (upholstery leather)." in talk.heard
    assert talk.asked == ["diameter [330 mm]", "drop [75 mm]", "name [Circle]", "make [1]"]


def test_picture_in_the_file_is_of_the_seat_as_measured(tmp_path):
    asked(tmp_path, ["500", "200", "", "", ""], "oval", Unit.MM)
    wide = (tmp_path / "job.toml").read_text()
    (tmp_path / "job.toml").unlink()
    asked(tmp_path, ["200", "500", "", "", ""], "oval", Unit.MM)
    high = (tmp_path / "job.toml").read_text()
    assert wide.count("\n# ") < high.count("\n# ")


def test_drop_that_the_cover_objects_to_is_asked_again(tmp_path):
    answers = ["300", "3", "5", "75", "", ""]
    job, talk = asked(tmp_path, answers, "circle", Unit.MM)
    assert vars(job.seats[0].cover)["drop"] == 75.0
    assert "drop: 3 mm is less than 10 mm" in talk.heard


def test_name_that_is_none_is_refused_and_asked_again(tmp_path):
    job, talk = asked(tmp_path, ["", "", "o" * 61, "Stool", ""], "circle", Unit.MM)
    assert job.name == "Stool"
    assert "name: has 61 letters, more than 60; shorten it" in talk.heard


def test_answers_that_end_are_a_refusal_and_leave_nothing(tmp_path):
    with pytest.raises(Refusals, match="the answers ended before the last question"):
        asked(tmp_path, ["in", "13"], "circle")
    assert leaves(tmp_path) == []


def test_folder_at_the_place_of_the_file_is_told(tmp_path):
    with pytest.raises(Refusals, match="is a folder; name a file in it"):
        begun(["circle"], None, tmp_path, over=True, talk=None)


@pytest.mark.parametrize("answers", ["", "in\n", "in\n13\n3\nStool\n", "in\n13"])
def test_answers_that_end_early_leave_nothing(answers, tmp_path):
    done = subprocess.run(
        [sys.executable, "-m", "patternmaker", "start", "circle", "--ask", "--out",
         tmp_path / "job.toml"],
        input=answers, capture_output=True, text=True, check=False, encoding="utf-8",
    )  # fmt: skip
    assert done.returncode == 2
    assert "the answers ended before the last question" in done.stderr
    assert "Traceback" not in done.stderr
    assert leaves(tmp_path) == []


def test_answers_may_come_from_a_file(tmp_path):
    done = subprocess.run(
        [sys.executable, "-m", "patternmaker", "start", "circle", "--ask", "--out",
         tmp_path / "job.toml"],
        input="in\n12 1/2\n\nStool\n6\n", capture_output=True, text=True, check=False,
        encoding="utf-8",
    )  # fmt: skip
    assert (done.returncode, done.stderr) == (0, "")
    seat = load_job(tmp_path / "job.toml").seats[0]
    assert (vars(seat.outline), seat.make) == ({"diameter": 317.5}, 6)


class Typed:
    """The program on a terminal of its own, to type at."""

    def __init__(self, *words: str | Path) -> None:
        pty = pytest.importorskip("pty", reason="there is no such terminal here")
        self.ours, theirs = pty.openpty()
        self.process = subprocess.Popen(
            [sys.executable, "-m", "patternmaker", *words], stdin=theirs, stdout=theirs,
            stderr=theirs, start_new_session=True,
        )  # fmt: skip
        os.close(theirs)
        self.heard = ""

    def until(self, words: str) -> None:
        """Wait until the words are shown."""
        while words not in self.heard:
            self.heard += os.read(self.ours, 10_000).decode(errors="replace")

    def type(self, answer: str, after: str) -> None:
        """Type a line once a question is shown."""
        self.until(after)
        self.heard = self.heard.split(after, 1)[1]
        os.write(self.ours, f"{answer}\n".encode())

    def end(self) -> int:
        """Hear the rest, and return how it ended."""
        try:
            while more := os.read(self.ours, 10_000):
                self.heard += more.decode(errors="replace")
        except OSError:  # the other end is closed
            pass
        os.close(self.ours)
        return self.process.wait()


def test_somebody_at_a_terminal_is_asked(tmp_path):
    typed = Typed("start", "circle", "--out", tmp_path / "job.toml")
    typed.type("in", "units [mm] ")
    typed.type("12 1/2", "diameter [13 in] ")
    typed.type("", "drop [3 in] ")
    typed.type("Stool", "name [Circle] ")
    typed.type("6", "make [1] ")
    assert typed.end() == 0
    assert "Written:" in typed.heard
    assert load_job(tmp_path / "job.toml").seats[0].make == 6


def test_somebody_at_a_terminal_may_be_left_alone(tmp_path):
    typed = Typed("start", "circle", "--no-ask", "--out", tmp_path / "job.toml")
    assert typed.end() == 0
    assert load_job(tmp_path / "job.toml").seats[0].make == 1


def test_stopped_by_the_keyboard_it_leaves_nothing(tmp_path):
    typed = Typed("start", "circle", "--out", tmp_path / "job.toml")
    typed.type("in", "units [mm] ")
    typed.until("diameter [13 in] ")
    typed.process.send_signal(signal.SIGINT)
    assert typed.end() == 1
    assert "stopped; no file was left half written" in typed.heard
    assert "Traceback" not in typed.heard
    assert leaves(tmp_path) == []


def test_end_of_file_typed_at_a_terminal_leaves_nothing(tmp_path):
    typed = Typed("start", "circle", "--units", "mm", "--out", tmp_path / "job.toml")
    typed.until("diameter [330 mm] ")
    os.write(typed.ours, b"\x04")
    assert typed.end() == 2
    assert "the answers ended" in typed.heard
    assert leaves(tmp_path) == []


def test_job_can_begin_with_another_cover(tmp_path):
    path = begun(["circle"], None, tmp_path / "job.toml", over=False, talk=None, cover="Pull over")
    (seat,) = read_job(tomllib.loads(path.read_text(encoding="utf-8"))).seats
    assert seat.cover.called == "pull-over"


def test_unknown_cover_is_told_with_the_nearest(tmp_path):
    with pytest.raises(Refusals, match=r"cover: 'pulled over' is not known; did you mean"):
        begun(["circle"], None, tmp_path / "job.toml", over=False, talk=None, cover="pulled over")
