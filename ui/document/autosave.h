#pragma once

// What a session keeps aside while it runs, so that a crash loses at most some seconds.

#include <QtCore/QDateTime>
#include <QtCore/QLockFile>
#include <QtCore/QString>
#include <memory>
#include <optional>
#include <vector>

#include "core/message/message.h"
#include "core/plan/plan.h"

namespace stayalight {

/// Left by a session that ended without closing.
struct Leftover {
  QString file;      ///< the plan kept aside
  QString original;  ///< the file it was opened from; empty for a plan that was never saved
  QString name;      ///< of the plan
  QDateTime written;
  bool fileChanged = false;  ///< something else wrote to the original since
};

/// What is kept aside belongs to this file, as it was when it was read or saved last.
struct AsideOf {
  QString path;      ///< empty for a plan that was never saved
  QString name;      ///< of the plan
  QByteArray print;  ///< fingerprint of the file; empty without a file
};

/// The place aside of one session. Its lock tells other sessions that it is alive.
class Autosave {
 public:
  Autosave() = default;
  ~Autosave();
  Autosave(const Autosave&) = delete;
  Autosave& operator=(const Autosave&) = delete;

  /// Writes the plan aside; a message where it could not.
  [[nodiscard]] std::optional<Message> write(const Plan& plan, const AsideOf& of);
  /// Notes that everything kept aside is about to be written to this file. Whoever is killed between that and
  /// `remove` leaves an older state, which is then not offered. May be called on any thread while nothing
  /// else is.
  void announce(const QString& path, const QByteArray& bytes) const;
  /// Nothing is left to offer: saved, or closed.
  void remove();
  [[nodiscard]] QString file() const { return file_; }

 private:
  QString file_;
  AsideOf of_;
  std::unique_ptr<QLockFile> lock_;
};

/// What dead sessions left, newest first. What is no newer than the file it belongs to goes unasked.
[[nodiscard]] std::vector<Leftover> leftovers();
void removeLeftover(const Leftover& leftover);

}  // namespace stayalight
