"""A quote in, a short code out that changes when number, revision, day, an option or an amount changes."""

import base64
import hashlib

from estimator.model.offer import Quote


def check_code(quote: Quote) -> str:
    """Eight letters and digits, four and four, printed on every page. Not a secret: it tells two versions apart."""
    parts = [
        quote.job.number,
        str(quote.revision),
        quote.day.isoformat(),
        quote.valid_until.isoformat(),
        quote.job.customer.site,
    ]
    for option in quote.options:
        parts += [option.letter, str(option.price.total), str(option.most)]
        parts += [
            f"{line.id}|{line.text_en}|{line.quantity}|{line.unit_price}|{line.amount}" for line in option.price.lines
        ]
        parts += [str(payment.amount) for payment in option.payments]
    digest = hashlib.sha256("\n".join(parts).encode()).digest()
    code = base64.b32encode(digest).decode()[:8]
    return f"{code[:4]}-{code[4:]}"
