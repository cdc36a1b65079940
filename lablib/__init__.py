"""The apprentice's bench workbook: numbers, pictures and panels behind the lesson notebooks.

Import the part you need (`from lablib.optics.lens import Lens`); this file imports nothing, so that
`import lablib` costs nothing. Where everything is: DEVELOPERS.md.
"""
