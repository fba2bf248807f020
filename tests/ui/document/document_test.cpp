// The open plan and its file, on disks that are whole, full, read-only or gone.

#include <fcntl.h>
#include <grp.h>
#include <linux/capability.h>
#include <sched.h>
#include <sys/mount.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <csignal>
#include <string_view>

#include <QtCore/QDir>
#include <QtCore/QProcess>
#include <QtCore/QSettings>
#include <QtCore/QStandardPaths>
#include <QtCore/QTemporaryDir>
#include <QtTest/QSignalSpy>
#include <QtTest/QTest>

#include "core/edit/edit.h"
#include "tests/core/example_plans.h"
#include "ui/document/plan_document.h"

namespace stayalight {
namespace {

QString words(const std::optional<Message>& message) {
  return message ? QString::fromStdString(render(*message, plainEnglish())) : QString();
}
void put(const QString& path, const QByteArray& bytes) {
  QFile file(path);
  QVERIFY(file.open(QIODevice::WriteOnly));
  QCOMPARE(file.write(bytes), bytes.size());
}
QByteArray bytesOf(const QString& path) {
  QFile file(path);
  return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}
QByteArray textOf(const Plan& plan) { return QByteArray::fromStdString(writePlan(plan)); }

Plan named(const Plan& plan, const char* name) {
  return setField(plan, {RecordKind::site}, "name", std::string(name)).value();
}

/// A small disk of its own, gone with the object. The test's mounts are its own; see main.
class SmallDisk {
 public:
  SmallDisk() { mounted_ = ::mount("tmpfs", path().toLocal8Bit().constData(), "tmpfs", 0, "size=64k") == 0; }
  ~SmallDisk() { ::umount2(path().toLocal8Bit().constData(), MNT_DETACH); }
  SmallDisk(const SmallDisk&) = delete;
  SmallDisk& operator=(const SmallDisk&) = delete;
  [[nodiscard]] QString path() const { return folder_.path(); }
  [[nodiscard]] bool mounted() const { return mounted_; }
  bool makeReadOnly() {
    return ::mount(nullptr, path().toLocal8Bit().constData(), nullptr, MS_REMOUNT | MS_RDONLY, nullptr) == 0;
  }

 private:
  QTemporaryDir folder_;
  bool mounted_ = false;
};

}  // namespace

class DocumentTest : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void init() {
    QSettings().clear();
    for (const Leftover& leftover : leftovers()) removeLeftover(leftover);
    QVERIFY(folder_.isValid());
  }

  void savesReadsAndTellsWhetherSaved() {
    PlanDocument document;
    document.start(example::exampleHouse(), QStringLiteral("House"));
    QCOMPARE(document.name(), QStringLiteral("House"));
    QVERIFY(!document.isModified());
    const QString path = folder_.filePath(QStringLiteral("a.stayalight"));
    QCOMPARE(words(document.saveAs(path)), QString());
    QCOMPARE(bytesOf(path), textOf(example::exampleHouse()));
    QCOMPARE(document.name(), QStringLiteral("a"));

    QVERIFY(!document.apply(named(document.plan(), "Changed"), QStringLiteral("name")));
    QVERIFY(document.isModified());
    document.undo();
    QVERIFY(!document.isModified());
    QCOMPARE(document.plan() == example::exampleHouse(), true);
    document.redo();
    QCOMPARE(words(document.save()), QString());
    QVERIFY(!document.isModified());

    PlanDocument other;
    document.close();
    QCOMPARE(words(other.open(path)), QString());
    QCOMPARE(other.plan().site->name, std::string("Changed"));
    QVERIFY(other.notes().empty());
  }

  void typingMergesIntoOneStepUntilSaved() {
    PlanDocument document;
    document.start(example::exampleHouse());
    const Plan start = document.plan();
    for (const char* name : {"H", "Ho", "Hou"})
      document.apply(named(document.plan(), name), QStringLiteral("name"), QStringLiteral("site.name"));
    QCOMPARE(document.stack().count(), 1);
    document.apply(named(document.plan(), "Other"), QStringLiteral("other"));
    QCOMPARE(document.stack().count(), 2);
    QCOMPARE(document.undoText(), QStringLiteral("other"));
    document.undo();
    document.undo();
    QCOMPARE(document.plan() == start, true);

    // Typed back to what it was: no step is left.
    for (const char* name : {"X", "Example house"})
      document.apply(named(document.plan(), name), QStringLiteral("name"), QStringLiteral("site.name"));
    QVERIFY(!document.canUndo());
    QVERIFY(!document.isModified());
  }

  void saysWhatChangedBetweenTwoPlans() {
    PlanDocument document;
    document.start(example::exampleHouse());
    int calls = 0;
    connect(&document, &PlanDocument::planChanged, this, [&](const Plan& before, const Plan& after) {
      ++calls;
      QVERIFY(!before.site.same(after.site));
      QVERIFY(before.circuits.front().same(after.circuits.front()));
    });
    document.apply(named(document.plan(), "N"), QStringLiteral("name"));
    document.undo();
    QCOMPARE(calls, 2);
  }

  void refusesAnEditThatNoFileCouldHold() {
    PlanDocument document;
    document.start(example::exampleHouse());
    Plan broken = document.plan();
    example::editBreaker(broken, broken.breakers.front()->id).row = 40;
    QVERIFY(document.apply(broken, QStringLiteral("x")).has_value());
    QCOMPARE(document.plan() == example::exampleHouse(), true);
    QVERIFY(!document.canUndo());
  }

  void whatCannotBeOpenedLeavesTheOpenPlanWhole_data() {
    QTest::addColumn<QString>("name");
    QTest::addColumn<QString>("message");
    QTest::newRow("folder") << "folder"
                            << "folder is a folder, not a plan file";
    QTest::newRow("missing") << "none.stayalight"
                             << "none.stayalight: there is no such file";
    QTest::newRow("vanished folder") << "gone/a.stayalight"
                                     << "gone/a.stayalight: there is no such file";
    QTest::newRow("no JSON")
        << "text.stayalight"
        << "text.stayalight is not a plan: line 1, column 1: no JSON is written so: hello";
    QTest::newRow("empty") << "empty.stayalight"
                           << "empty.stayalight is empty";
    QTest::newRow("100 MB") << "large.stayalight"
                            << "large.stayalight is 104857600 bytes long; a plan file has at most 33554432";
    QTest::newRow("pipe") << "pipe"
                          << "pipe is no ordinary file";
  }
  void whatCannotBeOpenedLeavesTheOpenPlanWhole() {
    QFETCH(QString, name);
    QFETCH(QString, message);
    QTemporaryDir folder;
    QDir(folder.path()).mkdir(QStringLiteral("folder"));
    put(folder.filePath(QStringLiteral("text.stayalight")), "hello");
    put(folder.filePath(QStringLiteral("empty.stayalight")), {});
    put(folder.filePath(QStringLiteral("large.stayalight")), {});
    QVERIFY(QFile::resize(folder.filePath(QStringLiteral("large.stayalight")), 100LL << 20));
    QCOMPARE(::mkfifo(folder.filePath(QStringLiteral("pipe")).toLocal8Bit().constData(), 0600), 0);

    PlanDocument document;
    const QString good = folder.filePath(QStringLiteral("good.stayalight"));
    document.start(example::exampleHouse());
    QVERIFY(!document.saveAs(good));
    document.apply(named(document.plan(), "Unsaved"), QStringLiteral("name"));
    const QString said = words(document.open(folder.filePath(name)));
    QVERIFY2(said.endsWith(message), qPrintable(said));
    QCOMPARE(document.path(), good);
    QCOMPARE(document.plan().site->name, std::string("Unsaved"));
    QVERIFY(document.isModified());
    QVERIFY(document.canUndo());
  }

  void aFolderThatIsGoneOrAFolderOfThatNameIsSaid() {
    QTemporaryDir folder;
    PlanDocument document;
    document.start(example::exampleHouse());
    QDir(folder.path()).mkdir(QStringLiteral("sub"));
    const QString path = folder.filePath(QStringLiteral("sub/a.stayalight"));
    QVERIFY(!document.saveAs(path));
    QVERIFY(QDir(folder.filePath(QStringLiteral("sub"))).removeRecursively());
    document.apply(named(document.plan(), "N"), QStringLiteral("name"));
    const QString said = words(document.save());
    QVERIFY2(said.startsWith(path) && said.contains(QStringLiteral("the folder")), qPrintable(said));
    QVERIFY(document.isModified());
    QVERIFY2(words(document.saveAs(folder.path())).endsWith(QStringLiteral("is a folder, not a plan file")),
             "folder");
    QCOMPARE(document.path(), path);
    QVERIFY(!document.saveAs(folder.filePath(QStringLiteral("b.stayalight"))));
    QVERIFY(!document.isModified());
  }

  void aFullDiskLeavesTheOldFileAndThePlan() {
    const SmallDisk disk;
    QVERIFY(disk.mounted());
    const QString path = disk.path() + QStringLiteral("/a.stayalight");
    PlanDocument document;
    document.start(example::emptyHouse());
    QCOMPARE(words(document.saveAs(path)), QString());
    const QByteArray before = bytesOf(path);
    // The rest of the disk is taken by something else.
    QFile rest(disk.path() + QStringLiteral("/rest"));
    QVERIFY(rest.open(QIODevice::WriteOnly | QIODevice::Unbuffered));
    while (rest.write(QByteArray(1024, 'x')) == 1024) continue;
    document.apply(example::exampleHouse(), QStringLiteral("house"));
    const QString said = words(document.save());
    QVERIFY2(said.startsWith(path + QStringLiteral(" cannot be written: No space left on device")),
             qPrintable(said));
    QCOMPARE(bytesOf(path), before);
    QCOMPARE(document.plan() == example::exampleHouse(), true);
    QVERIFY(document.isModified());
    rest.close();
    QVERIFY(rest.remove());
    QCOMPARE(words(document.save()), QString());
    QCOMPARE(bytesOf(path), textOf(example::exampleHouse()));
  }

  void aReadOnlyDiskOpensAndSaysWhyItCannotSave() {
    SmallDisk disk;
    QVERIFY(disk.mounted());
    const QString path = disk.path() + QStringLiteral("/a.stayalight");
    put(path, textOf(example::emptyHouse()));
    QVERIFY(disk.makeReadOnly());
    PlanDocument document;
    QCOMPARE(words(document.open(path)), QString());
    document.apply(named(document.plan(), "N"), QStringLiteral("name"));
    const QString said = words(document.save());
    QVERIFY2(said.startsWith(path + QStringLiteral(" cannot be written: ")), qPrintable(said));
    QCOMPARE(bytesOf(path), textOf(example::emptyHouse()));
    QVERIFY(document.isModified());
  }

  /// As nobody, which is what a person's program is to somebody else's folder: root may read and write
  /// everything.
  void withoutPermissionBothWaysAreSaid() {
    QTemporaryDir folder;
    const QString secret = folder.filePath(QStringLiteral("secret.stayalight"));
    const QString others = folder.filePath(QStringLiteral("others.stayalight"));
    put(secret, textOf(example::emptyHouse()));
    put(others, textOf(example::emptyHouse()));
    QVERIFY(QFile::setPermissions(secret, {}));
    QVERIFY(QFile::setPermissions(others, QFile::ReadOwner | QFile::ReadGroup | QFile::ReadOther));
    QVERIFY(QFile::setPermissions(folder.path(), QFile::ReadOwner | QFile::ExeOwner | QFile::ReadGroup |
                                                     QFile::ExeGroup | QFile::ReadOther | QFile::ExeOther));
    const int error = QProcess::execute(QCoreApplication::applicationFilePath(),
                                        {QStringLiteral("--as-nobody"), secret, others});
    QVERIFY(QFile::setPermissions(folder.path(), QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner));
    QCOMPARE(error, 0);
  }

  void aFileHeldElsewhereOpensWithANoteAndIsNotWritten() {
    const QString path = folder_.filePath(QStringLiteral("held.stayalight"));
    PlanDocument first;
    first.start(example::exampleHouse());
    QVERIFY(!first.saveAs(path));
    QVERIFY(QFile::exists(lockPath(path)));

    PlanDocument second;
    QVERIFY(!second.open(path));
    QVERIFY(second.lockedBy().has_value());
    QCOMPARE(second.lockedBy()->process, QCoreApplication::applicationPid());
    QVERIFY(second.lockedBy()->since.isValid());
    QCOMPARE(second.notes().size(), std::size_t{1});
    second.apply(named(second.plan(), "Second"), QStringLiteral("name"));
    QVERIFY2(words(second.save()).contains(QStringLiteral("is open elsewhere: by ")),
             qPrintable(words(second.save())));
    QCOMPARE(bytesOf(path), textOf(example::exampleHouse()));

    first.close();
    QVERIFY(!QFile::exists(lockPath(path)));
    QCOMPARE(words(second.save()), QString());
    QVERIFY(!second.lockedBy().has_value());
  }

  void theLockOfADeadProgramIsTakenOver() {
    const QString path = folder_.filePath(QStringLiteral("stale.stayalight"));
    put(path, textOf(example::emptyHouse()));
    // Number of a process that has ended, its program, its host: what a crash leaves.
    QProcess ended;
    ended.start(QStringLiteral("true"), {});
    const qint64 process = [&] {
      ended.waitForStarted();
      return ended.processId();
    }();
    QVERIFY(ended.waitForFinished());
    put(lockPath(path),
        QByteArray::number(process) + "\nstayalight\n" + QSysInfo::machineHostName().toUtf8() + '\n');
    PlanDocument document;
    QVERIFY(!document.open(path));
    QVERIFY(!document.lockedBy().has_value());
    QVERIFY(document.notes().empty());
  }

  void aChangeOnTheDiskIsNoticedAndNotOverwrittenUnasked() {
    const QString path = folder_.filePath(QStringLiteral("watched.stayalight"));
    PlanDocument document;
    document.start(example::exampleHouse());
    QVERIFY(!document.saveAs(path));
    QSignalSpy noticed(&document, &PlanDocument::changedOnDisk);
    document.apply(named(document.plan(), "Mine"), QStringLiteral("name"));
    put(path, textOf(named(example::exampleHouse(), "Theirs")));
    QTRY_COMPARE(noticed.size(), 1);
    QVERIFY2(words(document.save()).contains(QStringLiteral("was changed on the disk")),
             qPrintable(words(document.save())));
    QCOMPARE(bytesOf(path), textOf(named(example::exampleHouse(), "Theirs")));
    QCOMPARE(words(document.save(true)), QString());
    QCOMPARE(bytesOf(path), textOf(named(example::exampleHouse(), "Mine")));
    // What it wrote itself is no news.
    QTest::qWait(200);
    QCOMPARE(noticed.size(), 1);
    QVERIFY(QFile::remove(path));
    QTRY_COMPARE(noticed.size(), 2);
    QCOMPARE(words(document.save()), QString());
  }

  void whatACrashLeavesIsOfferedAndBecomesAnUnsavedPlan() {
    const QString path = folder_.filePath(QStringLiteral("crash.stayalight"));
    put(path, textOf(example::exampleHouse()));
    // A program that is killed while it holds unsaved changes.
    QProcess other;
    other.start(QCoreApplication::applicationFilePath(), {QStringLiteral("--crash"), path});
    QVERIFY(other.waitForFinished(30000));
    QCOMPARE(other.exitStatus(), QProcess::CrashExit);

    const std::vector<Leftover> left = leftovers();
    QCOMPARE(left.size(), std::size_t{1});
    QCOMPARE(left[0].original, path);
    PlanDocument document;
    QCOMPARE(words(document.recover(left[0])), QString());
    QCOMPARE(document.plan().site->name, std::string("Before the crash"));
    QCOMPARE(document.path(), path);
    QVERIFY(document.isModified());
    QCOMPARE(bytesOf(path), textOf(example::exampleHouse()));
    QVERIFY(leftovers().empty());  // it is this session's now
    QCOMPARE(words(document.save()), QString());
    QVERIFY(!document.isModified());
    QCOMPARE(bytesOf(path), textOf(named(example::exampleHouse(), "Before the crash")));
    document.close();
    QVERIFY(leftovers().empty());
  }

  // Killed at each moment of saving: what is no newer than the file is not offered.
  void onlyNewerStatesAreOffered_data() {
    QTest::addColumn<QString>("announced");  // the plan that was about to be saved
    QTest::addColumn<QString>("onDisk");     // what the file holds now
    QTest::addColumn<bool>("elsewhere");     // it was to be saved in another file
    QTest::addColumn<int>("offered");
    QTest::addColumn<bool>("fileChanged");
    QTest::newRow("before saving") << QString() << "First" << false << 1 << false;
    QTest::newRow("about to write") << "Third"
                                    << "First" << false << 1 << false;
    QTest::newRow("written") << "Third"
                             << "Third" << false << 0 << false;
    QTest::newRow("about to write elsewhere") << "Third"
                                              << "First" << true << 1 << false;
    QTest::newRow("written elsewhere") << "Third"
                                       << "Third" << true << 0 << false;
    QTest::newRow("the file holds the same") << QString() << "Second" << false << 0 << false;
    QTest::newRow("something else wrote the file") << QString() << "Other" << false << 1 << true;
    QTest::newRow("something else wrote it after a save") << "Third"
                                                          << "Other" << false << 1 << true;
  }
  void onlyNewerStatesAreOffered() {
    QFETCH(QString, announced);
    QFETCH(QString, onDisk);
    QFETCH(bool, elsewhere);
    QFETCH(int, offered);
    QFETCH(bool, fileChanged);
    const auto bytes = [](const QString& name) {
      return textOf(named(example::exampleHouse(), qPrintable(name)));
    };
    const QString path = folder_.filePath(QStringLiteral("offered.stayalight"));
    const QString other = folder_.filePath(QStringLiteral("offered elsewhere.stayalight"));
    QFile::remove(other);
    put(path, bytes(QStringLiteral("First")));
    {
      Autosave aside;
      const AsideOf of{path, QStringLiteral("of\nered"), fingerprint(bytes(QStringLiteral("First")))};
      QVERIFY(!aside.write(named(example::exampleHouse(), "Second"), of));
      if (!announced.isEmpty()) aside.announce(elsewhere ? other : path, bytes(announced));
      put(elsewhere ? other : path, bytes(onDisk));
    }
    const std::vector<Leftover> left = leftovers();
    QCOMPARE(static_cast<int>(left.size()), offered);
    if (offered == 0) {
      const QDir aside(QStandardPaths::writableLocation(QStandardPaths::AppDataLocation) +
                       QStringLiteral("/aside"));
      QVERIFY(aside.entryList(QDir::Files).isEmpty());
      return;
    }
    QCOMPARE(left[0].original, path);
    QCOMPARE(left[0].name, QStringLiteral("of ered"));
    QCOMPARE(left[0].fileChanged, fileChanged);
    PlanDocument document;
    QVERIFY(!document.recover(left[0]));
    QCOMPARE(document.plan().site->name, std::string("Second"));
    document.close();
  }

  // Saving in steps, as the window does it with the writing on another thread.
  void savingThatIsStoppedLeavesEverythingAsItWas() {
    const QString path = folder_.filePath(QStringLiteral("stopped.stayalight"));
    put(path, textOf(example::exampleHouse()));
    PlanDocument document;
    QVERIFY(!document.open(path));
    QVERIFY(!document.apply(named(example::exampleHouse(), "Mine"), QStringLiteral("step")));
    auto saving = document.beginSaving(path);
    QVERIFY(saving.ok());
    const Result<QByteArray> stopped = saving.value()->write([](double) { return false; });
    QVERIFY(!stopped.ok());
    QVERIFY(document.endSaving(*saving.value(), stopped).has_value());
    QVERIFY(document.isModified());
    QCOMPARE(bytesOf(path), textOf(example::exampleHouse()));
    // The lock is held as before, and the file is still watched.
    PlanDocument second;
    QVERIFY(!second.open(path));
    QVERIFY(second.lockedBy().has_value());
    second.close();
    QSignalSpy noticed(&document, &PlanDocument::changedOnDisk);
    put(path, textOf(named(example::exampleHouse(), "Theirs")));
    QTRY_COMPARE(noticed.size(), 1);
    QCOMPARE(words(document.save(true)), QString());
    QCOMPARE(bytesOf(path), textOf(named(example::exampleHouse(), "Mine")));
  }

  void nothingIsLeftAsideWhenClosedOrSaved() {
    PlanDocument document;
    document.start(example::exampleHouse());
    document.apply(named(document.plan(), "N"), QStringLiteral("name"));
    const QDir aside(QStandardPaths::writableLocation(QStandardPaths::AppDataLocation) +
                     QStringLiteral("/aside"));
    QTRY_COMPARE_WITH_TIMEOUT(aside.entryList({QStringLiteral("*.stayalight")}).size(), 1, 10000);
    QVERIFY(leftovers().empty());  // alive
    document.close();
    QCOMPARE(aside.entryList({QStringLiteral("*.stayalight")}).size(), 0);
  }

  void recentFilesAreNewestFirstAndAtMostTen() {
    PlanDocument document;
    document.start(example::emptyHouse());
    for (int i = 0; i < 12; ++i)
      QVERIFY(!document.saveAs(folder_.filePath(QStringLiteral("r%1.stayalight").arg(i))));
    QVERIFY(!document.open(folder_.filePath(QStringLiteral("r5.stayalight"))));
    const QStringList recent = PlanDocument::recentFiles();
    QCOMPARE(recent.size(), 10);
    QCOMPARE(recent[0], folder_.filePath(QStringLiteral("r5.stayalight")));
    QCOMPARE(recent[1], folder_.filePath(QStringLiteral("r11.stayalight")));
    QCOMPARE(recent.count(recent[0]), 1);
    PlanDocument::forgetRecent(recent[0]);
    QVERIFY(!PlanDocument::recentFiles().contains(recent[0]));
  }

 private:
  QTemporaryDir folder_;
};

/// Runs as nobody: 0 where both files are refused for the right reason.
int asNobody(const QString& secret, const QString& others) {
  PlanDocument document;
  const QString read = words(document.open(secret));
  if (read != secret + QStringLiteral(" cannot be read: Permission denied"))
    return qWarning("%s", qPrintable(read)), 1;
  const QString opened = words(document.open(others));
  if (!opened.isEmpty()) return qWarning("%s", qPrintable(opened)), 2;
  document.apply(named(document.plan(), "N"), QStringLiteral("name"));
  const QString written = words(document.save());
  if (!written.startsWith(others + QStringLiteral(" cannot be written: ")))
    return qWarning("%s", qPrintable(written)), 3;
  return document.isModified() && bytesOf(others) == textOf(example::emptyHouse()) ? 0 : 4;
}

/// Changes the plan, waits until it is kept aside, and dies.
int crash(const QString& path) {
  PlanDocument document;
  if (document.open(path)) return 1;
  document.apply(named(document.plan(), "Before the crash"), QStringLiteral("name"));
  QTest::qWait(PlanDocument::kAutosaveMilliseconds + 1000);
  return ::raise(SIGKILL);
}

}  // namespace stayalight

namespace {

/// Gives up what root may do more than others: the user, or where there is no other user (a namespace), the
/// privileges.
bool becomeNobody() {
  constexpr uid_t kNobody = 65534;
  if (::setgroups(0, nullptr) == 0 && ::setresgid(kNobody, kNobody, kNobody) == 0 &&
      ::setresuid(kNobody, kNobody, kNobody) == 0)
    return true;
  __user_cap_header_struct header{_LINUX_CAPABILITY_VERSION_3, 0};
  const __user_cap_data_struct none[2] = {};
  return ::syscall(SYS_capset, &header, none) == 0;
}

}  // namespace

int main(int argc, char** argv) {
  // Mounts of its own, which end with the program. Who is not root gets a namespace in which he may mount.
  const bool root = ::geteuid() == 0;
  const bool child = argc > 1 && argv[1][0] == '-' && argv[1][1] == '-';
  if (child && argv[1] == std::string_view("--as-nobody") && !becomeNobody()) return 5;
  if (!child) {
    const uid_t user = ::getuid();
    const gid_t group = ::getgid();
    if (::unshare(root ? CLONE_NEWNS : CLONE_NEWUSER | CLONE_NEWNS) != 0) qFatal("no mounts of its own");
    if (!root) {
      const auto told = [](const char* path, const QByteArray& line) {
        QFile file(QString::fromLatin1(path));
        return file.open(QIODevice::WriteOnly) && file.write(line) == line.size();
      };
      if (!told("/proc/self/setgroups", "deny") ||
          !told("/proc/self/gid_map", "0 " + QByteArray::number(group) + " 1") ||
          !told("/proc/self/uid_map", "0 " + QByteArray::number(user) + " 1")) {
        qFatal("no user of its own");
      }
    }
    ::mount(nullptr, "/", nullptr, MS_REC | MS_PRIVATE, nullptr);
  }
  QStandardPaths::setTestModeEnabled(true);
  QCoreApplication::setOrganizationName(QStringLiteral("stayalight"));
  QCoreApplication::setApplicationName(QStringLiteral("stayalight"));
  const QCoreApplication application(argc, argv);
  const QStringList arguments = QCoreApplication::arguments();
  if (arguments.value(1) == QStringLiteral("--as-nobody"))
    return stayalight::asNobody(arguments.value(2), arguments.value(3));
  if (arguments.value(1) == QStringLiteral("--crash")) return stayalight::crash(arguments.value(2));
  stayalight::DocumentTest test;
  return QTest::qExec(&test, argc, argv);
}

#include "document_test.moc"
