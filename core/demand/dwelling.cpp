// Methods for conductors that carry a whole dwelling: 220.82, 220.83, 220.87.

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "core/demand/record.h"

namespace stayalight {
namespace {

using namespace demanding;

constexpr MessageId kLighting{"demand.line.lighting"};
constexpr MessageId kSmallAppliance{"demand.line.small_appliance"};
constexpr MessageId kLaundry{"demand.line.laundry"};
constexpr MessageId kItem{"demand.line.item"};
constexpr MessageId kItemLeftOut{"demand.line.item_left_out"};
constexpr MessageId kPartFirst{"demand.line.part_first"};
constexpr MessageId kPartRest{"demand.line.part_rest"};
constexpr MessageId kCharger{"demand.line.vehicle_charger"};
constexpr MessageId kCharging{"demand.line.charging"};
constexpr MessageId kAir{"demand.line.cooling"};
constexpr MessageId kHeatPump{"demand.line.heat_pump"};
constexpr MessageId kHeatPumpWith{"demand.line.heat_pump_with_heat"};
constexpr MessageId kHeatFew{"demand.line.heat_few"};
constexpr MessageId kHeatMany{"demand.line.heat_many"};
constexpr MessageId kHeatContinuous{"demand.line.heat_continuous"};
constexpr MessageId kAdded{"demand.line.climate_added"};
constexpr MessageId kLeftOut{"demand.line.left_out"};
constexpr MessageId kMaximum{"demand.line.maximum_demand"};
constexpr MessageId kNewLoad{"demand.line.new_load"};
constexpr MessageId kNewCircuits{"demand.line.new_circuits"};

double of(const DemandItem& item) { return item.rating.value_or(VoltAmperes()).count(); }
double of(const std::vector<const DemandItem*>& items) {
  double sum = 0.0;
  for (const DemandItem* item : items) sum += of(*item);
  return sum;
}

// Heating and cooling as one of the ways it can be counted.
struct Climate {
  Message what;
  RuleId rule;
  std::vector<const DemandItem*> items;
  double gross = 0.0;
  double continuous = 0.0;  // of the gross
  double load = 0.0;
  std::optional<double> factor;
  bool confirmed = true;
  StepIndex step = kNoStep;
};

class Dwelling {
 public:
  Dwelling(const DemandQuestion& question, Working* working, const Tables& tables)
      : question_(question), working_(working), figures_(question.edition, tables, working != nullptr) {}

  DemandCalculation optional() {
    Part general = generalLighting();
    for (const DemandItem& item : question_.items) {
      if (isClimate(item.loadClass)) continue;
      if (item.loadClass == LoadClass::vehicleCharger &&
          demandFigure(DemandKey::vehicleChargerUnknown, question_.edition, figures_.tables())) {
        continue;  // outside the steps, below
      }
      addItem(general, item, RuleId{"load.optional"});
    }
    steps(general, DemandKey::optionalFirst, DemandKey::optionalRest);
    chargersOutside();
    const std::vector<Climate> ways = optionalClimate();
    const Climate* largest = nullptr;
    for (const Climate& way : ways) {
      if (largest == nullptr || way.load > largest->load) largest = &way;
    }
    double continuous = 0.0;
    for (const Climate& way : ways) {
      addClimate(way, &way == largest);
      continuous = std::max(continuous, way.continuous);
    }
    out_.continuous += VoltAmperes(continuous);
    return finish();
  }

  DemandCalculation existing() {
    Part general = generalLighting();
    const double from = figures_(DemandKey::existingHeatManyFrom);
    const bool fewHeaters = controls() < from;
    const bool added =
        std::any_of(question_.items.begin(), question_.items.end(),
                    [](const DemandItem& item) { return item.added && isClimate(item.loadClass); });
    for (const DemandItem& item : question_.items) {
      if (!isClimate(item.loadClass)) addItem(general, item, RuleId{"load.existing"});
    }
    const Climate heating =
        group({LoadClass::spaceHeating, LoadClass::supplementalHeat, LoadClass::heatPump});
    const Climate cooling = group({LoadClass::airConditioning, LoadClass::heatPump});
    const Climate& larger = heating.gross >= cooling.gross ? heating : cooling;
    const Climate& smaller = heating.gross >= cooling.gross ? cooling : heating;
    // Four and more heaters count with the other load.
    const bool outside = added && (&larger == &cooling || fewHeaters);
    if (!outside) {
      for (const DemandItem* item : larger.items) addItem(general, *item, RuleId{"load.noncoincident"});
    }
    // Either can run, so the larger of their continuous parts counts.
    const double continuous = std::max(heating.continuous, cooling.continuous);
    if (outside)
      out_.continuous += VoltAmperes(continuous);
    else
      general.continuous += continuous - larger.continuous;
    for (const DemandItem* item : smaller.items) {
      if (std::find(larger.items.begin(), larger.items.end(), item) == larger.items.end())
        addLine(out_, say(kItemLeftOut, item->name), RuleId{"load.noncoincident"}, VoltAmperes(of(*item)));
    }
    steps(general, DemandKey::existingFirst, DemandKey::existingRest);
    if (outside && !larger.items.empty()) {
      const double factor = figures_(DemandKey::existingAdded);
      Climate way = larger;
      way.what = say(kAdded);
      way.rule = RuleId{"load.existing"};
      way.factor = factor;
      way.load = way.gross * factor;
      way.confirmed = figures_.confirmed();
      way.step =
          shareStep(way.items, factor, figures_.cell(DemandKey::existingAdded), way.rule, way.load, way.what);
      addClimate(way, true);
    }
    return finish();
  }

  DemandCalculation metered(VoltAmperes maximum, bool withNew) {
    const RuleId rule{"load.metered"};
    const double factor = figures_(DemandKey::meteredFactor);
    DemandLine& line = addLine(out_, say(kMaximum), rule, maximum, 0);
    line.factor = Fraction(factor);
    line.load = maximum * factor;
    line.confirmed = figures_.confirmed();
    line.step = record(working_, "demand.share_of_sum", rule, line.load->count(), "VA",
                       {figures_.input("f", DemandKey::meteredFactor, factor),
                        input("S", maximum.count(), "VA", kNoStep, "metered maximum demand")},
                       line.what);
    if (withNew) {
      for (const DemandItem& item : question_.items) {
        if (!item.added) continue;
        double load = of(item);
        if (!item.rating)
          load = figures_.take(
              demandFigure(DemandKey::vehicleChargerUnknown, question_.edition, figures_.tables()), rule);
        DemandLine& fresh = addLine(out_, say(kNewLoad, item.name), rule, VoltAmperes(load));
        fresh.factor = Fraction(1.0);
        fresh.load = VoltAmperes(load);
        fresh.confirmed = figures_.confirmed();
        fresh.step = record(
            working_, "demand.share_of_sum", rule, load, "VA",
            {input("f", 1.0, "", kNoStep, "counted in full"), input("S", load, "VA", kNoStep, item.name)},
            fresh.what);
        if (item.continuous) out_.continuous += VoltAmperes(load);
      }
      const double unit = figures_(DemandKey::lightingUnit),
                   each = figures_(DemandKey::smallApplianceCircuit);
      const double circuits = question_.addedArea.count() * unit + question_.addedCircuits * each;
      if (circuits > 0.0) {
        DemandLine& fresh = addLine(out_, say(kNewCircuits), rule, VoltAmperes(circuits));
        fresh.load = VoltAmperes(circuits);
        fresh.confirmed = figures_.confirmed();
        fresh.step = record(working_, "demand.new_circuits", rule, circuits, "VA",
                            {input("a", question_.addedArea.count(), "ft2", kNoStep, "area of new circuits"),
                             figures_.input("u", DemandKey::lightingUnit, unit),
                             input("n", question_.addedCircuits, "", kNoStep, "new circuits"),
                             figures_.input("s", DemandKey::smallApplianceCircuit, each)},
                            fresh.what);
      }
      charging();
    }
    conclude(out_, question_, figures_, working_);
    return std::move(out_);
  }

 private:
  struct Part {
    double gross = 0.0;
    double continuous = 0.0;
    std::vector<StepInput> inputs;
  };

  static bool isClimate(LoadClass loadClass) {
    return loadClass == LoadClass::spaceHeating || loadClass == LoadClass::supplementalHeat ||
           loadClass == LoadClass::heatPump || loadClass == LoadClass::airConditioning;
  }
  [[nodiscard]] double controls() const {
    double count = 0.0;
    for (const DemandItem& item : question_.items) {
      if (item.loadClass == LoadClass::spaceHeating) count += std::max(1, item.controls);
    }
    return count;
  }
  StepIndex shareStep(const std::vector<const DemandItem*>& items, double factor, std::string from,
                      RuleId rule, double result, Message note) {
    std::vector<StepInput> inputs{input("f", factor, "", kNoStep, std::move(from))};
    for (const DemandItem* item : items) inputs.push_back(ratingOf(*item));
    return record(working_, "demand.share_of_sum", rule, result, "VA", std::move(inputs), std::move(note));
  }

  Part generalLighting() {
    Part part;
    const double unit = figures_(DemandKey::lightingUnit);
    const double area = question_.area[0].count() + question_.area[1].count();
    DemandLine& line =
        addLine(out_, say(kLighting, Figure{area, "ft\u00b2", 0}, Figure{unit, "VA/ft\u00b2", 0}),
                ruleOf(DemandKey::lightingUnit), VoltAmperes(area * unit), 0);
    line.confirmed = figures_.confirmed();
    line.step = record(
        working_, "demand.lighting", line.rule, area * unit, "VA",
        {figures_.input("u", DemandKey::lightingUnit, unit), input("a", area, "ft2", kNoStep, "floor area")},
        line.what);
    part.gross = area * unit;
    part.inputs.push_back(input("S", area * unit, "VA", line.step, ""));
    if (line.step == kNoStep) part.inputs.back().from = "general lighting";
    const auto circuits = [&](const std::array<double, 2>& count, DemandKey key, MessageId what) {
      const double total = count[0] + count[1];
      const double each = figures_(key);
      DemandLine& row = addLine(out_, say(what, Figure{each, "VA", 0}), ruleOf(key),
                                VoltAmperes(total * each), static_cast<std::int32_t>(std::lround(total)));
      row.confirmed = figures_.confirmed();
      row.step =
          record(working_, "demand.circuits", row.rule, total * each, "VA",
                 {input("n", total, "", kNoStep, "circuits of this kind; " + figures_.cell(leastOf(key))),
                  figures_.input("s", key, each)},
                 row.what);
      part.gross += total * each;
      part.inputs.push_back(input("S", total * each, "VA", row.step, "circuits"));
    };
    circuits(question_.smallAppliance, DemandKey::smallApplianceCircuit, kSmallAppliance);
    circuits(question_.laundry, DemandKey::laundryCircuit, kLaundry);
    return part;
  }

  void addItem(Part& part, const DemandItem& item, RuleId rule) {
    addLine(out_, say(kItem, item.name), rule, VoltAmperes(of(item)));
    part.gross += of(item);
    if (item.continuous) part.continuous += of(item);
    part.inputs.push_back(ratingOf(item));
  }

  void steps(Part& part, DemandKey firstKey, DemandKey restKey) {
    const double first = figures_(firstKey), rest = figures_(restKey);
    const bool sure = figures_.confirmed();
    const RuleId rule = ruleOf(firstKey);
    const StepIndex sum = record(working_, "demand.total", rule, part.gross, "VA", std::move(part.inputs));
    const double low = std::min(part.gross, first), high = std::max(0.0, part.gross - first);
    DemandLine& one = addLine(out_, say(kPartFirst, Figure{first, "VA", 0}), rule, VoltAmperes(low), 0);
    one.factor = Fraction(1.0);
    one.load = VoltAmperes(low);
    one.confirmed = sure;
    one.step = record(working_, "demand.step_first", rule, low, "VA",
                      {input("f", 1.0, "", kNoStep, "counted in full"), input("S", part.gross, "VA", sum, ""),
                       figures_.input("B", firstKey, first)},
                      one.what);
    DemandLine& two = addLine(out_, say(kPartRest), rule, VoltAmperes(high), 0);
    two.factor = Fraction(rest);
    two.load = VoltAmperes(high * rest);
    two.confirmed = sure;
    two.step = record(working_, "demand.step_above", rule, high * rest, "VA",
                      {figures_.input("f", restKey, rest), input("S", part.gross, "VA", sum, ""),
                       figures_.input("A", firstKey, first)},
                      two.what);
    // Continuous loads are in the sum with all others; in full they are on the safe side.
    out_.continuous += VoltAmperes(std::min(part.continuous, low + high * rest));
  }

  // 2026: reported as counted in full beside the steps; pages disagree.
  void chargersOutside() {
    const auto unknown = demandFigure(DemandKey::vehicleChargerUnknown, question_.edition, figures_.tables());
    if (!unknown) return;
    for (const DemandItem& item : question_.items) {
      if (item.loadClass != LoadClass::vehicleCharger) continue;
      const double load = item.rating ? of(item) : unknown->value;
      const RuleId rule = ruleOf(DemandKey::vehicleChargerUnknown);
      DemandLine& line = addLine(out_, say(kCharger, item.name), rule, VoltAmperes(load));
      line.factor = Fraction(1.0);
      line.load = VoltAmperes(load);
      line.confirmed = false;
      line.step = record(
          working_, "demand.share_of_sum", rule, load, "VA",
          {input("f", 1.0, "", kNoStep, "counted in full"), input("S", load, "VA", kNoStep, item.name)},
          line.what);
      out_.continuous += VoltAmperes(load);
    }
  }

  [[nodiscard]] Climate group(std::initializer_list<LoadClass> classes) const {
    Climate way;
    for (const DemandItem& item : question_.items) {
      if (std::find(classes.begin(), classes.end(), item.loadClass) == classes.end()) continue;
      way.items.push_back(&item);
      way.gross += of(item);
      if (item.continuous) way.continuous += of(item);
    }
    return way;
  }

  std::vector<Climate> optionalClimate() {
    std::vector<Climate> ways;
    const RuleId rule{"load.optional_climate"};
    const auto add = [&](Climate way, MessageId what, DemandKey key) {
      if (way.items.empty()) return;
      const double factor = figures_(key);
      way.what = say(what);
      way.rule = rule;
      way.factor = factor;
      way.load = way.gross * factor;
      way.confirmed = figures_.confirmed();
      way.step = shareStep(way.items, factor, figures_.cell(key), rule, way.load, way.what);
      ways.push_back(std::move(way));
    };
    add(group({LoadClass::airConditioning}), kAir, DemandKey::optionalAirConditioning);
    const Climate pump = group({LoadClass::heatPump}), elements = group({LoadClass::supplementalHeat});
    if (elements.items.empty()) {
      add(pump, kHeatPump, DemandKey::optionalHeatPump);
    } else {
      Climate both = group({LoadClass::heatPump, LoadClass::supplementalHeat});
      const double whole = figures_(DemandKey::optionalHeatPump),
                   part = figures_(DemandKey::optionalSupplemental);
      both.what = say(kHeatPumpWith);
      both.rule = rule;
      both.load = pump.gross * whole + elements.gross * part;
      both.confirmed = figures_.confirmed();
      std::vector<StepInput> inputs;
      for (const DemandItem* item : both.items) {
        const bool element = item->loadClass == LoadClass::supplementalHeat;
        inputs.push_back(ratingOf(*item));
        inputs.push_back(
            figures_.input("f", element ? DemandKey::optionalSupplemental : DemandKey::optionalHeatPump,
                           element ? part : whole));
      }
      both.step = record(working_, "demand.sum_of_shares", rule, both.load, "VA", std::move(inputs));
      ways.push_back(std::move(both));
    }
    Climate heaters = group({LoadClass::spaceHeating}), continuous;
    for (auto at = heaters.items.begin(); at != heaters.items.end();) {
      if (!(*at)->continuous) {
        ++at;
        continue;
      }
      continuous.items.push_back(*at);
      continuous.gross += of(**at);
      at = heaters.items.erase(at);
    }
    heaters.gross = of(heaters.items);
    continuous.continuous = std::exchange(heaters.continuous, 0.0);
    double count = 0.0;
    for (const DemandItem* item : heaters.items) count += std::max(1, item->controls);
    const bool many = count >= figures_(DemandKey::optionalHeatManyFrom);
    add(heaters, many ? kHeatMany : kHeatFew,
        many ? DemandKey::optionalHeatMany : DemandKey::optionalHeatFew);
    add(continuous, kHeatContinuous, DemandKey::optionalHeatContinuous);
    return ways;
  }

  void addClimate(const Climate& way, bool counts) {
    for (const DemandItem* item : way.items)
      addLine(out_, say(counts ? kItem : kItemLeftOut, item->name), way.rule, VoltAmperes(of(*item)));
    DemandLine& line = addLine(out_, counts ? way.what : say(kLeftOut, std::vector<Message>{way.what}),
                               way.rule, VoltAmperes(way.gross), static_cast<std::int32_t>(way.items.size()));
    if (way.factor) line.factor = Fraction(*way.factor);
    line.confirmed = way.confirmed;
    line.step = way.step;
    if (counts) line.load = VoltAmperes(way.load);
  }

  void charging() {
    if (!question_.charging || question_.charging->count() <= 0.0) return;
    const RuleId rule{"practice.charging_load"};
    DemandLine& line = addLine(out_, say(kCharging), rule, *question_.charging, 0);
    line.factor = Fraction(1.0);
    line.load = *question_.charging;
    line.step =
        record(working_, "demand.share_of_sum", rule, question_.charging->count(), "VA",
               {input("f", 1.0, "", kNoStep, "counted in full"),
                input("S", question_.charging->count(), "VA", kNoStep, "charge limit of all inverters")},
               line.what);
    out_.continuous += *question_.charging;
  }

  // The neutral of every method is that of 220.61, from the demand of the standard method, whose steps show
  // it.
  DemandCalculation finish() {
    charging();
    const DemandCalculation standard = standardLoad(question_, nullptr, figures_.tables());
    const VoltAmperes net[] = {standard.leg[0].neutral, standard.leg[1].neutral};
    conclude(out_, question_, figures_, working_);
    for (std::size_t leg = 0; leg < 2; ++leg) out_.leg[leg].neutral = net[leg];
    out_.neutral = standard.neutral;
    return std::move(out_);
  }

  const DemandQuestion& question_;
  Working* working_;
  Figures figures_;
  DemandCalculation out_;
};

}  // namespace

DemandCalculation optionalLoad(const DemandQuestion& question, Working* working, const Tables& tables) {
  return Dwelling(question, working, tables).optional();
}
DemandCalculation existingLoad(const DemandQuestion& question, Working* working, const Tables& tables) {
  return Dwelling(question, working, tables).existing();
}
DemandCalculation meteredLoad(VoltAmperes maximumDemand, const DemandQuestion& question, bool withNew,
                              Working* working, const Tables& tables) {
  return Dwelling(question, working, tables).metered(maximumDemand, withNew);
}

}  // namespace stayalight
