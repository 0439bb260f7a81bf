"""Packs, prices, needs and what is in stock. Money is exact until it is printed."""
