"""Beginning a job: a file to fill in, or one that is filled in by answering questions."""

from __future__ import annotations

import shlex
import tomllib
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, cast

from patternmaker.cli.answers import Answer
from patternmaker.cli.asking import HOW, Questions, pictures
from patternmaker.cli.pictures import picture
from patternmaker.cli.shape import sizes
from patternmaker.cli.shapes import found
from patternmaker.drafting.names import stem_of
from patternmaker.drafting.staging import put_in_place
from patternmaker.drawing.measures import letters_of, usual
from patternmaker.drawing.shapes import purpose
from patternmaker.errors import Refusal, Refusals
from patternmaker.facts import facts_of
from patternmaker.job.model import JobFacts, SeatFacts
from patternmaker.job.reading import read_job
from patternmaker.job.writing import Beginning, usual_cover, written
from patternmaker.units import Unit, show_length

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from patternmaker.cli.asking import Talk
    from patternmaker.covers import Cover
    from patternmaker.facts import Measured
    from patternmaker.job import Seat
    from patternmaker.outlines import Outline

ENDED = Refusal(
    "start", "the answers ended before the last question",
    mend="answer each of them, or let --no-ask write a file to fill in",
)  # fmt: skip


def begun(
    words: Sequence[str],
    unit: Unit | None,
    out: Path | None,
    *,
    over: bool,
    talk: Talk | None,
    cover: str | None = None,
) -> Path:
    """Write a job file for a shape, and return its path.

    Args:
        words: the name of the shape.
        unit: of its lengths; millimetres, or what is answered, if not given.
        out: where to write it; a file named after the shape if not given.
        over: whether an earlier file may be replaced.
        talk: who is asked for the measurements; the defaults stand if nobody is.
        cover: the name of the cover, if it is not the usual one.

    Raises:
        Refusals: if there is no such shape, the file is there already, or the answers end.
        OutputFault: if it can't be written.
    """
    kind = cast("type[Outline]", found(words, kind="shape").made)
    covering = cast("type[Cover]", found([cover], kind="cover").made) if cover else usual_cover()
    path = out or Path(f"{stem_of(kind.called)}.toml")
    _check_free(path, over=over)
    if talk is None:
        beginning = _of_defaults(kind, covering, unit or Unit.MM)
    else:
        try:
            beginning = _Interview(talk, kind, covering, path.parent).held(unit)
        except EOFError:
            raise Refusals([ENDED]) from None
    _check_free(path, over=over)
    return put_in_place(path.parent, {path.name: written(beginning).encode()})[0]


def next_step(path: Path) -> str:
    """Return what to say of a file once it is written."""
    return f"Written: {path}\nWhen its measurements are yours: patternmaker draft {_quoted(path)}"


def _quoted(path: Path) -> str:
    return shlex.quote(str(path))


def _check_free(path: Path, *, over: bool) -> None:
    """Refuse a path at which no file can be begun.

    Raises:
        Refusals: if it names none, or one that is there and must not be replaced.
    """
    if not path.name or path.is_dir():
        says, mend = "{value} is a folder", "name a file in it, such as stool.toml"
    elif (path.exists() or path.is_symlink()) and not over:
        says, mend = "{value} is there already", "give another name, or allow it with --replace"
    else:
        return
    raise Refusals([Refusal("out", says, value=path, mend=mend)])


def _of_defaults(kind: type[Outline], cover: type[Cover], unit: Unit) -> Beginning:
    seat = usual(kind, unit)
    name = f"{kind.called[:1].upper()}{kind.called[1:]}"
    shown = tuple(picture(seat, braille=False)) if seat else ()
    letters = letters_of(kind, seat)
    return Beginning(kind, cover, unit, name, letters=letters, picture=shown)


@dataclass(frozen=True)
class _Interview:
    """Asks for everything that a job must know of one seat."""

    talk: Talk
    kind: type[Outline]
    cover: type[Cover]
    folder: Path

    def held(self, unit: Unit | None) -> Beginning:
        self.talk.say(f"{self.kind.called}: {purpose(self.kind)}\n{HOW}")
        unit = unit or self._unit()
        begun = _of_defaults(self.kind, self.cover, unit)
        show = pictures(self.kind, unit, braille=self.talk.braille)
        begun = self._asked(self.kind, begun, show=show)
        if needed := tuple(n for n, fact in facts_of(self.cover).items() if fact.required):
            begun = self._asked(self.cover, begun, fields=needed)
        seat = self._seat(begun)
        self._tell(seat, unit)
        begun = replace(begun, picture=tuple(picture(seat.outline, braille=False)),
                        letters=letters_of(self.kind, seat.outline))  # fmt: skip
        return self._named(begun)

    def _questions(self, kind: type[Measured], unit: Unit, **more: Any) -> Mapping[str, Answer]:
        return Questions(self.talk, kind, unit, self.folder, **more).asked()

    def _unit(self) -> Unit:
        usual_unit = {"units": Answer(Unit.MM.value, "")}
        asked = self._questions(JobFacts, Unit.MM, fields=("units",), defaults=usual_unit)
        return Unit(asked["units"].value)

    def _asked(self, kind: type[Measured], begun: Beginning, **more: Any) -> Beginning:
        """Return what is known once the fields of the shape, or of the cover, have been asked."""

        def check(answers: Mapping[str, Answer]) -> None:
            self._seat(_with(begun, kind, answers))

        return _with(begun, kind, self._questions(kind, begun.unit, check=check, **more))

    def _seat(self, begun: Beginning) -> Seat:
        return read_job(tomllib.loads(written(begun)), self.folder).seats[0]

    def _tell(self, seat: Seat, unit: Unit) -> None:
        shown = picture(seat.outline, braille=self.talk.braille)
        first = seat.pattern().pieces[0]
        wide = show_length(first.cut.width, unit, bare=True)
        cut = f"{wide} x {show_length(first.cut.height, unit)}"
        says = f"This seat: {sizes(seat.outline.contour(), unit)}."
        told = f"Its {first.name} is cut {cut} ({first.material.title})."
        more = "What else can be said of it stands in the file, to be filled in."
        self.talk.say("\n".join(["", *shown, "", says, told, more]))

    def _named(self, begun: Beginning) -> Beginning:
        usual_name = {"name": Answer(begun.name, "")}
        fields = ("name", "make")
        asked = self._questions(SeatFacts, begun.unit, fields=fields, defaults=usual_name)
        return replace(begun, name=asked["name"].value, make=asked["make"].value)


def _with(begun: Beginning, kind: type[Measured], answers: Mapping[str, Answer]) -> Beginning:
    """Return what is known with the answers for the shape, or for the cover, put in."""
    given = {name: answer.source for name, answer in answers.items()}
    if kind is begun.shape:
        return replace(begun, given=given)
    return replace(begun, covering=given)
