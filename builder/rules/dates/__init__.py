"""Rules on when and where people come, and how they reach the studio."""
