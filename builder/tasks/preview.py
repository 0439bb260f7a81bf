"""`stillroom preview`: a studio in the browser while it is written. Ends with Ctrl-C, and leaves nothing behind."""

import argparse
import signal
import sys
from datetime import datetime

from builder.preview import PortTakenError, Preview
from builder.preview.built import Built
from builder.refusals import NotDoneError
from builder.tasks.place import studio_folder
from builder.tasks.told import today
from builder.terminal.consoles import open_console, say
from builder.terminal.findings import tally


def preview(options: argparse.Namespace) -> int:
    """Show the studio until somebody stops it. Raises NotDoneError."""
    folder = studio_folder(options.studio)
    try:
        shown = Preview(folder, lambda: today(options), _tell, options.port)
    except PortTakenError as error:
        raise NotDoneError(str(error)) from None
    say(open_console(), f"Open {shown.address} in a browser. Pages renew themselves when you save; Ctrl-C ends it.")
    sys.stdout.flush()
    before = signal.signal(signal.SIGTERM, _stop)
    try:
        shown.run()
    except KeyboardInterrupt:
        say(open_console(), "Ended; nothing was written.")
    finally:
        signal.signal(signal.SIGTERM, before)
    return 0


def _stop(*_: object) -> None:
    raise KeyboardInterrupt


def _tell(built: Built) -> None:
    said = built.trouble or tally([one.finding for one in built.passages])
    say(open_console(), f"{datetime.now():%H:%M:%S}  {said}")  # noqa: DTZ005  the clock on the wall
    sys.stdout.flush()
