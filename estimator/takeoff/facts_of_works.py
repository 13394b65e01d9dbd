"""The works of a repair in, the yes/no facts that sentences and recipes ask of them, out: of any way, whatever it is called."""

from estimator.model.works import Works


def facts_of_works(works: Works) -> frozenset[str]:
    """Return what is opened, dug, cut, laid, lined, broken and cleaned, by the names of `facts.FACTS`."""
    crawl = works.in_crawl_space
    under = crawl or bool(works.tunnels)
    through = works.cuts_floor or any(o.kind == "hole through" for o in works.openings)
    told = {
        "dug": bool(works.digs),
        "people_below": bool(works.with_people),
        "ground_opened": bool(works.open_digs),
        "floor_cut": works.cuts_floor,
        "below_floor": works.below_floor,
        "house_cut": through,
        "in_or_under_house": through or under,
        "under_house": under,
        "tunnel": bool(works.tunnels),
        "crawl_space": crawl,
        "pipe_laid": bool(works.new_pipe),
        "pipe_cut": bool(works.new_pipe) or works.closes,
        "pipe_renewed": bool(works.new_pipe or works.lined),
        "lining": bool(works.lined),
        "cleaning": bool(works.cleans),
        "bursting": bool(works.burst),
        "from_inside": bool(works.cleans or works.lined or works.burst),
        "sections_tested": bool(works.tested),
    }
    return frozenset(name for name, holds in told.items() if holds)
