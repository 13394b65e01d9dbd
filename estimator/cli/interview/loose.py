"""A log line as people write it in, nearer to what the log takes out: plainer marks, remarks behind the semicolon."""

import re
from collections.abc import Mapping
from types import MappingProxyType

from estimator.fieldnotes.slots import phrase
from estimator.fieldnotes.tidy import tidied, trade_shortenings, whole_words
from estimator.fieldnotes.words import BY_NAME, FIXTURE_ROOMS, MATERIALS, PLURALS, WHOSE_ROOM
from estimator.model.lengths import plain_marks
from estimator.model.line import FINDING_WORDS, SIGNS

_COMMA_POINT = re.compile(r"^(\s*~?\d+),(\d+)(?=\s)", re.ASCII)
_TAPE = re.compile(r"[,\s]+(\d{1,3})-(\d{1,2})\s+(?:from|off)\s+(?:the\s+)?(?=[A-Za-z])", re.IGNORECASE | re.ASCII)
_CALLED = re.compile(
    r"^(\s*~?\d+(?:\.\d+)?)(?!\s*(?:no|call|make))(.*[^\s,])[\s,]+(?:call it|call|make it|make that|no)\s+(\d+(?:\.\d+)?)\s*$",
    re.IGNORECASE | re.ASCII,
)
_ABOUT = re.compile(r"\b(?:about|abt|approx)\.?\s+(?=every\b|\d)", re.IGNORECASE)
_EVERY = re.compile(r"\bevery\s+(\d+(?:\.\d+)?)(?!\s*(?:ft|feet|foot|in|m\b)|[\d.'\"])", re.IGNORECASE | re.ASCII)
_PLURAL = re.compile(r"(?<![\w'])([A-Za-z]{2,})s(?![\w'])")
_KNOWN = re.compile(rf"(?<![\w'])(?:{phrase((*BY_NAME, *PLURALS, *MATERIALS)).pattern})", re.IGNORECASE)
_OPENING = re.compile(r"\b(?:hole|gap|crack|joint|jt|channel|groove|grv)s?\b", re.IGNORECASE)
_DIRT = re.compile(
    r"(?<!bare )\b(?:can see |i see |see )?(?:dirt|soil)(?: seen| showing)?\b(?=\s*(?:[,.;]|$|photo|pic))",
    re.IGNORECASE,
)
_WITH_UNIT = re.compile(r"\d\s*(?:%|percent\b|in\b|inch|ft\b|feet\b|['\"])|\bat\s+\d", re.IGNORECASE)
_ROOM = phrase(FIXTURE_ROOMS).pattern
_NAMED_BRANCH = re.compile(
    rf"\b((?:(?:{'|'.join(WHOSE_ROOM)})\s+)?{_ROOM})\s+(branch|wye|tee|tap|side drain)\b(?!.*\bcalled\b)([^,;]*)",
    re.IGNORECASE,
)
_STUCK_FIRST = re.compile(
    r"\b(?:can'?t|cannot|won'?t)\s+(?:pass|go\s+(?:any\s+)?further|get\s+(?:past|by|thru|through))[\s,.]+(?:it'?s\s+)?([A-Za-z][^,;]*)",
    re.IGNORECASE,
)
DENIES = re.compile(
    r"\b(?:no|not|off|gone|was|were|without|never|cleared|removed|cleaned|isn't|wasn't|aint|nothing|none)\b",
    re.IGNORECASE,
)
_SHORT_NAME = re.compile(r"(?<![\w=])([A-Za-z]{1,4})\s*=\s*")
NEW_RUN = re.compile(
    r"\b(?:(?:w/?|with|agst|against)\s+flow|going to|toilet pulled|same (?:clnout|cleanout|access))\b", re.IGNORECASE
)
_STOP_BETWEEN = re.compile(r"(?<=[A-Za-z%\"'])\.(?=\s+\S)")
_STOP_AT_END = re.compile(r"(?<=[A-Za-z%\"'])[.!]\s*$")
_SAYS = re.compile(
    rf"(?<![\w'])(?:{phrase((*FINDING_WORDS, *SIGNS, 'branch', 'beam', 'depth', 'joint', 'joints', 'bend')).pattern})",
    re.IGNORECASE,
)


def plainer(text: str, words: Mapping[str, str] = MappingProxyType({})) -> str:
    r"""The line without what people write and the log does not: `20,4`, full stops between things, `28-1 off the wall`.

    >>> print(plainer("20,4 hole 2in. dirt seen"))
    20.4 hole 2in, soil seen
    >>> print(plainer("loc 2'3 under tile, 28-1 from frt wall 6-2 off hall wall"))
    loc 2'3 under tile, 28'1" frt wall, 6'2" hall wall
    >>> plainer("20 toilet branch 3in left live")
    '20 branch 3in left live called toilet'
    >>> plainer("31.5 cant go any further mud")
    '31.5 mud cannot pass'
    >>> plainer("5 slab edge, call 5.3")
    '5 call 5.3 slab edge'
    """
    body, mark, note = plain_marks(text).partition(";")
    body = _COMMA_POINT.sub(r"\1.\2", body)
    body = _TAPE.sub(r""", \1'\2" """, body)
    body = _PLURAL.sub(lambda m: trade_shortenings().get(m[1].lower(), "") + "s" if _is_plural(m) else m[0], body)
    if _OPENING.search(whole_words(tidied(body), words).text):
        body = _DIRT.sub("soil seen", body)
    body = _STUCK_FIRST.sub(lambda m: f"{m[1].rstrip()} cannot pass" if _begins_with_a_finding(m[1]) else m[0], body)
    own = {short: meaning for short, meaning in words.items() if meaning == "branch"}
    body = whole_words(tidied(body), own).text if own else body
    body = _NAMED_BRANCH.sub(lambda m: f"branch{m[3].rstrip()} called {m[1].lower()}", body)
    body = _EVERY.sub(r"every \1ft", _ABOUT.sub("", body))
    body = _STOP_AT_END.sub("", _STOP_BETWEEN.sub(",", body)).rstrip()
    body = _CALLED.sub(r"\1 call \3\2", body)
    return body + (f" ;{note}" if mark else "")


def _begins_with_a_finding(text: str) -> bool:
    line = whole_words(tidied(text), trade_shortenings()).text.lower()
    return line.startswith(FINDING_WORDS)


def _is_plural(match: re.Match[str]) -> bool:
    """`jts`: a shortening of one word with an s that the list has not got."""
    short = trade_shortenings()
    meaning = short.get(match[1].lower(), "")
    return meaning in BY_NAME and f"{meaning}s" in PLURALS and match[0].lower() not in short


def knows_a_word(text: str) -> bool:
    """Any word of the log is in it, or a shortening of one."""
    return bool(_KNOWN.search(whole_words(tidied(text), trade_shortenings()).text))


def says_something(text: str, words: Mapping[str, str]) -> bool:
    """A finding, a sign, a branch or a percent is in it: no remark.

    >>> says_something("THERE is a hole going back", {}), says_something("not bad yet", {})
    (True, False)
    """
    line = tidied(text)
    for shortenings in (words, trade_shortenings()):
        line = whole_words(line, shortenings)
    return "%" in text or bool(_SAYS.search(line.text))


def may_deny(text: str, word: str) -> bool:
    """Strange words beside a finding that may say it is not there: they are no remark.

    >>> may_deny("20 hole 3in, scale came off", "came off"), may_deny("12 no roots 30%", "no")
    (True, True)
    >>> may_deny("8 groove starts on btm, not bad yet", "not bad yet")
    False
    """
    if not DENIES.search(word):
        return False
    loose = r"[\s,]+".join(map(re.escape, word.split()))
    body = text.partition(";")[0]
    found = re.search(rf"(?<!\w){loose}(?!\w)", body, re.IGNORECASE)
    if found is None:
        return True
    beside = body[: found.start()].rpartition(",")[2] + " " + body[found.end() :].partition(",")[0]
    return says_something(beside, {})


def as_remark(raw: str, word: str, column: int = 0) -> str:
    """The words taken out of the line and put after its ;. Where they are typed otherwise, all from `column` to the comma.

    >>> as_remark("8 groove looks bad, photo 3", "looks bad")
    '8 groove, photo 3 ; looks bad'
    >>> as_remark("11.5 branch 3in reads 11.7 so fine, photo 3", "reads")
    '11.5 branch 3in, photo 3 ; reads 11.7 so fine'
    """
    body, mark, note = raw.partition(";")
    loose = r"[\s,]+".join(map(re.escape, word.split()))
    match = re.search(rf"(?<!\w){loose}(?!\w)", body, re.IGNORECASE) if loose else None
    start, end = (match.start(), match.end()) if match else (max(0, column - 1), len(body))
    rest = body[end:].partition(",")[0] if match else ""
    if rest.strip() and not says_something(rest, {}) and not _WITH_UNIT.search(rest):
        match, end = None, len(body)  # what follows strange words was said of them, not of the word before
    if not match and "," in body[start:]:
        end = start + max(body[start:].index(","), 1)
    moved = body[start:end].strip(" ,")
    body = re.sub(r"\s+,", ",", re.sub(r"\s{2,}", " ", f"{body[:start]} {body[end:]}")).strip().rstrip(",")
    notes = ", ".join(part for part in ((note.strip() if mark else ""), moved) if part)
    return f"# {body} {notes}" if re.fullmatch(r"[~\d.' -]*", body) else f"{body} ; {notes}"


def names_apart(text: str) -> tuple[str, str]:
    """What stands before short names in a note, and the names as the log takes them.

    >>> names_apart("26-114 alder tues  hb = hall bath mb = master")
    ('26-114 alder tues', 'hb = hall bath; mb = master')
    >>> names_apart("12.1 = hole")
    ('12.1 = hole', '')
    """
    found = list(_SHORT_NAME.finditer(text))
    if not found:
        return text, ""
    ends = [*(m.start() for m in found[1:]), len(text)]
    names = [f"{m[1]} = {text[m.end() : end].strip(' ,;')}" for m, end in zip(found, ends, strict=True)]
    plain = all(re.fullmatch(r"\w+ = [A-Za-z][A-Za-z ]*", name) for name in names)
    return (text[: found[0].start()].strip(), "; ".join(names)) if plain else (text, "")
