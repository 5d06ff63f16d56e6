"""Which sowings, when, how large and where."""
