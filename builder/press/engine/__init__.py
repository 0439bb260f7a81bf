"""The PDF library and all that knows of it: how a sheet is set, what it may look like, and how it is tagged.

What is always true here: nothing outside of this folder names the library, and its names that are not public stand in one module.
"""
