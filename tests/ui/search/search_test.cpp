// What a search finds in a plan, and what the boards then draw quiet.

#include <QtTest/QtTest>

#include "core/assess/assess.h"
#include "tests/core/example_plans.h"
#include "ui/search/search.h"
#include "ui/style/fonts.h"
#include "ui/wording/language.h"

using namespace stayalight;

namespace {

const ProgramLanguage kLanguage;

// Main panel: 1 freezer, 2 den, 3+5 range, 4 spare, tandem 7A and 7B; 12 free. Backup subpanel: 2 the fridge.
struct House {
  Plan plan;
  House() {
    const PanelId main = example::addPanel(plan, PanelRole::main, "Main panel", 20);
    const PanelId backup = example::addPanel(plan, PanelRole::backup, "Backup subpanel", 8);
    const CircuitId freezer = example::addCircuitWithLoad(plan, main, {Column::left, 1}, 1, 20, "Freezer",
                                                          example::plainLoad("Chest freezer", 150));
    example::editCircuit(plan, freezer).serves = "Garage, chest freezer";
    example::editCircuit(plan, freezer).notes = "old compressor, 12 years";
    const CircuitId den = example::addCircuit(plan, main, {Column::right, 1}, 1, 15, "Café corner");
    example::editCircuit(plan, den).room = "Den";
    example::addCircuit(plan, main, {Column::left, 2}, 2, 40, "Range");
    example::addBreaker(plan, main, {Column::right, 2}, 1, 20, Feeds::nothing);
    example::addCircuit(plan, main, {Column::left, 4}, 1, 15, "Bedroom 2", Half::a);
    example::addCircuit(plan, main, {Column::left, 4}, 1, 15, "Bedroom 3", Half::b);
    example::addCircuit(plan, backup, {Column::right, 1}, 1, 20, "Refrigerator");
  }
};

QStringList names(const SearchResult& result) {
  QStringList out;
  for (const Found& found : result.found) out << found.name;
  return out;
}

}  // namespace

class SearchTest : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(loadFaces()); }
  void findsByWords_data();
  void findsByWords();
  void saysWhatHoldsTheWords();
  void findsFindingsAndTheirPlaces();
  void cellsBesideItAreQuiet();
};

void SearchTest::findsByWords_data() {
  QTest::addColumn<QString>("typed");
  QTest::addColumn<QStringList>("found");
  const auto row = [](const char* typed, const QStringList& found) {
    QTest::newRow(typed) << QString::fromUtf8(typed) << found;
  };
  row("", {});
  row("   ", {});
  row("freezer", {"Freezer", "Chest freezer"});
  row("FREEZER", {"Freezer", "Chest freezer"});
  row("garage", {"Freezer"});
  row("den", {"Café corner"});
  row("cafe", {"Café corner"});
  row("café CORNER", {"Café corner"});
  row("corner den", {"Café corner"});
  row("compressor", {"Freezer"});
  row("no such thing", {});
  // numbers are whole words, and spaces
  row("2", {"Café corner", "Refrigerator", "Bedroom 2"});
  row("main 2", {"Café corner"});
  row("backup 2", {"Refrigerator"});
  row("backup subpanel 2", {"Refrigerator"});
  row("3", {"Range", "Backup subpanel, space 3", "Bedroom 3"});
  row("main 5", {"Range"});
  row("main 3, 5", {"Range"});
  row("7A", {"Bedroom 2"});
  row("7b", {"Bedroom 3"});
  row("main 7", {"Bedroom 2", "Bedroom 3"});
  row("main 12", {"Main panel, space 12"});
  row("12", {"Main panel, space 12", "Freezer"});
  row("main 99", {});
  row("bedroom main", {"Bedroom 2", "Bedroom 3"});
  row("bedroom backup", {});
  row("main 4", {"Breaker main 4"});
}

void SearchTest::findsByWords() {
  QFETCH(QString, typed);
  QFETCH(QStringList, found);
  const House house;
  QCOMPARE(names(search(house.plan, {}, typed, kLanguage)), found);
}

void SearchTest::saysWhatHoldsTheWords() {
  const House house;
  const SearchResult notes = search(house.plan, {}, QStringLiteral("compressor"), kLanguage);
  QCOMPARE(notes.found.front().matched, QStringLiteral("Notes: old compressor, 12 years"));
  QCOMPARE(notes.found.front().place, QStringLiteral("main 1, L1"));
  const SearchResult room = search(house.plan, {}, QStringLiteral("den"), kLanguage);
  QCOMPARE(room.found.front().matched, QStringLiteral("Room: Den"));
  const SearchResult load = search(house.plan, {}, QStringLiteral("chest"), kLanguage);
  QCOMPARE(names(load), QStringList({"Chest freezer", "Freezer"}));
  QCOMPARE(load.found.front().matched, QStringLiteral("load on Freezer"));
  QCOMPARE(load.found.front().what, (EntityRef{RecordKind::load, 1}));
  const SearchResult free = search(house.plan, {}, QStringLiteral("main 12"), kLanguage);
  QVERIFY(free.found.front().space.has_value());
  QCOMPARE(free.found.front().place, QStringLiteral("main 12"));
  QVERIFY(free.matching.spaces.contains(*free.found.front().space));
}

void SearchTest::findsFindingsAndTheirPlaces() {
  const House house;
  Finding finding;
  finding.key = "made.up";
  finding.plain = say(MessageId{"search.load_on"}, std::string("Sump pump"));
  finding.places = {{RecordKind::load, 1}, {RecordKind::circuit, 2}};
  const SearchResult result = search(house.plan, {finding}, QStringLiteral("sump"), kLanguage);
  QCOMPARE(names(result), QStringList("load on Sump pump"));
  QVERIFY(result.found.front().kind == FoundKind::finding);
  QCOMPARE(result.found.front().place, QStringLiteral("main 1, L1"));
  QCOMPARE(result.matching.breakers.size(), std::size_t{2});
  QVERIFY(result.matching.breakers.contains(house.plan.circuits[0]->planned));
  QVERIFY(result.matching.breakers.contains(house.plan.circuits[1]->planned));
}

void SearchTest::cellsBesideItAreQuiet() {
  const House house;
  const Assessment assessment = assess(house.plan);
  const PanelId main = house.plan.panels.front()->id;
  BoardState state;
  state.filter = search(house.plan, {}, QStringLiteral("range"), kLanguage).matching;
  const BoardLayout board = layout(house.plan, assessment, main, kLanguage, {}, state);
  for (std::size_t i = 0; i < board.cells.size(); ++i) {
    const BoardCell& cell = board.cells[i];
    const bool matches = cell.name == QStringLiteral("Range");
    QCOMPARE(cell.quiet, !matches);
    QCOMPARE(cell.accessibleName.contains(QStringLiteral("found")), matches);
    int bodies = 0;
    for (const BoardMark& mark : board.marks) {
      if (mark.cell == static_cast<int>(i) && mark.role == MarkRole::body) ++bodies;
    }
    // Not by colour alone: a quiet breaker has an outline in place of its body.
    QCOMPARE(bodies, matches ? 1 : 0);
    for (const BoardText& text : board.texts) {
      if (text.cell == static_cast<int>(i) && text.role == TextRole::name)
        QVERIFY((text.color == ColorRole::ink3) == !matches);
    }
  }
  // Without a filter nothing is quiet.
  for (const BoardCell& cell : layout(house.plan, assessment, main, kLanguage).cells) QVERIFY(!cell.quiet);
}

QTEST_MAIN(SearchTest)
#include "search_test.moc"
