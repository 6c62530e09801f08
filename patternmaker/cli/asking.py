"""Asking for the measurements of a seat one by one, with a picture of where each is taken."""

from __future__ import annotations

import textwrap
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Any, Protocol

from patternmaker.cli.answers import Answer, offered, read, read_rows, wrong
from patternmaker.cli.pictures import SMALL, picture
from patternmaker.drawing.measures import letters_of, usual
from patternmaker.errors import Refusal, Refusals
from patternmaker.facts import Rows, facts_of
from patternmaker.facts.telling import bounds_of, words_of

if TYPE_CHECKING:
    from pathlib import Path

    from patternmaker.facts import Fact, Measured
    from patternmaker.outlines import Outline
    from patternmaker.units import Unit

Show = Callable[[str, Mapping[str, Any]], list[str]]
"""Returns a picture for a field, given the values that are known."""
Check = Callable[[Mapping[str, "Answer"]], None]
"""Raises `Refusals` if all the answers together won't do."""

WIDE = 76  # letters in a line
BACK = "back"
HOW = f"Enter takes what stands in brackets; {BACK} goes to the question before."


class Talk(Protocol):
    """Somebody who is told things, and answers."""

    braille: bool
    """Whether pictures of braille dots can be shown."""

    def say(self, text: str) -> None:
        """Tell a line or more."""

    def ask(self, prompt: str) -> str:
        """Return the answer to a question, without its line's end; EOFError where there is none."""


def _nothing(name: str, known: Mapping[str, Any]) -> list[str]:
    del name, known
    return []


def _anything(answers: Mapping[str, Answer]) -> None:
    del answers


@dataclass
class Questions:
    """Asks for the fields of one kind, in their order.

    Args:
        talk: with whom.
        kind: whose fields.
        unit: of bare numbers.
        folder: in which the files lie that are named.
        fields: which of them, if not all.
        defaults: of fields whose facts have none.
        show: returns a picture for a field, to be told above its question.
        check: raises `Refusals` if all the answers together won't do.
    """

    talk: Talk
    kind: type[Measured]
    unit: Unit
    folder: Path
    fields: tuple[str, ...] = ()
    defaults: Mapping[str, Answer] = field(default_factory=dict)
    show: Show = _nothing
    check: Check = _anything
    answers: dict[str, Answer] = field(default_factory=dict)

    def asked(self) -> Mapping[str, Answer]:
        """Return the answer to each question, once all of them may stand together."""
        facts = facts_of(self.kind)
        fields = self.fields or tuple(facts)
        at = 0
        while at < len(fields):
            answer = self._question(fields[at], facts[fields[at]])
            if answer is None:
                at = max(0, at - 1)
                self.answers.pop(fields[at], None)
                continue
            self.answers[fields[at]] = answer
            at += self._may_stand(last=at == len(fields) - 1)
        return self.answers

    def _may_stand(self, *, last: bool) -> bool:
        try:
            if last:
                self.check(self.answers)
        except (Refusal, Refusals) as refused:
            self._refuse([refused] if isinstance(refused, Refusal) else refused)
            return False
        return True

    @property
    def _known(self) -> dict[str, Any]:
        return {name: answer.value for name, answer in self.answers.items()}

    def _question(self, name: str, fact: Fact) -> Answer | None:
        """Return the answer to a question, asked until it will do; None to go back."""
        self.answers.pop(name, None)
        default = self.defaults.get(name)
        default = default or offered(self.kind, name, fact, self._known, self.unit)
        self._pose(name, fact)
        while True:
            try:
                answer = self._answer(name, fact, default)
            except Refusal as mistake:
                self._refuse([mistake.at(name)])
                continue
            if answer is None:
                return None
            if not (mistakes := wrong(self.kind, name, answer.value, self._known)):
                return answer
            self._refuse(mistakes)

    def _pose(self, name: str, fact: Fact) -> None:
        bounds = bounds_of(self.kind, name, self.unit, self._known)
        text = "; ".join(filter(None, (f"{name}: {words_of(fact)}", bounds)))
        self.talk.say("\n".join(["", *self.show(name, self._known), *textwrap.wrap(text, WIDE)]))

    def _answer(self, name: str, fact: Fact, default: Answer | None) -> Answer | None:
        if isinstance(fact.quantity, Rows):
            return self._rows(fact, default)
        typed = self.talk.ask(f"  {name} [{self._shown(fact, default)}] ").strip()
        if typed.casefold() == BACK:
            return None
        if typed:
            return read(fact, typed, self.unit, self.folder)
        if default is not None:
            return default
        if fact.required:
            raise Refusal("", "is missing", mend=f"give {fact.words}")
        return Answer(fact.default.in_(self.unit), "")

    def _shown(self, fact: Fact, default: Answer | None) -> str:
        if default is None:
            return "" if fact.required else "none"
        return fact.quantity.show(default.value, self.unit).strip("'")

    def _rows(self, fact: Fact, default: Answer | None) -> Answer | None:
        """Return rows as they are typed, until an empty line; at once empty takes the default."""
        self.talk.say("  A row on each line, its figures parted by commas; an empty line ends it.")
        if default is not None:
            self.talk.say(f"  An empty line at once takes {self._shown(fact, default)}")
        typed: list[str] = []
        while line := self.talk.ask(f"  row {len(typed) + 1}: ").strip():
            if line.casefold() == BACK:
                return None
            try:
                self._check_row(fact, [*typed, line])
            except Refusal as mistake:
                self._refuse([mistake])
                continue
            typed.append(line)
        if not typed and default is not None:
            return default
        return read_rows(fact, typed, self.unit)

    def _check_row(self, fact: Fact, typed: list[str]) -> None:
        rows = read_rows(fact, typed, self.unit).value
        if mistake := replace(fact, least=None, most=None).mistake("rows", rows):
            raise mistake

    def _refuse(self, mistakes: Refusals | list[Refusal]) -> None:
        for mistake in mistakes:
            self.talk.say(f"  {mistake.told(self.unit)}")


def pictures(kind: type[Outline], unit: Unit, *, braille: bool) -> Show:
    """Return what shows where a field of a shape is taken, on a seat as far as it is known."""

    def show(name: str, known: Mapping[str, Any]) -> list[str]:
        seat = _known_seat(kind, unit, known)
        if seat is None or name not in letters_of(kind, seat):
            return []
        return picture(seat, SMALL, only=name, braille=braille)

    return show


def _known_seat(kind: type[Outline], unit: Unit, known: Mapping[str, Any]) -> Outline | None:
    """Return the usual seat with what is known put in, where that may stand beside the rest."""
    seat = usual(kind, unit)
    if seat is None:
        return None
    try:
        return kind(**{**vars(seat), **known})
    except Refusals:
        return seat
