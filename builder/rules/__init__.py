"""What follows from a value by itself: hazards of a card, areas of a container, the clock of a lesson, what a sentence orders.

Pure functions on the nouns of `model`, beneath the stages, so that no two stages work the same thing out. No files, no clock of the day."""
