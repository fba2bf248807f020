#pragma once

// What the program calls the records of a plan, in headings, lists and names of undo steps. Free of Qt.

#include <string>
#include <vector>

#include "core/panel/spaces.h"
#include "core/plan/field.h"

namespace stayalight {

/// "Freezer", "Breaker main 26", "Main panel", "Inverter": short enough for a list.
[[nodiscard]] std::string entityName(const Plan& plan, const EntityRef& ref, const Language& language);
/// Where it stands: "main 27", "backup 6, L1"; empty for records that stand nowhere.
[[nodiscard]] std::string placeName(const Plan& plan, const EntityRef& ref, const Language& language);
/// What a kind of record is called: "circuit".
[[nodiscard]] std::string kindName(RecordKind kind, const Language& language);
/// A panel in one word: "main", "backup", else its name.
[[nodiscard]] std::string panelWord(const Panel& panel, const Language& language);
/// "main 26" or "backup 1, 3" of a breaker; empty where it does not exist.
[[nodiscard]] std::string breakerPlace(const Plan& plan, BreakerId breaker, const Language& language);

[[nodiscard]] std::string fieldLabel(const Field& field, const Language& language);
[[nodiscard]] std::string fieldHelp(const Field& field, const Language& language);
/// The text of one word of a choice; a word of a later program stands as it is.
[[nodiscard]] std::string choiceText(const Field& field, std::string_view word, const Language& language);

/// "January"; 1 to 12.
[[nodiscard]] std::string monthText(int month, const Language& language);

/// Everything that can be looked at by itself, in the order in which a person enters it.
[[nodiscard]] std::vector<EntityRef> entities(const Plan& plan);

}  // namespace stayalight
