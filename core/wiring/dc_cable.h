#pragma once

// The cable between battery and inverter, and what protects it.

#include "core/wiring/conductor.h"

namespace stayalight {

struct DcCableFigures {
  std::optional<DcAmperes> current;   ///< of one unit: rated output at the lowest input voltage it is held at
  std::optional<AcAmperes> required;  ///< the same with continuousFactor(), for cable and device
  std::optional<RatingAmperes> device;  ///< in place, else of the instructions, else the next standard rating
  bool deviceTooSmall = false;          ///< one in place or of the instructions
  bool aboveInstructions = false;       ///< one in place larger than the listed instructions ask for
  Message deviceGoverns;
  RuleId deviceRule;
  /// By Table 310.16, or as the listed instructions say: then `byInstructions`. In free air the instructions
  /// alone give it, without an ampacity.
  ConductorChoice conductor;
  bool byInstructions = false;
  bool belowInstructions = false;      ///< a cable in place smaller than the listed instructions ask for
  std::optional<DcVolts> drop;         ///< both ways at `current`
  std::optional<double> dropFraction;  ///< of the lowest input voltage
  std::vector<Message> over;
  std::vector<Message> notKnown;
  Verdict verdict = Verdict::notKnown;
};
[[nodiscard]] WorkingSubject dcCableSubject();
/// The current is what the battery gives at rated output over the lowest input voltage; 125 % of it is held
/// against the terminal column and, on the safe side, against the adjusted ampacity too. Nothing where no
/// inverter is entered, or for a Canadian site.
[[nodiscard]] std::optional<DcCableFigures> dcCableFigures(const Plan& plan, Edition edition,
                                                           Working* working = nullptr,
                                                           const Tables& tables = publishedTables());

}  // namespace stayalight
