// The list of what has to be looked at on site, in the window: by keys and by mouse to the fact, and shorter
// once it is entered.

#include <QtGui/QAccessible>
#include <QtGui/QAction>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QToolButton>

#include "tests/ui/shell/window_fixture.h"
#include "ui/onsite/on_site_list.h"
#include "ui/survey/survey_view.h"

using namespace stayalight;
using namespace stayalight::window;

class OnSiteTest : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void init() {
    window_ = windowWithSample();
    QVERIFY(window_->isActiveWindow());
  }
  void cleanup() { delete window_; }
  void aKeyOpensTheListAndEnterGoesToTheField();
  void enteringTheFactTakesItOff();
  void inTheSurveyItGoesToTheRow();
  void oneDoerCanBeChosen();
  void everyRowIsReadWhole();
  void anEmptyListSaysSo();

 private:
  [[nodiscard]] OnSiteList* list() const { return window_->onSite(); }
  [[nodiscard]] int rowOf(std::string_view key) const {
    for (std::size_t i = 0; i < list()->shown().size(); ++i) {
      if (list()->shown()[i].key == key) return static_cast<int>(i);
    }
    return -1;
  }
  void walkTo(int row) {
    while (list()->rows()->currentRow() < row) QTest::keyClick(list()->rows(), Qt::Key_Down);
  }
  MainWindow* window_ = nullptr;
};

void OnSiteTest::aKeyOpensTheListAndEnterGoesToTheField() {
  pressKey(*window_, Qt::Key_8, Qt::ControlModifier);
  QVERIFY(list()->isVisible());
  QTRY_VERIFY(list()->rows()->hasFocus());
  QCOMPARE(list()->shown().size(), window_->assessment().onSite.size());
  auto* tab = window_->findChild<QToolButton*>(QStringLiteral("sideOnSite"));
  QVERIFY(tab->text().endsWith(QString::number(list()->shown().size())));

  const int row = rowOf("load.running_W");
  QVERIFY(row > 0);
  walkTo(row);
  const OnSiteItem item = list()->shown()[static_cast<std::size_t>(row)];
  QTest::keyClick(list()->rows(), Qt::Key_Return);
  QVERIFY(window_->inspector()->isVisible());
  const Circuit* circuit = circuitOf(window_->document().plan(), LoadId{item.place.id});
  QCOMPARE(window_->boards()->selection().size(), std::size_t{1});
  QCOMPARE(window_->boards()->selection().front().id, circuit->planned.number);
  QTRY_VERIFY(window_->inspector()->form(item.place) != nullptr);
  QTRY_VERIFY(window_->inspector()->form(item.place)->isAncestorOf(QApplication::focusWidget()));
}

void OnSiteTest::enteringTheFactTakesItOff() {
  auto* tab = window_->findChild<QToolButton*>(QStringLiteral("sideOnSite"));
  QTest::mouseClick(tab, Qt::LeftButton);
  const std::size_t before = list()->shown().size();
  const int row = rowOf("panel.wiring_space_in2");
  QVERIFY(row >= 0);
  list()->rows()->scrollToItem(list()->rows()->item(row));
  const QRect at = list()->rows()->visualItemRect(list()->rows()->item(row));
  QTest::mouseClick(list()->rows()->viewport(), Qt::LeftButton, Qt::NoModifier, at.center());
  QVERIFY(window_->inspector()->isVisible());
  QTRY_VERIFY(qobject_cast<QLineEdit*>(QApplication::focusWidget()) != nullptr);
  QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("24"));
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
  QCOMPARE(mainPanel(window_->document().plan())->wiringSpace, std::optional(SquareInches(24)));
  QTest::mouseClick(tab, Qt::LeftButton);
  QCOMPARE(list()->shown().size(), before - 1);
  QCOMPARE(rowOf("panel.wiring_space_in2"), -1);
  QVERIFY(tab->text().endsWith(QString::number(before - 1)));
}

void OnSiteTest::inTheSurveyItGoesToTheRow() {
  pressKey(*window_, Qt::Key_2, Qt::ControlModifier);
  QVERIFY(window_->survey()->isVisible());
  pressKey(*window_, Qt::Key_8, Qt::ControlModifier);
  QTRY_VERIFY(list()->rows()->hasFocus());
  const int row = rowOf("circuit.traced");
  QVERIFY(row >= 0);
  walkTo(row);
  const EntityRef place = list()->shown()[static_cast<std::size_t>(row)].place;
  QTest::keyClick(list()->rows(), Qt::Key_Return);
  QVERIFY(window_->survey()->isVisible());
  const std::optional<EntityRef> current = window_->survey()->current();
  QVERIFY(current.has_value());
  const EntityRef owner = ownerOf(window_->document().plan(), *current);
  QCOMPARE(owner.kind, RecordKind::circuit);
  QCOMPARE(owner.id, place.id);
  QVERIFY(window_->inspector()->isVisible());
  QTRY_VERIFY(window_->inspector()->isAncestorOf(QApplication::focusWidget()));
}

void OnSiteTest::oneDoerCanBeChosen() {
  pressKey(*window_, Qt::Key_8, Qt::ControlModifier);
  const std::size_t all = list()->shown().size();
  std::size_t sum = 0;
  for (const Doer doer : {Doer::household, Doer::qualifiedPerson}) {
    list()->doers()->setFocus();
    QTest::keyClick(list()->doers(), Qt::Key_Down);
    QVERIFY(!list()->shown().empty());
    for (const OnSiteItem& item : list()->shown()) QCOMPARE(item.doer, doer);
    sum += list()->shown().size();
  }
  QCOMPARE(sum, all);
}

void OnSiteTest::everyRowIsReadWhole() {
  pressKey(*window_, Qt::Key_8, Qt::ControlModifier);
  QVERIFY(!list()->rows()->accessibleName().isEmpty());
  QVERIFY(!list()->doers()->accessibleName().isEmpty());
  for (int row = 0; row < list()->rows()->count(); ++row) {
    const OnSiteItem& item = list()->shown()[static_cast<std::size_t>(row)];
    const QString spoken = list()->rows()->item(row)->data(Qt::AccessibleTextRole).toString();
    for (const Message& part : {item.where, item.what})
      QVERIFY(spoken.contains(words(part, ProgramLanguage())));
    QVERIFY(spoken.contains(item.doer == Doer::household ? QStringLiteral("household")
                                                         : QStringLiteral("qualified person")));
    // The row is as high as its words need, under the line that says where.
    const QRect lines = QFontMetrics(stayalight::font(Face::condensed, 11.5))
                            .boundingRect(QRect(0, 0, list()->rows()->viewport()->width() - 24, 1000),
                                          Qt::TextWordWrap, words(item.what, ProgramLanguage()));
    QVERIFY(list()->rows()->visualItemRect(list()->rows()->item(row)).height() >= lines.height() + 18);
  }
}

void OnSiteTest::anEmptyListSaysSo() {
  OnSiteList alone;
  const ProgramLanguage language;
  alone.show({}, language);
  alone.resize(300, 300);
  alone.show();
  QVERIFY(!alone.rows()->isVisible());
  bool said = false;
  for (const QLabel* label : alone.findChildren<QLabel*>())
    said = said || (label->isVisible() && label->text().startsWith(QStringLiteral("Nothing is left")));
  QVERIFY(said);
}

QTEST_MAIN(OnSiteTest)
#include "on_site_test.moc"
