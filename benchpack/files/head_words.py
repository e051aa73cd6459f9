"""Words of hand-made tables that mean a column, an energy basis or a line of totals."""

from __future__ import annotations

HEAD_WORDS: dict[str, tuple[str, ...]] = {
    "pack": (
        *("batterie", "akku", "batteriepack", "akkupack", "pack batterie"),
        *("bezeichnung", "modell", "fahrzeug", "modele", "vehicule", "nom"),
    ),
    "energy": (
        *("energie", "energieinhalt", "kapazität", "capacite"),
        *("gross capacity", "usable capacity", "net energy", "net capacity"),
        *("bruttoenergie", "energie brutto", "bruttokapazität", "energie brute"),
        *("nutzbare energie", "nettoenergie", "energie netto", "nettokapazität"),
        *("nutzbare kapazität", "energie utile", "capacite utile"),
    ),
    "energy +-": ("energie +-",),
    "mass": (
        *("masse", "gewicht", "gesamtmasse", "gesamtgewicht", "packmasse"),
        *("packgewicht", "batteriemasse", "batteriegewicht", "poids"),
        *("masse totale", "poids total", "masse du pack"),
    ),
    "mass +-": ("masse +-", "gewicht +-", "poids +-"),
    "cells mass": (
        *("zellmasse", "zellenmasse", "zellgewicht", "masse cellules"),
        *("masse des cellules", "poids des cellules"),
    ),
    "cells volume": ("zellvolumen", "volume des cellules"),
    "volume": ("volumen",),
    "voltage": ("spannung", "nennspannung", "tension", "tension nominale"),
    "chemistry": ("chemie", "zellchemie", "chimie"),
    "cell format": ("zellformat", "format des cellules"),
    "cell count": ("zellzahl", "zellenzahl", "anzahl zellen", "nombre de cellules"),
    "enclosure material": ("gehäusematerial", "gehäuse", "matériau du boîtier"),
    "cooling": ("kühlung", "refroidissement"),
    "state of health": ("gesundheitszustand", "état de santé"),
    "year": ("jahr", "baujahr", "modelljahr", "année"),
    "yearly volume": ("jahresstückzahl", "jahresvolumen", "volume annuel"),
    "source": ("quelle",),
    "note": (
        *("bemerkung", "bemerkungen", "notiz", "kommentar", "anmerkung"),
        *("remarque", "remarques", "commentaire"),
    ),
    "part": ("teil", "bauteil", "benennung", "pièce"),
    "joint": ("verbindung", "verbindungselement", "assemblage"),
    "material": ("werkstoff", "matériau"),
    "count": ("anzahl", "stückzahl", "menge", "nombre", "quantité"),
    "mass each": ("einzelmasse", "stückmasse", "stückgewicht", "masse unitaire"),
    "thickness": ("dicke", "wandstärke", "épaisseur"),
    "length": ("länge", "longueur"),
    "area": ("fläche", "surface"),
}
"""Further heads by a field's title, German and French as spreadsheets there have."""

BASIS_WORDS: dict[str, str] = {
    "usable": "usable",
    "net": "usable",
    "netto": "usable",
    "nettoenergie": "usable",
    "nettokapazitat": "usable",
    "nutzbar": "usable",
    "nutzbare": "usable",
    "utile": "usable",
    "gross": "gross",
    "brutto": "gross",
    "bruttoenergie": "gross",
    "bruttokapazitat": "gross",
    "brute": "gross",
}
"""Words, folded, that name the basis of an energy."""

BESIDE_UNITS = frozenset(("pack", "battery", "total", "batterie"))
"""Words, folded, that a head may hold beside a unit alone, as in ``pack kWh``."""

TOTALS = frozenset(
    (
        *("total", "totals", "grand total", "subtotal", "sum", "average", "mean"),
        *("median", "min", "max", "minimum", "maximum", "std dev", "std"),
        *("summe", "gesamt", "gesamtsumme", "mittelwert", "durchschnitt", "mittel"),
        *("somme", "moyenne", "total général", "médiane"),
    )
)
"""Names, without case, that a line below a table has, not a pack."""
