"""The shapes of the files that a studio and the stock are written in: one model for each kind of file, nothing computed."""
