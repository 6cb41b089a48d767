"""Signing in and out."""

from django.contrib.auth import login
from django.contrib.auth.views import LoginView, LogoutView
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.views.decorators.http import require_GET

from cookout.services import accounts
from cookout.web.forms.accounts import SignInForm

sign_in = LoginView.as_view(
    template_name="cookout/sign_in.html",
    authentication_form=SignInForm,
    next_page="start",
    redirect_authenticated_user=True,
)
sign_out = LogoutView.as_view(next_page="sign-in")


@require_GET
def enter_demo(request: HttpRequest, signed: str) -> HttpResponse:
    """The way in that the demo prints; gone where the demo is off."""
    user = accounts.demo_sign_in(signed=signed)
    if user is None:
        raise Http404("no demo here")
    login(request, user, backend="django.contrib.auth.backends.ModelBackend")
    return redirect("start")
