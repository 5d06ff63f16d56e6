"""How a crop moves through its life."""
