#include "core/wiring/wiring_space.h"

#include <algorithm>
#include <set>

#include "core/code/conductors.h"
#include "core/code/numbers.h"
#include "core/panel/clearing.h"
#include "core/transfer/breaker_in_plan.h"
#include "core/wiring/extension.h"
#include "core/wiring/record.h"

namespace stayalight {
namespace {

using namespace wiring;
using Part = WiringSpaceContent::Part;

constexpr MessageId kNoSize{"wiring.raceway.no_size"};
constexpr MessageId kNoSegmentSize{"wiring.space.no_segment_size"};
constexpr MessageId kNoSpace{"wiring.space.no_space"};
constexpr MessageId kNoSupply{"wiring.space.no_supply"};
constexpr MessageId kItsRun{"wiring.space.its_run"};
constexpr MessageId kAbout{"wiring.space.about"};
constexpr MessageId kNote{"wiring.space.note"};
constexpr MessageId kNoteSpliced{"wiring.space.note_spliced"};
constexpr MessageId kForConductors{"wiring.space.for_conductors"};
constexpr MessageId kForSplices{"wiring.space.for_splices"};
constexpr MessageId kCircuit{"wiring.raceway.circuit"};
constexpr MessageId kBreaker{"wiring.space.breaker"};
constexpr MessageId kSupply{"wiring.space.supply"};

constexpr double kSlack = 1.0 + 1e-9;

// Adds up the conductors in one panel.
class Gutter {
 public:
  Gutter(const Plan& plan, const Panel& panel, const std::vector<SegmentFigures>& segments,
         const Tables& tables)
      : plan_(plan), panel_(panel), segments_(segments), tables_(tables) {}

  bool addSpliced() {
    for (const auto& circuit : plan_.circuits) {
      if (splicedHere(*circuit)) addJoint(*circuit);
    }
    return figures.spliced > 0;
  }

  void addTheRest() {
    std::set<std::int32_t> groups;
    for (const auto& circuit : plan_.circuits) {
      const Breaker* breaker = find(plan_, circuit->planned);
      if (breaker == nullptr || breaker->panel != panel_.id || splicedHere(*circuit)) continue;
      const bool ownCable = circuit->multiwire == 0 || groups.insert(circuit->multiwire).second;
      const int neutral = ownCable && usesNeutral(*circuit) ? 1 : 0;
      const Message what = say(kCircuit, circuitName(*circuit));
      add(what, Part::staying, hotCount(plan_, *circuit) + neutral, circuit->conductor, breaker->rating);
      const bool wire = !circuit->ground.is(BranchGround::none) && !circuit->ground.is(BranchGround::metal);
      if (ownCable && wire) addGround(what, *breaker, circuit->conductor);
    }
    addFeeder();
    addOtherBreakers();
    addSupply();
  }

  void judge() {
    figures.panel = panel_.id;
    for (const WiringSpaceContent& content : figures.contents) {
      figures.conductors += content.count;
      figures.area += content.area;
    }
    figures.space = panel_.wiringSpace;
    if (!figures.space) {
      figures.notKnown.push_back(say(kNoSpace));
      return;
    }
    figures.allowed = *figures.space * wiringSpaceConductors(tables_).count();
    figures.withSplices = *figures.space * wiringSpaceSplices(tables_).count();
    const double allowed = figures.allowed->count() * kSlack;
    if (figures.splicedArea.count() > allowed) {
      figures.verdict = Verdict::over;
      return;
    }
    figures.byItsRun = figures.area.count() > allowed;
    if (figures.byItsRun) figures.notKnown.push_back(say(kItsRun));
    if (figures.notKnown.empty()) figures.verdict = Verdict::within;
  }

  void record(Working& working) const {
    const StepIndex spliced = recordArea(working, figures.splicedArea, true, kNoteSpliced);
    const StepIndex all = recordArea(working, figures.area, false, kNote);
    if (!figures.space) return;
    const auto unit = SquareInches::unit();
    const double space = figures.space->count();
    const StepInput entered = fromPlace("S", space, unit, "cross-section of the wiring space, entered");
    const auto share = [&](Fraction part, SquareInches result, MessageId about) {
      wiring::record(working, FormulaId{"wiring.space_share"}, RuleId{"panel.wiring_space"}, result.count(),
                     unit, {fromPlace("k", part.count(), "", "share of the wiring space"), entered},
                     say(about));
    };
    share(wiringSpaceConductors(tables_), *figures.allowed, kForConductors);
    share(wiringSpaceSplices(tables_), *figures.withSplices, kForSplices);
    const auto fill = [&](SquareInches area, StepIndex step, MessageId about) {
      if (step == kNoStep) return;
      wiring::record(working, FormulaId{"wiring.space_fill"}, RuleId{"panel.wiring_space"},
                     area.count() / space, "", {fromStep("A", area.count(), unit, step), entered},
                     say(about, panel_.name));
    };
    fill(figures.splicedArea, spliced, kNoteSpliced);
    fill(figures.area, all, kNote);
  }

  WiringSpaceFigures figures;

 private:
  [[nodiscard]] bool splicedHere(const Circuit& circuit) const {
    return circuit.splice.is(Splice::inPanel) && joined(plan_, circuit) &&
           panelOf(plan_, circuit, Reading::before) == panel_.id;
  }

  void addJoint(const Circuit& circuit) {
    const Message what = say(kCircuit, circuitName(circuit));
    const int count = joints_.take(circuit);
    const std::optional<ConductorSize> out = extensionSize(circuit);
    if (!circuit.conductor || !out) figures.notKnown.push_back(say(kNoSize, circuitName(circuit)));
    const WireType outWire = circuit.extensionWire.valueOr(WireType::xhhw2);
    // Of the circuit's own insulation nothing is entered.
    addSplicedOf(what, count, circuit.conductor, WireType::thwn2);
    addSplicedOf(what, count, out, outWire);
    const GroundsAtJoint::Count grounds = grounds_.take(circuit);
    const RatingAmperes rating = find(plan_, circuit.planned)->rating;
    const auto ground = [&](std::optional<ConductorSize> largest) {
      const auto size = groundingConductor(rating, Metal::copper, tables_);
      return size && largest ? std::min(*size, *largest) : size;
    };
    addSplicedOf(what, grounds.in, ground(circuit.conductor), WireType::thwn2);
    addSplicedOf(what, grounds.out, ground(out), outWire);
  }
  // What has no size counts as conductors, without area: it is named as not known.
  void addSplicedOf(const Message& what, int count, std::optional<ConductorSize> size, WireType wire) {
    figures.spliced += count;
    if (count == 0) return;
    if (!size) {
      figures.conductors += count;
      return;
    }
    WiringSpaceContent content = contentOf(what, Part::spliced, count, *size, wire);
    figures.splicedArea += content.area;
    figures.contents.push_back(std::move(content));
  }

  void add(const Message& what, Part part, int count, std::optional<ConductorSize> size,
           RatingAmperes rating) {
    if (count == 0) return;
    WiringSpaceContent content = contentOf(what, part, count, size ? *size : largestFor(rating),
                                           size ? WireType::thwn2 : WireType::xhhw2);
    content.byRating = !size;
    figures.contents.push_back(std::move(content));
  }
  void addGround(const Message& what, const Breaker& breaker, std::optional<ConductorSize> largest) {
    const auto size = groundingConductor(breaker.rating, Metal::aluminium, tables_);
    if (size) add(what, Part::staying, 1, largest ? std::min(*size, *largest) : *size, breaker.rating);
  }

  // A segment that starts or ends in this panel, other than at its own supply.
  [[nodiscard]] bool endsHere(Segment segment) const {
    const Panel* ahead = panelAhead(plan_);
    switch (segment) {
      case Segment::mainToSwitch:
      case Segment::mainToInverter:
      case Segment::bypass:
        return ahead != nullptr && ahead->id == panel_.id;
      case Segment::generatorInlet:
        return panel_.role.is(PanelRole::main) && plan_.generator->comesIn.is(GeneratorPoint::mainPanel);
      case Segment::inverterToSwitch:
      case Segment::switchToBackup:
      case Segment::inverterToBackup:
        return false;
    }
    return false;
  }
  void addFeeder() {
    for (const SegmentFigures& segment : segments_) {
      if (!endsHere(segment.segment)) continue;
      const Message what = segmentName(segment.segment);
      if (!segment.conductor.size) {
        figures.notKnown.push_back(say(kNoSegmentSize, std::vector{what}));
        continue;
      }
      const WireType wire = segment.conductor.metal == Metal::aluminium ? WireType::xhhw2 : WireType::thwn2;
      const auto put = [&](int count, std::optional<ConductorSize> size) {
        if (size) figures.contents.push_back(contentOf(what, Part::staying, count, *size, wire));
      };
      put(2, segment.conductor.size);
      put(1, segment.neutral);
      put(1, segment.ground);
    }
  }
  void addOtherBreakers() {
    for (const auto& breaker : plan_.breakers) {
      const bool here = breaker->panel == panel_.id && stands(*breaker, Reading::planned);
      const Feeds feeds = breaker->feeds.valueOr(Feeds::nothing);
      if (!here || feeds == Feeds::circuit || feeds == Feeds::nothing || feeds == Feeds::utility ||
          ofSegment(*breaker))
        continue;
      const Message what = say(kBreaker, std::int64_t{breaker->rating.count()});
      add(what, Part::staying, breaker->poles + 1, std::nullopt, breaker->rating);
      addGround(what, *breaker, std::nullopt);
    }
  }
  // Its conductors are those of a segment that was counted.
  [[nodiscard]] bool ofSegment(const Breaker& breaker) const {
    return std::any_of(segments_.begin(), segments_.end(), [&](const SegmentFigures& segment) {
      return endsHere(segment.segment) && standsFor(plan_, breaker, segment.segment);
    });
  }
  void addSupply() {
    std::optional<RatingAmperes> rating = panel_.mainBreaker;
    bool fromAnotherPanel = false;
    for (const auto& breaker : plan_.breakers) {
      if (!stands(*breaker, Reading::planned)) continue;
      const bool utility = breaker->panel == panel_.id && breaker->feeds.is(Feeds::utility);
      const bool feeder = breaker->feeds.is(Feeds::feeder) && breaker->feedsPanel == panel_.id;
      fromAnotherPanel = fromAnotherPanel || feeder;
      if (utility || (feeder && !rating)) rating = breaker->rating;
    }
    if (!rating) {
      figures.notKnown.push_back(say(kNoSupply, panel_.name));
      return;
    }
    add(say(kSupply), Part::supply, fromAnotherPanel || panel_.fedFrom.valid() ? 4 : 3, std::nullopt,
        *rating);
  }

  // The largest conductor that terminals behind this rating ask for: aluminium, 60 C.
  [[nodiscard]] ConductorSize largestFor(RatingAmperes rating) const {
    for (std::size_t i = 0; i < kConductorSizeCount; ++i) {
      const auto size = static_cast<ConductorSize>(i);
      const auto carries = ampacity(size, Metal::aluminium, TemperatureColumn::c60, tables_);
      if (carries && carries->count() >= rating.count()) return size;
    }
    return static_cast<ConductorSize>(kConductorSizeCount - 1);
  }
  [[nodiscard]] WiringSpaceContent contentOf(Message what, Part part, int count, ConductorSize size,
                                             WireType wire) const {
    WiringSpaceContent content;
    content.what = std::move(what);
    content.part = part;
    content.count = count;
    content.size = size;
    content.wire = wire;
    content.area = conductorArea(size, wire, tables_) * count;
    return content;
  }

  StepIndex recordArea(Working& working, SquareInches area, bool splicedOnly, MessageId note) const {
    std::vector<StepInput> inputs;
    for (const WiringSpaceContent& content : figures.contents) {
      if (splicedOnly && content.part != Part::spliced) continue;
      inputs.push_back(fromPlace("a", content.area.count(), SquareInches::unit(),
                                 render(content.what, plainEnglish()) + ": " +
                                     conductorAreaCell(content.size, content.wire) + " × " +
                                     std::to_string(content.count)));
    }
    if (inputs.empty()) return kNoStep;
    return wiring::record(working, FormulaId{"wiring.space_area"}, RuleId{"raceway.conductor_area"},
                          area.count(), SquareInches::unit(), std::move(inputs), say(note, panel_.name));
  }

  const Plan& plan_;
  const Panel& panel_;
  const std::vector<SegmentFigures>& segments_;
  const Tables& tables_;
  ConductorsAtJoint joints_{plan_};
  GroundsAtJoint grounds_{plan_};
};

}  // namespace

WorkingSubject wiringSpaceSubject(const Panel& panel) { return {say(kAbout, panel.name), panel.id.number}; }

std::vector<WiringSpaceFigures> wiringSpaceFigures(const Plan& plan,
                                                   const std::vector<SegmentFigures>& segments,
                                                   Working* working, const Tables& tables) {
  std::vector<WiringSpaceFigures> all;
  if (!plan.site->country.is(Country::unitedStates)) return all;
  for (const auto& panel : plan.panels) {
    Gutter gutter(plan, *panel, segments, tables);
    if (!gutter.addSpliced()) continue;
    gutter.addTheRest();
    gutter.judge();
    const WorkingOf about(working, wiringSpaceSubject(*panel));
    if (working != nullptr) gutter.record(*working);
    all.push_back(std::move(gutter.figures));
  }
  return all;
}

}  // namespace stayalight
