// A session that is killed at any moment of editing and saving: what is on the disk is a whole plan, the last
// saved or the one being saved; what was kept aside has all but the last five seconds; the next session takes
// the file over. The test's own program is the session too, started again with its folder and seed.

#include <QtCore/QCoreApplication>
#include <QtCore/QDir>
#include <QtCore/QElapsedTimer>
#include <QtCore/QProcess>
#include <QtCore/QSettings>
#include <QtCore/QTemporaryDir>
#include <QtCore/QThread>
#include <QtTest/QTest>
#include <csignal>
#include <cstdio>
#include <random>

#include "core/edit/edit.h"
#include "tests/core/example_plans.h"
#include "ui/document/plan_document.h"

namespace stayalight {
namespace {

constexpr qint64 kMostLostMilliseconds = 5000;

QString planIn(const QString& folder) { return folder + QStringLiteral("/house.stayalight"); }

/// The plan after so many edits; told apart by what each one typed.
Plan afterEdits(int count) {
  static const Plan first = example::exampleHouse();
  Plan plan = setField(first, {RecordKind::site}, "name", "edit " + std::to_string(count)).value();
  for (std::size_t i = 0; i < first.circuits.size(); ++i) {
    // The last edit that fell on this circuit.
    const int size = static_cast<int>(first.circuits.size());
    const int last = count - ((count - static_cast<int>(i)) % size + size) % size;
    if (last <= 0) continue;
    plan = setField(plan, {RecordKind::circuit, first.circuits[i]->id.number}, "name",
                    "circuit of edit " + std::to_string(last))
               .value();
  }
  return plan;
}

int editsIn(const Plan& plan) {
  const std::string& name = plan.site->name;
  return name.starts_with("edit ") ? std::atoi(name.c_str() + 5) : -1;
}

qint64 now() {
  QElapsedTimer timer;
  timer.start();
  return timer.msecsSinceReference();
}

/// Types into its plan and saves it now and then, until it is killed.
int typeUntilKilled(const QString& folder, unsigned seed, unsigned editsBetweenSaves) {
  PlanDocument document;
  if (document.open(planIn(folder)) || document.lockedBy()) return 1;
  std::mt19937 chance(seed);
  int edits = 0;
  const auto say = [&](const char* what) {
    std::printf("%s %d %lld\n", what, edits, static_cast<long long>(now()));
    std::fflush(stdout);
  };
  QTimer keys;
  QObject::connect(&keys, &QTimer::timeout, &keys, [&] {
    if (chance() % editsBetweenSaves == 0 && edits > 0) {
      say("saving");
      if (document.save()) QCoreApplication::exit(2);
      say("saved");
      return;
    }
    ++edits;
    if (document.apply(afterEdits(edits), QStringLiteral("edit"))) QCoreApplication::exit(3);
    say("typed");
    keys.setInterval(static_cast<int>(chance() % 25));
  });
  keys.start(0);
  return QCoreApplication::exec();
}

/// What a session said before it died.
struct Said {
  int saved = 0;    ///< edits in the file
  int saving = -1;  ///< edits in the file that was being written, where it had not said so
  int typed = 0;    ///< the last edit
  int old = 0;      ///< the last edit that is older than what may be lost
};

Said heard(const QByteArray& text) {
  Said said;
  std::vector<std::pair<int, qint64>> typed;
  qint64 last = 0;
  for (const QByteArray& line : text.split('\n')) {
    const QList<QByteArray> words = line.split(' ');
    if (words.size() != 3) continue;
    const int edits = words[1].toInt();
    last = words[2].toLongLong();
    if (words[0] == "typed") typed.emplace_back(edits, last);
    if (words[0] == "saving") said.saving = edits;
    if (words[0] == "saved") {
      said.saved = edits;
      said.saving = -1;
    }
  }
  for (const auto& [edits, when] : typed) {
    said.typed = edits;
    if (when <= last - kMostLostMilliseconds) said.old = edits;
  }
  return said;
}

struct Session {
  QTemporaryDir folder;
  QProcess process;
  QByteArray said;
  int savings = 0;  ///< still to be heard before it is killed; 0: killed by the clock
};

}  // namespace

class KilledTest : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  void nothingButTheLastSecondsIsLost();

 private:
  void check(const Session& session);
  int duringSaving_ = 0, aside_ = 0, older_ = 0;
};

void KilledTest::nothingButTheLastSecondsIsLost() {
  bool given = false;
  const unsigned asked = qEnvironmentVariable("STAYALIGHT_SEED").toUInt(&given);
  const unsigned seed = given ? asked : 1;
  std::printf("seed %u, %d sessions\n", seed, SESSIONS);
  std::mt19937 chance(seed);
  constexpr int kAtOnce = 20;
  for (int batch = 0; batch < SESSIONS / kAtOnce; ++batch) {
    std::vector<std::unique_ptr<Session>> sessions;
    for (int i = 0; i < kAtOnce; ++i) {
      auto& session = *sessions.emplace_back(std::make_unique<Session>());
      const QString folder = session.folder.path();
      QVERIFY(!writeBytes(planIn(folder), QByteArray::fromStdString(writePlan(afterEdits(0)))));
      QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
      environment.insert(QStringLiteral("HOME"), folder);
      environment.insert(QStringLiteral("XDG_DATA_HOME"), folder + QStringLiteral("/data"));
      environment.insert(QStringLiteral("XDG_CONFIG_HOME"), folder + QStringLiteral("/config"));
      session.process.setProcessEnvironment(environment);
      session.process.setProcessChannelMode(QProcess::ForwardedErrorChannel);
      // Every second one dies while it saves, the others at any time.
      const auto wait = static_cast<int>(chance() % 9000);
      const auto afterSavingBegins = static_cast<int>(chance() % 12);
      session.savings = i % 2 == 0 ? 1 + static_cast<int>(chance() % 8) : 0;
      QProcess* process = &session.process;
      connect(process, &QProcess::readyReadStandardOutput, process, [&session, afterSavingBegins, process] {
        const QByteArray heardNow = process->readAllStandardOutput();
        session.said += heardNow;
        const auto begun = static_cast<int>(heardNow.count("saving "));
        if (session.savings <= 0 || begun == 0) return;
        session.savings -= begun;
        if (session.savings > 0) return;
        QThread::usleep(static_cast<unsigned long>(afterSavingBegins) * 300);
        process->kill();
      });
      if (session.savings == 0) {
        connect(process, &QProcess::started, process,
                [process, wait] { QTimer::singleShot(wait, process, [process] { process->kill(); }); });
      }
      session.process.start(QCoreApplication::applicationFilePath(),
                            {QStringLiteral("--type"), folder, QString::number(chance()),
                             // Who saves all the time leaves nothing aside.
                             session.savings > 0 ? QStringLiteral("40") : QStringLiteral("500")});
    }
    for (const auto& session : sessions) {
      QTRY_VERIFY_WITH_TIMEOUT(session->process.state() == QProcess::NotRunning, 60000);
      // Killed, and not ended by itself.
      QCOMPARE(session->process.exitStatus(), QProcess::CrashExit);
      session->said += session->process.readAllStandardOutput();
      check(*session);
      if (QTest::currentTestFailed()) return;
    }
  }
  std::printf("%d died while saving, %d left something aside, %d had typed for longer than may be lost\n",
              duringSaving_, aside_, older_);
  // A test in which none of it happened would show nothing.
  QVERIFY(aside_ > 0 && older_ > 0);
}

void KilledTest::check(const Session& session) {
  const QString path = planIn(session.folder.path());
  const Said said = heard(session.said);
  if (said.saving >= 0) ++duringSaving_;
  if (said.old > 0) ++older_;

  const Result<ReadPlan> file = loadPlan(path);
  QVERIFY2(file.ok(), qPrintable(file.ok() ? QString()
                                           : QString::fromStdString(render(file.refusal(), plainEnglish()))));
  QVERIFY(file.value().notes.empty());
  const int onDisk = editsIn(file.value().plan);
  QVERIFY2(
      onDisk == said.saved || onDisk == said.saving,
      qPrintable(QStringLiteral("%1, saved was %2, then %3").arg(onDisk).arg(said.saved).arg(said.saving)));
  QCOMPARE(file.value().plan, afterEdits(onDisk));

  qputenv("XDG_DATA_HOME", QFile::encodeName(session.folder.path() + QStringLiteral("/data")));
  const std::vector<Leftover> left = leftovers();
  QVERIFY(left.size() <= 1);
  int kept = onDisk;
  PlanDocument next;
  if (left.empty()) {
    QVERIFY(!next.open(path));
  } else {
    ++aside_;
    QCOMPARE(left[0].original, path);
    QVERIFY(!next.recover(left[0]));
    const int aside = editsIn(next.plan());
    // An older state than the file's own is never offered.
    QVERIFY2(aside > onDisk, qPrintable(QStringLiteral("%1 offered, %2 saved").arg(aside).arg(onDisk)));
    QVERIFY(!left[0].fileChanged);
    QVERIFY2(aside <= said.typed, qPrintable(QString::number(aside)));
    QCOMPARE(next.plan(), afterEdits(aside));
    kept = std::max(kept, aside);
  }
  QVERIFY2(kept >= said.old, qPrintable(QStringLiteral("%1 of %2 edits are kept, %3 were old enough")
                                            .arg(kept)
                                            .arg(said.typed)
                                            .arg(said.old)));

  // The lock of the dead is ours now.
  QVERIFY(!next.lockedBy());
  PlanDocument third;
  QVERIFY(!third.open(path));
  QVERIFY(third.lockedBy().has_value());
  QCOMPARE(third.lockedBy()->process, QCoreApplication::applicationPid());
  QVERIFY(!next.saveAs(path));
  QCOMPARE(loadPlan(path).value().plan, next.plan());
  QVERIFY(leftovers().empty());
}

}  // namespace stayalight

int main(int argc, char** argv) {
  using namespace stayalight;
  QCoreApplication application(argc, argv);
  QCoreApplication::setOrganizationName(QStringLiteral("stayalight"));
  QCoreApplication::setApplicationName(QStringLiteral("stayalight-killed"));
  const QStringList arguments = QCoreApplication::arguments();
  if (arguments.size() == 5 && arguments[1] == QLatin1String("--type"))
    return typeUntilKilled(arguments[2], arguments[3].toUInt(), arguments[4].toUInt());
  KilledTest test;
  return QTest::qExec(&test, argc, argv);
}
#include "killed_test.moc"
