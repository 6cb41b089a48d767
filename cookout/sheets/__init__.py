"""What is printed: every sheet of a plan as PDF, and the timeline for a terminal."""

from cookout.sheets.allergens import allergen_cards_pdf, allergen_sheet_pdf
from cookout.sheets.call_sheet import call_sheet_pdf, call_sheets_pdf
from cookout.sheets.coal_plan import coal_plan_pdf
from cookout.sheets.lists import leftovers_pdf, measuring_pdf, packing_pdf, shopping_pdf
from cookout.sheets.printing import Paper, Printing
from cookout.sheets.run_sheet import run_sheet_pdf
from cookout.sheets.running_order import running_order_pdf
from cookout.sheets.terminal import terminal_timeline
from cookout.sheets.wall import wall_pdf

__all__ = [
    "Paper",
    "Printing",
    "allergen_cards_pdf",
    "allergen_sheet_pdf",
    "call_sheet_pdf",
    "call_sheets_pdf",
    "coal_plan_pdf",
    "leftovers_pdf",
    "measuring_pdf",
    "packing_pdf",
    "run_sheet_pdf",
    "running_order_pdf",
    "shopping_pdf",
    "terminal_timeline",
    "wall_pdf",
]
