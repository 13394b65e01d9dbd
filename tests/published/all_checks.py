"""Every published figure that is checked, in the order of docs/checks.md."""

from tests.published.earth_checks import EARTH
from tests.published.excavation_checks import EXCAVATION
from tests.published.liner_checks import LINERS
from tests.published.pipe_checks import PIPES
from tests.published.plumbing_checks import PLUMBING
from tests.published.settings_checks import SETTINGS
from tests.published.water_checks import WATER

SUBJECTS = (
    ("Excavation and dust", EXCAVATION),
    ("Plumbing code", PLUMBING),
    ("Pipe and trench", PIPES),
    ("Liners", LINERS),
    ("Earthwork, hauling, concrete", EARTH),
    ("Water in pipes", WATER),
    ("The demo tables beside their sources", SETTINGS),
)
CHECKS = tuple(check for _, checks in SUBJECTS for check in checks)
