"""What labels say and how they fit. A stop here holds back the label alone."""
