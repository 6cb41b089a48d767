"""Signing in, up and out; confirming an address; a forgotten password."""

from smtplib import SMTPException
from typing import Any, cast

from django.conf import settings
from django.contrib.auth import login
from django.contrib.auth.views import (
    LoginView,
    LogoutView,
    PasswordResetCompleteView,
    PasswordResetConfirmView,
    PasswordResetDoneView,
    PasswordResetView,
)
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from cookout.services import accounts, sharing
from cookout.services.errors import AddressTakenError, InvitationError
from cookout.web import answers, visitors
from cookout.web.forms.accounts import ResetForm, SignInForm, SignUpForm
from cookout.web.guards import user_id_of

BACKEND = "django.contrib.auth.backends.ModelBackend"
INVITED = "invited"
"""Key in the session: the token of an invitation that somebody came with before they had an account."""

CLOSED = 403

sign_in = LoginView.as_view(
    template_name="cookout/sign_in.html",
    authentication_form=SignInForm,
    next_page="start",
    redirect_authenticated_user=True,
    extra_context={"may_sign_up": settings.COOKOUT_SIGN_UP},
)
sign_out = LogoutView.as_view(next_page="sign-in")


class _Reset(PasswordResetView):
    """Mails a link to the public address, as all links that are handed on are."""

    def form_valid(self, form: Any) -> HttpResponse:
        self.extra_email_context = {"service": answers.address(self.request, "start").rstrip("/")}
        return super().form_valid(form)


_reset = _Reset.as_view(
    template_name="cookout/reset.html",
    form_class=ResetForm,
    email_template_name="cookout/mail/reset_body.txt",
    subject_template_name="cookout/mail/reset_subject.txt",
    success_url="sent/",
    extra_context={"sends_mail": settings.COOKOUT_SENDS_MAIL},
)
reset_sent = PasswordResetDoneView.as_view(template_name="cookout/reset_sent.html")
reset_confirm = PasswordResetConfirmView.as_view(template_name="cookout/reset_confirm.html", success_url="/reset/done/")
reset_done = PasswordResetCompleteView.as_view(template_name="cookout/reset_done.html")


@require_http_methods(["GET", "POST"])
def reset(request: HttpRequest) -> HttpResponse:
    """Have a link to choose a new password mailed; the page says the same whether the account exists or not."""
    if request.method == "POST" and visitors.comes_too_often(request, "reset"):
        return visitors.turned_away(request)
    return cast("HttpResponse", _reset(request))


@require_http_methods(["GET", "POST"])
def sign_up(request: HttpRequest) -> HttpResponse:
    """Make an account: open to all by a setting, and always to who comes with an invitation."""
    invitation = sharing.find_invitation(request.session.get(INVITED, ""))
    if not settings.COOKOUT_SIGN_UP and invitation is None:
        return render(request, "cookout/sign_up_closed.html", status=CLOSED)
    if request.method == "POST" and visitors.comes_too_often(request, "sign-up"):
        return visitors.turned_away(request)
    form = SignUpForm(request.POST or None, initial={"email": invitation.email if invitation else ""})
    if form.is_valid():
        answer = _made(request, form, confirmed_address=invitation.email if invitation else "")
        if answer is not None:
            return answer
    return render(request, "cookout/sign_up.html", {"form": form, "invitation": invitation})


@require_http_methods(["GET", "POST"])
def confirm(request: HttpRequest, word: str) -> HttpResponse:
    """The link of a mail that confirms an address, with a button: programs that look into mails open links, too."""
    found = accounts.find_confirmation(word=word)
    if request.method == "POST" and accounts.confirm_address(word=word) is not None:
        answers.told(request, _("Your address is confirmed. Sign in with it."))
        token = request.session.get(INVITED, "")
        return redirect("start") if request.user.is_authenticated else _sign_in_and_back(token)
    if found is None or request.method == "POST":
        return answers.unlisted(render(request, "cookout/confirm_failed.html", status=404), has_forms=True)
    return answers.unlisted(render(request, "cookout/confirm.html", {"email": found[1]}), has_forms=True)


@require_GET
def enter_demo(request: HttpRequest, signed: str) -> HttpResponse:
    """The way in that the demo prints; gone where the demo is off."""
    user = accounts.demo_sign_in(signed=signed)
    if user is None:
        raise Http404("no demo here")
    login(request, user, backend=BACKEND)
    return redirect("start")


@require_GET
def invitation(request: HttpRequest, token: str) -> HttpResponse:
    """What an invitation is to; who has no account yet comes back here with one."""
    if visitors.comes_too_often(request, "invitation", most=10 * visitors.MOST_AN_HOUR):
        return visitors.turned_away(request)
    found = sharing.find_invitation(token)
    if found is None:
        return answers.unlisted(render(request, "cookout/invitation_gone.html", status=404), has_forms=True)
    if not request.user.is_authenticated:
        request.session[INVITED] = token
    page = {"invitation": found, "token": token, "for_other": _is_for_other(request, found.email)}
    return answers.unlisted(render(request, "cookout/invitation.html", page), has_forms=True)


@require_POST
def take_invitation(request: HttpRequest, token: str) -> HttpResponse:
    """Become a member of the event."""
    if not request.user.is_authenticated:
        request.session[INVITED] = token
        return _sign_in_and_back(token)
    try:
        event = sharing.take_invitation(token=token, user_id=user_id_of(request))
    except InvitationError as error:
        answers.refused(request, str(error))
        return redirect("start")
    request.session.pop(INVITED, None)
    answers.told(request, _("You share “%(event)s” now.") % {"event": event.name})
    return redirect("event", event.public_id)


def _made(request: HttpRequest, form: SignUpForm, *, confirmed_address: str) -> HttpResponse | None:
    email, password = form.cleaned_data["email"], form.cleaned_data["password"]
    address = answers.address(request, "confirm", word="WORD")
    confirmed = bool(confirmed_address) and confirmed_address == email
    try:
        user = accounts.sign_up(email=email, password=password, confirmed=confirmed, address=address)
    except AddressTakenError as error:
        form.add_error("email", str(error))
        return None
    except (OSError, SMTPException):
        form.add_error(None, _("The mail to confirm your address could not be sent. Try again in some minutes."))
        return None
    if user is None:
        return render(request, "cookout/sign_up_sent.html", {"email": email})
    token = request.session.get(INVITED, "")
    login(request, user, backend=BACKEND)
    return redirect("invitation", token) if token else redirect("start")


def _is_for_other(request: HttpRequest, email: str) -> bool:
    return bool(email) and request.user.is_authenticated and getattr(request.user, "email", "") != email


def _sign_in_and_back(token: str) -> HttpResponse:
    """To the sign-in page, and from there to the invitation, where there is one."""
    place = reverse("sign-in")
    return redirect(f"{place}?next={reverse('invitation', args=[token])}" if token else place)
