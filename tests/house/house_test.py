#!/usr/bin/env python3
"""Tries each check of house.py on made-up trees: one that keeps the rule, and ones that break it."""

import tempfile
import unittest
from pathlib import Path

import house

TEXTS = 'const TextRow kRows[] = {\n    {"a.b", TEXT("Stayalight", "%1 of %2 " "A")},\n};\n'
FORMULAS = 'const FormulaRow kRows[] = {\n    {"i.p", "P / V", "I", "definition"},\n};\n'
USES = '#include "core/message/message.h"\nconstexpr MessageId kA{"a.b"};\nMessage m() { return say(kA, name(1, 2), 3); }\n'


class HouseTest(unittest.TestCase):
    def breaches(self, check, files):
        with tempfile.TemporaryDirectory() as folder:
            for name, text in files.items():
                path = Path(folder, name)
                path.parent.mkdir(parents=True, exist_ok=True)
                path.write_text(text, encoding="utf-8")
            return house.CHECKS[check](house.Tree(folder))

    def keeps(self, check, files):
        self.assertEqual(self.breaches(check, files), [])

    def breaks(self, check, files, part, count=1):
        found = self.breaches(check, files)
        self.assertEqual(len(found), count, found)
        self.assertIn(part, found[0])

    def test_rooms_include_to_the_left_only(self):
        plan = '#include "core/plan/plan.h"\n'
        self.keeps("rooms", {"core/panel/fits.cpp": plan, "core/plan/a.h": '#include "core/quantity/quantity.h"\n',
                             "core/review/rule.h": '#include "core/edit/edit.h"\n',
                             "core/plan/said.h": '// #include "core/assess/assess.h"\n'})
        self.breaks("rooms", {"core/plan/a.h": '#include "core/panel/fits.h"\n'}, "plan may not include panel")
        self.breaks("rooms", {"core/use/a.h": '#include "core/sun/sun.h"\n'}, "use may not include sun")
        self.breaks("rooms", {"core/message/a.h": '#include "core/quantity/quantity.h"\n'}, "message may not include quantity")
        self.breaks("rooms", {"core/panel/a.h": '#include "core/edit/edit.h"\n'}, "panel may not include edit")
        self.breaks("rooms", {"core/edit/a.h": '#include "core/assess/assess.h"\n'}, "edit may not include assess")
        self.breaks("rooms", {"core/plan/a.h": '#include "ui/board/board.h"\n'}, "core includes ui/board/board.h")
        self.breaks("rooms", {"core/plan/a.h": '#include "../panel/fits.h"\n'}, "from the top of the tree")
        self.breaks("rooms", {"core/attic/a.h": plan}, "core has no room attic")

    def test_tables_are_handed_on(self):
        header = {"core/code/a.h": "int ampacity(int size,\n             const Tables& tables = publishedTables());\n"}
        use = "core/wiring/b.cpp"
        self.keeps("tables", {use: "int b() { return ampacity(1); }\n"})
        self.keeps("tables", {**header, use: "int b(const Tables& tables) { return ampacity(f(1, 2), tables); }\n"})
        self.keeps("tables", {**header, use: "int b(const In& in) { return ampacity(1, in.tables); }\n"})
        self.keeps("tables", {**header, "core/directory/b.cpp": "int b() { return ampacity(1); }\n"})
        self.breaks("tables", {**header, use: "int b(const Tables& tables) { return ampacity(g(tables, 1), 2); }\n"},
                    "ampacity is not given the tables")

    def test_rooms_link_to_the_left_only(self):
        self.keeps("links", {"core/panel/CMakeLists.txt": "stayalight_room(panel SOURCES fits.cpp ROOMS plan)\n"})
        self.breaks("links", {"core/plan/CMakeLists.txt": "stayalight_room(plan SOURCES a.cpp\n  ROOMS message panel)\n"},
                    "plan may not link panel")

    def test_core_includes_no_qt(self):
        self.keeps("core_without_qt", {"core/plan/a.cpp": "#include <string>\n#include <queue>\n",
                                       "ui/a.cpp": "#include <QString>\n"})
        for header in ("QString", "QtCore/QString", "qglobal.h", "QtGlobal"):
            self.breaks("core_without_qt", {"core/plan/a.cpp": f"#include <{header}>\n"}, header)

    def test_heavy_headers_stay_in_place(self):
        json, check = "#include <nlohmann/json.hpp>\n", "#include <rapidcheck.h>\n"
        self.keeps("heavy_headers", {"core/file/read.cpp": json, "core/report/json.cpp": json,
                                     "tests/core/plan/plan_properties.cpp": check})
        self.breaks("heavy_headers", {"core/file/read.h": json}, "nlohmann belongs")
        self.breaks("heavy_headers", {"core/plan/plan.cpp": json}, "nlohmann belongs")
        self.breaks("heavy_headers", {"tests/core/plan/plan_test.cpp": check}, "rapidcheck belongs")
        self.breaks("heavy_headers", {"core/plan/plan.cpp": "#include <format>\n"}, "not in g++ 12")
        self.breaks("heavy_headers", {"core/plan/plan.cpp": "auto v = x | std::views::all;\n"}, "std::views")

    def test_painting_rooms_have_no_widgets(self):
        self.keeps("without_widgets", {"ui/board/a.cpp": '#include <QPainter>\n#include "ui/style/style.h"\n',
                                       "ui/shell/a.cpp": "#include <QWidget>\n",
                                     "ui/board/board_widget.h": "#include <QWidget>\n"})
        self.breaks("without_widgets", {"ui/paper/a.cpp": "#include <QWidget>\n"}, "paper draws without widgets")
        self.breaks("without_widgets", {"ui/board/a.cpp": '#include "ui/board/board_widget.h"\n'}, "board_widget.h")
        self.breaks("without_widgets", {"ui/board/a.cpp": '#include "ui/shell/window.h"\n'}, "board may not include shell")

    def test_nothing_includes_app(self):
        self.keeps("lone_app", {"ui/a.cpp": '#include "core/plan/plan.h"\n'})
        self.breaks("lone_app", {"ui/a.cpp": '#include "app/command.h"\n'}, "app/command.h")

    def test_each_message_has_a_text_and_each_text_a_message(self):
        good = {"core/message/texts/plan.cpp": TEXTS, "core/plan/a.cpp": USES}
        self.keeps("texts", good)
        self.breaks("texts", good | {"ui/a.cpp": 'say(MessageId{"a.c"});\n'}, "a.c has no text")
        self.breaks("texts", {"core/message/texts/plan.cpp": TEXTS}, "nothing says a.b")
        self.breaks("texts", {"core/message/texts/plan.cpp": TEXTS, "core/plan/a.cpp": '// "a.b"\n'}, "nothing says a.b")
        self.keeps("texts", {"core/message/texts/plan.cpp": TEXTS, "core/plan/a.cpp": 'auto key = "a." + field;\n'})
        self.breaks("texts", good | {"core/message/texts/plan.cpp": TEXTS.replace("%2", "%3")}, "has the places [1, 3]")
        self.breaks("texts", good | {"core/message/texts/plan.cpp": TEXTS + TEXTS}, "a.b has two texts")

    def test_messages_are_given_as_many_arguments_as_their_text_has_places(self):
        good = {"core/message/texts/plan.cpp": TEXTS, "core/plan/a.cpp": USES}
        self.keeps("arguments", good)
        self.breaks("arguments", good | {"core/plan/a.cpp": USES.replace(", 3)", ")")}, "has 2 places and is given 1")
        self.breaks("arguments", good | {"ui/a.cpp": 'x = say(MessageId{"a.b"}, std::string{"a, b"}, 2, 3);\n'},
                    "has 2 places and is given 3")

    def test_each_formula_has_a_row_and_each_row_a_use(self):
        use = 'constexpr FormulaId kI{"i.p"};\n'
        good = {"core/message/formulas/use.cpp": FORMULAS, "core/use/a.cpp": use}
        self.keeps("formulas", good)
        self.breaks("formulas", good | {"core/use/b.cpp": 'step.formula = FormulaId{"i.q"};\n'}, "i.q has no row")
        self.breaks("formulas", {"core/message/formulas/use.cpp": FORMULAS}, "nothing computes i.p")

    def test_each_rule_has_a_citation(self):
        rule = {"core/review/a.cpp": 'RuleId kRule{"x.y"};\n'}
        table = "resources/tables/citations.csv"
        self.keeps("citations", rule | {table: "# source\nrule,2023\nx.y,1.2\n"})
        self.breaks("citations", rule | {table: "rule,2023\nx.z,1.2\n"}, "x.y has no row")
        self.breaks("citations", rule, "there is no")

    def test_unfinished_work_is_seen(self):
        self.keeps("unfinished", {"core/plan/a.cpp": "// Everything is done.\n"})
        self.breaks("unfinished", {"ui/a.cpp": "// TO" + "DO: more\n"}, "ui/a.cpp:1")
        self.breaks("unfinished", {"README.md": "a\nFIX" + "ME\n"}, "README.md:2")

    def test_top_level_is_kept(self):
        self.keeps("top_level", {"README.md": "", "core/plan/a.h": "", "build-x/a": "", "out/a.pdf": ""})
        self.breaks("top_level", {"tools/a.py": ""}, "tools")

    def test_names_say_the_subject(self):
        self.keeps("file_names", {"core/plan/utility.h": "", "ui/a.cpp": ""})
        self.breaks("file_names", {"ui/style/string_utils.cpp": ""}, "string_utils")
        self.breaks("file_names", {"ui/PlanManager.h": ""}, "PlanManager")

    def test_dependencies_are_on_the_page(self):
        cmake = "find_package(Qt6 6.4 REQUIRED COMPONENTS Charts)\nfind_library(Q qpdf)\nfind_program(M mold)\n"
        files = {"CMakeLists.txt": cmake, "app/packages.sh": "build_packages=(\n  g++ cmake\n)\n"}
        self.keeps("dependencies", files | {"DEVELOPERS.md": "Qt6, Qt Charts; qpdf, mold, g++, cmake"})
        self.breaks("dependencies", files | {"DEVELOPERS.md": "Qt6; qpdf, mold, g++, cmake"}, "Qt Charts")
        self.breaks("dependencies", files | {"DEVELOPERS.md": "Qt6, Qt Charts; qpdf, mold, g++"}, "cmake")

    def test_each_check_is_tried_here(self):
        here = Path(__file__).read_text(encoding="utf-8")
        for name in house.CHECKS:
            self.assertIn(f'self.breaks("{name}"', here)
            self.assertIn(f'self.keeps("{name}"', here)

    def test_comments_are_left_out_and_strings_kept(self):
        text = 'a = "// not one"; // one\n/* two\n */ b\n'
        self.assertEqual(house.without_comments(text).splitlines(), ['a = "// not one";       ', "      ", "    b"])


if __name__ == "__main__":
    unittest.main()
