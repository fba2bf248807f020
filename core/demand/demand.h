#pragma once

// The load calculations of NFPA 70 Article 220 (from 2026 on Article 120) and the rules on how large a backup
// source must be (702.4). They have no spread: nameplates, tables and factors.
//
// The feeder of the backup subpanel carries a part of the dwelling, so only the standard method is for it.
// The main carries the whole dwelling: standard, optional, existing-dwelling and metered-demand methods, each
// with why it applies or not. A figure that an edition has not, or that nobody confirmed, leads to a refusal
// in words.

#include <array>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/code/demand_figures.h"
#include "core/code/tables.h"
#include "core/message/working.h"
#include "core/plan/plan.h"
#include "core/quantity/verdict.h"
#include "core/transfer/transfer.h"

namespace stayalight {

// ---- what is counted (gather.cpp)
// ----------------------------------------------------------------------------

/// One thing that draws. The parts of one dryer or range on a circuit (element, motor, lamp) are one item.
struct DemandItem {
  std::string name;
  LoadClass loadClass = LoadClass::other;
  /// Nameplate; none only for a vehicle charger whose nameplate nobody has read.
  std::optional<VoltAmperes> rating;
  std::array<double, 2> leg{0.5, 0.5};  ///< its VA on each leg, of all its VA; on a wye a line-to-line load
                                        ///< has 1 over the root of 3 on each
  std::string from;                     ///< where the rating is from, for the working
  std::optional<Grade> grade;           ///< of an entered rating
  bool neutral = false;                 ///< lies between leg and neutral, or (dryer, range) has a neutral
  bool motor = false;
  bool continuous = false;
  bool added = false;  ///< new with the work
  std::optional<Horsepower> horsepower;
  int controls = 1;  ///< separately controlled heaters
};

/// What one calculation is about. Areas and circuits stand by leg.
struct DemandQuestion {
  Edition edition = Edition::y2023;
  bool wye = false;
  AcVolts legVolts{120};
  AcVolts lineVolts{240};
  std::array<SquareFeet, 2> area;
  std::array<double, 2> smallAppliance{};  ///< circuits
  std::array<double, 2> laundry{};
  std::vector<DemandItem> items;
  std::optional<VoltAmperes> charging;  ///< of the battery, from the utility
  /// New with the work, for the method from metered demand: general lighting and circuits.
  SquareFeet addedArea;
  double addedCircuits = 0.0;  ///< small-appliance and laundry
  std::vector<Message> missing;
  std::vector<EntityRef> places;  ///< of what is missing
  std::vector<Message> notes;     ///< what was assumed, on the safe side
};
/// Of the feeder to the backup subpanel: circuits that hang on it as planned, without some of their loads.
[[nodiscard]] DemandQuestion feederQuestion(const Plan& plan, Edition edition,
                                            const Tables& tables = publishedTables(),
                                            std::span<const LoadId> without = {});
/// Of the whole dwelling, before the work or as planned (then with charging from the utility).
[[nodiscard]] DemandQuestion dwellingQuestion(const Plan& plan, Reading reading, Edition edition,
                                              const Tables& tables = publishedTables());

/// Nameplate of a load for the calculation: as entered; a motor's by horsepower from Table 430.248 at the
/// nominal volts; else its running watts over the power factor, or its amperes, where somebody read or
/// measured them. Empty where nobody did.
struct Nameplate {
  enum class Basis : std::uint8_t { entered, motorTable, running };
  VoltAmperes rating;
  Basis basis = Basis::entered;
  std::string from;  ///< "nameplate", "Table 430.248, 1/2 hp, 230 V", "running watts over power factor"
  std::optional<Grade> grade;  ///< of running watts or amperes
};
[[nodiscard]] std::optional<Nameplate> nameplateOf(const Load& load,
                                                   const Tables& tables = publishedTables());

// ---- one calculation (standard.cpp, dwelling.cpp)
// ------------------------------------------------------------

struct DemandLine {
  Message what;
  std::int32_t items = 0;  ///< loads or circuits in it; 0 for a part of the lines above
  VoltAmperes gross;
  std::optional<Fraction> factor;   ///< none where a table gives the load itself
  std::optional<VoltAmperes> load;  ///< none: a part that a line below counts, or that is left out
  VoltAmperes neutral;              ///< of the load, between the legs and the neutral, both legs together
  RuleId rule;
  bool confirmed = true;  ///< every figure of it is confirmed for this edition
  StepIndex step = kNoStep;
};

/// One ungrounded conductor. Legs are worked out apart and never added.
struct DemandLeg {
  VoltAmperes load;
  VoltAmperes continuous;  ///< the part of it that is continuous
  VoltAmperes neutral;     ///< net load between it and the neutral, the other leg off (220.61)
  StepIndex loadStep = kNoStep;
  StepIndex continuousStep = kNoStep;
  StepIndex neutralStep = kNoStep;
};

struct DemandCalculation {
  std::vector<DemandLine> lines;
  VoltAmperes total;
  VoltAmperes continuous;
  std::array<DemandLeg, 2> leg;
  AcAmperes line;            ///< total over the volts between the legs
  AcAmperes heavier;         ///< current of the heavier leg
  AcAmperes heavierMinimum;  ///< least rating for the leg that asks for more, 125 % of its continuous part
  AcAmperes
      minimum;  ///< least rating: total with 125 % of its continuous part, over the volts between the legs
  AcAmperes neutral;  ///< of the heavier leg's net load; its part above 200 A at 70 %
  bool confirmed = true;
  std::optional<Message> refused;  ///< a figure is not known for this edition, or a table ends: no result
  std::vector<Message> missing;    ///< then the total holds what is known, and is never "within"
  std::vector<EntityRef> places;
  std::vector<Message> notes;
  StepIndex totalStep = kNoStep;
  StepIndex minimumStep = kNoStep;
  /// Least rating that both the total and the heavier leg ask for; a method without legs asks by its total.
  [[nodiscard]] AcAmperes least() const { return std::max(minimum, heavierMinimum); }
  [[nodiscard]] bool complete() const { return missing.empty() && !refused; }
};

/// Part III: 220.41 to 220.61. Dryers and ranges by their tables, four or more appliances at 75 %, the larger
/// of heating and cooling, a quarter of the largest motor; for each leg its own largest motor.
[[nodiscard]] DemandCalculation standardLoad(const DemandQuestion& question, Working* working = nullptr,
                                             const Tables& tables = publishedTables());
/// 220.82, for conductors of 100 A and more that carry the whole dwelling. The neutral is the standard
/// method's.
[[nodiscard]] DemandCalculation optionalLoad(const DemandQuestion& question, Working* working = nullptr,
                                             const Tables& tables = publishedTables());
/// 220.83, (A), or (B) where heating or cooling is new.
[[nodiscard]] DemandCalculation existingLoad(const DemandQuestion& question, Working* working = nullptr,
                                             const Tables& tables = publishedTables());
/// 220.87: 125 % of the metered maximum and what is new with the work.
[[nodiscard]] DemandCalculation meteredLoad(VoltAmperes maximumDemand, const DemandQuestion& question,
                                            bool withNew, Working* working = nullptr,
                                            const Tables& tables = publishedTables());

/// Demand of electric cooking appliances by Table 220.55, nameplates in kW: column C with its increase for an
/// average above 12 kW (Notes 1 and 2), or columns A and B for those up to 8.75 kW (Note 3) where that is
/// less. Empty above 27 kW, and for more than kCookingRows in one column.
struct CookingLoad {
  VoltAmperes load;
  bool confirmed = true;
  bool byNote3 = false;
  StepIndex step = kNoStep;
};
[[nodiscard]] std::optional<CookingLoad> cookingLoad(const std::vector<double>& kilowatts, Edition edition,
                                                     Working* working = nullptr,
                                                     const Tables& tables = publishedTables());
/// Column C for an average rating: 5 % more for each kW or major fraction above 12.
[[nodiscard]] double cookingIncreased(double columnC, double averageKilowatts, Edition edition,
                                      const Tables& tables = publishedTables());

// ---- the main (figures.cpp)
// ----------------------------------------------------------------------------------

enum class DemandMethod : std::uint8_t { standard, optional, existing, metered };
inline constexpr std::array<std::string_view, 4> kDemandMethodWords = {"standard", "optional", "existing",
                                                                       "metered"};
/// "Optional method".
[[nodiscard]] Message methodName(DemandMethod method);
[[nodiscard]] WorkingSubject workingSubject(DemandMethod method, Reading reading);
/// What stands beside a figure of which `confirmed` is false.
inline constexpr MessageId kNotConfirmed{"demand.not_confirmed"};
struct MethodFigures {
  DemandMethod method = DemandMethod::standard;
  RuleId rule;
  std::optional<Message> notApplicable;  ///< why; then nothing below holds
  DemandCalculation before, after;
  Verdict verdictBefore = Verdict::notKnown;  ///< least rating against the main's
  Verdict verdictAfter = Verdict::notKnown;
};
/// The most that may be drawn to charge, by what is left of each rating on its way.
struct ChargeSetting {
  bool asked = false;            ///< the plan charges from the utility
  std::optional<Watts> fits;     ///< none: not known
  std::optional<Watts> entered;  ///< of all units
  Message governs;               ///< whose rating
  Verdict verdict = Verdict::notKnown;
  StepIndex step = kNoStep;
};
struct ServiceDemand {
  std::optional<RatingAmperes> rating;  ///< main breaker or service, the smaller
  std::vector<MethodFigures> methods;   ///< all four
  /// Of those that apply and are complete the one with the smallest load after the work: the code leaves the
  /// choice.
  std::optional<DemandMethod> chosen;
  ChargeSetting charge;
};
/// What is left for charging, and the load of the backup feeder, in a working.
[[nodiscard]] WorkingSubject chargingSubject();
[[nodiscard]] WorkingSubject feederLoadSubject();
[[nodiscard]] const MethodFigures* chosenMethod(const ServiceDemand& service);

// ---- how large the source must be (capacity.cpp)
// -------------------------------------------------------------

enum class Condition : std::uint8_t { kept, broken, notKnown };
/// "Manual transfer, loads meant to run".
[[nodiscard]] Message pathName(CapacityPath path);
[[nodiscard]] WorkingSubject workingSubject(CapacityPath path);
struct CapacityCondition {
  Message what;
  Condition state = Condition::notKnown;
};
struct PathFigures {
  CapacityPath path = CapacityPath::manual;
  RuleId rule;
  std::optional<Message> closed;     ///< why it is no way here: edition, kind of transfer
  std::optional<VoltAmperes> asked;  ///< what the source has to carry
  std::vector<CapacityCondition> conditions;
  std::optional<Message> caution;       ///< how authorities see it
  Verdict verdict = Verdict::notKnown;  ///< within: every condition is kept
  bool chosen = false;
};

// ---- all of it
// -----------------------------------------------------------------------------------------------

/// What the feeder's pieces are sized for: typed figures, else the computed ones.
struct FeederLoad {
  std::optional<VoltAmperes> load;  ///< both legs together
  std::optional<VoltAmperes> continuous;
  bool typed = false;
  std::optional<DemandLeg> heavier;  ///< where computed: the leg that asks for the larger device
  std::optional<std::array<VoltAmperes, 2>> legs;  ///< where computed
  std::optional<VoltAmperes> neutral;              ///< net load of the heavier leg
  bool neutralTyped = false;
};
struct DemandFigures {
  bool covered = false;  ///< a site of the United States with one phase; else nothing below holds
  DemandCalculation feeder;
  FeederLoad feederLoad;
  ServiceDemand service;
  std::optional<VoltAmperes> carries;        ///< the inverters, all day, and no more than the packs let them
  std::optional<VoltAmperes> largestSingle;  ///< largest single load on the backup subpanel
  std::string largestName;
  std::vector<PathFigures> paths;  ///< all five, in the order of the choice
};
[[nodiscard]] DemandFigures demandFigures(const Plan& plan, Edition edition, const InverterLimits& limits,
                                          Working* working = nullptr,
                                          const Tables& tables = publishedTables());
[[nodiscard]] std::vector<PathFigures> capacityPaths(const Plan& plan, Edition edition,
                                                     const InverterLimits& limits, DemandFigures& figures,
                                                     Working* working = nullptr,
                                                     const Tables& tables = publishedTables());

}  // namespace stayalight
