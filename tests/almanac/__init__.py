"""Published figures: stations and crops."""
