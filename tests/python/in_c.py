"""The library through its C interface, with what ctypes must be told of it."""

import ctypes
import os
from pathlib import Path

import pytest


def library_in_c():
    """The shared library that FERMENT_SHARED_LIBRARY names; a test without it fails."""
    path = os.environ.get("FERMENT_SHARED_LIBRARY")
    if not path:
        pytest.fail("FERMENT_SHARED_LIBRARY names no shared library; ./dev test sets it")
    library = ctypes.CDLL(str(Path(path).resolve()))
    library.ferment_ask.argtypes = [ctypes.c_char_p, ctypes.POINTER(ctypes.c_void_p)]
    library.ferment_free.argtypes = [ctypes.c_void_p]
    library.ferment_last_error.restype = ctypes.c_char_p
    return library
