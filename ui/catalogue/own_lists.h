#pragma once

// What a person keeps for the next plan, beside what a plan keeps for itself: as files in the folder of the
// program's settings: loads in one table, inverters, batteries, panels and templates of plans in a file each.
// Nothing is written over but what is renamed or deleted by name, and that can be put back.

#include <QtCore/QByteArray>
#include <QtCore/QString>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"

namespace stayalight {

/// The loads that are built into the program.
[[nodiscard]] const Catalogue& householdLoads();

/// The folder all of it stands in.
[[nodiscard]] QString ownFolder();
/// The person's own loads; none where there is no such file. A file that cannot be read is one refusal.
[[nodiscard]] Catalogue ownLoads();
/// Adds a load to them. Refused where a row of the file could not be read: writing it anew would lose that
/// row.
[[nodiscard]] std::optional<Message> keepLoad(const Load& load);

/// A file of an own list.
struct OwnFile {
  QString name;  ///< without suffix
  QString path;
};
/// Kinds of record that have a list: inverter, battery, panel.
[[nodiscard]] bool hasOwnList(RecordKind kind);
[[nodiscard]] std::vector<OwnFile> ownRecords(RecordKind kind);  ///< by name
/// Writes the record into a file named after it, or "name 2" where that name is taken; the name it got.
[[nodiscard]] Result<QString> keepRecord(const Plan& plan, const EntityRef& ref, const QString& name);
/// The plan with the record of the file in the place of this one.
[[nodiscard]] Result<Plan> takeRecord(const Plan& plan, const EntityRef& ref, const QString& path);

[[nodiscard]] std::vector<OwnFile> ownTemplates();
[[nodiscard]] Result<QString> keepTemplate(const Plan& plan, const QString& name);

/// An entry of any of the lists: a load, a record in a file, or a template.
struct OwnEntry {
  RecordKind kind = RecordKind::plan;
  bool isTemplate = false;
  QString name;
  QString path;                     ///< of its file; of a load the table of all loads
  std::string load;                 ///< a load's id in that table
  std::optional<EntityRef> inPlan;  ///< it stands in the plan's own lists; then there is no file
};
/// Loads first, then records by kind, then templates, each by name. Rows and files that cannot be read are
/// left out.
[[nodiscard]] std::vector<OwnEntry> ownEntries();
/// Those of the plan's own lists in their order; of one kind (ownLoad and so on), or all.
[[nodiscard]] std::vector<OwnEntry> keptEntries(const Plan& plan, std::optional<RecordKind> kind = {});
/// Loads of the plan's own list, as entries of the catalogue.
[[nodiscard]] std::vector<CatalogueEntry> keptLoads(const Plan& plan);
/// Kind of the entries that a list of the plan holds of this record (inverter: ownInverter), or the kind
/// itself.
[[nodiscard]] RecordKind keptKind(RecordKind kind);

/// What undoes a change of a list.
struct OwnChange {
  QString path;       ///< what stood there ...
  QByteArray before;  ///< ... with these bytes
  QString fresh;      ///< a file that the change made; empty: none
};
/// Refused: an empty name, one that is taken, a table with rows that cannot be read, a file that cannot be
/// written.
[[nodiscard]] Result<OwnChange> renameOwn(const OwnEntry& entry, const QString& name);
[[nodiscard]] Result<OwnChange> removeOwn(const OwnEntry& entry);
/// As it was before the change.
[[nodiscard]] std::optional<Message> putBack(const OwnChange& change);

}  // namespace stayalight
