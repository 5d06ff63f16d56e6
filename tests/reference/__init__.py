"""Schemas and pages of reference hold what the program reads and writes."""
