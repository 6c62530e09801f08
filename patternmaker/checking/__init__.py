"""Prints read again, by a reader that shares nothing with writers, and held to the model."""
