"""Run the program as ``python -m patternmaker``."""

from patternmaker.cli import main

if __name__ == "__main__":
    main()
