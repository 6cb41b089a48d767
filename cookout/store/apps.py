"""The Django app that holds the models."""

from django.apps import AppConfig


class StoreConfig(AppConfig):
    """Models, migrations, selectors and mapping."""

    name = "cookout.store"
    label = "store"
    default_auto_field = "django.db.models.BigAutoField"
