#pragma once

// What still has to be looked at or measured on site: facts that an answer rests on and that nobody has
// entered, or that stand as a typical value or an assumption. A fact that does not apply is not in the list,
// and entering one takes it off.

#include <span>
#include <string_view>
#include <vector>

#include "core/code/tables.h"
#include "core/plan/field.h"

namespace stayalight {

/// Who may do it. The household reads labels, walks the house and plugs in a meter: nothing with a cover off.
enum class Doer : std::uint8_t { household, qualifiedPerson };

struct OnSiteItem {
  std::string_view key;    ///< record and fact, stable: "circuit.traced"
  std::string_view field;  ///< its key in the field table; empty where a record has to be added
  Doer doer = Doer::qualifiedPerson;
  EntityRef place;  ///< the record the fact belongs to
  PanelId panel;    ///< where it is found today; none for what is not in a panel
  Message what;     ///< what to do, a sentence
  Message where;    ///< "Main panel, 14: Kitchen counter"
};
/// By panel and space as they stand today, each with its breaker, circuit and loads; then the service, what
/// the authority was asked, the transfer and what it switches off, the feeder, raceways and boxes, and the
/// labels of inverter and battery.
[[nodiscard]] std::vector<OnSiteItem> onSiteList(const Plan& plan, const Tables& tables = publishedTables());

/// The items with this key.
[[nodiscard]] std::vector<const OnSiteItem*> itemsOf(std::span<const OnSiteItem> list, std::string_view key);

}  // namespace stayalight
