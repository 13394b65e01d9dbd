"""`estimator rules`: a rule's name in, the rule with its settings out; without one, all of them in a line each."""

from typing import Annotated

import typer

from estimator.cli.arguments import AS_SET, AsJson, Language, OnDay, TablesFrom

Asked = Annotated[str, typer.Argument(metavar="NAME", help="A rule's name, such as lining-keeps-the-grade.")]


def command(
    rule: Asked = "",
    tables: TablesFrom = None,
    on: OnDay = None,
    language: Language = AS_SET,
    as_json: AsJson = False,
) -> None:
    from estimator.cli.clock import today
    from estimator.cli.rule_book import looked_up
    from estimator.cli.tables_asked import readable_tables
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.rules import write_rule, write_rules
    from estimator.cli.views.screen import answer

    found = looked_up(rule, readable_tables(on or today(), tables))
    out = in_window(language)
    if not rule:
        write_rules(out, found)
    for entry in found if rule else ():
        write_rule(out, entry)
    answer(found, as_json, out.rows)
