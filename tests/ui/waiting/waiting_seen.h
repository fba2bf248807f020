#pragma once

// The dialog of work beside a window, met as soon as it is shown.

#include <QtCore/QCoreApplication>
#include <QtCore/QEvent>
#include <QtWidgets/QDialog>
#include <functional>

namespace stayalight::window {

/// Calls `met` once with the next wait dialog, while it is being shown: before the work begins where nothing
/// is done unseen.
class WhenWaiting : public QObject {
 public:
  explicit WhenWaiting(std::function<void(QDialog&)> met) : met_(std::move(met)) {
    QCoreApplication::instance()->installEventFilter(this);
  }
  bool seen = false;

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override {
    if (seen || event->type() != QEvent::Show || watched->objectName() != QLatin1String("waitDialog"))
      return false;
    seen = true;
    met_(*qobject_cast<QDialog*>(watched));
    return false;
  }

 private:
  std::function<void(QDialog&)> met_;
};

/// Later, when the events before are done.
inline void afterwards(QObject* context, std::function<void()> what) {
  QMetaObject::invokeMethod(context, std::move(what), Qt::QueuedConnection);
}

}  // namespace stayalight::window
