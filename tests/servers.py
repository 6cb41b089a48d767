"""Starts and ends servers for tests, each on a free port of the loopback interface with a folder of its own."""

import contextlib
import os
import pwd
import shutil
import socket
import subprocess
import time
from collections.abc import Iterator
from pathlib import Path


def free_port() -> int:
    """A port that nobody listens on."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


def wait_for(port: int, process: subprocess.Popen[bytes], seconds: float = 20.0) -> None:
    """Returns once something accepts connections; an error where the process ends first or the time is up."""
    until = time.monotonic() + seconds
    while time.monotonic() < until:
        if process.poll() is not None:
            raise RuntimeError(f"{process.args!r} ended with {process.returncode}")
        with contextlib.suppress(OSError), socket.create_connection(("127.0.0.1", port), timeout=1):
            return
        time.sleep(0.05)
    raise RuntimeError(f"{process.args!r} did not listen on port {port} within {seconds} s")


@contextlib.contextmanager
def running(arguments: list[str], port: int, log: Path) -> Iterator[None]:
    """A server that listens on the port, until the block ends."""
    with log.open("wb") as out:
        process = subprocess.Popen(arguments, stdout=out, stderr=subprocess.STDOUT, cwd=log.parent)
        try:
            wait_for(port, process)
            yield
        finally:
            process.terminate()
            process.wait(timeout=20)


@contextlib.contextmanager
def redis(program: str, folder: Path) -> Iterator[str]:
    """A Redis server that writes nothing to disk."""
    port = free_port()
    options = ["--port", str(port), "--bind", "127.0.0.1", "--save", "", "--appendonly", "no"]
    with running([program, *options], port, folder / "log"):
        yield f"redis://127.0.0.1:{port}/0"


def postgres_programs() -> Path | None:
    """The folder of the newest PostgreSQL server's programs."""
    debian = sorted(Path("/usr/lib/postgresql").glob("*/bin/initdb"), key=lambda path: int(path.parts[-3]))
    if debian:
        return debian[-1].parent
    found = shutil.which("initdb")
    return Path(found).parent if found else None


@contextlib.contextmanager
def postgres(programs: Path, folder: Path) -> Iterator[str]:
    """A PostgreSQL server; it refuses to run as root, so root hands it to another user."""
    as_user: list[str] = []
    if os.geteuid() == 0:
        user = pwd.getpwnam("postgres")
        os.chown(folder, user.pw_uid, user.pw_gid)
        as_user = ["setpriv", f"--reuid={user.pw_uid}", f"--regid={user.pw_gid}", "--clear-groups"]
    data, port = folder / "data", free_port()
    made = [str(programs / "initdb"), "-D", str(data), "-U", "cook", "-A", "trust", "-E", "UTF8", "--no-sync"]
    subprocess.run([*as_user, *made], check=True, capture_output=True, cwd=folder)
    options = ["-D", str(data), "-p", str(port), "-h", "127.0.0.1", "-k", str(folder), "-F"]
    with running([*as_user, str(programs / "postgres"), *options], port, folder / "log"):
        yield f"postgresql://cook@127.0.0.1:{port}/postgres"
