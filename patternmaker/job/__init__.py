"""The job file: what is to be covered, read with every mistake told at once."""

from patternmaker.job.model import Job, Seat
from patternmaker.job.reading import read_job
from patternmaker.job.source import load_job

__all__ = ["Job", "Seat", "load_job", "read_job"]
