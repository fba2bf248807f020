#pragma once

// Questions for the load calculation, built by hand.

#include <string>
#include <utility>

#include "core/demand/demand.h"

namespace stayalight::asking {

inline DemandItem item(LoadClass loadClass, double va, std::string name = "Load") {
  DemandItem made;
  made.name = std::move(name);
  made.loadClass = loadClass;
  made.rating = VoltAmperes(va);
  return made;
}
/// Between one leg and neutral.
inline DemandItem onLeg(DemandItem made, Leg leg) {
  made.leg = {leg == Leg::l1 ? 1.0 : 0.0, leg == Leg::l2 ? 1.0 : 0.0};
  made.neutral = true;
  return made;
}
inline DemandItem withNeutral(DemandItem made) {
  made.neutral = true;
  return made;
}
inline DemandItem motor(DemandItem made) {
  made.motor = true;
  return made;
}
inline DemandItem continuous(DemandItem made) {
  made.continuous = true;
  return made;
}
inline DemandItem added(DemandItem made) {
  made.added = true;
  return made;
}

/// A whole dwelling: area and circuits on both legs alike.
inline DemandQuestion dwelling(double squareFeet, double smallAppliance = 2, double laundry = 1,
                               Edition edition = Edition::y2023) {
  DemandQuestion question;
  question.edition = edition;
  question.area = {SquareFeet(squareFeet / 2), SquareFeet(squareFeet / 2)};
  question.smallAppliance = {smallAppliance / 2, smallAppliance / 2};
  question.laundry = {laundry / 2, laundry / 2};
  return question;
}

inline const DemandLine* lineOf(const DemandCalculation& calculation, std::string_view key) {
  for (const DemandLine& line : calculation.lines) {
    if (line.what.id.key == key) return &line;
  }
  return nullptr;
}
inline double loadOf(const DemandCalculation& calculation, std::string_view key) {
  double sum = 0.0;
  for (const DemandLine& line : calculation.lines) {
    if (line.what.id.key == key && line.load) sum += line.load->count();
  }
  return sum;
}
inline bool says(const std::vector<Message>& messages, std::string_view key) {
  for (const Message& message : messages) {
    if (message.id.key == key) return true;
  }
  return false;
}

}  // namespace stayalight::asking
