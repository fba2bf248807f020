#!/usr/bin/env python3
"""Rules of the tree that no compiler checks: who includes whom, texts and formulas for every id, and the like.

house.py TREE CHECK   prints one line for each breach and exits 1 where there is one; "house.py --list" names the checks.
Each check is a function from a Tree to a list of breaches; house_test.py tries each one on made-up trees.
"""

import csv
import re
import subprocess
import sys
from pathlib import Path

# Rooms of core from left to right. A room may include rooms of earlier steps and itself, not its neighbours in a step.
STEPS = [
    ["message"],
    ["quantity"],
    ["plan"],
    ["panel"],
    ["code"],
    ["transfer"],
    ["use", "metered", "demand", "sun"],
    ["start", "wiring", "outage"],
    ["service", "onsite"],
    ["review"],
    ["assess"],
    ["report"],
    ["study"],
    ["suggest"],
    ["compare"],
]

# Rooms beside that line, and what they may include. A finding's fix is an edit, so rooms from review on may name edits.
BESIDE = {
    "edit": {"message", "quantity", "plan", "panel"},
    "file": {"message", "quantity", "plan", "panel"},
    "directory": {"message", "quantity", "plan", "panel", "code", "edit"},
    "catalogue": {"message", "quantity", "plan", "directory"},
}
EDIT_READERS_FROM = "review"

# Rooms of ui that print and draw without a widget; a widget of such a room stands in a file that is named after it.
WITHOUT_WIDGETS = ["board", "oneline", "paper", "wording"]

TOP_LEVEL = {
    "CMakeLists.txt", "README.md", "DEVELOPERS.md", "LICENSE",
    "app", "core", "ui", "resources", "tests", "samples",
    ".ci", ".clang-format", ".clang-tidy", ".gitignore",
}

# Spelt in halves, so that this file does not hold the marks it looks for.
UNFINISHED = re.compile(r"\b(" + "|".join(a + b for a, b in
                        [("TO", "DO"), ("FIX", "ME"), ("XX", "X"), ("HA", "CK"), ("TB", "D")]) + r")\b")

SOURCE = {".h", ".cpp"}
TEXT = SOURCE | {".txt", ".cmake", ".md", ".py", ".csv", ".json", ".xml", ".desktop", ".ts", ".svg", ".stayalight", ""}


class Tree:
    """The files of a checkout that belong to it, read once."""

    def __init__(self, root):
        self.root = Path(root)
        self.paths = self._list()
        self._texts = {}

    def _list(self):
        if (self.root / ".git").exists():
            listed = subprocess.run(
                ["git", "-c", "safe.directory=*", "-C", str(self.root), "ls-files", "-z", "--cached", "--others",
                 "--exclude-standard"], check=True, capture_output=True).stdout.decode()
            names = [name for name in listed.split("\0") if name]
        else:
            names = [str(path.relative_to(self.root)) for path in self.root.rglob("*") if path.is_file()]
            names = [name for name in names if not re.match(r"build[^/]*/|out/", name)]
        return sorted(name for name in set(names) if (self.root / name).is_file())

    def text(self, name):
        if name not in self._texts:
            self._texts[name] = (self.root / name).read_text(encoding="utf-8", errors="replace")
        return self._texts[name]

    def sources(self, *folders):
        for name in self.paths:
            if Path(name).suffix in SOURCE and name.split("/")[0] in folders:
                yield name


def line_of(text, offset):
    return text.count("\n", 0, offset) + 1


def without_comments(text):
    """The text with comments blanked, strings kept and every character at its old place."""
    pattern = re.compile(r'//[^\n]*|/\*.*?\*/|R"(\w*)\(.*?\)\1"|"(?:\\.|[^"\\\n])*"|\'(?:\\.|[^\'\\\n])*\'', re.S)

    def blank(match):
        found = match.group(0)
        return re.sub(r"[^\n]", " ", found) if found.startswith("/") else found

    return pattern.sub(blank, text)


INCLUDE = re.compile(r'^[ \t]*#[ \t]*include[ \t]*[<"]([^>"]+)[>"]', re.M)


def includes(tree, name):
    text = without_comments(tree.text(name))
    for match in INCLUDE.finditer(text):
        yield line_of(text, match.start()), match.group(1)


# -- who includes whom -------------------------------------------------------------------------------------------------


def allowed_rooms(room):
    """The rooms that `room` may include, itself among them; None where the room is not known."""
    if room in BESIDE:
        return BESIDE[room] | {room}
    left = set()
    after_edit = False
    for step in STEPS:
        after_edit = after_edit or EDIT_READERS_FROM in step
        if room in step:
            return left | {room} | ({"edit"} if after_edit else set())
        left |= set(step)
    return None


def check_rooms(tree):
    """A room of core includes only rooms to its left."""
    breaches = []
    for name in tree.sources("core"):
        parts = name.split("/")
        if len(parts) < 3:
            breaches.append(f"{name}: a source of core stands in a room")
            continue
        allowed = allowed_rooms(parts[1])
        if allowed is None:
            breaches.append(f"{name}: core has no room {parts[1]}; the rooms stand in tests/house/house.py")
            continue
        for line, header in includes(tree, name):
            target = header.split("/")
            if target[0] in ("ui", "app", "tests"):
                breaches.append(f"{name}:{line}: core includes {header}")
            elif target[0] == "core" and len(target) > 2 and target[1] not in allowed:
                breaches.append(f"{name}:{line}: {parts[1]} may not include {target[1]} ({header})")
            elif target[0] in ("..", "."):
                breaches.append(f"{name}:{line}: includes are written from the top of the tree ({header})")
    return breaches


def check_links(tree):
    """A room of core links only rooms to its left, as its CMakeLists.txt says."""
    breaches = []
    for name in tree.paths:
        if not re.fullmatch(r"core/\w+/CMakeLists\.txt", name):
            continue
        text = re.sub(r"#[^\n]*", "", tree.text(name))
        for match in re.finditer(r"stayalight_room\(\s*(\w+)([^)]*)\)", text):
            room = match.group(1)
            allowed = allowed_rooms(room)
            if allowed is None:
                breaches.append(f"{name}: core has no room {room}")
                continue
            rooms = re.search(r"\bROOMS\b([\s\w]*?)(?=\b[A-Z]{3,}\b|$)", match.group(2))
            for other in rooms.group(1).split() if rooms else []:
                if other not in allowed:
                    breaches.append(f"{name}: {room} may not link {other}")
    return breaches


QT_HEADER = re.compile(r"^(Qt\w*/|Q[A-Z]\w*$|Qt\w*$|q[a-z]+\.h$)")


def check_core_without_qt(tree):
    """Core includes no Qt header."""
    return [f"{name}:{line}: core includes {header}"
            for name in tree.sources("core") for line, header in includes(tree, name) if QT_HEADER.match(header)]


def check_heavy_headers(tree):
    """Headers that cost seconds a file stay where they are meant: nlohmann in core/file and core/report, rapidcheck in
    property tests, the compiler's missing std parts nowhere."""
    breaches = []
    for name in tree.sources("core", "ui", "app", "tests"):
        for line, header in includes(tree, name):
            if header.startswith("nlohmann"):
                in_place = re.match(r"core/(file|report)/\w+\.cpp$", name) or name.startswith("tests/")
                if not in_place:
                    breaches.append(f"{name}:{line}: nlohmann belongs in sources of core/file and core/report")
            elif header.startswith("rapidcheck"):
                if not (name.startswith("tests/") and name.endswith("_properties.cpp")):
                    breaches.append(f"{name}:{line}: rapidcheck belongs in *_properties.cpp of the tests")
            elif header in ("format", "expected"):
                breaches.append(f"{name}:{line}: <{header}> is not in g++ 12")
        if name.startswith("core/"):
            text = without_comments(tree.text(name))
            for match in re.finditer(r"\bstd::(?:ranges::)?views::", text):
                breaches.append(f"{name}:{line_of(text, match.start())}: clang 14 does not compile std::views")
    return breaches


WIDGET_FILE = re.compile(r"_(widget|view|dialog)\.(h|cpp)$")

# The classes of QtWidgets that a painter is most likely to reach for; the link line of these rooms bars the rest.
WIDGET_HEADER = re.compile(
    r"^(QtWidgets(/.*)?|QtCharts(/.*)?|QtPrintSupport(/.*)?|QApplication|Q\w*Widget|Q\w*Dialog|Q\w*Button|Q\w*Edit|"
    r"Q\w*View|Q(Rubber|Tool|Menu|Scroll|Status|Tab|Title|Progress)Bar|QLabel|QMenu|QFrame|QComboBox|QGraphics\w+|"
    r"QStyle\w*|QToolTip|QLayout|Q(Grid|HBox|VBox|Form|Stacked)Layout|QChart\w*|QPrinter\w*|QMainWindow|QSplitter|"
    r"QShortcut|QMessageBox|QItemDelegate|QStyledItemDelegate)$")


def check_without_widgets(tree):
    """The rooms of ui that headless printing uses include no widget, and no room of ui that has some."""
    breaches = []
    for name in tree.sources("ui"):
        parts = name.split("/")
        if len(parts) < 3 or parts[1] not in WITHOUT_WIDGETS or WIDGET_FILE.search(name):
            continue
        for line, header in includes(tree, name):
            target = header.split("/")
            if WIDGET_HEADER.match(header) or (target[0] == "ui" and WIDGET_FILE.search(header)):
                breaches.append(f"{name}:{line}: {parts[1]} draws without widgets, and includes {header}")
            elif target[0] == "ui" and len(target) > 2 and target[1] not in WITHOUT_WIDGETS + ["style"]:
                breaches.append(f"{name}:{line}: {parts[1]} may not include {target[1]} ({header})")
    return breaches


def check_lone_app(tree):
    """Nothing includes app; ui does not include tests."""
    return [f"{name}:{line}: includes {header}"
            for name in tree.sources("core", "ui") for line, header in includes(tree, name)
            if header.split("/")[0] in ("app", "tests")]


# -- ids and their tables ----------------------------------------------------------------------------------------------


def literals_of(tree, type_name):
    """Every literal key of an id type in core, ui and app: (key, file, line, constant's name or None)."""
    pattern = re.compile(r"\b" + type_name + r"\b(?:\s+(\w+))?\s*(?:=\s*)?\{\s*(?:" + type_name + r"\s*\{\s*)?\"([^\"]+)\"")
    for name in tree.sources("core", "ui", "app"):
        text = without_comments(tree.text(name))
        for match in pattern.finditer(text):
            yield match.group(2), name, line_of(text, match.start()), match.group(1)


TEXT_TABLE = re.compile(r"core/message/texts/\w+\.cpp$")
FORMULA_TABLE = re.compile(r"core/message/formulas/\w+\.cpp$")


def text_rows(tree):
    """The table of texts: key -> (English, place). Rows are {"key", TEXT("context", "English" "more")}."""
    rows, breaches = {}, []
    pattern = re.compile(r'\{\s*"([^"]+)"\s*,\s*TEXT\(\s*"[^"]*"\s*,\s*((?:"(?:\\.|[^"\\])*"\s*)+)\)')
    for name in filter(TEXT_TABLE.match, tree.paths):
        text = without_comments(tree.text(name))
        matches = list(pattern.finditer(text))
        for match in matches:
            english = "".join(re.findall(r'"((?:\\.|[^"\\])*)"', match.group(2)))
            place = f"{name}:{line_of(text, match.start())}"
            if match.group(1) in rows:
                breaches.append(f"{place}: {match.group(1)} has two texts")
            rows[match.group(1)] = (english, place)
        if len(re.findall(r"\bTEXT\(\s*\"", text)) != len(matches):
            breaches.append(f"{name}: a row is not of the shape {{\"key\", TEXT(\"context\", \"English\")}}")
    return rows, breaches


def used_keys(tree, table):
    """Every string literal in core, ui and app outside the tables themselves, and those that end in a dot (beginnings
    of keys that are put together)."""
    whole, beginnings = set(), set()
    for name in tree.sources("core", "ui", "app"):
        if table.match(name):
            continue
        for literal in re.findall(r'"((?:\\.|[^"\\\n])*)"', without_comments(tree.text(name))):
            whole.add(literal)
            if re.fullmatch(r"[a-z_]+(\.[a-z_]+)*\.", literal):
                beginnings.add(literal)
    return whole, tuple(beginnings)


def check_texts(tree):
    """Each message id has a text, each text is used, and its places %1, %2 ... are numbered without a gap."""
    rows, breaches = text_rows(tree)
    for key, name, line, _ in literals_of(tree, "MessageId"):
        if key not in rows:
            breaches.append(f"{name}:{line}: {key} has no text in core/message/texts")
    whole, beginnings = used_keys(tree, TEXT_TABLE)
    # The field table names the key of a field's label; its help and the words of its choices hang on that key.
    labels = {literal for literal in whole if literal.startswith("field.")}
    for key, (english, place) in rows.items():
        if key not in whole and not key.startswith(beginnings or ("\0",)) and key.rpartition(".")[0] not in labels:
            breaches.append(f"{place}: nothing says {key}")
        numbers = {int(n) for n in re.findall(r"%([0-9])", english.replace("%%", ""))}
        if numbers != set(range(1, len(numbers) + 1)):
            breaches.append(f"{place}: {key} has the places {sorted(numbers)}")
        if not english.strip():
            breaches.append(f"{place}: {key} has an empty text")
    return breaches


def call_arguments(text, opening):
    """The arguments of a call whose bracket opens at `opening`, split at its commas; None where it does not close."""
    pairs = {"(": ")", "{": "}", "[": "]"}
    depth, start, arguments, i = [], opening + 1, [], opening
    while i < len(text):
        c = text[i]
        if c in "\"'":
            i += 1
            while i < len(text) and text[i] != c:
                i += 2 if text[i] == "\\" else 1
        elif c in pairs:
            depth.append(pairs[c])
        elif depth and c == depth[-1]:
            depth.pop()
            if not depth:
                last = text[start:i].strip()
                return arguments + ([last] if last or arguments else [])
        elif c == "," and len(depth) == 1:
            arguments.append(text[start:i].strip())
            start = i + 1
        i += 1
    return None


def check_arguments(tree):
    """say(id, ...) gives a text as many arguments as it has places."""
    rows, breaches = text_rows(tree)
    places = {key: max([int(n) for n in re.findall(r"%([0-9])", english.replace("%%", ""))], default=0)
              for key, (english, _) in rows.items()}
    in_file, everywhere = {}, {}
    for key, name, _, constant in literals_of(tree, "MessageId"):
        if constant:
            in_file[(name, constant)] = key
            everywhere.setdefault(constant, set()).add(key)
    for name in tree.sources("core", "ui", "app"):
        text = without_comments(tree.text(name))
        for match in re.finditer(r"(?<![\w.>])say\(", text):
            arguments = call_arguments(text, match.end() - 1)
            if not arguments or "..." in text[match.start():match.start() + 200].split(";")[0]:
                continue
            direct = re.fullmatch(r'MessageId\s*\{\s*"([^"]+)"\s*\}', arguments[0])
            constant = re.fullmatch(r"(?:\w+::)*(\w+)", arguments[0])
            key = None
            if direct:
                key = direct.group(1)
            elif constant and (name, constant.group(1)) in in_file:
                key = in_file[(name, constant.group(1))]
            elif constant and len(everywhere.get(constant.group(1), ())) == 1:
                key = next(iter(everywhere[constant.group(1)]))
            if key in places and len(arguments) - 1 != places[key]:
                breaches.append(f"{name}:{line_of(text, match.start())}: {key} has {places[key]} places "
                                f"and is given {len(arguments) - 1} arguments")
    return breaches


def check_formulas(tree):
    """Each formula id has a row in the table of formulas, and each row is used."""
    breaches, rows = [], {}
    for name in filter(FORMULA_TABLE.match, tree.paths):
        text = without_comments(tree.text(name))
        for match in re.finditer(r'\{\s*"([^"]+)"\s*,\s*"', text):
            place = f"{name}:{line_of(text, match.start())}"
            if match.group(1) in rows:
                breaches.append(f"{place}: {match.group(1)} stands twice")
            rows[match.group(1)] = place
    for key, name, line, _ in literals_of(tree, "FormulaId"):
        if key not in rows:
            breaches.append(f"{name}:{line}: {key} has no row in core/message/formulas")
    whole, _ = used_keys(tree, FORMULA_TABLE)
    return breaches + [f"{place}: nothing computes {key}" for key, place in rows.items() if key not in whole]


def check_citations(tree):
    """Each rule id has a row in the table of citations."""
    table = "resources/tables/citations.csv"
    literals = list(literals_of(tree, "RuleId"))
    if table not in tree.paths:
        return [f"{name}:{line}: {key}, and there is no {table}" for key, name, line, _ in literals]
    lines = [line for line in tree.text(table).splitlines() if line.strip() and not line.startswith("#")]
    rows = {row[0].strip() for row in csv.reader(lines) if row}
    return [f"{name}:{line}: {key} has no row in {table}" for key, name, line, _ in literals if key not in rows]


TABLES_DEFAULT = re.compile(r"(\w+)\s*\(([^;{}]*?)const\s+Tables\s*&\s*tables\s*=\s*publishedTables\(\)\s*\)\s*;")
# Rooms whose figures assess() answers with the tables it was given.
TABLES_UP_TO = "assess"


def check_tables(tree):
    """A room that computes hands the tables it was given to all that it calls: assess() never mixes two sets of them."""
    rooms = []
    for step in STEPS:
        rooms += step
        if TABLES_UP_TO in step:
            break
    takers, breaches = set(), []
    for name in tree.sources("core"):
        if Path(name).suffix == ".h":
            takers |= {match.group(1) for match in TABLES_DEFAULT.finditer(without_comments(tree.text(name)))}
    if not takers:
        return []
    call = re.compile(r"(?<![\w.>])(" + "|".join(sorted(takers)) + r")\(")
    for name in tree.sources("core"):
        if Path(name).suffix != ".cpp" or name.split("/")[1] not in rooms or name.startswith("core/code/generator/"):
            continue
        text = without_comments(tree.text(name))
        for match in call.finditer(text):
            arguments = call_arguments(text, match.end() - 1)
            if arguments is not None and not re.search(r"\btables\w*\b", arguments[-1] if arguments else ""):
                breaches.append(f"{name}:{line_of(text, match.start())}: {match.group(1)} is not given the tables")
    return breaches


# -- the tree itself ---------------------------------------------------------------------------------------------------


def check_unfinished(tree):
    """No mark of unfinished work."""
    breaches = []
    for name in tree.paths:
        if name == "LICENSE" or Path(name).suffix not in TEXT:
            continue
        text = tree.text(name)
        breaches += [f"{name}:{line_of(text, match.start())}: {match.group(0)}" for match in UNFINISHED.finditer(text)]
    return breaches


def check_top_level(tree):
    """The top level holds only the entries that the house has."""
    return [f"{top}: not an entry of the top level" for top in sorted({name.split("/")[0] for name in tree.paths})
            if top not in TOP_LEVEL]


def check_file_names(tree):
    """Folders and files are named after their subject."""
    pattern = re.compile(r"(manager|helper|util|misc)s?(?![a-z])")
    return [f"{name}: named after a pattern, not a subject" for name in tree.paths
            if name.split("/")[0] in ("core", "ui", "app", "tests") and pattern.search(name.lower())]


def check_dependencies(tree):
    """DEVELOPERS.md names every package that CMake looks for and that the scripts install."""
    breaches = []
    page = tree.text("DEVELOPERS.md").lower() if "DEVELOPERS.md" in tree.paths else ""
    for name in tree.paths:
        if not (name.endswith("CMakeLists.txt") or name.endswith(".cmake")):
            continue
        text = re.sub(r"#[^\n]*", "", tree.text(name))
        for match in re.finditer(r"\bfind_package\(\s*(\w+)([^)]*)\)", text):
            wanted = [match.group(1)]
            if match.group(1) == "Qt6":
                wanted += ["Qt " + part for part in re.findall(r"\b(?!REQUIRED|COMPONENTS|QUIET)[A-Z]\w+", match.group(2))]
            breaches += [f"{name}: DEVELOPERS.md does not name {want}" for want in wanted if want.lower() not in page]
        for match in re.finditer(r"\bfind_library\(\s*\w+\s+(?:NAMES\s+)?(\w+)", text):
            if match.group(1).lower() not in page:
                breaches.append(f"{name}: DEVELOPERS.md does not name {match.group(1)}")
        for match in re.finditer(r"\bfind_program\(\s*\w+\s+(?:NAMES\s+)?([\w-]+)", text):
            if match.group(1).lower() not in page:
                breaches.append(f"{name}: DEVELOPERS.md does not name {match.group(1)}")
        for match in re.finditer(r"\bpkg_check_modules\(\s*\w+([^)]*)\)", text):
            for module in re.findall(r"(?<![\w-])[a-z][\w+-]*", match.group(1)):
                if module not in page:
                    breaches.append(f"{name}: DEVELOPERS.md does not name {module}")
    packages = "app/packages.sh"
    if packages in tree.paths:
        text = re.sub(r"#[^\n]*", "", tree.text(packages))
        for match in re.finditer(r"^(\w+_packages)=\((.*?)\)", text, re.S | re.M):
            breaches += [f"{packages}: DEVELOPERS.md does not name {package}" for package in match.group(2).split()
                         if not re.search(r"(?<![\w-])" + re.escape(package) + r"(?![\w-])", page)]
    return breaches


CHECKS = {name[len("check_"):]: check for name, check in list(globals().items()) if name.startswith("check_")}


def main(arguments):
    if arguments == ["--list"]:
        print("\n".join(CHECKS))
        return 0
    if len(arguments) != 2 or arguments[1] not in CHECKS:
        print(__doc__, file=sys.stderr)
        return 2
    tree = Tree(arguments[0])
    if not tree.paths:
        print(f"{arguments[0]}: no files", file=sys.stderr)
        return 2
    breaches = CHECKS[arguments[1]](tree)
    for breach in breaches:
        print(breach)
    return 1 if breaches else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
