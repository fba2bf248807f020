#pragma once

// Ends the program once a part of a widget was painted and what was painted is on its way to the screen.

#include <QtCore/QCoreApplication>
#include <QtCore/QEvent>
#include <QtCore/QTimer>

namespace stayalight::bench {

class EndAfterPaint : public QObject {
 public:
  EndAfterPaint(QString name, QObject* parent) : QObject(parent), name_(std::move(name)) {}

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override {
    if (event->type() == QEvent::Paint && !painted_ && belongs(watched)) {
      painted_ = true;
      // After the whole window was painted and flushed.
      QTimer::singleShot(0, this, [] { QCoreApplication::exit(0); });
    }
    return false;
  }

 private:
  // A widget that its children cover is not painted itself.
  [[nodiscard]] bool belongs(const QObject* object) const {
    while (object != nullptr && object->objectName() != name_) object = object->parent();
    return object != nullptr;
  }

  QString name_;
  bool painted_ = false;
};

/// `name` is the object name of the widget that is waited for.
inline void endAfterPaintOf(const QString& name) {
  QCoreApplication::instance()->installEventFilter(new EndAfterPaint(name, QCoreApplication::instance()));
}

}  // namespace stayalight::bench
