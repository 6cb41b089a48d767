"""All addresses are those of the pages."""

from django.urls import include, path

urlpatterns = [path("", include("cookout.web.urls"))]
