"""Heat, pH and hazards in words."""
