#include <algorithm>

#include "core/code/numbers.h"
#include "core/panel/spaces.h"
#include "core/use/use.h"

namespace stayalight {
namespace {

// A load whose power factor nobody has read counts as 1 and, on the unfavourable side, as this (motors, small
// supplies and lamps lie at 0.5 to 0.8). Common practice, no source.
constexpr double kUnfavourablePowerFactor = 0.7;

Range<Fraction> powerFactorOf(const Load& load) {
  if (const auto entered = spread(FactKind::powerFactor, load.powerFactor)) return *entered;
  if (load.kind.is(LoadKind::resistance)) return exactly(Fraction(1.0));
  return {Fraction(kUnfavourablePowerFactor), Fraction(1.0), Fraction(1.0)};
}

/// What a load takes while it runs, at the end of each range.
struct Power {
  Range<ComplexPower> power;
  Grade grade = Grade::unknown;
  bool known = true;
};

Power powerOf(const Load& load, RatingAmperes breaker, AcVolts volts, const Tables& tables) {
  const Range<Fraction> factor = powerFactorOf(load);
  Power out;
  if (const auto watts = spread(FactKind::watts, load.running)) {
    out.grade = load.running.grade;
    out.power = {complexPower(watts->low, factor.high), complexPower(watts->likely, factor.likely),
                 complexPower(watts->high, factor.low)};
  } else if (const auto amperes = spread(FactKind::amperes, load.runningCurrent)) {
    // Amperes hold the apparent power; its watts are unfavourable at the better power factor.
    out.grade = load.runningCurrent.grade;
    const auto from = [&load](AcAmperes current, Fraction pf) {
      return complexPower(Watts((AcVolts(load.ratedVoltage) * current).count() * pf.count()), pf);
    };
    out.power = {from(amperes->low, factor.low), from(amperes->likely, factor.likely),
                 from(amperes->high, factor.high)};
  } else {
    // Nobody knows; its breaker bounds what runs for long: the rating over the factor of continuous loads.
    out.known = false;
    const double bound = breaker.count() / continuousFactor(tables).count() * volts.count();
    out.power.high = complexPower(Watts(bound * factor.high.count()), factor.high);
    return out;
  }
  double scale = 1.0;
  if (load.kind.is(LoadKind::resistance) && load.ratedVoltage > 0) {
    const double ratio = volts.count() / load.ratedVoltage;
    scale = ratio * ratio;
  }
  if (volts.count() <= 0.0) scale = 0.0;
  for (ComplexPower* end : {&out.power.low, &out.power.likely, &out.power.high}) *end = *end * scale;
  return out;
}

}  // namespace

std::vector<Draw> draws(const Plan& plan, PanelId panelId, Reading reading, const SystemVoltages& system,
                        const Tables& tables) {
  std::vector<Draw> out;
  const Panel* panel = find(plan, panelId);
  if (panel == nullptr) return out;
  for (const auto& circuit : plan.circuits) {
    if (circuit->loads.empty()) continue;
    const Breaker* breaker = find(plan, breakerOf(*circuit, reading));
    if (breaker == nullptr || breaker->panel != panelId || !stands(*breaker, reading)) continue;
    const std::vector<Leg> poles = poleLegs(*panel, placementOf(*breaker));
    if (poles.empty()) continue;
    for (const Load& load : circuit->loads) {
      Draw draw;
      draw.load = load.id;
      draw.circuit = circuit->id;
      draw.breaker = breaker->id;
      draw.connection = load.connection.valueOr(Connection::lineToNeutral);
      const bool between = draw.connection == Connection::lineToLine;
      const std::size_t pole = load.pole == 2 && poles.size() > 1 ? 1 : 0;
      const Leg leg = poles[pole];
      if (between)
        draw.onLeg = {true, true};
      else
        draw.onLeg[index(leg)] = true;
      const Power power =
          powerOf(load, breaker->rating, between ? system.legToLeg : system.legToNeutral, tables);
      const auto& [low, likely, high] = power.power;
      draw.watts = {low.real, likely.real, high.real};
      draw.apparent = {low.apparent(), likely.apparent(), high.apparent()};
      draw.low = onLegs(low, draw.connection, leg, system);
      draw.likely = onLegs(likely, draw.connection, leg, system);
      draw.high = onLegs(high, draw.connection, leg, system);
      draw.grade = power.grade;
      draw.known = power.known;
      out.push_back(draw);
    }
  }
  return out;
}

}  // namespace stayalight
