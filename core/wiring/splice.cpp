#include "core/wiring/splice.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "core/code/conductors.h"
#include "core/code/numbers.h"
#include "core/wiring/extension.h"
#include "core/wiring/record.h"

namespace stayalight {
namespace {

using namespace wiring;

constexpr MessageId kConductors{"wiring.box.conductors"};
constexpr MessageId kGrounds{"wiring.box.grounds"};
constexpr MessageId kClamps{"wiring.box.clamps"};
constexpr MessageId kClampsPerhaps{"wiring.box.clamps_perhaps"};
constexpr MessageId kDevices{"wiring.box.devices"};
constexpr MessageId kNoSize{"wiring.raceway.no_size"};
constexpr MessageId kNoVolume{"wiring.box.no_volume"};
constexpr MessageId kBoxNote{"wiring.box.note"};
constexpr MessageId kNoSpace{"wiring.space.no_space"};
constexpr MessageId kSpaceNote{"wiring.space.note"};
constexpr MessageId kForConductors{"wiring.space.for_conductors"};
constexpr MessageId kForSplices{"wiring.space.for_splices"};

constexpr double kYokeVolumes = 2.0;
constexpr double kSlack = 1.0 + 1e-9;

int jointCount(const Plan& plan, const Circuit& circuit) {
  return hotCount(plan, circuit) + (ownNeutral(plan, circuit, circuit.raceway) ? 1 : 0);
}

// Adds up one box.
class Box {
 public:
  Box(const Plan& plan, const SpliceBox& box, Edition edition, const Tables& tables)
      : plan_(plan), box_(box), edition_(edition), tables_(tables) {
    figures_.box = box.id;
  }

  SpliceBoxFigures make() {
    for (const auto& circuit : plan_.circuits) {
      if (circuit->spliceBox == box_.id && circuit->splice.is(Splice::inBox) && joined(plan_, *circuit))
        addCircuit(*circuit);
    }
    for (const auto& [size, count] : conductors_) {
      if (const auto each = boxConductorVolume(size, tables_)) {
        addLine(say(kConductors, std::string(stayalight::name(size))), count, *each);
      } else {
        figures_.large = true;
      }
    }
    addGrounds();
    addFittings();
    for (const BoxLine& line : figures_.lines) figures_.needed += line.volume();
    figures_.volume = box_.kind.is(BoxKind::marked) || !box_.kind.known()
                          ? box_.volume
                          : boxVolume(box_.kind.valueOr(BoxKind::marked), tables_);
    if (!figures_.volume && !figures_.large) figures_.notKnown.push_back(say(kNoVolume));
    const bool over = figures_.volume && figures_.needed.count() > figures_.volume->count() * kSlack;
    figures_.verdict = over && !figures_.large                        ? Verdict::over
                       : figures_.large || !figures_.notKnown.empty() ? Verdict::notKnown
                                                                      : Verdict::within;
    return std::move(figures_);
  }

 private:
  void addCircuit(const Circuit& circuit) {
    figures_.circuits.push_back(circuit.id);
    const int count = jointCount(plan_, circuit);
    const std::optional<ConductorSize> out = extensionSize(circuit);
    if (!circuit.conductor || !out) figures_.notKnown.push_back(say(kNoSize, circuitName(circuit)));
    if (circuit.conductor) conductors_[*circuit.conductor] += count;
    if (out) conductors_[*out] += count;
    // One ground comes in with each cable: a multiwire group has one cable.
    const bool ownCable = circuit.multiwire == 0 || groups_.insert(circuit.multiwire).second;
    if (ownCable) ++grounds_;
    const Raceway* raceway = find(plan_, circuit.raceway);
    if (raceway == nullptr || raceway->ground.is(GroundPath::oneEach)) {
      if (ownCable) ++grounds_;
    } else if (raceway->ground.is(GroundPath::oneWire) && sharedGrounds_.insert(raceway->id).second) {
      ++grounds_;
    }
    if (const auto size = groundingConductor(find(plan_, circuit.planned)->rating, Metal::copper, tables_))
      largestGround_ = largestGround_ ? std::max(*largestGround_, *size) : *size;
  }
  void addGrounds() {
    if (!largestGround_ || grounds_ == 0) return;
    // With the circuit's own conductor smaller than the table asks, the ground is that size.
    const ConductorSize size =
        conductors_.empty() ? *largestGround_ : std::min(*largestGround_, conductors_.rbegin()->first);
    if (const auto each = boxConductorVolume(size, tables_))
      addLine(say(kGrounds, std::int64_t{grounds_}, std::string(stayalight::name(size))),
              groundsInBox(grounds_, edition_, tables_), *each);
  }
  void addFittings() {
    if (conductors_.empty()) return;
    const auto largest = boxConductorVolume(conductors_.rbegin()->first, tables_);
    if (!largest) return;
    if (!box_.clampsInside.is(Answer::no))
      addLine(say(box_.clampsInside.is(Answer::yes) ? kClamps : kClampsPerhaps), 1.0, *largest);
    if (box_.devices > 0) addLine(say(kDevices), kYokeVolumes * box_.devices, *largest);
  }
  void addLine(Message what, double count, CubicInches each) {
    figures_.lines.push_back({std::move(what), count, each});
  }

  const Plan& plan_;
  const SpliceBox& box_;
  Edition edition_;
  const Tables& tables_;
  SpliceBoxFigures figures_;
  std::map<ConductorSize, int> conductors_;
  int grounds_ = 0;
  std::optional<ConductorSize> largestGround_;
  std::set<std::int32_t> groups_;
  std::set<RacewayId> sharedGrounds_;
};

void recordBox(const SpliceBoxFigures& figures, const SpliceBox& box, Working& working) {
  Step sum;
  sum.formula = FormulaId{"wiring.box_volume"};
  sum.rule = RuleId{"box.fill"};
  sum.result = figures.needed.count();
  sum.unit = CubicInches::unit();
  sum.note = say(kBoxNote, box.name);
  for (const BoxLine& line : figures.lines) {
    sum.inputs.push_back(
        fromPlace("v", line.volume().count(), CubicInches::unit(), render(line.what, plainEnglish())));
  }
  if (!sum.inputs.empty()) working.add(std::move(sum));
}

// Adds up the conductors that are spliced in one panel.
class Gutter {
 public:
  Gutter(const Plan& plan, const Panel& panel, const Tables& tables)
      : plan_(plan), panel_(panel), tables_(tables) {}

  void read() {
    figures.panel = panel_.id;
    figures.space = panel_.wiringSpace;
    for (const auto& circuit : plan_.circuits) {
      if (!circuit->splice.is(Splice::inPanel) || !joined(plan_, *circuit) ||
          panelOf(plan_, *circuit, Reading::before) != panel_.id)
        continue;
      const int count = jointCount(plan_, *circuit);
      const std::optional<ConductorSize> out = extensionSize(*circuit);
      if (!circuit->conductor || !out) figures.notKnown.push_back(say(kNoSize, circuitName(*circuit)));
      figures.conductors += 2 * count;
      // Of the circuit's own insulation nothing is entered.
      if (circuit->conductor) add(*circuit, *circuit->conductor, WireType::thwn2, count);
      if (out) add(*circuit, *out, circuit->extensionWire.valueOr(WireType::xhhw2), count);
    }
    if (!figures.space) {
      figures.notKnown.push_back(say(kNoSpace));
      return;
    }
    figures.allowed = *figures.space * wiringSpaceConductors(tables_).count();
    figures.withSplices = *figures.space * wiringSpaceSplices(tables_).count();
    figures.verdict = figures.area.count() > figures.allowed->count() * kSlack ? Verdict::over
                      : figures.notKnown.empty()                               ? Verdict::within
                                                                               : Verdict::notKnown;
  }

  void record(Working& working) {
    if (inputs_.empty()) return;
    const auto unit = SquareInches::unit();
    const Message note = say(kSpaceNote, panel_.name);
    const StepIndex area =
        wiring::record(working, FormulaId{"wiring.space_area"}, RuleId{"raceway.conductor_area"},
                       figures.area.count(), unit, inputs_, note);
    if (!figures.space) return;
    const double space = figures.space->count();
    const auto share = [&](Fraction part, SquareInches result, Message about) {
      wiring::record(working, FormulaId{"wiring.space_share"}, RuleId{"panel.wiring_space"}, result.count(),
                     unit,
                     {fromPlace("k", part.count(), "", "share of the wiring space"),
                      fromPlace("S", space, unit, "cross-section of the wiring space, entered")},
                     std::move(about));
    };
    share(wiringSpaceConductors(tables_), *figures.allowed, say(kForConductors));
    share(wiringSpaceSplices(tables_), *figures.withSplices, say(kForSplices));
    wiring::record(working, FormulaId{"wiring.space_fill"}, RuleId{"panel.wiring_space"},
                   figures.area.count() / space, "",
                   {fromStep("A", figures.area.count(), unit, area),
                    fromPlace("S", space, unit, "cross-section of the wiring space, entered")},
                   note);
  }

  WiringSpaceFigures figures;

 private:
  void add(const Circuit& circuit, ConductorSize size, WireType wire, int count) {
    const SquareInches area = conductorArea(size, wire, tables_) * count;
    figures.area += area;
    inputs_.push_back(fromPlace(
        "a", area.count(), SquareInches::unit(),
        circuitName(circuit) + ": " + conductorAreaCell(size, wire) + " × " + std::to_string(count)));
  }

  const Plan& plan_;
  const Panel& panel_;
  const Tables& tables_;
  std::vector<StepInput> inputs_;
};

}  // namespace

std::vector<SpliceBoxFigures> spliceBoxFigures(const Plan& plan, Edition edition, Working* working,
                                               const Tables& tables) {
  std::vector<SpliceBoxFigures> all;
  if (!plan.site->country.is(Country::unitedStates)) return all;
  for (const auto& box : plan.spliceBoxes) {
    all.push_back(Box(plan, *box, edition, tables).make());
    if (working != nullptr) recordBox(all.back(), *box, *working);
  }
  return all;
}

std::vector<WiringSpaceFigures> wiringSpaceFigures(const Plan& plan, Working* working, const Tables& tables) {
  std::vector<WiringSpaceFigures> all;
  if (!plan.site->country.is(Country::unitedStates)) return all;
  for (const auto& panel : plan.panels) {
    Gutter gutter(plan, *panel, tables);
    gutter.read();
    if (gutter.figures.conductors == 0) continue;
    if (working != nullptr) gutter.record(*working);
    all.push_back(std::move(gutter.figures));
  }
  return all;
}

std::vector<Joint> joints(const Plan& plan) {
  std::map<std::tuple<ConductorSize, Metal, ConductorSize>, int> counts;
  for (const auto& circuit : plan.circuits) {
    const std::optional<ConductorSize> out = extensionSize(*circuit);
    if (!joined(plan, *circuit) || !circuit->conductor || !out) continue;
    counts[{*circuit->conductor, circuit->metal.valueOr(Metal::copper), *out}] += jointCount(plan, *circuit);
  }
  std::vector<Joint> all;
  all.reserve(counts.size());
  for (const auto& [sizes, count] : counts)
    all.push_back({std::get<0>(sizes), std::get<1>(sizes), std::get<2>(sizes), count});
  return all;
}

}  // namespace stayalight
