#include <QtCore/QFile>
#include <QtCore/QTemporaryDir>
#include <QtGui/QImage>
#include <QtTest/QTest>

#include "core/file/file.h"
#include "tests/core/example_plans.h"
#include "ui/board/draw.h"
#include "ui/board/move.h"
#include "ui/board/refusal_words.h"
#include "ui/wording/language.h"

using namespace stayalight;

namespace {

const ProgramLanguage kLanguage;

QString place(const BoardText& a) {
  return QString("\"%1\" at %2,%3 %4x%5")
      .arg(a.text)
      .arg(a.rect.x())
      .arg(a.rect.y())
      .arg(a.rect.width())
      .arg(a.rect.height());
}

// Texts lie inside the board and inside their cell, and no two of them cover each other.
void checkTexts(const BoardLayout& board) {
  const QRectF inside(QPointF(0, 0), board.size);
  for (std::size_t i = 0; i < board.texts.size(); ++i) {
    const BoardText& a = board.texts[i];
    QVERIFY2(inside.contains(a.rect), qPrintable(place(a)));
    QVERIFY2(a.pixels >= 10.0, qPrintable(place(a)));
    QVERIFY2(!a.text.isEmpty(), qPrintable(a.whole));
    if (a.cell >= 0 && a.role == TextRole::name) {
      const BoardCell& cell = board.cells[static_cast<std::size_t>(a.cell)];
      QVERIFY2(a.rect.top() >= cell.rect.top() - 1.5 && a.rect.bottom() <= cell.rect.bottom() + 1.5,
               qPrintable(place(a)));
    }
    for (std::size_t j = 0; j < i; ++j) {
      const QRectF both = a.rect.intersected(board.texts[j].rect);
      QVERIFY2(both.width() < 0.6 || both.height() < 0.6,
               qPrintable(place(a) + " over " + place(board.texts[j])));
    }
  }
}

// A panel of so many spaces with every other one filled, a two-pole among them, long names.
Plan panelOf(int spaces) {
  Plan plan;
  const PanelId panel = example::addPanel(plan, PanelRole::main, "Main panel with a long name", spaces);
  const int rows = (spaces + 1) / 2;
  for (int row = 1; row <= rows; ++row) {
    if (row + 1 <= rows && row % 5 == 1)
      example::addCircuit(plan, panel, {Column::left, row}, 2, 40, "Electric range in the kitchen");
    if (row % 5 == 3)
      example::addCircuit(plan, panel, {Column::left, row}, 1, 20, "Receptacles of the large living room");
    if (row % 3 == 0 && 2 * row <= spaces)
      example::addCircuitWithLoad(plan, panel, {Column::right, row}, 1, 15, "Dishwasher",
                                  example::plainLoad("d", 1200));
  }
  return plan;
}

Plan sample(const char* name) {
  QFile file(QString(STAYALIGHT_SOURCE_DIR "/samples/%1.stayalight").arg(name));
  if (!file.open(QIODevice::ReadOnly)) return {};
  const auto read = readPlan(file.readAll().toStdString(), name);
  return read ? read.value().plan : Plan{};
}

}  // namespace

class BoardTest : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void initTestCase() { QVERIFY(loadFaces()); }

  void textsDoNotOverlapFrom4To84Spaces() {
    for (int spaces = 4; spaces <= 84; ++spaces) {
      const Plan plan = panelOf(spaces);
      const Assessment assessment = assess(plan);
      for (const auto& [width, height] : {std::pair(450.0, 404.0), std::pair(487.0, 523.0)}) {
        BoardOptions options;
        options.width = width;
        options.rowHeight = fittedRowHeight(plan, std::array{plan.panels.front()->id}, height);
        QVERIFY(options.rowHeight >= kSmallestRow && options.rowHeight <= kRowHeight);
        checkTexts(layout(plan, assessment, plan.panels.front()->id, kLanguage, options));
        if (QTest::currentTestFailed()) return;
      }
    }
  }
  void textsOfTheSamplesDoNotOverlap() {
    for (const char* name : {"river-house", "plain-house"}) {
      const Plan plan = sample(name);
      QVERIFY2(!plan.panels.empty(), name);
      const Assessment assessment = assess(plan);
      for (const double row : {23.0, 17.6, 16.8}) {
        for (const auto& panel : plan.panels) {
          BoardOptions options;
          options.rowHeight = row;
          options.width = row < 20 ? 450.0 : 487.0;
          checkTexts(layout(plan, assessment, panel->id, kLanguage, options));
          if (QTest::currentTestFailed()) return;
        }
      }
    }
  }
  // The hatch of a space whose circuit moved away runs through no number and no name, and is still there.
  void noHatchRunsThroughAText() {
    const Plan plan = sample("river-house");
    const Assessment assessment = assess(plan);
    int hatched = 0;
    for (const auto& panel : plan.panels) {
      const BoardLayout board = layout(plan, assessment, panel->id, kLanguage);
      for (std::size_t i = 0; i < board.marks.size(); ++i) {
        const BoardMark& hatch = board.marks[i];
        if (hatch.role != MarkRole::hatch) continue;
        ++hatched;
        double clear = 0.0;
        for (std::size_t k = i + 1; k < board.marks.size(); ++k) {
          if (board.marks[k].cell == hatch.cell && board.marks[k].role == MarkRole::hatchGap)
            clear += board.marks[k].rect.width();
        }
        QVERIFY(clear < hatch.rect.width() - 20.0);
        for (const BoardText& text : board.texts) {
          const bool read = text.role == TextRole::name || text.role == TextRole::spaceNumber;
          if (text.cell != hatch.cell || !read) continue;
          const bool freed = std::any_of(board.marks.begin() + static_cast<std::ptrdiff_t>(i),
                                         board.marks.end(), [&](const BoardMark& mark) {
                                           return mark.role == MarkRole::hatchGap &&
                                                  mark.rect.contains(text.rect.center()) &&
                                                  mark.rect.left() <= text.rect.left() &&
                                                  mark.rect.right() >= text.rect.right();
                                         });
          QVERIFY2(freed, qPrintable(text.text));
        }
      }
    }
    QVERIFY(hatched >= 10);
  }
  void everySpaceIsHitAndCellsDoNotShareIt() {
    const Plan plan = example::exampleHouseMoved();
    const BoardLayout board = layout(plan, assess(plan), example::kMain, kLanguage);
    int hit = 0;
    for (int y = 37; y < board.size.height() - 28; ++y) {
      const int cell = board.cellAt(QPointF(60, y));
      if (cell < 0) continue;
      ++hit;
      const auto space = board.spaceAt(QPointF(60, y));
      QVERIFY(space && space->column == Column::left);
      QCOMPARE(space->row, static_cast<int>((y - kBoardHead) / kRowHeight) + 1);
    }
    QVERIFY(hit > 200);
    QCOMPARE(board.cellAt(QPointF(board.size.width() / 2, 100)), -1);
    QCOMPARE(board.cellAt(QPointF(60, 10)), -1);
  }
  void cellsSayWhatStandsThere() {
    const Plan plan = example::exampleHouseMoved();
    const Assessment assessment = assess(plan);
    const BoardLayout main = layout(plan, assessment, example::kMain, kLanguage);
    const BoardLayout backup = layout(plan, assessment, example::kBackup, kLanguage);
    const BoardCell& old = main.cells[static_cast<std::size_t>(
        main.cellOf(CellAddress{example::kMain, {Column::left, 1}, Half::whole}))];
    QCOMPARE(old.kind, CellKind::movedAway);
    QVERIFY(old.accessibleName.startsWith("Space 1, Refrigerator, 20 ampere, 1 pole, L1"));
    QVERIFY(old.accessibleName.contains("moved to Backup subpanel, space 1"));
    const BoardCell& now = backup.cells[static_cast<std::size_t>(
        backup.cellOf(CellAddress{example::kBackup, {Column::left, 1}, Half::whole}))];
    QVERIFY(now.lit);
    // 150 W at 120 V and power factor 0.8: 150 / (0.8 * 120) = 1.5625 A.
    QVERIFY2(now.accessibleName.contains("1.6 A, backed up"), qPrintable(now.accessibleName));
    const BoardCell& pump = backup.cells[static_cast<std::size_t>(
        backup.cellOf(CellAddress{example::kBackup, {Column::right, 3}, Half::whole}))];
    QCOMPARE(pump.rowSpan, 2);
    QVERIFY(pump.accessibleName.startsWith("Spaces 6, 8, Well pump, 20 ampere, 2 poles, L1 and L2"));
    const bool pill = std::any_of(main.texts.begin(), main.texts.end(), [](const BoardText& t) {
      return t.role == TextRole::pill && t.text == "to 1";
    });
    QVERIFY(pill);
  }
  void splitNeutralShowsTheDangerMark() {
    Plan plan = example::exampleHouse();
    const auto octagons = [&] {
      const BoardLayout board = layout(plan, Assessment{}, example::kMain, kLanguage);
      return std::count_if(board.marks.begin(), board.marks.end(),
                           [](const BoardMark& m) { return m.shape == MarkShape::severity; });
    };
    QCOMPARE(octagons(), 0);
    example::moveByHand(plan, example::circuitNamed(plan, "Counter A"), example::kBackup, {Column::left, 1});
    QCOMPARE(octagons(), 1);
  }
  void tandemHalvesAreCellsOfTheirOwn() {
    Plan plan = example::emptyHouse();
    example::addCircuit(plan, example::kMain, {Column::left, 1}, 1, 15, "Upper", Half::a);
    example::addCircuit(plan, example::kMain, {Column::left, 1}, 1, 20, "Lower", Half::b);
    for (const double row : {23.0, 16.8}) {
      BoardOptions options;
      options.rowHeight = row;
      const BoardLayout board = layout(plan, assess(plan), example::kMain, kLanguage, options);
      QCOMPARE(board.columns, 4);
      const int a = board.cellOf(CellAddress{example::kMain, {Column::left, 1}, Half::a});
      const int b = board.cellOf(CellAddress{example::kMain, {Column::left, 1}, Half::b});
      QVERIFY(a >= 0 && b >= 0 && a != b);
      for (const int cell : {a, b}) {
        QCOMPARE(board.cellAt(board.cells[static_cast<std::size_t>(cell)].rect.center()), cell);
        QCOMPARE(board.cellAt(board.cells[static_cast<std::size_t>(cell)].body.center()), cell);
      }
      checkTexts(board);
    }
  }
  void movesAreReadFromWhereABreakerIsDropped() {
    const Plan plan = example::exampleHouseMoved();
    const auto planned = [&](const char* name) {
      return find(plan, example::circuitNamed(plan, name))->planned;
    };
    const auto to = [&](BreakerId breaker, PanelId panel, SpacePosition at) {
      return moveFor(plan, {breaker}, panel, at);
    };
    QCOMPARE(to(planned("Freezer"), example::kBackup, {Column::left, 3})->kind, MoveKind::move);
    QCOMPARE(to(planned("Office"), example::kMain, {Column::left, 9})->kind, MoveKind::sendBack);
    QCOMPARE(to(planned("Office"), example::kBackup, {Column::left, 4})->kind, MoveKind::relocate);
    QCOMPARE(to(planned("Office"), example::kBackup, {Column::left, 1})->kind, MoveKind::swap);
    QVERIFY(!to(planned("Office"), example::kBackup, {Column::left, 2}));
    QVERIFY(!moveFor(plan, {}, example::kBackup, std::nullopt));
    const Preview preview = previewOf(plan, *to(planned("Freezer"), example::kBackup, {Column::left, 3}));
    QVERIFY(preview.legal);
    QCOMPARE(preview.legs, std::vector<Leg>{Leg::l1});
    QVERIFY(words(resultWords(preview, true), kLanguage).startsWith("L1 peak "));
    // The well pump of two poles does not fit in the last space.
    const Preview refused =
        previewOf(example::exampleHouse(), BoardMove{MoveKind::move,
                                                     {example::circuitNamed(plan, "Well pump")},
                                                     example::kBackup,
                                                     SpacePosition{Column::left, 4},
                                                     {},
                                                     {}});
    QVERIFY(!refused.legal && !refused.refusal.id.key.empty());
    QVERIFY(words(resultWords(refused, true), kLanguage) != words(refused.refusal, kLanguage));
  }
  // Every sentence that refuses a move has a short form, and that fits into a space of the narrowest board.
  void refusalsHaveAShortFormThatFitsASpace() {
    const QRegularExpression declared(
        QStringLiteral("MessageId\\s+\\w+\\{\"((?:edit|panel|board)\\.\\w+)\"\\}"));
    BoardOptions narrow;
    narrow.width = 450.0;  // of a window 1280 wide
    narrow.rowHeight = kSmallestRow;
    const Plan plan = example::exampleHouseMoved();
    const Assessment assessment = assess(plan);
    const CellAddress at{example::kBackup, {Column::left, 4}, Half::whole};
    const BreakerId carried = find(plan, example::circuitNamed(plan, "Well pump"))->planned;
    int found = 0;
    for (const char* name : {"core/edit/move.cpp", "core/edit/relocate.cpp", "core/edit/choose.cpp",
                             "core/panel/fits.cpp", "ui/boards/boards_view.cpp"}) {
      QFile file(QStringLiteral(STAYALIGHT_SOURCE_DIR "/") + QLatin1String(name));
      QVERIFY2(file.open(QIODevice::ReadOnly), name);
      const QString source = QString::fromUtf8(file.readAll());
      for (auto it = declared.globalMatch(source); it.hasNext();) {
        const std::string key = it.next().captured(1).toStdString();
        if (key.starts_with("panel.by_")) continue;  // names of what stands there
        const Message whole = say(MessageId{key}, std::string("1, 3"), std::string("L1"), std::string("x"));
        const Message brief = shortForm(whole);
        QVERIFY2(!(brief.id == whole.id), key.c_str());
        BoardState state;
        state.carried = {carried};
        state.target = at;
        state.landings[at] = {false, words(brief, kLanguage)};
        bool shown = false;
        for (const BoardText& text :
             layout(plan, assessment, example::kBackup, kLanguage, narrow, state).texts) {
          if (text.role != TextRole::landing) continue;
          shown = true;
          QCOMPARE(text.text, text.whole);
        }
        QVERIFY2(shown, key.c_str());
        ++found;
      }
    }
    QVERIFY(found > 20);
  }
  void drawingsAreWritten() {
    QTemporaryDir folder;
    const Plan plan = example::exampleHouseMoved();
    const Assessment assessment = assess(plan);
    const QString png = folder.filePath("boards.png"), svg = folder.filePath("boards.svg");
    QVERIFY(!drawBoards(plan, assessment, kLanguage, png));
    QVERIFY(!drawBoards(plan, assessment, kLanguage, svg));
    const QImage image(png);
    QVERIFY(image.width() > 2000);
    QFile file(svg);
    QVERIFY(file.open(QIODevice::ReadOnly));
    const QByteArray text = file.readAll();
    QVERIFY(text.contains("<title>Example house: boards</title>"));
    QVERIFY(text.contains("Refrigerator") && !text.contains("Qt SVG Document"));
    QVERIFY(drawBoards(plan, assessment, kLanguage, folder.filePath("boards.bmp")).has_value());
    QVERIFY(drawBoards(plan, assessment, kLanguage, "/nonexistent/boards.png").has_value());
  }
};

QTEST_MAIN(BoardTest)
#include "board_test.moc"
