"""Papers and the PDF file against the standards, read back with other people's libraries."""

from collections.abc import Iterator
from io import BytesIO
from typing import Any

import pdfplumber
import pypdf
import pytest
from pypdf.generic import ArrayObject, NameObject
from reportlab.lib import pagesizes
from reportlab.lib.units import mm as points_per_mm

from patternmaker.sheets.papers import PAPERS, read_paper
from patternmaker.units import Unit
from patternmaker.writers.pdf import POINTS_PER_INCH
from tests.paper.raster import rendered
from tests.paper.samples import JOBS, made

# ISO 216, series A, mm.
ISO_216 = {
    "A4": (210, 297),
    "A3": (297, 420),
    "A2": (420, 594),
    "A1": (594, 841),
    "A0": (841, 1189),
}
# ASME Y14.1 sizes A and B (Letter and Tabloid here); Legal from drafting-standards tables; in.
INCHES = {"Letter": (8.5, 11), "Legal": (8.5, 14), "Tabloid": (11, 17)}
SIZES = ISO_216 | {name: (w * 25.4, h * 25.4) for name, (w, h) in INCHES.items()}
REPORTLAB = {
    "A4": pagesizes.A4, "A3": pagesizes.A3, "A2": pagesizes.A2, "A1": pagesizes.A1,
    "A0": pagesizes.A0, "Letter": pagesizes.LETTER, "Legal": pagesizes.LEGAL,
    "Tabloid": pagesizes.TABLOID,
}  # fmt: skip


@pytest.mark.parametrize(("name", "size"), SIZES.items())
def test_papers_have_their_standard_sizes(name, size):
    paper = read_paper(name, Unit.MM)
    assert (paper.width, paper.height) == pytest.approx(size, abs=1e-9)


def test_no_other_papers_are_known_by_name():
    assert {paper.name for paper in PAPERS.values()} == set(SIZES)


@pytest.mark.parametrize(("name", "size"), REPORTLAB.items())
def test_papers_are_those_of_a_second_table(name, size):
    """reportlab.lib.pagesizes, in points."""
    paper = read_paper(name, Unit.MM)
    inner = sorted(side / points_per_mm for side in size)
    assert (paper.width, paper.height) == pytest.approx(inner, abs=0.001)


def test_american_sizes_in_millimetres():
    """Letter 215.9 x 279.4, Legal 355.6, Tabloid 279.4 x 431.8: drafting-standards table."""
    letter, tabloid = read_paper("letter", Unit.IN), read_paper("tabloid", Unit.IN)
    assert (letter.width, letter.height) == pytest.approx((215.9, 279.4))
    assert read_paper("legal", Unit.IN).height == pytest.approx(355.6)
    assert (tabloid.width, tabloid.height) == pytest.approx((279.4, 431.8))


def test_a_point_is_a_seventy_second_of_an_inch():
    """ISO 32000-1, 8.3.2.3: default user space."""
    assert POINTS_PER_INCH == 72


@pytest.fixture(params=JOBS)
def pdf(request):
    return pypdf.PdfReader(BytesIO(made(request.param, whole=False).pdf))


def test_viewer_is_asked_not_to_scale(pdf):
    """ISO 32000-1, Table 150: PrintScaling."""
    assert pdf.trailer["/Root"]["/ViewerPreferences"]["/PrintScaling"] == "/None"


def test_header_says_what_the_viewer_preferences_need(pdf):
    """PrintScaling came with PDF 1.6; ISO 32000-1 is 1.7."""
    assert pdf.pdf_header == "%PDF-1.7"


def test_unit_is_never_changed(pdf):
    """UserUnit (ISO 32000-1, 8.3.2.3) is not honoured by every reader."""
    assert all("/UserUnit" not in page for page in pdf.pages)
    assert all(max(page.mediabox.width, page.mediabox.height) <= 14_400 for page in pdf.pages)


@pytest.mark.parametrize(
    ("job", "paper", "size"),
    [("round-piano-stool", None, (8.5 * 72, 11 * 72)), ("organ-bench", None, (595.2756, 841.8898)),
     ("organ-bench", "A2", (1190.551, 1683.780)), ("organ-bench", "18x24in", (18 * 72, 24 * 72))],
)  # fmt: skip
def test_pages_are_of_the_paper_asked_for(job, paper, size):
    """Letter is 612 x 792 points, A4 210 x 297 mm; no box but the media box, and no turning."""
    reader = pypdf.PdfReader(BytesIO(made(job, paper, whole=False).pdf))
    for page in reader.pages:
        box = sorted((float(page.mediabox.width), float(page.mediabox.height)))
        assert box == pytest.approx(sorted(size), abs=0.001)
        assert page.cropbox == page.mediabox
        assert page.rotation == 0


def _fonts(resources: Any) -> Iterator[Any]:
    for font in resources.get_object().get("/Font", {}).values():
        yield font.get_object()
    for form in resources.get_object().get("/XObject", {}).values():
        yield from _fonts(form.get_object()["/Resources"])


def test_every_font_is_embedded_as_a_subset_and_can_be_read_back(pdf):
    """ISO 32000-1, 9.9 (FontFile2), 9.6.4 (subset tag), 9.10.3 (ToUnicode)."""
    fonts = {
        str(font["/BaseFont"]): font for page in pdf.pages for font in _fonts(page["/Resources"])
    }
    assert len(fonts) == 2
    for name, font in fonts.items():
        assert name[7] == "+", name
        assert len(font["/FontDescriptor"]["/FontFile2"].get_data()) > 1000
        assert "/ToUnicode" in font


def test_forms_hold_the_whole_plate():
    """A form's BBox clips it (ISO 32000-1, 8.10.1): nothing drawn on a plate lies outside."""
    printed = made("music-school", whole=True)
    reader = printed.book.paper.pdf
    for sheets in printed.book.plates.values():
        name = sheets[0].placed.form.split()[0]
        page: Any = reader.pages[sheets[0].page.number]
        box = [float(side) * 25.4 / 72 for side in page["/Resources"]["/XObject"][name]["/BBox"]]
        for form, _, curve in printed.book.lines:
            if form == sheets[0].placed.form:
                assert curve.box[0] > -0.01
                assert curve.box[1] > -0.01
                assert curve.box[2] < box[2] + 0.01
                assert curve.box[3] < box[3] + 0.01


def test_bookmarks_lead_to_the_overview_every_card_and_every_sheet_of_a_piece():
    """ISO 32000-1, 12.3.3 and 12.4.2: a piece's sheets, by the labels that a print dialog takes."""
    printed = made("music-school", whole=False)
    reader = printed.book.paper.pdf
    entries: list[Any] = list(reader.outline)
    flat = [entry for entry in entries if not isinstance(entry, list)]
    by_number = {sheet.number: sheet.page.number for sheet in printed.book.sheets}
    assert [reader.page_labels[page] for page in by_number.values()] == list(map(str, by_number))
    job = printed.figures["job"]
    titles = [f"{seat['name']}: {piece['name']}" for seat in printed.figures["seats"]
              for piece in seat["pieces"]]  # fmt: skip
    assert [entry.title for entry in flat if entry.title in titles] == titles
    below = {
        entry.title: [*after] if isinstance(after, list) else [entry]
        for entry, after in zip(entries, [*entries[1:], None], strict=True)
        if not isinstance(entry, list)
    }
    heads = {
        sheet.page.number: next(w.text for w in sheet.page.words if w.text.startswith(job))
        for sheet in printed.book.sheets
    }
    for title in titles:
        told = {reader.get_destination_page_number(each) or 0 for each in below[title]}
        assert told >= {page for page, head in heads.items() if title in head}
        assert all(title in heads[page] or heads[page].endswith("…") for page in told)
    cards = [str(entry.title) for entry in flat if str(entry.title).startswith("Bench card: ")]
    assert cards == [f"Bench card: {seat['name']}" for seat in printed.figures["seats"]]


def test_lines_as_a_second_reader_sees_them():
    """pdfplumber finds the scale bars 100 mm long."""
    printed = made("organ-bench", whole=False)
    number = printed.book.sheets[0].page.number
    with pdfplumber.open(BytesIO(printed.pdf)) as document:
        page = document.pages[number]
        spans = [
            (float(each["width"]) / points_per_mm, float(each["height"]) / points_per_mm)
            for each in [*page.lines, *page.curves, *page.rects]
        ]
    for upright in (False, True):
        assert any(
            max(span) == pytest.approx(100, abs=0.02) and min(span) < 8
            for span in spans
            if (span[1] > span[0]) is upright
        )


def test_layers_switch_what_is_drawn():
    """ISO 32000-1, 8.11.4: every layer is listed, on, and used by the plates alone."""
    printed = made("organ-bench", whole=False)
    root: Any = printed.book.paper.pdf.trailer["/Root"]
    groups = [each.get_object()["/Name"] for each in root["/OCProperties"]["/OCGs"]]
    assert sorted(groups) == ["Cut lines", "Marks", "Notes", "Sew and fold lines"]
    sheet = printed.book.sheets[0]
    page: Any = printed.book.paper.pdf.pages[sheet.page.number]
    form = page["/Resources"]["/XObject"][sheet.placed.form.split()[0]]
    names = {each.get_object()["/Name"] for each in form["/Resources"]["/Properties"].values()}
    assert names <= set(groups)
    assert form.get_data().count(b"BDC") == form.get_data().count(b"EMC") > 3


@pytest.mark.parametrize("name", ["Cut lines", "Notes"])
def test_layer_that_is_switched_off_leaves_no_ink(name):
    """pdfium, a viewer's own renderer, told to hide it (8.11.4.3, OFF)."""
    printed = made("organ-bench", whole=False)
    writer = pypdf.PdfWriter(clone_from=BytesIO(printed.pdf))
    layers: Any = writer.root_object["/OCProperties"]
    hidden = [each for each in layers["/OCGs"] if each.get_object()["/Name"] == name]
    layers["/D"][NameObject("/OFF")] = ArrayObject(hidden)
    content = BytesIO()
    writer.write(content)
    gone = 0.0
    for sheet in next(iter(printed.book.plates.values())):
        before, after = (
            rendered(each, sheet.page, 72).ink for each in (printed.pdf, content.getvalue())
        )
        darker = after > before + 0.01  # a grey line that crossed a black one
        assert darker.sum() < 50
        gone += float((before - after).sum())
    assert gone > 100
