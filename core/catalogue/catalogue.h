#pragma once

// Typical household loads to begin with, and a person's own: a table as text, one load a row. The columns are
// the fields of a load by their keys in the field table; a fact's ends stand in columns of their own,
// "running_W low" and "running_W high" (10th and 90th percentile). No file system.

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/message/result.h"
#include "core/plan/plan.h"

namespace stayalight {

/// Energy of a day of use; low and high of what is plausible.
struct DayEnergy {
  LoadWattHours low, high;
  friend bool operator==(const DayEnergy&, const DayEnergy&) = default;
};

struct CatalogueEntry {
  Load load;                       ///< without an id of a plan; `catalogueId` is the entry's own
  std::vector<std::string> words;  ///< to search by, besides the name
  std::optional<Watts> oldUnit;    ///< what units of earlier decades took; shown, never computed with
  std::optional<DayEnergy> day;
  std::string daySource;  ///< of `day`
  std::string source;     ///< of the load's figures
  friend bool operator==(const CatalogueEntry&, const CatalogueEntry&) = default;
};

struct Catalogue {
  std::vector<CatalogueEntry> entries;
  std::vector<Message>
      refused;  ///< rows that were left out, each with file, line, column, value and what was expected
};
/// Wrong rows are left out and named; the good ones stay. Lines above the heading that begin with # are
/// remarks. `name` is what messages call the text. A column without a name known here is named once and
/// skipped.
[[nodiscard]] Catalogue readCatalogue(std::string_view text, const std::string& name);
/// A table that reads back to equal entries. Grades, and who found a fact, are not part of a catalogue.
[[nodiscard]] std::string writeCatalogue(std::span<const CatalogueEntry> entries);

/// Entries that hold every typed word as the beginning of a word of their name or search words, upper or
/// lower case; those whose name begins so first, then those that hold all of it in their name, each in their
/// order. Without a typed word all of them.
[[nodiscard]] std::vector<const CatalogueEntry*> search(std::span<const CatalogueEntry> entries,
                                                        std::string_view typed);

/// The load as it is put on a circuit: every fact of grade "typical", with the entry's low and high.
[[nodiscard]] Load loadFrom(const CatalogueEntry& entry);
/// An entry of a load of a plan, for an own list. Its id is made of the name and differs from those `taken`.
[[nodiscard]] CatalogueEntry entryFrom(const Load& load, std::span<const CatalogueEntry> taken);

}  // namespace stayalight
