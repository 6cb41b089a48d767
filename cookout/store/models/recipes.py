"""The recipe box: recipes with all their versions, and which version an event was given."""

import uuid
from typing import Any, ClassVar

from django.conf import settings
from django.db import models


class Recipe(models.Model):
    """A recipe in somebody's box. `key` is its id inside recipe and event files.

    `name`, `food` and `serves` are read out of the current version, so that lists need not parse it. `deleted_at` set:
    thrown away, and gone for good some days later. `share_hash` is the hash of the link by which others may take a
    copy, or empty.
    """

    owner = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.CASCADE, related_name="recipes")
    public_id = models.UUIDField(unique=True, default=uuid.uuid4, editable=False)
    key = models.CharField(max_length=100)
    name = models.CharField(max_length=200)
    food = models.CharField(max_length=30)
    serves = models.PositiveIntegerField()
    current = models.ForeignKey(
        "store.RecipeVersion", on_delete=models.SET_NULL, related_name="+", null=True, blank=True, default=None
    )
    origin = models.CharField(max_length=300, blank=True, default="")
    share_hash = models.CharField(max_length=64, blank=True, default="", db_index=True)
    made_at = models.DateTimeField(auto_now_add=True)
    deleted_at = models.DateTimeField(null=True, default=None)

    class Meta:
        constraints: ClassVar = [models.UniqueConstraint(fields=["owner", "key"], name="one_recipe_a_key")]
        ordering: ClassVar = ["name", "pk"]

    def __str__(self) -> str:
        return self.name


class RecipeVersionFixedError(Exception):
    """Somebody tried to change a version; make a new one instead."""


class RecipeVersion(models.Model):
    """One version of a recipe, numbered from 1, never changed: `document` is the text of its recipe file."""

    recipe = models.ForeignKey(Recipe, on_delete=models.CASCADE, related_name="versions")
    number = models.PositiveIntegerField()
    document = models.TextField()
    note = models.CharField(max_length=200, blank=True, default="")
    made_at = models.DateTimeField()

    class Meta:
        constraints: ClassVar = [models.UniqueConstraint(fields=["recipe", "number"], name="one_version_a_number")]
        ordering: ClassVar = ["-number"]

    def __str__(self) -> str:
        return f"version {self.number}"

    def save(self, *args: Any, **kwargs: Any) -> None:
        """Store a new version; `RecipeVersionFixedError` for one that is stored already."""
        if not self._state.adding:
            raise RecipeVersionFixedError("a stored version never changes; make a new one")
        super().save(*args, **kwargs)


class EventRecipe(models.Model):
    """Where a recipe inside an event came from: `recipe_key` is its id there, `version` the one that was taken."""

    event = models.ForeignKey("store.Event", on_delete=models.CASCADE, related_name="taken_recipes")
    recipe_key = models.CharField(max_length=100)
    version = models.ForeignKey(RecipeVersion, on_delete=models.CASCADE, related_name="+")

    class Meta:
        constraints: ClassVar = [
            models.UniqueConstraint(fields=["event", "recipe_key"], name="one_origin_a_recipe_in_an_event")
        ]

    def __str__(self) -> str:
        return f"{self.recipe_key} from {self.version}"
