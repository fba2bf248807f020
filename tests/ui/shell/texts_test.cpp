// No text of the window is cut off or written over another, at the smallest usual screen and a larger one:
// the boards by their layout, all else by recording what is really painted.

#include <QtGui/QAction>
#include <QtGui/QPaintDevice>
#include <QtGui/QPaintEngine>
#include <QtWidgets/QLabel>
#include <QtWidgets/QScrollArea>

#include "tests/ui/shell/window_fixture.h"
#include "ui/answers/answers_column.h"
#include "ui/findings/findings_list.h"
#include "ui/shell/effect_card.h"
#include "ui/shell/feeder_line.h"
#include "ui/strip/outage_strip.h"
#include "ui/strip/strip_chart.h"

using namespace stayalight;
using namespace stayalight::window;

namespace {

struct PaintedText {
  QString text;
  QRectF rect;  // from the height of its capitals to the baseline
};

// Notes each text with its place, paints nothing.
class Recorder final : public QPaintEngine {
 public:
  Recorder() : QPaintEngine(QPaintEngine::AllFeatures) {}
  bool begin(QPaintDevice*) override { return true; }
  bool end() override { return true; }
  void updateState(const QPaintEngineState& now) override {
    if (now.state() & QPaintEngine::DirtyTransform) transform_ = now.transform();
  }
  void drawTextItem(const QPointF& at, const QTextItem& item) override {
    if (item.text().trimmed().isEmpty()) return;
    const double capitals = QFontMetricsF(item.font()).capHeight();
    texts.push_back(
        {item.text(), transform_.mapRect(QRectF(at.x(), at.y() - capitals, item.width(), capitals))});
  }
  void drawPixmap(const QRectF&, const QPixmap&, const QRectF&) override {}
  void drawPath(const QPainterPath&) override {}
  void drawPolygon(const QPointF*, int, PolygonDrawMode) override {}
  [[nodiscard]] Type type() const override { return QPaintEngine::User; }

  std::vector<PaintedText> texts;

 private:
  QTransform transform_;
};

class Sheet final : public QPaintDevice {
 public:
  explicit Sheet(QSize size) : size_(size) {}
  [[nodiscard]] QPaintEngine* paintEngine() const override { return &recorder; }
  mutable Recorder recorder;

 protected:
  [[nodiscard]] int metric(PaintDeviceMetric wanted) const override {
    switch (wanted) {
      case PdmWidth:
        return size_.width();
      case PdmHeight:
        return size_.height();
      case PdmDpiX:
      case PdmDpiY:
      case PdmPhysicalDpiX:
      case PdmPhysicalDpiY:
        return 96;
      case PdmDepth:
        return 32;
      case PdmDevicePixelRatio:
        return 1;
      case PdmDevicePixelRatioScaled:
        return int(QPaintDevice::devicePixelRatioFScale());
      default:
        return 0;
    }
  }

 private:
  QSize size_;
};

// Every text that a widget and what stands in it paint, in the widget's coordinates.
void record(QWidget* widget, QWidget* within, std::vector<PaintedText>& out) {
  Sheet sheet(widget->size());
  widget->render(&sheet, {}, {}, QWidget::DrawWindowBackground);
  const QRectF inside = QRectF(widget->rect()).adjusted(-1, -1, 1, 1);
  for (const PaintedText& text : sheet.recorder.texts) {
    QVERIFY2(inside.contains(text.rect),
             qPrintable(QStringLiteral("\"%1\" leaves its %2: %3..%4 of %5, %6..%7 of %8")
                            .arg(text.text, QLatin1String(widget->metaObject()->className()))
                            .arg(text.rect.left())
                            .arg(text.rect.right())
                            .arg(widget->width())
                            .arg(text.rect.top())
                            .arg(text.rect.bottom())
                            .arg(widget->height())));
    out.push_back({text.text, text.rect.translated(widget->mapTo(within, QPoint(0, 0)))});
  }
  for (QObject* child : widget->children()) {
    auto* inner = qobject_cast<QWidget*>(child);
    if (inner != nullptr && inner->isVisibleTo(widget) && !inner->isWindow()) record(inner, within, out);
  }
}

}  // namespace

class TextsTest : public WindowTest {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void init() { openWithSample(); }
  void cleanup() { closeWindow(); }
  void theRecorderSeesATextThatIsCut();
  void nothingIsCutOrCovered_data();
  void nothingIsCutOrCovered();

 private:
  static void check(QWidget* widget) {
    std::vector<PaintedText> texts;
    record(widget, widget, texts);
    QVERIFY2(texts.size() > 2, qPrintable(widget->objectName()));
    for (std::size_t i = 0; i < texts.size(); ++i) {
      QVERIFY2(!texts[i].text.contains(QChar(0x2026)), qPrintable(widget->objectName() + texts[i].text));
      for (std::size_t j = 0; j < i; ++j) {
        const QRectF both = texts[i].rect.intersected(texts[j].rect);
        QVERIFY2(both.width() < 1.0 || both.height() < 1.0,
                 qPrintable(QStringLiteral("\"%1\" over \"%2\" in %3")
                                .arg(texts[i].text, texts[j].text, widget->objectName())));
      }
    }
  }
  void checkBoards() const {
    const Plan& plan = window_->document().plan();
    for (const PanelId panel : {mainPanel(plan)->id, backupPanel(plan)->id}) {
      const BoardLayout& board = *window_->boards()->layoutOf(panel);
      const QRectF inside(QPointF(0, 0), board.size);
      for (std::size_t i = 0; i < board.texts.size(); ++i) {
        const BoardText& text = board.texts[i];
        QVERIFY2(inside.contains(text.rect), qPrintable(text.text));
        // Names alone may be cut, and only where the amps have given way before.
        if (text.role != TextRole::name) QCOMPARE(text.text, text.whole);
        for (std::size_t j = 0; j < i; ++j) {
          const QRectF both = text.rect.intersected(board.texts[j].rect);
          QVERIFY2(both.width() < 0.6 || both.height() < 0.6, qPrintable(text.text + board.texts[j].text));
        }
      }
    }
  }
};

void TextsTest::theRecorderSeesATextThatIsCut() {
  QLabel label(QStringLiteral("Refrigerator in the kitchen"));
  label.resize(40, 20);
  Sheet sheet(label.size());
  label.render(&sheet, {}, {}, QWidget::DrawWindowBackground);
  QCOMPARE(sheet.recorder.texts.size(), std::size_t{1});
  QVERIFY(sheet.recorder.texts[0].rect.right() > 60);
}

void TextsTest::nothingIsCutOrCovered_data() {
  QTest::addColumn<QString>("plan");
  QTest::addColumn<QSize>("size");
  for (const char* plan : {"river-house", "plain-house"}) {
    for (const QSize size : {QSize(1280, 720), QSize(1440, 900)}) {
      QTest::addRow("%s at %d", plan, size.width()) << QString::fromLatin1(plan) << size;
    }
  }
}

void TextsTest::nothingIsCutOrCovered() {
  QFETCH(QString, plan);
  QFETCH(QSize, size);
  QTemporaryDir folder;
  const QString path = folder.filePath(plan + QStringLiteral(".stayalight"));
  QVERIFY(QFile::copy(
      QStringLiteral(STAYALIGHT_SOURCE_DIR "/samples/") + plan + QStringLiteral(".stayalight"), path));
  QVERIFY(window_->openFile(path));
  window_->resize(size);
  QTRY_COMPARE(window_->size(), size);
  QCoreApplication::processEvents();
  checkBoards();
  // At rest, with a breaker selected, and in the middle of a move.
  const Circuit* moved = movableCircuit(window_->document().plan());
  for (const int state : {0, 1, 2}) {
    if (state == 1) window_->boards()->focusBreaker(moved->planned);
    if (state == 2)
      QTest::keyClick(window_->boards()->boardWidget(mainPanel(window_->document().plan())->id), Qt::Key_M);
    QCOMPARE(window_->boards()->carrying(), state == 2);
    QCoreApplication::processEvents();
    check(window_->strip()->chart()->viewport());
    check(window_->answers()->findChild<QWidget*>(QStringLiteral("answersPage")));
    check(window_->card());
    check(window_->findChild<QWidget*>(QStringLiteral("feederLine")));
    check(window_->findChild<QWidget*>(QStringLiteral("statusLine")));
    checkBoards();
    if (QTest::currentTestFailed()) return;
  }
}

QTEST_MAIN(TextsTest)
#include "texts_test.moc"
