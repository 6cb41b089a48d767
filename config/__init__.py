"""How the parts are put together for running: settings, addresses, the task queue, the server entry points."""

from config.celery import app as celery_app

__all__ = ["celery_app"]
