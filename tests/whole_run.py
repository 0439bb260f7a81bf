"""By what names the processes of one run of tests find in their environment how they are run: nothing here loads the program."""

# The folder in which the processes of a run share what they publish, and whether it is a run with `--long`.
SHARED = "PUBLISHED_FOR_TESTS"
LONG = "PUBLISHED_AS_A_WHOLE"
