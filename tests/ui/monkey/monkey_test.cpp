// Somebody who knows nothing of the program and does everything: commands, keys, drags, forms, dialogs, by a
// seed that is printed. After each action the plan is one that stands in a house and on the disk, undo and
// redo lead back to it, nothing was warned of, and the window answers.
//
//   STAYALIGHT_SEED=7 STAYALIGHT_ACTIONS=300 build/tests/tests/ui/monkey/monkey_window_tests
// does again what seed 7 did, that far.

#include <QtCore/QDeadlineTimer>
#include <QtCore/QMimeData>
#include <QtCore/QPointer>
#include <QtGui/QAction>
#include <QtGui/QClipboard>
#include <QtGui/QDrag>
#include <QtGui/QDropEvent>
#include <QtWidgets/QAbstractItemView>
#include <QtWidgets/QCheckBox>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QMenu>
#include <QtWidgets/QPlainTextEdit>
#include <array>
#include <cstdio>
#include <random>

#include "core/file/file.h"
#include "core/panel/consistency.h"
#include "core/report/report.h"
#include "tests/ui/shell/window_fixture.h"
#include "ui/findings/findings_list.h"
#include "ui/survey/survey_table.h"
#include "ui/survey/survey_view.h"
#include "ui/wording/language.h"

using namespace stayalight;
using namespace stayalight::window;

namespace {

QStringList g_warnings;
QtMessageHandler g_usual = nullptr;

void noteWarning(QtMsgType type, const QMessageLogContext& context, const QString& text) {
  if (type == QtWarningMsg || type == QtCriticalMsg) g_warnings << text;
  if (g_usual != nullptr) g_usual(type, context, text);
}

// Chance with one stream an action: what a watchdog draws shifts nothing of the next action.
class Chance {
 public:
  Chance(unsigned seed, unsigned action) {
    std::seed_seq mixed{seed, action};
    engine_.seed(mixed);
  }
  int below(int count) { return count <= 0 ? 0 : static_cast<int>(engine_() % static_cast<unsigned>(count)); }
  bool oneIn(int count) { return below(count) == 0; }
  template <class List>
  auto& of(List&& list) {
    return list[static_cast<std::size_t>(below(static_cast<int>(std::size(list))))];
  }

 private:
  std::mt19937 engine_;
};

constexpr std::array kKeys = {
    Qt::Key_Up,     Qt::Key_Down,      Qt::Key_Left,   Qt::Key_Right, Qt::Key_Home,  Qt::Key_End,
    Qt::Key_PageUp, Qt::Key_PageDown,  Qt::Key_Return, Qt::Key_Enter, Qt::Key_Tab,   Qt::Key_Backtab,
    Qt::Key_Escape, Qt::Key_Space,     Qt::Key_Delete, Qt::Key_M,     Qt::Key_B,     Qt::Key_W,
    Qt::Key_A,      Qt::Key_Backspace, Qt::Key_F2,     Qt::Key_F6,    Qt::Key_F7,    Qt::Key_F8,
    Qt::Key_1,      Qt::Key_5,         Qt::Key_Plus,   Qt::Key_Minus, Qt::Key_Menu,  Qt::Key_Slash,
    Qt::Key_Period, Qt::Key_Insert,    Qt::Key_F10,    Qt::Key_Z,     Qt::Key_Comma, Qt::Key_F4};
constexpr std::array<Qt::KeyboardModifiers::enum_type, 8> kModifiers = {
    Qt::NoModifier, Qt::NoModifier,    Qt::NoModifier,      Qt::NoModifier,
    Qt::NoModifier, Qt::ShiftModifier, Qt::ControlModifier, Qt::AltModifier};

const char* const kTyped[] = {
    "0",
    "1",
    "15",
    "20",
    "120",
    "1500 W",
    "2.4 kW",
    "12,5",
    "12.5 A",
    "-5",
    "1e308",
    "nan",
    "3*40",
    "10/0",
    "(((",
    "99999999999999999999",
    "Pump & heater",
    "",
    " ",
    "42",
    "1,3",
    "37A",
    "unknown",
    "Kühlschrank \xe2\x9a\xa1",
    "<b>bold</b>",
    "=1+1",
    "B",
    "2",
    "50 ft",
    "30 %",
    "7:30 pm",
    "25:99",
    "2026-02-30",
    "a very long name of a circuit that nobody would write on a panel's door in earnest"};

const char* const kPasted[] = {
    "1\tKitchen\t20\n3\tBath\t15\n",
    "1 Kitchen counter 20\n2,4 Range 50\n5 Spare\n41/43 Heat pump 40A\n",
    "\t\t\t\n\n\n",
    "name,space,rating\nPump,1,20\n",
    "\"quoted \"\"text\"\"\"\t=cmd()\n",
    "no such thing",
    "",
};

}  // namespace

class MonkeyTest : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase();
  void cleanup();
  void anything_data();
  void anything();

 private:
  void open();
  void act();
  void look();
  void settle();
  void answer(Chance& chance);
  void answerDialog(QDialog* dialog, Chance& chance);
  void note(const QString& text);
  [[nodiscard]] QString story() const;
  [[nodiscard]] const Plan& plan() const { return window_->document().plan(); }
  [[nodiscard]] QString randomPath(Chance& chance, bool circuits) const;

  // What may be done; each returns false where there is nothing to do it with.
  bool command(Chance& chance);
  bool key(Chance& chance);
  bool click(Chance& chance);
  bool drag(Chance& chance);
  bool dragBreaker(Chance& chance);
  bool moveByKey(Chance& chance);
  bool fillField(Chance& chance);
  bool chooseInList(Chance& chance);
  bool typeInSurvey(Chance& chance);
  bool fix(Chance& chance);
  bool wheel(Chance& chance);
  bool resize(Chance& chance);
  bool paste(Chance& chance);
  bool drop(Chance& chance);
  bool file(Chance& chance);
  bool undoSome(Chance& chance);

  [[nodiscard]] QWindow* handle() const { return window_->windowHandle(); }
  void pressAt(QWidget* widget, QPoint at, Qt::MouseButton button, Qt::KeyboardModifiers modifiers,
               bool twice);
  template <class Widget>
  [[nodiscard]] std::vector<Widget*> seen() const {
    std::vector<Widget*> all;
    for (Widget* each : window_->findChildren<Widget*>()) {
      if (each->isVisible() && each->window() == window_ && !each->visibleRegion().isEmpty())
        all.push_back(each);
    }
    return all;
  }

  MainWindow* window_ = nullptr;
  QTemporaryDir folder_;
  QTimer watchdog_;
  unsigned seed_ = 0;
  unsigned action_ = 0;
  int ticks_ = 0;  // of the watchdog within one action
  QStringList log_;
};

void MonkeyTest::initTestCase() {
  QVERIFY(prepare());
  QApplication::setQuitOnLastWindowClosed(false);
  g_usual = qInstallMessageHandler(noteWarning);
  // Where something runs an event loop of its own.
  watchdog_.setInterval(10);
  connect(&watchdog_, &QTimer::timeout, this, [this] {
    // Not from within the timer's own event: an answer may open the next question, and that wants the timer.
    QTimer::singleShot(0, this, [this] {
      Chance chance(seed_, action_ * 1000 + 500 + static_cast<unsigned>(ticks_));
      answer(chance);
    });
  });
  for (const char* sample : {"river-house", "plain-house"}) {
    QVERIFY(
        QFile::copy(QStringLiteral(STAYALIGHT_SOURCE_DIR "/samples/%1.stayalight").arg(QLatin1String(sample)),
                    folder_.filePath(QStringLiteral("%1.stayalight").arg(QLatin1String(sample)))));
  }
  QFile broken(folder_.filePath(QStringLiteral("broken.stayalight")));
  QVERIFY(broken.open(QIODevice::WriteOnly));
  broken.write("{\"format\": ");
}

void MonkeyTest::cleanup() {
  watchdog_.stop();
  delete std::exchange(window_, nullptr);
  QApplication::clipboard()->clear();
}

void MonkeyTest::open() {
  delete std::exchange(window_, nullptr);
  window_ = new MainWindow;
  window_->resize(1440, 900);
  window_->show();
  QVERIFY(QTest::qWaitForWindowExposed(window_));
  window_->openSample();
}

void MonkeyTest::note(const QString& text) {
  log_ << QStringLiteral("%1: %2").arg(action_).arg(text);
  // Before it happens, so that a crash leaves it behind.
  std::fprintf(stderr, "%s\n", qPrintable(log_.back()));
}

QString MonkeyTest::story() const {
  return QStringLiteral("seed %1, action %2; the last were\n  %3")
      .arg(seed_)
      .arg(action_)
      .arg(log_.mid(qMax(0, log_.size() - 25)).join(QStringLiteral("\n  ")));
}

QString MonkeyTest::randomPath(Chance& chance, bool circuits) const {
  static const char* const kPlans[] = {"river-house.stayalight", "plain-house.stayalight", "other.stayalight",
                                       "broken.stayalight",      "not/there.stayalight",   "new"};
  static const char* const kCircuits[] = {"circuits.csv", "other.csv", "not/there.csv", "broken.stayalight"};
  return folder_.filePath(QString::fromLatin1(circuits ? chance.of(kCircuits) : chance.of(kPlans)));
}

// -- dialogs and menus
// ------------------------------------------------------------------------------------------

void MonkeyTest::answer(Chance& chance) {
  ++ticks_;
  // Text that is dragged out of a field runs a loop that ends with the button, which no test holds.
  QDrag::cancel();
  if (auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget())) {
    QList<QAction*> enabled;
    for (QAction* each : menu->actions()) {
      if (each->isEnabled() && !each->isSeparator()) enabled << each;
    }
    if (enabled.isEmpty() || chance.oneIn(3) || ticks_ > 20) {
      menu->close();
      return;
    }
    QAction* chosen = chance.of(enabled);
    note(QStringLiteral("  menu \"%1\"").arg(chosen->text()));
    menu->setActiveAction(chosen);
    QTest::keyClick(menu->windowHandle(), Qt::Key_Return);
    return;
  }
  // A choice may build the form anew, and the list is gone with it.
  if (QPointer<QWidget> popup = QApplication::activePopupWidget()) {
    if (chance.oneIn(2) && ticks_ < 20) {
      for (const Qt::Key pressed : {Qt::Key_Down, Qt::Key_Return}) {
        if (popup && popup->windowHandle() != nullptr) QTest::keyClick(popup->windowHandle(), pressed);
      }
    }
    if (QWidget* still = QApplication::activePopupWidget()) still->close();
    return;
  }
  if (auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget())) {
    answerDialog(dialog, chance);
    return;
  }
  // Windows that stand beside stay for a while.
  for (QWidget* top : QApplication::topLevelWidgets()) {
    auto* dialog = qobject_cast<QDialog*>(top);
    if (dialog == nullptr || !dialog->isVisible() || !chance.oneIn(4)) continue;
    for (QPlainTextEdit* text : dialog->findChildren<QPlainTextEdit*>()) {
      if (!text->isReadOnly()) text->setPlainText(QString::fromUtf8(chance.of(kPasted)));
    }
    note(QStringLiteral("  %1").arg(dialog->objectName()));
    if (chance.oneIn(2))
      dialog->accept();
    else
      dialog->close();
    return;
  }
}

void MonkeyTest::answerDialog(QDialog* dialog, Chance& chance) {
  note(QStringLiteral("  dialog %1 %2")
           .arg(QLatin1String(dialog->metaObject()->className()), dialog->objectName()));
  if (ticks_ > 40) {
    dialog->reject();
    return;
  }
  if (auto* chooser = qobject_cast<QFileDialog*>(dialog)) {
    auto* line = chooser->findChild<QLineEdit*>(QStringLiteral("fileNameEdit"));
    if (line == nullptr || chance.oneIn(4)) {
      chooser->reject();
      return;
    }
    const bool circuits = chooser->nameFilters().join(u' ').contains(QStringLiteral("csv"));
    const bool pdf = chooser->nameFilters().join(u' ').contains(QStringLiteral("pdf"));
    line->setText(pdf ? folder_.filePath(QStringLiteral("paper.pdf")) : randomPath(chance, circuits));
    QTest::keyClick(line, Qt::Key_Return);
    return;
  }
  if (auto* box = qobject_cast<QMessageBox*>(dialog)) {
    const QList<QAbstractButton*> buttons = box->buttons();
    if (buttons.isEmpty()) {
      box->reject();
      return;
    }
    QAbstractButton* pressed = chance.of(buttons);
    note(QStringLiteral("  \"%1\": %2").arg(box->text().left(80), pressed->text()));
    pressed->click();
    return;
  }
  for (QPlainTextEdit* text : dialog->findChildren<QPlainTextEdit*>()) {
    if (!text->isReadOnly()) text->setPlainText(QString::fromUtf8(chance.of(kPasted)));
  }
  QList<QPushButton*> buttons;
  for (QPushButton* each : dialog->findChildren<QPushButton*>()) {
    if (each->isVisible() && each->isEnabled()) buttons << each;
  }
  // A printer is nobody's business here.
  if (buttons.isEmpty() || dialog->inherits("QPrintDialog") || chance.oneIn(3))
    dialog->reject();
  else
    chance.of(buttons)->click();
}

// -- actions
// ----------------------------------------------------------------------------------------------------

bool MonkeyTest::command(Chance& chance) {
  const CommandRow& row = chance.of(commands());
  QAction* action = window_->action(row.command);
  // Leaving ends what makes the plans; now and then is enough.
  if ((row.command == Command::quit || row.command == Command::newPlan) && !chance.oneIn(4)) return false;
  if (!action->isEnabled()) return false;
  const bool byKey = *row.keys != '\0' && chance.oneIn(2);
  note(QStringLiteral("command %1%2")
           .arg(QLatin1String(row.name), byKey ? QLatin1String(" by key") : QLatin1String("")));
  if (byKey) {
    const QKeySequence keys = action->shortcut();
    QTest::keyClick(handle(), keys[0].key(), keys[0].keyboardModifiers());
  } else {
    action->trigger();
  }
  return true;
}

bool MonkeyTest::key(Chance& chance) {
  const int count = 1 + chance.below(4);
  for (int i = 0; i < count; ++i) {
    const Qt::Key pressed = chance.of(kKeys);
    const Qt::KeyboardModifiers held = chance.of(kModifiers);
    const QWidget* at = window_->focusWidget();
    note(QStringLiteral("key %1 in %2")
             .arg(QKeySequence(QKeyCombination(held, pressed)).toString(),
                  at != nullptr ? QLatin1String(at->metaObject()->className()) + u' ' + at->objectName()
                                : QString()));
    if (handle() == nullptr || !window_->isVisible()) return true;
    QTest::keyClick(handle(), pressed, held);
  }
  return true;
}

void MonkeyTest::pressAt(QWidget* widget, QPoint at, Qt::MouseButton button, Qt::KeyboardModifiers modifiers,
                         bool twice) {
  const QPoint inWindow = widget->mapTo(window_, at);
  if (!window_->rect().contains(inWindow)) return;
  if (twice)
    QTest::mouseDClick(handle(), button, modifiers, inWindow);
  else
    QTest::mouseClick(handle(), button, modifiers, inWindow);
}

bool MonkeyTest::click(Chance& chance) {
  const std::vector<QWidget*> widgets = seen<QWidget>();
  if (widgets.empty()) return false;
  QWidget* widget = chance.of(widgets);
  const QRect part = widget->visibleRegion().boundingRect();
  const QPoint at = part.topLeft() + QPoint(chance.below(part.width()), chance.below(part.height()));
  const Qt::MouseButton button = chance.oneIn(5) ? Qt::RightButton : Qt::LeftButton;
  const Qt::KeyboardModifiers held = chance.of(kModifiers);
  const bool twice = chance.oneIn(6);
  note(QStringLiteral("%1click %2 at %3,%4 of %5 %6")
           .arg(twice ? QLatin1String("double ") : QLatin1String(""))
           .arg(button)
           .arg(at.x())
           .arg(at.y())
           .arg(QLatin1String(widget->metaObject()->className()), widget->objectName()));
  pressAt(widget, at, button, held, twice);
  return true;
}

bool MonkeyTest::drag(Chance& chance) {
  const auto point = [&] { return QPoint(chance.below(window_->width()), chance.below(window_->height())); };
  QPoint at = point();
  note(QStringLiteral("drag from %1,%2").arg(at.x()).arg(at.y()));
  QTest::mousePress(handle(), Qt::LeftButton, Qt::NoModifier, at);
  const int stops = 1 + chance.below(4);
  for (int i = 0; i < stops; ++i) {
    const QPoint to = point();
    for (int step = 1; step <= 4; ++step) QTest::mouseMove(handle(), at + (to - at) * step / 4);
    at = to;
    if (chance.oneIn(6)) QTest::keyClick(handle(), Qt::Key_Escape);
  }
  QTest::mouseRelease(handle(), Qt::LeftButton, Qt::NoModifier, at);
  return true;
}

bool MonkeyTest::dragBreaker(Chance& chance) {
  if (plan().breakers.empty() || plan().panels.empty() || !window_->boards()->isVisible()) return false;
  const Breaker& breaker = *chance.of(plan().breakers);
  const Panel& panel = *chance.of(plan().panels);
  const BoardLayout* from = window_->boards()->layoutOf(breaker.panel);
  const BoardLayout* to = window_->boards()->layoutOf(panel.id);
  const std::vector<SpacePosition> spaces = allSpaces(panel);
  if (from == nullptr || to == nullptr || from->cellOf(breaker.id) < 0 || spaces.empty()) return false;
  const SpacePosition space = chance.of(spaces);
  const int target = to->cellOf(CellAddress{panel.id, space, Half::whole});
  if (target < 0) return false;
  const QPoint start = window_->boards()->mapTo(
      window_,
      window_->boards()->pointIn(
          breaker.panel, from->cells[static_cast<std::size_t>(from->cellOf(breaker.id))].rect.center()));
  const QPoint end = window_->boards()->mapTo(
      window_,
      window_->boards()->pointIn(panel.id, to->cells[static_cast<std::size_t>(target)].rect.center()));
  if (!window_->rect().contains(start) || !window_->rect().contains(end)) return false;
  note(QStringLiteral("breaker %1 to panel %2").arg(breaker.id.number).arg(panel.id.number));
  const Qt::KeyboardModifiers held = chance.of(kModifiers);
  QTest::mousePress(handle(), Qt::LeftButton, held, start);
  for (int i = 1; i <= 6; ++i) QTest::mouseMove(handle(), start + (end - start) * i / 6);
  // Keys and commands in the middle of a move.
  if (chance.oneIn(6)) key(chance);
  if (chance.oneIn(8)) command(chance);
  if (window_->isVisible()) QTest::mouseRelease(handle(), Qt::LeftButton, held, end);
  return true;
}

bool MonkeyTest::moveByKey(Chance& chance) {
  if (plan().breakers.empty() || !window_->boards()->isVisible()) return false;
  const Breaker& breaker = *chance.of(plan().breakers);
  note(QStringLiteral("breaker %1 by keys").arg(breaker.id.number));
  window_->boards()->focusBreaker(breaker.id);
  QTest::keyClick(handle(), chance.oneIn(4) ? Qt::Key_B : Qt::Key_M);
  const int steps = chance.below(6);
  for (int i = 0; i < steps; ++i)
    QTest::keyClick(
        handle(), chance.of(std::array{Qt::Key_Up, Qt::Key_Down, Qt::Key_Left, Qt::Key_Right, Qt::Key_Tab}));
  if (!chance.oneIn(4)) QTest::keyClick(handle(), chance.oneIn(4) ? Qt::Key_Escape : Qt::Key_Return);
  return true;
}

bool MonkeyTest::fillField(Chance& chance) {
  std::vector<QLineEdit*> lines = seen<QLineEdit>();
  if (lines.empty()) return false;
  QLineEdit* line = chance.of(lines);
  if (!line->isEnabled() || line->isReadOnly()) return false;
  const char* text = chance.of(kTyped);
  note(QStringLiteral("\"%1\" into %2").arg(QString::fromUtf8(text), line->objectName()));
  line->setFocus();
  line->selectAll();
  QTest::keyClick(handle(), Qt::Key_Delete);
  for (const QChar letter : QString::fromUtf8(text)) {
    if (letter.unicode() < 128 && letter.isPrint())
      QTest::keyClick(handle(), letter.toLatin1());
    else if (auto* now = qobject_cast<QLineEdit*>(window_->focusWidget()))
      now->insert(letter);
  }
  if (!chance.oneIn(4)) QTest::keyClick(handle(), chance.oneIn(3) ? Qt::Key_Tab : Qt::Key_Return);
  return true;
}

bool MonkeyTest::chooseInList(Chance& chance) {
  const std::vector<QComboBox*> lists = seen<QComboBox>();
  const std::vector<QAbstractButton*> buttons = seen<QAbstractButton>();
  if (!lists.empty() && chance.oneIn(2)) {
    QComboBox* list = chance.of(lists);
    note(QStringLiteral("list %1").arg(list->objectName()));
    list->setFocus();
    const int steps = 1 + chance.below(5);
    for (int i = 0; i < steps; ++i) QTest::keyClick(handle(), chance.oneIn(2) ? Qt::Key_Down : Qt::Key_Up);
    return true;
  }
  if (buttons.empty()) return false;
  QAbstractButton* button = chance.of(buttons);
  if (!button->isEnabled()) return false;
  const QRect part = button->visibleRegion().boundingRect();
  note(QStringLiteral("button %1 \"%2\"").arg(button->objectName(), button->text()));
  pressAt(button, part.center(), Qt::LeftButton, Qt::NoModifier, false);
  return true;
}

bool MonkeyTest::typeInSurvey(Chance& chance) {
  SurveyTable* table = window_->survey()->table();
  if (!table->isVisible()) {
    if (chance.oneIn(2) && window_->action(Command::survey)->isEnabled())
      window_->action(Command::survey)->trigger();
    return false;
  }
  const int rows = table->model()->rowCount();
  const int columns = table->model()->columnCount();
  if (rows == 0) return false;
  const QModelIndex index = table->model()->index(chance.below(rows), chance.below(columns));
  if (table->isColumnHidden(index.column())) return false;
  const char* text = chance.of(kTyped);
  note(QStringLiteral("\"%1\" in the survey at %2,%3")
           .arg(QString::fromUtf8(text))
           .arg(index.row())
           .arg(index.column()));
  table->setFocus();
  table->setCurrentIndex(index);
  for (const QChar letter : QString::fromUtf8(text)) {
    if (letter.unicode() < 128 && letter.isPrint()) QTest::keyClick(handle(), letter.toLatin1());
  }
  const auto after = chance.of(std::array{Qt::Key_Return, Qt::Key_Tab, Qt::Key_Down, Qt::Key_Escape,
                                          Qt::Key_F6, Qt::Key_F7, Qt::Key_F8});
  if (!chance.oneIn(5)) QTest::keyClick(handle(), after);
  return true;
}

bool MonkeyTest::fix(Chance& chance) {
  std::vector<QPushButton*> fixes;
  for (const FindingRow* row : window_->findings()->rows()) {
    if (row->fixButton() != nullptr && row->fixButton()->isVisible()) fixes.push_back(row->fixButton());
  }
  if (fixes.empty()) return false;
  QPushButton* chosen = chance.of(fixes);
  note(QStringLiteral("repair \"%1\"").arg(chosen->text()));
  chosen->click();
  return true;
}

bool MonkeyTest::wheel(Chance& chance) {
  const QPointF at(chance.below(window_->width()), chance.below(window_->height()));
  note(QStringLiteral("wheel at %1,%2").arg(at.x()).arg(at.y()));
  const QPoint turn(0, chance.oneIn(2) ? 120 : -120);
  QWheelEvent event(at, handle()->mapToGlobal(at), QPoint(), turn, Qt::NoButton, chance.of(kModifiers),
                    Qt::NoScrollPhase, false);
  QApplication::sendEvent(handle(), &event);
  return true;
}

bool MonkeyTest::resize(Chance& chance) {
  const QSize size(960 + chance.below(560), 600 + chance.below(500));
  note(QStringLiteral("window of %1 x %2").arg(size.width()).arg(size.height()));
  window_->resize(size);
  return true;
}

bool MonkeyTest::paste(Chance& chance) {
  note(QStringLiteral("something on the clipboard"));
  QApplication::clipboard()->setText(QString::fromUtf8(chance.of(kPasted)));
  QTest::keyClick(handle(), Qt::Key_V, Qt::ControlModifier);
  return true;
}

bool MonkeyTest::drop(Chance& chance) {
  if (!chance.oneIn(3)) return false;
  const QString path = randomPath(chance, chance.oneIn(5));
  note(QStringLiteral("file dropped: %1").arg(QFileInfo(path).fileName()));
  QMimeData data;
  data.setUrls({QUrl::fromLocalFile(path)});
  QDragEnterEvent enter(QPoint(100, 100), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(window_, &enter);
  QDropEvent dropped(QPointF(100, 100), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(window_, &dropped);
  return true;
}

bool MonkeyTest::file(Chance& chance) {
  if (!chance.oneIn(3)) return false;
  // Another program writes the file that is open, or takes it away.
  const QString path = window_->document().path();
  if (path.isEmpty()) {
    window_->action(Command::saveAs)->trigger();
    return true;
  }
  if (chance.oneIn(2)) {
    note(QStringLiteral("saved"));
    window_->action(Command::save)->trigger();
    return true;
  }
  note(QStringLiteral("file changed by something else"));
  if (chance.oneIn(4)) {
    QFile::remove(path);
    return true;
  }
  QFile written(path);
  if (!written.open(QIODevice::WriteOnly)) return false;
  if (!chance.oneIn(3)) {
    const std::string text = writePlan(plan());
    written.write(text.data(), static_cast<qint64>(text.size()) - (chance.oneIn(2) ? 7 : 0));
  }
  return true;
}

bool MonkeyTest::undoSome(Chance& chance) {
  const bool back = chance.oneIn(2);
  const int steps = 1 + chance.below(8);
  note(QStringLiteral("%1 %2 times").arg(back ? QLatin1String("undo") : QLatin1String("redo")).arg(steps));
  for (int i = 0; i < steps; ++i) window_->action(back ? Command::undo : Command::redo)->trigger();
  return true;
}

void MonkeyTest::act() {
  using Action = bool (MonkeyTest::*)(Chance&);
  // As often as it stands here.
  static constexpr Action kActions[] = {
      &MonkeyTest::command,      &MonkeyTest::command,      &MonkeyTest::command,
      &MonkeyTest::key,          &MonkeyTest::key,          &MonkeyTest::key,
      &MonkeyTest::click,        &MonkeyTest::click,        &MonkeyTest::click,
      &MonkeyTest::drag,         &MonkeyTest::dragBreaker,  &MonkeyTest::dragBreaker,
      &MonkeyTest::dragBreaker,  &MonkeyTest::moveByKey,    &MonkeyTest::moveByKey,
      &MonkeyTest::fillField,    &MonkeyTest::fillField,    &MonkeyTest::fillField,
      &MonkeyTest::chooseInList, &MonkeyTest::chooseInList, &MonkeyTest::chooseInList,
      &MonkeyTest::typeInSurvey, &MonkeyTest::typeInSurvey, &MonkeyTest::typeInSurvey,
      &MonkeyTest::fix,          &MonkeyTest::wheel,        &MonkeyTest::resize,
      &MonkeyTest::paste,        &MonkeyTest::drop,         &MonkeyTest::file,
      &MonkeyTest::undoSome};
  Chance chance(seed_, action_ * 1000);
  // At the start page there are few things to do; the sample brings the rest.
  for (int tries = 0; tries < 50; ++tries) {
    if ((this->*chance.of(kActions))(chance)) return;
    if (!window_->isVisible()) return;
  }
}

// Until nothing more comes, and every question is answered.
void MonkeyTest::settle() {
  for (int i = 0; i < 60; ++i) {
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    QCoreApplication::processEvents();
    if (QApplication::activePopupWidget() == nullptr && QApplication::activeModalWidget() == nullptr) break;
    Chance chance(seed_, action_ * 1000 + 200 + static_cast<unsigned>(i));
    answer(chance);
  }
}

void MonkeyTest::look() {
  QVERIFY2(g_warnings.isEmpty(), qPrintable(g_warnings.join(u'\n') + u'\n' + story()));
  const Plan now = plan();
  const std::optional<Message> wrong = inconsistency(now);
  QVERIFY2(!wrong, qPrintable((wrong ? words(*wrong, plainEnglish()) : QString()) + u'\n' + story()));
  // The disk gives back what it gets.
  const Result<ReadPlan> read = readPlan(writePlan(now), "monkey");
  QVERIFY2(read.ok(), qPrintable((read.ok() ? QString() : words(read.refusal(), plainEnglish())) + story()));
  QVERIFY2(read.value().plan == now,
           qPrintable(QStringLiteral("written and read is another plan; ") + story()));
  if (window_->boards()->carrying()) return;
  // What the window shows is what the plan gives.
  if (action_ % 10 == 0 && !now.panels.empty()) {
    QVERIFY2(reportJson(now, window_->assessment(), "monkey", plainEnglish()) ==
                 reportJson(now, assess(now), "monkey", plainEnglish()),
             qPrintable(QStringLiteral("the answers are of another plan; ") + story()));
  }
  PlanDocument& document = window_->document();
  if (!document.canUndo()) return;
  const bool all = action_ % 100 == 0;
  int steps = 0;
  for (; document.canUndo() && (all || steps < 1); ++steps) {
    document.undo();
    const std::optional<Message> before = inconsistency(plan());
    QVERIFY2(!before, qPrintable(story()));
  }
  for (; steps > 0; --steps) document.redo();
  QVERIFY2(plan() == now, qPrintable(QStringLiteral("undo and redo lead elsewhere; ") + story()));
  // The window answers.
  bool answered = false;
  QTimer::singleShot(0, window_, [&answered] { answered = true; });
  QTRY_VERIFY2(answered, qPrintable(story()));
}

void MonkeyTest::anything_data() {
  QTest::addColumn<unsigned>("seed");
  bool given = false;
  const unsigned seed = qEnvironmentVariable("STAYALIGHT_SEED").toUInt(&given);
  const unsigned first = given ? seed : MONKEY_FIRST_SEED;
  const unsigned runs = given ? 1 : MONKEY_RUNS;
  for (unsigned i = 0; i < runs; ++i) QTest::addRow("seed %u", first + i) << first + i;
}

void MonkeyTest::anything() {
  QFETCH(unsigned, seed);
  bool given = false;
  const unsigned asked = qEnvironmentVariable("STAYALIGHT_ACTIONS").toUInt(&given);
  const unsigned actions = given ? asked : 1000;
  seed_ = seed;
  log_.clear();
  g_warnings.clear();
  QSettings().clear();
  for (const Leftover& leftover : leftovers()) removeLeftover(leftover);
  std::printf("seed %u, %u actions\n", seed, actions);
  std::fflush(stdout);
  open();
  watchdog_.start();
  Plan last = plan();
  int changes = 0;
  for (action_ = 1; action_ <= actions; ++action_) {
    ticks_ = 0;
    act();
    settle();
    // Closed by a command: the next window. A plan thrown away: the sample again, soon.
    if (!window_->isVisible()) open();
    if (plan().panels.empty() && action_ % 5 == 0) {
      watchdog_.stop();
      window_->startPlan(last.panels.empty() ? Plan{} : last);
      if (plan().panels.empty()) window_->openSample();
      watchdog_.start();
      settle();
    }
    if (!(plan() == last)) {
      ++changes;
      last = plan();
    }
    look();
    if (QTest::currentTestFailed()) break;
  }
  watchdog_.stop();
  settle();
  std::printf("seed %u: %d actions changed the plan\n", seed, changes);
  // A monkey that changes nothing tests nothing.
  if (actions >= 1000) QVERIFY2(changes >= 100, qPrintable(QString::number(changes)));
}

int main(int argc, char** argv) {
  // A run may last longer than what is meant for a test that waits.
  qputenv("QTEST_FUNCTION_TIMEOUT", "3600000");
  QApplication application(argc, argv);
  MonkeyTest test;
  return QTest::qExec(&test, argc, argv);
}
#include "monkey_test.moc"
