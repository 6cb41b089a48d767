"""How numbers are written where Django would have it otherwise."""
