"""Verdicts on ways that no option uses in; each reason once, with all the ways it holds for, out."""

from collections.abc import Iterable

from estimator.model.frozen import Frozen
from estimator.model.judgement import Verdict
from estimator.model.say import Say


class NotOffered(Frozen):
    """One reason: the ways it holds for, in the words of the tables; the reason alone; both in a sentence."""

    methods: tuple[str, ...]
    why: Say
    text: Say


def told_once(blocked: Iterable[Verdict]) -> tuple[NotOffered, ...]:
    """Ways with one and the same reason are told together, in the order of the first.

    A verdict of a quote says "{way}: {why}"; one that says anything else is its own reason.

    >>> from estimator.model.judgement import Effect
    >>> from estimator.model.stretch import Stretch
    >>> def said(method, why):
    ...     text = Say.of("{way}: {why}", way=method, why=Say.of(why))
    ...     return Verdict(rule="r", effect=Effect.BLOCKS, method=method, line="main", stretch=Stretch(0, 1), homeowner=text, estimator=text)
    >>> once = told_once((said("tunnel", "too deep"), said("burst", "no way in"), said("trench", "too deep")))
    >>> [(group.methods, str(group.text)) for group in once]
    [(('tunnel', 'trench'), 'tunnel, trench: too deep'), (('burst',), 'burst: no way in')]
    """
    groups: dict[Say, list[Verdict]] = {}
    for verdict in blocked:
        groups.setdefault(_why(verdict), []).append(verdict)
    return tuple(NotOffered(tuple(dict.fromkeys(v.method for v in g)), why, _text(why, g)) for why, g in groups.items())


def _why(verdict: Verdict) -> Say:
    why = dict(verdict.homeowner.words).get("why")
    return why if isinstance(why, Say) else verdict.homeowner


def _text(why: Say, group: list[Verdict]) -> Say:
    ways = tuple(dict.fromkeys(way for v in group if (way := dict(v.homeowner.words).get("way"))))
    return Say.of("{ways}: {why}", ways=ways, why=why) if len(ways) > 1 else group[0].homeowner
