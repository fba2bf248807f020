#include "ui/waiting/beside.h"

#include <QtCore/QEvent>
#include <QtCore/QEventLoop>
#include <QtCore/QTimer>
#include <QtGui/QWindow>
#include <QtWidgets/QDialog>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QProgressBar>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QVBoxLayout>
#include <atomic>
#include <memory>
#include <thread>

#include "ui/style/application.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kCancel{"waiting.cancel"};
constexpr MessageId kCancelling{"waiting.cancelling"};
constexpr const char* kWorks = "worksBeside";
constexpr int kParts = 1000;  // of the whole
constexpr int kLookMilliseconds = 60;
constexpr int kWidth = 380;

int g_unseen = kUnseenMilliseconds;

/// What is done, how far it is, and the way out.
class WaitDialog final : public QDialog {
 public:
  WaitDialog(const QString& what, const Language& language, QWidget* window)
      : QDialog(window), language_(language) {
    setObjectName(QStringLiteral("waitDialog"));
    setWindowModality(Qt::WindowModal);
    setWindowTitle(what);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(20, 16, 20, 14);
    column->setSpacing(10);
    what_ = new QLabel(what, this);
    what_->setFont(screenFont(Face::condensed, 14, Weight::medium));
    what_->setTextFormat(Qt::PlainText);
    what_->setWordWrap(true);
    column->addWidget(what_);
    bar_ = new QProgressBar(this);
    bar_->setObjectName(QStringLiteral("waitProgress"));
    bar_->setAccessibleName(what);
    bar_->setRange(0, kParts);
    bar_->setTextVisible(false);
    column->addWidget(bar_);
    auto* row = new QHBoxLayout;
    row->addStretch(1);
    cancel_ = new QPushButton(words(language, kCancel), this);
    cancel_->setObjectName(QStringLiteral("waitCancel"));
    // An Enter that was meant for something else cancels nothing.
    cancel_->setAutoDefault(false);
    row->addWidget(cancel_);
    column->addLayout(row);
    setFixedWidth(std::max(scaled(kWidth), sizeHint().width()));
    connect(cancel_, &QPushButton::clicked, this, &QDialog::reject);
    cancel_->setFocus();
  }
  void showShare(int parts) { bar_->setValue(parts); }
  void reject() override {
    cancel_->setText(words(language_, kCancelling));
    cancel_->setEnabled(false);
    if (onCancel) onCancel();
  }
  std::function<void()> onCancel;

 private:
  const Language& language_;
  QLabel* what_;
  QProgressBar* bar_;
  QPushButton* cancel_;
};

/// The thread, and the window's loop until it has ended.
class Wait final : public QObject {
 public:
  explicit Wait(QWidget* window) : window_(window) {
    window_->setProperty(kWorks, true);
    window_->installEventFilter(this);
    // A window that is being closed, and writes before it goes, is told again only there.
    if (QWindow* handle = window_->windowHandle()) handle->installEventFilter(this);
  }
  ~Wait() override {
    window_->setProperty(kWorks, QVariant());
    if (closeAfter_) QMetaObject::invokeMethod(window_, "close", Qt::QueuedConnection);
  }
  Wait(const Wait&) = delete;
  Wait& operator=(const Wait&) = delete;

  bool run(const Language& language, const QString& what, const std::function<void(const Watch&)>& work) {
    std::jthread thread;
    const auto begin = [&] {
      thread = std::jthread([this, &work] {
        work([this](double share) {
          parts_ = static_cast<int>(share * kParts);
          return !stopped_;
        });
        QMetaObject::invokeMethod(
            this, [this] { end(); }, Qt::QueuedConnection);
      });
    };
    if (g_unseen > 0) {
      begin();
      QTimer::singleShot(g_unseen, &loop_, &QEventLoop::quit);
      loop_.exec(QEventLoop::ExcludeUserInputEvents);
    }
    if (!ended_ && !stopped_) {
      if (!window_->isVisible()) window_->show();
      WaitDialog dialog(what, language, window_);
      dialog.onCancel = [this] { stopped_ = true; };
      QTimer look;
      connect(&look, &QTimer::timeout, &dialog, [&] { dialog.showShare(parts_); });
      look.start(kLookMilliseconds);
      dialog.show();
      if (g_unseen == 0) begin();
      if (!ended_) loop_.exec();
    } else if (!ended_) {
      loop_.exec();
    }
    // The program may end while this waits: the thread is told, and waited for.
    if (!ended_) stopped_ = true;
    if (thread.joinable()) thread.join();
    return !stopped_;
  }

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override {
    if (event->type() != QEvent::Close || (watched != window_ && watched != window_->windowHandle()))
      return false;
    stopped_ = true;
    closeAfter_ = true;
    event->ignore();
    return true;
  }

 private:
  void end() {
    ended_ = true;
    loop_.quit();
  }

  QWidget* window_;
  QEventLoop loop_;
  std::atomic<int> parts_ = 0;
  std::atomic<bool> stopped_ = false;
  bool ended_ = false;
  bool closeAfter_ = false;
};

}  // namespace

bool beside(QWidget* widget, const Language& language, const QString& what,
            const std::function<void(const Watch&)>& work) {
  return Wait(widget->window()).run(language, what, work);
}

bool worksBeside(const QWidget* widget) { return widget->window()->property(kWorks).toBool(); }

void setUnseenMilliseconds(int milliseconds) { g_unseen = milliseconds; }

}  // namespace stayalight
