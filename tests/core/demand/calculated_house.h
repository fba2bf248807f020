#pragma once

// The example house with every fact that the load calculation asks for. Made up.

#include "core/demand/demand.h"
#include "tests/core/example_plans.h"

namespace stayalight::calculated {

inline Load& load(Plan& plan, const char* circuit) {
  return example::editCircuit(plan, example::circuitNamed(plan, circuit)).loads.front();
}
inline Circuit& circuit(Plan& plan, const char* name) {
  return example::editCircuit(plan, example::circuitNamed(plan, name));
}

/// 1,500 ft2. On the backup subpanel: Lights (300 ft2, L1), Office (140 ft2, L2), Refrigerator (L1), Furnace
/// (L2), Well pump. On the main: two counters, Range, Water heater, Freezer.
inline Plan house() {
  Plan plan = example::exampleHouseMoved();
  plan.site.edit().floorArea = SquareFeet(1500);
  plan.site.edit().smallApplianceCircuits = 2;
  plan.site.edit().laundryCircuits = 1;
  circuit(plan, "Lights").calculationUse = CircuitUse::general;
  circuit(plan, "Lights").areaServed = SquareFeet(300);
  circuit(plan, "Office").calculationUse = CircuitUse::general;
  circuit(plan, "Office").areaServed = SquareFeet(140);
  for (const char* name : {"Counter A", "Counter B"})
    circuit(plan, name).calculationUse = CircuitUse::smallAppliance;
  struct Row {
    const char* name;
    LoadClass loadClass;
    double nameplate;
  };
  for (const Row& row :
       {Row{"Refrigerator", LoadClass::other, 240}, Row{"Furnace", LoadClass::motor, 720},
        Row{"Well pump", LoadClass::motor, 1320}, Row{"Range", LoadClass::cooking, 11000},
        Row{"Water heater", LoadClass::appliance, 4500}, Row{"Freezer", LoadClass::other, 300}}) {
    circuit(plan, row.name).calculationUse = CircuitUse::individual;
    load(plan, row.name).calculationClass = row.loadClass;
    load(plan, row.name).nameplate = VoltAmperes(row.nameplate);
  }
  return plan;
}

inline DemandFigures figures(const Plan& plan, Working* working = nullptr) {
  return demandFigures(plan, plan.site->edition.valueOr(Edition::y2023), inverterLimits(*plan.inverter),
                       working);
}
inline MethodFigures method(const DemandFigures& figures, DemandMethod wanted) {
  return figures.service.methods.at(static_cast<std::size_t>(wanted));
}
inline PathFigures path(const DemandFigures& figures, CapacityPath wanted) {
  return figures.paths.at(static_cast<std::size_t>(wanted) - 1);
}

}  // namespace stayalight::calculated
