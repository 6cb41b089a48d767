"""The task queue. `celery -A config worker` runs a worker; without a broker the same tasks run in the web process."""

import os

from celery import Celery

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "config.settings")

app = Celery("cookout")
app.config_from_object("django.conf:settings", namespace="CELERY")
app.autodiscover_tasks()
