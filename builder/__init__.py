"""A studio folder becomes a catalogue, class pages, take-home sheets, teacher's sheets and labels.

    studio folder -> read -> check -> reckon -> check -> compose -> press -> output folder

`read` turns text into the model, and knows files and lines but nothing of chemistry. `check` turns the model, and later the
class plans, into findings. `reckon` is arithmetic only: no files, no clock, no wording. `compose` turns results into finished
documents, already in words. `press` writes files and computes nothing. They meet only in `pipeline`; `model` holds the nouns.
"""
