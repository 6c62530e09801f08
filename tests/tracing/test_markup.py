"""Hostile or broken XML is refused in words, at once, and nothing is fetched."""

import socket

import pytest

from patternmaker.tracing import markup
from patternmaker.tracing.sketch import read_sketch
from tests.tracing.drawings import MM, XMLNS, svg, told

CIRCLE = '<circle r="50"/>'


@pytest.fixture(autouse=True)
def nothing_is_opened(monkeypatch):
    def refuse(*args, **kwargs):
        pytest.fail("something was opened")

    monkeypatch.setattr("builtins.open", refuse)
    monkeypatch.setattr(socket, "create_connection", refuse)
    monkeypatch.setattr(socket.socket, "connect", refuse)


def doctype(declared: str) -> bytes:
    return f"<!DOCTYPE svg {declared}><svg {XMLNS}>&a;</svg>".encode()


@pytest.mark.parametrize(
    "declared",
    [
        '[<!ENTITY a "aaaa">]',
        '[<!ENTITY a SYSTEM "file:///etc/hostname">]',
        '[<!ENTITY % a SYSTEM "http://localhost/x.dtd"> %a;]',
        '[<!ENTITY a0 "ha"><!ENTITY a "' + "&a0;" * 1000 + '">]',
        "[]",
        '[<!ATTLIST g id CDATA "x">]',
    ],
)
def test_declarations_in_the_file_are_refused_before_they_are_used(declared):
    assert told("a.svg", doctype(declared)).startswith("declares things of its own in its DOCTYPE;")


def test_doctype_that_only_names_the_standard_is_read_and_not_fetched():
    declared = '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://localhost/svg11.dtd">'
    content = b'<?xml version="1.0"?>' + declared.encode() + svg(CIRCLE)
    assert read_sketch("a.svg", content).chains


def test_entity_of_such_a_doctype_is_refused():
    declared = '<!DOCTYPE svg SYSTEM "http://localhost/svg11.dtd">'
    message = told("a.svg", declared.encode() + svg(CIRCLE + "&logo;"))
    assert message.startswith("refers to something that is declared elsewhere;")


@pytest.mark.parametrize(
    ("body", "what"),
    [
        ('<image href="seat.png"/>', "image"),
        ('<image xlink:href="data:image/png;base64,AAAA"/>', "image"),
        ('<use href="http://localhost/a.svg#seat"/>', "use"),
        ('<use xlink:href="other.svg#seat"/>', "use"),
        ('<a href="http://localhost/">' + CIRCLE + "</a>", "a"),
        ('<script href="x.js"/>', "script"),
        ('<x:frame xmlns:x="urn:x" href="file:///etc/hostname"/>', "frame"),
        ('<g style="fill:url(http://localhost/x#a)"/>', "g, in its style"),
        ("<g fill=\"url( 'other.svg#a')\"/>", "g, in its fill"),
        ('<style>@import "x.css";</style>', "style"),
        ("<style>@font-face { src: url(x.woff) }</style>", "style"),
    ],
)
def test_reference_to_another_file_is_refused_with_the_element(body, what):
    assert told("a.svg", svg(f"\n\n{body}")) == (
        f"refers to another file or holds a picture in line 3: {what}; "
        "take that out: only the lines of the drawing itself are read"
    )


def test_style_sheet_of_the_whole_file_is_refused():
    content = b'<?xml-stylesheet href="x.css"?>' + svg(CIRCLE)
    assert "line 1: xml-stylesheet;" in told("a.svg", content)


def test_reference_within_the_file_is_none_to_another():
    body = '<g fill="url(#a)" style="clip-path:url(\'#b\')"><use href=" #c"/></g>' + CIRCLE
    assert read_sketch("a.svg", b"<?other x?>" + svg(body)).chains


def test_ten_thousand_groups_in_each_other_are_refused():
    assert told("a.svg", svg("<g>" * 10_000 + CIRCLE + "</g>" * 10_000)) == (
        "is nested more than 100 deep; save the seat alone, as plain SVG"
    )


def test_as_deep_as_is_read_can_be_drawn():
    deep = markup.DEEPEST - 2
    assert read_sketch("a.svg", svg("<g>" * deep + CIRCLE + "</g>" * deep)).chains


def test_more_elements_than_any_seat_has_are_refused():
    assert told("a.svg", svg("<g/>" * 100_001)).startswith("holds more than 100,000 elements;")


def test_more_attributes_than_any_seat_has_are_refused():
    many = " ".join(f'a{i}=""' for i in range(500_001))
    assert told("a.svg", svg(f"<g {many}/>")).startswith("holds more than 500,000 attributes;")


@pytest.mark.parametrize("code", ["utf-16", "utf-8-sig", "utf-8", "ascii", "latin-1"])
def test_encodings_that_xml_knows_are_read(code):
    content = f'<?xml version="1.0" encoding="{code.removesuffix("-sig")}"?>' + svg(CIRCLE).decode()
    assert read_sketch("a.svg", content.encode(code)).chains


@pytest.mark.parametrize("code", ["utf-7", "none-such", "idna", "utf-32", "cp037", "undefined"])
def test_other_encodings_are_refused(code):
    content = f'<?xml version="1.0" encoding="{code}"?>'.encode() + svg(CIRCLE)
    message = told("a.svg", content)
    assert message.startswith(("is in an encoding that is not known here;", "is broken XML:"))


@pytest.mark.parametrize("share", [0.2, 0.5, 0.9])
def test_file_that_is_cut_off_is_refused_with_the_place(share):
    whole = svg("\n".join([CIRCLE] * 100))
    message = told("a.svg", whole[: int(len(whole) * share)])
    assert message.startswith("is broken XML: ")
    assert ": line " in message


@pytest.mark.parametrize(
    "broken", [f"<svg {MM}", f"<svg {MM}><g></svg>", "<svg a:b='1'/>", "<svg/><svg/>"]
)
def test_broken_xml_is_refused(broken):
    assert told("a.svg", broken.encode()).startswith("is broken XML: ")


def test_braces_in_a_message_of_the_parser_or_a_name_do_no_harm():
    assert told("a.svg", svg('<path id="{x}{0}" d="M0 0 L 1e8 5"/>'))
    assert "{0}" in told("a.svg", svg('<circle r="{0}"/>'))
