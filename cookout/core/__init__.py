"""Planning, fire and food as plain Python: no Django, clock, environment, network or unseeded chance."""
