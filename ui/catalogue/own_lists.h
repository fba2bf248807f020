#pragma once

// What a person keeps for the next plan, as files in the folder of the program's settings: loads in one
// table, inverters, batteries, panels and templates of plans in a file each. Nothing is ever written over.

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

}  // namespace stayalight
