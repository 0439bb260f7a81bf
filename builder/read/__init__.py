"""Text to model. The only stage that opens input files; it knows files and lines, and nothing of chemistry.

text_files       a folder of files, in order of their names, to texts
placed_yaml      YAML to lists and mappings of text, each with its place
amounts, numbers text to quantities
shapes, fit      data of a file to a shape, or to findings with their places
markdown, blocks lesson text to blocks with holes for amounts
the others       one noun each: a shape to the model
studios          the whole folder
"""
