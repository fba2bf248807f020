#pragma once

// Motor starts on top of the base load, against the inverter's overload curve and the battery's peak current.

#include "core/use/use.h"

namespace stayalight {

/// Where the start current is from.
enum class StartSource : std::uint8_t {
  nameplate,
  codeLetter,
  horsepowerTable,
  startClass,
  running,
  notKnown
};

/// A motor as it starts on a supply.
struct MotorStart {
  LoadId load;
  CircuitId circuit;
  StartKind kind = StartKind::acrossTheLine;
  StartSource source = StartSource::notKnown;
  Connection connection = Connection::lineToNeutral;
  std::array<bool, 2> onLeg{};
  Range<AcAmperes> current;  ///< locked rotor, scaled from the rated to the system's voltage; what flows on
                             ///< each leg it touches
  Range<VoltAmperes> apparent;  ///< current × nominal volts
  Range<Seconds> time;
  Range<double> powerFactor;
  bool automatic = true;
  bool known = true;  ///< false where only the class, or nothing, is known
};
/// Motors among the draws: loads whose start kind is not none. A variable speed drive starts at about its
/// running current. Locked-rotor amperes: nameplate, else code letter × horsepower (the upper end of the
/// letter's band), else the table by horsepower and voltage, else the class with its wide range.
[[nodiscard]] std::vector<MotorStart> motorStarts(const Plan& plan, const std::vector<Draw>& draws,
                                                  const SystemVoltages& system, Working* working = nullptr,
                                                  const Tables& tables = publishedTables());

/// One figure of a start held against its limit.
template <class Q>
struct StartFigure {
  Q averageBase, likelyBase, highBase;
  Q likelySum, highSum;
  std::optional<Q> likelyLimit;  ///< at the likely time
  std::optional<Q> highLimit;    ///< at the unfavourable (longer) time
  std::optional<Q> margin;       ///< unfavourable limit less unfavourable sum
  Seconds likelyTime, highTime;
  Verdict verdict = Verdict::notKnown;
};

/// A start, alone or with another, checked per leg in amperes and in total in VA and in W.
struct StartCheck {
  std::vector<LoadId> loads;  ///< one; two for a pair
  std::array<std::optional<StartFigure<AcAmperes>>, 2> leg;
  StartFigure<VoltAmperes> total;  ///< against the overload curve's total
  StartFigure<Watts> real;  ///< the same in W: start VA × the start's power factor on the watts of the others
  std::optional<StartFigure<DcAmperes>> battery;  ///< none where the battery's figures are not entered
  Verdict verdict = Verdict::notKnown;            ///< the worst of legs, total and battery (where known)
  Leg worstLeg = Leg::l1;                         ///< the leg with the smallest margin
  bool known = true;                              ///< every start current of it is better than a class
};

struct StartFigures {
  std::vector<MotorStart> motors;
  std::vector<StartCheck> checks;  ///< one a motor, same order
  std::optional<StartCheck>
      worstPair;  ///< of two automatic motors: smallest margin; none with fewer than two
  std::optional<StartCheck> allAtOnce;  ///< after a dead interval: at each start's own duration those still
                                        ///< starting at locked rotor, the rest running
};
/// Starts in the hour shown: base is the likely peak of all other loads; the average stands beside it.
[[nodiscard]] StartFigures startFigures(const Plan& plan, const HourLoads& hour, const InverterLimits& limits,
                                        Working* working = nullptr, const Tables& tables = publishedTables());
/// Nothing but its class, or nothing at all, tells the start current of a motor: no nameplate figure, no code
/// letter, no row of the locked-rotor table. A drive starts with about its running current and is none.
[[nodiscard]] bool startOnlyByClass(const Load& load, const Tables& tables = publishedTables());

}  // namespace stayalight
