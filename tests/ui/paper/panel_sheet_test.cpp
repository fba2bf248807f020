// The sheet that hangs in the panel's door: one page where the panel's texts fit it legibly, nothing cut,
// nothing across a rule; where they do not fit, the table breaks between breakers, the signatures stay with
// the table, and each page says which of how many it is.

#include <QtCore/QProcess>
#include <QtCore/QRegularExpression>
#include <QtCore/QTemporaryDir>
#include <QtTest/QtTest>

#include "core/edit/edit.h"
#include "tests/core/example_plans.h"
#include "tests/ui/paper/pages.h"
#include "ui/paper/print.h"
#include "ui/style/fonts.h"

using namespace stayalight;

namespace {

std::vector<Sheet> printed(const Plan& plan, const QString& word, PaperSize size = PaperSize::letter,
                           UnitSystem units = UnitSystem::us) {
  ProgramLanguage language;
  language.setUnits(units);
  const auto chosen = chosenSheets(plan, {word}, language);
  if (!chosen) return {};
  PaperOptions options;
  options.size = size;
  options.version = QStringLiteral("1");
  return sheets(plan, assess(plan), chosen.value(), language, options);
}

QString textOf(const Sheet& page) {
  QStringList all;
  for (const SheetText& text : page.texts) all << text.text;
  return all.join(u' ');
}
// In the order of the page: what breaks over lines can be read in one piece.
QString fieldsOf(const std::vector<Sheet>& pages) {
  QStringList all;
  for (const Sheet& page : pages) all << textOf(page);
  return all.join(u' ');
}

// What no sheet in a door may have: a text that is cut, or that a rule runs through.
QString blemishes(const std::vector<Sheet>& pages) {
  QStringList found;
  for (const Sheet& page : pages) {
    for (const SheetText& text : page.texts) {
      if (text.text.contains(QChar(0x2026))) found << QStringLiteral("cut: ") + text.text;
      if (text.size < 7.0) found << QStringLiteral("small: ") + text.text;
      const QRectF body = text.extent().adjusted(0.5, 0.6, -0.5, -0.6);
      for (const SheetRule& rule : page.rules) {
        const QRectF line = QRectF(rule.from, rule.to).normalized();
        const bool across = line.right() > body.left() && line.left() < body.right() &&
                            line.bottom() > body.top() && line.top() < body.bottom();
        if (across) found << QStringLiteral("ruled through: ") + text.text;
      }
    }
  }
  return found.join(u'\n');
}

// A main panel of 42 spaces, each with a 20 A circuit of its own.
Plan fullPanel(const std::string& name, const std::string& serves) {
  Plan plan = example::exampleHouse();
  plan.breakers.clear();
  plan.circuits.clear();
  example::editPanel(plan, example::kMain).spaces = 42;
  for (int space = 1; space <= 42; ++space) {
    const Column column = space % 2 == 1 ? Column::left : Column::right;
    const CircuitId circuit =
        example::addCircuitWithLoad(plan, example::kMain, {column, (space + 1) / 2}, 1, 20,
                                    name + ' ' + std::to_string(space), example::plainLoad("lamp", 100.0));
    example::editCircuit(plan, circuit).serves = serves;
    example::editCircuit(plan, circuit).conductor = ConductorSize::awg12;
  }
  return plan;
}

const QString kSigned = QStringLiteral("As built, checked on site by");

}  // namespace

class PanelSheetTest : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void initTestCase() { QVERIFY(loadFaces()); }

  void theSheetsOfTheSamplesTakeOnePage_data() {
    QTest::addColumn<QString>("sample");
    QTest::addColumn<QString>("word");
    QTest::addColumn<int>("size");
    QTest::addColumn<int>("units");
    for (const char* sample : {"river-house", "plain-house"}) {
      for (const char* word : {"main-before", "main", "backup"}) {
        for (const int size : {0, 1}) {
          for (const int units : {0, 1}) {
            QTest::addRow("%s %s %d %d", sample, word, size, units)
                << QString::fromLatin1(sample) << QString::fromLatin1(word) << size << units;
          }
        }
      }
    }
  }
  void theSheetsOfTheSamplesTakeOnePage() {
    QFETCH(QString, sample);
    QFETCH(QString, word);
    QFETCH(int, size);
    QFETCH(int, units);
    const Plan plan = samplePlan((sample + QStringLiteral(".stayalight")).toLatin1().constData());
    QVERIFY(!plan.panels.empty());
    const auto pages = printed(plan, word, static_cast<PaperSize>(size), static_cast<UnitSystem>(units));
    QCOMPARE(pages.size(), std::size_t{1});
    QCOMPARE(faults(pages), QString());
    QCOMPARE(blemishes(pages), QString());
    QVERIFY(textOf(pages.front()).contains(kSigned));
    QVERIFY(!textOf(pages.front()).contains(QStringLiteral("page 1 of")));
  }

  // The same on the file that goes to the printer.
  void theFileHasAPageForEachSheet() {
    const Plan plan = samplePlan("river-house.stayalight");
    QTemporaryDir folder;
    for (const char* word : {"main-before", "main", "backup"}) {
      const QString path = folder.filePath(QString::fromLatin1(word));
      QVERIFY(writePdf(printed(plan, QString::fromLatin1(word)), path, QString()).ok());
      QProcess info;
      info.start(QStringLiteral("pdfinfo"), {path});
      QVERIFY(info.waitForFinished());
      static const QRegularExpression one(QStringLiteral("Pages: +1\n"));
      QVERIFY(QString::fromUtf8(info.readAllStandardOutput()).contains(one));
    }
  }

  void fortyTwoSpacesWithLongPurposesTakeOnePage_data() {
    QTest::addColumn<QString>("serves");
    QTest::newRow("none") << QString();
    QTest::newRow("short") << QStringLiteral("Office, desk");
    QTest::newRow("a line") << QStringLiteral("Upstairs, receptacles of the hall");
    QTest::newRow("two lines") << QStringLiteral("Upstairs, receptacles of the east bedroom and passage");
  }
  void fortyTwoSpacesWithLongPurposesTakeOnePage() {
    QFETCH(QString, serves);
    const Plan plan = fullPanel("Bedroom", serves.toStdString());
    for (const auto size : {PaperSize::letter, PaperSize::a4}) {
      const auto pages = printed(plan, QStringLiteral("main"), size);
      QCOMPARE(pages.size(), std::size_t{1});
      QCOMPARE(faults(pages), QString());
      QCOMPARE(blemishes(pages), QString());
      const QString all = fieldsOf(pages);
      QVERIFY(all.contains(kSigned));
      QVERIFY(all.contains(QStringLiteral("Bedroom 42")));
      if (!serves.isEmpty()) QCOMPARE(all.count(serves), 42);
    }
  }

  // Where rows are as high as that, the page cannot hold them: nothing is lost, and no breaker is torn apart.
  void whatOnePageCannotHoldGoesOnAtABreaker() {
    const QString serves = QStringLiteral(
        "Upstairs, receptacles of the east bedroom and of the passage, the lights over both desks there and "
        "the fan in the attic above");
    Plan plan = fullPanel("Bedroom and passage", serves.toStdString());
    // Two-poles at every other pair of rows of the right column, so that most rows cannot be parted.
    for (auto& breaker : plan.breakers) {
      if (breaker->column == Column::right && breaker->row % 2 == 0) breaker.edit().poles = 2;
    }
    std::vector<BreakerId> covered;
    for (const auto& breaker : plan.breakers) {
      if (breaker->column == Column::right && breaker->row % 2 == 1 && breaker->row > 1)
        covered.push_back(breaker->id);
    }
    std::erase_if(plan.circuits, [&](const auto& circuit) {
      return std::find(covered.begin(), covered.end(), circuit->breaker) != covered.end();
    });
    std::erase_if(plan.breakers, [&](const auto& breaker) {
      return std::find(covered.begin(), covered.end(), breaker->id) != covered.end();
    });
    for (const auto size : {PaperSize::letter, PaperSize::a4}) {
      const auto pages = printed(plan, QStringLiteral("main"), size);
      QCOMPARE(pages.size(), std::size_t{2});
      QCOMPARE(faults(pages), QString());
      QCOMPARE(blemishes(pages), QString());
      QCOMPARE(fieldsOf(pages).count(serves), static_cast<qsizetype>(plan.circuits.size()));
      for (std::size_t i = 0; i < pages.size(); ++i)
        QVERIFY(textOf(pages[i]).contains(QStringLiteral(", page %1 of 2").arg(i + 1)));
      // The signatures stand below the last rows, and the last page has more than a row or two.
      QVERIFY(!textOf(pages[0]).contains(kSigned));
      QVERIFY(textOf(pages[1]).contains(kSigned));
      const auto lastPage = textOf(pages[1]);
      for (const char* number : {" 35 ", " 37 ", " 39 ", " 41 "})
        QVERIFY2(lastPage.contains(QString::fromLatin1(number)), number);
      // The first page ends below a two-pole's second row: rows 2 and 3, 4 and 5 stand together.
      int rows = 0;
      for (const SheetMark& mark : pages[0].marks) rows += mark.kind == SheetMarkKind::legLine ? 1 : 0;
      QCOMPARE(rows / 2 % 2, 1);
    }
  }

  // More dangers than the page has room for: table and signatures stay together, dangers come before figures
  // and notes, and none is lost.
  void openFindingsGoOnToASecondPage() {
    Plan plan = fullPanel("Bedroom", "Upstairs, receptacles of the east bedroom and passage");
    for (const auto& [left, right] : {std::pair{1, 2}, std::pair{3, 4}, std::pair{5, 6}}) {
      for (auto& circuit : plan.circuits) {
        if (circuit->id.number == left || circuit->id.number == right) circuit.edit().multiwire = left;
      }
    }
    const Assessment assessment = assess(plan);
    std::vector<const Finding*> dangers;
    for (const Finding& finding : assessment.findings) {
      if (finding.severity == Severity::danger) dangers.push_back(&finding);
    }
    QVERIFY(dangers.size() >= 3);
    const auto pages = printed(plan, QStringLiteral("main"));
    QVERIFY(pages.size() >= 2);
    QCOMPARE(faults(pages), QString());
    QVERIFY(textOf(pages.front()).contains(kSigned));
    const ProgramLanguage language;
    const QString all = fieldsOf(pages);
    for (const Finding* finding : dangers)
      QVERIFY2(all.contains(words(finding->plain, language)), qPrintable(words(finding->plain, language)));
    QVERIFY(textOf(pages.front()).contains(words(dangers.front()->plain, language)));
    QVERIFY(textOf(pages.back()).contains(QStringLiteral("Notes")));
  }
};

QTEST_MAIN(PanelSheetTest)
#include "panel_sheet_test.moc"
