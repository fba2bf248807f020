#include "core/wiring/splice.h"

#include <algorithm>
#include <map>
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

constexpr double kYokeVolumes = 2.0;
constexpr double kSlack = 1.0 + 1e-9;

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
    const int count = conductorsHere_.take(circuit);
    const std::optional<ConductorSize> out = extensionSize(circuit);
    if (!circuit.conductor || !out) figures_.notKnown.push_back(say(kNoSize, circuitName(circuit)));
    if (circuit.conductor) conductors_[*circuit.conductor] += count;
    if (out) conductors_[*out] += count;
    const GroundsAtJoint::Count grounds = groundsHere_.take(circuit);
    grounds_ += grounds.in + grounds.out;
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
  ConductorsAtJoint conductorsHere_{plan_};
  GroundsAtJoint groundsHere_{plan_};
};

void recordBox(const SpliceBoxFigures& figures, const SpliceBox& box, Working& working) {
  Step sum;
  sum.formula = FormulaId{"wiring.box_volume"};
  sum.rule = RuleId{"box.fill"};
  sum.result = figures.needed.count();
  sum.unit = CubicInches::unit();
  sum.note = say(kBoxNote, box.name);
  for (const BoxLine& line : figures.lines) {
    const std::string what = render(line.what, plainEnglish());
    if (line.what.id == kGrounds) {
      const StepIndex grounds = record(working, FormulaId{"wiring.box_grounds"}, RuleId{"box.grounds"},
                                       line.volume().count(), CubicInches::unit(),
                                       {fromPlace("n", line.count, "", what),
                                        fromPlace("v", line.each.count(), CubicInches::unit(), what)});
      sum.inputs.push_back(fromStep("v", line.volume().count(), CubicInches::unit(), grounds));
      continue;
    }
    sum.inputs.push_back(fromPlace("v", line.volume().count(), CubicInches::unit(), what));
  }
  if (!sum.inputs.empty()) working.add(std::move(sum));
  if (figures.volume) {
    const bool standard = box.kind.known() && !box.kind.is(BoxKind::marked);
    record(working, FormulaId{"wiring.box_space"}, standard ? RuleId{"box.volume"} : RuleId{"box.fill"},
           figures.volume->count(), CubicInches::unit(),
           {fromPlace("V", figures.volume->count(), CubicInches::unit(),
                      standard ? std::string(box.kind.word()) : "as marked, entered")});
  }
}

}  // namespace

WorkingSubject workingSubject(const SpliceBox& box) { return {say(kBoxNote, box.name), box.id.number}; }

std::vector<SpliceBoxFigures> spliceBoxFigures(const Plan& plan, Edition edition, Working* working,
                                               const Tables& tables) {
  std::vector<SpliceBoxFigures> all;
  if (!plan.site->country.is(Country::unitedStates)) return all;
  for (const auto& box : plan.spliceBoxes) {
    const WorkingOf about(working, workingSubject(*box));
    all.push_back(Box(plan, *box, edition, tables).make());
    if (working != nullptr) recordBox(all.back(), *box, *working);
  }
  return all;
}

std::vector<Joint> joints(const Plan& plan) {
  std::map<std::tuple<ConductorSize, Metal, ConductorSize>, int> counts;
  std::map<std::pair<PanelId, SpliceBoxId>, ConductorsAtJoint> places;
  for (const auto& circuit : plan.circuits) {
    const std::optional<ConductorSize> out = extensionSize(*circuit);
    if (!joined(plan, *circuit) || !circuit->conductor || !out) continue;
    const bool inBox = circuit->splice.is(Splice::inBox);
    const std::pair place{inBox ? PanelId() : panelOf(plan, *circuit, Reading::before),
                          inBox ? circuit->spliceBox : SpliceBoxId()};
    ConductorsAtJoint& here = places.try_emplace(place, plan).first->second;
    counts[{*circuit->conductor, circuit->metal.valueOr(Metal::copper), *out}] += here.take(*circuit);
  }
  std::vector<Joint> all;
  all.reserve(counts.size());
  for (const auto& [sizes, count] : counts)
    all.push_back({std::get<0>(sizes), std::get<1>(sizes), std::get<2>(sizes), count});
  return all;
}

}  // namespace stayalight
