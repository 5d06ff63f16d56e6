"""Pictures: a season drawn to scale.

Takes a Season. Gives drawings as SVG text. It opens no file and looks nothing up.
"""
