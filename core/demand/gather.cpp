// From a plan to what a calculation counts.

#include <algorithm>
#include <cmath>

#include "core/code/motors.h"
#include "core/demand/demand.h"
#include "core/panel/spaces.h"

namespace stayalight {
namespace {

constexpr MessageId kName{"demand.name"};
constexpr MessageId kNoArea{"demand.missing.floor_area"};
constexpr MessageId kNoUse{"demand.missing.circuit_use"};
constexpr MessageId kNoAreaServed{"demand.missing.area_served"};
constexpr MessageId kNoClass{"demand.missing.load_class"};
constexpr MessageId kNoNameplate{"demand.missing.nameplate"};
constexpr MessageId kNoCharge{"demand.missing.charge_limit"};
constexpr MessageId kByTable{"demand.note.by_table"};
constexpr MessageId kByRunning{"demand.note.by_running"};
constexpr MessageId kOneControl{"demand.note.one_control"};

std::string nameOf(const Circuit& circuit) {
  if (!circuit.name.empty()) return circuit.name;
  return circuit.serves.empty() ? std::to_string(circuit.id.number) : circuit.serves;
}
std::string nameOf(const Load& load, const Circuit& circuit) {
  return load.name.empty() ? nameOf(circuit) : load.name;
}

// What nobody has entered, told once for each kind of fact and not once for each circuit.
struct Gaps {
  std::vector<Message> use, area, loadClass, nameplate;
  std::vector<EntityRef> places;
  void circuit(std::vector<Message>& list, const Circuit& circuit) {
    list.push_back(say(kName, nameOf(circuit)));
    places.push_back({RecordKind::circuit, circuit.id.number});
  }
  void load(std::vector<Message>& list, const Load& load, const Circuit& circuit) {
    list.push_back(say(kName, nameOf(load, circuit)));
    places.push_back({RecordKind::load, load.id.number});
  }
  void into(DemandQuestion& question) {
    if (!use.empty()) question.missing.push_back(say(kNoUse, std::move(use)));
    if (!area.empty()) question.missing.push_back(say(kNoAreaServed, std::move(area)));
    if (!loadClass.empty()) question.missing.push_back(say(kNoClass, std::move(loadClass)));
    if (!nameplate.empty()) question.missing.push_back(say(kNoNameplate, std::move(nameplate)));
    question.places.insert(question.places.end(), places.begin(), places.end());
  }
};

bool lineToNeutral(const Load& load) { return !load.connection.is(Connection::lineToLine); }

// Shares of a load's VA on the legs.
std::array<double, 2> shares(const Load& load, const std::vector<Leg>& poles, bool wye) {
  if (!lineToNeutral(load)) {
    const double share = wye ? 1.0 / std::sqrt(3.0) : 0.5;
    return {share, share};
  }
  if (poles.empty()) return {0.5, 0.5};
  std::array<double, 2> out{};
  out[index(load.pole == 2 && poles.size() > 1 ? poles[1] : poles[0])] = 1.0;
  return out;
}

bool isMotor(const Load& load, LoadClass loadClass) {
  switch (loadClass) {
    case LoadClass::motor:
    case LoadClass::airConditioning:
    case LoadClass::heatPump:
      return true;
    case LoadClass::appliance:
    case LoadClass::other:
      return load.horsepower.has_value() || !load.start.is(StartKind::none);
    default:
      return false;
  }
}

// Dryers and cooking appliances have parts: what lies between leg and neutral belongs to the appliance of its
// circuit that lies between the legs.
DemandItem* wholeOf(std::vector<DemandItem>& items, std::size_t first, const Load& load,
                    LoadClass loadClass) {
  if (loadClass != LoadClass::dryer && loadClass != LoadClass::cooking) return nullptr;
  if (!lineToNeutral(load)) return nullptr;
  for (std::size_t i = first; i < items.size(); ++i) {
    if (items[i].loadClass == loadClass) return &items[i];
  }
  return nullptr;
}

struct Gatherer {
  const Plan& plan;
  const Tables& tables;
  bool dwelling;
  DemandQuestion question;
  Gaps gaps;
  std::vector<Message> byTable, byRunning;
  std::span<const LoadId> without;  ///< loads that do not count

  /// What is missing, and where ratings are from that are no nameplates.
  void finish() {
    gaps.into(question);
    if (!byTable.empty()) question.notes.push_back(say(kByTable, std::move(byTable)));
    if (!byRunning.empty()) question.notes.push_back(say(kByRunning, std::move(byRunning)));
  }

  void circuit(const Circuit& circuit, const Panel& panel, const Breaker& breaker, bool added) {
    const std::vector<Leg> poles = poleLegs(panel, placementOf(breaker));
    const auto byLeg = [&](double amount) {
      std::array<double, 2> out{};
      for (const Leg leg : poles) out[index(leg)] += amount / static_cast<double>(poles.size());
      return out;
    };
    CircuitUse use = circuit.calculationUse.valueOr(CircuitUse::unknown);
    if (use == CircuitUse::unknown) {
      // Loads that all have a class of their own say what the circuit is.
      const bool told = !circuit.loads.empty() &&
                        std::all_of(circuit.loads.begin(), circuit.loads.end(), [](const Load& load) {
                          return load.calculationClass.known() &&
                                 !load.calculationClass.is(LoadClass::unknown) &&
                                 !load.calculationClass.is(LoadClass::general);
                        });
      if (!told) {
        gaps.circuit(gaps.use, circuit);
        return;
      }
      use = CircuitUse::individual;
    }
    if (use == CircuitUse::general && !dwelling) {
      if (!circuit.areaServed) {
        gaps.circuit(gaps.area, circuit);
      } else {
        const auto area = byLeg(circuit.areaServed->count());
        for (std::size_t leg = 0; leg < 2; ++leg) question.area[leg] += SquareFeet(area[leg]);
      }
    }
    if (use == CircuitUse::general && dwelling && added && circuit.areaServed)
      question.addedArea += *circuit.areaServed;
    if (use == CircuitUse::smallAppliance || use == CircuitUse::laundry) {
      auto& count = use == CircuitUse::laundry ? question.laundry : question.smallAppliance;
      const auto one = byLeg(1.0);
      for (std::size_t leg = 0; leg < 2; ++leg) count[leg] += one[leg];
      if (added) question.addedCircuits += 1.0;
    }
    const std::size_t first = question.items.size();
    // Line to line first, so that smaller parts find the appliance they belong to.
    for (const bool between : {true, false}) {
      for (const Load& load : circuit.loads) {
        if (lineToNeutral(load) == between ||
            std::find(without.begin(), without.end(), load.id) != without.end())
          continue;
        this->load(load, circuit, use, poles, added, first);
      }
    }
  }

  void load(const Load& load, const Circuit& circuit, CircuitUse use, const std::vector<Leg>& poles,
            bool added, std::size_t first) {
    LoadClass loadClass = load.calculationClass.valueOr(LoadClass::unknown);
    const bool individual = use == CircuitUse::individual;
    // Area and circuits cover what is plugged in on their circuits; the floor area of a dwelling covers all.
    if (!individual && (loadClass == LoadClass::unknown || loadClass == LoadClass::general)) return;
    if (loadClass == LoadClass::general && dwelling) return;
    if (loadClass == LoadClass::unknown) {
      gaps.load(gaps.loadClass, load, circuit);
      return;
    }
    if (loadClass == LoadClass::general) loadClass = LoadClass::other;
    const std::optional<Nameplate> rating = nameplateOf(load, tables);
    if (!rating && loadClass != LoadClass::vehicleCharger) {
      gaps.load(gaps.nameplate, load, circuit);
      return;
    }
    // The least load of a charger holds whatever its nameplate says, where the edition has one for that case.
    if (!rating && !demandFigure(DemandKey::vehicleChargerUnknown, question.edition, tables)) {
      gaps.load(gaps.nameplate, load, circuit);
      return;
    }
    if (DemandItem* whole = wholeOf(question.items, first, load, loadClass)) {
      *whole->rating += rating->rating;
      whole->neutral = true;
      return;
    }
    DemandItem item;
    const bool table = loadClass == LoadClass::dryer || loadClass == LoadClass::cooking;
    // Parts of a dryer or a range are called as their circuit.
    item.name = table && circuit.loads.size() > 1 ? nameOf(circuit) : nameOf(load, circuit);
    item.loadClass = loadClass;
    if (rating) {
      item.rating = rating->rating;
      item.from = rating->from;
      item.grade = rating->grade;
      if (rating->basis == Nameplate::Basis::motorTable) byTable.push_back(say(kName, item.name));
      if (rating->basis == Nameplate::Basis::running) byRunning.push_back(say(kName, item.name));
    }
    item.leg = shares(load, poles, question.wye);
    const bool hasNeutral = circuit.voltage.is(VoltageClass::v120_240) || !circuit.voltage.known();
    item.neutral = lineToNeutral(load) || (table && hasNeutral);
    item.motor = isMotor(load, loadClass);
    item.continuous = load.continuous || loadClass == LoadClass::vehicleCharger;
    item.added = added;
    item.horsepower = load.horsepower;
    if (load.separateControls) {
      item.controls = *load.separateControls;
    } else if (loadClass == LoadClass::spaceHeating && dwelling) {
      question.notes.push_back(say(kOneControl, item.name));
    }
    question.items.push_back(std::move(item));
  }
};

DemandQuestion begin(const Plan& plan, Edition edition, const Tables& tables) {
  DemandQuestion question;
  question.edition = edition;
  const SystemVoltages system = voltages(plan, Mode::ordinary, tables);
  question.wye = system.wye;
  question.legVolts = system.legToNeutral;
  question.lineVolts = system.legToLeg;
  return question;
}

}  // namespace

std::optional<Nameplate> nameplateOf(const Load& load, const Tables& tables) {
  using Basis = Nameplate::Basis;
  if (load.nameplate) return Nameplate{*load.nameplate, Basis::entered, "nameplate", std::nullopt};
  if (load.calculationClass.is(LoadClass::motor) && load.horsepower) {
    const auto column = motorColumn(AcVolts(load.ratedVoltage));
    const auto current = column ? fullLoadCurrent(*load.horsepower, *column, tables) : std::nullopt;
    if (current) {
      const bool wye = *column == MotorVolts::v208 || *column == MotorVolts::v200;
      const AcVolts nominal = lineToNeutral(load) ? nominalLegVolts(tables)
                              : wye               ? nominalLineVoltsWye(tables)
                                                  : nominalLineVoltsSplitPhase(tables);
      return Nameplate{nominal * current->current, Basis::motorTable,
                       fullLoadCell(*load.horsepower, *column, tables) + ", times the nominal volts",
                       std::nullopt};
    }
  }
  if (load.running.value && load.running.grade >= Grade::nameplate) {
    const double factor = load.powerFactor.value ? load.powerFactor.value->count() : 1.0;
    return Nameplate{VoltAmperes(load.running.value->count() / factor), Basis::running,
                     "running watts over power factor", load.running.grade};
  }
  if (load.runningCurrent.value && load.runningCurrent.grade >= Grade::nameplate) {
    return Nameplate{AcVolts(load.ratedVoltage) * *load.runningCurrent.value, Basis::running,
                     "running amperes times rated volts", load.runningCurrent.grade};
  }
  return std::nullopt;
}

DemandQuestion feederQuestion(const Plan& plan, Edition edition, const Tables& tables,
                              std::span<const LoadId> without) {
  Gatherer gatherer{plan, tables, false, begin(plan, edition, tables), {}, {}, {}, without};
  for (const auto& circuit : plan.circuits) {
    const Breaker* const breaker = find(plan, breakerOf(*circuit, Reading::planned));
    const Panel* const panel = breaker != nullptr ? find(plan, breaker->panel) : nullptr;
    if (panel == nullptr || !panel->role.is(PanelRole::backup) || !stands(*breaker, Reading::planned))
      continue;
    gatherer.circuit(*circuit, *panel, *breaker, !circuit->breaker.valid());
  }
  gatherer.finish();
  return std::move(gatherer.question);
}

DemandQuestion dwellingQuestion(const Plan& plan, Reading reading, Edition edition, const Tables& tables) {
  Gatherer gatherer{plan, tables, true, begin(plan, edition, tables), {}, {}, {}, {}};
  DemandQuestion& question = gatherer.question;
  for (const auto& circuit : plan.circuits) {
    const Breaker* const breaker = find(plan, breakerOf(*circuit, reading));
    const Panel* const panel = breaker != nullptr ? find(plan, breaker->panel) : nullptr;
    if (panel == nullptr || !stands(*breaker, reading)) continue;
    gatherer.circuit(*circuit, *panel, *breaker, !circuit->breaker.valid());
  }
  // Area and circuits of a whole dwelling lie on both legs alike.
  if (plan.site->floorArea) {
    question.area = {*plan.site->floorArea / 2.0, *plan.site->floorArea / 2.0};
  } else {
    question.missing.push_back(say(kNoArea));
    question.places.push_back({RecordKind::site});
  }
  const auto least = [&](std::array<double, 2>& count, const std::optional<std::int32_t>& entered,
                         DemandKey key) {
    double circuits = std::max(count[0] + count[1], static_cast<double>(entered.value_or(0)));
    if (const auto figure = demandFigure(key, edition, tables)) circuits = std::max(circuits, figure->value);
    count = {circuits / 2.0, circuits / 2.0};
  };
  least(question.smallAppliance, plan.site->smallApplianceCircuits, DemandKey::smallApplianceLeast);
  least(question.laundry, plan.site->laundryCircuits, DemandKey::laundryLeast);
  gatherer.finish();
  if (reading == Reading::planned) {
    const std::vector<Segment> pieces = segments(plan);
    if (std::find(pieces.begin(), pieces.end(), Segment::mainToInverter) != pieces.end()) {
      if (plan.inverter->chargeLimit) {
        question.charging =
            VoltAmperes(plan.inverter->chargeLimit->count() * std::max(1, plan.inverter->units));
      } else {
        question.missing.push_back(say(kNoCharge));
        question.places.push_back({RecordKind::inverter});
      }
    }
  }
  return std::move(question);
}

}  // namespace stayalight
