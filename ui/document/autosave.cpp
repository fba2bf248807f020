#include "ui/document/autosave.h"

#include <QtCore/QDir>
#include <QtCore/QFile>
#include <QtCore/QStandardPaths>
#include <QtCore/QUuid>
#include <algorithm>

#include "ui/document/plan_file.h"

namespace stayalight {
namespace {

QString folder() {
  return QStandardPaths::writableLocation(QStandardPaths::AppDataLocation) + QStringLiteral("/aside");
}
QString lockOf(const QString& file) { return file + QStringLiteral(".lock"); }
QString originOf(const QString& file) { return file + QStringLiteral(".origin"); }

/// What stands beside a plan kept aside, a line each: path, name, fingerprint of the file; then, once it was
/// about to be saved, the path and the fingerprint of what was to be saved.
QByteArray originText(const AsideOf& of) {
  QString name = of.name;
  name.replace(u'\n', u' ');
  return (of.path + u'\n' + name + u'\n').toUtf8() + of.print + '\n';
}

/// Empty where there is no such file.
QByteArray printOf(const QString& path) {
  const auto bytes = readBytes(path);
  return bytes ? fingerprint(bytes.value()) : QByteArray();
}

void removeFiles(const QString& file) {
  QFile::remove(file);
  QFile::remove(originOf(file));
}

}  // namespace

Autosave::~Autosave() {
  // A session that only goes away (a crash does not come here) has closed its document, or keeps what it
  // could not save.
  if (lock_) lock_->unlock();
}

std::optional<Message> Autosave::write(const Plan& plan, const AsideOf& of) {
  if (file_.isEmpty()) {
    if (!QDir().mkpath(folder())) return writeBytes(folder() + QStringLiteral("/plan"), {});
    file_ =
        folder() + u'/' + QUuid::createUuid().toString(QUuid::WithoutBraces) + QStringLiteral(".stayalight");
    lock_ = std::make_unique<QLockFile>(lockOf(file_));
    lock_->setStaleLockTime(0);
    lock_->tryLock();
  }
  of_ = of;
  if (auto wrong = writeBytes(originOf(file_), originText(of_))) return wrong;
  return writeBytes(file_, QByteArray::fromStdString(writePlan(plan)));
}

void Autosave::announce(const QString& path, const QByteArray& bytes) const {
  if (file_.isEmpty()) return;
  // Where it cannot be written an older state may be offered, which somebody is asked about: no harm.
  (void)writeBytes(originOf(file_), originText(of_) + path.toUtf8() + '\n' + fingerprint(bytes) + '\n');
}

void Autosave::remove() {
  if (file_.isEmpty()) return;
  removeFiles(file_);
  lock_.reset();
  file_.clear();
}

std::vector<Leftover> leftovers() {
  std::vector<Leftover> all;
  const QDir dir(folder());
  for (const QFileInfo& info : dir.entryInfoList({QStringLiteral("*.stayalight")}, QDir::Files)) {
    QLockFile lock(lockOf(info.absoluteFilePath()));
    lock.setStaleLockTime(0);
    if (!lock.tryLock()) continue;  // its session is alive
    Leftover leftover{info.absoluteFilePath(), {}, {}, info.lastModified(), false};
    if (const auto origin = readBytes(originOf(leftover.file))) {
      const QStringList lines = QString::fromUtf8(origin.value()).split(u'\n');
      leftover.original = lines.value(0);
      leftover.name = lines.value(1);
      const QByteArray before = lines.value(2).toLatin1(), saved = lines.value(4).toLatin1();
      const QByteArray now = printOf(leftover.original);
      const bool wasSaved = !saved.isEmpty() && printOf(lines.value(3)) == saved;
      const bool nothingNew = !now.isEmpty() && now == printOf(leftover.file);
      if (wasSaved || nothingNew) {
        removeFiles(leftover.file);
        continue;
      }
      leftover.fileChanged = !now.isEmpty() && !before.isEmpty() && now != before;
    }
    all.push_back(leftover);
  }
  std::sort(all.begin(), all.end(),
            [](const Leftover& a, const Leftover& b) { return a.written > b.written; });
  return all;
}

void removeLeftover(const Leftover& leftover) { removeFiles(leftover.file); }

}  // namespace stayalight
