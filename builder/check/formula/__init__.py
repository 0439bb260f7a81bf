"""What a formula does: holds together, fizzes, heats, scratches, stings. A usual recipe is met in silence."""
