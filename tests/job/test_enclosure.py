"""What a print carries gives the job back, and nothing else."""

import json

import pytest

import patternmaker
from patternmaker.errors import Refusals
from patternmaker.job import load_job
from patternmaker.job.enclosure import Enclosure, Printed
from patternmaker.job.reading import read_job
from tests.paper.samples import SAMPLES

A4 = Printed("A4", 210.0, 297.0, whole_strips=False)
EACH_SAMPLE = pytest.mark.parametrize("path", sorted(SAMPLES.glob("*.toml")), ids=lambda p: p.stem)


def changed(content: bytes, **what: object) -> bytes:
    return json.dumps({**json.loads(content), **what}).encode()


@EACH_SAMPLE
def test_job_comes_back_as_it_was_read(path):
    job = load_job(path)
    back = Enclosure.read(Enclosure.of(job, A4).written)
    assert back.job() == job
    assert (back.version, back.printed) == (patternmaker.__version__, A4)


@EACH_SAMPLE
def test_pattern_comes_back_to_the_last_digit(path):
    job = load_job(path)
    back = Enclosure.read(Enclosure.of(job, A4).written).job()
    assert [seat.pattern() for seat in back.seats] == [seat.pattern() for seat in job.seats]


def test_drawings_come_along():
    job = load_job(SAMPLES / "traced-seats.toml")
    assert job.given.files["drawings/cello-chair.csv"].decode().count("\n") > 10
    assert Enclosure.read(Enclosure.of(job, A4).written).given.files == job.given.files


def test_drawing_that_is_no_text_comes_back_to_the_byte():
    job = load_job(SAMPLES / "traced-seats.toml")
    enclosed = Enclosure.of(job, A4)
    odd = Enclosure(enclosed.version, type(job.given)({}, {"a": b"\xff\x00"}), A4)
    assert Enclosure.read(odd.written).given.files == {"a": b"\xff\x00"}


def test_same_job_encloses_the_same_bytes():
    one, two = (Enclosure.of(load_job(SAMPLES / "organ-bench.toml"), A4) for _ in range(2))
    assert one.written == two.written


def test_job_that_came_along_opens_no_file_of_the_disk(tmp_path):
    (tmp_path / "secret.csv").write_text("0,0\n1,1\n")
    seat = {"name": "A", "outline": {"shape": "traced", "file": str(tmp_path / "secret.csv")},
            "cover": {"style": "boxed", "drop": 60}}  # fmt: skip
    with pytest.raises(Refusals, match=r"outline\.file: did not come with the job"):
        read_job({"name": "A", "units": "mm", "seat": [seat]}, {})


@pytest.mark.parametrize(
    "content",
    [b"", b"\xff", b"null", b"[]", b"{}", b"[" * 100_000, b'{"patternmaker":"%s"}'],
)
def test_damage_is_told(content):
    content = content.replace(b"%s", patternmaker.__version__.encode())
    with pytest.raises(Refusals, match="the job that it carries is damaged; draft the job anew"):
        Enclosure.read(content)


@pytest.mark.parametrize("field", ["job", "files", "printed"])
@pytest.mark.parametrize("value", [None, 1, "x", ["x"], {"x": 1}])
def test_damage_of_a_part_is_told(field, value):
    content = Enclosure.of(load_job(SAMPLES / "organ-bench.toml"), A4).written
    with pytest.raises(Refusals):
        Enclosure.read(changed(content, **{field: value})).job()


def test_print_of_another_version_is_told():
    content = Enclosure.of(load_job(SAMPLES / "organ-bench.toml"), A4).written
    with pytest.raises(Refusals, match=r"by version 0\.0\.1, and this is .*; draft the job"):
        Enclosure.read(changed(content, patternmaker="0.0.1"))


def test_what_a_printer_made_sheets_be_drawn_by_comes_back_and_is_not_there_without_one():
    job = load_job(SAMPLES / "organ-bench.toml")
    plain = Enclosure.of(job, Printed("A4", 210, 297, whole_strips=False))
    assert b"drawn" not in plain.written.rpartition(b'"printed"')[2]
    drawn = Printed("A4", 210, 297, whole_strips=False, drawn=(1 / 1.006, 1 / 0.996))
    assert Enclosure.read(Enclosure.of(job, drawn).written).printed == drawn


@pytest.mark.parametrize("drawn", [[], [1], "a4", [None, 1], {"across": 1}])
def test_damage_of_what_sheets_were_drawn_by_is_told(drawn):
    job = load_job(SAMPLES / "organ-bench.toml")
    data = json.loads(Enclosure.of(job, Printed("A4", 210, 297, whole_strips=False)).written)
    data["printed"]["drawn"] = drawn
    with pytest.raises(Refusals, match="damaged"):
        Enclosure.read(json.dumps(data).encode())
