"""Words said to prove that a slab has no tendons come in; whether they name a paper that says so, or why not, goes out.

A list of what proves nothing can never be whole: what names no paper is no proof, and a paper named with any word of doubt
is none either. Asking once too often costs a question; a tendon that is cut can kill.
"""

import re

from estimator.model.say import Say

_PAPER = (
    r"(?:drawings?|dwg|plans?|blueprints?|letters?|scan(?:s|ned)?|gpr|ground radar|x-?rays?|records?|certificates?"
    r"|reports?|statements?)"
)
_PAPERS = re.compile(rf"\b{_PAPER}\b", re.IGNORECASE)
_TENDONS = (
    r"(?:post[- ]?tension(?:ing|ed)?(?: (?:slab|tendons?|cables?|steel))?|pt|(?:steel )?(?:tendons?|cables?|strands?))"
)
_SAYS_NONE = re.compile(
    rf"\b(?:(?:has|have|shows?|says?|found|with) )?"
    rf"(?:(?:no|not an?|not|without(?: any)?) {_TENDONS}(?! {_PAPER})|(?:none|nothing) (?:found|shown)|none)\b"
    rf"|\b{_TENDONS}[- ]scan\b|\bscan(?:ned)? for {_TENDONS}\b|\bno\.? ?#?\d+",
    re.IGNORECASE,
)
"""What a paper may say of tendons: that there are none, what was scanned for; and `no. 12`, its number."""
_HAS_THEM = re.compile(rf"\b(?:{_TENDONS}|yes|y)\b", re.IGNORECASE)
_DOUBT = re.compile(
    r"\b(?:no|not|nor|never|nothing|nobody|neither|cannot|\w+n't|(?:do|does|did|is|was|are|were|can|wo)nt|without|unknown|unsure|uncertain|unclear|unread\w*|illegible"
    # to come: a paper nobody has yet
    r"|order(?:ed|s)?|pending|later|soon|tomorrow|next|ask(?:ed|ing|s)?|request\w*|wait(?:ing|s)?|await\w*|sched\w*|book(?:ed|ing)"
    r"|coming|comes?|due|will|would|should|shall|could|can|might|must|may(?! \d)|tb[ad]|to ?(?:do|be|get)|needs?|needed|wants?"
    r"|gets?|getting|if|once|until|when|planned|planning|plans? (?:to|on|an?)|promis\w*|expect\w*|call(?:ed|ing|s)?|find|search\w*"
    r"|check|look\w*|try(?:ing)?|apply|applied"
    # thought or heard: no paper was read
    r"|maybe|perhaps|prob\w*|possib\w*|likely|presum\w*|assum\w*|suppos\w*|guess\w*|think\w*|thought|believ\w*|hop(?:e|ing)"
    r"|apparent\w*|seems?|told|heard|claims?|sure|doubt\w*|question\w*"
    # a paper that is gone, found something, or speaks of a part only
    r"|has|have|had|lost|missing|gone|burn(?:ed|t)|denied|refused|fail\w*|inconclusive|incomplete|partial\w*|partly|part|half"
    r"|only|except|but|some|something|several|found|positive|yet|so far)\b|\?",
    re.IGNORECASE,
)
_HEARSAY = re.compile(
    r"\b(?:owner|homeowner|seller|neighbou?r|customer|tenant|realtor|agent|husband|wife|he|she|they)(?:s|'s|s')?\b"
    r"(?:.*\b(?:says?|said|saw|knows?)\b| (?:statement|letter|word)\b)",
    re.IGNORECASE,
)

NAME_THE_PAPER = Say.of(
    "name the paper that shows it: an engineer's drawing, letter or statement, a scan that was done, a permit record of the foundation"
)
HAS_THEM = Say.of("if it has tendons, the floor is a post-tensioned slab; if it has none, write which paper shows it")
IN_DOUBT = Say.of("that leaves it open; write only which paper shows that it has none, once you have it")
STAMP = Say.of("a missing stamp proves nothing; write whose drawing, letter or scan it is")


def why_no_proof(words: str) -> Say | None:
    """None where a paper is named without a doubt; else what to write.

    >>> why_no_proof("engineer's drawing no. 12 of 1995"), why_no_proof("tendon scan of Nov 12: none found")
    (None, None)
    >>> str(why_no_proof("scan ordered"))
    'that leaves it open; write only which paper shows that it has none, once you have it'
    >>> why_no_proof("has tendons") == HAS_THEM, why_no_proof("my word") == NAME_THE_PAPER
    (True, True)
    """
    rest = _SAYS_NONE.sub(" ", " ".join(words.replace("’", "'").split()))
    if re.search(r"\bstamps?\b", rest, re.IGNORECASE):
        return STAMP
    if _HAS_THEM.search(rest):
        return HAS_THEM
    if _DOUBT.search(rest) or _HEARSAY.search(rest):
        return IN_DOUBT
    return None if _PAPERS.search(words) else NAME_THE_PAPER
