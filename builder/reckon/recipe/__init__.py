"""A recipe at a size to weighings. Amounts are exact fractions until `rounding.py`, and every result keeps its workings."""
