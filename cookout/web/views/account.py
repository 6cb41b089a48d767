"""One's own account: what pages show, address, password, hints, closing it."""

from smtplib import SMTPException
from typing import cast

from django.conf import settings
from django.contrib.auth import logout
from django.contrib.auth.views import PasswordChangeView
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods, require_POST
from django.views.i18n import set_language

from cookout.services import accounts
from cookout.services.errors import AddressTakenError
from cookout.store.selectors.accounts import User
from cookout.web import answers, visitors
from cookout.web.forms.accounts import AddressForm, ChoicesForm, CloseForm
from cookout.web.guards import signed_in, user_id_of, user_of

WRONG = 422

_change_password = PasswordChangeView.as_view(template_name="cookout/password.html", success_url="/account/")


@require_http_methods(["GET", "POST"])
@signed_in
def change_password(request: HttpRequest) -> HttpResponse:
    """Another password; all other browsers that were signed in are signed out by it."""
    if request.method == "POST" and visitors.comes_too_often(request, "own-password"):
        return visitors.turned_away(request)
    return cast("HttpResponse", _change_password(request))


@require_http_methods(["GET", "POST"])
@signed_in
def show(request: HttpRequest) -> HttpResponse:
    """What somebody chose for themselves; saved here."""
    user = user_of(request)
    form = ChoicesForm(request.POST or None, initial=_chosen(user))
    if form.is_valid():
        accounts.save_choices(user_id=user.pk, choices=form.choices())
        answers.told(request, _("Saved."))
        return redirect("account")
    return _page(request, user, form=form)


@require_POST
@signed_in
def change_address(request: HttpRequest) -> HttpResponse:
    """Another e-mail address; it counts once it is confirmed, where mail can be sent."""
    user = user_of(request)
    if visitors.comes_too_often(request, "own-password"):
        return visitors.turned_away(request)
    form = AddressForm(user, request.POST)
    if form.is_valid():
        address = answers.address(request, "confirm", word="WORD")
        try:
            done = accounts.change_address(user_id=user.pk, email=form.cleaned_data["email"], address=address)
        except AddressTakenError as error:
            form.add_error("email", str(error))
        except (OSError, SMTPException):
            form.add_error("email", _("The mail could not be sent. Try again in some minutes."))
        else:
            answers.told(request, _("Changed.") if done else _("Open the link that was mailed to the new address."))
            return redirect("account")
    return _page(request, user, address_form=form)


@require_POST
def choose_language(request: HttpRequest) -> HttpResponse:
    """Another language, for this browser; an account that has chosen one before keeps the new one."""
    language = request.POST.get("language", "")
    if request.user.is_authenticated and user_of(request).language and language in dict(settings.LANGUAGES):
        accounts.save_language(user_id=user_id_of(request), language=language)
    return set_language(request)


@require_POST
@signed_in
def show_hints(request: HttpRequest) -> HttpResponse:
    """Show first-run hints again."""
    accounts.show_hints_again(user_id=user_id_of(request))
    answers.told(request, _("First-run hints are shown again."))
    return redirect("account")


@require_POST
@signed_in
def hide_hint(request: HttpRequest, hint: str) -> HttpResponse:
    """Put a first-run hint away, and go back to where it stood."""
    accounts.put_hint_away(user_id=user_id_of(request), hint=hint[:40])
    return redirect(answers.own_place(request, request.POST.get("back", "")))


@require_POST
@signed_in
def close(request: HttpRequest) -> HttpResponse:
    """Close the account for good."""
    user = user_of(request)
    if visitors.comes_too_often(request, "own-password"):
        return visitors.turned_away(request)
    form = CloseForm(user, request.POST)
    if not form.is_valid():
        return _page(request, user, close_form=form)
    logout(request)
    accounts.close_account(user_id=user.pk)
    answers.told(request, _("Your account and everything that it owned are gone."))
    return redirect("sign-in")


def _page(request: HttpRequest, user: User, **forms: object) -> HttpResponse:
    page = {
        "form": ChoicesForm(initial=_chosen(user)),
        "address_form": AddressForm(user),
        "close_form": CloseForm(user),
        **forms,
    }
    wrong = any(getattr(form, "is_bound", False) for form in forms.values())
    return render(request, "cookout/account.html", page, status=WRONG if wrong else 200)


def _chosen(user: User) -> dict[str, object]:
    return {name: getattr(user, name) for name in ("name", "units", "hours", "paper", "language")}
