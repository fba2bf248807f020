#include "core/wiring/branch_load.h"

#include "core/demand/demand.h"

namespace stayalight {

bool countsAsContinuous(const Load& load) {
  const Choice<LoadClass>& what = load.calculationClass;
  const bool tank = load.catalogueId == "water_heater" && load.kind.is(LoadKind::resistance);
  return load.continuous || tank || what.is(LoadClass::spaceHeating) ||
         what.is(LoadClass::supplementalHeat) || what.is(LoadClass::vehicleCharger);
}

double rangeShare(VoltAmperes cooking, Edition edition, const Tables& tables) {
  const auto least = demandFigure(DemandKey::cookingCFrom, edition, tables);
  const double kilowatts = cooking.count() / 1000.0;
  if (!least || kilowatts <= least->value) return 1.0;
  const std::optional<CookingLoad> load = cookingLoad({kilowatts}, edition, nullptr, tables);
  return load ? load->load.count() / cooking.count() : 1.0;
}

}  // namespace stayalight
