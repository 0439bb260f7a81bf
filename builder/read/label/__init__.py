"""The rules of regions, languages, and sheets of labels, as data."""
