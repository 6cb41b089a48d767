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
    """A planner: owns events. Helpers need no account; they have links."""

    email = models.EmailField(unique=True)
    is_active = models.BooleanField(default=True)
    is_staff = models.BooleanField(default=False)
    joined_at = models.DateTimeField(auto_now_add=True)

    objects: ClassVar[Users] = Users()

    EMAIL_FIELD = "email"
    USERNAME_FIELD = "email"
    REQUIRED_FIELDS: ClassVar[list[str]] = []

    def __str__(self) -> str:
        return self.email
