"""YAML text to nested text with places, and from there to shapes. Everything that is wrong in a file is found in one go."""
