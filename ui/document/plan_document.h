#pragma once

// The open plan: its undo steps, its file with lock and watch, and what is kept aside against a crash. One
// for a window.

#include <QtCore/QDateTime>
#include <QtCore/QFileSystemWatcher>
#include <QtCore/QLockFile>
#include <QtCore/QObject>
#include <QtCore/QStringList>
#include <QtCore/QTimer>
#include <QtGui/QUndoStack>
#include <memory>

#include "ui/document/autosave.h"
#include "ui/document/plan_file.h"

namespace stayalight {

/// Who has a file open.
struct LockHolder {
  QString user;
  QString host;
  qint64 process = 0;
  QDateTime since;
};

class PlanDocument : public QObject {
  Q_OBJECT
 public:
  explicit PlanDocument(QObject* parent = nullptr);
  ~PlanDocument() override;

  [[nodiscard]] const Plan& plan() const { return plan_; }
  [[nodiscard]] QString path() const { return path_; }  ///< empty where it was never saved
  /// File name without suffix; without a file the name it was started with.
  [[nodiscard]] QString name() const;
  [[nodiscard]] bool isModified() const { return recovered_ || !stack_.isClean(); }
  /// What reading changed or kept unread, and whose lock stands on the file.
  [[nodiscard]] const std::vector<Message>& notes() const { return notes_; }
  [[nodiscard]] const std::optional<LockHolder>& lockedBy() const { return lockedBy_; }

  /// A message where the file cannot be opened; the open plan then stays as it is. A file that another
  /// session holds opens with a note, and is not written while that holds it.
  [[nodiscard]] std::optional<Message> open(const QString& path);
  /// The same with a file that was read already.
  void open(PlanFile file);
  /// A plan without a file.
  void start(const Plan& plan, const QString& name = {});
  /// What a dead session left, as the plan of its file with unsaved changes.
  [[nodiscard]] std::optional<Message> recover(const Leftover& leftover);
  void recover(const Leftover& leftover, PlanFile aside);
  /// Refused where the file was changed on the disk since it was read, unless that is to be overwritten.
  [[nodiscard]] std::optional<Message> save(bool overwriteChanged = false);
  [[nodiscard]] std::optional<Message> saveAs(const QString& path);
  /// Saving in three steps, so that the one that takes long can be done on another thread. Begun, it must be
  /// ended, and nothing else done with the document in between.
  struct Saving {
    Plan plan;
    QString path;
    std::unique_ptr<QLockFile> lock;
    const Autosave* aside = nullptr;
    /// The bytes that were written; the file is as it was where there are none.
    [[nodiscard]] Result<QByteArray> write(const Watch& watch = {}) const;
  };
  [[nodiscard]] Result<std::shared_ptr<Saving>> beginSaving(const QString& path);
  [[nodiscard]] std::optional<Message> endSaving(Saving& saving, const Result<QByteArray>& written);
  /// Lets go of the file, the lock and what is kept aside; unsaved changes are gone. An empty plan stays.
  void close();
  /// True where the file holds something else than what was read or saved last, or is gone.
  [[nodiscard]] bool differsFromDisk() const;

  /// One undo step. Steps of the same, not empty `mergeWith` that follow each other without a save become
  /// one. A message, and no step, where no file could hold the plan.
  std::optional<Message> apply(Plan after, const QString& text, const QString& mergeWith = {});
  void undo() { stack_.undo(); }
  void redo() { stack_.redo(); }
  /// Undoes or redoes until so many steps are done, as one change of the plan.
  void goTo(int step);
  [[nodiscard]] bool canUndo() const { return stack_.canUndo(); }
  [[nodiscard]] bool canRedo() const { return stack_.canRedo(); }
  [[nodiscard]] QString undoText() const { return stack_.undoText(); }
  [[nodiscard]] QString redoText() const { return stack_.redoText(); }
  [[nodiscard]] const QUndoStack& stack() const { return stack_; }

  /// Newest first; at most ten.
  [[nodiscard]] static QStringList recentFiles();
  static void forgetRecent(const QString& path);

  /// How long after a change it is kept aside; this long where nobody set it.
  void setAutosaveDelay(int milliseconds) { autosaveTimer_.setInterval(milliseconds); }
  [[nodiscard]] int autosaveDelay() const { return autosaveTimer_.interval(); }
  static constexpr int kAutosaveMilliseconds = 3000;

 Q_SIGNALS:
  void changed();  ///< plan, file, or whether it is saved
  void planChanged(const stayalight::Plan& before, const stayalight::Plan& after);
  void changedOnDisk();
  void autosaveFailed(const stayalight::Message& why);

 private:
  friend class PlanStep;
  void take(Plan plan);
  void settle(const QString& path, const QByteArray& bytes, std::unique_ptr<QLockFile> lock);
  void stepped();  ///< a step was done or undone
  void watch();
  void lookAtDisk();
  void keepAside();
  static void remember(const QString& path);

  Plan plan_;
  QUndoStack stack_;
  QString path_;
  QString name_;
  QByteArray bytes_;  ///< of the file, as read or saved last
  QByteArray print_;  ///< its fingerprint
  std::vector<Message> notes_;
  std::unique_ptr<QLockFile> lock_;
  std::optional<LockHolder> lockedBy_;
  QFileSystemWatcher watcher_;
  bool saidChangedOnDisk_ = false;
  Autosave autosave_;
  QTimer autosaveTimer_;
  bool recovered_ = false;
  bool travelling_ = false;  ///< between steps nobody is told
};

/// The lock file beside a plan file.
[[nodiscard]] QString lockPath(const QString& path);

}  // namespace stayalight
