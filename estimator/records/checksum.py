"""A record's data in, its bytes with a sum over them at the end out; and back, where not a byte of it was changed since."""

import hashlib
import json
import re
from collections.abc import Mapping
from typing import Any

from estimator.model.say import Say
from estimator.records.plain import dumped

END = b"\n}\n"
SUM = re.compile(rb',\n "sum": "([0-9a-f]{64})"\n}\n\Z')


class ChangedSince(ValueError):
    """The sum is missing or another one: somebody wrote in the record, or another program made it."""


def sealed(data: Mapping[str, Any]) -> bytes:
    """The same bytes every time; the sum is the last line, over all that stands before it.

    >>> unsealed(sealed({"revision": 1}))
    {'revision': 1}
    """
    body = dumped(data)
    return body.removesuffix(END) + f',\n "sum": "{hashlib.sha256(body).hexdigest()}"'.encode() + END


def unsealed(held: bytes) -> dict[str, Any]:
    """Errors: ValueError where it is no JSON, ChangedSince where it is but not as it was written.

    >>> unsealed(sealed({"revision": 1}).replace(b": 1", b": 2"))
    Traceback (most recent call last):
        ...
    estimator.records.checksum.ChangedSince: it was changed after it was written
    """
    found = SUM.search(held)
    body = held[: found.start()] + END if found else held
    data = json.loads(body.decode("utf-8"))
    if not found or hashlib.sha256(body).hexdigest().encode() != found[1] or not isinstance(data, dict):
        raise ChangedSince(Say.of("it was changed after it was written"))
    return data
