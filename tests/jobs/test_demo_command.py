"""`manage.py demo` shows the whole service from nothing, and keeps what was changed in it."""

import os
import re
import signal
import socket
import subprocess
import sys
from collections.abc import Iterator
from http.cookiejar import CookieJar
from pathlib import Path
from urllib.error import HTTPError
from urllib.request import HTTPCookieProcessor, OpenerDirector, build_opener

import pytest
from django.core.management import call_command, execute_from_command_line
from pytest_django import Settings

from cookout.core.planning.result import Limits
from cookout.jobs.management.commands import demo
from cookout.services import accounts, events, plan
from cookout.store.models import Event, PlanRun
from tests.jobs.events import ROOT, SUPPER, nobody_for_the_fire, written

NAMES = [f"{name}.toml" for name in demo.EXAMPLES]
ENTRY = re.compile(r"http://localhost:(\d+)/demo/enter/\S+")


def opener() -> OpenerDirector:
    """A reader of pages with a cookie jar of its own, and no proxy."""
    return build_opener(HTTPCookieProcessor(CookieJar()))


def show(*arguments: str) -> int:
    """Run the demo without serving; its exit code."""
    try:
        call_command("demo", "--no-serve", *arguments)
    except SystemExit as ended:
        return int(ended.code or 0)
    return 0


@pytest.fixture
def three_suppers(tmp_path: Path, settings: Settings) -> Path:
    """The supper three times over as the examples, which all plan in a moment."""
    text = SUPPER.read_text(encoding="utf-8")
    for name in demo.EXAMPLES:
        changed = text.replace('id = "supper"', f'id = "{name}"').replace("Supper under", f"{name.title()} under")
        (tmp_path / f"{name}.toml").write_text(changed, encoding="utf-8")
    settings.COOKOUT_EXAMPLES = tmp_path
    return tmp_path


@pytest.mark.django_db(transaction=True)
def test_all_three_events_are_planned_from_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    assert show("--seconds", "6") == 0
    said = capsys.readouterr().out
    assert said.count("Checked and kept as revision 1.") == 3
    assert "late at the table                             0 min" in said
    planned = Event.objects.select_related("current").filter(is_example=True)
    assert sorted(event.file_name for event in planned) == sorted(NAMES)
    assert {event.current.number for event in planned if event.current} == {1}
    late = [serving for event in planned if event.current for serving in event.current.payload["servings"]]
    assert len(late) > 20
    assert [serving for serving in late if serving["late_minutes"]] == []


@pytest.mark.parametrize("wrong", [["--port", "65536"], ["--port", "http"], ["--seconds", "0"]])
def test_a_wrong_command_line_is_refused(capsys: pytest.CaptureFixture[str], wrong: list[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        execute_from_command_line(["manage.py", "demo", "--no-serve", *wrong])
    assert ended.value.code == 2
    assert wrong[0] in capsys.readouterr().err


@pytest.mark.django_db(transaction=True)
def test_progress_is_shown_while_an_event_is_planned(three_suppers: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert show() == 0
    said = capsys.readouterr().out
    for name in demo.EXAMPLES:
        assert f"{name.title()} under the box elder: planning, for 20 s at most." in said
    assert said.index("Supper under") < said.index("Demonstration under") < said.index("Festival under")


@pytest.mark.django_db(transaction=True)
def test_a_second_run_keeps_what_was_changed(three_suppers: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert show() == 0
    event = Event.objects.get(key="supper")
    changed = event.document.replace("Supper under the box elder", "Our own supper")
    events.save_document(event_id=event.pk, document=changed, version=event.version)
    capsys.readouterr()
    assert show() == 0
    assert "Our own supper: revision 1 is there already and stays." in capsys.readouterr().out
    event.refresh_from_db()
    assert event.document == changed
    assert PlanRun.objects.count() == Event.objects.count() == 3


@pytest.mark.django_db(transaction=True)
def test_a_run_that_an_ended_demo_left_waiting_is_taken_up(three_suppers: Path) -> None:
    owner = accounts.get_or_create_user(email=demo.PLANNER)
    document = (three_suppers / "supper.toml").read_text(encoding="utf-8")
    event, _ = events.load_example(owner_id=owner.pk, document=document, file_name="supper.toml")
    left = plan.queue_planning(event_id=event.pk, limits=Limits(seconds=5.0), announce=False)
    assert show() == 0
    left.refresh_from_db()
    assert left.state == PlanRun.State.DONE
    assert event.runs.count() == 1


@pytest.mark.django_db(transaction=True)
def test_an_example_without_a_plan_is_told_and_ends_with_1(
    three_suppers: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    tables = nobody_for_the_fire()
    tables["event"]["id"] = "festival"
    written(tables, three_suppers, "festival.toml")
    assert show("--seconds", "3") == 1
    said = capsys.readouterr()
    assert said.out.count("Checked and kept as revision 1.") == 2
    assert "What stands in the way:" in said.err


def test_a_taken_port_is_told_before_any_planning(tmp_path: Path) -> None:
    with socket.create_server(("127.0.0.1", 0)) as taken:
        port = taken.getsockname()[1]
        done = subprocess.run(
            [sys.executable, "manage.py", "demo", "--port", str(port)],
            cwd=ROOT, env=os.environ | {"COOKOUT_VAR_DIR": str(tmp_path)}, capture_output=True, text=True, check=False,
        )  # fmt: skip
    assert done.returncode == 1
    assert f"Port {port} cannot be served on" in done.stderr
    assert list(tmp_path.iterdir()) == []


@pytest.fixture(scope="module")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[subprocess.Popen[str], str, Path]]:
    """The real demo in a process of its own: the process, the address that it printed, and its log."""
    folder = tmp_path_factory.mktemp("demo")
    command = [sys.executable, "manage.py", "demo", "--port", "0", "--seconds", "2"]
    variables = os.environ | {"COOKOUT_VAR_DIR": str(folder), "PYTHONUNBUFFERED": "1"}
    log = folder / "log"
    with log.open("w") as out:
        process = subprocess.Popen(command, cwd=ROOT, env=variables, stdout=subprocess.PIPE, stderr=out, text=True)
        assert process.stdout is not None
        found = next((match for line in process.stdout if (match := ENTRY.search(line))), None)
        assert found, log.read_text()
        yield process, found[0], log
        process.kill()
        process.wait(timeout=20)
        process.stdout.close()


def test_the_printed_address_signs_in_and_shows_the_events(served: tuple[subprocess.Popen[str], str, Path]) -> None:
    _, address, log = served
    with opener().open(address, timeout=30) as answer:
        page = answer.read().decode()
        policy = {part.strip() for part in answer.headers["Content-Security-Policy"].split(";")}
        assert answer.headers["Referrer-Policy"] == "same-origin"
        assert answer.headers["X-Frame-Options"] == "DENY"
    assert {"default-src 'none'", "script-src 'self'", "style-src 'self'", "frame-ancestors 'none'"} < policy
    assert "Supper under the box elder" in page
    assert address.rstrip("/").rsplit("/", 1)[1] not in log.read_text()
    assert "GET /demo/enter/(left out)/" in log.read_text()


def test_a_stranger_is_sent_to_sign_in(served: tuple[subprocess.Popen[str], str, Path]) -> None:
    _, address, _ = served
    with opener().open(address.split("/demo/")[0] + "/", timeout=30) as answer:
        assert "/sign-in/" in answer.url
        assert "Supper under the box elder" not in answer.read().decode()


def test_stylesheet_and_script_are_served_without_any_step_before(
    served: tuple[subprocess.Popen[str], str, Path],
) -> None:
    _, address, _ = served
    root = address.split("/demo/")[0]
    with opener().open(address, timeout=30) as answer:
        files = re.findall(r'(?:href|src)="(/static/[^"]+)"', answer.read().decode())
    assert any(name.endswith(".css") for name in files)
    assert any("htmx" in name for name in files)
    for name in files:
        with opener().open(root + name, timeout=30) as answer:
            assert answer.status == 200


def test_a_false_way_in_opens_nothing(served: tuple[subprocess.Popen[str], str, Path]) -> None:
    _, address, _ = served
    with pytest.raises(HTTPError) as refused:
        opener().open(address.rstrip("/")[:-3] + "AAA/", timeout=30)
    assert refused.value.code in (403, 404)
    refused.value.close()


@pytest.mark.postgres
def test_the_whole_demo_runs_on_postgresql(postgres_url: str, tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "manage.py", "demo", "--no-serve", "--seconds", "3"],
        cwd=ROOT, env=os.environ | {"COOKOUT_VAR_DIR": str(tmp_path), "COOKOUT_DATABASE_URL": postgres_url},
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert done.stdout.count("Checked and kept as revision 1.") == 3
    assert list(tmp_path.iterdir()) == []


def test_an_interrupt_ends_the_demo_in_peace(served: tuple[subprocess.Popen[str], str, Path]) -> None:
    """Asks a second demo on the same database, where all is planned already and serving begins at once."""
    _, _, log = served
    command = [sys.executable, "manage.py", "demo", "--port", "0"]
    variables = os.environ | {"COOKOUT_VAR_DIR": str(log.parent), "PYTHONUNBUFFERED": "1"}
    with subprocess.Popen(
        command, cwd=ROOT, env=variables, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    ) as process:
        assert process.stdout is not None
        assert any(ENTRY.search(line) for line in process.stdout)
        process.send_signal(signal.SIGINT)
        rest, errors = process.communicate(timeout=20)
    assert process.returncode == 0, errors
    assert "Ended." in rest
    assert "Traceback" not in errors
