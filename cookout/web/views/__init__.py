"""One module a subject: guard, form, one service call, render or redirect."""
