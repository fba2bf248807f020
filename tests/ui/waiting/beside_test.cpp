// Work beside a window: it answers meanwhile, says how far the work is, and stops it when it is told.

#include <QtTest/QtTest>
#include <QtWidgets/QApplication>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QProgressBar>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QVBoxLayout>
#include <atomic>
#include <semaphore>

#include "tests/ui/waiting/waiting_seen.h"
#include "ui/style/fonts.h"
#include "ui/waiting/beside.h"

using namespace stayalight;
using namespace stayalight::window;

class BesideTest : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(loadFaces()); }
  void init();
  void cleanup();
  void shortWorkIsNeverSeen();
  void theWindowAnswersWhileTheWorkGoesOn();
  void theDialogSaysWhatAndHowFar();
  void escapeStopsTheWork();
  void theButtonIsReachedByTheKeyboard();
  void closingTheWindowStopsTheWorkAndCloses();
  void anEnterTypedForSomethingElseCancelsNothing();

 private:
  bool beside(const std::function<void(const Watch&)>& work) {
    return stayalight::beside(window_.get(), plainEnglish(), QStringLiteral("Opening house"), work);
  }
  std::unique_ptr<QWidget> window_;
  QLineEdit* line_ = nullptr;
};

namespace {

/// Goes on until somebody stops it.
void untilStopped(const Watch& watch) {
  while (watch(0.25)) QThread::msleep(1);
}

}  // namespace

void BesideTest::init() {
  setUnseenMilliseconds(0);
  window_ = std::make_unique<QWidget>();
  line_ = new QLineEdit(window_.get());
  auto* column = new QVBoxLayout(window_.get());
  column->addWidget(line_);
  window_->resize(600, 400);
  window_->show();
  QVERIFY(QTest::qWaitForWindowActive(window_.get()));
}

void BesideTest::cleanup() {
  window_.reset();
  setUnseenMilliseconds(kUnseenMilliseconds);
}

void BesideTest::shortWorkIsNeverSeen() {
  setUnseenMilliseconds(60000);
  WhenWaiting waiting([](QDialog&) {});
  line_->setFocus();
  std::thread::id thread;
  QVERIFY(beside([&](const Watch& watch) {
    QVERIFY(watch(0.5));
    thread = std::this_thread::get_id();
  }));
  QVERIFY(thread != std::this_thread::get_id());
  QVERIFY(!waiting.seen);
  QVERIFY(line_->hasFocus());
  QVERIFY(!worksBeside(window_.get()));
}

// The work ends only after the window has answered: were it blocked, this would never end.
void BesideTest::theWindowAnswersWhileTheWorkGoesOn() {
  for (const int unseen : {0, 60000}) {
    setUnseenMilliseconds(unseen);
    std::binary_semaphore answered(0);
    bool busy = false;
    QTimer::singleShot(0, window_.get(), [&] {
      busy = worksBeside(line_);
      answered.release();
    });
    QVERIFY(beside([&](const Watch&) { answered.acquire(); }));
    QVERIFY(busy);
    QVERIFY(!worksBeside(line_));
  }
}

void BesideTest::theDialogSaysWhatAndHowFar() {
  QString said, named;
  int shown = 0;
  std::atomic<bool> seen = false;
  WhenWaiting waiting([&](QDialog& dialog) {
    said = dialog.findChild<QLabel*>()->text();
    auto* bar = dialog.findChild<QProgressBar*>(QStringLiteral("waitProgress"));
    named = bar->accessibleName();
    connect(bar, &QProgressBar::valueChanged, bar, [&, bar](int value) {
      shown = value;
      QCOMPARE(bar->maximum(), 1000);
      seen = value == 250;
    });
  });
  QVERIFY(beside([&](const Watch& watch) {
    while (!seen && watch(0.25)) QThread::msleep(1);
  }));
  QVERIFY(waiting.seen);
  QCOMPARE(said, QStringLiteral("Opening house"));
  QCOMPARE(named, said);
  QCOMPARE(shown, 250);
}

void BesideTest::escapeStopsTheWork() {
  bool modal = false;
  WhenWaiting waiting([&](QDialog& dialog) {
    modal = dialog.windowModality() == Qt::WindowModal && dialog.parentWidget() == window_.get();
    afterwards(&dialog, [&] { QTest::keyClick(&dialog, Qt::Key_Escape); });
  });
  line_->setFocus();
  QVERIFY(!beside(untilStopped));
  QVERIFY(modal);
  QTRY_VERIFY(line_->hasFocus());  // the keyboard is where it was
}

void BesideTest::theButtonIsReachedByTheKeyboard() {
  WhenWaiting waiting([&](QDialog& dialog) {
    auto* cancel = dialog.findChild<QPushButton*>(QStringLiteral("waitCancel"));
    afterwards(&dialog, [&dialog, cancel] {
      QVERIFY(QTest::qWaitForWindowActive(&dialog));
      QTRY_VERIFY(cancel->hasFocus());
      QTest::keyClick(cancel, Qt::Key_Space);
    });
  });
  QVERIFY(!beside(untilStopped));
}

void BesideTest::anEnterTypedForSomethingElseCancelsNothing() {
  std::atomic<bool> typed = false;
  WhenWaiting waiting([&](QDialog& dialog) {
    afterwards(&dialog, [&] {
      QVERIFY(QTest::qWaitForWindowActive(&dialog));
      QTest::keyClick(&dialog, Qt::Key_Return);
      QTest::keyClick(&dialog, Qt::Key_Enter);
      typed = true;
    });
  });
  QVERIFY(beside([&](const Watch& watch) {
    while (!typed && watch(0.0)) QThread::msleep(1);
  }));
}

void BesideTest::closingTheWindowStopsTheWorkAndCloses() {
  bool closedAtOnce = true, stillThere = false;
  WhenWaiting waiting([&](QDialog&) {
    afterwards(window_.get(), [&] {
      closedAtOnce = window_->close();
      stillThere = window_->isVisible();
    });
  });
  QVERIFY(!beside(untilStopped));
  // While the work was on the way it stayed; now it goes.
  QVERIFY(!closedAtOnce && stillThere);
  QTRY_VERIFY(!window_->isVisible());
}

QTEST_MAIN(BesideTest)
#include "beside_test.moc"
