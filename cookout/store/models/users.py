"""People who sign in. The e-mail address is the name; there is no other."""

from typing import Any, ClassVar

from django.contrib.auth.models import AbstractBaseUser, BaseUserManager, PermissionsMixin
from django.db import models


class Users(BaseUserManager["User"]):
    """Makes users by e-mail address."""

    def create_user(self, email: str, password: str | None = None, **fields: Any) -> "User":
        """A user who may sign in; without a password, only by other ways. `ValueError` without an address."""
        if not email:
            raise ValueError("a user needs an e-mail address; give one")
        user = self.model(email=self.normalize_email(email).lower(), **fields)
        user.set_password(password)
        user.save(using=self._db)
        return user

    def create_superuser(self, email: str, password: str | None = None, **fields: Any) -> "User":
        """A user who may do everything."""
        return self.create_user(email, password, is_staff=True, is_superuser=True, **fields)


class User(AbstractBaseUser, PermissionsMixin):
    """A planner: owns events, or shares those of others. Helpers need no account; they have links.

    `language` empty: as the browser asks. `hints_seen` are the first-run hints that were put away.
    """

    class Units(models.TextChoices):
        """The units that pages show."""

        AS_EVENT = "event", "as the event has them"
        US = "us", "US customary"
        METRIC = "metric", "metric"

    class Hours(models.TextChoices):
        """How times of day are written."""

        TWENTY_FOUR = "24", "14:05"
        TWELVE = "12", "2:05 pm"

    class Paper(models.TextChoices):
        """What sheets are printed on."""

        BY_UNITS = "units", "letter with US units, else A4"
        A4 = "a4", "A4"
        LETTER = "letter", "US letter"

    email = models.EmailField(unique=True)
    is_active = models.BooleanField(default=True)
    is_staff = models.BooleanField(default=False)
    joined_at = models.DateTimeField(auto_now_add=True)
    name = models.CharField(max_length=120, blank=True, default="")
    units = models.CharField(max_length=6, choices=Units.choices, default=Units.AS_EVENT)
    hours = models.CharField(max_length=2, choices=Hours.choices, default=Hours.TWENTY_FOUR)
    paper = models.CharField(max_length=6, choices=Paper.choices, default=Paper.BY_UNITS)
    language = models.CharField(max_length=8, blank=True, default="")
    hints_seen = models.JSONField(default=list)

    objects: ClassVar[Users] = Users()

    EMAIL_FIELD = "email"
    USERNAME_FIELD = "email"
    REQUIRED_FIELDS: ClassVar[list[str]] = []

    def __str__(self) -> str:
        return self.email
