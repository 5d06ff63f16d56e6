"""Starting: a new plan by questions on a terminal, or by options.

Takes plain words. Gives a garden.toml that `planner check` passes, or nothing at all.
"""

from planner.cli.start.command import start

__all__ = [
    "start",
]
