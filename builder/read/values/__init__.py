"""The text of one field to one value with a unit. What cannot be read is told with what to write instead; nothing is guessed."""
