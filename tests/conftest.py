"""What tests share: servers, a browser and a JavaScript library where the machine has them, else a plainly told skip.

With COOKOUT_TESTS_NOTHING_SKIPPED=1 a skipped test is a failed one; `.ci/run` sets it.
"""

import os
import shutil
import tempfile
from collections.abc import Generator, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, sync_playwright

from tests import servers

NOTHING_SKIPPED = os.environ.get("COOKOUT_TESTS_NOTHING_SKIPPED") == "1"
BROWSER_FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(
    item: pytest.Item, call: pytest.CallInfo[None]
) -> Generator[None, pytest.TestReport, pytest.TestReport]:
    """A skip becomes a failure where nothing may be skipped."""
    report = yield
    if NOTHING_SKIPPED and report.skipped and not hasattr(report, "wasxfail"):
        report.outcome = "failed"
        report.longrepr = f"skipped, and here nothing may be: {call.excinfo.value if call.excinfo else ''}"
    return report


@pytest.hookimpl(wrapper=True)
def pytest_make_collect_report(
    collector: pytest.Collector,
) -> Generator[None, pytest.CollectReport, pytest.CollectReport]:
    """The same for a whole file that skips itself."""
    report = yield
    if NOTHING_SKIPPED and report.skipped:
        report.outcome = "failed"
        report.longrepr = f"skipped, and here nothing may be: {report.longrepr}"
    return report


def pytest_unconfigure() -> None:
    """Leaves nothing of the tests' own behind."""
    shutil.rmtree(os.environ["COOKOUT_VAR_DIR"], ignore_errors=True)


@pytest.fixture(scope="session")
def django_db_modify_db_settings(tmp_path_factory: pytest.TempPathFactory) -> None:
    """A file for the tests' database: threads that share one in memory lock each other out."""
    from django.db import connections

    file = tmp_path_factory.mktemp("database") / "tests.sqlite3"
    connections["default"].settings_dict["TEST"]["NAME"] = str(file)


@pytest.fixture(scope="session")
def chromium() -> str:
    """The path of the browser program."""
    for name in ("chromium", "chromium-browser"):
        found = shutil.which(name)
        if found:
            return found
    return pytest.skip("no browser: chromium is not installed (Debian package: chromium)")


@pytest.fixture(scope="module")
def browser(chromium: str) -> Iterator[Browser]:
    """A running browser, without a window and without anyone's profile.

    Its driver keeps an event loop in this thread, which Django would take for asynchronous code.
    """
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("DJANGO_ALLOW_ASYNC_UNSAFE", "true")
        with sync_playwright() as driver:
            running = driver.chromium.launch(executable_path=chromium, args=BROWSER_FLAGS)
            yield running
            running.close()


@pytest.fixture(scope="session")
def redis_url() -> Iterator[str]:
    """The address of a Redis server of the tests' own, empty, that keeps nothing."""
    program = shutil.which("redis-server")
    if program is None:
        pytest.skip("no Redis: redis-server is not installed (Debian package: redis-server)")
    with tempfile.TemporaryDirectory(prefix="cookout-redis-") as folder, servers.redis(program, Path(folder)) as url:
        yield url


@pytest.fixture(scope="session")
def postgres_url() -> Iterator[str]:
    """The address of an empty PostgreSQL database in a server of the tests' own."""
    programs = servers.postgres_programs()
    if programs is None:
        pytest.skip("no PostgreSQL: initdb is not installed (Debian package: postgresql)")
    with (
        tempfile.TemporaryDirectory(prefix="cookout-postgres-") as folder,
        servers.postgres(programs, Path(folder)) as url,
    ):
        yield url


@pytest.fixture(scope="session")
def node() -> str:
    """The path of the JavaScript runtime."""
    return shutil.which("node") or pytest.skip("no JavaScript: node is not installed (Debian package: nodejs)")


@pytest.fixture(scope="session")
def node_modules(node: str) -> Path:
    """The folder that npm installed ical.js into, named by COOKOUT_TESTS_NODE_MODULES."""
    folder = Path(os.environ.get("COOKOUT_TESTS_NODE_MODULES", "node_modules"))
    if not (folder / "ical.js").is_dir():
        pytest.skip("no ical.js: npm install --prefix DIR ical.js@2.2, and COOKOUT_TESTS_NODE_MODULES=DIR/node_modules")
    return folder.resolve()
