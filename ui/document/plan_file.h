#pragma once

// Plan files on the disk. Whatever goes wrong is a message with the file and the reason. All of it may be
// called on any thread.

#include <QtCore/QByteArray>
#include <QtCore/QString>
#include <optional>

#include "core/file/file.h"

namespace stayalight {

/// The bytes of a plan file. Refused: not there, a folder, no ordinary file, no permission, larger than a
/// plan may be.
[[nodiscard]] Result<QByteArray> readBytes(const QString& path);
/// Writes the bytes whole or not at all, and reads them back. Refused: a folder of that name, a folder that
/// is gone, no permission, a full disk; the file that was there is then as before.
[[nodiscard]] std::optional<Message> writeBytes(const QString& path, const QByteArray& bytes);

/// A plan file, read and checked.
[[nodiscard]] Result<ReadPlan> loadPlan(const QString& path);
/// A plan file with everything that opening it takes.
struct PlanFile {
  QString path;  ///< from the root
  QByteArray bytes;
  Plan plan;
  std::vector<Message> notes;
};
[[nodiscard]] Result<PlanFile> readPlanFile(const QString& path, const Watch& watch = {});

/// The plan's text, if reading it gives the plan back; a refusal is a defect of the program and keeps the
/// file safe. Refused too where the one who watches stops it.
[[nodiscard]] Result<QByteArray> planBytes(const Plan& plan, const QString& path, const Watch& watch = {});

/// Tells one content of a file from another.
[[nodiscard]] QByteArray fingerprint(const QByteArray& bytes);

}  // namespace stayalight
