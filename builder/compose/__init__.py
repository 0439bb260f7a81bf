"""Studio, class plans and findings to documents, already in words: what each one shows, where it goes, what is copied beside it."""
