"""How plain the sheets are: what a finished sheet asks of its reader, sentence by sentence."""
