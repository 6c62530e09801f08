"""A job in, all its files and the summary out."""

from patternmaker.drafting.draft import Draft, Options, draft

__all__ = ["Draft", "Options", "draft"]
