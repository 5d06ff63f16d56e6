"""Sheets: what is printed and carried to the beds.

Takes a Season. Gives PDF files.
"""
