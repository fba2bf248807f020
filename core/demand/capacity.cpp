// The ways in which a backup source may be large enough: 702.4, 710.15(A).

#include <algorithm>

#include "core/demand/record.h"
#include "core/transfer/battery_output.h"

namespace stayalight {
namespace {

using namespace demanding;

constexpr MessageId kAbout{"capacity.about"};
constexpr MessageId kPacks{"capacity.packs"};
constexpr MessageId kCarries{"capacity.carries"};
constexpr MessageId kCarriesUnknown{"capacity.carries_unknown"};
constexpr MessageId kLegCarries{"capacity.leg_carries"};
constexpr MessageId kFullLeg{"capacity.asked_full_leg"};
constexpr MessageId kDeclared{"capacity.asked_declared"};
constexpr MessageId kFull{"capacity.asked_full"};
constexpr MessageId kManaged{"capacity.asked_managed"};
constexpr MessageId kManagedCalculated{"capacity.asked_managed_calculated"};
constexpr MessageId kStaysOff{"capacity.stays_off"};
constexpr MessageId kSetPoint{"capacity.caution_set_point"};
constexpr MessageId kComesBack{"capacity.caution_comes_back"};
constexpr MessageId kLargest{"capacity.asked_largest"};
constexpr MessageId kLargestLeg{"capacity.asked_largest_leg"};
constexpr MessageId kSetting{"capacity.asked_setting"};
constexpr MessageId kListedManagement{"capacity.listed_management"};
constexpr MessageId kWritten{"capacity.written"};
constexpr MessageId kDwelling{"capacity.dwelling"};
constexpr MessageId kMultimode{"capacity.multimode"};
constexpr MessageId kListedControl{"capacity.listed_control"};
constexpr MessageId kByHand{"capacity.by_hand"};
constexpr MessageId kNotManual{"capacity.closed_not_manual"};
constexpr MessageId kNotAutomatic{"capacity.closed_not_automatic"};
constexpr MessageId kIslandGone{"capacity.closed_island_2026"};
constexpr MessageId kControlOnly2026{"capacity.closed_before_2026"};
constexpr MessageId kNoTransfer{"capacity.closed_no_transfer"};
constexpr MessageId kIslandArguable{"capacity.caution_island_arguable"};
constexpr MessageId kIsland2023{"capacity.caution_island_2023"};
constexpr MessageId kTripping{"capacity.caution_tripping"};
constexpr MessageId kLoadUnknown{"capacity.load_unknown"};

Condition ofAnswer(const Choice<Answer>& answer) {
  return answer.is(Answer::yes)  ? Condition::kept
         : answer.is(Answer::no) ? Condition::broken
                                 : Condition::notKnown;
}

// What a load draws for 702.4: its nameplate, else the unfavourable end of what is entered, whoever knew it.
std::optional<double> drawOf(const Load& load, const Tables& tables) {
  if (const auto rating = nameplateOf(load, tables)) return rating->rating.count();
  const double factor = load.powerFactor.value ? load.powerFactor.value->count() : 1.0;
  if (load.running.high || load.running.value)
    return load.running.high.value_or(load.running.value.value_or(Watts())).count() / factor;
  if (load.runningCurrent.high || load.runningCurrent.value)
    return load.runningCurrent.high.value_or(load.runningCurrent.value.value_or(AcAmperes())).count() *
           load.ratedVoltage;
  return std::nullopt;
}

// Answered as a whole, else by the rows: one that is not listed spoils it.
Answer managementListed(const Transfer& transfer) {
  const Answer whole = transfer.managedListed.valueOr(Answer::unknown);
  if (whole != Answer::unknown || transfer.managed.empty()) return whole;
  Answer rows = Answer::yes;
  for (const ManagedLoad& row : transfer.managed) {
    if (row.listed.is(Answer::no)) return Answer::no;
    if (!row.listed.is(Answer::yes)) rows = Answer::unknown;
  }
  return rows;
}

struct Draws {
  std::vector<StepInput> set, largestOf, largestOnLegOf;
  std::array<std::vector<StepInput>, 2> onLeg;
  double declared = 0.0;
  std::array<double, 2> leg{};
  double largest = 0.0;
  double largestOnLeg = 0.0;  ///< of one load: between hot and neutral it lies on one leg
  std::string largestName;
  bool known = true;         ///< of the declared set
  bool largestKnown = true;  ///< of all loads
  std::vector<Message> unknown;

  void record(Working* working, RuleId rule, bool legs) const {
    if (working == nullptr) return;
    if (!set.empty()) demanding::record(working, "capacity.declared", rule, declared, "VA", set);
    for (std::size_t i = 0; i < 2 && legs; ++i) {
      if (!onLeg[i].empty())
        demanding::record(working, "capacity.declared_leg", rule, leg[i], "VA", onLeg[i]);
    }
    if (!largestOf.empty()) demanding::record(working, "capacity.largest", rule, largest, "VA", largestOf);
    if (!largestOnLegOf.empty() && legs)
      demanding::record(working, "capacity.largest", rule, largestOnLeg, "VA", largestOnLegOf);
  }
};

Message pathAsks(CapacityPath path) {
  switch (path) {
    case CapacityPath::notChosen:
    case CapacityPath::manual:
      return say(kDeclared);
    case CapacityPath::automaticFull:
      return say(kFull);
    case CapacityPath::managed:
      return say(kManaged);
    case CapacityPath::island:
      return say(kLargest);
    case CapacityPath::powerControl:
      return say(kSetting);
  }
  return say(kDeclared);
}

// The most that load management connects where nobody set a limit: the calculated load without what listed
// equipment keeps off as long as the outage lasts. What comes back in it counts, since nothing holds the rest
// down then; of what nobody knows, `least` leaves it out and `most` counts it.
struct Connected {
  std::optional<VoltAmperes> least, most;
  bool back = false;     ///< something comes back
  bool unknown = false;  ///< of something nobody knows
};
Connected connectedByManagement(const Plan& plan, Edition edition, Working* working, const Tables& tables) {
  Connected out;
  std::vector<LoadId> away, perhaps;
  for (const ManagedLoad& row : plan.transfer->managed) {
    if (!row.load.valid() || !row.listed.is(Answer::yes) || row.shedBy.is(ShedBy::byHand)) continue;
    if (row.offInOutage.is(Answer::yes)) away.push_back(row.load);
    if (!row.offInOutage.is(Answer::no)) perhaps.push_back(row.load);
    out.back = out.back || row.offInOutage.is(Answer::no);
  }
  out.unknown = perhaps.size() > away.size();
  const auto total = [&](const std::vector<LoadId>& without, Working* to) -> std::optional<VoltAmperes> {
    const DemandCalculation load = standardLoad(feederQuestion(plan, edition, tables, without), to, tables);
    if (!load.complete()) return std::nullopt;
    return load.total;
  };
  out.most = total(away, working);
  out.least = out.unknown ? total(perhaps, nullptr) : out.most;
  return out;
}

Draws drawsOf(const Plan& plan, bool recording, const Tables& tables) {
  Draws out;
  for (const auto& circuit : plan.circuits) {
    if (!backedUp(plan, *circuit)) continue;
    const Breaker* const breaker = find(plan, circuit->planned);
    const Panel* const panel = breaker != nullptr ? find(plan, breaker->panel) : nullptr;
    if (panel == nullptr) continue;
    const std::vector<Leg> poles = poleLegs(*panel, placementOf(*breaker));
    for (const Load& load : circuit->loads) {
      const std::optional<double> draw = drawOf(load, tables);
      const bool meant = !load.meantToRun.is(Answer::no);
      const std::string name = load.name.empty() ? circuit->name : load.name;
      if (!draw) {
        out.largestKnown = false;
        out.known = out.known && !meant;
        out.unknown.push_back(say(MessageId{"demand.name"}, name));
        continue;
      }
      const auto noted = [&](double part) { return input("S", part, "VA", kNoStep, name); };
      const double onOne = load.connection.is(Connection::lineToLine) ? *draw / 2.0 : *draw;
      out.largestOnLeg = std::max(out.largestOnLeg, onOne);
      if (recording) {
        out.largestOf.push_back(noted(*draw));
        out.largestOnLegOf.push_back(noted(onOne));
      }
      if (*draw > out.largest) {
        out.largest = *draw;
        out.largestName = name;
      }
      if (!meant) continue;
      out.declared += *draw;
      if (recording) out.set.push_back(noted(*draw));
      const auto onLeg = [&](std::size_t leg, double part) {
        out.leg[leg] += part;
        if (recording) out.onLeg[leg].push_back(noted(part));
      };
      if (load.connection.is(Connection::lineToLine)) {
        for (std::size_t leg = 0; leg < 2; ++leg) onLeg(leg, *draw / 2.0);
      } else if (!poles.empty()) {
        onLeg(index(load.pole == 2 && poles.size() > 1 ? poles[1] : poles[0]), *draw);
      }
    }
  }
  return out;
}

CapacityCondition carries(MessageId asked, const std::optional<VoltAmperes>& load,
                          const std::optional<VoltAmperes>& source, bool complete) {
  CapacityCondition condition;
  if (!load || !source) {
    condition.what = say(kCarriesUnknown, std::vector<Message>{say(asked)});
    return condition;
  }
  condition.what = say(kCarries, std::vector<Message>{say(asked)}, voltAmperes(*load), voltAmperes(*source));
  const Verdict verdict = compare(*load, complete ? *load : VoltAmperes(1e12), source);
  condition.state = verdict == Verdict::within ? Condition::kept
                    : verdict == Verdict::over ? Condition::broken
                                               : Condition::notKnown;
  return condition;
}

void conclude(PathFigures& path) {
  path.verdict = path.closed ? Verdict::over : Verdict::within;
  for (const CapacityCondition& condition : path.conditions) {
    path.verdict = worse(path.verdict, condition.state == Condition::kept     ? Verdict::within
                                       : condition.state == Condition::broken ? Verdict::over
                                                                              : Verdict::notKnown);
  }
}

}  // namespace

Message pathName(CapacityPath path) {
  constexpr std::array<MessageId, 6> names = {
      MessageId{"capacity.path.not_chosen"},     MessageId{"capacity.path.manual_transfer"},
      MessageId{"capacity.path.automatic_full"}, MessageId{"capacity.path.managed_load"},
      MessageId{"capacity.path.island_rule"},    MessageId{"capacity.path.power_control"}};
  return say(names[static_cast<std::size_t>(path)]);
}

WorkingSubject workingSubject(CapacityPath path) { return {say(kAbout, std::vector{pathName(path)}), 0}; }

std::vector<PathFigures> capacityPaths(const Plan& plan, Edition edition, const InverterLimits& limits,
                                       DemandFigures& figures, Working* working, const Tables& tables) {
  const Transfer& transfer = *plan.transfer;
  const Inverter& inverter = *plan.inverter;
  const bool none = transfer.arrangement.is(Arrangement::none) || !transfer.arrangement.known();
  const bool manual = transfer.arrangement.is(Arrangement::manualSwitch);
  const Draws draws = drawsOf(plan, working != nullptr, tables);
  const auto& source = figures.carries;
  figures.largestName = draws.largestName;
  if (!draws.largestName.empty()) figures.largestSingle = VoltAmperes(draws.largest);
  const std::optional<VoltAmperes>& single = figures.largestSingle;

  std::vector<PathFigures> paths;
  paths.reserve(5);  // references to earlier ones stay good
  const auto begin = [&](CapacityPath path, const char* rule) -> PathFigures& {
    PathFigures made;
    made.path = path;
    made.rule = RuleId{rule};
    made.chosen = transfer.capacityPath.is(path);
    if (none) made.closed = say(kNoTransfer);
    paths.push_back(std::move(made));
    return paths.back();
  };

  PathFigures& byHand = begin(CapacityPath::manual, "capacity.manual");
  {
    const WorkingOf of(working, workingSubject(CapacityPath::manual));
    draws.record(working, byHand.rule, limits.leg.has_value());
  }
  if (!none && !manual) byHand.closed = say(kNotManual);
  byHand.asked = VoltAmperes(draws.declared);
  byHand.conditions.push_back(carries(kDeclared, byHand.asked, source, draws.known));
  if (limits.leg) {
    const double leg = std::max(draws.leg[0], draws.leg[1]);
    const VoltAmperes ofLeg = nominalLegVolts(tables) * *limits.leg;
    byHand.conditions.push_back(carries(kLegCarries, VoltAmperes(leg), ofLeg, draws.known));
  }
  if (!draws.unknown.empty()) byHand.caution = say(kLoadUnknown, std::vector<Message>(draws.unknown));

  PathFigures& full = begin(CapacityPath::automaticFull, "capacity.automatic");
  if (manual) full.closed = say(kNotAutomatic);
  full.asked = figures.feederLoad.load;
  full.conditions.push_back(carries(kFull, full.asked, source, true));
  const auto& legs = figures.feederLoad.legs;
  if (legs && limits.leg) {
    full.conditions.push_back(
        carries(kFullLeg, std::max((*legs)[0], (*legs)[1]), nominalLegVolts(tables) * *limits.leg, true));
  }

  PathFigures& managed = begin(CapacityPath::managed, "capacity.managed");
  if (manual) managed.closed = say(kNotAutomatic);
  managed.asked = transfer.managedLimit;
  if (transfer.managedLimit || transfer.managed.empty()) {
    managed.conditions.push_back(carries(kManaged, managed.asked, source, true));
    if (transfer.managedLimit) managed.caution = say(kSetPoint, Citation{RuleId{"load.energy_management"}});
  } else {
    const WorkingOf of(working, workingSubject(CapacityPath::managed));
    const Connected connected = connectedByManagement(plan, edition, working, tables);
    managed.asked = connected.most;
    CapacityCondition condition = carries(kManagedCalculated, connected.most, source, true);
    const bool perhaps = connected.least && source && condition.state == Condition::broken &&
                         compare(*connected.least, *connected.least, source) == Verdict::within;
    if (perhaps) condition.state = Condition::notKnown;
    managed.conditions.push_back(std::move(condition));
    if (connected.unknown) managed.conditions.push_back({say(kStaysOff), Condition::notKnown});
    if (connected.back) managed.caution = say(kComesBack, Citation{RuleId{"load.energy_management"}});
  }
  managed.conditions.push_back({say(kListedManagement), ofAnswer(managementListed(transfer))});

  PathFigures& island = begin(CapacityPath::island, "capacity.island");
  if (edition == Edition::y2026) island.closed = say(kIslandGone);
  if (manual) island.closed = say(kNotAutomatic);
  island.asked = single;
  island.caution = say(edition <= Edition::y2020 ? kIslandArguable : kIsland2023);
  const auto largest = [&](PathFigures& path) {
    path.conditions.push_back(carries(kLargest, single, source, draws.largestKnown));
    if (single && limits.leg) {
      path.conditions.push_back(carries(kLargestLeg, VoltAmperes(draws.largestOnLeg),
                                        nominalLegVolts(tables) * *limits.leg, draws.largestKnown));
    }
  };
  largest(island);
  const bool agreed = transfer.capacityPath.is(CapacityPath::island) && !transfer.capacityAgreedBy.empty() &&
                      !transfer.capacityAgreedOn.empty();
  Condition written = ofAnswer(transfer.capacityAgreedInWriting);
  if (!agreed && written == Condition::kept) written = Condition::notKnown;
  island.conditions.push_back({say(kWritten), written});

  PathFigures& control = begin(CapacityPath::powerControl, "capacity.power_control");
  if (edition != Edition::y2026) control.closed = say(kControlOnly2026);
  if (manual) control.closed = say(kNotAutomatic);
  control.asked = inverter.controlSetting;
  control.caution = say(kTripping);
  control.conditions.push_back(
      {say(kDwelling), plan.site->dwelling.is(DwellingKind::oneOrTwoFamily) ? Condition::kept
                       : plan.site->dwelling.is(DwellingKind::other)        ? Condition::broken
                                                                            : Condition::notKnown});
  control.conditions.push_back({say(kMultimode), ofAnswer(inverter.multimode)});
  control.conditions.push_back({say(kListedControl), ofAnswer(inverter.powerControlListed)});
  control.conditions.push_back(carries(kSetting, inverter.controlSetting, source, true));
  largest(control);
  control.conditions.push_back({say(kByHand), ofAnswer(inverter.reconnectsByHand)});

  // Of packs that nobody knows the source may carry less.
  const bool packsKnown = batteryOutput(inverter, *plan.battery).has_value();
  for (PathFigures& path : paths) {
    if (!packsKnown) path.conditions.push_back({say(kPacks), Condition::notKnown});
    conclude(path);
    const WorkingOf of(working, workingSubject(path.path));
    if (path.asked && source) {
      record(working, "capacity.share", path.rule, path.asked->count() / source->count(), "",
             {input("S", path.asked->count(), "VA", kNoStep, render(pathAsks(path.path), plainEnglish())),
              input("P", source->count(), "VA", kNoStep, "what the inverters carry all day")});
    }
  }
  return paths;
}

}  // namespace stayalight
