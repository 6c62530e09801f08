"""``patternmaker draft``: what it says, what it leaves, and how it ends."""

import pytest

from tests.cli.command import SAMPLES, STOOL, ended, job, leaves, refused, run


@pytest.mark.parametrize("path", sorted(SAMPLES.glob("*.toml")), ids=lambda path: path.stem)
def test_sample_is_drafted(path, tmp_path):
    done = ended(path, "--out", tmp_path, code=0)
    assert done.stderr == ""
    assert len(leaves(tmp_path)) == 1


def test_report_says_what_to_cut_how_it_fits_and_where_the_files_are(tmp_path):
    report = ended(STOOL, "--out", tmp_path, code=0).stdout
    for part in ("Cut list", "Material, without waste", "Sewing, for one seat", "Thread in all",
                 "Fit", "sheets of Letter", "Files",
                 "Print at actual size (100 %)"):  # fmt: skip
        assert part in report
    assert str(tmp_path / "practice-rooms-east-wing.pdf") in report


def test_every_file_asked_for_is_left(tmp_path):
    ended(STOOL, "--out", tmp_path, "--svg", "--cut-list", code=0)
    assert leaves(tmp_path) == [
        "cutlist.csv", "practice-rooms-east-wing.pdf", "practice-rooms-east-wing.svg",
        "sewinglist.csv",
    ]  # fmt: skip


def test_folder_is_named_after_the_job_unless_it_is_given(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    ended(STOOL, code=0)
    assert leaves(tmp_path / "practice-rooms-east-wing") == ["practice-rooms-east-wing.pdf"]


def test_folder_is_made_with_those_above_it(tmp_path):
    ended(STOOL, "--out", tmp_path / "a" / "b", code=0)
    assert leaves(tmp_path / "a" / "b") == ["practice-rooms-east-wing.pdf"]


def test_refused_job_leaves_nothing(tmp_path):
    path = job(tmp_path, outline='{ shape = "circle", diameter = 1 }')
    told = refused(path, "--out", tmp_path / "out")
    assert told == (
        "patternmaker: 1 mistake, nothing was written\n"
        '  seat 1 "Round piano stool", outline.diameter: 1 mm is less than 50 mm; '
        "make it 50 mm or more\n"
    )
    assert leaves(tmp_path) == ["job.toml"]


def test_all_mistakes_are_counted_and_told():
    told = refused(SAMPLES / "wrong" / "many-at-once.toml").splitlines()
    assert told[0] == "patternmaker: 14 mistakes, nothing was written"
    assert len(told) == 15


def test_bad_job_and_bad_folder_end_differently(tmp_path):
    path = job(tmp_path)
    ended(path, "--out", path, code=1)
    refused(tmp_path, "--out", path)


@pytest.mark.parametrize(
    ("name", "stem"),
    [("../../etc/x", "etc-x"), ("/etc/passwd", "etc-passwd"), ("a\\\\b:c", "a-b-c"), ("..", "job"),
     ("CON", "con-job"), ("[red] {x}", "red-x"), ("%s", "s"), ("-rf", "rf"), ("椅子", "椅子"),
     ("~", "job"), ("$HOME", "home")],
)  # fmt: skip
def test_files_stay_inside_the_folder_whatever_the_job_is_called(name, stem, tmp_path):
    path = job(tmp_path, name)
    out = tmp_path / "deep" / "out"
    ended(path, "--out", out, "--svg", code=0)
    assert leaves(out) == [f"{stem}.pdf", f"{stem}.svg"]
    assert leaves(tmp_path / "deep") == ["out"]
    assert leaves(tmp_path) == ["deep", "job.toml"]


def test_same_job_twice_leaves_the_same_bytes_in_any_process(tmp_path):
    folders = []
    for seed in ("1", "2"):
        folders.append(tmp_path / seed)
        done = run("draft", SAMPLES / "music-school.toml", "--out", folders[-1], "--svg",
                   "--cut-list", PYTHONHASHSEED=seed)  # fmt: skip
        assert done.returncode == 0
    one, two = ({p.name: p.read_bytes() for p in folder.iterdir()} for folder in folders)
    assert len(one) == 4
    assert one == two


@pytest.mark.parametrize(
    ("name", "says"),
    [(".", "is a folder"), ("missing.toml", "is not there"), ("/dev/zero", "is not an ordinary"),
     ("", "is a folder"), ("job.toml/x", "can't be read")],
)  # fmt: skip
def test_what_is_no_job_file_is_refused(name, says, tmp_path, monkeypatch):
    job(tmp_path)
    monkeypatch.chdir(tmp_path)
    assert says in refused(name)
    assert leaves(tmp_path) == ["job.toml"]


def test_folder_where_the_file_should_be_is_told_and_stays(tmp_path):
    (tmp_path / "practice-rooms-east-wing.pdf").mkdir()
    told = ended(STOOL, "--out", tmp_path, "--svg", code=1).stderr
    assert "practice-rooms-east-wing.pdf is a folder there; nothing there was changed" in told
    assert leaves(tmp_path) == ["practice-rooms-east-wing.pdf"]


def test_link_to_elsewhere_is_replaced_and_its_target_untouched(tmp_path):
    (tmp_path / "theirs").write_bytes(b"theirs")
    out = tmp_path / "out"
    out.mkdir()
    (out / "practice-rooms-east-wing.pdf").symlink_to(tmp_path / "theirs")
    ended(STOOL, "--out", out, code=0)
    assert (tmp_path / "theirs").read_bytes() == b"theirs"
    assert (out / "practice-rooms-east-wing.pdf").read_bytes().startswith(b"%PDF")


def test_name_of_ten_thousand_letters_is_refused_in_few_words(tmp_path):
    told = refused(job(tmp_path, "o" * 10_000), "--out", tmp_path)
    assert "name: has 10,000 letters, more than 120" in told
    assert len(told) < 200
