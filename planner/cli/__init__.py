"""The shell: commands that open files, call the engine, print, and exit.

The only room with a clock, a disk and a screen.
"""

from planner.cli.app import run

__all__ = ["run"]
