"""What is printed, read back with another PDF library."""
