"""Lets `python -m configurator` do what the installed command does."""

import sys

from configurator.cli import main

if __name__ == "__main__":
    sys.exit(main())
