"""Makes the fixtures of this folder: writes flat OpenDocument sheets and has LibreOffice save them. See README.md."""
import os, random, subprocess, sys, tempfile
from xml.sax.saxutils import escape

HERE = os.path.dirname(os.path.abspath(__file__))
PICK = random.Random(20261125)

GIVEN = "Alba Boris Cleo Dirk Elsie Fabian Gwen Hamid Imke Jarek Kezia Lowell Marit Ned Orla Piet Queenie Rolf Sunniva Timo Ursula Viggo Wanda Xavi Ysolde Zoltan Agnes Bastian Cilla Dorian".split()
FAMILY = "Lockyer Weirman Fennick Reedham Puddick Sluyter Bargate Culvert Ferriman Heronsby Aldwater Millrace".split()
RANKS = ["white", "White belt", "white-yellow", "yellow", "Yellow", "yellow-orange", "orange"]


class Formula(str):
    """A formula whose value LibreOffice works out."""


class Merge:
    def __init__(self, text, columns=1, rows=1):
        self.text, self.columns, self.rows = text, columns, rows


class Day(str):
    """A real date, year-month-day."""


class Clock(str):
    """A real time of day, hh:mm."""


def cell(value):
    if isinstance(value, Merge):
        return (f'<table:table-cell office:value-type="string" table:number-columns-spanned="{value.columns}" table:number-rows-spanned="{value.rows}">'
                f'<text:p>{escape(value.text)}</text:p></table:table-cell>')
    if isinstance(value, Formula):
        formula = escape(value, {'"': "&quot;"})
        return f'<table:table-cell table:formula="of:={formula}" office:value-type="float"/>'
    if isinstance(value, Day):
        return f'<table:table-cell table:style-name="day" office:value-type="date" office:date-value="{value}"/>'
    if isinstance(value, Clock):
        return f'<table:table-cell table:style-name="clock" office:value-type="time" office:time-value="PT{value[:2]}H{value[3:]}M00S"/>'
    if isinstance(value, bool):
        return f'<table:table-cell office:value-type="boolean" office:boolean-value="{str(value).lower()}"/>'
    if isinstance(value, (int, float)):
        return f'<table:table-cell office:value-type="float" office:value="{value}"/>'
    if value is None or value == "":
        return "<table:table-cell/>"
    return f'<table:table-cell office:value-type="string"><text:p>{escape(value)}</text:p></table:table-cell>'


def book(sheets, from1904=False):
    body = ""
    for name, rows, hidden in sheets:
        body += f'<table:table table:name="{escape(name)}" table:style-name="{"hidden" if hidden else "shown"}">'
        for row in rows:
            body += "<table:table-row>" + ("".join(cell(value) for value in row) or "<table:table-cell/>") + "</table:table-row>"
        body += "</table:table>"
    null = '<table:calculation-settings><table:null-date table:date-value="1904-01-01"/></table:calculation-settings>' if from1904 else ""
    return f'''<?xml version="1.0" encoding="UTF-8"?>
<office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0" xmlns:number="urn:oasis:names:tc:opendocument:xmlns:datastyle:1.0" xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2" office:version="1.3" office:mimetype="application/vnd.oasis.opendocument.spreadsheet">
<office:automatic-styles>
<number:date-style style:name="dmy"><number:day number:style="long"/><number:text>/</number:text><number:month number:style="long"/><number:text>/</number:text><number:year number:style="long"/></number:date-style>
<number:time-style style:name="hm"><number:hours number:style="long"/><number:text>:</number:text><number:minutes number:style="long"/></number:time-style>
<style:style style:name="day" style:family="table-cell" style:data-style-name="dmy"/>
<style:style style:name="clock" style:family="table-cell" style:data-style-name="hm"/>
<style:style style:name="shown" style:family="table"><style:table-properties table:display="true"/></style:style>
<style:style style:name="hidden" style:family="table"><style:table-properties table:display="false"/></style:style>
</office:automatic-styles>
<office:body><office:spreadsheet>{null}{body}</office:spreadsheet></office:body></office:document>'''


def save(name, sheets, filters, from1904=False):
    """filters: (file name, LibreOffice filter)."""
    with tempfile.TemporaryDirectory() as folder:
        source = os.path.join(folder, name + ".fods")
        with open(source, "w", encoding="utf-8") as file:
            file.write(book(sheets, from1904))
        for target, kind in filters:
            subprocess.run(["soffice", "--headless", "--convert-to", kind, "--outdir", folder, source], check=True, stdout=subprocess.DEVNULL)
            made = os.path.join(folder, name + "." + kind.split(":")[0])
            os.replace(made, os.path.join(HERE, target))


def csv(separator, encoding):
    """Character codes of separator and quote, LibreOffice's number of the encoding, first line."""
    return f"csv:Text - txt - csv (StarCalc):{ord(separator)},34,{encoding},1"


UTF8, WINDOWS1252, UTF16, ISO2 = 76, 1, 65535, 13
XLSX = "xlsx:Calc MS Excel 2007 XML"


def children():
    """60 children: given, family, (year, month, day)."""
    pairs = [(given, family) for given in GIVEN for family in FAMILY]
    PICK.shuffle(pairs)
    return [(given, family, (PICK.randint(2013, 2019), PICK.randint(1, 12), PICK.randint(1, 12))) for given, family in pairs[:60]]


def messy_roster(club):
    rows = [[Merge("Lockside Judo, juniors - members list", 14)], [], ["", "First name", "Surname", "D.O.B.", "Belt", "Joined", "Mum", "Mum's mobile", "Email", "Photos OK?", "Licence no", "Licence expires", "Medical", "Weight", "Locker"]]
    for i, (given, family, (y, m, d)) in enumerate(club):
        written = [Day(f"{y}-{m:02}-{d:02}"), f"{d:02}/{m:02}/{y}", f"{y}-{m:02}-{d:02}", f"{d}/{m}/{y % 100:02}", f"{d} {'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split()[m - 1]} {y}"][i % 5]
        phone = 7700900000 + i if i % 7 == 3 else f"07700 900{i:03}"
        rows.append(["", given, family, written, RANKS[i % len(RANKS)], Day(f"202{4 + i % 2}-09-{1 + i % 28:02}"), f"Parent {family}", phone,
                     f"{family.lower()}{i}@example.org", ["yes", "no", "Y", ""][i % 4], f"LK{1000 + i}", Day("2027-08-31"), "asthma" if i % 9 == 0 else "", 25 + i % 20, 1 + i])
    first = 3
    rows[first + 4][3] = "29 Feb 2016"                     # a day there is
    rows[first + 11][3] = "29/02/2015"                     # a day there is not
    rows[first + 17][3] = ""                               # no birth date
    rows[first + 23][3] = Day("2055-04-03")                # in the future
    rows[first + 29][7] = "see notes"                      # no telephone
    rows[first + 33][4] = "stripy"                         # no rank of the ladder
    rows[first + 38][9] = "ask dad"                        # neither yes nor no
    rows[first + 41][2] = ""                               # no family name
    twin = list(rows[first + 2]); rows.insert(first + 20, twin)                        # the same child, the same line
    again = list(rows[first + 6]); again[7] = "07700 900999"; rows.append(again)       # the same child, another telephone
    accent = list(rows[first + 9]); accent[1] = accent[1].upper(); rows.append(accent) # the same child in capitals
    other = list(rows[first + 13]); other[3] = Day("2018-11-05"); other[10] = "LK2222"; rows.append(other)  # another child of one name
    rows.append([])
    rows.append(["", "Total", Formula(f"COUNTA([.C4:.C{len(rows) - 1}])")])
    return rows


DATES = [(9, d) for d in (8, 10, 15, 17, 22, 24, 29)] + [(10, d) for d in (1, 6, 8, 13, 15, 20, 22)] + [(11, d) for d in (3, 5, 10, 12, 17, 19)]


def messy_register(club):
    names = [f"{family}, {given}" for given, family, _ in club]
    names[5] = f"{club[5][0]} {club[5][1]}"
    names[8] = f"{club[8][0]} {club[8][1]}".upper()
    head = ["Name", "Belt"] + [f"{['Mon', 'Tue', 'Wed', 'Thu'][1 + i % 2]} {d}/{m}" for i, (m, d) in enumerate(DATES)] + ["Total"]
    rows = [[Merge("Lockside Judo register, season 2026/27", len(head))], [], head]
    for i, name in enumerate(names):
        marks = []
        for j in range(len(DATES)):
            roll = PICK.random()
            mark = "✓" if roll < 0.72 else "L" if roll < 0.76 else Clock("17:50") if roll < 0.79 else "E" if roll < 0.84 else "holiday" if roll < 0.86 else "x" if roll < 0.88 else ""
            if j == 9: mark = ""                              # a date without any mark
            if i % 12 == 7 and j < 8: mark = ""               # joined late
            marks.append(mark)
        rows.append([name, "white"] + marks + [Formula(f'COUNTIF([.C{len(rows) + 1}:.V{len(rows) + 1}];"✓")')])
    rows[3 + 30][6] = "T"                                     # a sign nobody knows
    rows.append([names[2], ""] + ["" if j != 4 else "✓" for j in range(len(DATES))] + [""])   # the same child again
    rows.append(["Visitor, Nell", ""] + ["" if j not in (3, 4) else "✓" for j in range(len(DATES))] + [""])
    rows.append([])
    rows.append(["Number present", ""] + [Formula(f'COUNTIF([.{chr(67 + j)}4:.{chr(67 + j)}{len(rows) - 1}];"✓")') for j in range(len(DATES))])
    return rows


def row_register(club):
    rows = [["Datum", "Naam", "Aanwezig", "Uhrzeit"]]
    rows[0] = ["Date", "Name", "Mark", "Arrived"]
    for m, d in DATES[:6]:
        for given, family, _ in club[:20]:
            roll = PICK.random()
            mark, time = ("P", "") if roll < 0.7 else ("L", Clock("17:55")) if roll < 0.8 else ("E", "") if roll < 0.9 else ("A", "")
            rows.append([Day(f"2026-{m:02}-{d:02}"), f"{given} {family}", mark, time])
    return rows


def messy_signoffs(club):
    """Children down, items of the sample ladder across; falls, a technique with three forms, a heading that is no item; every way to sign."""
    name = lambda i: f"{club[i][0]} {club[i][1]}"
    head = ["Name", "Belt", "Uki goshi", "Hiza garuma", "Yoko shiho gatame", "Ukemi", "Mate", "Oogoshi", "De ashi barai", "Kesa gatame", "Tai-otoshi, moving", "Handstand", "Total"]
    rows = [[Merge("Lockside Judo, juniors - what was signed off", len(head))], [],
            ["", "", Merge("First tip", 5), None, None, None, None, Merge("Yellow", 3), None, None, Merge("Later", 2), None, ""], head]
    signs = [
        (f"{club[0][1]}, {club[0][0]}", "white", [Day("2026-09-15"), "✓", "6/10/2026", "✓", "✓", "3/11/2026 MH", "", "", "", "✓"]),
        (name(4), "yellow", [Day("2026-09-15"), "x", Day("2026-10-06"), "✓", "✓", "10/11/2026", "MH", Day("2026-11-10"), "prompted", ""]),
        (name(10).upper(), "yellow", ["8 Sep 2026", "MH", "6 Oct", "", "yes", "", "not yet", "", "", ""]),
        (f"{club[20][1]} Q.", "white", ["", "✓", "15 Nov 2026", Day("2026-10-06"), "0", "", "", "", "", ""]),
        ("Elsie", "white", ["✓", "", "", "", "✓", "", "", "", "", ""]),
        (name(25), "orange", ["MH", "MH", "TL 12.11.2026", "MH", "MH", "5/11/2026", Day("2026-11-12"), "", "6 Oct", ""]),
        (name(30), "white", ["", "", "", "✓", "", "", "", "", "", ""]),
        ("Otis Passer", "", ["✓", "", "", "", "", "", "", "", "", ""]),
    ]
    for child, belt, cells in signs:
        rows.append([child, belt] + cells + [Formula(f"COUNTA([.C{len(rows) + 1}:.L{len(rows) + 1}])")])
    rows.append([Merge("after the holidays", len(head))])
    rows.append([name(0), "", "", "", "", "", "", "", "✓", "", "", "", ""])                       # the same child again
    rows.append([])
    rows.append(["Total", ""] + [Formula(f"COUNTA([.{chr(67 + j)}5:.{chr(67 + j)}14])") for j in range(10)])
    return rows


def turned(rows, head=3):
    """The same with the items down: without titles, totals and merged cells."""
    plain = [row for row in rows[head:] if row and isinstance(row[0], str) and row[0] != "Total"]
    return [[""] + [row[0] for row in plain[1:]]] + [[plain[0][j]] + [row[j] for row in plain[1:]] for j in range(2, 12)]


ACCENTS = [["Given name", "Family name", "Date of birth", "Phone"],
           ["Zoé", "Lefèvre-Écluse", "14/03/2015", "0032 470 000 001"], ["Søren", "Åkanal", "02.11.2014", "0045 20 00 00 02"], ["Jürgen", "Groß", "2016-02-29", "+49 170 0000003"], ["Íñigo", "Peña; del Río", "31 December 2013", "600 000 004"]]
CENTRAL = [["Given name", "Family name", "Date of birth"], ["Łucja", "Śluza", "14.03.2015"], ["Žofie", "Řeháčková", "02.11.2014"], ["Ľuboš", "Kováč", "29.02.2016"], ["Ágnes", "Zsilipő", "01.05.2013"]]


def main():
    club = children()
    save("messy-roster", [("Juniors", messy_roster(club), False), ("Old", [["not", "used"]], True)],
         [("messy-roster.xlsx", XLSX), ("messy-roster-comma-utf8.csv", csv(",", UTF8))])
    save("messy-register", [("Autumn", messy_register(club), False)], [("messy-register.xlsx", XLSX), ("messy-register-utf16.csv", csv("\t", UTF16))])
    save("messy-signoffs", [("Sign-offs", messy_signoffs(club), False)], [("messy-signoffs.xlsx", XLSX)])
    save("messy-signoffs-turned", [("Sign-offs", turned(messy_signoffs(club)), False)], [("messy-signoffs-turned-semicolon-utf8.csv", csv(";", UTF8))])
    save("row-register", [("Marks", row_register(club), False)], [("row-register.xlsx", XLSX), ("row-register-semicolon-1252.csv", csv(";", WINDOWS1252))])
    save("accents", [("Accents", ACCENTS, False)], [("accents.xlsx", XLSX), ("accents-comma-utf8.csv", csv(",", UTF8)), ("accents-semicolon-1252.csv", csv(";", WINDOWS1252)),
                                                    ("accents-tab-utf16.csv", csv("\t", UTF16)), ("accents-bar-utf8.csv", csv("|", UTF8)), ("accents.ods", "ods"), ("accents.xls", "xls:MS Excel 97"), ("accents.pdf", "pdf:calc_pdf_Export"), ("accents.html", "html:HTML (StarCalc)")])
    with open(os.path.join(HERE, "accents-comma-utf8.csv"), "rb") as plain, open(os.path.join(HERE, "accents-comma-utf8-bom.csv"), "wb") as marked:
        marked.write(b"\xef\xbb\xbf" + plain.read())
    save("central", [("Central", CENTRAL, False)], [("central-semicolon-8859-2.csv", csv(";", ISO2)), ("central-semicolon-1250.csv", csv(";", 33))])
    save("days1904", [("Days", [["Name", "Birth date"], ["Alba Lockyer", Day("2015-03-14")], ["Boris Weirman", Day("2016-02-29")]], False)], [("days1904.xlsx", XLSX)], from1904=True)
    save("cells", [("Cells", [["word", 12.5, 7, True, Day("2016-02-29"), Clock("17:50"), Formula("2+3"), Formula("1/0"), "=1+1", "  blanks  "], [Merge("over two", 2, 2), None, "beside"], [None, None, "below"]], False)], [("cells.xlsx", XLSX)])


if __name__ == "__main__":
    sys.exit(main())
