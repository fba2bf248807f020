#include "core/wiring/drop.h"

#include <algorithm>
#include <cmath>

#include "core/wiring/record.h"

namespace stayalight {
namespace {

using namespace wiring;
using Phasor = std::complex<double>;

constexpr double kThirdOfTurn = 2.0943951023931954923;  // 2 pi / 3

double fall(const Phasor& at_source, const Phasor& along_the_way) {
  return std::abs(at_source) - std::abs(at_source - along_the_way);
}

// The three steps of one leg: the part of the drop along its volts, the part across, and what is left of the
// volts.
void recordLeg(Working& working, Leg leg, const Phasor& volts, const Phasor& current, const Phasor& neutral,
               const Impedance& line, const Impedance& neutralOhm, double kilofeet,
               const std::string& lineCell, const std::string& neutralCell, double drop) {
  const Phasor turn = std::conj(volts) / std::abs(volts);
  const Phasor i = current * turn;
  const Phasor in = neutral * turn;
  const double r = line.resistance.count();
  const double x = line.reactance.count();
  const double rn = neutralOhm.resistance.count();
  const double xn = neutralOhm.reactance.count();
  const std::string place = std::string(legName(leg)) + ", phasor turned to the volts of the leg";
  const auto inputs = [&] {
    return std::vector<StepInput>{fromPlace("r", r, "ohm/kft", lineCell),
                                  fromPlace("x", x, "ohm/kft", lineCell),
                                  fromPlace("ir", i.real(), "A", place),
                                  fromPlace("ii", i.imag(), "A", place),
                                  fromPlace("rn", rn, "ohm/kft", neutralCell),
                                  fromPlace("xn", xn, "ohm/kft", neutralCell),
                                  fromPlace("nr", in.real(), "A", place),
                                  fromPlace("ni", in.imag(), "A", place),
                                  fromPlace("d", kilofeet, "kft", "length of the run")};
  };
  const double along = (r * i.real() - x * i.imag() + rn * in.real() - xn * in.imag()) * kilofeet;
  const double across = (r * i.imag() + x * i.real() + rn * in.imag() + xn * in.real()) * kilofeet;
  const StepIndex alongStep =
      record(working, FormulaId{"wiring.drop_along"}, RuleId{"drop.advice"}, along, "V", inputs());
  const StepIndex acrossStep =
      record(working, FormulaId{"wiring.drop_across"}, RuleId{"drop.advice"}, across, "V", inputs());
  record(working, FormulaId{"wiring.drop_leg"}, RuleId{"drop.advice"}, drop, "V",
         {fromPlace("E", std::abs(volts), "V", "nominal volts of the leg"),
          fromStep("a", along, "V", alongStep), fromStep("b", across, "V", acrossStep)});
}

}  // namespace

std::optional<Impedance> runImpedance(ConductorSize size, const RunConditions& conditions,
                                      const Tables& tables) {
  auto found = impedance(size, conditions.metal, conditions.raceway, tables);
  if (found)
    found->resistance = std::max(found->resistance, directCurrentResistance(size, conditions.metal, tables));
  return found;
}

Phasor legVolts(Leg leg, const SystemVoltages& system, Phasor currentOfL2) {
  const double volts = system.legToNeutral.count();
  if (leg == Leg::l1) return {volts, 0.0};
  if (system.single) return {volts, 0.0};
  if (!system.wye) return {-volts, 0.0};
  const Phasor lagging = std::polar(volts, -kThirdOfTurn);
  const Phasor leading = std::polar(volts, kThirdOfTurn);
  if (system.order == WyeOrder::l2Lags) return lagging;
  if (system.order == WyeOrder::l2Leads) return leading;
  return std::real(std::conj(lagging) * currentOfL2) >= std::real(std::conj(leading) * currentOfL2) ? lagging
                                                                                                    : leading;
}

DropFigure threeWireDrop(const std::array<Phasor, 2>& legCurrent, Phasor lineOhm, Phasor neutralOhm,
                         const SystemVoltages& system) {
  const Phasor neutral = (legCurrent[0] + legCurrent[1]) * neutralOhm;
  std::array<Phasor, 2> source;
  std::array<Phasor, 2> atLoad;
  DropFigure drop;
  for (const Leg leg : {Leg::l1, Leg::l2}) {
    const std::size_t i = index(leg);
    source[i] = legVolts(leg, system, legCurrent[1]);
    const Phasor way = legCurrent[i] * lineOhm + neutral;
    atLoad[i] = source[i] - way;
    drop.leg[i] = AcVolts(fall(source[i], way));
    drop.fraction[i] = drop.leg[i].count() / system.legToNeutral.count();
  }
  drop.lineToLine = AcVolts(std::abs(source[0] - source[1]) - std::abs(atLoad[0] - atLoad[1]));
  return drop;
}

std::optional<DropFigure> runDrop(const std::array<Phasor, 2>& legCurrent, ConductorSize line,
                                  ConductorSize neutral, const RunConditions& conditions,
                                  const SystemVoltages& system, Working* working, const Tables& tables) {
  const auto lineImpedance = runImpedance(line, conditions, tables);
  const auto neutralImpedance = runImpedance(neutral, conditions, tables);
  if (!lineImpedance || !neutralImpedance) return std::nullopt;
  const double kilofeet = conditions.length.inFeet() / 1000.0;
  const auto ohms = [&](const Impedance& z) {
    return Phasor(z.resistance.count(), z.reactance.count()) * kilofeet;
  };
  DropFigure drop = threeWireDrop(legCurrent, ohms(*lineImpedance), ohms(*neutralImpedance), system);
  if (system.single) {
    // One leg only: nothing stands between two legs, and the second has no load of its own.
    drop.leg[1] = AcVolts(0.0);
    drop.fraction[1] = 0.0;
    drop.lineToLine = AcVolts(0.0);
  }
  if (working != nullptr) {
    const std::string lineCell = impedanceCell(line, conditions.metal, conditions.raceway);
    const std::string neutralCell = impedanceCell(neutral, conditions.metal, conditions.raceway);
    for (const Leg leg : {Leg::l1, Leg::l2}) {
      if (system.single && leg == Leg::l2) continue;
      recordLeg(*working, leg, legVolts(leg, system, legCurrent[1]), legCurrent[index(leg)],
                legCurrent[0] + legCurrent[1], *lineImpedance, *neutralImpedance, kilofeet, lineCell,
                neutralCell, drop.leg[index(leg)].count());
    }
  }
  return drop;
}

}  // namespace stayalight
