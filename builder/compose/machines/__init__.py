"""What pages say, once more for programs: calendars, search engines, news readers.

Nothing here says what no page says, no name of a student is ever among it, and what needs an absolute address is left out where the studio
has none.
"""
