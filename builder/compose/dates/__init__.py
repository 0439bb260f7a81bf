"""Days, times and money as people read them, by a pinned locale."""
