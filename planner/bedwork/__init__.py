"""Bedwork: how much soil, compost, water and seed the beds take, and the cautions.

Takes beds, sowings and blocks, and the climate. Gives amounts, each with its reason.
"""
