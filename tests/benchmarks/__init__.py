"""How much time and memory the commands take."""
