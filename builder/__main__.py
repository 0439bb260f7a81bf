"""So that `python -m builder` works like the console command."""

import sys

from builder.cli import main

if __name__ == "__main__":
    sys.exit(main())
