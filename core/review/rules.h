#pragma once

// What the rules share: collecting findings, naming things, the tables of rules by subject.

#include <span>
#include <string>
#include <vector>

#include "core/review/review.h"
#include "core/wiring/extension.h"

namespace stayalight::reviewing {

class Findings {
 public:
  Findings(const Plan& plan, const Tables& tables) : plan_(plan), tables_(tables) {}

  /// What the finding rests on follows from its rule; without a rule it is practice.
  Finding& add(std::string_view key, Severity severity, RuleId rule, Message plain, Message trade,
               std::vector<EntityRef> places);
  /// Offers a fix where edit can make it as the plan stands; the second one offered is the other way out.
  void offer(Finding& finding, Fix fix, Message name);

  [[nodiscard]] std::vector<Finding>& list() { return list_; }

 private:
  const Plan& plan_;
  const Tables& tables_;
  std::vector<Finding> list_;
};

/// One rule. It looks at all it needs and adds what it finds.
using Rule = void (*)(const ReviewInput& input, Findings& findings);
[[nodiscard]] std::span<const Rule> sourceRules();     ///< sources, transfer, bonds, voltages
[[nodiscard]] std::span<const Rule> multiwireRules();  ///< shared neutrals
[[nodiscard]] std::span<const Rule> neutralRules();    ///< neutrals of moved circuits
[[nodiscard]] std::span<const Rule> loadRules();       ///< legs, starts, battery, what is on the circuits
[[nodiscard]] std::span<const Rule> feederRules();     ///< device, conductor, drop
[[nodiscard]] std::span<const Rule> supplyRules();     ///< supply breakers, several units, the packs
[[nodiscard]] std::span<const Rule> capacityRules();   ///< load calculation, charging, capacity of the source
[[nodiscard]] std::span<const Rule> panelRules();      ///< places of breakers, poles, listing, directory
[[nodiscard]] std::span<const Rule> circuitRules();    ///< conductor and breaker of a branch circuit, alarms
[[nodiscard]] std::span<const Rule> buildingRules();   ///< a panel in another building
[[nodiscard]] std::span<const Rule> busRules();        ///< buses with two sources, the battery's cable
[[nodiscard]] std::span<const Rule> racewayRules();    ///< raceways, splices, arc-fault protection
[[nodiscard]] std::span<const Rule> protectionRules();  ///< ground-fault protection, old wiring
[[nodiscard]] std::span<const Rule> generatorRules();   ///< generator, solar, managed loads
[[nodiscard]] std::span<const Rule> readingRules();     ///< clamp readings, answers of the authority
[[nodiscard]] std::span<const Rule> siteRules();        ///< edition, country, fault current

// -- names and places

[[nodiscard]] EntityRef at(const Panel& panel);
[[nodiscard]] EntityRef at(const Breaker& breaker);
[[nodiscard]] EntityRef at(const Circuit& circuit);
[[nodiscard]] EntityRef at(const Load& load);
[[nodiscard]] EntityRef at(RecordKind single);

/// The circuit's name, else what it serves, else its number.
[[nodiscard]] std::string nameOf(const Circuit& circuit);
[[nodiscard]] std::string nameOf(const Load& load, const Circuit& circuit);
[[nodiscard]] std::string nameOf(const Panel& panel);
/// The spaces of a breaker as its panel prints them.
[[nodiscard]] std::string spacesOf(const Plan& plan, const Breaker& breaker);
/// Open facts of the on-site list with this key.
[[nodiscard]] std::vector<const OnSiteItem*> open(const ReviewInput& in, std::string_view key);
/// Is this fact of that record open?
[[nodiscard]] bool isOpen(const ReviewInput& in, std::string_view key, EntityRef place);
/// The circuits among them, in the order of the list.
[[nodiscard]] std::vector<const Circuit*> openCircuits(const ReviewInput& in, std::string_view key);
/// Names as a list that a sentence can hold.
[[nodiscard]] std::vector<Message> listed(const std::vector<std::string>& names);

[[nodiscard]] Figure amperes(double value);
[[nodiscard]] Figure watts(double value);
[[nodiscard]] Figure percent(double fraction, int decimals = 0);

/// The breaker of a circuit after the work, or nullptr.
[[nodiscard]] const Breaker* plannedBreaker(const Plan& plan, const Circuit& circuit);
[[nodiscard]] bool canadian(const Plan& plan);

}  // namespace stayalight::reviewing
