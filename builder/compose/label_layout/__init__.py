"""Where the words of a label stand: lines broken by the widths of the font's own letters, positions on a sheet."""
