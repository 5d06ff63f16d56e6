"""The year at a site: length of day and freeze dates."""
