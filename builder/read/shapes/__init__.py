"""The shapes of the files that a studio and the library are written in: one model for each kind of file, nothing computed."""
