"""Whatever lies under the name of a print, it is told in words what is wrong with it."""

import contextlib
import json
from io import BytesIO

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pypdf.generic import NameObject
from reportlab.pdfgen.canvas import Canvas

from patternmaker.checking.check import LARGEST, Unchecked, checked
from patternmaker.errors import Refusals
from tests.checking.prints import held, page_rewritten, pdf, sheets, spoilt

STOOL = "round-piano-stool"


def refused(content: bytes, folder) -> str:
    with pytest.raises(Unchecked) as caught:
        held(content, folder)
    (mistake,) = caught.value.mistakes
    return str(mistake)


@pytest.mark.parametrize("content", [b"", b"hello", b"\x00" * 5000, b"name = 'A'\n"])
def test_file_that_is_no_pdf(content, tmp_path):
    says = "print.pdf: is not a PDF; name the PDF that patternmaker wrote"
    assert refused(content, tmp_path) == says


def test_file_that_is_not_there_and_folder(tmp_path):
    with pytest.raises(Unchecked, match=r"none\.pdf: is not there"):
        checked(tmp_path / "none.pdf")
    with pytest.raises(Unchecked, match="is a folder"):
        checked(tmp_path)


def test_hundred_megabytes_of_nonsense_are_refused_by_their_size(tmp_path):
    path = tmp_path / "huge.pdf"
    with path.open("wb") as file:
        file.write(b"%PDF-1.7\n")
        file.truncate(100_000_000)
    with pytest.raises(Unchecked, match=f"has 100,000,000 bytes, more than {LARGEST:,}"):
        checked(path)


@pytest.mark.parametrize("share", [0.001, 0.1, 0.5, 0.9, 0.99])
def test_file_that_was_cut_short(share, tmp_path):
    content = pdf(STOOL)
    says = refused(content[: int(len(content) * share)], tmp_path)
    assert "is damaged" in says or "carries no job" in says or "stripped of the job" in says


def test_print_that_is_locked(tmp_path):
    content = spoilt(pdf(STOOL), lambda writer: writer.encrypt("secret", algorithm="RC4-128"))
    assert "is locked by a password; keep a copy without one" in refused(content, tmp_path)
    open_to_all = spoilt(pdf(STOOL), lambda writer: writer.encrypt("", "x", algorithm="RC4-128"))
    assert "is locked by a password" in refused(open_to_all, tmp_path)


def test_pdf_of_another_program(tmp_path):
    out = BytesIO()
    canvas = Canvas(out)
    canvas.drawString(100, 100, "Menu")
    canvas.save()
    says = refused(out.getvalue(), tmp_path)
    assert "carries no job: patternmaker did not write it, or a viewer or printer driver" in says


def test_print_without_its_job(tmp_path):
    def spoil(writer):
        del writer.root_object["/Names"]

    assert "drafted by an earlier version, or stripped" in refused(
        spoilt(pdf(STOOL), spoil), tmp_path
    )


def enclosing(content: bytes, change) -> bytes:
    def spoil(writer):
        names = writer.root_object["/Names"]["/EmbeddedFiles"]["/Names"]
        stream = names[1].get_object()["/EF"]["/F"].get_object()
        stream.set_data(change(stream.get_data()))

    return spoilt(content, spoil)


def test_print_of_another_version(tmp_path):
    def older(data: bytes) -> bytes:
        return json.dumps({**json.loads(data), "patternmaker": "0.0.9"}).encode()

    says = refused(enclosing(pdf(STOOL), older), tmp_path)
    assert "it was drafted by version 0.0.9, and this is" in says
    assert "draft the job anew, and check that" in says


def test_job_that_was_changed_in_the_file_is_not_what_was_drawn(tmp_path):
    def larger(data: bytes) -> bytes:
        return data.replace(b'"12 1/2"', b'"12 3/4"')

    assert held(enclosing(pdf(STOOL), larger), tmp_path).faults


def test_job_that_was_spoilt_in_the_file_is_refused_by_field(tmp_path):
    def negative(data: bytes) -> bytes:
        return data.replace(b'"12 1/2"', b'"-2"')

    with pytest.raises(Refusals, match=r"print\.pdf\.seat 1 .*outline\.diameter"):
        held(enclosing(pdf(STOOL), negative), tmp_path)


@pytest.mark.parametrize(
    "drawing",
    [b"1 0 0 rg ) (", b"1 2 l S", b"Q", b"/None Do", b"1 cm", b"(", b"] 0 d", b"BI /W 1 ID x",
     b"/x w", b"1 1 re", b"0 0 m 1000000000 0 l S", b"1 0 0 0 0 0 cm /FormXob.f0 Do",
     b"999999 0 0 999999 0 0 cm 0 0 m 9 9 l S", b"q " * 5 + b"Q " * 6],
)  # fmt: skip
def test_drawing_that_breaks_off_is_damage(drawing, tmp_path):
    def spoil(writer):
        page_rewritten(sheets(writer)[0], lambda stream: stream + b"\n" + drawing)

    assert "print.pdf: is damaged" in refused(spoilt(pdf(STOOL), spoil), tmp_path)


def test_form_that_draws_itself_ends(tmp_path):
    def spoil(writer):
        page = sheets(writer)[0]
        forms = page["/Resources"]["/XObject"]
        form = next(iter(forms.values())).get_object()
        form["/Resources"][NameObject("/XObject")] = forms
        form.set_data(form.get_data() + b"".join(b" %s Do" % name.encode() for name in forms))

    assert "forms within forms" in refused(spoilt(pdf(STOOL), spoil), tmp_path)


@settings(max_examples=40)
@given(st.lists(st.tuples(st.floats(0, 1, exclude_max=True), st.integers(0, 255)), min_size=1,
                max_size=30))  # fmt: skip
def test_bytes_that_were_changed_never_end_in_a_traceback(tmp_path_factory, changes):
    content = bytearray(pdf(STOOL))
    for share, value in changes:
        content[int(share * len(content))] = value
    with contextlib.suppress(Unchecked):
        held(bytes(content), tmp_path_factory.mktemp("damage"))
