#include "ui/document/plan_file.h"

#include <QtCore/QCryptographicHash>
#include <QtCore/QDir>
#include <QtCore/QFile>
#include <QtCore/QFileInfo>
#include <QtCore/QSaveFile>

namespace stayalight {
namespace {

constexpr MessageId kMissing{"document.missing"};
constexpr MessageId kFolder{"document.folder"};
constexpr MessageId kNoFile{"document.no_file"};
constexpr MessageId kUnreadable{"document.unreadable"};
constexpr MessageId kTooBig{"file.too_big"};
constexpr MessageId kNoFolder{"document.no_folder"};
constexpr MessageId kUnwritable{"document.unwritable"};
constexpr MessageId kReadBack{"document.read_back"};
constexpr MessageId kNotKept{"document.not_kept"};

std::string shown(const QString& path) { return QDir::toNativeSeparators(path).toStdString(); }

}  // namespace

Result<QByteArray> readBytes(const QString& path) {
  const QFileInfo info(path);
  if (!info.exists()) return say(kMissing, shown(path));
  if (info.isDir()) return say(kFolder, shown(path));
  if (!info.isFile()) return say(kNoFile, shown(path));
  const auto most = static_cast<qint64>(ReadLimits{}.bytes);
  if (info.size() > most) return say(kTooBig, shown(path), std::int64_t{info.size()}, std::int64_t{most});
  QFile file(path);
  if (!file.open(QIODevice::ReadOnly)) return say(kUnreadable, shown(path), file.errorString().toStdString());
  // A file that grows meanwhile is refused by the reader for its size.
  QByteArray bytes = file.read(most + 1);
  if (file.error() != QFileDevice::NoError)
    return say(kUnreadable, shown(path), file.errorString().toStdString());
  return bytes;
}

std::optional<Message> writeBytes(const QString& path, const QByteArray& bytes) {
  const QFileInfo info(path);
  if (info.isDir()) return say(kFolder, shown(path));
  if (!info.absoluteDir().exists()) return say(kNoFolder, shown(path), shown(info.absolutePath()));
  QSaveFile file(path);
  const bool written = file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size() && file.commit();
  if (!written) return say(kUnwritable, shown(path), file.errorString().toStdString());
  const auto back = readBytes(path);
  if (!back || back.value() != bytes) return say(kReadBack, shown(path));
  return std::nullopt;
}

Result<ReadPlan> loadPlan(const QString& path) {
  const auto bytes = readBytes(path);
  if (!bytes) return bytes.refusal();
  const QByteArray& text = bytes.value();
  return readPlan({text.constData(), static_cast<std::size_t>(text.size())},
                  QFileInfo(path).fileName().toStdString());
}

Result<PlanFile> readPlanFile(const QString& path, const Watch& watch) {
  PlanFile file;
  file.path = QFileInfo(path).absoluteFilePath();
  auto bytes = readBytes(file.path);
  if (!bytes) return bytes.refusal();
  file.bytes = std::move(bytes).value();
  auto read = readPlan({file.bytes.constData(), static_cast<std::size_t>(file.bytes.size())},
                       QFileInfo(path).fileName().toStdString(), {}, watch);
  if (!read) return read.refusal();
  file.plan = std::move(read.value().plan);
  file.notes = std::move(read.value().notes);
  return file;
}

QByteArray fingerprint(const QByteArray& bytes) {
  return QCryptographicHash::hash(bytes, QCryptographicHash::Sha256).toHex();
}

Result<QByteArray> planBytes(const Plan& plan, const QString& path, const Watch& watch) {
  const std::string text = writePlan(plan);
  const auto back = readPlan(text, QFileInfo(path).fileName().toStdString(), {}, watch);
  if (!back && !goesOn(watch, 1.0)) return back.refusal();
  if (!back) return say(kNotKept, shown(path), std::vector<Message>{back.refusal()});
  return QByteArray::fromStdString(text);
}

}  // namespace stayalight
