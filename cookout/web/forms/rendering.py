"""How every form is drawn: each field by one template, so that all pages look and speak alike."""

from django.forms.renderers import TemplatesSetting


class FormRenderer(TemplatesSetting):
    """Label, hint, input and errors of a field by the template of our own."""

    field_template_name = "cookout/parts/field.html"
