"""Texts and files of the grower become nouns, or problems."""
