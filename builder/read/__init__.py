"""Text to model. The only stage that opens input files; it knows files and lines, and nothing of chemistry.

text_files       a folder of files, in order of their names, to texts
placed_yaml      YAML to lists and mappings of text, each with its place
amounts, numbers text to quantities
placed_data      what is written, in YAML or a table, and the one way to ask where
shapes, fit      data of a file to a shape, or to findings with their places
tables           the rows of a table, in the same way
makes            a shape, or a row, to the value of the model that it makes
markdown, blocks lesson text to blocks with holes for amounts
the others       one noun each: a shape to the model
studios          the whole folder
"""
