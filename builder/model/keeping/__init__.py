"""How long something keeps: whole months and days, never a guess from words."""
