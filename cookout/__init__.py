"""Plans a cookout over live charcoal, backward from the serving times."""
