"""Names of files and folders that every system takes, from whatever a job is called."""

from __future__ import annotations

import unicodedata

LONGEST = 80  # letters; every file system takes as many, whatever ending is added
# Device names that Windows keeps for itself (Microsoft, "Naming Files, Paths, and Namespaces").
RESERVED = {"con", "prn", "aux", "nul", *(f"{port}{i}" for port in ("com", "lpt")
            for i in "0123456789¹²³")}  # fmt: skip


def stem_of(name: str) -> str:
    """Return the name that a job's files take: its letters and figures, joined by hyphens.

    >>> stem_of("Practice rooms, east wing"), stem_of("../a/b"), stem_of("NUL"), stem_of("?!")
    ('practice-rooms-east-wing', 'a-b', 'nul-job', 'job')
    """
    folded = unicodedata.normalize("NFC", name.lower())
    kept = "".join(sign if _is_of_a_word(sign) else " " for sign in folded)
    stem = "-".join(kept.split())
    while len(stem.encode()) > LONGEST:
        stem = stem[:-1]
    stem = stem.strip("-") or "job"
    return f"{stem}-job" if stem in RESERVED else stem


def _is_of_a_word(sign: str) -> bool:
    """Return whether a sign is a letter, a figure, or a mark that belongs to one."""
    return sign.isalnum() or unicodedata.category(sign).startswith("M")
