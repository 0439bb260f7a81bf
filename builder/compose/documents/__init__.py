"""One module for each kind of document: it fills the view of its template and gives its address."""
