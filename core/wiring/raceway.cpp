#include "core/wiring/raceway.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

#include "core/wiring/extension.h"
#include "core/wiring/grounding.h"
#include "core/wiring/record.h"

namespace stayalight {
namespace {

using namespace wiring;

constexpr MessageId kCircuit{"wiring.raceway.circuit"};
constexpr MessageId kSegment{"wiring.raceway.segment"};
constexpr MessageId kGround{"wiring.raceway.ground"};
constexpr MessageId kOther{"wiring.raceway.other"};
constexpr MessageId kNoSize{"wiring.raceway.no_size"};
constexpr MessageId kNoWidth{"wiring.raceway.no_width"};
constexpr MessageId kNoSegmentSize{"wiring.raceway.no_segment_size"};
constexpr MessageId kOtherArea{"wiring.raceway.no_other_area"};
constexpr MessageId kAbout{"wiring.raceway.about"};
constexpr MessageId kFillNote{"wiring.raceway.fill_note"};

constexpr double kSlack = 1.0 + 1e-9;
// Chapter 9 Note 7: with conductors of one size a count that ends on .8 or more goes up to the next whole
// one.
constexpr double kRoundsUpFrom = 0.8;

// Everything in one raceway, and what is not known about it.
class Contents {
 public:
  Contents(const Plan& plan, const Raceway& raceway, const std::vector<SegmentFigures>& segments,
           Edition edition, const Tables& tables)
      : plan_(plan), raceway_(raceway), segments_(segments), edition_(edition), tables_(tables) {}

  void read() {
    for (const auto& circuit : plan_.circuits) {
      if (circuit->raceway != raceway_.id || find(plan_, circuit->planned) == nullptr) continue;
      if (cableRunsOn(*circuit)) {
        addCable(*circuit);
      } else {
        addCircuit(*circuit);
      }
    }
    for (const SegmentFigures& segment : segments_) addSegment(segment);
    addSharedGround();
    addOthers();
  }

  std::vector<RacewayContent> contents;
  std::vector<Message> notKnown;

 private:
  void add(RacewayContent content) {
    if (content.size && !content.area)
      content.area = conductorArea(*content.size, content.wire, tables_) * content.count;
    contents.push_back(std::move(content));
  }

  void addCable(const Circuit& circuit) {
    RacewayContent cable;
    cable.what = say(kCircuit, circuitName(circuit));
    cable.role = RacewayContent::Role::cable;
    cable.count = 1;
    if (circuit.cableWidth) {
      const double width = circuit.cableWidth->inInches();
      cable.area = SquareInches(std::numbers::pi / 4.0 * width * width);
    } else {
      notKnown.push_back(say(kNoWidth, circuitName(circuit)));
    }
    contents.push_back(std::move(cable));
  }

  void addCircuit(const Circuit& circuit) {
    const std::optional<ConductorSize> size = extensionSize(circuit);
    if (!size) notKnown.push_back(say(kNoSize, circuitName(circuit)));
    RacewayContent hots;
    hots.what = say(kCircuit, circuitName(circuit));
    hots.size = size;
    hots.wire = circuit.extensionWire.valueOr(WireType::xhhw2);
    hots.count = hotCount(plan_, circuit);
    RacewayContent neutral = hots;
    neutral.role = RacewayContent::Role::neutral;
    neutral.count = ownNeutral(plan_, circuit, raceway_.id) ? 1 : 0;
    add(hots);
    if (neutral.count > 0) add(std::move(neutral));
    const Breaker& breaker = *find(plan_, circuit.planned);
    takeGround(say(kCircuit, circuitName(circuit)), groundOf(circuit, breaker.rating, size), size, hots.wire);
  }

  void addSegment(const SegmentFigures& segment) {
    const FeederRun* run = runOf(plan_, segment.segment);
    if (run == nullptr || run->inRaceway != raceway_.id) return;
    RacewayContent hots;
    hots.what =
        say(kSegment, std::string(ChoiceWords<Segment>::words[static_cast<std::size_t>(segment.segment)]));
    hots.metal = segment.conductor.metal;
    hots.wire = hots.metal == Metal::aluminium ? WireType::xhhw2 : WireType::thwn2;
    hots.size = segment.conductor.size;
    hots.count = 2;
    if (!hots.size) notKnown.push_back(say(kNoSegmentSize));
    RacewayContent neutral = hots;
    neutral.role = RacewayContent::Role::neutral;
    neutral.size = segment.neutral;
    neutral.count = 1;
    const Message what = hots.what;
    add(hots);
    add(std::move(neutral));
    takeGround(what, segment.ground, segment.conductor.size, hots.wire);
  }

  // An extension larger than its breaker asks for here takes a larger ground along (250.122(B)).
  [[nodiscard]] std::optional<ConductorSize> groundOf(const Circuit& circuit, RatingAmperes device,
                                                      std::optional<ConductorSize> size) const {
    ConductorQuestion question;
    question.device = device;
    question.conditions.ambient = raceway_.ambient;
    question.conditions.length = raceway_.length;
    question.conditions.currentCarrying = std::max(carryingCount(plan_, raceway_.id, tables_).most(), 1);
    std::optional<ConductorSize> required = chooseConductor(question, edition_, nullptr, tables_).size;
    if (circuit.conductor && (!required || *circuit.conductor < *required)) required = circuit.conductor;
    return groundingConductorFor({device, size, required, Metal::copper, {}}, edition_, nullptr, tables_)
        .size;
  }
  // Own grounds go in one by one; for a shared one the largest is kept.
  void takeGround(const Message& what, std::optional<ConductorSize> size,
                  const std::optional<ConductorSize>& largest, WireType wire) {
    if (size && largest) size = std::min(*size, *largest);
    if (raceway_.ground.is(GroundPath::oneEach)) {
      RacewayContent ground;
      ground.what = what;
      ground.role = RacewayContent::Role::ground;
      ground.count = 1;
      ground.size = size;
      ground.wire = wire;
      add(std::move(ground));
    } else if (size) {
      sharedGround_ = sharedGround_ ? std::max(*sharedGround_, *size) : *size;
    }
  }
  void addSharedGround() {
    if (!sharedGround_ || raceway_.ground.is(GroundPath::raceway)) return;
    RacewayContent ground;
    ground.what = say(kGround);
    ground.role = RacewayContent::Role::ground;
    ground.count = 1;
    ground.size = sharedGround_;
    add(std::move(ground));
  }
  void addOthers() {
    if (raceway_.otherCarrying == 0 && !raceway_.otherArea) return;
    RacewayContent others;
    others.what = say(kOther);
    others.role = RacewayContent::Role::other;
    others.count = std::max(raceway_.otherCarrying, 1);
    others.area = raceway_.otherArea;
    if (!others.area) notKnown.push_back(say(kOtherArea));
    contents.push_back(std::move(others));
  }

  const Plan& plan_;
  const Raceway& raceway_;
  const std::vector<SegmentFigures>& segments_;
  Edition edition_;
  const Tables& tables_;
  std::optional<ConductorSize> sharedGround_;
};

int neutralsThatCount(const Plan& plan, const Circuit& circuit, RacewayId raceway, const Tables& tables) {
  if (!ownNeutral(plan, circuit, raceway)) return 0;
  if (voltages(plan, Mode::ordinary, tables).wye) return 1;
  // Apart from its partner it carries the full current of this half.
  const bool apart = circuit.multiwire > 0 &&
                     std::any_of(plan.circuits.begin(), plan.circuits.end(), [&](const auto& other) {
                       return other->multiwire == circuit.multiwire && other->raceway.valid() &&
                              other->raceway != raceway && find(plan, other->planned) != nullptr;
                     });
  if (apart) return 1;
  return carriesDifferenceOnly(plan, circuit) ? 0 : 1;
}

// Table 1 for these conductors in this raceway, with Note 7.
bool fits(const RacewayFigures& figures, SquareInches inside, const Tables& tables) {
  const std::optional<Fraction> table = racewayFill(figures.conductors, tables);
  if (!table) return true;
  const Fraction share = figures.nipple ? nippleFill(tables) : *table;
  const double allowed = inside.count() * share.count();
  if (figures.area.count() <= allowed * kSlack) return true;
  const auto& all = figures.contents;
  const bool oneSize = std::all_of(all.begin(), all.end(), [&](const RacewayContent& content) {
    return content.size && content.size == all.front().size && content.wire == all.front().wire;
  });
  if (!oneSize || all.empty()) return false;
  const double each = conductorArea(*all.front().size, all.front().wire, tables).count();
  const double whole = std::floor(allowed / each);
  const double permitted = allowed / each - whole >= kRoundsUpFrom ? whole + 1.0 : whole;
  return figures.conductors <= permitted;
}

void measure(RacewayFigures& figures, const Raceway& raceway, const Tables& tables) {
  for (const RacewayContent& content : figures.contents) {
    figures.conductors += content.count;
    if (content.area) figures.area += *content.area;
  }
  const RacewayType type = raceway.type.valueOr(RacewayType::pvc80);
  figures.inside = racewayArea(type, raceway.size.valueOr(TradeSize::half), tables);
  const Fraction share = figures.nipple
                             ? nippleFill(tables)
                             : racewayFill(std::max(figures.conductors, 1), tables).value_or(Fraction(0.0));
  figures.allowed = figures.inside * share.count();
  const bool full = !fits(figures, figures.inside, tables);
  figures.fill = full ? Verdict::over
                 : !figures.notKnown.empty() || !raceway.type.known() || !raceway.size.known()
                     ? Verdict::notKnown
                     : Verdict::within;
  // What has no area leaves the size open.
  const bool allKnown = std::all_of(figures.contents.begin(), figures.contents.end(),
                                    [](const RacewayContent& content) { return content.area.has_value(); });
  if (!allKnown) return;
  for (std::size_t size = 0; size < ChoiceWords<TradeSize>::words.size() && !figures.smallest; ++size) {
    if (fits(figures, racewayArea(type, static_cast<TradeSize>(size), tables), tables))
      figures.smallest = static_cast<TradeSize>(size);
  }
}

void recordFill(const RacewayFigures& figures, const Raceway& raceway, Working& working) {
  Step sum;
  sum.formula = FormulaId{"wiring.raceway_area"};
  sum.rule = RuleId{"raceway.conductor_area"};
  sum.result = figures.area.count();
  sum.unit = SquareInches::unit();
  for (const RacewayContent& content : figures.contents) {
    if (!content.area) continue;
    const std::string from =
        content.size ? conductorAreaCell(*content.size, content.wire) + " × " + std::to_string(content.count)
                     : render(content.what, plainEnglish());
    sum.inputs.push_back(fromPlace("a", content.area->count(), SquareInches::unit(), from));
    if (content.role == RacewayContent::Role::cable) {
      constexpr double kCircle = std::numbers::pi / 4.0;
      sum.inputs.back() =
          fromStep("a", content.area->count(), SquareInches::unit(),
                   record(working, FormulaId{"wiring.cable_area"}, RuleId{"raceway.cable_area"},
                          content.area->count(), SquareInches::unit(),
                          {fromPlace("k", kCircle, "", "a quarter of pi"),
                           fromPlace("d", std::sqrt(content.area->count() / kCircle), "in",
                                     render(content.what, plainEnglish()))}));
    }
  }
  if (sum.inputs.empty()) return;
  const StepIndex total = working.add(std::move(sum));
  const std::string cell =
      racewayAreaCell(raceway.type.valueOr(RacewayType::pvc80), raceway.size.valueOr(TradeSize::half));
  const double share = figures.allowed.count() / figures.inside.count();
  record(working, FormulaId{"wiring.raceway_allowed"}, RuleId{"raceway.area"}, figures.allowed.count(),
         SquareInches::unit(),
         {fromPlace("k", share, "", "share that may be filled"),
          fromPlace("At", figures.inside.count(), SquareInches::unit(), cell)});
  record(
      working, FormulaId{"wiring.raceway_fill"},
      figures.nipple ? RuleId{"raceway.nipple_fill"} : RuleId{"raceway.fill"},
      figures.area.count() / figures.inside.count(), "",
      {fromStep("A", figures.area.count(), SquareInches::unit(), total),
       fromPlace("At", figures.inside.count(), SquareInches::unit(), cell)},
      say(kFillNote, raceway.name, Figure{figures.allowed.count() / figures.inside.count() * 100.0, "%", 0}));
}

void recordCarrying(const CarryingCount& carrying, bool wye, Working& working) {
  const auto in = [](int count, std::string mode) {
    return fromPlace("n", static_cast<double>(count), "", std::move(mode));
  };
  record(working, FormulaId{"wiring.carrying"},
         wye ? RuleId{"phase.wye_neutral"} : RuleId{"conductor.counted"},
         static_cast<double>(carrying.most()), "",
         {in(carrying.ordinary, "on an ordinary day"), in(carrying.outage, "in an outage"),
          in(carrying.generator, "on the generator"), in(carrying.bypass, "on the bypass")});
}

void addBranches(const Plan& plan, const Raceway& raceway, RacewayFigures& figures, Edition edition,
                 Working* working, const Tables& tables) {
  for (const auto& circuit : plan.circuits) {
    const Breaker* breaker = find(plan, circuit->planned);
    if (circuit->raceway != raceway.id || breaker == nullptr) continue;
    const bool cable = cableRunsOn(*circuit);
    const std::optional<ConductorSize> size = cable ? circuit->conductor : extensionSize(*circuit);
    if (!size) continue;
    RunConditions conditions;
    conditions.metal = cable ? circuit->metal.valueOr(Metal::copper) : Metal::copper;
    conditions.nmCable = cable && !circuit->wiring.is(WiringMethod::metalCladCable);
    conditions.length = raceway.length;
    conditions.ambient = raceway.ambient;
    conditions.currentCarrying = std::max(figures.carrying.most(), 1);
    const Panel* panel = find(plan, breaker->panel);
    conditions.terminals75 = panel != nullptr && panel->terminals75.is(Answer::yes);
    RacewayBranch branch;
    branch.circuit = circuit->id;
    branch.size = *size;
    branch.device = breaker->rating;
    branch.ampacity = ampacities(*size, conditions, breaker->rating, tables);
    const BranchAnswer answer = branchProtection({*circuit, breaker->rating, *size, conditions.metal,
                                                  branch.ampacity.governing, branch.ampacity.terminal},
                                                 edition, tables);
    branch.protection = branch.ampacity.governing ? answer.protection : BranchProtection::over;
    branch.most = answer.most;
    branch.kind = answer.kind;
    branch.rule = branch.ampacity.governing ? answer.rule : RuleId{"conductor.ambient"};
    branch.asked = answer.asked;
    branch.small = answer.small;
    if (working != nullptr && branch.ampacity.governing) {
      recordAmpacity(*working, *size, conditions, branch.ampacity, edition, tables,
                     say(kCircuit, circuitName(*circuit)));
      const bool kept = branch.protection == BranchProtection::holds;
      if (kept && branch.device.count() > branch.ampacity.governing->count() * kSlack)
        recordNextSizeUp(*working, *branch.ampacity.governing, edition, tables);
    }
    figures.branches.push_back(branch);
  }
}

Verdict verdictOf(const RacewayFigures& figures) {
  Verdict verdict = figures.plasticGround ? Verdict::over : figures.fill;
  for (const RacewayBranch& branch : figures.branches) {
    switch (branch.protection) {
      case BranchProtection::over:
      case BranchProtection::receptacles:
      case BranchProtection::loadAboveAmpacity:
        return Verdict::over;
      case BranchProtection::readLabel:
      case BranchProtection::receptaclesUnknown:
        if (verdict == Verdict::within) verdict = Verdict::notKnown;
        break;
      case BranchProtection::holds:
      case BranchProtection::labelAllows:
        break;
    }
  }
  return verdict;
}

}  // namespace

WorkingSubject workingSubject(const Raceway& raceway) {
  return {say(kAbout, raceway.name), raceway.id.number};
}

CarryingCount carryingCount(const Plan& plan, RacewayId id, const Tables& tables) {
  CarryingCount count;
  const Raceway* raceway = find(plan, id);
  if (raceway == nullptr) return count;
  int always = raceway->otherCarrying;
  for (const auto& circuit : plan.circuits) {
    if (circuit->raceway != id || find(plan, circuit->planned) == nullptr) continue;
    always += hotCount(plan, *circuit) + neutralsThatCount(plan, *circuit, id, tables);
  }
  count.ordinary = count.outage = always;
  for (const Mode mode : modes(plan)) {
    if (mode == Mode::generator) count.generator = always;
    if (mode == Mode::bypass) count.bypass = always;
  }
  const bool wye = voltages(plan, Mode::ordinary, tables).wye;
  for (const Segment segment : segments(plan)) {
    const FeederRun* run = runOf(plan, segment);
    if (run == nullptr || run->inRaceway != id) continue;
    const bool single = voltages(plan, Mode::outage, tables).single && segment != Segment::mainToSwitch &&
                        segment != Segment::bypass;
    const int carrying = wye && !single ? 3 : 2;
    const auto add = [&](int& of, Mode mode) {
      if (carries(plan, segment, mode)) of += carrying;
    };
    add(count.ordinary, Mode::ordinary);
    add(count.outage, Mode::outage);
    add(count.generator, Mode::generator);
    add(count.bypass, Mode::bypass);
  }
  return count;
}

std::vector<RacewayFigures> racewayFigures(const Plan& plan, const std::vector<SegmentFigures>& segments,
                                           Edition edition, Working* working, const Tables& tables) {
  std::vector<RacewayFigures> all;
  if (!plan.site->country.is(Country::unitedStates)) return all;
  for (const auto& raceway : plan.raceways) {
    RacewayFigures figures;
    figures.raceway = raceway->id;
    const WorkingOf about(working, workingSubject(*raceway));
    Contents contents(plan, *raceway, segments, edition, tables);
    contents.read();
    figures.contents = std::move(contents.contents);
    figures.notKnown = std::move(contents.notKnown);
    figures.carrying = carryingCount(plan, raceway->id, tables);
    figures.nipple = raceway->length.inMicrometres() > 0 && raceway->length <= nippleLength(tables);
    if (!figures.nipple)
      figures.adjustment =
          adjustmentFactor(std::max(figures.carrying.most(), 1), tables).value_or(Fraction(1.0));
    figures.plasticGround = raceway->ground.is(GroundPath::raceway) &&
                            (raceway->type.is(RacewayType::pvc40) || raceway->type.is(RacewayType::pvc80));
    measure(figures, *raceway, tables);
    if (working != nullptr) {
      recordFill(figures, *raceway, *working);
      recordCarrying(figures.carrying, voltages(plan, Mode::ordinary, tables).wye, *working);
    }
    addBranches(plan, *raceway, figures, edition, working, tables);
    figures.verdict = verdictOf(figures);
    all.push_back(std::move(figures));
  }
  return all;
}

}  // namespace stayalight
