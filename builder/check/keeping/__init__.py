"""What keeps, for how long, and what of it somebody has proven."""
