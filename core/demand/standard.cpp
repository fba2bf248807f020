// Part III: the standard method.

#include <algorithm>
#include <cmath>
#include <string>

#include "core/code/numbers.h"
#include "core/demand/record.h"

namespace stayalight {
namespace {

using namespace demanding;

constexpr MessageId kLighting{"demand.line.lighting"};
constexpr MessageId kSmallAppliance{"demand.line.small_appliance"};
constexpr MessageId kLaundry{"demand.line.laundry"};
constexpr MessageId kStepFirst{"demand.line.step_first"};
constexpr MessageId kStepSecond{"demand.line.step_second"};
constexpr MessageId kStepThird{"demand.line.step_third"};
constexpr MessageId kItem{"demand.line.item"};
constexpr MessageId kItemLeftOut{"demand.line.item_left_out"};
constexpr MessageId kAppliances{"demand.line.appliances"};
constexpr MessageId kAppliancesMany{"demand.line.appliances_many"};
constexpr MessageId kAppliancesSmall{"demand.line.appliances_small"};
constexpr MessageId kDryers{"demand.line.dryers"};
constexpr MessageId kCooking{"demand.line.cooking"};
constexpr MessageId kCookingNote3{"demand.line.cooking_note_3"};
constexpr MessageId kCookingSmall{"demand.line.cooking_small"};
constexpr MessageId kCharger{"demand.line.vehicle_charger"};
constexpr MessageId kHeating{"demand.line.heating"};
constexpr MessageId kCooling{"demand.line.cooling"};
constexpr MessageId kMotor{"demand.line.motor"};
constexpr MessageId kOther{"demand.line.other"};
constexpr MessageId kLargestMotor{"demand.line.largest_motor"};
constexpr MessageId kCharging{"demand.line.charging"};
constexpr MessageId kManyDryers{"demand.refused_dryers"};
constexpr MessageId kManyCooking{"demand.refused_cooking"};

double kilo(VoltAmperes value) { return value.count() / 1000.0; }

bool heats(LoadClass loadClass) {
  return loadClass == LoadClass::spaceHeating || loadClass == LoadClass::supplementalHeat ||
         loadClass == LoadClass::heatPump;
}
bool cools(LoadClass loadClass) {
  return loadClass == LoadClass::airConditioning || loadClass == LoadClass::heatPump;
}

// One side of a comparison of loads that are not used together.
struct Group {
  VoltAmperes load, continuous, neutral;
  std::array<VoltAmperes, 2> legLoad, legContinuous, legNeutral;
  std::vector<const DemandItem*> items;
};

class Standard {
 public:
  Standard(const DemandQuestion& question, Working* working, const Tables& tables)
      : question_(question), working_(working), figures_(question.edition, tables, working != nullptr) {}

  DemandCalculation run() {
    lighting();
    appliances();
    dryers();
    cooking();
    chargers();
    climate();
    plain(LoadClass::motor, kMotor, RuleId{"load.largest_motor"});
    plain(LoadClass::other, kOther, RuleId{"load.calculation"});
    largestMotor();
    charging();
    legs();
    conclude(out_, question_, figures_, working_);
    if (refused_) out_.refused = refused_;
    return std::move(out_);
  }

 private:
  // A part of the calculation on the legs, the neutral and the continuous sum.
  void onLegs(const std::string& from, const std::array<double, 2>& load,
              const std::array<double, 2>& neutral, double continuousShare) {
    for (std::size_t leg = 0; leg < 2; ++leg) {
      out_.leg[leg].load += VoltAmperes(load[leg]);
      out_.leg[leg].continuous += VoltAmperes(load[leg] * continuousShare);
      out_.leg[leg].neutral += VoltAmperes(neutral[leg]);
      if (working_ == nullptr) continue;
      if (load[leg] > 0.0) loads_[leg].push_back(input("S", load[leg], "VA", kNoStep, from));
      if (load[leg] * continuousShare > 0.0)
        continuous_[leg].push_back(input("S", load[leg] * continuousShare, "VA", kNoStep, from));
      if (neutral[leg] > 0.0) neutrals_[leg].push_back(input("S", neutral[leg], "VA", kNoStep, from));
    }
  }
  [[nodiscard]] static double of(const DemandItem& item) {
    return item.rating.value_or(VoltAmperes()).count();
  }

  // An item that counts with `factor` of its nameplate.
  void counted(const DemandItem& item, double load) {
    const std::array<double, 2> onLeg{item.leg[0] * load, item.leg[1] * load};
    onLegs(item.name, onLeg, item.neutral ? onLeg : std::array<double, 2>{}, item.continuous ? 1.0 : 0.0);
    if (item.continuous) out_.continuous += VoltAmperes(load);
  }
  [[nodiscard]] std::vector<const DemandItem*> all(LoadClass loadClass) const {
    std::vector<const DemandItem*> list;
    for (const DemandItem& item : question_.items) {
      if (item.loadClass == loadClass) list.push_back(&item);
    }
    return list;
  }
  StepIndex sumOf(const std::vector<const DemandItem*>& items, double factor, std::string factorFrom,
                  RuleId rule, double result, Message note) {
    std::vector<StepInput> inputs{input("f", factor, "", kNoStep, std::move(factorFrom))};
    for (const DemandItem* item : items) inputs.push_back(ratingOf(*item));
    return record(working_, "demand.share_of_sum", rule, result, "VA", std::move(inputs), std::move(note));
  }
  void list(const std::vector<const DemandItem*>& items, RuleId rule, MessageId what = kItem) {
    for (const DemandItem* item : items) addLine(out_, say(what, item->name), rule, VoltAmperes(of(*item)));
  }

  void lighting() {
    const double unit = figures_(DemandKey::lightingUnit);
    const bool unitConfirmed = figures_.confirmed();
    const double area = question_.area[0].count() + question_.area[1].count();
    std::array<double, 2> gross{question_.area[0].count() * unit, question_.area[1].count() * unit};
    std::vector<StepInput> sum;
    if (area > 0.0) {
      DemandLine& line =
          addLine(out_, say(kLighting, Figure{area, "ft\u00b2", 0}, Figure{unit, "VA/ft\u00b2", 0}),
                  ruleOf(DemandKey::lightingUnit), VoltAmperes(area * unit), 0);
      line.confirmed = unitConfirmed;
      line.step = record(working_, "demand.lighting", line.rule, area * unit, "VA",
                         {figures_.input("u", DemandKey::lightingUnit, unit),
                          input("a", area, "ft2", kNoStep, "area served")},
                         line.what);
      sum.push_back(input("S", area * unit, "VA", line.step, "general lighting"));
    }
    const auto circuits = [&](const std::array<double, 2>& count, DemandKey key, MessageId what) {
      const double total = count[0] + count[1];
      if (total <= 0.0) return;
      const double each = figures_(key);
      const bool sure = figures_.confirmed();
      DemandLine& line = addLine(out_, say(what, Figure{each, "VA", 0}), ruleOf(key),
                                 VoltAmperes(total * each), static_cast<std::int32_t>(std::lround(total)));
      line.confirmed = sure;
      line.step =
          record(working_, "demand.circuits", line.rule, total * each, "VA",
                 {input("n", total, "", kNoStep, "circuits of this kind; " + figures_.cell(leastOf(key))),
                  figures_.input("s", key, each)},
                 line.what);
      sum.push_back(input("S", total * each, "VA", line.step, "circuits"));
      for (std::size_t leg = 0; leg < 2; ++leg) gross[leg] += count[leg] * each;
    };
    circuits(question_.smallAppliance, DemandKey::smallApplianceCircuit, kSmallAppliance);
    circuits(question_.laundry, DemandKey::laundryCircuit, kLaundry);
    const double all = gross[0] + gross[1];
    if (all <= 0.0) return;

    const double first = figures_(DemandKey::lightingFirstUpTo),
                 second = figures_(DemandKey::lightingSecondUpTo);
    const std::array<double, 3> parts{std::min(all, first), std::clamp(all - first, 0.0, second - first),
                                      std::max(0.0, all - second)};
    const std::array<double, 3> factors{figures_(DemandKey::lightingFirst),
                                        figures_(DemandKey::lightingSecond),
                                        figures_(DemandKey::lightingThird)};
    const bool sure = figures_.confirmed();
    const RuleId rule = ruleOf(DemandKey::lightingFirst);
    const StepIndex grossStep = record(working_, "demand.total", rule, all, "VA", std::move(sum));
    double load = 0.0;
    for (std::size_t i = 0; i < 3; ++i) load += parts[i] * factors[i];
    const std::array<Message, 3> words{say(kStepFirst, Figure{first, "VA", 0}),
                                       say(kStepSecond, Figure{first, "VA", 0}, Figure{second, "VA", 0}),
                                       say(kStepThird, Figure{second, "VA", 0})};
    constexpr std::array<DemandKey, 3> keys{DemandKey::lightingFirst, DemandKey::lightingSecond,
                                            DemandKey::lightingThird};
    for (std::size_t i = 0; i < 3; ++i) {
      if (parts[i] <= 0.0) continue;
      DemandLine& line = addLine(out_, words[i], rule, VoltAmperes(parts[i]), 0);
      line.factor = Fraction(factors[i]);
      line.load = VoltAmperes(parts[i] * factors[i]);
      line.neutral = *line.load;
      line.confirmed = sure;
      std::vector<StepInput> inputs{figures_.input("f", keys[i], factors[i]),
                                    input("S", all, "VA", grossStep, "")};
      if (i == 0) {
        inputs.push_back(figures_.input("B", DemandKey::lightingFirstUpTo, first));
        line.step = record(working_, "demand.step_first", rule, line.load->count(), "VA", std::move(inputs),
                           line.what);
      } else if (i == 1) {
        inputs.push_back(figures_.input("A", DemandKey::lightingFirstUpTo, first));
        inputs.push_back(figures_.input("B", DemandKey::lightingSecondUpTo, second));
        line.step = record(working_, "demand.step_between", rule, line.load->count(), "VA", std::move(inputs),
                           line.what);
      } else {
        inputs.push_back(figures_.input("A", DemandKey::lightingSecondUpTo, second));
        line.step = record(working_, "demand.step_above", rule, line.load->count(), "VA", std::move(inputs),
                           line.what);
      }
    }
    // Each leg carries of the load after the steps what it carries of the load before them.
    const std::array<double, 2> onLeg{load * gross[0] / all, load * gross[1] / all};
    onLegs("lighting, small-appliance and laundry circuits after the steps", onLeg, onLeg, 0.0);
  }

  void appliances() {
    const std::vector<const DemandItem*> items = all(LoadClass::appliance);
    if (items.empty()) return;
    const auto leastPower =
        demandFigure(DemandKey::appliancesLeastPower, question_.edition, figures_.tables());
    const auto leastHorsepower =
        demandFigure(DemandKey::appliancesLeastHorsepower, question_.edition, figures_.tables());
    std::vector<const DemandItem*> large, small;
    for (const DemandItem* item : items) {
      // Before 2020 no size is named.
      const bool counts =
          !leastPower || of(*item) >= leastPower->value ||
          (item->horsepower && leastHorsepower && item->horsepower->count() >= leastHorsepower->value);
      (counts ? large : small).push_back(item);
    }
    const double many = figures_(DemandKey::appliancesCount);
    const bool reduced = static_cast<double>(large.size()) >= many;
    const double factor = reduced ? figures_(DemandKey::appliancesFactor) : 1.0;
    const bool sure = figures_.confirmed();
    const RuleId rule = ruleOf(DemandKey::appliancesFactor);
    list(items, rule);
    const auto add = [&](const std::vector<const DemandItem*>& group, double with, MessageId what) {
      if (group.empty()) return;
      double gross = 0.0;
      DemandLine line;
      for (const DemandItem* item : group) {
        gross += of(*item);
        counted(*item, of(*item) * with);
        if (item->neutral) line.neutral += VoltAmperes(of(*item) * with);
      }
      DemandLine& added =
          addLine(out_, say(what), rule, VoltAmperes(gross), static_cast<std::int32_t>(group.size()));
      added.factor = Fraction(with);
      added.load = VoltAmperes(gross * with);
      added.neutral = line.neutral;
      added.confirmed = sure;
      added.step = sumOf(
          group, with, reduced && with < 1.0 ? figures_.cell(DemandKey::appliancesFactor) : "counted in full",
          rule, gross * with, added.what);
    };
    add(large, factor, reduced ? kAppliancesMany : kAppliances);
    add(small, 1.0, kAppliancesSmall);
  }

  // Part of a dryer's or a range's load that its neutral carries: 70 %, but all of it on two legs of a wye.
  [[nodiscard]] double neutralPart() const {
    return question_.wye ? 1.0 : neutralRangeDryerFactor(figures_.tables()).count();
  }
  void tableItems(const std::vector<const DemandItem*>& items, double gross, double load, DemandLine& line) {
    for (const DemandItem* item : items) {
      const double mine = gross > 0.0 ? load * of(*item) / gross : load / static_cast<double>(items.size());
      const std::array<double, 2> onLeg{item->leg[0] * mine, item->leg[1] * mine};
      const double part = item->neutral ? neutralPart() : 0.0;
      onLegs(item->name, onLeg, {onLeg[0] * part, onLeg[1] * part}, item->continuous ? 1.0 : 0.0);
      line.neutral += VoltAmperes(mine * part);
      if (item->continuous) out_.continuous += VoltAmperes(mine);
    }
  }

  void dryers() {
    const std::vector<const DemandItem*> items = all(LoadClass::dryer);
    if (items.empty()) return;
    const double least = figures_(DemandKey::dryerLeast);
    const auto factor = dryerFactor(static_cast<int>(items.size()), question_.edition, figures_.tables());
    if (!factor) {
      refused_ = say(kManyDryers, static_cast<std::int64_t>(items.size()), std::int64_t{kDryerRows});
      return;
    }
    const double share = figures_.take(factor, ruleOf(DemandKey::dryer1));
    const bool sure = figures_.confirmed();
    const RuleId rule = ruleOf(DemandKey::dryer1);
    list(items, rule);
    double gross = 0.0;
    std::vector<StepInput> inputs{input("f", share, "", kNoStep, citationOfDryers())};
    std::vector<double> each;
    for (const DemandItem* item : items) {
      const double raised = std::max(of(*item), least);
      const StepIndex step = record(working_, "demand.at_least", rule, raised, "VA",
                                    {ratingOf(*item), figures_.input("m", DemandKey::dryerLeast, least)});
      inputs.push_back(input("S", raised, "VA", step, item->name));
      gross += raised;
      each.push_back(raised * share);
    }
    DemandLine& line = addLine(out_, say(kDryers, Figure{least, "VA", 0}), rule, VoltAmperes(gross),
                               static_cast<std::int32_t>(items.size()));
    line.factor = Fraction(share);
    line.load = VoltAmperes(gross * share);
    line.confirmed = sure;
    line.step =
        record(working_, "demand.share_of_sum", rule, gross * share, "VA", std::move(inputs), line.what);
    for (std::size_t i = 0; i < items.size(); ++i) tableItems({items[i]}, of(*items[i]), each[i], line);
  }
  [[nodiscard]] std::string citationOfDryers() const {
    return figures_.cell(DemandKey::dryer1) + " and following";
  }

  void cooking() {
    const std::vector<const DemandItem*> items = all(LoadClass::cooking);
    if (items.empty()) return;
    const RuleId rule = ruleOf(DemandKey::cookingC1);
    const double least = figures_(DemandKey::cookingLeast);
    figures_.confirmed();
    std::vector<const DemandItem*> ofTable, small;
    for (const DemandItem* item : items)
      (kilo(VoltAmperes(of(*item))) > least ? ofTable : small).push_back(item);
    list(items, rule);
    if (!ofTable.empty()) {
      std::vector<double> ratings;
      double gross = 0.0;
      for (const DemandItem* item : ofTable) {
        ratings.push_back(kilo(VoltAmperes(of(*item))));
        gross += of(*item);
      }
      const auto load = cookingLoad(ratings, question_.edition, working_, figures_.tables());
      if (!load) {
        refused_ =
            say(kManyCooking, Figure{figures_(DemandKey::cookingMost), "kW", 0}, std::int64_t{kCookingRows});
        return;
      }
      DemandLine& line = addLine(out_, say(load->byNote3 ? kCookingNote3 : kCooking), rule,
                                 VoltAmperes(gross), static_cast<std::int32_t>(ofTable.size()));
      line.load = load->load;
      line.confirmed = load->confirmed;
      line.step = load->step;
      tableItems(ofTable, gross, load->load.count(), line);
    }
    if (!small.empty()) {
      double gross = 0.0;
      for (const DemandItem* item : small) gross += of(*item);
      DemandLine& line = addLine(out_, say(kCookingSmall, Figure{least, "kW", 2}), rule, VoltAmperes(gross),
                                 static_cast<std::int32_t>(small.size()));
      line.factor = Fraction(1.0);
      line.load = VoltAmperes(gross);
      line.step = sumOf(small, 1.0, "counted in full", rule, gross, line.what);
      tableItems(small, gross, gross, line);
    }
  }

  void chargers() {
    const std::vector<const DemandItem*> items = all(LoadClass::vehicleCharger);
    if (items.empty()) return;
    const auto least = demandFigure(DemandKey::vehicleChargerLeast, question_.edition, figures_.tables());
    const auto unknown = demandFigure(DemandKey::vehicleChargerUnknown, question_.edition, figures_.tables());
    const RuleId rule = ruleOf(DemandKey::vehicleChargerLeast);
    for (const DemandItem* item : items) {
      double load = of(*item);
      DemandLine line;
      line.what = say(kCharger, item->name);
      line.rule = rule;
      line.items = 1;
      line.gross = VoltAmperes(load);
      if (!item->rating) {
        // gather lets such an item through only where the edition has a figure for it.
        load = figures_.take(unknown, rule);
        line.step = record(working_, "demand.at_least", rule, load, "VA",
                           {input("S", 0.0, "VA", kNoStep, item->name + ", nameplate not known"),
                            figures_.input("m", DemandKey::vehicleChargerUnknown, load)},
                           line.what);
      } else if (least) {
        const double nameplate = load;
        load = std::max(nameplate, figures_.take(least, rule));
        line.step = record(working_, "demand.at_least", rule, load, "VA",
                           {input("S", nameplate, "VA", kNoStep, item->name),
                            figures_.input("m", DemandKey::vehicleChargerLeast, least->value)},
                           line.what);
      } else {
        line.factor = Fraction(1.0);
        line.step = sumOf({item}, 1.0, "counted in full", rule, load, line.what);
      }
      line.load = VoltAmperes(load);
      line.confirmed = figures_.confirmed();
      if (item->neutral) line.neutral = *line.load;
      out_.lines.push_back(line);
      counted(*item, load);
    }
  }

  [[nodiscard]] Group groupOf(bool (*belongs)(LoadClass)) const {
    Group group;
    for (const DemandItem& item : question_.items) {
      if (!belongs(item.loadClass)) continue;
      group.items.push_back(&item);
      const double load = of(item);
      group.load += VoltAmperes(load);
      if (item.continuous) group.continuous += VoltAmperes(load);
      if (item.neutral) group.neutral += VoltAmperes(load);
      for (std::size_t leg = 0; leg < 2; ++leg) {
        const VoltAmperes mine(load * item.leg[leg]);
        group.legLoad[leg] += mine;
        if (item.continuous) group.legContinuous[leg] += mine;
        if (item.neutral) group.legNeutral[leg] += mine;
      }
    }
    return group;
  }

  // The larger of heating and cooling; for each leg and its neutral the larger one there. Either can run, so
  // the larger of their continuous parts counts: the smaller group, where it alone is continuous, can ask for
  // more.
  void climate() {
    const Group heating = groupOf(heats), cooling = groupOf(cools);
    if (heating.items.empty() && cooling.items.empty()) return;
    const bool hot = heating.load >= cooling.load;
    const Group& larger = hot ? heating : cooling;
    const Group& smaller = hot ? cooling : heating;
    const RuleId rule{"load.noncoincident"};
    list(larger.items, rule);
    for (const DemandItem* item : smaller.items) {
      if (std::find(larger.items.begin(), larger.items.end(), item) == larger.items.end())
        addLine(out_, say(kItemLeftOut, item->name), rule, VoltAmperes(of(*item)));
    }
    double share = 1.0;
    if (hot) share = figures_(DemandKey::spaceHeating);
    DemandLine& line = addLine(out_, say(hot ? kHeating : kCooling), rule, larger.load,
                               static_cast<std::int32_t>(larger.items.size()));
    line.factor = Fraction(share);
    line.load = larger.load * share;
    line.neutral = larger.neutral;
    line.confirmed = figures_.confirmed();
    line.step = sumOf(larger.items, share, hot ? figures_.cell(DemandKey::spaceHeating) : "counted in full",
                      rule, line.load->count(), line.what);
    out_.continuous += std::max(heating.continuous, cooling.continuous) * share;
    for (std::size_t leg = 0; leg < 2; ++leg) {
      const Group& here = heating.legLoad[leg] >= cooling.legLoad[leg] ? heating : cooling;
      std::array<double, 2> load{}, neutral{};
      load[leg] = here.legLoad[leg].count() * share;
      neutral[leg] = std::max(heating.legNeutral[leg], cooling.legNeutral[leg]).count() * share;
      const VoltAmperes continuous = std::max(heating.legContinuous[leg], cooling.legContinuous[leg]);
      const double part = load[leg] > 0.0 ? continuous.count() * share / load[leg] : 0.0;
      onLegs("the larger of heating and cooling on this leg", load, neutral, part);
    }
  }

  void plain(LoadClass loadClass, MessageId what, RuleId rule) {
    for (const DemandItem* item : all(loadClass)) {
      DemandLine& line = addLine(out_, say(what, item->name), rule, VoltAmperes(of(*item)));
      line.factor = Fraction(1.0);
      line.load = VoltAmperes(of(*item));
      if (item->neutral) line.neutral = *line.load;
      line.step = sumOf({item}, 1.0, "counted in full", rule, of(*item), line.what);
      counted(*item, of(*item));
    }
  }

  // A quarter of the largest motor; one that is left out as the smaller of heating and cooling can be it.
  void largestMotor() {
    const DemandItem* largest = nullptr;
    std::array<double, 2> legLoad{}, legNeutral{};
    for (const DemandItem& item : question_.items) {
      if (!item.motor) continue;
      if (largest == nullptr || of(item) > of(*largest)) largest = &item;
      for (std::size_t leg = 0; leg < 2; ++leg) {
        legLoad[leg] = std::max(legLoad[leg], of(item) * item.leg[leg]);
        if (item.neutral) legNeutral[leg] = std::max(legNeutral[leg], of(item) * item.leg[leg]);
      }
    }
    if (largest == nullptr || of(*largest) <= 0.0) return;
    const double share = figures_(DemandKey::largestMotor);
    const RuleId rule = ruleOf(DemandKey::largestMotor);
    DemandLine& line = addLine(out_, say(kLargestMotor, largest->name), rule, VoltAmperes(of(*largest)), 0);
    line.factor = Fraction(share);
    line.load = VoltAmperes(of(*largest) * share);
    if (largest->neutral) line.neutral = *line.load;
    line.confirmed = figures_.confirmed();
    line.step =
        sumOf({largest}, share, figures_.cell(DemandKey::largestMotor), rule, line.load->count(), line.what);
    onLegs("a quarter of the largest motor on this leg", {legLoad[0] * share, legLoad[1] * share},
           {legNeutral[0] * share, legNeutral[1] * share}, 0.0);
  }

  void charging() {
    if (!question_.charging) return;
    const double load = question_.charging->count();
    if (load <= 0.0) return;
    const RuleId rule{"practice.charging_load"};
    DemandLine& line = addLine(out_, say(kCharging), rule, *question_.charging, 0);
    line.factor = Fraction(1.0);
    line.load = *question_.charging;
    line.step = record(working_, "demand.share_of_sum", rule, load, "VA",
                       {input("f", 1.0, "", kNoStep, "counted in full"),
                        input("S", load, "VA", kNoStep, "charge limit of all inverters")},
                       line.what);
    out_.continuous += *question_.charging;
    const double share = question_.wye ? 1.0 / std::sqrt(3.0) : 0.5;
    onLegs("charging", {load * share, load * share}, {0.0, 0.0}, 1.0);
  }

  void legs() {
    if (working_ == nullptr) return;
    for (std::size_t leg = 0; leg < 2; ++leg) {
      const auto sum = [&](std::vector<StepInput>& inputs, RuleId rule, VoltAmperes result) {
        if (inputs.empty()) inputs.push_back(input("S", 0.0, "VA", kNoStep, "nothing on this leg"));
        return record(working_, "demand.leg", rule, result.count(), "VA", std::move(inputs));
      };
      out_.leg[leg].loadStep = sum(loads_[leg], RuleId{"load.calculation"}, out_.leg[leg].load);
      out_.leg[leg].continuousStep =
          sum(continuous_[leg], RuleId{"continuous.load"}, out_.leg[leg].continuous);
      out_.leg[leg].neutralStep = sum(neutrals_[leg], RuleId{"feeder.neutral"}, out_.leg[leg].neutral);
    }
  }

  const DemandQuestion& question_;
  Working* working_;
  Figures figures_;
  DemandCalculation out_;
  std::optional<Message> refused_;
  std::array<std::vector<StepInput>, 2> loads_, continuous_, neutrals_;
};

}  // namespace

DemandCalculation standardLoad(const DemandQuestion& question, Working* working, const Tables& tables) {
  return Standard(question, working, tables).run();
}

}  // namespace stayalight
