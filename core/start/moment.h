#pragma once

// Motors that start together, looked at in each moment that matters: when the first of them is up to speed,
// the next, and so on. In each the rest still stand at locked rotor and those that are up run.

#include "core/start/motor.h"

namespace stayalight {

struct StartLimits {
  const InverterLimits& inverter;
  const Inverter& unit;
  const Battery& battery;
};
/// Efficiency that a start is divided by: marginal, else the label's curve at full load.
[[nodiscard]] std::optional<Fraction> startEfficiency(const Inverter& inverter);
/// What all units draw besides, with nothing on; none with a label's curve, which has it inside.
[[nodiscard]] BatteryWatts startIdle(const Inverter& inverter);
/// What the packs give for that long: the peak up to its time, else the continuous current; none where not
/// entered.
[[nodiscard]] std::optional<DcAmperes> batteryLimit(const Battery& battery, Seconds duration);

/// What one motor adds in a moment, for one end of its range.
struct Addition {
  std::array<AcAmperes, 2> leg;
  VoltAmperes apparent;
  Watts watts;
  bool locked = true;
};
[[nodiscard]] Addition additionOf(const RecordedStart& start, const Draw& draw, bool high, bool locked,
                                  const SystemVoltages& system);
/// Those of `set` in the moment in which `set[moment]` is about to be up to speed.
[[nodiscard]] std::vector<Addition> additionsAt(const std::vector<const RecordedStart*>& set,
                                                std::size_t moment, bool high, const std::vector<Draw>& draws,
                                                const SystemVoltages& system);

struct CheckedSet {
  StartCheck check;
  std::array<std::size_t, 2> moment{};  ///< index into the set of the moment that governs each leg
};
/// The set on a base: each figure is that of its worst moment.
[[nodiscard]] CheckedSet checkSet(const std::vector<const RecordedStart*>& set, const Base& base,
                                  const std::vector<Draw>& draws, const SystemVoltages& system,
                                  const StartLimits& limits);
/// Margins of all figures over their limits, smallest first; none where nothing has a limit.
[[nodiscard]] std::vector<double> sortedMargins(const StartCheck& check);

}  // namespace stayalight
