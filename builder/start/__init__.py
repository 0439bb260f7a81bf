"""What a new studio begins with, and what is added to one, as the text of files: composed from `content/starters/`, never written here.

Decided: a starter is the text that the studio gets, notes and all, with few marks in it. Why: who looks after it sees what a teacher sees.
"""
