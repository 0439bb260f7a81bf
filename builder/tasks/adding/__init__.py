"""`stillroom add`: one thing more in a studio."""
