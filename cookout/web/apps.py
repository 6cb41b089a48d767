"""The Django app that holds the pages."""

from django.apps import AppConfig


class WebConfig(AppConfig):
    """Pages, forms, templates and the stylesheet."""

    name = "cookout.web"
    label = "web"
