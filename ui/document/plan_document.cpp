#include "ui/document/plan_document.h"

#include <QtCore/QDir>
#include <QtCore/QFileInfo>
#include <QtCore/QSettings>

#include "core/panel/consistency.h"

namespace stayalight {
namespace {

constexpr MessageId kHeld{"document.held"};
constexpr MessageId kChangedOnDisk{"document.changed_on_disk"};
constexpr MessageId kNotKept{"document.not_kept"};
constexpr int kMostRecent = 10;
const QLatin1String kRecentKey("recentFiles");

std::string shown(const QString& path) { return QDir::toNativeSeparators(path).toStdString(); }

std::optional<LockHolder> holderOf(const QLockFile& lock) {
  LockHolder holder;
  QString application;
  if (!lock.getLockInfo(&holder.process, &holder.host, &application)) return std::nullopt;
  const QFileInfo info(lock.fileName());
  holder.user = info.owner();
  holder.since = info.lastModified();
  return holder;
}

Message heldMessage(const QString& path, const LockHolder& holder) {
  return say(kHeld, shown(path), holder.user.toStdString(), holder.host.toStdString(),
             std::to_string(holder.process),
             holder.since.toString(QStringLiteral("yyyy-MM-dd HH:mm")).toStdString());
}

struct Locked {
  std::unique_ptr<QLockFile> lock;   ///< ours, or null
  std::optional<LockHolder> holder;  ///< another's
};
/// A lock in a folder that cannot be written is not taken and not missed: nothing can be saved there either.
Locked lockFor(const QString& path) {
  Locked locked;
  auto lock = std::make_unique<QLockFile>(lockPath(path));
  lock->setStaleLockTime(0);  // a lock is stale when its process is gone, however old it is
  if (lock->tryLock())
    locked.lock = std::move(lock);
  else if (lock->error() == QLockFile::LockFailedError)
    locked.holder = holderOf(*lock);
  return locked;
}

/// Lets go of a lock. Where its folder is gone the lock is too, and Qt's warning about that would tell nobody
/// anything.
void release(std::unique_ptr<QLockFile>& lock) {
  const bool gone = lock && !QFileInfo::exists(lock->fileName());
  const QtMessageHandler usual =
      gone ? qInstallMessageHandler([](QtMsgType, const QMessageLogContext&, const QString&) {}) : nullptr;
  lock.reset();
  if (gone) qInstallMessageHandler(usual);
}

}  // namespace

QString lockPath(const QString& path) {
  const QFileInfo info(path);
  return info.absolutePath() + QStringLiteral("/.") + info.fileName() + QStringLiteral(".lock");
}

/// Any edit as two plans; they share all parts that did not change.
class PlanStep : public QUndoCommand {
 public:
  PlanStep(PlanDocument& document, Plan before, Plan after, const QString& text, QString mergeKey)
      : QUndoCommand(text),
        document_(document),
        before_(std::move(before)),
        after_(std::move(after)),
        mergeKey_(std::move(mergeKey)) {}
  void undo() override { document_.take(before_); }
  void redo() override { document_.take(after_); }
  [[nodiscard]] int id() const override { return mergeKey_.isEmpty() ? -1 : 1; }
  bool mergeWith(const QUndoCommand* other) override {
    const auto* next = static_cast<const PlanStep*>(other);
    if (next->mergeKey_ != mergeKey_) return false;
    after_ = next->after_;
    setText(next->text());
    setObsolete(after_ == before_);  // typed back to what it was
    return true;
  }

 private:
  PlanDocument& document_;
  Plan before_;
  Plan after_;
  QString mergeKey_;
};

PlanDocument::PlanDocument(QObject* parent) : QObject(parent) {
  autosaveTimer_.setSingleShot(true);
  autosaveTimer_.setInterval(kAutosaveMilliseconds);
  connect(&autosaveTimer_, &QTimer::timeout, this, &PlanDocument::keepAside);
  connect(&watcher_, &QFileSystemWatcher::fileChanged, this, &PlanDocument::lookAtDisk);
  connect(&watcher_, &QFileSystemWatcher::directoryChanged, this, &PlanDocument::lookAtDisk);
  connect(&stack_, &QUndoStack::indexChanged, this, &PlanDocument::stepped);
}

void PlanDocument::stepped() {
  if (isModified()) {
    if (!autosaveTimer_.isActive()) autosaveTimer_.start();
  } else {
    autosaveTimer_.stop();
    autosave_.remove();
  }
  Q_EMIT changed();
}

PlanDocument::~PlanDocument() {
  stack_.disconnect(this);
  autosaveTimer_.stop();
  release(lock_);
}

QString PlanDocument::name() const { return path_.isEmpty() ? name_ : QFileInfo(path_).completeBaseName(); }

void PlanDocument::take(Plan plan) {
  const Plan before = std::exchange(plan_, std::move(plan));
  if (travelling_) return;
  Q_EMIT planChanged(before, plan_);
}

std::optional<Message> PlanDocument::open(const QString& path) {
  auto read = readPlanFile(path);
  if (!read) return read.refusal();
  open(std::move(read).value());
  return std::nullopt;
}

void PlanDocument::open(PlanFile file) {
  close();
  Locked locked = lockFor(file.path);
  notes_ = std::move(file.notes);
  if (locked.holder) notes_.push_back(heldMessage(file.path, *locked.holder));
  lockedBy_ = locked.holder;
  settle(file.path, file.bytes, std::move(locked.lock));
  take(std::move(file.plan));
  remember(file.path);
  Q_EMIT changed();
}

void PlanDocument::start(const Plan& plan, const QString& name) {
  close();
  name_ = name;
  take(plan);
  Q_EMIT changed();
}

std::optional<Message> PlanDocument::recover(const Leftover& leftover) {
  auto read = readPlanFile(leftover.file);
  if (!read) return read.refusal();
  recover(leftover, std::move(read).value());
  return std::nullopt;
}

void PlanDocument::recover(const Leftover& leftover, PlanFile aside) {
  close();
  name_ = leftover.name;
  // Its file, where that is still there, is held and watched as if it had been opened.
  if (!leftover.original.isEmpty()) {
    auto bytes = readBytes(leftover.original);
    if (bytes) {
      Locked locked = lockFor(leftover.original);
      lockedBy_ = locked.holder;
      settle(leftover.original, bytes.value(), std::move(locked.lock));
    }
  }
  recovered_ = true;
  take(std::move(aside.plan));
  // The own place aside takes over before the old one goes.
  if (!autosave_.write(plan_, {path_, name(), print_})) removeLeftover(leftover);
  Q_EMIT changed();
}

std::optional<Message> PlanDocument::save(bool overwriteChanged) {
  if (!overwriteChanged && differsFromDisk() && QFileInfo::exists(path_))
    return say(kChangedOnDisk, shown(path_));
  return saveAs(path_);
}

std::optional<Message> PlanDocument::saveAs(const QString& path) {
  const auto saving = beginSaving(path);
  if (!saving) return saving.refusal();
  return endSaving(*saving.value(), saving.value()->write());
}

Result<std::shared_ptr<PlanDocument::Saving>> PlanDocument::beginSaving(const QString& path) {
  auto saving = std::make_shared<Saving>();
  saving->path = QFileInfo(path).absoluteFilePath();
  if (saving->path == path_ && lock_) {
    saving->lock = std::move(lock_);
  } else if (QFileInfo(saving->path).absoluteDir().exists()) {
    Locked locked = lockFor(saving->path);
    if (locked.holder) return heldMessage(saving->path, *locked.holder);
    saving->lock = std::move(locked.lock);
  }
  saving->plan = plan_;
  saving->aside = &autosave_;
  autosaveTimer_.stop();
  // What is written by ourselves is no news.
  const QStringList watched = watcher_.files() + watcher_.directories();
  if (!watched.isEmpty()) watcher_.removePaths(watched);
  return saving;
}

Result<QByteArray> PlanDocument::Saving::write(const Watch& watch) const {
  auto bytes = planBytes(plan, path, watch);
  if (!bytes) return bytes;
  aside->announce(path, bytes.value());
  if (auto wrong = writeBytes(path, bytes.value())) return *wrong;
  return bytes;
}

std::optional<Message> PlanDocument::endSaving(Saving& saving, const Result<QByteArray>& written) {
  if (!written) {
    if (saving.path == path_)
      lock_ = std::move(saving.lock);
    else
      release(saving.lock);
    watch();
    if (isModified()) autosaveTimer_.start();
    return written.refusal();
  }
  lockedBy_.reset();
  settle(saving.path, written.value(), std::move(saving.lock));
  recovered_ = false;
  autosaveTimer_.stop();
  autosave_.remove();
  stack_.setClean();
  remember(saving.path);
  Q_EMIT changed();
  return std::nullopt;
}

void PlanDocument::close() {
  autosaveTimer_.stop();
  autosave_.remove();
  const QStringList watched = watcher_.files() + watcher_.directories();
  if (!watched.isEmpty()) watcher_.removePaths(watched);
  release(lock_);
  lockedBy_.reset();
  path_.clear();
  name_.clear();
  bytes_.clear();
  print_.clear();
  notes_.clear();
  recovered_ = false;
  saidChangedOnDisk_ = false;
  const QSignalBlocker quiet(stack_);
  stack_.clear();
  take(Plan{});
}

void PlanDocument::settle(const QString& path, const QByteArray& bytes, std::unique_ptr<QLockFile> lock) {
  path_ = path;
  bytes_ = bytes;
  print_ = fingerprint(bytes);
  release(lock_);
  lock_ = std::move(lock);
  saidChangedOnDisk_ = false;
  watch();
}

void PlanDocument::watch() {
  if (path_.isEmpty()) return;
  // The folder too: other programs replace a file instead of changing it.
  for (const QString& place : {path_, QFileInfo(path_).absolutePath()}) {
    if (QFileInfo::exists(place)) watcher_.addPath(place);
  }
}

bool PlanDocument::differsFromDisk() const {
  if (path_.isEmpty()) return false;
  const auto bytes = readBytes(path_);
  return !bytes || bytes.value() != bytes_;
}

void PlanDocument::lookAtDisk() {
  watch();
  if (!differsFromDisk()) {
    saidChangedOnDisk_ = false;
    return;
  }
  if (saidChangedOnDisk_) return;
  saidChangedOnDisk_ = true;
  Q_EMIT changedOnDisk();
}

void PlanDocument::keepAside() {
  if (!isModified()) return;
  if (const auto wrong = autosave_.write(plan_, {path_, name(), print_})) Q_EMIT autosaveFailed(*wrong);
}

std::optional<Message> PlanDocument::apply(Plan after, const QString& text, const QString& mergeWith) {
  if (after == plan_) return std::nullopt;
  if (auto wrong = inconsistency(after))
    return say(kNotKept, shown(name()), std::vector<Message>{std::move(*wrong)});
  stack_.push(new PlanStep(*this, plan_, std::move(after), text, mergeWith));
  return std::nullopt;
}

void PlanDocument::goTo(int step) {
  if (step < 0 || step > stack_.count() || step == stack_.index()) return;
  const Plan before = plan_;
  const QSignalBlocker quiet(stack_);
  travelling_ = true;
  stack_.setIndex(step);
  travelling_ = false;
  stepped();
  Q_EMIT planChanged(before, plan_);
}

QStringList PlanDocument::recentFiles() {
  return QSettings().value(kRecentKey).toStringList().mid(0, kMostRecent);
}

void PlanDocument::remember(const QString& path) {
  QStringList recent = recentFiles();
  recent.removeAll(path);
  recent.prepend(path);
  QSettings().setValue(kRecentKey, recent.mid(0, kMostRecent));
}

void PlanDocument::forgetRecent(const QString& path) {
  QStringList recent = recentFiles();
  recent.removeAll(path);
  QSettings().setValue(kRecentKey, recent);
}

}  // namespace stayalight
