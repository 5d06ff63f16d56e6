"""Bed work: soil, compost, manure, water, seed and the cautions."""
