"""`python -m planner` is the same as `planner`, where that is not on the path."""

from planner.cli import run

run()
