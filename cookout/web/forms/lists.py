"""A press on a line of a list."""

from dataclasses import dataclass

from django import forms

from cookout.store.selectors.lists import Tick


@dataclass(frozen=True, slots=True)
class Press:
    """To which state the line of that key is set, and the amount that whoever pressed saw on it."""

    state: str
    key: str
    told: str


class TickForm(forms.Form):
    """What the button of a line sends: the state to set, the line's key and its amount, parted by blanks."""

    tick = forms.CharField(max_length=400)

    def clean_tick(self) -> Press:
        """The press; a state or a key that there is not is refused."""
        state, _, rest = self.cleaned_data["tick"].partition(" ")
        key, _, told = rest.partition(" ")
        if state not in Tick.State.values or not key or len(told) > 100:
            raise forms.ValidationError("no such press")
        return Press(state, key, told)

    def press(self) -> Press | None:
        """The press; None where what was sent is none."""
        return self.cleaned_data["tick"] if self.is_valid() else None
