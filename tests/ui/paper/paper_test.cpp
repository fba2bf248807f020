// The sheets: every page of both samples and of panels of many sizes, in both paper sizes, is free of
// overlaps and stays on the page; the PDF can be searched, has an outline, and is the same each time.

#include <QtCore/QFile>
#include <QtCore/QProcess>
#include <QtCore/QTemporaryDir>
#include <QtTest/QtTest>

#include "core/edit/edit.h"
#include "core/file/file.h"
#include "tests/core/demand/calculated_house.h"
#include "tests/core/example_plans.h"
#include "ui/paper/print.h"
#include "ui/style/fonts.h"
#include "ui/wording/language.h"

using namespace stayalight;

namespace {

Plan samplePlan(const char* name) {
  QFile file(QStringLiteral(STAYALIGHT_SOURCE_DIR "/samples/") + QString::fromLatin1(name));
  if (!file.open(QIODevice::ReadOnly)) return {};
  const QByteArray bytes = file.readAll();
  const auto read =
      readPlan(std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())), name);
  return read ? read.value().plan : Plan{};
}

std::vector<Sheet> allSheets(const Plan& plan, const Language& language, PaperSize size = PaperSize::letter) {
  PaperOptions options;
  options.size = size;
  options.planName = QStringLiteral("test");
  options.version = QStringLiteral("1");
  return sheets(plan, assess(plan), sheetChoices(plan, language), language, options);
}

QString faults(const std::vector<Sheet>& pages) {
  QStringList found;
  for (std::size_t p = 0; p < pages.size(); ++p) {
    const Sheet& page = pages[p];
    const QRectF paper(QPointF(18, 18), page.size - QSizeF(36, 36));
    for (std::size_t i = 0; i < page.texts.size(); ++i) {
      const QRectF mine = page.texts[i].extent();
      if (!paper.contains(mine))
        found << QStringLiteral("page %1: off the page: %2").arg(p + 1).arg(page.texts[i].text);
      for (std::size_t k = i + 1; k < page.texts.size(); ++k) {
        const QRectF cut = mine & page.texts[k].extent();
        if (cut.width() > 0.6 && cut.height() > 1.2) {
          found << QStringLiteral("page %1: \"%2\" over \"%3\"")
                       .arg(p + 1)
                       .arg(page.texts[i].text, page.texts[k].text);
        }
      }
    }
  }
  return found.join(u'\n');
}

QString run(const QString& program, const QStringList& arguments) {
  QProcess process;
  process.start(program, arguments);
  process.waitForFinished();
  return QString::fromUtf8(process.readAllStandardOutput());
}

}  // namespace

class PaperTest : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void initTestCase() { QVERIFY(loadFaces()); }

  void pagesHaveNoOverlaps_data() {
    QTest::addColumn<QString>("name");
    QTest::addColumn<int>("size");
    for (const char* name : {"plain-house.stayalight", "river-house.stayalight"}) {
      for (const int size : {0, 1})
        QTest::addRow("%s %s", name, size == 0 ? "Letter" : "A4") << QString::fromLatin1(name) << size;
    }
  }
  void pagesHaveNoOverlaps() {
    QFETCH(QString, name);
    QFETCH(int, size);
    const Plan plan = samplePlan(name.toLatin1().constData());
    QVERIFY(!plan.panels.empty());
    const auto pages = allSheets(plan, ProgramLanguage(), static_cast<PaperSize>(size));
    QVERIFY(pages.size() >= 3);
    for (const Sheet& page : pages) QCOMPARE(page.size, pageSize(static_cast<PaperSize>(size)));
    QCOMPARE(faults(pages), QString());
  }

  // Every line of the calculation with its figure and its rule, what is missing, and the paths; none abroad.
  void theLoadCalculationIsPrintedLineByLine() {
    const ProgramLanguage language;
    const auto printed = [&](const Plan& plan) {
      const auto chosen = chosenSheets(plan, {QStringLiteral("load-calculation")}, language);
      if (!chosen) return QString();
      PaperOptions options;
      options.version = QStringLiteral("1");
      const Assessment assessment = assess(plan);
      const auto pages = sheets(plan, assessment, chosen.value(), language, options);
      if (!faults(pages).isEmpty()) return faults(pages);
      QStringList all;
      for (const Sheet& page : pages) {
        for (const SheetText& text : page.texts) all << text.text;
      }
      return all.join(u' ');
    };
    Plan plan = calculated::house();
    QString text = printed(plan);
    const DemandFigures figures = calculated::figures(plan);
    for (const DemandLine& line : figures.feeder.lines) {
      QVERIFY2(text.contains(words(line.what, language)), qPrintable(words(line.what, language)));
      if (line.load) QVERIFY(text.contains(QString::fromStdString(language.number(line.load->count(), 0))));
    }
    for (const char* word :
         {"3,930", "16.5", "220.45", "220.61", "702.4(A)(1)", "not confirmed", "kept", "within"})
      QVERIFY2(text.contains(QString::fromLatin1(word)), word);

    plan.transfer.edit().calculatedLoad = VoltAmperes(9000);
    text = printed(plan);
    QVERIFY(text.contains(QStringLiteral("Typed in: 9,000 VA")));
    QVERIFY(text.contains(QStringLiteral("3,930")));

    plan.transfer.edit().calculatedLoad.reset();
    calculated::circuit(plan, "Lights").areaServed.reset();
    QVERIFY(printed(plan).contains(QStringLiteral("Still needed: area served by Lights")));

    plan.site.edit().edition = CodeEdition::y2026;
    QVERIFY(printed(plan).contains(QStringLiteral("not known for 2026")));

    plan.site.edit().country = Country::canada;
    QVERIFY(printed(plan).isEmpty());
  }

  void panelsOfEverySizePrint() {
    for (int spaces = 4; spaces <= 84; ++spaces) {
      Plan plan = newPlan();
      plan.panels[0].edit().spaces = spaces;
      const auto pages = allSheets(plan, ProgramLanguage());
      const QString wrong = faults(pages);
      QVERIFY2(wrong.isEmpty(), qPrintable(QStringLiteral("%1 spaces: %2").arg(spaces).arg(wrong)));
      QStringList numbers;
      for (const Sheet& page : pages) {
        if (page.title != pages.front().title) continue;
        for (const SheetText& text : page.texts) numbers << text.text;
      }
      for (int space = 1; space <= spaces; ++space) QVERIFY(numbers.contains(QString::number(space)));
    }
  }

  void pdfCanBeSearchedAndIsTheSameEachTime() {
    const Plan plan = samplePlan("river-house.stayalight");
    const ProgramLanguage language;
    const auto pages = allSheets(plan, language);
    const QByteArray first = pdfBytes(pages, QStringLiteral("River house"));
    QVERIFY(!first.isEmpty());
    QVERIFY(first == pdfBytes(pages, QStringLiteral("River house")));
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("sheets.pdf"));
    const auto written = writePdf(pages, path, QStringLiteral("River house"));
    QVERIFY(written.ok());
    QCOMPARE(written.value(), static_cast<int>(pages.size()));

    const QString text =
        run(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), path, QStringLiteral("-")});
    int names = 0;
    for (const auto& circuit : plan.circuits) {
      if (text.contains(QString::fromStdString(circuit->name))) ++names;
    }
    QCOMPARE(names, static_cast<int>(plan.circuits.size()));
    for (const char* word : {"Refrigerator", "Feeder and overcurrent devices", "filler plate", "final: spare",
                             "moved to", "line-side lugs"}) {
      QVERIFY2(text.contains(QString::fromLatin1(word)), word);
    }
    for (const QChar ligature : {QChar(0xFB00), QChar(0xFB01), QChar(0xFB02), QChar(0xFB03), QChar(0xFB04)})
      QVERIFY(!text.contains(ligature));
    const QString info = run(QStringLiteral("pdfinfo"), {path});
    QVERIFY(info.contains(QStringLiteral("612 x 792 pts (letter)")));
    QVERIFY(!info.contains(QStringLiteral("CreationDate")));
    QVERIFY(first.contains("/Lang"));
    QVERIFY(!run(QStringLiteral("pdfimages"), {QStringLiteral("-list"), path})
                 .contains(QStringLiteral("image ")));
  }

  void dangersStandOnTheSheets() {
    Plan plan = samplePlan("river-house.stayalight");
    const Assessment assessment = assess(plan);
    const ProgramLanguage language;
    QStringList texts;
    for (const Sheet& page : allSheets(plan, language)) {
      for (const SheetText& text : page.texts) texts << text.text;
    }
    const QString all = texts.join(u' ');
    for (const Finding& finding : assessment.findings) {
      if (finding.severity != Severity::danger) continue;
      QVERIFY2(all.contains(words(finding.plain, language)), qPrintable(words(finding.plain, language)));
    }
  }

  void aMovedCircuitIsReadFromBothSchedules() {
    const Plan before = example::exampleHouse();
    const CircuitId circuit = before.circuits.front()->id;
    const PanelId backup = backupPanel(before)->id;
    const auto moved = moveCircuits(before, std::array{circuit}, backup);
    QVERIFY(moved.ok());
    const ProgramLanguage language;
    const auto textsOf = [&](const Plan& plan, const QString& word) {
      const auto chosen = chosenSheets(plan, {word}, language);
      QStringList texts;
      if (!chosen) return texts;
      for (const Sheet& page : sheets(plan, assess(plan), chosen.value(), language, {})) {
        for (const SheetText& text : page.texts) texts << text.text;
      }
      return texts;
    };
    QVERIFY(textsOf(before, QStringLiteral("main")).filter(QStringLiteral("moved to")).isEmpty());
    QCOMPARE(textsOf(moved.value(), QStringLiteral("main")).filter(QStringLiteral("moved to")).size(), 1);
    QVERIFY(
        textsOf(moved.value(), QStringLiteral("main-before")).filter(QStringLiteral("moved to")).isEmpty());
    QVERIFY(textsOf(moved.value(), QStringLiteral("backup"))
                .contains(QString::fromStdString(before.circuits.front()->name)));
  }

  void anUnknownSheetIsRefusedWithTheWordsThereAre() {
    const ProgramLanguage language;
    const auto chosen = chosenSheets(example::exampleHouse(), {QStringLiteral("attic")}, language);
    QVERIFY(!chosen.ok());
    const QString text = words(chosen.refusal(), language);
    QVERIFY(text.contains(QStringLiteral("attic")) && text.contains(QStringLiteral("main-before")));
    QVERIFY(!chosenSheets(Plan{}, {}, language).ok());
  }

  void aFolderThatIsGoneIsSaidWithItsName() {
    const ProgramLanguage language;
    const auto written = writePdf(allSheets(example::exampleHouse(), language),
                                  QStringLiteral("/nowhere/at/all.pdf"), QString());
    QVERIFY(!written.ok());
    QVERIFY(words(written.refusal(), language).contains(QStringLiteral("/nowhere/at/all.pdf")));
  }
};

QTEST_MAIN(PaperTest)
#include "paper_test.moc"
