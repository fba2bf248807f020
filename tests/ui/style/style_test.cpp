#include <QtCore/QDir>
#include <QtCore/QStandardPaths>
#include <QtGui/QFontDatabase>
#include <QtGui/QFontInfo>
#include <QtGui/QImage>
#include <QtGui/QPainter>
#include <QtGui/QWheelEvent>
#include <QtTest/QTest>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QStyleOption>

#include "ui/style/fonts.h"
#include "ui/style/icons.h"
#include "ui/style/motion.h"
#include "ui/style/palette.h"
#include "ui/style/program_style.h"

using namespace stayalight;

class StyleTest : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  // Worked values of the contrast formula: W3C, WCAG 2.1, "contrast ratio" and "relative luminance": black on
  // white is 21:1; grey #767676 on white is 4.54:1, the lightest grey that passes 4.5 (Understanding Success
  // Criterion 1.4.3).
  void contrastFormula() {
    QCOMPARE(contrast(Qt::black, Qt::white), 21.0);
    QVERIFY(qAbs(contrast(QColor(0x76, 0x76, 0x76), Qt::white) - 4.54) < 0.005);
    QVERIFY(contrast(QColor(0x77, 0x77, 0x77), Qt::white) < 4.5);
  }
  // WCAG 2.1, 1.4.3 (text 4.5:1) and 1.4.11 (marks 3:1), for every pair that is drawn, in all three palettes.
  void everyPairIsReadable() {
    for (const Theme theme : {Theme::light, Theme::dark, Theme::contrast}) {
      const Palette palette(theme);
      for (const ColorPair& pair : colorPairs()) {
        const double found = contrast(palette.color(pair.color), palette.color(pair.ground));
        QVERIFY2(found >= (pair.text ? 4.5 : 3.0), qPrintable(QString("theme %1, color %2 on %3: %4")
                                                                  .arg(int(theme))
                                                                  .arg(int(pair.color))
                                                                  .arg(int(pair.ground))
                                                                  .arg(found)));
      }
    }
  }
  void widgetPaletteIsReadable() {
    for (const Theme theme : {Theme::light, Theme::dark, Theme::contrast}) {
      const QPalette palette = widgetPalette(Palette(theme));
      for (const QPalette::ColorGroup group : {QPalette::Active, QPalette::Inactive, QPalette::Disabled}) {
        QVERIFY(contrast(palette.color(group, QPalette::WindowText),
                         palette.color(group, QPalette::Window)) >= 4.5);
        QVERIFY(contrast(palette.color(group, QPalette::Text), palette.color(group, QPalette::Base)) >= 4.5);
        QVERIFY(contrast(palette.color(group, QPalette::ButtonText),
                         palette.color(group, QPalette::Button)) >= 4.5);
      }
      QVERIFY(contrast(palette.color(QPalette::HighlightedText), palette.color(QPalette::Highlight)) >= 4.5);
      QVERIFY(contrast(palette.color(QPalette::ToolTipText), palette.color(QPalette::ToolTipBase)) >= 4.5);
    }
  }
  // The wheel over a list of choices is meant for the page below it: the event goes on, ignored.
  void theWheelNeverChooses() {
    ProgramStyle style{Palette(Theme::light)};
    QComboBox choices;
    choices.setStyle(&style);
    choices.addItems({QStringLiteral("one"), QStringLiteral("two"), QStringLiteral("three")});
    choices.show();
    QVERIFY(QTest::qWaitForWindowExposed(&choices));
    QCOMPARE(choices.focusPolicy(), Qt::StrongFocus);
    const QPoint at = choices.rect().center();
    QWheelEvent turn(at, choices.mapToGlobal(at), QPoint(), QPoint(0, -120), Qt::NoButton, Qt::NoModifier,
                     Qt::NoScrollPhase, false);
    QCoreApplication::sendEvent(&choices, &turn);
    QCOMPARE(choices.currentIndex(), 0);
    QVERIFY(!turn.isAccepted());
  }
  // A field and a button are seen by their edge: 3:1 against what they stand on (WCAG 2.1, 1.4.11), as
  // painted.
  void fieldsAndButtonsHaveAnEdge() {
    for (const Theme theme : {Theme::light, Theme::dark, Theme::contrast}) {
      const Palette palette(theme);
      ProgramStyle style(palette);
      const QColor ground = palette.color(ColorRole::sheet);
      const auto edge = [&](QStyle::PrimitiveElement element, QStyleOption& option) {
        QImage image(60, 24, QImage::Format_ARGB32);
        image.fill(ground);
        option.rect = image.rect();
        option.palette = widgetPalette(palette);
        option.state = QStyle::State_Enabled;
        QPainter painter(&image);
        style.drawPrimitive(element, &option, &painter, nullptr);
        painter.end();
        return image.pixelColor(30, 0);
      };
      QStyleOptionFrame field;
      QVERIFY(contrast(edge(QStyle::PE_FrameLineEdit, field), ground) >= 3.0);
      QStyleOptionButton button;
      QVERIFY(contrast(edge(QStyle::PE_PanelButtonCommand, button), ground) >= 3.0);
    }
  }
  // The same of what is moved or only looked at: the handle of a scroll bar, a spin box, progress, a seam.
  void handlesAndBarsAreSeen() {
    for (const Theme theme : {Theme::light, Theme::dark, Theme::contrast}) {
      const Palette palette(theme);
      ProgramStyle style(palette);
      const QColor ground = palette.color(ColorRole::window);
      QImage image;
      const auto prepared = [&](QStyleOption& option, QSize size) {
        image = QImage(size, QImage::Format_ARGB32);
        image.fill(ground);
        option.rect = image.rect();
        option.palette = widgetPalette(palette);
        option.state = QStyle::State_Enabled;
      };
      for (const Qt::Orientation orientation : {Qt::Vertical, Qt::Horizontal}) {
        QStyleOptionSlider bar;
        prepared(bar, orientation == Qt::Vertical ? QSize(16, 200) : QSize(200, 16));
        bar.orientation = orientation;
        bar.state.setFlag(QStyle::State_Horizontal, orientation == Qt::Horizontal);
        bar.maximum = 100;
        bar.pageStep = 50;
        bar.subControls = QStyle::SC_All;
        const QRect handle =
            style.subControlRect(QStyle::CC_ScrollBar, &bar, QStyle::SC_ScrollBarSlider, nullptr);
        {
          QPainter painter(&image);
          style.drawComplexControl(QStyle::CC_ScrollBar, &bar, &painter, nullptr);
        }
        QVERIFY(contrast(image.pixelColor(handle.center()), ground) >= 3.0);
        const QPoint beyond = orientation == Qt::Vertical ? QPoint(8, 170) : QPoint(170, 8);
        QVERIFY(!handle.contains(beyond));
        QVERIFY(contrast(image.pixelColor(handle.center()), image.pixelColor(beyond)) >= 3.0);
      }
      QStyleOptionSpinBox box;
      prepared(box, QSize(120, 26));
      box.subControls = QStyle::SC_All;
      {
        QPainter painter(&image);
        style.drawComplexControl(QStyle::CC_SpinBox, &box, &painter, nullptr);
      }
      QVERIFY(contrast(image.pixelColor(60, 0), ground) >= 3.0);
      QStyleOptionProgressBar progress;
      prepared(progress, QSize(200, 20));
      progress.maximum = 100;
      progress.progress = 50;
      progress.state.setFlag(QStyle::State_Horizontal);
      {
        QPainter painter(&image);
        style.drawControl(QStyle::CE_ProgressBarGroove, &progress, &painter, nullptr);
        style.drawControl(QStyle::CE_ProgressBarContents, &progress, &painter, nullptr);
      }
      QVERIFY(contrast(image.pixelColor(100, 0), ground) >= 3.0);
      QVERIFY(contrast(image.pixelColor(50, 10), image.pixelColor(150, 10)) >= 3.0);
      QStyleOption seam;
      prepared(seam, QSize(200, 8));
      {
        QPainter painter(&image);
        style.drawControl(QStyle::CE_Splitter, &seam, &painter, nullptr);
      }
      QVERIFY(contrast(image.pixelColor(seam.rect.center()), ground) >= 3.0);
    }
  }
  void theDesktopMayAskForLessMotion() {
    QStandardPaths::setTestModeEnabled(true);
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::GenericConfigLocation);
    setMotionWanted(true);
    QVERIFY(motionWanted());
    for (const auto& [name, text] :
         {std::pair("/kdeglobals", "[KDE]\nAnimationDurationFactor=0\n"),
          std::pair("/gtk-3.0/settings.ini", "[Settings]\ngtk-enable-animations=false\n"),
          std::pair("/gtk-4.0/settings.ini", "[Settings]\ngtk-enable-animations=0\n")}) {
      const QString path = folder + QLatin1String(name);
      QVERIFY(QDir().mkpath(QFileInfo(path).absolutePath()));
      QFile file(path);
      QVERIFY(file.open(QIODevice::WriteOnly));
      file.write(text);
      file.close();
      QVERIFY2(!motionWanted(), name);
      QVERIFY(file.remove());
      QVERIFY(motionWanted());
    }
    setMotionWanted(false);
    QVERIFY(!motionWanted());
    setMotionWanted(true);
  }
  void facesAreTheBuiltInOnes() {
    QVERIFY(loadFaces());
    QCOMPARE(QFontInfo(font(Face::text, 12)).family(), QString("Roboto"));
    QVERIFY(QFontInfo(font(Face::condensed, 12)).family().startsWith("Roboto Condensed"));
    QVERIFY(QFontInfo(font(Face::condensed, 12, Weight::medium)).family().startsWith("Roboto Condensed"));
    QCOMPARE(QFontInfo(font(Face::engraved, 12)).family(), QString("Routed Gothic Wide"));
    // Columns of figures stay in line only with digits of one width.
    for (const Face face : {Face::text, Face::condensed}) {
      for (const Weight weight : {Weight::regular, Weight::medium, Weight::bold}) {
        for (int digit = 1; digit < 10; ++digit) {
          QCOMPARE(textWidth(QString::number(digit), face, 12, weight), textWidth("0", face, 12, weight));
        }
      }
    }
    QVERIFY(textWidth("Refrigerator", Face::condensed, 12) < textWidth("Refrigerator", Face::text, 12));
  }
  // What is measured is what is drawn: a text measured at the large size is as wide at the small one, within
  // half a pixel.
  void measuredWidthIsDrawnWidth() {
    QVERIFY(loadFaces());
    for (const char* text : {"Refrigerator", "Kitchen counter, left", "L1 peak 13.5 A"}) {
      const double drawn = QFontMetricsF(font(Face::condensed, 12)).horizontalAdvance(QString(text));
      const double measured = textWidth(text, Face::condensed, 12);
      QVERIFY2(qAbs(drawn - measured) < 0.02 * measured + 0.5,
               qPrintable(QString("%1: %2 drawn, %3 measured").arg(text).arg(drawn).arg(measured)));
    }
  }
  void elisionFits() {
    QVERIFY(loadFaces());
    const QString cut = elided("Hall and stair lights", 60, Face::condensed, 12);
    QVERIFY(cut.endsWith(QChar(0x2026)));
    QVERIFY(textWidth(cut, Face::condensed, 12) <= 60.0);
    QCOMPARE(elided("Hall", 60, Face::condensed, 12), QString("Hall"));
  }
  void everyIconDrawsWithinItsGrid() {
    for (int i = 0; i < kIconCount; ++i) {
      const QRectF extent = iconPath(static_cast<Icon>(i)).boundingRect();
      QVERIFY2(QRectF(0.5, 0.5, 15, 15).contains(extent.adjusted(-0.1, -0.1, 0.1, 0.1)),
               qPrintable(QString("icon %1").arg(i)));
      QVERIFY(extent.width() > 4.0 || extent.height() > 4.0);
      QImage image(16, 16, QImage::Format_ARGB32);
      image.fill(Qt::transparent);
      QPainter painter(&image);
      paintIcon(painter, QRectF(0, 0, 16, 16), static_cast<Icon>(i), Qt::black);
      painter.end();
      int inked = 0;
      for (int y = 0; y < 16; ++y)
        for (int x = 0; x < 16; ++x) inked += qAlpha(image.pixel(x, y)) > 60;
      QVERIFY2(inked > 8, qPrintable(QString("icon %1").arg(i)));
    }
  }
};

QTEST_MAIN(StyleTest)
#include "style_test.moc"
