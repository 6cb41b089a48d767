"""Plan records arranged for pages: names instead of ids, rows in order, status in words. No time is computed here."""
