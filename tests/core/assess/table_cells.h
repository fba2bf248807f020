#pragma once

// Every cell of the tables with the changes that are tried on it: a figure by a twentieth up and down, a
// count or a rating by one, a size by one size. Blank cells and the keys of rows (sizes, letters, names) are
// no cells; the figures of the load calculation have a test of their own, tests/core/demand/cells_test.cpp.

#include <algorithm>
#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "core/code/conductors.h"

namespace stayalight::cells {

struct Cell {
  std::string table;
  std::string name;
  std::vector<std::function<void(Tables&)>> changes;
};

class List {
 public:
  std::vector<Cell> all;

  template <class Member>
  void figure(const std::string& table, const std::string& name, Member member) {
    const double value = read(member);
    if (value <= 0.0) return;
    add(
        table, name, [member, value](Tables& tables) { member(tables) = value * 1.05; },
        [member, value](Tables& tables) { member(tables) = value * 0.95; });
  }
  /// By `step`, up and down.
  template <class Member, class Step>
  void stepped(const std::string& table, const std::string& name, Member member, Step step) {
    const auto value = read(member);
    if (value == 0) return;
    add(
        table, name, [member, value, step](Tables& tables) { member(tables) = value + step; },
        [member, value, step](Tables& tables) { member(tables) = value - step; });
  }
  template <class Member>
  void count(const std::string& table, const std::string& name, Member member) {
    const auto value = read(member);
    if (value == 0) return;
    add(
        table, name, [member, value](Tables& tables) { member(tables) = value + 1; },
        [member, value](Tables& tables) { member(tables) = value - 1; });
  }
  /// By one size, up and down where there is one.
  template <class Member>
  void size(const std::string& table, const std::string& name, Member member) {
    const auto value = static_cast<int>(read(member));
    Cell cell{table, name, {}};
    for (const int changed : {value + 1, value - 1}) {
      if (changed >= 0 && changed < static_cast<int>(kConductorSizeCount))
        cell.changes.push_back(
            [member, changed](Tables& tables) { member(tables) = static_cast<ConductorSize>(changed); });
    }
    all.push_back(std::move(cell));
  }
  template <class Member>
  void edition(const std::string& table, const std::string& name, Member member) {
    const Edition value = read(member);
    add(
        table, name,
        [member, value](Tables& tables) {
          member(tables) = value == Edition::y2017 ? Edition::y2020 : Edition::y2017;
        },
        [member, value](Tables& tables) {
          member(tables) = value == Edition::y2026 ? Edition::y2023 : Edition::y2026;
        });
  }

 private:
  template <class Member>
  static auto read(Member member) {
    Tables tables = publishedTables();
    return member(tables);
  }
  template <class Up, class Down>
  void add(const std::string& table, const std::string& name, Up up, Down down) {
    all.push_back({table, name, {std::move(up), std::move(down)}});
  }
};

inline std::vector<Cell> cells() {
  List list;
  const std::string metals[] = {"Cu", "Al"};
  for (std::size_t s = 0; s < kConductorSizeCount; ++s) {
    const std::string name = std::string(stayalight::name(static_cast<ConductorSize>(s)));
    for (std::size_t m = 0; m < 2; ++m) {
      for (std::size_t c = 0; c < 3; ++c) {
        list.stepped(
            "ampacity", name + " " + metals[m] + " column " + std::to_string(c),
            [=](Tables& t) -> double& { return t.ampacity[s].amperes[m][c]; }, 5.0);
        const double r = publishedTables().impedance[s].resistance[m][c];
        list.stepped(
            "conductor_impedance", name + " " + metals[m] + " resistance " + std::to_string(c),
            [=](Tables& t) -> double& { return t.impedance[s].resistance[m][c]; },
            std::max(r * 0.05, r < 0.1   ? 0.001
                               : r < 1.0 ? 0.01
                                         : 0.1));
      }
      list.figure("conductor_properties", name + " " + metals[m] + " resistance",
                  [=](Tables& t) -> double& { return t.properties[s].ohmsPerKilofoot[m]; });
      list.figure("conductor_areas", name + " insulation " + std::to_string(m),
                  [=](Tables& t) -> double& { return t.conductorAreas[s].insulated[m]; });
    }
    // The column of aluminium raceways is that of plastic ones, which the table prints as one.
    for (const std::size_t c : {std::size_t{0}, std::size_t{1}, std::size_t{2}})
      list.figure("conductor_impedance", name + " reactance " + std::to_string(c),
                  [=](Tables& t) -> double& { return t.impedance[s].reactance[c]; });
    list.figure("conductor_properties", name + " circular mils",
                [=](Tables& t) -> double& { return t.properties[s].circularMils; });
    list.figure("conductor_properties", name + " mm2",
                [=](Tables& t) -> double& { return t.properties[s].squareMillimetres; });
  }
  const Tables& published = publishedTables();
  for (std::size_t r = 0; r < published.ambient.size(); ++r) {
    const std::string row = "row " + std::to_string(r);
    list.figure("ambient_correction", row + " end",
                [=](Tables& t) -> double& { return t.ambient[r].upToCelsius; });
    for (std::size_t c = 0; c < 3; ++c)
      list.figure("ambient_correction", row + " column " + std::to_string(c),
                  [=](Tables& t) -> double& { return t.ambient[r].factor[c]; });
  }
  for (std::size_t r = 0; r < published.adjustment.size(); ++r) {
    const std::string row = "row " + std::to_string(r);
    list.count("adjustment", row + " to", [=](Tables& t) -> int& { return t.adjustment[r].to; });
    list.figure("adjustment", row + " percent",
                [=](Tables& t) -> double& { return t.adjustment[r].percent; });
  }
  for (std::size_t r = 0; r < published.ratings.size(); ++r) {
    const std::string row = std::to_string(published.ratings[r].amperes) + " A";
    list.stepped(
        "standard_ratings", row, [=](Tables& t) -> std::int32_t& { return t.ratings[r].amperes; }, 5);
    list.edition("standard_ratings", row + " since",
                 [=](Tables& t) -> Edition& { return t.ratings[r].since; });
  }
  for (std::size_t r = 0; r < published.smallConductors.size(); ++r)
    list.count("small_conductors", "row " + std::to_string(r),
               [=](Tables& t) -> std::int32_t& { return t.smallConductors[r].amperes; });
  for (std::size_t r = 0; r < published.grounding.size(); ++r) {
    const std::string row = std::to_string(published.grounding[r].deviceUpTo) + " A";
    list.count("grounding_conductors", row,
               [=](Tables& t) -> std::int32_t& { return t.grounding[r].deviceUpTo; });
    for (std::size_t m = 0; m < 2; ++m)
      list.size("grounding_conductors", row + " " + metals[m],
                [=](Tables& t) -> ConductorSize& { return t.grounding[r].size[m]; });
  }
  for (std::size_t r = 0; r < published.electrode.size(); ++r) {
    const std::string row = "row " + std::to_string(r);
    for (std::size_t m = 0; m < 2; ++m) {
      if (published.electrode[r].upTo[m])
        list.size("electrode_conductors", row + " " + metals[m],
                  [=](Tables& t) -> ConductorSize& { return *t.electrode[r].upTo[m]; });
    }
    list.size("electrode_conductors", row + " electrode",
              [=](Tables& t) -> ConductorSize& { return t.electrode[r].copper; });
  }
  for (std::size_t r = 0; r < published.fullLoad.size(); ++r) {
    const std::string row = std::string(published.fullLoad[r].name) + " hp";
    list.figure("motor_full_load", row, [=](Tables& t) -> double& { return t.fullLoad[r].horsepower; });
    list.figure("motor_locked_rotor", row, [=](Tables& t) -> double& { return t.lockedRotor[r].horsepower; });
    for (std::size_t c = 0; c < 4; ++c) {
      const std::string cell = row + " column " + std::to_string(c);
      list.figure("motor_full_load", cell, [=](Tables& t) -> double& { return t.fullLoad[r].amperes[c]; });
      list.figure("motor_locked_rotor", cell,
                  [=](Tables& t) -> double& { return t.lockedRotor[r].amperes[c]; });
    }
  }
  for (std::size_t r = 0; r < published.codeLetters.size(); ++r) {
    const std::string row(1, published.codeLetters[r].letter);
    list.figure("motor_code_letters", row + " least",
                [=](Tables& t) -> double& { return t.codeLetters[r].least; });
    list.figure("motor_code_letters", row + " most",
                [=](Tables& t) -> double& { return t.codeLetters[r].most; });
  }
  for (std::size_t r = 0; r < published.racewayAreas.size(); ++r) {
    for (std::size_t s = 0; s < 8; ++s)
      list.figure("raceway_areas", "type " + std::to_string(r) + " size " + std::to_string(s),
                  [=](Tables& t) -> double& { return t.racewayAreas[r].area[s]; });
  }
  for (std::size_t r = 0; r < published.racewayFill.size(); ++r) {
    const std::string row = "row " + std::to_string(r);
    list.count("raceway_fill", row + " to", [=](Tables& t) -> int& { return t.racewayFill[r].to; });
    list.figure("raceway_fill", row + " percent",
                [=](Tables& t) -> double& { return t.racewayFill[r].percent; });
  }
  for (std::size_t r = 0; r < published.boxConductors.size(); ++r)
    list.figure("box_conductor_volumes", "row " + std::to_string(r),
                [=](Tables& t) -> double& { return t.boxConductors[r].cubicInches; });
  for (std::size_t r = 0; r < published.boxVolumes.size(); ++r)
    list.figure("box_volumes", "row " + std::to_string(r),
                [=](Tables& t) -> double& { return t.boxVolumes[r]; });
  for (std::size_t n = 0; n < published.numbers.size(); ++n) {
    const auto which = static_cast<CodeNumber>(n);
    const auto member = [=](Tables& t) -> double& { return t.numbers[n]; };
    // A size by its place in the list of sizes, a column by its temperature, a count of wires by one.
    if (which == CodeNumber::terminalSize || which == CodeNumber::rodElectrodeSize ||
        which == CodeNumber::boxGroundsTogether) {
      list.count("code_numbers", std::string(kCodeNumberKeys[n]), member);
    } else if (which == CodeNumber::nmColumn) {
      list.all.push_back(
          {"code_numbers", std::string(kCodeNumberKeys[n]), {[=](Tables& t) { member(t) = 75.0; }}});
    } else {
      list.figure("code_numbers", std::string(kCodeNumberKeys[n]), member);
    }
  }
  return list.all;
}

}  // namespace stayalight::cells
