"""Files harmed by chance: whatever they hold, a command ends well (see docs/trust.md)."""
