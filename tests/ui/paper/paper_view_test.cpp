// Writing the PDF and printing go on beside the window: how far it is can be seen, and it can be cancelled by
// mouse and by key; then what was there before is there still, or it is said how much is printed.

#include <QtCore/QFile>
#include <QtCore/QProcess>
#include <QtCore/QRegularExpression>
#include <QtCore/QTemporaryDir>
#include <QtCore/QTimer>
#include <QtPrintSupport/QPrintDialog>
#include <QtPrintSupport/QPrinter>
#include <QtTest/QtTest>
#include <QtWidgets/QApplication>
#include <QtWidgets/QDialogButtonBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
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

  // A printer that prints into a file stands for one of paper: what takes the pages is the same.
  void pagesArePrintedBesideTheWindow_data() {
    QTest::addColumn<int>("from");
    QTest::addColumn<int>("to");
    QTest::newRow("all") << 1 << 4;
    QTest::newRow("some") << 2 << 3;
    QTest::newRow("more than there are") << 3 << 99;
  }
  void pagesArePrintedBesideTheWindow() {
    QFETCH(int, from);
    QFETCH(int, to);
    PaperView view(language_);
    show(view, example::exampleHouse());
    const int count = static_cast<int>(view.pages().size());
    QVERIFY(count >= 4);
    button(view, "printPages")->setFocus();
    QSignalSpy ended(&view, &PaperView::writingEnded);
    view.printOn(filePrinter(), from, to == 4 ? count : to);
    QVERIFY(view.writing());
    for (const char* name : {"printPages", "savePdf"}) QVERIFY(!button(view, name)->isEnabled());
    QVERIFY(button(view, "cancelPdf")->isVisible());
    // One thing at a time: nothing else begins meanwhile.
    view.savePdfTo(folder_->filePath(QStringLiteral("other.pdf")));
    QVERIFY(ended.wait());
    QVERIFY(ended.front().front().toBool());
    QCOMPARE(pagesInFile(), std::min(to == 4 ? count : to, count) - from + 1);
    QVERIFY(!QFile::exists(folder_->filePath(QStringLiteral("other.pdf"))));
    QVERIFY(said(view).contains(QStringLiteral("Sent to the printer")));
    QVERIFY(button(view, "printPages")->isEnabled());
    QVERIFY(button(view, "printPages")->hasFocus());
    const QString text = run(QStringLiteral("pdftotext"), {path_, QStringLiteral("-")});
    for (int page = from; page <= std::min(to, count); ++page)
      QVERIFY(text.contains(QStringLiteral("%1 of %2").arg(page).arg(count)));
  }

  // On the printer each word stands where the PDF has it.
  void whatIsPrintedIsWhatTheFileHolds() {
    PaperView view(language_);
    show(view, example::exampleHouse());
    const int count = static_cast<int>(view.pages().size());
    QSignalSpy ended(&view, &PaperView::writingEnded);
    view.printOn(filePrinter(), 1, count);
    QVERIFY(ended.wait());
    const std::vector<QPointF> printed = wordPlaces();
    view.savePdfTo(path_);
    QVERIFY(ended.wait());
    const std::vector<QPointF> written = wordPlaces();
    QVERIFY(written.size() > 100);
    QCOMPARE(printed.size(), written.size());
    for (std::size_t i = 0; i < written.size(); ++i)
      QVERIFY((printed[i] - written[i]).manhattanLength() < 0.5);
  }

  // What is with the printer has no way back; how much that is, is said.
  void printingIsCancelled_data() {
    QTest::addColumn<bool>("byKey");
    QTest::newRow("by mouse") << false;
    QTest::newRow("by Escape") << true;
  }
  void printingIsCancelled() {
    QFETCH(bool, byKey);
    PaperView view(language_);
    show(view, manyPanels());
    const int count = static_cast<int>(view.pages().size());
    button(view, "printPages")->setFocus();
    QSignalSpy ended(&view, &PaperView::writingEnded);
    view.printOn(filePrinter(), 1, count);
    QPushButton* cancel = button(view, "cancelPdf");
    QTRY_VERIFY(cancel->hasFocus());
    QTRY_VERIFY(view.findChild<QProgressBar*>(QStringLiteral("pdfProgress"))->value() > 0);
    if (byKey)
      QTest::keyClick(cancel, Qt::Key_Escape);
    else
      QTest::mouseClick(cancel, Qt::LeftButton);
    QTRY_COMPARE(ended.size(), 1);
    QVERIFY(!ended.front().front().toBool());
    const int printed = pagesInFile();
    QVERIFY(printed > 0 && printed < count);
    QVERIFY2(said(view).contains(QStringLiteral("%1 of %2 pages").arg(printed).arg(count)),
             qPrintable(said(view)));
  }

  void aPrinterThatTakesNothingIsSaid() {
    PaperView view(language_);
    show(view, example::exampleHouse());
    path_ = QStringLiteral("/nowhere/at/all.pdf");
    QSignalSpy ended(&view, &PaperView::writingEnded);
    QTest::ignoreMessage(QtWarningMsg,
                         QRegularExpression(QStringLiteral("QPainter::begin|QPdfEngine|QPrinter")));
    view.printOn(filePrinter(), 1, 2);
    QVERIFY(ended.wait());
    QVERIFY(!ended.front().front().toBool());
    QVERIFY(said(view).contains(QStringLiteral("took no page")));
    QVERIFY(button(view, "printPages")->isEnabled());
  }

  // Half a set helps nobody: a window that is closed waits for the last page.
  void aWindowThatIsClosedPrintsToTheEnd() {
    auto view = std::make_unique<PaperView>(language_);
    show(*view, manyPanels());
    const int count = static_cast<int>(view->pages().size());
    view->printOn(filePrinter(), 1, count);
    QVERIFY(view->writing());
    view.reset();
    QCOMPARE(pagesInFile(), count);
  }

  // The desktop's own dialog may be told a file: then it is the file that "Save as PDF" writes.
  void thePrintDialogCanWriteAFile() {
    PaperView view(language_);
    show(view, example::exampleHouse());
    QSignalSpy ended(&view, &PaperView::writingEnded);
    QTimer::singleShot(0, &view, [this] {
      auto* dialog = qobject_cast<QPrintDialog*>(QApplication::activeModalWidget());
      if (dialog == nullptr) return;
      if (auto* field = dialog->findChild<QLineEdit*>(QStringLiteral("filename"))) field->setText(path_);
      dialog->findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok)->click();
    });
    // It asks whether the file is to be written over.
    QVERIFY(QFile::remove(path_));
    view.printPages();
    QTRY_COMPARE(ended.size(), 1);
    QVERIFY(ended.front().front().toBool());
    QCOMPARE(pagesInFile(), static_cast<int>(view.pages().size()));
    QVERIFY(content().contains("/Outlines"));
  }

 private:
  static QString said(const PaperView& view) {
    return view.findChild<QLabel*>(QStringLiteral("paperMessage"))->text();
  }
  [[nodiscard]] std::shared_ptr<QPrinter> filePrinter() const {
    auto printer = std::make_shared<QPrinter>(QPrinter::HighResolution);
    printer->setOutputFormat(QPrinter::PdfFormat);
    printer->setOutputFileName(path_);
    printer->setPageSize(QPageSize(QPageSize::Letter));
    printer->setFullPage(true);
    return printer;
  }
  static QString run(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.start(program, arguments);
    process.waitForFinished();
    return QString::fromUtf8(process.readAllStandardOutput());
  }
  [[nodiscard]] int pagesInFile() const {
    static const QRegularExpression pages(QStringLiteral("Pages: +([0-9]+)"));
    return pages.match(run(QStringLiteral("pdfinfo"), {path_})).captured(1).toInt();
  }
  [[nodiscard]] std::vector<QPointF> wordPlaces() const {
    static const QRegularExpression word(QStringLiteral("<word xMin=\"([0-9.]+)\" yMin=\"([0-9.]+)\""));
    const QString text =
        run(QStringLiteral("pdftotext"), {QStringLiteral("-bbox"), path_, QStringLiteral("-")});
    std::vector<QPointF> places;
    for (auto at = word.globalMatch(text); at.hasNext();) {
      const QRegularExpressionMatch found = at.next();
      places.emplace_back(found.captured(1).toDouble(), found.captured(2).toDouble());
    }
    return places;
  }
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
