"""Ground words: quantities, weeks, days of the year, lengths."""
