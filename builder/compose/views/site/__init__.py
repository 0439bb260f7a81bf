"""What the pages of the site show, already in words."""
