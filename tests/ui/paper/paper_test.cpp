// The sheets: every page of both samples and of panels of many sizes, in both paper sizes, is free of
// overlaps and stays on the page; the PDF can be searched, has an outline, and is the same each time.

#include <QtCore/QProcess>
#include <QtCore/QRegularExpression>
#include <QtCore/QTemporaryDir>
#include <QtTest/QtTest>

#include "core/edit/edit.h"
#include "tests/core/demand/calculated_house.h"
#include "tests/core/example_plans.h"
#include "tests/core/wiring/feeder_plans.h"
#include "tests/ui/paper/pages.h"
#include "ui/paper/print.h"
#include "ui/style/fonts.h"
#include "ui/wording/language.h"

using namespace stayalight;

namespace {

// All texts of one sheet, or what is wrong with its pages.
QString printed(const Plan& plan, const char* word) {
  const ProgramLanguage language;
  const auto chosen = chosenSheets(plan, {QString::fromLatin1(word)}, language);
  if (!chosen) return {};
  PaperOptions options;
  options.version = QStringLiteral("1");
  const auto pages = sheets(plan, assess(plan), chosen.value(), language, options);
  if (!faults(pages).isEmpty()) return faults(pages);
  QStringList all;
  for (const Sheet& page : pages) {
    for (const SheetText& text : page.texts) all << text.text;
  }
  return all.join(u' ');
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

  // Each figure's steps with table rows, rules and what governs; the job in the title block.
  void theWorkingIsPrintedStepByStep() {
    Plan plan = samplePlan("river-house.stayalight");
    Site& site = plan.site.edit();
    site.customer = "Household";
    site.firm = "A firm";
    site.licence = "L-1";
    site.drawnBy = "Somebody";
    site.permitNumber = "P-7";
    site.permitDate = "2026-03-02";
    AuthorityAnswer answer;
    answer.question = "Is a surge device wanted at the new panel?";
    answer.answer = "Yes, listed for it.";
    answer.who = "Inspector";
    answer.inWriting = Answer::yes;
    site.answers.push_back(answer);
    const ProgramLanguage language;
    const QString working = printed(plan, "working");
    for (const char* part : {"Main panel to transfer switch", "Load of the backup feeder", "Motor starts",
                             "Hours of battery", "Table 310.16", "240.6(A)", "310.15(B)(1)", "250.122",
                             "the next larger rating is", "edition of 2023", "Source of the backup"})
      QVERIFY2(working.contains(QLatin1String(part)), qPrintable(QLatin1String(part) + working.left(4000)));
    const QString calculation = printed(plan, "load-calculation");
    for (const char* part : {"For Household", "By A firm", "License L-1", "Drawn by Somebody", "Permit P-7",
                             "Permit date 2 March 2026", "Answers of the authority", "Inspector"})
      QVERIFY2(calculation.contains(QLatin1String(part)), part);
    // Not of the set that is printed where nobody chose.
    const auto set = chosenSheets(plan, {}, language);
    for (const SheetChoice& choice : set.value()) QVERIFY(choice.kind != SheetKind::working);
  }

  // Every line of the calculation with its figure and its rule, what is missing, and the paths; none abroad.
  void theLoadCalculationIsPrintedLineByLine() {
    const ProgramLanguage language;
    const auto printed = [](const Plan& plan) { return ::printed(plan, "load-calculation"); };
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

  // Each piece of the feeder with its device, its wire and what governs; the order of work in a full main
  // panel.
  void theFeederAndTheOrderOfWorkArePrinted() {
    const ProgramLanguage language;
    Plan plan = feeder::passThrough();
    example::addBreaker(plan, example::kMain, {Column::right, 9}, 2, 20, Feeds::solar, Stage::fresh);
    const Assessment assessment = assess(plan);
    const QString text = printed(plan, "feeder");
    for (const SegmentFigures& segment : assessment.segments) {
      QVERIFY(segment.conductor.size.has_value());
      QVERIFY(text.contains(
          QString::fromStdString(conductorName(*segment.conductor.size, segment.conductor.metal))));
      QVERIFY(text.contains(QString::number(segment.device.rating->count()) + QStringLiteral(" A")));
    }
    for (const char* word : {"Voltage drop", "Cable between battery and inverter", "Sources at opposite ends",
                             "carries", "310.16", "250.122", "705.12(B)(2)"})
      QVERIFY2(text.contains(QString::fromLatin1(word)), qPrintable(text));
    // A way around the inverter is a piece of its own.
    Plan around = plan;
    around.transfer.edit().bypass = Answer::yes;
    feeder::addRun(around, Segment::bypass);
    QString name = words(segmentName(Segment::bypass), language);
    name[0] = name[0].toUpper();
    QVERIFY2(printed(around, "feeder").contains(name), qPrintable(name));
    plan.site.edit().country = Country::canada;
    QVERIFY(printed(plan, "feeder").isEmpty());

    Plan full = example::exampleHouseMoved();
    example::editPanel(full, example::kMain).spaces = 14;
    std::erase_if(full.breakers, [](const auto& breaker) { return breaker->feeds.is(Feeds::feeder); });
    const QString order = printed(full, "moves");
    for (const char* word : {"Order of work in Main panel", "Take out", "no supply", "finds room at"})
      QVERIFY2(order.contains(QString::fromLatin1(word)), qPrintable(order));
  }

  // Metric: the cross-section beside each size, no inch left; US: the other way round.
  void sheetsAreInTheUnitsOfTheSetting() {
    const Plan plan = samplePlan("river-house.stayalight");
    for (const bool metric : {false, true}) {
      ProgramLanguage language;
      language.setUnits(metric ? UnitSystem::metric : UnitSystem::us);
      PaperOptions options;
      options.version = QStringLiteral("1");
      QStringList all;
      for (const char* word : {"feeder", "moves", "main", "backup", "survey"}) {
        const auto chosen = chosenSheets(plan, {QString::fromLatin1(word)}, language);
        QVERIFY(chosen.ok());
        const auto pages = sheets(plan, assess(plan), chosen.value(), language, options);
        QCOMPARE(faults(pages), QString());
        for (const Sheet& page : pages) {
          for (const SheetText& text : page.texts) all << text.text;
        }
      }
      const QString text = all.join(u' ');
      QVERIFY(text.contains(QStringLiteral(" AWG")));
      for (const char* unit : {"mm²", "cm²"}) QCOMPARE(text.contains(QString::fromUtf8(unit)), metric);
      for (const char* unit : {"in²", "in³"}) QVERIFY(!metric || !text.contains(QString::fromUtf8(unit)));
      QCOMPARE(text.contains(QStringLiteral("in²")), !metric);
    }
  }

  void moveSheetNamesItsRulesAndAPanelItsNeutralTerminals() {
    Plan plan = samplePlan("river-house.stayalight");
    for (auto& panel : plan.panels) panel.edit().neutralTerminals = 30;
    plan.raceways.front().edit().length = Length::feet(6);
    SpliceBox box;
    box.id = {1};
    box.volume = CubicInches(30.3);
    plan.spliceBoxes.emplace_back(box);
    const auto spliced = std::find_if(plan.circuits.begin(), plan.circuits.end(), [](const auto& circuit) {
      return circuit->splice.is(Splice::inPanel) && circuit->conductor;
    });
    QVERIFY(spliced != plan.circuits.end());
    spliced->edit().splice = Splice::inBox;
    spliced->edit().spliceBox = box.id;
    const ProgramLanguage language;
    PaperOptions options;
    options.version = QStringLiteral("1");
    const auto printed = [&](const QString& sheet) {
      const auto chosen = chosenSheets(plan, {sheet}, language);
      QStringList all;
      for (const Sheet& page : sheets(plan, assess(plan), chosen.value(), language, options)) {
        for (const SheetText& text : page.texts) all << text.text;
      }
      return all.join(u' ');
    };
    const QString moves = printed(QStringLiteral("moves"));
    // NFPA 70 (2023): box volume, raceway fill, adjustment, what protects a conductor.
    for (const char* section : {"314.16(B)", "Chapter 9 Table 1", "310.15(C)(1)", "240.4"})
      QVERIFY2(moves.contains(QString::fromLatin1(section)), qPrintable(moves));
    for (const char* sheet : {"main", "backup"})
      QVERIFY(printed(QString::fromLatin1(sheet)).contains(QStringLiteral("of 30 terminals")));
  }

  // NFPA 70 225.39: 60 A; Table 250.66: 8 AWG copper for a feeder of 6 AWG.
  void aPanelInAnotherBuildingIsOnTheFeederSheet() {
    Plan plan = samplePlan("river-house.stayalight");
    const auto textOf = [&] {
      const ProgramLanguage language;
      PaperOptions options;
      options.version = QStringLiteral("1");
      QStringList all;
      const auto pages =
          sheets(plan, assess(plan), chosenSheets(plan, {QStringLiteral("feeder")}, language).value(),
                 language, options);
      if (!faults(pages).isEmpty()) return faults(pages);
      for (const Sheet& page : pages) {
        for (const SheetText& text : page.texts) all << text.text;
      }
      return all.join(u' ');
    };
    QVERIFY(!textOf().contains(QStringLiteral("in another building")));
    for (auto& panel : plan.panels) {
      if (panel->role.is(PanelRole::backup)) panel.edit().separateBuilding = true;
    }
    const QString text = textOf();
    for (const char* part : {"in another building", "8 AWG Cu", "60 A", "250.32(A)", "225.39"})
      QVERIFY2(text.contains(QString::fromLatin1(part)), part);
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

  // What is measured while a sheet is laid out is what the file holds: no text ends beyond the margin, and
  // none is smaller than 7 points.
  void thePdfHoldsEachTextAtItsSize() {
    const auto pages = allSheets(samplePlan("river-house.stayalight"), ProgramLanguage());
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("sheets.pdf"));
    QVERIFY(writePdf(pages, path, QString()).ok());
    const QString boxes =
        run(QStringLiteral("pdftotext"), {QStringLiteral("-bbox"), path, QStringLiteral("-")});
    static const QRegularExpression word(
        QStringLiteral("<word xMin=\"([0-9.]+)\" yMin=\"([0-9.]+)\" xMax=\"([0-9.]+)\" yMax=\"([0-9.]+)\""));
    int count = 0;
    for (auto at = word.globalMatch(boxes); at.hasNext();) {
      const QRegularExpressionMatch found = at.next();
      ++count;
      QVERIFY(found.captured(1).toDouble() > 18.0);
      QVERIFY2(found.captured(3).toDouble() < 612.0 - 18.0, qPrintable(found.captured(0)));
      QVERIFY2(found.captured(4).toDouble() - found.captured(2).toDouble() > 7.0,
               qPrintable(found.captured(0)));
    }
    QVERIFY(count > 1000);
    for (const Sheet& page : pages) {
      for (const SheetText& text : page.texts) QVERIFY2(text.size >= 7.0, qPrintable(text.text));
    }
  }

  // A first visit: nothing is known but the size of the panel, and each of its spaces has a row that leaves
  // 7 mm to write in.
  void aVisitToAnEmptyPanelHasARowForEachSpace_data() {
    QTest::addColumn<QString>("word");
    QTest::addColumn<int>("spaces");
    QTest::addColumn<int>("size");
    for (const char* word : {"survey-household", "survey-electrician"}) {
      for (const int spaces : {4, 20, 42, 84}) {
        for (const int size : {0, 1})
          QTest::addRow("%s %d %d", word, spaces, size) << QString::fromLatin1(word) << spaces << size;
      }
    }
  }
  void aVisitToAnEmptyPanelHasARowForEachSpace() {
    QFETCH(QString, word);
    QFETCH(int, spaces);
    QFETCH(int, size);
    Plan plan = newPlan();
    plan.panels.front().edit().spaces = spaces;
    const ProgramLanguage language;
    const auto chosen = chosenSheets(plan, {word}, language);
    QVERIFY(chosen.ok());
    PaperOptions options;
    options.size = static_cast<PaperSize>(size);
    const auto pages = sheets(plan, assess(plan), chosen.value(), language, options);
    QCOMPARE(faults(pages), QString());
    constexpr double kSevenMillimetres = 7.0 / 25.4 * 72.0;
    QStringList numbers;
    for (const Sheet& page : pages) {
      double last = 0.0;
      for (const SheetText& text : page.texts) {
        // The numbers stand in the first column, in the middle of it, and in bold.
        if (text.align != Align::centre || text.at.x() > 70.0 || text.text.toInt() == 0) continue;
        numbers << text.text;
        if (last > 0.0) QVERIFY(text.at.y() - last >= kSevenMillimetres);
        last = text.at.y();
      }
    }
    for (int space = 1; space <= spaces; ++space) QCOMPARE(numbers.count(QString::number(space)), 1);
    // The backup subpanel does not hang there yet.
    QCOMPARE(numbers.size(), spaces);
  }

  void theSheetsOfAVisitTellTheTwoApart() {
    const ProgramLanguage language;
    const auto printed = [&](const Plan& plan, const char* word) {
      const auto chosen = chosenSheets(plan, {QString::fromLatin1(word)}, language);
      QStringList texts;
      if (!chosen) return QString();
      for (const Sheet& page : sheets(plan, assess(plan), chosen.value(), language, {})) {
        for (const SheetText& text : page.texts) texts << text.text;
      }
      return texts.join(u' ');
    };
    const Plan plan = samplePlan("river-house.stayalight");
    const QString household = printed(plan, "survey-household");
    const QString qualified = printed(plan, "survey-electrician");
    QVERIFY(household.contains(QStringLiteral("Never take a cover off")));
    for (const char* word : {"Clamp", "Bus (A)", "Leg", "Wire (AWG", "N and G joined"})
      QVERIFY2(!household.contains(QString::fromLatin1(word)), word);
    for (const char* word : {"For a qualified person only", "stay live", "proves nothing", "Partner loaded?",
                             "Neutral shared with", "75 °C terminals?", "N and G joined here?"})
      QVERIFY2(qualified.contains(QString::fromUtf8(word)), word);
    const auto both = chosenSheets(plan, {QStringLiteral("survey")}, language);
    QVERIFY(both.ok());
    QCOMPARE(both.value().size(), std::size_t{2});
    // Nobody gets them who did not ask.
    const auto all = chosenSheets(plan, {}, language);
    QVERIFY(all.ok());
    for (const SheetChoice& choice : all.value()) QVERIFY(!choice.word.startsWith(QStringLiteral("survey")));
  }

  void aVisitPrintsWhatIsKnownAndLeavesTheRestBlank() {
    const ProgramLanguage language;
    const auto count = [&](const Plan& plan, const char* word, const QString& wanted) {
      const auto chosen = chosenSheets(plan, {QString::fromLatin1(word)}, language);
      qsizetype found = 0;
      for (const Sheet& page : sheets(plan, assess(plan), chosen.value(), language, {})) {
        for (const SheetText& text : page.texts) found += text.text == wanted ? 1 : 0;
      }
      return found;
    };
    Plan plan = example::exampleHouse();
    Circuit& circuit = example::editCircuit(plan, plan.circuits.front()->id);
    circuit.serves = "Attic fan";
    circuit.traced = Answer::no;
    circuit.conductor.reset();
    QCOMPARE(count(plan, "survey-household", QStringLiteral("Attic fan")), 1);
    circuit.traced = Answer::yes;
    QCOMPARE(count(plan, "survey-household", QStringLiteral("Attic fan")), 2);
    const QString wire = QStringLiteral("3 AWG Cu");
    QCOMPARE(count(plan, "survey-electrician", wire), 0);
    circuit.conductor = ConductorSize::awg3;
    QCOMPARE(count(plan, "survey-electrician", wire), 1);
    const QString rating = QStringLiteral("35");
    Breaker& breaker = example::editBreaker(plan, circuit.breaker);
    breaker.rating = RatingAmperes(35);
    QCOMPARE(count(plan, "survey-household", rating), 1);
    breaker.ratingRead = Answer::unknown;
    QCOMPARE(count(plan, "survey-household", rating), 0);
  }

  // A question of the list that has no column of its own stands in words.
  void whatNoTableAsksStandsBelow() {
    const ProgramLanguage language;
    Plan plan = example::exampleHouseMoved();
    example::editPanel(plan, example::kBackup).busRating.reset();
    plan.transfer.edit().switchesNeutral = Answer::unknown;
    plan.battery.edit().health = {};
    const Assessment answers = assess(plan);
    const auto chosen = chosenSheets(plan, {QStringLiteral("survey")}, language);
    QStringList texts;
    for (const Sheet& page : sheets(plan, answers, chosen.value(), language, {})) {
      for (const SheetText& text : page.texts) texts << text.text;
    }
    const QString all = texts.join(u' ');
    for (const char* key : {"panel.bus_A", "transfer.switches_neutral", "battery.health"}) {
      const auto items = itemsOf(answers.onSite, key);
      QVERIFY2(!items.empty(), key);
      QVERIFY2(all.contains(words(items.back()->what, language)), key);
    }
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
