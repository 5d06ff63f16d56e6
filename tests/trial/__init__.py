"""Tests of the room trial: a season tried in past years."""
