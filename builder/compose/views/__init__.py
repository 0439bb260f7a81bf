"""One view for each layout: exactly what that layout may show, already in words. A field named `html` is finished HTML."""
