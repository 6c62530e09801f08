"""A second look at what was printed: reads the files back, sharing no code with patternmaker."""
