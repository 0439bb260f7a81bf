"""The tables of limits and of what scents hold. A row is kept as it was published."""
