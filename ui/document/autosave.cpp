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

std::optional<Message> Autosave::write(const Plan& plan, const QString& original, const QString& name) {
  if (file_.isEmpty()) {
    if (!QDir().mkpath(folder())) return writeBytes(folder() + QStringLiteral("/plan"), {});
    file_ =
        folder() + u'/' + QUuid::createUuid().toString(QUuid::WithoutBraces) + QStringLiteral(".stayalight");
    lock_ = std::make_unique<QLockFile>(lockOf(file_));
    lock_->setStaleLockTime(0);
    lock_->tryLock();
  }
  const QByteArray origin = (original + u'\n' + name).toUtf8();
  if (auto wrong = writeBytes(originOf(file_), origin)) return wrong;
  return writeBytes(file_, QByteArray::fromStdString(writePlan(plan)));
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
    Leftover leftover{info.absoluteFilePath(), {}, {}, info.lastModified()};
    if (const auto origin = readBytes(originOf(leftover.file))) {
      const QStringList lines = QString::fromUtf8(origin.value()).split(u'\n');
      leftover.original = lines.value(0);
      leftover.name = lines.value(1);
    }
    all.push_back(leftover);
  }
  std::sort(all.begin(), all.end(),
            [](const Leftover& a, const Leftover& b) { return a.written > b.written; });
  return all;
}

void removeLeftover(const Leftover& leftover) { removeFiles(leftover.file); }

}  // namespace stayalight
