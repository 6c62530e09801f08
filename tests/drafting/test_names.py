"""Names of files that every system takes."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternmaker.drafting.names import LONGEST, RESERVED, stem_of


@pytest.mark.parametrize(
    ("name", "stem"),
    [
        ("Practice rooms, east wing", "practice-rooms-east-wing"),
        ("../../a/b\\c", "a-b-c"),
        ("..", "job"),
        ("", "job"),
        ("NUL", "nul-job"),
        ("com1", "com1-job"),
        ("COM¹", "com¹-job"),
        ("nul.pdf", "nul-pdf"),
        ("[red] {x}", "red-x"),
        ("Übungsräume", "übungsräume"),
        ("U\u0308bung", "\u00fcbung"),
        ("İstanbul", "i̇stanbul"),
        ("हिन्दी कक्षा", "हिन्दी-कक्षा"),
        ("椅子", "椅子"),
        ("a" * 200, "a" * LONGEST),
        ("椅" * 200, "椅" * (LONGEST // 3)),
        ("a" * 79 + " b", "a" * 79),
    ],
)
def test_job_becomes_the_name_of_a_file(name, stem):
    assert stem_of(name) == stem


@given(st.text())
def test_no_job_leads_out_of_its_folder_or_to_a_device(name):
    stem = stem_of(name)
    assert stem
    assert len(stem.encode()) <= LONGEST + len("-job")
    assert not set(stem) & set('/\\:*?"<>|.\0\n ')
    assert stem not in RESERVED
    assert not stem.startswith("-")
    assert not stem.endswith("-")


@given(st.text())
def test_name_of_a_file_stays_as_it_is(name):
    assert stem_of(stem_of(name)) == stem_of(name)
