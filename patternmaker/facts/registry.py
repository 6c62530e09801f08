"""How a shape or a cover makes itself known: by a decorator, in a file of its room's folder."""

from __future__ import annotations

import importlib
import importlib.util
import pkgutil
import re
from functools import cached_property
from typing import TYPE_CHECKING, Generic, TypeVar

from patternmaker.facts.fields import Measured, measured

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

M = TypeVar("M", bound=Measured)


class Registry(Generic[M]):
    """The measured classes of one room, by the names that a job file calls them.

    Args:
        room: the package in whose files they stand.
    """

    def __init__(self, room: str) -> None:
        self.room = room
        self._known: dict[str, type[M]] = {}

    def known_as(self, name: str) -> Callable[[type[M]], type[M]]:
        """Return a decorator that makes a class of facts known as ``name``."""

        def known(kind: type[M]) -> type[M]:
            made = measured(kind)
            made.called = name
            self._known[name] = made
            return made

        return known

    def named(self, name: str) -> type[M] | None:
        """Return the class of a name, or None.

        A file that bears the name is read alone: a draft needs few of a room's many.
        """
        if name not in self._known:
            module = f"{self.room}.{re.sub('[^a-z0-9]+', '_', name.lower()).strip('_') or '_'}"
            if importlib.util.find_spec(module):
                importlib.import_module(module)
        return self._known.get(name) or self.all.get(name)

    @cached_property
    def all(self) -> Mapping[str, type[M]]:
        """Every class by name, in alphabetical order, once each file of the room has been read."""
        package = importlib.import_module(self.room)
        for module in sorted(found.name for found in pkgutil.iter_modules(package.__path__)):
            importlib.import_module(f"{self.room}.{module}")
        return dict(sorted(self._known.items()))
