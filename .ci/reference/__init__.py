"""Reference: schemas and pages of every file and output, made from what the program knows."""
