"""`evenarc order`: the work order of a record's plan, in words or as a page to print."""

import sys
from collections.abc import Sequence
from functools import partial
from pathlib import Path

from core.documents.entries import EntryError, units_of
from core.documents.record import RecordError
from core.fix.plan import Plan
from core.fix.plan_record import plan_of_document
from core.fix.search import search
from core.profiles.adjuster import adjusters_of
from core.profiles.conversions import Change, fitting
from core.profiles.parts_shelf import load_shelf, with_shelf
from core.profiles.profile import ProfileError, load_profile
from core.profiles.shop import load_shop
from core.text.plain_text import plain
from core.verdict.verdict import Verdict
from wizard.flow.filed_records import LONGEST_PATH, Unreadable, read_and_judge
from wizard.phrases.search_result import words_without_search
from wizard.printed.page_file import write_page
from wizard.printed.paper import Paper, usual_paper
from wizard.printed.work_order import order_html
from wizard.reports.ending import Ending
from wizard.reports.fix import progress_on
from wizard.views.work_order import work_order_of


def order_record(
    path: str,
    page: Path | None,
    number: int | None,
    profile_folders: Sequence[Path],
    shop_files: tuple[Path, Path],
    paper: Paper | None,
) -> Ending:
    """Print or write the work order of one record.

    Parameters
    ----------
    path : str
        File of the record, as typed.
    page : Path or None
        The HTML file to make; None to print the order in words.
    number : int or None
        A plan of the search, 1 for its first; None for the plan that was filed, or for the first
        one where none was.
    profile_folders : sequence of Path
        Folders of profiles, the shop's own first.
    shop_files : (Path, Path)
        Files of the parts shelf and of the shop's name; neither need exist.
    paper : "letter", "a4" or None
        None for the usual paper of the session's unit.
    """
    shelf, shop_file = shop_files
    try:
        document, verdict = read_and_judge(path, partial(load_profile, folders=profile_folders))
        profile = load_profile(verdict.session.profile, profile_folders)
        changes = with_shelf(profile, load_shelf(shelf, profile_folders)).changes
        shop = load_shop(shop_file)
        filed = plan_of_document(document, verdict, changes) if number is None else None
        plan = filed or searched_plan(verdict, fitting(changes, document), number or 1)
        adjusters = adjusters_of(document, profile.adjusters)
    except (Unreadable, ProfileError) as error:
        return _refused(str(error))
    except EntryError as error:
        return _refused(f"{plain(path, LONGEST_PATH)}: {error}")
    if plan is None:
        words = words_without_search(verdict) if number is None else f"there is no plan {number}"
        print(f"evenarc: {plain(path, LONGEST_PATH)}: no work order: {words}", file=sys.stderr)
        return Ending.NOT_GOOD
    unit = units_of(document)
    order = work_order_of(document, verdict, plan, adjusters, profile.clearance, unit)
    if page is None:
        from wizard.reports.order_in_words import print_order  # loads Rich

        print_order(order)
        return Ending.GOOD
    html = order_html(document, verdict, plan, order, unit, shop, paper or usual_paper(unit))
    try:
        write_page(page, html)
    except RecordError as error:
        return _refused(str(error))
    print(f"{plain(page, LONGEST_PATH)}: made; open it in a browser and print it")
    return Ending.GOOD


def searched_plan(verdict: Verdict, changes: Sequence[Change], number: int) -> Plan | None:
    """Plan of the search with this number; None where it has fewer."""
    plans = search(verdict, changes, progress_on(sys.stderr)).plans
    return plans[number - 1] if number <= len(plans) else None


def _refused(fault: str) -> Ending:
    print(f"evenarc: {fault}", file=sys.stderr)
    return Ending.UNREADABLE
