"""A small made-up quote, put together by hand: its sentences are its own, so they are in no catalog."""

from datetime import date
from decimal import Decimal

from estimator.model.add_on import AddOn
from estimator.model.found import Found
from estimator.model.job import Customer, House, Job, Site, Wishes
from estimator.model.judgement import Diagnosis, Effect, Need, Verdict
from estimator.model.offer import Extra, Firm, Option, Payment, Quote, Term, ToOthers
from estimator.model.opening import Opening, Span
from estimator.model.price import CostLine, CrewDays, LineItem, Price, Step, TaskHours
from estimator.model.say import FromTable, Say
from estimator.model.stretch import Stretch
from estimator.model.work import JOB, Quantity, Repair, Scope, Takeoff
from estimator.model.works import Works
from estimator.pricing.payments import WORDS
from estimator.wording.plain import LINES
from estimator.works.properties import properties_of
from tests.made_up.house import DIP, GROOVE, HOLE, example_line


def said(english: str, spanish: str) -> Say:
    """A sentence in both languages, as a firm's own words from its tables."""
    return Say.of("{words}", words=FromTable(english, spanish))


def _line(
    number: str,
    item: str,
    cls: str,
    repair: str,
    en: str,
    es: str,
    size: float,
    unit: str,
    amount: str,
    price_class: str = "own",
) -> LineItem:
    money = Decimal(amount)
    return LineItem(id=number, work_item=item, work_class=cls, repair=repair, text_en=en, text_es=es, size=size, size_unit=unit,
                    billed="lump", quantity=Decimal(1), unit="job", unit_price=money, amount=money, price_class=price_class,
                    cost_share=money * Decimal("0.6"))  # fmt: skip


def _measured(number: str, item: str, cls: str, en: str, es: str, quantity: int, unit: str, each: str) -> LineItem:
    return LineItem(id=number, work_item=item, work_class=cls, repair="r", text_en=en, text_es=es, size=quantity, size_unit=unit,
                    billed="measured", quantity=Decimal(quantity), unit=unit, unit_price=Decimal(each),
                    amount=Decimal(each) * quantity, cost_share=Decimal(each) * quantity * Decimal("0.6"))  # fmt: skip


def _price(lines: tuple[LineItem, ...], total: str, direct: str) -> Price:
    crew = CrewDays(
        crew="B",
        work_hours=52.1,
        setup_hours=8.0,
        days=Decimal("7.5"),
        hours=Decimal(60),
        rate=Decimal("79.20"),
        amount=Decimal("4752.00"),
        cell="crews row 4",
    )
    rest = Decimal(direct) - crew.amount
    costs = (
        CostLine(
            part="labor",
            ref="B",
            text="crew B",
            quantity=crew.hours,
            unit="hour",
            rate=crew.rate,
            amount=crew.amount,
            price_class="own",
            cell="crews row 4",
        ),
        CostLine(
            part="material",
            ref="pvc-4",
            text="PVC pipe 4 in",
            quantity=Decimal(1),
            unit="job",
            rate=rest,
            amount=rest,
            price_class="own",
            cell="materials row 7",
        ),
    )
    before = (Decimal(direct) * Decimal("1.10") / Decimal("0.60")).quantize(Decimal("0.01"))
    steps = (
        Step(text="direct cost", formula="sum of the cost lines", amount=Decimal(direct)),
        Step(text="own work sold", formula="direct × 1.10 ÷ 0.60", amount=before),
        Step(text="total", formula="up to the next 25", amount=Decimal(total)),
    )
    tasks = (TaskHours(repair="r", work_item="tunnel", task="tunnel-dig", crew="B", quantity_name="tunnel_ft", quantity=29, unit="ft",
                       per=1, likely=1.2, low=0.9, high=1.8, each=1.2, factor=1.15, factors=("hard_clay",), hours=40.0, cell="production row 12"),)  # fmt: skip
    return Price(tasks=tasks, crews=(crew,), costs=costs, steps=steps, lines=lines, direct=Decimal(direct),
                 contingency_percent=Decimal(10), before_rounding=before, total=Decimal(total), margin=Decimal("0.40"))  # fmt: skip


TERMS = (
    Term(
        id="video",
        kind="includes",
        text_en="Camera video before and after; both are yours to keep.",
        text_es="Video con cámara antes y después; los dos son suyos.",
    ),
    Term(
        id="finish",
        kind="excludes",
        text_en="Tile, wood or carpet over the new concrete.",
        text_es="Loseta, madera o alfombra sobre el concreto nuevo.",
    ),
    Term(
        id="depth",
        kind="assumption",
        text_en="The pipe lies about as deep as we measured.",
        text_es="El tubo está más o menos a la profundidad que medimos.",
    ),
    Term(
        id="dig",
        kind="caution",
        text_en="Nobody but the crew goes near the open pit. Utilities are marked before we dig.",
        text_es="Nadie más que la cuadrilla se acerca al pozo abierto. Antes de excavar se marcan las líneas de servicios.",
    ),
    Term(
        id="board",
        kind="notice",
        text_en="Made-up notice: ask your licensing board about complaints.",
        text_es="Aviso inventado: pregunte a la junta de licencias por las quejas.",
    ),
)
EXTRAS = (
    Extra(code="pipe", text_en="If the good pipe starts farther in than shown, each extra foot", text_es="Si el tubo bueno empieza más adentro, cada pie adicional", unit="ft", price=Decimal(185), cap_quantity=Decimal(6), cap_amount=Decimal(1110)),
    Extra(code="branch", text_en="One more side drain that nobody could see", text_es="Un ramal más que nadie podía ver", unit="each", price=Decimal(420), cap_quantity=Decimal(1), cap_amount=Decimal(420)),
)  # fmt: skip
ADD_ONS = tuple(
    AddOn(
        code=code, text_en=english, text_es=spanish, work_item=code, work_class="pipe", size=1.0, unit="each", amount=Decimal(amount),
        cost=Decimal(cost), steps=(Step(text="price", formula="rounded up to the firm's step", amount=Decimal(amount)),),
        tasks=(TaskHours(repair=f"add-on {code}", work_item=code, task=f"set {code}", crew="A", quantity_name="add_ons", quantity=1.0, unit="each", per=1.0,
                         likely=1.5, low=1.0, high=2.5, each=1.5, factor=1.0, factors=(), hours=1.5, cell="production.csv row 9"),),
        costs=(CostLine(part="labor", ref="A", text="crew A", quantity=Decimal("1.5"), unit="h", rate=Decimal("79.20"), amount=Decimal(cost), price_class="own"),),
    )
    for code, english, spanish, amount, cost in (
        ("cleanout", "A new cleanout in the front bed", "Un registro nuevo (cleanout) en la jardinera del frente", "250.00", "129.87"),
        ("drain-plan", "A drawing of your drains on the plan of your house", "Un dibujo de sus drenajes sobre el plano de su casa", "225.00", "118.80"),
    )
)  # fmt: skip


def _payments(total: str) -> tuple[Payment, ...]:
    whole, first = Decimal(total), Decimal(500)
    return (
        Payment(text=WORDS["deposit"], amount=first),
        Payment(text=WORDS["done"], amount=whole - first),
    )


def _works(along: Stretch) -> Works:
    """A strip opened in the floor over the pipe."""
    strip = Opening(
        kind="floor opening", line="main", along=along, depth_ft=2.5, bottom_width_ft=1.9, top_width_ft=1.9, spans=(Span(along, "slab"),),
        name=said("the strip in the floor", "la franja abierta en el piso"),
    )  # fmt: skip
    return Works(line="main", openings=(strip,))


def _option(letter: str, title: Say, under: Say, method: str, stretch: Stretch, price: Price, **more: object) -> Option:
    repair = Repair(id=f"{method}-main", method=method, line="main", stretch=stretch, answers=("n1",))
    job = Repair(id="job", method=JOB, line="main", stretch=Stretch(0, 0))
    works = _works(stretch) if "floors_opened" in more else Works(line="main")
    quantities = (Quantity(name="pipe_ft", value=stretch.length_ft, unit="ft", formula="length of the stretch"),
                  Quantity(name="branches_tunnel", value=2, unit="each", formula="side drains in the stretch"),
                  Quantity(name="tests", value=1, unit="each", formula="the new pipe, before it is covered"))  # fmt: skip
    need = Need(
        id="n1",
        line="main",
        stretch=Stretch(8, 26),
        kinds=("channel", "hole", "sag"),
        findings=(GROOVE, HOLE, DIP),
        severity=3,
        urgency=3,
        grade="seen",
        must=True,
    )
    base: dict[str, object] = {
        "letter": letter, "title": title, "under_title": under, "price": price, "extras": EXTRAS, "terms": TERMS, "add_ons": ADD_ONS,
        "scope": Scope(repairs=(repair,), needs=(need,)),
        "takeoffs": (Takeoff(repair=repair, quantities=quantities, facts=properties_of(works) or frozenset({"tunnel"}), size="4", works=works), Takeoff(repair=job, quantities=(), facts=frozenset())),
        "payments": _payments(str(price.total)),
        "stays_old": (said("The side drains past the first feet stay old.", "Pasando los primeros pies, los ramales siguen siendo los viejos."),),
        "water_test": "only this part", "water_test_text": said("The new pipe is filled and must hold. Old pipe we did not replace is not part of the promise.", "El tubo nuevo se llena y debe aguantar. El tubo viejo que no cambiamos no entra en la garantía."),
        "needs_papers": (said("City plumbing permit; an inspector sees the pipe before it is covered.", "Permiso de plomería de la ciudad; un inspector ve el tubo antes de taparlo."),),
        "floors_opened": (), "floor_sf": 0.0, "yard_sf": 60.0, "old_pipe_left_ft": 12.0,
        "life_low": 50, "life_high": 75, "warranty_en": "The new pipe, 10 years. Goes with the house.", "warranty_es": "El tubo nuevo, 10 años. Pasa al nuevo dueño.",
    }  # fmt: skip
    return Option(**{**base, **more})  # type: ignore[arg-type]


def example_options() -> tuple[Option, ...]:
    """A tunnel and a way through the floor over the same pipe, and a lining that needs a cleaning first."""
    tunnel = (
        _line("A1", "mobilize", "find", "job", "Coming with tools, protecting the house, leaving it clean", "Traslado de herramientas, protección de la casa y limpieza final", 1, "job", "1015.00"),
        _line("A2", "tunnel", "reach", "r", "Hand-dug tunnel under the house from one pit at the front wall; crew protection, fresh air and lights included. No floor is cut.", "Túnel excavado a mano debajo de la casa desde un solo pozo en la pared del frente; incluye protección de la cuadrilla, aire y luz. No se corta ningún piso.", 29, "ft", "9460.00"),
        _measured("A3", "pipe", "pipe", "New 4-inch PVC drain, hung from the slab, sloped as the city asks", "Drenaje nuevo de PVC de 4 pulgadas, colgado de la losa, con la caída que pide la ciudad", 29, "ft", "92.00"),
        _line("A4", "branch", "pipe", "r", "Side drains joined again with new fittings", "Ramales conectados con piezas nuevas", 2, "each", "1032.00"),
        _line("A5", "refill", "put back", "r", "Tunnel and pit filled: soil packed by hand, gaps pumped full, leftover soil hauled away", "Relleno del túnel y el pozo: tierra compactada a mano, huecos bombeados y retiro de la tierra que sobra", 10, "cy", "2200.00"),
        _line("A6", "permit", "pipe", "job", "City plumbing permit and inspection: the city's own fee, nothing added", "Permiso e inspección de la ciudad: lo que cobra la ciudad, sin recargo", 1, "each", "150.00", "pass-through"),
    )  # fmt: skip
    floor = (
        _line("B1", "mobilize", "find", "job", "Coming with tools, protecting the house, leaving it clean", "Traslado de herramientas, protección de la casa y limpieza final", 1, "job", "957.00"),
        _line("B2", "slab", "reach", "r", "Open the floor in one strip 2 ft wide: wet saw, dust walls, concrete hauled off", "Abrir el piso en una franja de 2 pies: corte con agua, plásticos contra el polvo, retiro del concreto", 27, "ft", "4250.00"),
        _measured("B3", "pipe", "pipe", "New 4-inch PVC drain, bedded in sand, sloped as the city asks", "Drenaje nuevo de PVC de 4 pulgadas, sobre arena, con la caída que pide la ciudad", 29, "ft", "92.00"),
        _line("B4", "patch", "put back", "r", "Strip poured back with steel pins, bare concrete", "Colado de la franja con varillas de amarre, queda en concreto", 54, "sq ft", "1850.00"),
        _line("B5", "permit", "pipe", "job", "City plumbing permit and inspection: the city's own fee, nothing added", "Permiso e inspección de la ciudad: lo que cobra la ciudad, sin recargo", 1, "each", "150.00", "pass-through"),
    )  # fmt: skip
    new = said(
        "29 ft of the main, under kitchen and hall, become new pipe.",
        "29 pies de la línea principal, debajo de la cocina y el pasillo, quedan con tubo nuevo.",
    )
    replace_title, by = said("Replace the whole line", "Cambiar toda la línea"), Stretch(0.0, 29.0)
    return (
        _option("A", replace_title, said("By tunnel: new pipe with the right slope; the floor is not touched.", "Por túnel: tubo nuevo con su caída correcta; el piso no se toca."), "tunnel", by, _price(tunnel, "16525.00", "8601.80"),
                days_on_site=Decimal(9), days_without_drains=Decimal(2), main_risk=said("Rain and hard digging can cost days; the refilled tunnel settles a little.", "La lluvia o la tierra dura pueden costar días; el túnel rellenado se asienta un poco."),
                does=(new,)),
        _option("B", replace_title, said("Through the floor: a strip is cut open and poured back.", "Por el piso: se abre una franja y se vuelve a colar."), "break-through", by, _price(floor, "9875.00", "5100.00"),
                days_on_site=Decimal("5.5"), days_without_drains=Decimal(2), floors_opened=("kitchen", "hall"), floor_sf=54.0, yard_sf=0.0,
                main_risk=said("The same tile may no longer be made; a beam in the way is dug by hand.", "Puede que ya no se haga la misma loseta; si hay una trabe, se excava a mano."),
                does=(new,),
                to_others=(ToOthers(text_en="New floor over the strip", text_es="Piso nuevo sobre la franja", amount=Decimal(4200)),
                           ToOthers(text_en="Hotel while drains are off", text_es="Hotel mientras no hay drenaje"))),
    )  # fmt: skip


def example_found() -> tuple[Found, ...]:
    """A hole and a dip that must be repaired, roots that are only suspected."""
    worn = said(
        "The bottom of the iron pipe is rusted through under the kitchen, with a hole where soil comes in.",
        "El fondo del tubo de fierro está podrido debajo de la cocina, con un hoyo por donde entra tierra.",
    )
    dip = said(
        "Under the hall the pipe has a dip that holds water over 4 ft.",
        "Debajo del pasillo el tubo tiene un bajón que junta agua a lo largo de 4 pies.",
    )
    roots = said(
        "Roots beyond the dip are suspected, not seen.", "Más allá del bajón se sospechan raíces; no se vieron."
    )
    main, names = (
        LINES["main"],
        [Say.of(text) for text in ("rusted through", "a dip that holds water", "possible roots")],
    )
    return (
        Found(letter="a", text=worn, name=names[0], of_line=main, line="main", act="now", places=(GROOVE.stretch,), findings=(GROOVE, HOLE), needs=("n1",)),
        Found(letter="b", text=dip, name=names[1], of_line=main, line="main", act="now", places=(DIP.stretch,), findings=(DIP,), needs=("n1",)),
        Found(letter="c", text=roots, name=names[2], of_line=main, line="main", places=(Stretch(30.0, 31.0),)),
    )  # fmt: skip


def example_quote() -> Quote:
    """The quote: Alder Street, invented."""
    job = Job(number="2026-114", day=date(2026, 11, 18), prepared_by="Ines Calder", demo=True, languages=("en_US", "es_US"),
              customer=Customer(name="Rosa Example", site="1204 Alder Street, Demo City"),
              house=House(floor="slab", jurisdiction="demo", built=1967, soil="firm clay", fixtures=(("bathroom group", 2), ("kitchen sink", 1))),
              lines=(example_line(),), site=Site(competent_person="Teo Marlow"), wishes=Wishes(recommend="A", because="Your tile cannot be bought any more, and you live here during the work.", by="Ines Calder"))  # fmt: skip
    lining = Verdict(rule="lining-needs-a-whole-pipe", effect=Effect.BLOCKS, method="reline", line="main", stretch=Stretch(8, 26),
                     homeowner=said("Lining from inside: the bottom of the pipe is gone, so there is nothing to line, and the dip would stay.", "Recubrir por dentro: el fondo del tubo ya no existe, no hay qué recubrir, y el bajón se quedaría."),
                     estimator=said("channel gone over 13 ft", "fondo podrido en 13 pies"))  # fmt: skip
    return Quote(
        job=job, diagnosis=Diagnosis(needs=example_options()[0].scope.needs), options=example_options(), blocked=(lining,),
        firm=Firm(name="Juniper Drain Repair (demo)", address="17 Sample Road, Demo City", phone="555-0100", email="office@juniper.example",
                  licence="DEMO-0001", insurance="DEMO-INS-77", accent="1F5D57"),
        place="Demo County (invented)", revision=1, day=date(2026, 11, 18), valid_until=date(2026, 12, 18),
        seen=(said("We filmed from the front cleanout to hall: 42 ft. There the camera could not go on.", "Grabamos desde el registro del frente hasta el pasillo: 42 pies. Ahí la cámara ya no pudo seguir."),),
        not_seen=(said("The last 5 ft of the main were not seen.", "No se vieron los últimos 5 pies de la línea principal."),),
        found=example_found(),
        urgency=said("Yes, soon: each use washes soil from under the floor.", "Sí, pronto: con cada uso se lava tierra de debajo del piso."),
        if_nothing=said("The hole grows, soil washes in, and the floor above can lose its support.", "El hoyo crece, se mete la tierra y el piso de arriba puede quedarse sin apoyo."),
        if_cleaned=said("The drain runs again for a while. The hole and the dip stay.", "El drenaje corre por un tiempo. El hoyo y el hundimiento se quedan."),
        tests=(said("Water test: the level fell 1½ in in 20 minutes. It should not fall.", "Prueba de agua: el nivel bajó 1½ in en 20 minutos. No debe bajar."),),
        notices=(), tables_fingerprint="3f9a12c077de", cancel_business_days=3,
        paper_warnings=(said("Permit fee of $150 was learned more than a year ago.", "El costo del permiso, $150, se averiguó hace más de un año."),),
    )  # fmt: skip
