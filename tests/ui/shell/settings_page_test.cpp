// The page of settings: each change holds at once, in all that is shown and in the next plan.

#include <QtGui/QAction>
#include <QtWidgets/QCheckBox>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QSpinBox>

#include "core/edit/edit.h"
#include "tests/ui/shell/window_fixture.h"
#include "ui/style/motion.h"

using namespace stayalight;
using namespace stayalight::window;

class SettingsPageTest : public WindowTest {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void init() { openWithSample(); }
  void cleanup() {
    closeWindow();
    QSettings().clear();
  }
  void eachChangeHoldsAtOnce();
  void theViewMenuAndThePageSayTheSame();
  void newPlansTakeTheDefaults();
  void aBrokenFileIsSaidOnceAndTheWindowStands();

 private:
  QDialog* page() {
    pressKey(*window_, Qt::Key_Comma, Qt::ControlModifier);
    auto* dialog = window_->findChild<QDialog*>(QStringLiteral("settingsPage"));
    if (dialog == nullptr || !QTest::qWaitForWindowActive(dialog)) qFatal("no page of settings");
    return dialog;
  }
  template <class Control>
  static Control* control(QDialog* dialog, const char* name) {
    auto* found = dialog->findChild<Control*>(QString::fromLatin1(name));
    if (found == nullptr) qFatal("%s is missing", name);
    return found;
  }
  // With the keyboard: Home, then down so many times.
  static void choose(QComboBox* box, int index) {
    box->setFocus();
    QTest::keyClick(box, Qt::Key_Home);
    for (int i = 0; i < index; ++i) QTest::keyClick(box, Qt::Key_Down);
    QCOMPARE(box->currentIndex(), index);
  }
  [[nodiscard]] bool anyText(const QString& text) const {
    for (const QLabel* label : window_->findChildren<QLabel*>()) {
      if (label->text().contains(text)) return true;
    }
    return false;
  }
};

void SettingsPageTest::eachChangeHoldsAtOnce() {
  QDialog* dialog = page();
  choose(control<QComboBox>(dialog, "theme"), 2);
  QVERIFY(qApp->palette().color(QPalette::Window).lightness() < 100);
  choose(control<QComboBox>(dialog, "theme"), 0);
  // The decimal mark: in the amperes beside a breaker.
  const PanelId backup = backupPanel(window_->document().plan())->id;
  const auto figures = [&] {
    QString all;
    for (const BoardText& text : window_->boards()->layoutOf(backup)->texts) {
      if (text.role == TextRole::amps) all += text.whole + QLatin1Char(' ');
    }
    return all;
  };
  choose(control<QComboBox>(dialog, "decimalMark"), 1);
  QVERIFY2(figures().contains(QLatin1Char('.')) && !figures().contains(QLatin1Char(',')),
           qPrintable(figures()));
  choose(control<QComboBox>(dialog, "decimalMark"), 2);
  QVERIFY2(figures().contains(QLatin1Char(',')) && !figures().contains(QLatin1Char('.')),
           qPrintable(figures()));
  // Units: the length of a feeder run.
  const Plan& plan = window_->document().plan();
  QVERIFY(!plan.runs.empty());
  window_->action(Command::inspector)->trigger();
  window_->inspector()->look({RecordKind::feederRun, plan.runs.front()->id.number});
  const auto units = [&] {
    QStringList all;
    for (const QLabel* label : window_->inspector()->findChildren<QLabel*>()) all << label->text();
    return all;
  };
  QVERIFY2(units().contains(QStringLiteral("ft")), qPrintable(units().join(QLatin1Char('|'))));
  choose(control<QComboBox>(dialog, "units"), 1);
  QVERIFY2(units().contains(QStringLiteral("m")) && !units().contains(QStringLiteral("ft")),
           qPrintable(units().join(QLatin1Char('|'))));
  auto* seconds = control<QSpinBox>(dialog, "autosaveSeconds");
  seconds->setFocus();
  seconds->selectAll();
  QTest::keyClicks(seconds, QStringLiteral("20"));
  QTest::keyClick(seconds, Qt::Key_Tab);
  QCOMPARE(window_->document().autosaveDelay(), 20000);
  QTest::keyClick(dialog, Qt::Key_Escape);
  QCOMPARE(QSettings().value(QStringLiteral("autosaveSeconds")).toInt(), 20);
  QCOMPARE(QSettings().value(QStringLiteral("metric")).toBool(), true);
}

void SettingsPageTest::theViewMenuAndThePageSayTheSame() {
  QDialog* dialog = page();
  auto* theme = control<QComboBox>(dialog, "theme");
  window_->action(Command::contrast)->trigger();
  QCOMPARE(theme->currentIndex(), 3);
  choose(theme, 1);
  QVERIFY(window_->action(Command::light)->isChecked());
  auto* motion = control<QCheckBox>(dialog, "lessMotion");
  QTest::mouseClick(motion, Qt::LeftButton, {}, QPoint(8, motion->height() / 2));
  QVERIFY(motion->isChecked());
  QVERIFY(window_->action(Command::lessMotion)->isChecked());
  QVERIFY(!motionChosen());
  window_->action(Command::lessMotion)->trigger();
  QVERIFY(!motion->isChecked());
}

void SettingsPageTest::newPlansTakeTheDefaults() {
  QDialog* dialog = page();
  choose(control<QComboBox>(dialog, "paper"), 1);
  for (const auto& [name, text] :
       {std::pair("firm", "River Electric"), std::pair("licence", "E 77"), std::pair("drawnBy", "A. B.")}) {
    auto* line = control<QLineEdit>(dialog, name);
    line->setFocus();
    QTest::keyClicks(line, QString::fromLatin1(text));
  }
  QTest::keyClick(dialog, Qt::Key_Escape);
  window_->startPlan(newPlan());
  const Site& site = *window_->document().plan().site;
  QVERIFY(site.paper.is(PaperSize::a4));
  QCOMPARE(site.firm, std::string("River Electric"));
  QCOMPARE(site.licence, std::string("E 77"));
  QCOMPARE(site.drawnBy, std::string("A. B."));
}

void SettingsPageTest::aBrokenFileIsSaidOnceAndTheWindowStands() {
  QVERIFY(window_->close());
  delete window_;
  window_ = nullptr;
  const QString path = QSettings().fileName();
  {
    QSettings store;
    store.setValue(QStringLiteral("theme"), QStringLiteral("pink"));
    store.setValue(QStringLiteral("autosaveSeconds"), QStringLiteral("many"));
    store.setValue(QStringLiteral("recentFiles"), 7);
    int kept = 0;
    for (const QString& key : store.allKeys()) {
      if (!key.startsWith(QStringLiteral("window/"))) continue;
      store.setValue(key, QByteArray("\x01rubbish"));
      ++kept;
    }
    QVERIFY(kept >= 4);
  }
  window_ = new MainWindow;
  window_->show();
  QVERIFY(QTest::qWaitForWindowActive(window_));
  QString said;
  answerNextBox({}, &said);
  window_->tellSettingsProblems();
  QVERIFY2(said.contains(path), qPrintable(said));
  QVERIFY2(said.contains(QStringLiteral("theme")), qPrintable(said));
  QVERIFY2(said.contains(QStringLiteral("autosaveSeconds")), qPrintable(said));
  window_->tellSettingsProblems();  // nothing more to say: no box, or this would hang
  QVERIFY(window_->width() >= 960);
  window_->openSample();
  QVERIFY(window_->boards()->isVisible());
}

QTEST_MAIN(SettingsPageTest)
#include "settings_page_test.moc"
