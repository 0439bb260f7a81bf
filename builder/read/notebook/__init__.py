"""A recipe in a table of somebody's own: cells as spreadsheets keep them become names with amounts. Whose names they are is asked later."""
