#include "core/use/coincidence.h"

namespace stayalight {
namespace {

using Phasor = std::complex<double>;
const double kRootThree = std::sqrt(3.0);

/// Voltage of L2 with that of L1 at angle 0. On a wye L2 lags L1 by 120 degrees, or leads it.
Phasor voltsOfL2(const SystemVoltages& system, bool lags) {
  const double volts = system.legToNeutral.count();
  if (system.single) return {volts, 0.0};
  if (!system.wye) return {-volts, 0.0};
  return volts * Phasor(-0.5, lags ? -kRootThree / 2.0 : kRootThree / 2.0);
}

Phasor phasor(const ComplexPower& power) { return {power.real.count(), power.reactive.count()}; }
ComplexPower complexPower(const Phasor& power) { return {Watts(power.real()), Vars(power.imag())}; }

Currents currentsIn(const LegPower& power, const SystemVoltages& system, bool lags) {
  const std::array<Phasor, 2> volts = {Phasor(system.legToNeutral.count(), 0.0), voltsOfL2(system, lags)};
  Currents out;
  for (std::size_t k = 0; k < 2; ++k) out.leg[k] = std::conj(phasor(power.leg[k]) / volts[k]);
  // What lies between the legs cancels in the neutral.
  out.neutral = std::conj(phasor(power.lineToNeutral[0]) / volts[0]) +
                std::conj(phasor(power.lineToNeutral[1]) / volts[1]);
  return out;
}

/// The same load laid out for the other order of the phases.
LegPower reordered(const LegPower& power) {
  LegPower out = power;
  const ComplexPower between[2] = {power.leg[0] + power.lineToNeutral[0] * -1.0,
                                   power.leg[1] + power.lineToNeutral[1] * -1.0};
  out.leg[0] = power.lineToNeutral[0] + between[1];
  out.leg[1] = power.lineToNeutral[1] + between[0];
  return out;
}

}  // namespace

LegPower& LegPower::operator+=(const LegPower& other) {
  for (std::size_t k = 0; k < 2; ++k) {
    leg[k] += other.leg[k];
    lineToNeutral[k] += other.lineToNeutral[k];
  }
  return *this;
}

LegPower operator*(const LegPower& power, double factor) {
  LegPower out;
  for (std::size_t k = 0; k < 2; ++k) {
    out.leg[k] = power.leg[k] * factor;
    out.lineToNeutral[k] = power.lineToNeutral[k] * factor;
  }
  return out;
}

LegPower onLegs(const ComplexPower& power, Connection connection, Leg leg, const SystemVoltages& system) {
  LegPower out;
  if (connection == Connection::lineToNeutral) {
    out.leg[index(leg)] = power;
    out.lineToNeutral[index(leg)] = power;
  } else if (system.wye) {
    const Phasor v1(system.legToNeutral.count(), 0.0);
    const Phasor v2 = voltsOfL2(system, system.order != WyeOrder::l2Leads);
    const Phasor s = phasor(power);
    out.leg[0] = complexPower(s * v1 / (v1 - v2));
    out.leg[1] = complexPower(s * -v2 / (v1 - v2));
  } else if (!system.single) {
    out.leg[0] = out.leg[1] = power * 0.5;
  }
  return out;
}

WyeOrder orderTaken(const LegPower& power, const SystemVoltages& system) {
  if (!system.wye || system.order != WyeOrder::unknown) return system.order;
  const AcAmperes lagging = currentsIn(power, system, true).neutralMagnitude();
  return currentsIn(reordered(power), system, false).neutralMagnitude() > lagging ? WyeOrder::l2Leads
                                                                                  : WyeOrder::l2Lags;
}

WyeOrder orderOfLeg(const LegPower& power, const SystemVoltages& system, Leg leg) {
  if (!system.wye || system.order != WyeOrder::unknown) return system.order;
  const VoltAmperes lagging = power.leg[index(leg)].apparent();
  return reordered(power).leg[index(leg)].apparent() > lagging ? WyeOrder::l2Leads : WyeOrder::l2Lags;
}

LegPower inOrder(const LegPower& power, const SystemVoltages& system, WyeOrder order) {
  const bool otherWay = system.wye && system.order == WyeOrder::unknown && order == WyeOrder::l2Leads;
  return otherWay ? reordered(power) : power;
}

ComplexPower legPower(const LegPower& power, const SystemVoltages& system, Leg leg) {
  return inOrder(power, system, orderOfLeg(power, system, leg)).leg[index(leg)];
}

AcAmperes legCurrent(const LegPower& power, const SystemVoltages& system, Leg leg) {
  return legPower(power, system, leg).apparent() / system.legToNeutral;
}

Currents currents(const LegPower& power, const SystemVoltages& system) {
  const WyeOrder order = orderTaken(power, system);
  return currentsIn(inOrder(power, system, order), system, order != WyeOrder::l2Leads);
}

}  // namespace stayalight
