// Every text that the window draws, in every place, form and dialog and in all three palettes, stands out
// from what lies under it: what is painted is recorded, not guessed. The boards again in every state of their
// cells, marks too. WCAG 2.2: 1.4.3 wants 4.5 to 1 for text, 1.4.11 3 to 1 for marks that say something.

#include <QtGui/QPaintEngine>
#include <QtGui/QPainterPath>
#include <cmath>

#include "tests/gui/every_view.h"
#include "ui/board/layout.h"
#include "ui/style/palette.h"

using namespace stayalight;
using namespace stayalight::window;

namespace {

struct Fill {
  QPainterPath path;
  QRegion seen;  ///< empty: all of it
  QColor color;
  [[nodiscard]] bool covers(QPointF point) const {
    return path.contains(point) && (seen.isEmpty() || seen.contains(point.toPoint()));
  }
};
struct Text {
  QPointF middle;
  QColor color;
  QString words;
  std::size_t under = 0;  ///< how many fills lie under it
};

QColor over(const QColor& above, const QColor& below) {
  const float a = above.alphaF();
  const auto mix = [a](float x, float y) { return x * a + y * (1.0F - a); };
  return QColor::fromRgbF(mix(above.redF(), below.redF()), mix(above.greenF(), below.greenF()),
                          mix(above.blueF(), below.blueF()));
}

/// Notes what is filled and what is written, in the order of painting.
class Recorder final : public QPaintEngine {
 public:
  Recorder() : QPaintEngine(AllFeatures) {}
  std::vector<Fill> fills;
  std::vector<Text> texts;

  bool begin(QPaintDevice*) override { return true; }
  bool end() override { return true; }
  void updateState(const QPaintEngineState&) override {}
  [[nodiscard]] Type type() const override { return User; }
  void drawPath(const QPainterPath& path) override { fill(path); }
  void drawPolygon(const QPointF* points, int count, PolygonDrawMode mode) override {
    if (mode == PolylineMode) return;
    QPainterPath path;
    path.addPolygon(QPolygonF(QList<QPointF>(points, points + count)));
    fill(path);
  }
  void drawRects(const QRectF* rects, int count) override {
    for (int i = 0; i < count; ++i) {
      QPainterPath path;
      path.addRect(rects[i]);
      fill(path);
    }
  }
  void drawPixmap(const QRectF& rect, const QPixmap& pixmap, const QRectF& from) override {
    const QImage image = pixmap.toImage();
    const QPoint at = from.center().toPoint();
    if (!image.rect().contains(at)) return;
    QPainterPath path;
    path.addRect(rect);
    fills.push_back({painter()->combinedTransform().map(path), systemClip(), image.pixelColor(at)});
  }
  void drawTextItem(const QPointF& at, const QTextItem& item) override {
    if (item.text().trimmed().isEmpty()) return;
    QColor color = painter()->pen().color();
    color.setAlphaF(color.alphaF() * static_cast<float>(painter()->opacity()));
    const QPointF middle(at.x() + item.width() / 2.0, at.y() - item.ascent() * 0.3);
    const QPointF shown = painter()->combinedTransform().map(middle);
    // What a scroll area hides is seen by nobody.
    if (!systemClip().isEmpty() && !systemClip().contains(shown.toPoint())) return;
    texts.push_back({shown, color, item.text(), fills.size()});
  }

 private:
  void fill(const QPainterPath& path) {
    const QBrush brush = painter()->brush();
    if (brush.style() == Qt::NoBrush) return;
    QColor color = brush.gradient() != nullptr ? brush.gradient()->stops().front().second : brush.color();
    if (brush.style() != Qt::SolidPattern && brush.gradient() == nullptr)
      return;  // lines with ground between
    color.setAlphaF(color.alphaF() * static_cast<float>(painter()->opacity()));
    QPainterPath shown = painter()->combinedTransform().map(path);
    if (painter()->hasClipping())
      shown = shown.intersected(painter()->combinedTransform().map(painter()->clipPath()));
    fills.push_back({shown, systemClip(), color});
  }
};

class RecordedDevice final : public QPaintDevice {
 public:
  explicit RecordedDevice(QSize size) : size_(size) {}
  [[nodiscard]] QPaintEngine* paintEngine() const override { return &engine; }
  mutable Recorder engine;

 protected:
  int metric(PaintDeviceMetric what) const override {
    switch (what) {
      case PdmWidth:
        return size_.width();
      case PdmHeight:
        return size_.height();
      case PdmDevicePixelRatio:
        return 1;
      case PdmDevicePixelRatioScaled:
        return static_cast<int>(devicePixelRatioFScale());
      case PdmDepth:
        return 32;
      default:
        return 96;
    }
  }

 private:
  QSize size_;
};

QColor groundOf(const Recorder& drawn, const Text& text) {
  QColor above(Qt::transparent);
  std::vector<QColor> layers;
  for (std::size_t i = text.under; i-- > 0;) {
    if (!drawn.fills[i].covers(text.middle)) continue;
    layers.push_back(drawn.fills[i].color);
    if (drawn.fills[i].color.alpha() == 255) break;
  }
  QColor ground(Qt::white);
  for (std::size_t i = layers.size(); i-- > 0;) ground = over(layers[i], ground);
  return ground;
}

// -- boards

/// The colour that lies at a point under the mark with this number; none beyond the board.
std::optional<ColorRole> roleUnder(const BoardLayout& board, QPointF point, std::size_t marks) {
  for (std::size_t i = marks; i-- > 0;) {
    const BoardMark& mark = board.marks[i];
    if (mark.fill && mark.shape == MarkShape::rectangle && mark.rect.contains(point)) return mark.fill;
  }
  return std::nullopt;
}

bool says(MarkRole role) {
  switch (role) {
    case MarkRole::selection:
    case MarkRole::focusRing:
    case MarkRole::hover:
    case MarkRole::target:
    case MarkRole::plus:
    case MarkRole::landing:
    case MarkRole::stroke:
    case MarkRole::homeFrame:
    case MarkRole::pill:
    case MarkRole::bar:
    case MarkRole::knob:
    case MarkRole::body:
    case MarkRole::freeBody:
    case MarkRole::gradeRule:
    case MarkRole::tie:
    case MarkRole::finding:
    case MarkRole::leg:
      return true;
    default:
      return false;
  }
}

QString themeName(Theme theme) {
  return theme == Theme::light  ? QStringLiteral("light")
         : theme == Theme::dark ? QStringLiteral("dark")
                                : QStringLiteral("high contrast");
}

}  // namespace

class ContrastTest : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void everyTextOfTheWindow_data();
  void everyTextOfTheWindow();
  void theBoardsInEveryState();
  void aPoorPairIsFound();
};

void ContrastTest::everyTextOfTheWindow_data() {
  QTest::addColumn<int>("theme");
  for (const Theme theme : {Theme::light, Theme::dark, Theme::contrast})
    QTest::newRow(qPrintable(themeName(theme))) << static_cast<int>(theme);
}

void ContrastTest::everyTextOfTheWindow() {
  QFETCH(int, theme);
  QSettings().clear();
  MainWindow window;
  window.resize(1440, 900);
  window.show();
  QVERIFY(QTest::qWaitForWindowActive(&window));
  window.setTheme(static_cast<Theme>(theme));
  QSet<QString> known;
  QStringList poor;
  std::size_t texts = 0;
  everyView(window, [&](const QString& name, QWidget& shown) {
    RecordedDevice device(shown.size());
    shown.render(&device);
    texts += device.engine.texts.size();
    for (const Text& text : device.engine.texts) {
      if (!QRectF(shown.rect()).contains(text.middle)) continue;
      const QColor ground = groundOf(device.engine, text);
      const double found = contrast(over(text.color, ground), ground);
      const QString what = QStringLiteral("%1 on %2").arg(text.color.name(), ground.name());
      if (found >= 4.5 || known.contains(what)) continue;
      known.insert(what);
      poor
          << QStringLiteral("%1: \"%2\" %3 is %4").arg(name, text.words.left(30), what).arg(found, 0, 'f', 2);
    }
  });
  QVERIFY(texts > 3000);
  if (!poor.isEmpty()) qInfo().noquote() << poor.join(QLatin1Char('\n'));
  QVERIFY(poor.isEmpty());
}

void ContrastTest::theBoardsInEveryState() {
  MainWindow window;
  window.openSample();
  const Plan plan = window.document().plan();
  const Assessment& assessment = window.assessment();
  const ProgramLanguage language;
  const Panel &main = *mainPanel(plan), &backup = *backupPanel(plan);
  const BoardLayout plain = layout(plan, assessment, main.id, language);
  const BoardLayout plainBackup = layout(plan, assessment, backup.id, language);
  std::vector<BoardState> states(1);
  for (const BoardLayout* board : {&plain, &plainBackup}) {
    BoardState all;
    all.filter = BoardFilter{};
    states.push_back(all);  // nothing matches: every cell is quiet
    BoardState noted;
    for (const BoardCell& cell : board->cells) {
      BoardState one;
      one.focused = cell.address;
      if (cell.breaker.valid()) one.selected.insert(cell.breaker);
      states.push_back(one);
      one = {};
      one.hovered = cell.address;
      states.push_back(one);
      one.filter = BoardFilter{};
      one.focused = cell.address;
      states.push_back(one);
      if (cell.breaker.valid()) {
        BoardState home;
        home.carried.insert(cell.breaker);
        home.focused = cell.address;
        states.push_back(home);
      }
      if (cell.kind == CellKind::free)
        noted.landings[cell.address] = {noted.landings.size() % 2 == 0, QStringLiteral("L2 peak 12.0 A")};
    }
    noted.carriedRating = RatingAmperes(20);
    states.push_back(noted);
    for (const auto& [address, note] : noted.landings) {
      noted.target = address;
      states.push_back(noted);
    }
  }
  QStringList poor;
  std::size_t checked = 0;
  const auto look = [&](const BoardLayout& board, const BoardState& state, Theme theme) {
    const Palette palette(theme);
    const auto check = [&](ColorRole color, std::optional<ColorRole> ground, double wanted,
                           const QString& what) {
      if (!ground || *ground == color) return;
      ++checked;
      const double found = contrast(palette.color(color), palette.color(*ground));
      if (found >= wanted) return;
      const QString line = QStringLiteral("%1: %2: color %3 on %4 is %5")
                               .arg(themeName(theme), what)
                               .arg(static_cast<int>(color))
                               .arg(static_cast<int>(*ground))
                               .arg(found, 0, 'f', 2);
      if (!poor.contains(line)) poor << line;
    };
    for (const BoardText& text : board.texts)
      check(text.color, roleUnder(board, text.rect.center(), board.marks.size()), 4.5,
            QStringLiteral("text %1 \"%2\"").arg(static_cast<int>(text.role)).arg(text.text));
    for (std::size_t i = 0; i < board.marks.size(); ++i) {
      const BoardMark& mark = board.marks[i];
      if (!says(mark.role) || mark.opacity < 1.0) continue;
      const QString what = QStringLiteral("mark %1").arg(static_cast<int>(mark.role));
      // A breaker's body and its knob are told by their edge where they have one.
      const bool edged = mark.stroke && mark.role != MarkRole::finding;
      const ColorRole color = edged ? *mark.stroke : mark.fill.value_or(ColorRole::ink);
      QPointF at = mark.rect.center();
      if (edged && mark.shape == MarkShape::rectangle && mark.role != MarkRole::knob)
        at = QPointF(mark.rect.left() + mark.width / 2.0, mark.rect.center().y());
      if (mark.shape == MarkShape::hatch) continue;  // its frame says it
      check(color, roleUnder(board, at, i), 3.0, what);
      // A ring lies on the cell and on what is beside it.
      if (mark.role == MarkRole::focusRing)
        check(color, roleUnder(board, QPointF(mark.rect.center().x(), mark.rect.bottom()), i), 3.0, what);
    }
    Q_UNUSED(state);
  };
  for (const BoardState& state : states) {
    for (const Theme theme : {Theme::light, Theme::dark, Theme::contrast}) {
      look(layout(plan, assessment, main.id, language, {}, state), state, theme);
      look(layout(plan, assessment, backup.id, language, {}, state), state, theme);
    }
  }
  QVERIFY(checked > 100000);
  if (!poor.isEmpty()) qInfo().noquote() << poor.join(QLatin1Char('\n'));
  QVERIFY(poor.isEmpty());
}

// The recorder itself: what lies under a text is found, a ground that lets the one below it through too.
void ContrastTest::aPoorPairIsFound() {
  RecordedDevice device(QSize(100, 40));
  {
    QPainter painter(&device);
    painter.fillRect(0, 0, 100, 40, QColor(255, 255, 255));
    painter.fillRect(0, 0, 50, 40, QColor(0, 0, 0, 128));
    painter.setPen(QColor(0x77, 0x77, 0x77));
    painter.drawText(QPointF(60, 20), QStringLiteral("ab"));
    painter.drawText(QPointF(5, 20), QStringLiteral("ab"));
  }
  QCOMPARE(device.engine.texts.size(), std::size_t{2});
  QCOMPARE(groundOf(device.engine, device.engine.texts[0]), QColor(255, 255, 255));
  QVERIFY(contrast(device.engine.texts[0].color, Qt::white) < 4.5);
  QVERIFY(std::abs(groundOf(device.engine, device.engine.texts[1]).red() - 127) < 2);
}

QTEST_MAIN(ContrastTest)
#include "contrast_test.moc"
