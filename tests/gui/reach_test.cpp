// What a hand reaches: in every place, form and dialog each control is large enough to be hit, has a name, is
// reached by Tab in the order in which one reads, and shows that it has the keyboard. No text is cut off.

#include <QtGui/QAccessible>
#include <QtWidgets/QAbstractItemView>
#include <QtWidgets/QAbstractSlider>
#include <QtWidgets/QAbstractSpinBox>
#include <QtWidgets/QButtonGroup>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QMenuBar>
#include <QtWidgets/QScrollArea>
#include <QtWidgets/QScrollBar>
#include <QtWidgets/QSplitter>
#include <QtWidgets/QStyle>
#include <QtWidgets/QTextEdit>
#include <QtWidgets/QToolBar>

#include "tests/gui/every_view.h"
#include "ui/style/application.h"
#include "ui/style/painted_widget.h"

using namespace stayalight;
using namespace stayalight::window;

namespace {

constexpr int kLeastSide = 24;  // WCAG 2.2, 2.5.8 "Target Size (Minimum)": 24 by 24 CSS pixels

QString called(const QWidget& widget) {
  QString text = QLatin1String(widget.metaObject()->className());
  for (const QWidget* each = &widget; each != nullptr && !each->isWindow(); each = each->parentWidget()) {
    if (!each->objectName().isEmpty()) text = each->objectName() + QLatin1Char('/') + text;
  }
  return text + QStringLiteral(" %1x%2").arg(widget.width()).arg(widget.height());
}

// Parts of another control that a person never takes for one.
bool isPart(const QWidget& widget) {
  const QWidget* parent = widget.parentWidget();
  if (widget.objectName().startsWith(QLatin1String("qt_"))) return true;
  if (qobject_cast<const QComboBox*>(parent) != nullptr) return true;
  if (qobject_cast<const QAbstractSpinBox*>(parent) != nullptr) return true;
  if (qobject_cast<const QLineEdit*>(parent) != nullptr) return true;
  // The wheel and the keys do what a bar does, and Tab in a table what its corner does.
  if (qobject_cast<const QScrollBar*>(&widget) != nullptr || widget.inherits("QTableCornerButton"))
    return true;
  if (qobject_cast<const QHeaderView*>(&widget) != nullptr) return true;
  const auto* area = qobject_cast<const QAbstractScrollArea*>(parent);
  return area != nullptr && area->viewport() == &widget;
}

bool isControl(const QWidget& widget) {
  if (isPart(widget)) return false;
  return qobject_cast<const QAbstractButton*>(&widget) != nullptr ||
         qobject_cast<const QComboBox*>(&widget) != nullptr ||
         qobject_cast<const QLineEdit*>(&widget) != nullptr ||
         qobject_cast<const QAbstractSpinBox*>(&widget) != nullptr ||
         qobject_cast<const QAbstractItemView*>(&widget) != nullptr ||
         qobject_cast<const QPlainTextEdit*>(&widget) != nullptr ||
         qobject_cast<const QTextEdit*>(&widget) != nullptr || widget.focusPolicy() & Qt::TabFocus;
}

std::vector<QWidget*> controlsOf(QWidget& shown) {
  std::vector<QWidget*> all;
  for (QWidget* each : shown.findChildren<QWidget*>()) {
    if (each->window() == &shown && each->isVisibleTo(&shown) && isControl(*each) &&
        qobject_cast<QScrollArea*>(each) == nullptr)
      all.push_back(each);
  }
  return all;
}

// The frames of the window in the order in which one reads them; a dialog is one frame.
int frameOf(const QWidget& widget) {
  const QString path = QLatin1Char('/') + called(widget);
  const char* const frames[] = {"/header/",   "/startPage/",   "/searchBar/", "/boards/",    "/survey/",
                                "/side",      "/answers/",     "/inspector/", "/catalogue/", "/onSite/",
                                "/foundList", "/outageStrip/", "/findings/",  "/paper/"};
  for (std::size_t i = 0; i < std::size(frames); ++i) {
    if (path.contains(QLatin1String(frames[i]))) return static_cast<int>(i);
  }
  return 0;
}

class Faults {
 public:
  void add(const QString& view, const QString& what) {
    if (!known_.contains(what)) {
      known_.insert(what);
      lines_ << QString(view + QStringLiteral(": ") + what);
    }
  }
  [[nodiscard]] QByteArray text() const { return lines_.join(QLatin1Char('\n')).toUtf8(); }
  [[nodiscard]] bool none() const {
    // A failure shows only the beginning of a long text.
    if (!lines_.isEmpty()) qInfo().noquote() << lines_.join(QLatin1Char('\n'));
    return lines_.isEmpty();
  }

 private:
  QSet<QString> known_;
  QStringList lines_;
};

}  // namespace

class ReachTest : public WindowTest {
  Q_OBJECT
 private Q_SLOTS:
  void initTestCase() {
    if (const int pixels = qEnvironmentVariableIntValue("STAYALIGHT_FONT_PIXELS"); pixels > 0) {
      QFont larger = QApplication::font();
      larger.setPixelSize(pixels);
      QApplication::setFont(larger);
    }
    QVERIFY(prepare());
  }
  void init() {
    openEmpty(QSize(1280, 720));
    // The right column as narrow as a window of that width makes it at first.
    auto* columns =
        qobject_cast<QSplitter*>(window_->findChild<QSplitter*>(QStringLiteral("rows"))->widget(0));
    columns->setSizes({1280 - 346 - 38, 346});
  }
  void cleanup() { closeWindow(); }

  void everyControlIsLargeEnough();
  void everyControlIsNamed();
  void everyFieldHasItsLabel();
  void tabReachesEveryControlInReadingOrder();
  void theKeyboardIsSeen();
  void lettersFollowTheDesktop();
  void noTextIsCutOff();
  void noControlLiesOverAnother();
};

void ReachTest::everyControlIsLargeEnough() {
  Faults faults;
  int looked = 0;
  everyView(*window_, [&](const QString& name, QWidget& shown) {
    for (QWidget* each : controlsOf(shown)) {
      ++looked;
      if (each->width() < kLeastSide || each->height() < kLeastSide) faults.add(name, called(*each));
      if (auto* view = qobject_cast<QAbstractItemView*>(each); view != nullptr && view->model() != nullptr) {
        const QModelIndex first = view->model()->index(0, 0);
        const QRect row = view->visualRect(first);
        if (first.isValid() && row.isValid() && row.height() < kLeastSide - 1)  // and the line under it
          faults.add(name, called(*each) + QStringLiteral(" row %1").arg(row.height()));
      }
    }
    if (auto* bar = shown.findChild<QMenuBar*>()) {
      for (QAction* action : bar->actions()) {
        const QRect place = bar->actionGeometry(action);
        if (place.isValid() && place.height() < kLeastSide)
          faults.add(name, QStringLiteral("menu bar %1").arg(place.height()));
        if (QMenu* menu = action->menu()) {
          menu->ensurePolished();
          menu->adjustSize();
          for (QAction* entry : menu->actions()) {
            const QRect line = menu->actionGeometry(entry);
            if (!entry->isSeparator() && line.height() < kLeastSide)
              faults.add(name, QStringLiteral("menu entry %1 %2").arg(entry->text()).arg(line.height()));
          }
        }
      }
    }
  });
  QVERIFY(looked > 500);
  QVERIFY2(faults.none(), faults.text().constData());
}

void ReachTest::everyControlIsNamed() {
  Faults faults;
  everyView(*window_, [&](const QString& name, QWidget& shown) {
    for (QWidget* each : controlsOf(shown)) {
      QAccessibleInterface* read = QAccessible::queryAccessibleInterface(each);
      QString spoken = read != nullptr ? read->text(QAccessible::Name) : QString();
      if (spoken.trimmed().isEmpty()) faults.add(name, called(*each));
    }
  });
  QVERIFY2(faults.none(), faults.text().constData());
}

// A label that stands left of a field or above it is that field's buddy.
void ReachTest::everyFieldHasItsLabel() {
  Faults faults;
  everyView(*window_, [&](const QString& name, QWidget& shown) {
    QSet<const QWidget*> labelled;
    for (const QLabel* label : shown.findChildren<QLabel*>()) {
      if (label->buddy() == nullptr) continue;
      labelled.insert(label->buddy());
      if (label->buddy()->focusProxy() != nullptr) labelled.insert(label->buddy()->focusProxy());
    }
    for (QWidget* each : controlsOf(shown)) {
      const bool field =
          qobject_cast<QLineEdit*>(each) != nullptr || qobject_cast<QComboBox*>(each) != nullptr ||
          qobject_cast<QPlainTextEdit*>(each) != nullptr || qobject_cast<QAbstractSpinBox*>(each) != nullptr;
      // One label names a fact; what else is said of it names the fact itself.
      const bool partOfFact = each->accessibleName().contains(QLatin1String(": "));
      if (field && !partOfFact && !labelled.contains(each)) faults.add(name, called(*each));
    }
  });
  QVERIFY2(faults.none(), faults.text().constData());
}

// The real key, from control to control until it comes round.
void ReachTest::tabReachesEveryControlInReadingOrder() {
  Faults faults;
  int pressed = 0;
  everyView(*window_, [&](const QString& name, QWidget& shown) {
    if (name == QLatin1String("boards-carrying") || name == QLatin1String("boards-choosing")) return;
    shown.activateWindow();
    if (!QTest::qWaitForWindowActive(&shown)) return faults.add(name, QStringLiteral("not active"));
    const std::vector<QWidget*> controls = controlsOf(shown);
    QPointer<QWidget> was = QApplication::focusWidget();
    std::vector<QWidget*> chain;
    controls.front()->setFocus(Qt::TabFocusReason);
    // A window that has just come to the front gets the keyboard a little later.
    const bool has = QTest::qWaitFor([&] {
      const QWidget* now = QApplication::focusWidget();
      return now != nullptr && now->window() == &shown;
    });
    if (!has) return faults.add(name, QStringLiteral("no keyboard"));
    for (int i = 0; i < 400; ++i) {
      QWidget* now = QApplication::focusWidget();
      // In a text Tab goes from link to link first.
      const bool stays = !chain.empty() && now == chain.back();
      if (now == nullptr || (!stays && std::find(chain.begin(), chain.end(), now) != chain.end())) break;
      if (now->window() != &shown) {
        faults.add(name, QStringLiteral("Tab leaves the window at ") + called(*now));
        break;
      }
      if (!stays) chain.push_back(now);
      // In the survey Tab goes from cell to cell, as in a spreadsheet; Ctrl+Tab leaves it.
      const bool cells = now->objectName() == QLatin1String("surveyTable");
      QTest::keyClick(now, Qt::Key_Tab, cells ? Qt::ControlModifier : Qt::NoModifier);
      ++pressed;
    }
    for (QWidget* each : controls) {
      // F1 in the field opens the same help: see tests/ui/inspector.
      if (each->objectName().startsWith(QLatin1String("help."))) continue;
      const auto isReached = [&](QWidget* one) {
        return std::find(chain.begin(), chain.end(), one) != chain.end();
      };
      bool reached = isReached(each);
      // Of buttons that exclude each other Tab stops at one, and the arrows go on from there.
      const auto* button = qobject_cast<QAbstractButton*>(each);
      if (button != nullptr && button->group() != nullptr && button->group()->exclusive()) {
        for (QAbstractButton* other : button->group()->buttons()) reached = reached || isReached(other);
      }
      if (each->isEnabled() && !reached) faults.add(name, QStringLiteral("not reached: ") + called(*each));
    }
    // Within one frame each stands below or right of the one before it, and the frames follow each other.
    QStringList backs;
    for (std::size_t i = 1; i < chain.size(); ++i) {
      const QWidget &before = *chain[i - 1], &after = *chain[i];
      bool back = false;
      if (before.parentWidget() == after.parentWidget()) {
        const QRect a = before.geometry(), b = after.geometry();
        back = b.top() < a.bottom() - 2 && b.left() < a.right() - 2;
      } else {
        back = frameOf(after) < frameOf(before);
      }
      if (back) backs << QString(called(before) + QStringLiteral(" before ") + called(after));
    }
    // Once round it begins again at the top.
    if (backs.size() > 1) faults.add(name, backs.join(QStringLiteral("; ")));
    if (was) was->setFocus();
  });
  QVERIFY(pressed > 500);
  QVERIFY2(faults.none(), faults.text().constData());
}

void ReachTest::theKeyboardIsSeen() {
  Faults faults;
  everyView(*window_, [&](const QString& name, QWidget& shown) {
    if (name == QLatin1String("boards-carrying") || name == QLatin1String("boards-choosing")) return;
    shown.activateWindow();
    if (!QTest::qWaitForWindowActive(&shown)) return faults.add(name, QStringLiteral("not active"));
    QWidget* before = QApplication::focusWidget();
    for (QWidget* each : controlsOf(shown)) {
      if (!each->isEnabled() || !(each->focusPolicy() & Qt::TabFocus) || each->visibleRegion().isEmpty())
        continue;
      if (QWidget* now = QApplication::focusWidget()) now->clearFocus();
      const QImage without = each->grab().toImage();
      each->setFocus(Qt::TabFocusReason);
      if (!each->hasFocus()) continue;
      const QImage with = each->grab().toImage();
      if (with == without) faults.add(name, called(*each));
    }
    if (before != nullptr) before->setFocus();
  });
  QVERIFY2(faults.none(), faults.text().constData());
}

// Letters that the desktop sets larger are larger everywhere: nothing keeps a size of its own.
void ReachTest::lettersFollowTheDesktop() {
  constexpr double kLeastLetters = 10.5;  // of the program's sizes the smallest
  Faults faults;
  int looked = 0;
  everyView(*window_, [&](const QString& name, QWidget& shown) {
    for (QWidget* each : shown.findChildren<QWidget*>()) {
      if (each->window() != &shown || !each->isVisibleTo(&shown)) continue;
      const bool text = qobject_cast<QLabel*>(each) != nullptr || isControl(*each);
      if (!text) continue;
      ++looked;
      const int pixels = QFontInfo(each->font()).pixelSize();
      if (pixels < static_cast<int>(kLeastLetters * systemScale()))
        faults.add(name, called(*each) + QStringLiteral(" %1 px").arg(pixels));
    }
    // What paints itself asks for room in proportion.
    for (const auto* painted : shown.findChildren<PaintedWidget*>()) {
      if (painted->sizeHint().height() < static_cast<int>(18 * systemScale()))
        faults.add(name, called(*painted) + QStringLiteral(" wants %1").arg(painted->sizeHint().height()));
    }
  });
  QVERIFY(looked > 1000);
  QVERIFY2(faults.none(), faults.text().constData());
}

void ReachTest::noTextIsCutOff() {
  Faults faults;
  everyView(*window_, [&](const QString& name, QWidget& shown) {
    for (QWidget* each : shown.findChildren<QWidget*>()) {
      if (each->window() != &shown || !each->isVisibleTo(&shown)) continue;
      // A page is no wider than its column; with larger letters it may be scrolled sideways.
      if (auto* area = qobject_cast<QScrollArea*>(each);
          area != nullptr && area->widget() != nullptr &&
          (area->horizontalScrollBarPolicy() == Qt::ScrollBarAlwaysOff || systemScale() == 1.0) &&
          area->widget()->width() > area->viewport()->width() + 1)
        faults.add(name, called(*area->widget()) + QStringLiteral(" in %1").arg(area->viewport()->width()));
      if (auto* label = qobject_cast<QLabel*>(each); label != nullptr && !label->text().isEmpty()) {
        if (label->sizePolicy().horizontalPolicy() == QSizePolicy::Ignored) continue;
        const int needed =
            label->wordWrap() ? label->heightForWidth(label->width()) : label->sizeHint().height();
        if (label->height() < needed || (!label->wordWrap() && label->width() < label->sizeHint().width()))
          faults.add(name, called(*label) + QLatin1Char(' ') + label->text().left(40));
      } else if (auto* button = qobject_cast<QAbstractButton*>(each);
                 button != nullptr && !button->text().isEmpty() && !isPart(*each)) {
        const QSize least = button->minimumSizeHint().boundedTo(button->sizeHint());
        if (qobject_cast<FigureRow*>(each) == nullptr &&
            (button->width() < least.width() || button->height() < least.height()))
          faults.add(name, called(*button) + QLatin1Char(' ') + button->text());
      }
    }
  });
  QVERIFY2(faults.none(), faults.text().constData());
}

void ReachTest::noControlLiesOverAnother() {
  Faults faults;
  everyView(*window_, [&](const QString& name, QWidget& shown) {
    for (QWidget* parent : shown.findChildren<QWidget*>()) {
      if (parent->window() != &shown || !parent->isVisibleTo(&shown)) continue;
      std::vector<QWidget*> children;
      for (QObject* child : parent->children()) {
        auto* each = qobject_cast<QWidget*>(child);
        if (each == nullptr || each->isWindow() || !each->isVisibleTo(&shown) || isPart(*each)) continue;
        if (each->testAttribute(Qt::WA_TransparentForMouseEvents) ||
            qobject_cast<QSplitterHandle*>(each) != nullptr)
          continue;
        const bool shows = isControl(*each) || qobject_cast<QLabel*>(each) != nullptr;
        if (shows && !each->geometry().isEmpty()) children.push_back(each);
      }
      for (std::size_t i = 0; i < children.size(); ++i) {
        for (std::size_t j = i + 1; j < children.size(); ++j) {
          const QRect both = children[i]->geometry().intersected(children[j]->geometry());
          if (both.width() > 1 && both.height() > 1)
            faults.add(name, called(*children[i]) + QStringLiteral(" over ") + called(*children[j]));
        }
      }
    }
  });
  QVERIFY2(faults.none(), faults.text().constData());
}

QTEST_MAIN(ReachTest)
#include "reach_test.moc"
