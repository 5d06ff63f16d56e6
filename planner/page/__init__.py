"""Page: a season as one page for a browser.

Takes a Season. Gives one HTML text that needs nothing beside it.
"""
