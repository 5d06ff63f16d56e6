"""Solver: linear programs, solved.

Takes rows and columns of numbers. Gives the least cost, the values and the prices of rows. It
is the one way in to the solver's library, and knows nothing of gardens.
"""

from planner.solver.linear_program import Column, LinearProgram, Solution

__all__ = ["Column", "LinearProgram", "Solution"]
