"""Work that makes thousands of values which all stay, and none that name each other in a ring.

Decided: no rubbish is looked for while a studio is read, worked out and checked. Why: there is none, and looking took a twelfth of a check
of 48 classes and a seventh of one of 240, more with each class; the memory stayed the same. What has been made is not looked through
afterwards either.
"""

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def uncollected() -> Iterator[None]:
    """Look for no rubbish meanwhile; what nothing names any more goes at once all the same."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.freeze()
            gc.enable()
