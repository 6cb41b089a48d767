"""Every component of the pages on one page: for whoever draws a new page, and to see that a change spoils none."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_GET

from cookout.web.forms.samples import SamplesForm, wrong_samples
from cookout.web.guards import signed_in
from cookout.web.reading.samples import COLOURS, SIZES, SPACES, sample_drawings, sample_stations


@require_GET
@signed_in
def show(request: HttpRequest) -> HttpResponse:
    """The components, with made-up content."""
    page = {
        "colours": COLOURS,
        "spaces": SPACES,
        "sizes": SIZES,
        "form": SamplesForm(prefix="blank", label_suffix=""),
        "wrong_form": wrong_samples(),
        "groups": sample_stations(),
        "drawings": sample_drawings(),
    }
    return render(request, "cookout/parts_page.html", page)
