#pragma once

// The ungrounded conductors of one segment: two tests of ampacity, and whether the device protects them.

#include "core/code/conductors.h"
#include "core/wiring/wiring.h"

namespace stayalight {

/// How a run is built and where it lies.
struct RunConditions {
  Metal metal = Metal::copper;
  TemperatureColumn insulation = TemperatureColumn::c90;
  bool nmCable = false;
  RacewayMaterial raceway = RacewayMaterial::pvc;
  Length length;
  Temperature ambient = Temperature::milliCelsius(30000);
  std::int32_t currentCarrying = 2;
  bool terminals75 = false;  ///< both ends are marked for 75 C
};
/// Of an entered run, or of none: THHN-class copper, 30 C, alone in a plastic raceway, terminals not marked.
/// On a wye the neutral counts, so that three conductors carry current at least.
[[nodiscard]] RunConditions runConditions(const FeederRun* run, bool wye);

/// Ampacity of one size under the conditions. Empty members: the tables have no such cell.
struct Ampacities {
  TemperatureColumn terminalColumn = TemperatureColumn::c60;
  std::optional<AcAmperes> terminal;  ///< of the terminal column, not derated
  std::optional<AcAmperes> derated;   ///< of the insulation's column × ambient × adjustment
  std::optional<Fraction> ambient;
  Fraction adjustment{1.0};
  std::optional<AcAmperes> governing;  ///< the lesser of both
};
/// Terminal column by 110.14(C): 60 C up to terminalCurrent() (by size where the device is not known) unless
/// both ends are marked 75 C, else 75 C; never above the insulation, nor above nmColumn() in NM cable.
[[nodiscard]] Ampacities ampacities(ConductorSize size, const RunConditions& conditions,
                                    const std::optional<RatingAmperes>& device,
                                    const Tables& tables = publishedTables());

/// Does a device protect a conductor of this ampacity: at most the ampacity, or the next standard rating
/// above it up to nextSizeUpLimit() where `nextSizeUp` is allowed; and within the limit of a small conductor.
[[nodiscard]] bool protects(RatingAmperes device, ConductorSize size, Metal metal, AcAmperes ampacity,
                            bool nextSizeUp, Edition edition, const Tables& tables = publishedTables());

/// The device stands above the ampacity, and the next standard rating above it is what allows that
/// (240.4(B)).
[[nodiscard]] bool byNextSizeUp(const ConductorChoice& choice);

/// Writes down the three steps of an ampacity that all its tables give; `note` stands beside the last.
void recordAmpacity(Working& working, ConductorSize size, const RunConditions& conditions,
                    const Ampacities& found, Edition edition, const Tables& tables, const Message& note);

/// Writes down the largest device that 240.4(B) allows on this ampacity.
void recordNextSizeUp(Working& working, AcAmperes ampacity, Edition edition, const Tables& tables);

struct ConductorQuestion {
  std::optional<AcAmperes> terminalLoad;  ///< with 125 % on the continuous part: against the terminal column
  std::optional<AcAmperes> load;          ///< the load itself: against the derated ampacity
  std::optional<RatingAmperes> device;    ///< largest ahead of it
  std::optional<ConductorSize> fixed;
  RunConditions conditions;
};
/// The smallest size that passes both tests and is protected; a fixed one is tested instead. Without a load
/// the device alone decides, and then no next size up is taken.
[[nodiscard]] ConductorChoice chooseConductor(const ConductorQuestion& question, Edition edition,
                                              Working* working = nullptr,
                                              const Tables& tables = publishedTables());

}  // namespace stayalight
