// Pictures of every place, form, dialog and state for people to look at, as contact sheets in the working
// folder:
// `<theme>-<scale>-<number>.png`. QT_SCALE_FACTOR=2 draws the same for a finer screen.

#include <QtCore/QDir>
#include <QtGui/QPainter>

#include "tests/gui/every_view.h"
#include "ui/style/palette.h"

using namespace stayalight;
using namespace stayalight::window;

namespace {

constexpr int kAcross = 2, kDown = 3;  // pictures on a sheet
constexpr QSize kPicture(1280, 720);   // room of one, in logical pixels
constexpr int kTitle = 28, kGap = 12;

struct Picture {
  QString name;
  QImage image;
};

QImage sheetOf(std::span<const Picture> pictures, double scale) {
  const QSize room((kPicture.width() + kGap) * kAcross, (kPicture.height() + kTitle + kGap) * kDown);
  QImage sheet(room * scale, QImage::Format_RGB32);
  sheet.fill(QColor(0x60, 0x60, 0x60));
  QPainter painter(&sheet);
  painter.scale(scale, scale);
  painter.setFont(font(Face::condensed, 18, Weight::medium));
  painter.setPen(Qt::white);
  for (std::size_t i = 0; i < pictures.size(); ++i) {
    const QPoint at(static_cast<int>(i % kAcross) * (kPicture.width() + kGap),
                    static_cast<int>(i / kAcross) * (kPicture.height() + kTitle + kGap));
    painter.drawText(at + QPoint(8, kTitle - 8), pictures[i].name);
    QImage image = pictures[i].image;
    image.setDevicePixelRatio(scale);
    painter.drawImage(at + QPoint(0, kTitle), image);
  }
  return sheet;
}

}  // namespace

class ContactSheetsTest : public WindowTest {
  Q_OBJECT
 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void init() { openEmpty(kPicture); }
  void cleanup() { closeWindow(); }
  void sheets_data() {
    QTest::addColumn<int>("theme");
    QTest::newRow("light") << static_cast<int>(Theme::light);
    QTest::newRow("dark") << static_cast<int>(Theme::dark);
    QTest::newRow("contrast") << static_cast<int>(Theme::contrast);
  }
  void sheets() {
    QFETCH(int, theme);
    window_->setTheme(static_cast<Theme>(theme));
    const double scale = window_->devicePixelRatioF();
    std::vector<Picture> pictures;
    everyView(*window_, [&](const QString& name, QWidget& shown) {
      pictures.push_back({name, shown.grab().toImage()});
      QVERIFY2(!pictures.back().image.isNull(), qPrintable(name));
    });
    QVERIFY(pictures.size() > 25);
    constexpr std::size_t kEach = kAcross * kDown;
    int number = 0;
    for (std::size_t from = 0; from < pictures.size(); from += kEach) {
      const auto part =
          std::span<const Picture>(pictures).subspan(from, std::min(kEach, pictures.size() - from));
      const QString name = QStringLiteral("%1-%2x-%3.png")
                               .arg(QLatin1String(QTest::currentDataTag()))
                               .arg(qRound(scale))
                               .arg(++number, 2, 10, QLatin1Char('0'));
      QVERIFY2(sheetOf(part, scale).save(name), qPrintable(QDir::current().filePath(name)));
    }
  }
};

QTEST_MAIN(ContactSheetsTest)
#include "contact_sheets_test.moc"
