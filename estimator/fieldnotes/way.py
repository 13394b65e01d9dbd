"""One way in which the open numbers of a line may be taken: which is the footage, and what each other one is."""

from estimator.model.frozen import Frozen


class Way(Frozen):
    """`roles`: atom -> what its number is."""

    score: float
    at: float | None
    to: float | None = None
    more: tuple[tuple[float, float | None], ...] = ()
    about: bool = False
    roles: tuple[tuple[int, str], ...] = ()

    @property
    def meaning(self) -> tuple[object, ...]:
        return (self.at, self.to, self.more, tuple(sorted(role for _, role in self.roles)))
