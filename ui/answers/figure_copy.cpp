#include "ui/answers/figure_copy.h"

#include <QtGui/QAction>
#include <QtGui/QClipboard>
#include <QtGui/QGuiApplication>
#include <QtGui/QKeyEvent>
#include <QtWidgets/QMenu>

#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kCopyFigure{"answers.copy_figure"};
constexpr MessageId kWorking{"answers.working.title"};

}  // namespace

QString figureAsText(const QString& label, const QString& figure) {
  return QString(label + QLatin1Char(' ') + figure).simplified();
}

void copyFigure(const QString& text) { QGuiApplication::clipboard()->setText(text); }

void openFigureMenu(QWidget* owner, QPoint global, const QString& text, const Language& language,
                    const std::function<void()>& working) {
  auto* menu = new QMenu(owner);
  menu->setObjectName(QStringLiteral("figureMenu"));
  menu->setAttribute(Qt::WA_DeleteOnClose);
  QString shown = text;
  QAction* copy = menu->addAction(
      words(language, kCopyFigure, shown.replace(QLatin1Char('&'), QLatin1String("&&")).toStdString()));
  copy->setShortcut(QKeySequence::Copy);
  QObject::connect(copy, &QAction::triggered, owner, [text] { copyFigure(text); });
  if (working)
    QObject::connect(menu->addAction(words(language, kWorking)), &QAction::triggered, owner, working);
  menu->popup(global);
}

bool isCopyKey(QEvent* event) {
  if (event->type() != QEvent::ShortcutOverride && event->type() != QEvent::KeyPress) return false;
  return static_cast<QKeyEvent*>(event)->matches(QKeySequence::Copy);
}

}  // namespace stayalight
