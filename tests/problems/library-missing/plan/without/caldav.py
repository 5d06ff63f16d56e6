"""Stands before the library, as if it were not installed."""

raise ModuleNotFoundError(name="caldav")
