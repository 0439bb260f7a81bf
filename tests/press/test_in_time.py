"""What comes to no end is ended, whatever it does, and what ends by itself is left alone."""

import threading
import time
from contextlib import suppress

import pytest

from builder.press.in_time import LOOKS_EACH, TooLongError, at_most


def work_on() -> None:
    while True:
        with suppress(Exception):
            sum(range(1000))


def test_work_without_end_is_ended() -> None:
    begun = time.process_time()
    with pytest.raises(TooLongError), at_most(0.1):
        work_on()
    assert time.process_time() - begun < 5


def test_work_in_another_thread_is_ended_there() -> None:
    told: list[str] = []

    def work() -> None:
        try:
            with at_most(0):
                work_on()
        except TooLongError:
            told.append("ended")

    thread = threading.Thread(target=work)
    thread.start()
    thread.join()
    assert told == ["ended"]


# Whoever waits takes no time of the processor.
def test_what_waits_is_not_ended_and_nothing_looks_on_after_it() -> None:
    before = threading.active_count()
    with at_most(LOOKS_EACH):
        time.sleep(3 * LOOKS_EACH)
    assert threading.active_count() == before
