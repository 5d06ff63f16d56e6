"""Tests: statements of the trade, each held against the program."""
