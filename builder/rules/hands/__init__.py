"""What hands do in a part of a lesson, by its words: whether anything is done, and which amounts are in hand."""
