#include "ui/catalogue/own_lists.h"

#include <QtCore/QDir>
#include <QtCore/QFile>
#include <QtCore/QFileInfo>
#include <QtCore/QStandardPaths>
#include <algorithm>
#include <functional>
#include <span>

#include "core/edit/part.h"
#include "core/file/file.h"
#include "core/plan/field.h"
#include "ui/document/plan_file.h"

namespace stayalight {
namespace {

constexpr MessageId kOwnRows{"catalogue.own_rows"};
constexpr MessageId kNoRecord{"catalogue.no_record"};
constexpr MessageId kNoFolder{"catalogue.no_folder"};
constexpr MessageId kNoName{"catalogue.no_name"};
constexpr MessageId kNameTaken{"catalogue.name_taken"};
constexpr MessageId kGone{"catalogue.gone"};
constexpr MessageId kNotRemoved{"catalogue.not_removed"};

constexpr qsizetype kLongestName = 80;
const QLatin1String kRecordSuffix(".json");
const QLatin1String kTemplateSuffix(".stayalight");

QString loadsPath() { return ownFolder() + QLatin1String("/loads.csv"); }
QString templatesFolder() { return ownFolder() + QLatin1String("/templates"); }

/// Key of the record's part in a plan file, which is the name of its folder too.
std::string_view partKey(RecordKind kind) {
  for (const Children& children : recordType(RecordKind::plan).children) {
    if (children.kind == kind) return children.key;
  }
  return {};
}
QString recordsFolder(RecordKind kind) {
  const std::string_view key = partKey(kind);
  return ownFolder() + QLatin1Char('/') + QString::fromUtf8(key.data(), static_cast<qsizetype>(key.size()));
}

std::vector<OwnFile> filesIn(const QString& folder, const QString& suffix) {
  std::vector<OwnFile> files;
  for (const QFileInfo& info :
       QDir(folder).entryInfoList({QLatin1Char('*') + suffix}, QDir::Files, QDir::Name))
    files.push_back({info.completeBaseName(), info.absoluteFilePath()});
  return files;
}

/// A name that is a file's name on every system.
QString fileName(QString name) {
  for (QChar& c : name) {
    if (!c.isPrint() || QStringLiteral("/\\:*?\"<>|%").contains(c)) c = QLatin1Char('-');
  }
  name = name.trimmed().left(kLongestName).trimmed();
  while (name.startsWith(QLatin1Char('.'))) name.remove(0, 1);
  return name;
}

/// Writes a new file beside those that are there; the name it got.
Result<QString> writeNew(const QString& folder, const QString& wanted, const QString& suffix,
                         const QByteArray& bytes) {
  if (!QDir().mkpath(folder)) return say(kNoFolder, QDir::toNativeSeparators(folder).toStdString());
  const QString stem = fileName(wanted);
  QString name = stem;
  for (int next = 2; QFileInfo::exists(folder + QLatin1Char('/') + name + suffix); ++next)
    name = stem + QLatin1Char(' ') + QString::number(next);
  if (auto why = writeBytes(folder + QLatin1Char('/') + name + suffix, bytes)) return *why;
  return name;
}

/// The table of loads anew; remarks that somebody wrote above its heading stay.
QByteArray tableOf(std::span<const CatalogueEntry> entries) {
  QByteArray text;
  if (QFile file(loadsPath()); file.open(QIODevice::ReadOnly)) {
    for (QByteArray line = file.readLine(); line.startsWith('#'); line = file.readLine()) text += line;
  }
  return text + QByteArray::fromStdString(writeCatalogue(entries));
}

std::optional<Message> removeFile(const QString& path) {
  QFile file(path);
  if (file.remove()) return std::nullopt;
  return say(kNotRemoved, QDir::toNativeSeparators(path).toStdString(), file.errorString().toStdString());
}

/// The table of loads with one of them changed, or taken out where `change` says so.
Result<OwnChange> changeLoad(const OwnEntry& entry, const std::function<bool(CatalogueEntry&)>& keeps) {
  const auto before = readBytes(loadsPath());
  if (!before) return before.refusal();
  Catalogue own = readCatalogue({before.value().constData(), static_cast<std::size_t>(before.value().size())},
                                QDir::toNativeSeparators(loadsPath()).toStdString());
  if (!own.refused.empty()) {
    return say(kOwnRows, QDir::toNativeSeparators(loadsPath()).toStdString(),
               std::vector<Message>{own.refused.front()});
  }
  const auto at = std::find_if(own.entries.begin(), own.entries.end(), [&](const CatalogueEntry& each) {
    return each.load.catalogueId == entry.load;
  });
  if (at == own.entries.end()) return say(kGone, entry.name.toStdString());
  if (!keeps(*at)) own.entries.erase(at);
  if (auto why = writeBytes(loadsPath(), tableOf(own.entries))) return *why;
  return OwnChange{loadsPath(), before.value(), {}};
}

std::string_view view(const QByteArray& bytes) {
  return {bytes.constData(), static_cast<std::size_t>(bytes.size())};
}

}  // namespace

const Catalogue& householdLoads() {
  static const Catalogue loads = [] {
    QFile file(QStringLiteral(":/catalogue/loads.csv"));
    const QByteArray bytes = file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
    return readCatalogue(view(bytes), "loads.csv");
  }();
  return loads;
}

QString ownFolder() { return QStandardPaths::writableLocation(QStandardPaths::AppConfigLocation); }

Catalogue ownLoads() {
  const QString path = loadsPath();
  if (!QFileInfo::exists(path)) return {};
  const auto bytes = readBytes(path);
  if (!bytes) return {{}, {bytes.refusal()}};
  return readCatalogue(view(bytes.value()), QDir::toNativeSeparators(path).toStdString());
}

std::optional<Message> keepLoad(const Load& load) {
  Catalogue own = ownLoads();
  if (!own.refused.empty()) {
    return say(kOwnRows, QDir::toNativeSeparators(loadsPath()).toStdString(),
               std::vector<Message>{own.refused.front()});
  }
  own.entries.push_back(entryFrom(load, own.entries));
  if (!QDir().mkpath(ownFolder())) return say(kNoFolder, QDir::toNativeSeparators(ownFolder()).toStdString());
  return writeBytes(loadsPath(), tableOf(own.entries));
}

bool hasOwnList(RecordKind kind) {
  return kind == RecordKind::inverter || kind == RecordKind::battery || kind == RecordKind::panel;
}

std::vector<OwnFile> ownRecords(RecordKind kind) { return filesIn(recordsFolder(kind), kRecordSuffix); }

Result<QString> keepRecord(const Plan& plan, const EntityRef& ref, const QString& name) {
  Plan part;
  part.inverter = plan.inverter;
  part.battery = plan.battery;
  if (const Panel* panel = find(plan, PanelId{ref.id}); panel != nullptr && ref.kind == RecordKind::panel) {
    Panel alone = *panel;
    alone.id = PanelId{1};
    alone.fedFrom = {};
    part.panels.emplace_back(std::move(alone));
  }
  const std::string_view keys[] = {partKey(ref.kind)};
  return writeNew(recordsFolder(ref.kind), name, kRecordSuffix,
                  QByteArray::fromStdString(writePart(part, keys)));
}

Result<Plan> takeRecord(const Plan& plan, const EntityRef& ref, const QString& path) {
  const Result<ReadPlan> read = loadPlan(path);
  if (!read) return read.refusal();
  const Plan& kept = read.value().plan;
  const Message missing =
      say(kNoRecord, QDir::toNativeSeparators(path).toStdString(), std::string(partKey(ref.kind)));
  switch (ref.kind) {
    case RecordKind::inverter:
      if (*kept.inverter == Inverter{}) return missing;
      return takeInverter(plan, *kept.inverter);
    case RecordKind::battery:
      if (*kept.battery == Battery{}) return missing;
      return takeBattery(plan, *kept.battery);
    default:
      if (kept.panels.empty()) return missing;
      return takePanel(plan, PanelId{ref.id}, *kept.panels.front());
  }
}

std::vector<OwnFile> ownTemplates() { return filesIn(templatesFolder(), kTemplateSuffix); }

Result<QString> keepTemplate(const Plan& plan, const QString& name) {
  const auto bytes = planBytes(plan, name);
  if (!bytes) return bytes.refusal();
  return writeNew(templatesFolder(), name, kTemplateSuffix, bytes.value());
}

std::vector<OwnEntry> ownEntries() {
  std::vector<OwnEntry> all;
  for (const CatalogueEntry& entry : ownLoads().entries) {
    all.push_back({RecordKind::load,
                   false,
                   QString::fromStdString(entry.load.name),
                   loadsPath(),
                   entry.load.catalogueId,
                   {}});
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const OwnEntry& a, const OwnEntry& b) { return a.name.compare(b.name) < 0; });
  for (const RecordKind kind : {RecordKind::inverter, RecordKind::battery, RecordKind::panel}) {
    for (const OwnFile& file : ownRecords(kind)) all.push_back({kind, false, file.name, file.path, {}, {}});
  }
  for (const OwnFile& file : ownTemplates())
    all.push_back({RecordKind::plan, true, file.name, file.path, {}, {}});
  return all;
}

RecordKind keptKind(RecordKind kind) {
  switch (kind) {
    case RecordKind::load:
      return RecordKind::ownLoad;
    case RecordKind::inverter:
      return RecordKind::ownInverter;
    case RecordKind::battery:
      return RecordKind::ownBattery;
    case RecordKind::panel:
      return RecordKind::ownPanel;
    default:
      return kind;
  }
}

std::vector<OwnEntry> keptEntries(const Plan& plan, std::optional<RecordKind> kind) {
  std::vector<OwnEntry> all;
  for (const Children& list : recordType(RecordKind::ownLists).children) {
    if (kind && list.kind != *kind) continue;
    for (std::size_t i = 0; i < list.count(&*plan.own); ++i) {
      const FieldValue name = fieldOf(list.kind, "name")->get(list.at(&*plan.own, i));
      OwnEntry entry{list.kind, false, QString::fromStdString(std::get<std::string>(name)), {}, {}, {}};
      entry.inPlan = EntityRef{list.kind, 0, static_cast<std::int32_t>(i)};
      all.push_back(std::move(entry));
    }
  }
  return all;
}

std::vector<CatalogueEntry> keptLoads(const Plan& plan) {
  std::vector<CatalogueEntry> entries;
  for (const Load& load : plan.own->loads) entries.push_back(entryFrom(load, entries));
  return entries;
}

Result<OwnChange> renameOwn(const OwnEntry& entry, const QString& name) {
  const QString wanted = name.trimmed();
  if (wanted.isEmpty()) return Message{kNoName, {}};
  if (entry.kind == RecordKind::load) {
    return changeLoad(entry, [&](CatalogueEntry& load) {
      load.load.name = wanted.toStdString();
      return true;
    });
  }
  const QFileInfo old(entry.path);
  const QString stem = fileName(wanted);
  if (stem.isEmpty()) return Message{kNoName, {}};
  const QString fresh = old.absolutePath() + QLatin1Char('/') + stem + QLatin1Char('.') + old.suffix();
  if (QFileInfo::exists(fresh)) return say(kNameTaken, stem.toStdString());
  const auto bytes = readBytes(entry.path);
  if (!bytes) return bytes.refusal();
  // The new one stands before the old one goes.
  if (auto why = writeBytes(fresh, bytes.value())) return *why;
  if (auto why = removeFile(entry.path)) return *why;
  return OwnChange{entry.path, bytes.value(), fresh};
}

Result<OwnChange> removeOwn(const OwnEntry& entry) {
  if (entry.kind == RecordKind::load) return changeLoad(entry, [](CatalogueEntry&) { return false; });
  const auto bytes = readBytes(entry.path);
  if (!bytes) return bytes.refusal();
  if (auto why = removeFile(entry.path)) return *why;
  return OwnChange{entry.path, bytes.value(), {}};
}

std::optional<Message> putBack(const OwnChange& change) {
  if (auto why = writeBytes(change.path, change.before)) return why;
  if (!change.fresh.isEmpty() && QFileInfo::exists(change.fresh)) return removeFile(change.fresh);
  return std::nullopt;
}

}  // namespace stayalight
