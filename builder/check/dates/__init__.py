"""Dates: their order, what has been published of them, who has to be told."""
