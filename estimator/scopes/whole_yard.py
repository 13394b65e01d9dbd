"""A house with something to repair under it in; whether the yard line may be renewed whole beside that, and by which set, out."""

from collections.abc import Sequence

from estimator.model.job import Job
from estimator.model.judgement import Need
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch
from estimator.scopes.ground import grounds, runs_under, same_pipe
from estimator.scopes.menu import MenuEntry
from estimator.works.methods import record_of


def under_the_house(need: Need, job: Job) -> bool:
    """It must be put right, and some of it lies under a floor or in the crawl space."""
    profile = Profile(job.line(need.line))
    return need.must and any(run.touches(need.stretch) for run, ground in grounds(profile) if ground != "outside")


def _in_the_yard(need: Need, job: Job) -> bool:
    return bool(runs_under(Profile(job.line(need.line)), "outside", need.stretch))


def with_the_yard(needs: Sequence[Need], job: Job) -> tuple[Need, ...]:
    """Return what must be put right and all that was found in the yard, where both are there; else nothing."""
    yard = {n.id for n in needs if _in_the_yard(n, job)}
    if not yard or not any(under_the_house(n, job) for n in needs):
        return ()
    return tuple(n for n in needs if n.must or n.id in yard)


def whole_run(profile: Profile, run: Stretch, stretch: Stretch) -> Stretch:
    """The whole of the yard run that is of the same pipe as the stretch."""
    return same_pipe(profile, run, stretch.common(run) or stretch)


def renews_the_yard(entry: MenuEntry, needs: Sequence[Need], job: Job) -> bool:
    """Every run of pipe with trouble in the yard is laid or pulled new, all of it."""
    runs = [
        (n.line, whole_run(profile, run, n.stretch))
        for n in needs
        for profile in (Profile(job.line(n.line)),)
        for run in runs_under(profile, "outside", n.stretch)
    ]
    new = [c for c in entry.answer.chosen if record_of(c.method).kind == "replace"]
    return bool(runs) and all(any(c.line == line and c.stretch.covers(run) for c in new) for line, run in runs)
