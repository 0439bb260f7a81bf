"""What counts towards a limit, at least and at most, and the room that is left to those who choose."""
