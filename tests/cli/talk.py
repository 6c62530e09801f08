"""Somebody who answers questions from a list."""

from dataclasses import dataclass, field


@dataclass
class Answering:
    """Gives the answers of a list one after another, and keeps what is said.

    A question beyond the last answer meets the end of the answers.
    """

    answers: list[str]
    braille: bool = True
    said: list[str] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)

    def say(self, text: str) -> None:
        self.said.append(text)

    def ask(self, prompt: str) -> str:
        self.asked.append(prompt.strip())
        if not self.answers:
            raise EOFError
        return self.answers.pop(0)

    @property
    def heard(self) -> str:
        return "\n".join(self.said)
