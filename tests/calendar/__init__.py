"""Calendars as written, sent to a server, shared as a feed, and read by other programs."""
