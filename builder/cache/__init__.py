"""What took long to make, in a compiled form in the user's cache folder. What is not found there is made anew, without a word.

Decided: values are pickled, so that nobody else may write where they lie: the folder is the user's own and closed to all others, and is
looked at each time. Where a system does not tell (Windows), nothing is kept. Why: a pickle can run any command, and change any figure.
"""

from builder.cache.compiled import find, keep
from builder.cache.made_once import made_once
from builder.cache.sums import sum_of, sum_of_run, with_code

__all__ = ["find", "keep", "made_once", "sum_of", "sum_of_run", "with_code"]
