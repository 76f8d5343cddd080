"""Files in and out: what is no text, what is nested or numbered beyond reason, links, modes and devices."""

import os
import stat
from pathlib import Path

import pytest

import libferment as lf
from libferment import day as days

STATE = lf.advance(lf.State(), lf.Mix(flour_g=500, water_g=325, salt_g=10, instant_g=2, dough_c=24))
READERS = {"day": days.read_day, "state": lf.State.load, "log": lf.read_temperature_log}
READ = pytest.mark.parametrize("read", READERS.values(), ids=READERS)


@READ
@pytest.mark.parametrize(
    ("content", "words"),
    [
        ("title = 1".encode("utf-16"), "looks like UTF-16"),
        ("time,temp_c\n0,20\n1,21\n".encode("utf-16-be"), "is not a text file"),
        ("a = 1\n# Küche\n".encode("latin-1"), "line 2: this is not UTF-8 text"),
        (b"\x00\x01\x02", "is not a text file"),
    ],
)
def test_what_is_no_utf8_is_told_in_words(tmp_path, read, content, words):
    path = tmp_path / "file"
    path.write_bytes(content)
    with pytest.raises(lf.InvalidInput, match=words) as refused:
        read(path)
    assert "codec" not in str(refused.value)
    assert "save " in str(refused.value)


@READ
def test_folders_missing_files_and_impossible_names(tmp_path, read):
    with pytest.raises(lf.InvalidInput, match="is a folder; name"):
        read(tmp_path)
    with pytest.raises(lf.InvalidInput, match="there is no file"):
        read(tmp_path / "none")
    with pytest.raises(lf.InvalidInput, match="zero character"):
        read("a\0b")
    with pytest.raises(lf.InvalidInput, match="cannot be read: File name too long"):
        read(tmp_path / ("a" * 5000))
    with pytest.raises(lf.InvalidInput, match="zero character"):
        STATE.save("a\0b")


DEEP, LONG = 20_000, "9" * 5_000


@pytest.mark.parametrize(
    ("read", "content", "words"),
    [
        (days.read_day, f"a = {'[' * DEEP}{']' * DEEP}\n", "nested too deep"),
        (days.read_day, f"a = {LONG}\n", "thousands of digits"),
        (lf.State.load, "[" * DEEP + "]" * DEEP, "more than 32 deep"),
        (lf.State.load, f'{{"format": {LONG}}}', "a number too large"),
    ],
)
def test_what_is_beyond_reason_is_refused(tmp_path, read, content, words):
    path = tmp_path / "file"
    path.write_text(content, encoding="utf-8")
    with pytest.raises(lf.InvalidInput, match=words):
        read(path)


def test_a_state_is_written_through_a_link(tmp_path):
    target, link = tmp_path / "kept.json", tmp_path / "link.json"
    target.write_text("old", encoding="utf-8")
    link.symlink_to("kept.json")
    STATE.save(link)
    assert link.is_symlink()
    assert lf.State.load(target) == lf.State.load(link) == STATE
    assert sorted(p.name for p in tmp_path.iterdir()) == ["kept.json", "link.json"]


def test_a_new_file_has_the_umasks_mode_and_an_old_one_keeps_its_own(tmp_path):
    path = tmp_path / "state.json"
    before = os.umask(0o027)
    try:
        STATE.save(path)
        assert stat.S_IMODE(path.stat().st_mode) == 0o640
        path.chmod(0o604)
        STATE.save(path)
        assert stat.S_IMODE(path.stat().st_mode) == 0o604
    finally:
        os.umask(before)


def test_what_is_no_file_is_not_replaced(tmp_path):
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    for path in (pipe, tmp_path, Path("/dev/null"), Path("/dev/full")):
        kind = stat.S_IFMT(path.stat().st_mode)
        with pytest.raises(lf.InvalidInput, match="is no file that can be replaced"):
            STATE.save(path)
        assert stat.S_IFMT(path.stat().st_mode) == kind
    assert [p.name for p in tmp_path.iterdir()] == ["pipe"]
