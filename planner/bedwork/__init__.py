"""Bedwork: how much soil, compost, water and seed the beds take, and the cautions.

Takes beds, sowings and blocks, and the climate. Gives amounts, each with its reason.
"""

from planner.bedwork.filling import Filling, fillings_of

__all__ = ["Filling", "fillings_of"]
