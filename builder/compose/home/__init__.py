"""What is done at home: which parts of a lesson, by which letters, in what time, weighed on which table, and what is written down of it."""
