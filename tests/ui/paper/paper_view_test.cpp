// Writing the PDF goes on beside the window: how far it is can be seen, and it can be cancelled by mouse and
// by key; then what was there before is there still.

#include <QtCore/QFile>
#include <QtCore/QTemporaryDir>
#include <QtTest/QtTest>
#include <QtWidgets/QApplication>
#include <QtWidgets/QLabel>
#include <QtWidgets/QProgressBar>
#include <QtWidgets/QPushButton>

#include "tests/core/example_plans.h"
#include "ui/paper/paper_view.h"
#include "ui/style/fonts.h"
#include "ui/wording/language.h"

using namespace stayalight;

namespace {

/// So many panels that their sheets take longer to write than a hand to cancel.
Plan manyPanels() {
  Plan plan = example::exampleHouse();
  for (int i = 0; i < 120; ++i)
    example::addPanel(plan, PanelRole::subpanel, "Panel " + std::to_string(i), 84);
  return plan;
}

}  // namespace

class PaperViewTest : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void initTestCase() { QVERIFY(loadFaces()); }
  void init() {
    folder_ = std::make_unique<QTemporaryDir>();
    path_ = folder_->filePath(QStringLiteral("sheets.pdf"));
    QFile before(path_);
    QVERIFY(before.open(QIODevice::WriteOnly) && before.write("before") == 6);
  }

  void itIsWrittenBesideTheWindow() {
    PaperView view(language_);
    show(view, example::exampleHouse());
    QSignalSpy ended(&view, &PaperView::writingEnded);
    view.savePdfTo(path_);
    QVERIFY(view.writing());
    QVERIFY(!button(view, "savePdf")->isEnabled());
    QVERIFY(ended.wait());
    QVERIFY(ended.front().front().toBool());
    QVERIFY(content().startsWith("%PDF"));
    QVERIFY(button(view, "savePdf")->isEnabled());
    QVERIFY(!button(view, "cancelPdf")->isVisible());
    QVERIFY(!view.findChild<QProgressBar*>(QStringLiteral("pdfProgress"))->isVisible());
  }

  void itIsCancelled_data() {
    QTest::addColumn<bool>("byKey");
    QTest::addColumn<bool>("fileThere");
    QTest::newRow("by mouse, over a file") << false << true;
    QTest::newRow("by mouse, a new file") << false << false;
    QTest::newRow("by Escape, over a file") << true << true;
    QTest::newRow("by Escape, a new file") << true << false;
  }
  void itIsCancelled() {
    QFETCH(bool, byKey);
    QFETCH(bool, fileThere);
    if (!fileThere) QVERIFY(QFile::remove(path_));
    PaperView view(language_);
    show(view, manyPanels());
    QVERIFY(view.pages().size() > 200);
    button(view, "savePdf")->setFocus();
    QSignalSpy ended(&view, &PaperView::writingEnded);
    view.savePdfTo(path_);
    QPushButton* cancel = button(view, "cancelPdf");
    auto* bar = view.findChild<QProgressBar*>(QStringLiteral("pdfProgress"));
    QVERIFY(cancel->isVisible() && bar->isVisible());
    QVERIFY(!bar->accessibleName().isEmpty());
    QTRY_VERIFY(cancel->hasFocus());
    // The window goes on meanwhile: the progress is told to it.
    QTRY_VERIFY(bar->value() > 0);
    QVERIFY(view.writing());
    if (byKey)
      QTest::keyClick(cancel, Qt::Key_Escape);
    else
      QTest::mouseClick(cancel, Qt::LeftButton);
    QTRY_COMPARE(ended.size(), 1);
    QVERIFY(!ended.front().front().toBool());
    QVERIFY(!view.writing());
    QVERIFY(!cancel->isVisible() && !bar->isVisible());
    QVERIFY(view.findChild<QLabel*>(QStringLiteral("paperMessage"))
                ->text()
                .contains(QStringLiteral("nothing was written")));
    QCOMPARE(content(), fileThere ? QByteArray("before") : QByteArray());
    QCOMPARE(QDir(folder_->path()).entryList(QDir::Files | QDir::Hidden).size(), fileThere ? 1 : 0);
    // And it can be written after all.
    show(view, example::exampleHouse());
    view.savePdfTo(path_);
    QTRY_COMPARE(ended.size(), 2);
    QVERIFY(content().startsWith("%PDF"));
  }

  void aWindowThatIsClosedStopsIt() {
    auto view = std::make_unique<PaperView>(language_);
    show(*view, manyPanels());
    view->savePdfTo(path_);
    QVERIFY(view->writing());
    view.reset();
    QCOMPARE(content(), QByteArray("before"));
  }

 private:
  static QPushButton* button(const PaperView& view, const char* name) {
    return view.findChild<QPushButton*>(QLatin1String(name));
  }
  void show(PaperView& view, const Plan& plan) const {
    view.setPlan(plan, assess(plan), QStringLiteral("test"));
    view.resize(900, 700);
    view.show();
    QVERIFY(QTest::qWaitForWindowActive(&view));
  }
  [[nodiscard]] QByteArray content() const {
    QFile file(path_);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
  }

  ProgramLanguage language_;
  std::unique_ptr<QTemporaryDir> folder_;
  QString path_;
};

QTEST_MAIN(PaperViewTest)
#include "paper_view_test.moc"
