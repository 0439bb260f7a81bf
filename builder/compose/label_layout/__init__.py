"""Where the words of a label stand: lines broken by the widths of the font's own letters, cells on a sheet."""
