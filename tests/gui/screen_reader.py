"""Reads the window through AT-SPI, as a screen reader does, and compares it with the plan's file and `assess`.

screen_reader.py PROGRAM PLAN, on an X server. Starts a session bus of its own and itself in it; exits 1 where something
reads differently or a control has no name. Number and leg of a space are worked out here from the plan's text: odd
numbers left, even right, rows on L1 and L2 in turn (common practice, no source).
"""

import json
import os
import subprocess
import sys
import time

LIMIT_SECONDS = 120
CONTROLS = {"push button", "toggle button", "check box", "radio button", "combo box", "text", "entry", "spin button",
            "menu item", "check menu item", "radio menu item", "table", "tree", "page tab", "slider"}

wrong = []


def check(holds, text):
    if not holds:
        wrong.append(text)


def walk(node):
    yield node
    for index in range(node.childCount):
        child = node.getChildAtIndex(index)
        if child is not None:
            yield from walk(child)


def wait_for(what, find):
    end = time.monotonic() + LIMIT_SECONDS
    while time.monotonic() < end:
        try:
            found = find()
        except Exception:  # the tree changes while it is read
            found = None
        if found:
            return found
        time.sleep(0.1)
    sys.exit(f"screen_reader: {what} did not appear within {LIMIT_SECONDS} s")


def showing(node):
    import pyatspi
    return node.getState().contains(pyatspi.STATE_SHOWING)


def labelled(node):
    import pyatspi
    return any(relation.getRelationType() == pyatspi.RELATION_LABELLED_BY and
               any(relation.getTarget(i).name.strip() for i in range(relation.getNTargets()))
               for relation in node.getRelationSet())


def check_names(window, place):
    """Every control that shows has a name, or a label that names it."""
    count = 0
    for node in walk(window):
        role = node.getRoleName()
        if role not in CONTROLS or not showing(node):
            continue
        count += 1
        # A list's own text is its value on this desktop: what it is for stands in its label.
        named = labelled(node) if role == "combo box" else node.name.strip() or labelled(node)
        parents, at = [], node
        for _ in range(4):
            at = at.parent
            if at is None:
                break
            parents.append(f"{at.getRoleName()} \"{at.name}\"")
        check(named, f"{place}: a {role} \"{node.name}\" has no name, in {', '.join(parents)}")
    return count


def space_of(breaker):
    """Printed numbers and legs of a breaker."""
    rows = range(breaker["row"], breaker["row"] + breaker["poles"])
    numbers = [2 * row - (1 if breaker["column"] == "left" else 0) for row in rows]
    suffix = {"whole": "", "a": "A", "b": "B"}[breaker["half"]]
    legs = {"L1" if row % 2 == 1 else "L2" for row in rows}
    return ", ".join(f"{number}{suffix}" for number in numbers), " and ".join(sorted(legs))


def check_board(board, panel, plan, answers):
    cells = [node.name for node in walk(board) if node.getRoleName() == "table cell"]
    breakers = {breaker["id"]: breaker for breaker in plan["breakers"]}
    figures = {entry["breaker"]: entry for entry in answers["breakers"]}
    standing = {}
    for circuit in plan["circuits"]:
        if circuit["planned"] in breakers:
            standing.setdefault(circuit["planned"], []).append(circuit)
    # Every space once.
    spoken = []
    for cell in cells:
        word, _, rest = cell.partition(" ")
        check(word in ("Space", "Spaces"), f"{panel['name']}: \"{cell}\" does not begin with its space")
        for part in rest.split(", ")[:2 if word == "Spaces" else 1]:
            spoken.append(part)
    whole = sorted({int(part.rstrip("AB")) for part in spoken})
    check(whole == list(range(1, panel["spaces"] + 1)), f"{panel['name']}: spaces spoken are {whole}")
    check(len(spoken) == len(set(spoken)), f"{panel['name']}: a space is spoken twice")

    read = 0
    for identity, circuits in standing.items():
        breaker = breakers[identity]
        if breaker["panel"] != panel["id"]:
            continue
        numbers, legs = space_of(breaker)
        poles = breaker["poles"]
        begin = (f"Space{'s' if poles > 1 else ''} {numbers}, {', '.join(circuit['name'] for circuit in circuits)}, "
                 f"{breaker['rating_A']} ampere, {poles} pole{'s' if poles > 1 else ''}, {legs}")
        found = [cell for cell in cells if cell == begin or cell.startswith(begin + ",")]
        check(len(found) == 1, f"{panel['name']}: nothing reads \"{begin}\"")
        if len(found) != 1:
            continue
        read += 1
        rest = found[0][len(begin):]
        entry = figures.get(identity)
        if entry and entry["known"] and entry["grade"]:
            spoken_load = float(rest.split(" A")[0].strip(", ").split(", ")[0])
            most = max(entry["running_A"]) if poles == 2 else entry["running_A"][0]
            # assess rounds to hundredths, the board to tenths.
            check(abs(spoken_load - most) <= 0.0551, f"\"{found[0]}\": assess says {most} A")
        else:
            check("current not known" in rest, f"\"{found[0]}\": assess knows no current")
        names = {("breaker", identity)} | {("circuit", circuit["id"]) for circuit in circuits}
        for finding in answers["findings"]:
            if any((place["kind"], place["id"]) in names for place in finding["places"]):
                check(finding["plain"] in found[0], f"\"{found[0]}\" lacks the finding \"{finding['plain']}\"")
    for cell in cells:
        for part in cell.split("finding: ")[1:]:
            check(any(part.startswith(finding["plain"]) for finding in answers["findings"]),
                  f"\"{cell}\": no finding reads so")
    # Where a circuit that moved stood before, it is said where it stands now.
    for circuit in plan["circuits"]:
        before, now = breakers.get(circuit["breaker"]), breakers.get(circuit["planned"])
        if not before or not now or before["panel"] != panel["id"] or now["panel"] == panel["id"]:
            continue
        numbers, _ = space_of(before)
        to = f"space {space_of(now)[0]}"
        check(any(cell.startswith((f"Space {numbers}, ", f"Spaces {numbers}, ")) and "moved to" in cell and to in cell
                  for cell in cells), f"{panel['name']}: space {numbers} does not say where {circuit['name']} is now")
    return read


def inside(program, path):
    import pyatspi

    with open(path, encoding="utf-8") as file:
        plan = json.load(file)
    answers = json.loads(subprocess.run([program, "assess", path], check=True, stdout=subprocess.PIPE).stdout)
    environment = dict(os.environ, QT_LINUX_ACCESSIBILITY_ALWAYS_ON="1")
    window_program = subprocess.Popen([program, path], env=environment)
    try:
        window = wait_for("the window", lambda: next(
            (frame for application in pyatspi.Registry.getDesktop(0) if application
             and application.get_process_id() == window_program.pid
             for frame in application if frame.getRoleName() == "frame" and showing(frame)), None))
        names = [panel["name"] for panel in plan["panels"] if panel["role"] in ("main", "backup")]
        boards = wait_for("the boards", lambda: (lambda found: found if len(found) == len(names) else None)(
            {name: node for node in walk(window) if node.getRoleName() == "table"
             for name in names if node.name.startswith(name + ", ")}))
        read = sum(check_board(boards[panel["name"]], panel, plan, answers)
                   for panel in plan["panels"] if panel["name"] in boards)
        check(read == len(plan["circuits"]) or read > 20, f"only {read} circuits were read")
        controls = check_names(window, "boards")
        for place in ("Survey", "Paper"):
            button = next(node for node in walk(window)
                          if node.name == place and node.getRoleName() in ("check box", "toggle button"))
            button.queryAction().doAction(0)
            wait_for(place, lambda: button.getState().contains(pyatspi.STATE_CHECKED))
            controls += check_names(window, place)
        print(f"{read} circuits read on {len(boards)} boards, {controls} controls with a name asked for")
    finally:
        window_program.kill()
        window_program.wait()
    for text in wrong:
        print("screen_reader:", text)
    return 1 if wrong else 0


def main():
    if sys.argv[1] == "--inside":
        return inside(sys.argv[2], sys.argv[3])
    environment = {name: value for name, value in os.environ.items()
                   if name not in ("NO_AT_BRIDGE", "DBUS_SESSION_BUS_ADDRESS", "AT_SPI_BUS_ADDRESS")}
    return subprocess.run(["dbus-run-session", "--", sys.executable, __file__, "--inside", *sys.argv[1:3]],
                          env=environment, timeout=280).returncode


if __name__ == "__main__":
    sys.exit(main())
