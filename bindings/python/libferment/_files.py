"""Text files in and out: whole or not at all, and with words for what is wrong."""

from __future__ import annotations

import contextlib
import os
import stat
import tempfile
from collections.abc import Callable
from pathlib import Path

from libferment._errors import InvalidInput


def _path(path: str | Path) -> Path:
    if "\0" in str(path):
        raise InvalidInput(f"the path {str(path)!r} has a zero character in it; no file has such a name")
    return Path(path)


def is_folder(path: str | Path) -> bool:
    """Tell whether there is a folder of that name; not so if it cannot even be looked up."""
    try:
        return _path(path).is_dir()
    except OSError:  # a name too long
        return False


def files_in(folder: str | Path, ending: str) -> list[Path]:
    """List what a folder holds of an ending such as ".toml", by name. Raises InvalidInput if it cannot be read."""
    try:
        return sorted(file for file in _path(folder).iterdir() if file.suffix.lower() == ending)
    except OSError as problem:
        raise InvalidInput(f"{folder} cannot be read: {problem.strerror}") from None


def _not_utf8(content: bytes, at: int, save_as: str) -> str:
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        return f"this is not UTF-8 text (it looks like UTF-16); save {save_as}"
    line = content.count(b"\n", 0, at) + 1
    return f"line {line}: this is not UTF-8 text; save {save_as}"


def read_text(path: str | Path, save_as: str = "it as UTF-8", a_file: str = "the file") -> str:
    """Read a text file in UTF-8. Raises InvalidInput if it is missing, a folder, unreadable or no such text."""
    if is_folder(path):
        raise InvalidInput(f"{path} is a folder; name {a_file} in it")
    try:
        content = _path(path).read_bytes()
    except FileNotFoundError:
        raise InvalidInput(f"there is no file {path}") from None
    except OSError as problem:
        raise InvalidInput(f"{path} cannot be read: {problem.strerror}") from None
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as problem:
        raise InvalidInput(f"{path}: {_not_utf8(content, problem.start, save_as)}") from None
    if "\0" in text:
        raise InvalidInput(f"{path} is not a text file; save {save_as}")
    return text


def write_text(path: str | Path, text: str) -> None:
    """Write a text file whole or not at all, through links, with the mode it had, or the umask's.

    Raises InvalidInput if it cannot be written, or if the path is no regular file.
    """
    target = Path(os.path.realpath(_path(path)))
    temporary = None
    try:
        before = target.stat() if target.exists() else None
        if before is not None and not stat.S_ISREG(before.st_mode):
            raise InvalidInput(f"{path} is no file that can be replaced (a folder or a device); name another")
        # A new file takes the umask's mode from the system; mkstemp's name is free, and its own file private.
        handle, name = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name[:100]}.")
        os.close(handle)
        temporary = Path(name)
        temporary.unlink()
        with os.fdopen(os.open(temporary, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o666), "w", encoding="utf-8") as file:
            file.write(text)
        if before is not None:
            with contextlib.suppress(OSError, AttributeError):
                os.chown(temporary, before.st_uid, before.st_gid)
            temporary.chmod(stat.S_IMODE(before.st_mode))
        temporary.replace(target)
    except OSError as problem:
        if temporary is not None:
            with contextlib.suppress(OSError):
                temporary.unlink()
        raise InvalidInput(f"{path} cannot be written: {problem.strerror}") from None


def read_document(path: str | Path, read: Callable[[str], object]) -> None:
    """Read a saved document. Raises InvalidInput, with the file's name, if it is missing or damaged."""
    text = read_text(path, a_file="a saved document")
    try:
        read(text)
    except InvalidInput as problem:
        raise InvalidInput(f"{path}: {problem}") from None
