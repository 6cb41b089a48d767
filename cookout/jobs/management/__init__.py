"""Commands for `python manage.py`."""
