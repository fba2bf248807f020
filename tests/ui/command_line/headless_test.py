#!/usr/bin/env python3
"""The program without a window: headless_test.py PROGRAM SOURCE_TREE."""

import json
import os
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

PROGRAM = sys.argv[1]
SAMPLES = Path(sys.argv[2]) / "samples"
RIVER = SAMPLES / "river-house.stayalight"
PLAIN = SAMPLES / "plain-house.stayalight"


def run(*arguments, stdin=None, stdout=subprocess.PIPE):
    # No display and no session: what a server or a build machine has.
    environment = {key: value for key, value in os.environ.items()
                   if key not in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM", "XDG_RUNTIME_DIR")}
    environment["LC_ALL"] = "C.UTF-8"
    return subprocess.run([PROGRAM, *map(str, arguments)], input=stdin, stdout=stdout, stderr=subprocess.PIPE, env=environment)


class Headless(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.TemporaryDirectory()
        self.addCleanup(self.folder.cleanup)
        self.path = Path(self.folder.name)

    def error(self, result, *parts):
        self.assertEqual(result.returncode, 2, result.stderr)
        lines = result.stderr.decode().splitlines()
        self.assertEqual(len(lines), 1, lines)
        self.assertTrue(lines[0].startswith("stayalight: "), lines)
        for part in parts:
            self.assertIn(part, lines[0])

    def well(self, result, code=0):
        self.assertEqual((result.returncode, result.stderr), (code, b""))
        return result.stdout

    def test_help_and_version(self):
        self.assertIn(b"Exit code: 0 done; 1 review found a danger; 2 something went wrong", self.well(run("--help")))
        self.assertRegex(self.well(run("--version")), rb"^stayalight \d+\.\d+\.\d+\n$")

    def test_assess_gives_one_object_a_plan(self):
        one = json.loads(self.well(run("assess", RIVER)))
        self.assertEqual(one["plan"]["file"], "river-house.stayalight")
        self.assertEqual(one["stayalight_assessment"]["format"], 1)
        self.assertTrue(one["outage"]["known"])
        both = json.loads(self.well(run("assess", RIVER, PLAIN)))
        self.assertEqual([plan["plan"]["file"] for plan in both], ["river-house.stayalight", "plain-house.stayalight"])
        self.assertEqual(both[0], one)

    def test_standard_input_and_twice_the_same(self):
        text = RIVER.read_bytes()
        first = json.loads(self.well(run("assess", "-", stdin=text)))
        self.assertEqual(first["plan"]["file"], "standard input")
        self.assertEqual(self.well(run("assess", RIVER)), self.well(run("assess", RIVER)))

    def test_a_wrong_plan_among_good_ones(self):
        wrong = self.path / "wrong.stayalight"
        wrong.write_text("{}")
        result = run("assess", wrong, PLAIN)
        self.error(result, "wrong.stayalight is JSON, but no Stayalight plan")
        self.assertEqual(len(json.loads(result.stdout)), 1)

    def test_review_exits_1_on_a_danger(self):
        self.well(run("review", PLAIN, RIVER))
        plan = json.loads(PLAIN.read_text())
        plan["transfer"]["listing"] = "none"
        changed = self.path / "changed.stayalight"
        changed.write_text(json.dumps(plan))
        self.assertIn(b"changed.stayalight: danger: ", self.well(run("review", changed), 1))

    def test_print_in_both_papers_and_to_the_standard_output(self):
        for paper, box in (("letter", b"612"), ("a4", b"595")):
            out = self.path / f"{paper}.pdf"
            self.well(run("print", PLAIN, "--out", out, "--paper", paper))
            self.assertTrue(out.read_bytes().startswith(b"%PDF-"))
            information = subprocess.run(["pdfinfo", out], capture_output=True, check=True).stdout
            self.assertIn(b"Page size:       " + box, information)
        self.assertTrue(self.well(run("print", PLAIN, "--out", "-")).startswith(b"%PDF-"))
        self.well(run("print", PLAIN, "--out", self.path / "one.pdf", "--sheets", "backup"))
        text = subprocess.run(["pdftotext", self.path / "one.pdf", "-"], capture_output=True, check=True).stdout
        self.assertIn(b"Kitchen, refrigerator", text)
        self.error(run("print", PLAIN, "--out", self.path / "x.pdf", "--sheets", "cellar"), "cellar")

    def test_units_of_what_people_read(self):
        # The keys of the JSON name their units, so the figures are the same in both.
        us, metric = (json.loads(self.well(run("assess", RIVER, *units))) for units in ((), ("--units", "metric")))
        self.assertEqual(us["segments"][0]["conductor"]["size_AWG"], metric["segments"][0]["conductor"]["size_AWG"])
        self.assertNotIn("mm²", us["segments"][0]["conductor"]["governs"])
        self.assertIn("mm²", metric["segments"][0]["conductor"]["governs"])
        plan = json.loads(PLAIN.read_text())
        for circuit in plan["circuits"]:
            circuit["conductor_AWG"] = "14"
        for breaker in plan["breakers"]:
            breaker["rating_A"] = 20
        changed = self.path / "changed.stayalight"
        changed.write_text(json.dumps(plan))
        self.assertNotIn("mm²", run("review", changed).stdout.decode())
        self.assertIn("14 AWG Cu (2.08 mm²)", run("review", changed, "--units=metric").stdout.decode())
        for units, beside in (("us", False), ("metric", True)):
            out = self.path / f"{units}.pdf"
            self.well(run("print", changed, "--out", out, "--sheets", "main", "--units", units))
            text = subprocess.run(["pdftotext", out, "-"], capture_output=True, check=True).stdout.decode()
            self.assertEqual("2.08 mm²" in text, beside)

    def test_draw_as_pixels_and_as_vectors(self):
        self.well(run("draw", RIVER, "--out", self.path / "a.png"))
        self.assertTrue((self.path / "a.png").read_bytes().startswith(b"\x89PNG"))
        self.well(run("draw", RIVER, "--out", self.path / "a.svg"))
        self.assertIn(b"<svg", (self.path / "a.svg").read_bytes())
        self.assertTrue(self.well(run("draw", RIVER, "--out", "-")).startswith(b"\x89PNG"))

    def test_errors_say_file_and_reason_on_one_line(self):
        self.error(run("assess", self.path), str(self.path), "is a folder")
        self.error(run("assess", self.path / "none"), "there is no such file")
        self.error(run("review", "-", stdin=b"\xff"), "standard input is no plan")
        self.error(run("assess", "-", stdin=b"[" * 100000), "nested more than 64 deep")
        self.error(run("print", PLAIN, "--out", self.path / "gone" / "a.pdf"), "gone")
        self.error(run("draw", PLAIN, "--out", self.path / "gone" / "a.png"), "gone")
        self.error(run("print", PLAIN), "print wants --out FILE")
        with open("/dev/full", "wb") as full:
            self.error(run("assess", PLAIN, stdout=full), "the standard output cannot be written")

    def test_a_later_level_is_read_with_a_note(self):
        plan = json.loads(PLAIN.read_text())
        plan["stayalight"]["level"] = 9
        result = run("assess", "-", stdin=json.dumps(plan).encode())
        self.assertEqual(result.returncode, 0)
        self.assertIn(b"is of level 9", result.stderr)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
