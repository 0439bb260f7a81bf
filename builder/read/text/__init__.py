"""Files and their text: folders, lines, tables, Markdown, pictures. The only room that opens what a studio has written."""
