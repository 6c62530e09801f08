"""What a field knows about itself, and the one reader that checks fields by it.

A shape, a cover or a table of allowances is a frozen dataclass whose fields are made by `length`,
`rate`, `angle`, `count`, `text`, `choice`, `switch`, `rows`, `stitch`, `names`, `pull` and `file`.
Each says in a tape user's words what is measured, and carries its default and bounds; `at_most` and
`at_least` bind fields to each other. Constructors, the job file, the help and the tests' strategies
are all driven by these facts.

>>> @measured
... class Board(Measured):
...     width: float = length("left to right", default=both(in_=12, mm=300), least=50)
...     corner: float = length("corner radius", default=both(mm=0), required=False)
...     limits = (at_most("corner", lambda width: width / 2, "half the width", "make it smaller"),)
>>> Board(width=100, corner=60)
Traceback (most recent call last):
...
patternmaker.errors.Refusals: corner: 60 mm is more than half the width (50 mm); make it smaller
"""

from patternmaker.facts.fields import (
    HAIR,
    LONGEST,
    Default,
    Fact,
    Limit,
    Measured,
    angle,
    at_least,
    at_most,
    both,
    both_rows,
    choice,
    count,
    facts_of,
    file,
    length,
    measured,
    mistakes,
    names,
    pull,
    rate,
    rows,
    stitch,
    switch,
    text,
    unknown,
)
from patternmaker.facts.pulls import STRETCH_TEST, Pull, StretchTest
from patternmaker.facts.quantities import (
    ANGLE,
    COUNT,
    FILE,
    LENGTH,
    NAMES,
    RATE,
    STITCH,
    SWITCH,
    TEXT,
    Angle,
    Count,
    File,
    Found,
    Length,
    Names,
    Quantity,
    Rate,
    Rows,
    Stitch,
    Switch,
    Text,
)
from patternmaker.facts.reading import Reading
from patternmaker.facts.registry import Registry

__all__ = [
    "ANGLE",
    "COUNT",
    "FILE",
    "HAIR",
    "LENGTH",
    "LONGEST",
    "NAMES",
    "RATE",
    "STITCH",
    "STRETCH_TEST",
    "SWITCH",
    "TEXT",
    "Angle",
    "Count",
    "Default",
    "Fact",
    "File",
    "Found",
    "Length",
    "Limit",
    "Measured",
    "Names",
    "Pull",
    "Quantity",
    "Rate",
    "Reading",
    "Registry",
    "Rows",
    "Stitch",
    "StretchTest",
    "Switch",
    "Text",
    "angle",
    "at_least",
    "at_most",
    "both",
    "both_rows",
    "choice",
    "count",
    "facts_of",
    "file",
    "length",
    "measured",
    "mistakes",
    "names",
    "pull",
    "rate",
    "rows",
    "stitch",
    "switch",
    "text",
    "unknown",
]
