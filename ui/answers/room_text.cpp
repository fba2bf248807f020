#include "ui/answers/room_text.h"

#include "core/wiring/extension.h"
#include "core/wiring/neutral_terminals.h"
#include "ui/answers/calculation_text.h"
#include "ui/inspector/entity_text.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kHead{"answers.room"};
constexpr MessageId kFilled{"answers.room.filled"};
constexpr MessageId kCounted{"answers.room.counted"};
constexpr MessageId kNipple{"answers.room.nipple"};
constexpr MessageId kAdjusted{"answers.room.adjusted"};
constexpr MessageId kLeast{"answers.room.least"};
constexpr MessageId kMissing{"answers.room.missing"};
constexpr MessageId kTakes{"answers.room.takes"};
constexpr MessageId kNeeds{"answers.room.needs"};
constexpr MessageId kByRaceway{"answers.room.by_raceway"};
constexpr MessageId kGutter{"answers.room.gutter"};
constexpr MessageId kGutterDetail{"answers.room.gutter_detail"};

constexpr MessageId kTerminals{"answers.room.terminals"};
constexpr MessageId kTerminalsValue{"answers.room.terminals_value"};
constexpr MessageId kTerminalsDetail{"answers.room.terminals_detail"};

constexpr MessageId kDcCable{"answers.dc_cable"};
constexpr MessageId kDcValue{"answers.dc_cable.value"};
constexpr MessageId kDcCurrent{"answers.dc_cable.current"};
constexpr MessageId kDcDrop{"answers.dc_cable.drop"};
constexpr MessageId kBusBeside{"answers.bus.beside"};
constexpr MessageId kBuilding{"answers.building"};
constexpr MessageId kBuildingDisconnect{"answers.building.disconnect"};
constexpr MessageId kBuildingElectrode{"answers.building.electrode"};
constexpr MessageId kBuildingDrop{"answers.building.drop"};
constexpr MessageId kBus{"answers.bus"};
constexpr MessageId kBusOption[] = {MessageId{"answers.bus.not_chosen"}, MessageId{"answers.bus.anywhere"},
                                    MessageId{"answers.bus.opposite_ends"}, MessageId{"answers.bus.sum"}};

Figure percent(double fraction) { return {fraction * 100.0, "%", 0}; }
Figure cubicInches(CubicInches volume) { return {volume.count(), "in³", 1}; }
Figure squareInches(SquareInches area) { return {area.count(), "in²", 2}; }

// The moved circuit whose wire has the least left over its breaker.
const RacewayBranch* tightest(const RacewayFigures& figures) {
  const RacewayBranch* worst = nullptr;
  const auto left = [](const RacewayBranch& branch) {
    return branch.ampacity.governing.value_or(AcAmperes()).count() - branch.device.count();
  };
  for (const RacewayBranch& branch : figures.branches) {
    if (worst == nullptr || left(branch) < left(*worst)) worst = &branch;
  }
  return worst;
}

AnswerLine racewayLine(const Plan& plan, const RacewayFigures& figures, const Language& language) {
  AnswerLine line;
  line.label =
      QString::fromStdString(entityName(plan, {RecordKind::raceway, figures.raceway.number}, language));
  const double share = figures.area.count() / figures.inside.count();
  line.value =
      words(language, kFilled, percent(share), percent(figures.allowed.count() / figures.inside.count()));
  line.verdict = figures.verdict;
  QStringList detail;
  detail << words(language, kCounted, std::int64_t{figures.conductors},
                  std::int64_t{figures.carrying.most()});
  detail << (figures.nipple ? words(language, kNipple)
                            : words(language, kAdjusted, percent(figures.adjustment.count())));
  if (const RacewayBranch* worst = tightest(figures); worst != nullptr && worst->ampacity.governing) {
    detail << words(language, kLeast, circuitName(*find(plan, worst->circuit)),
                    Figure{worst->ampacity.governing->count(), "A", 1},
                    Figure{static_cast<double>(worst->device.count()), "A", 0});
  }
  for (const Message& missing : figures.notKnown)
    detail << words(language, kMissing, std::vector<Message>{missing});
  line.detail = detail.join(QStringLiteral("; "));
  line.working = {
      line.label, line.value, {share}, {"wiring"}, {}, workingSubject(*find(plan, figures.raceway)), true};
  return line;
}

AnswerLine boxLine(const Plan& plan, const SpliceBoxFigures& figures, const Language& language) {
  AnswerLine line;
  line.label =
      QString::fromStdString(entityName(plan, {RecordKind::spliceBox, figures.box.number}, language));
  line.verdict = figures.verdict;
  if (figures.large) {
    line.value = words(language, kByRaceway);
    return line;
  }
  line.value = figures.volume
                   ? words(language, kTakes, cubicInches(figures.needed), cubicInches(*figures.volume))
                   : words(language, kNeeds, cubicInches(figures.needed));
  QStringList detail;
  for (const Message& missing : figures.notKnown)
    detail << words(language, kMissing, std::vector<Message>{missing});
  line.detail = detail.join(QStringLiteral("; "));
  line.working = {line.label, line.value, {figures.needed.count()},
                  {"wiring"}, {},         workingSubject(*find(plan, figures.box))};
  return line;
}

AnswerLine gutterLine(const Plan& plan, const WiringSpaceFigures& figures, const Language& language) {
  AnswerLine line;
  line.label = words(language, kGutter, find(plan, figures.panel)->name);
  line.verdict = figures.verdict;
  QStringList detail;
  if (figures.space) {
    const double space = figures.space->count();
    line.value = words(language, kFilled, percent(figures.area.count() / space),
                       percent(figures.allowed->count() / space));
    detail << words(language, kGutterDetail, std::int64_t{figures.conductors}, std::int64_t{figures.spliced},
                    percent(figures.splicedArea.count() / space),
                    percent(figures.withSplices->count() / space));
  } else {
    line.value = words(language, kNeeds, squareInches(figures.area));
  }
  line.working = {line.label,
                  line.value,
                  {figures.space ? figures.area.count() / figures.space->count() : figures.area.count()},
                  {"wiring"},
                  {},
                  wiringSpaceSubject(*find(plan, figures.panel)),
                  true};
  for (const Message& missing : figures.notKnown)
    detail << words(language, kMissing, std::vector<Message>{missing});
  line.detail = detail.join(QStringLiteral("; "));
  return line;
}

AnswerLine terminalsLine(const Plan& plan, const NeutralTerminals& figures, const Language& language) {
  AnswerLine line;
  line.label = words(language, kTerminals, find(plan, figures.panel)->name);
  line.value = words(language, kTerminalsValue, std::int64_t{figures.landed()},
                     std::int64_t{*figures.terminals}, std::int64_t{*figures.left()});
  line.detail = words(language, kTerminalsDetail, std::int64_t{figures.circuits},
                      std::int64_t{figures.feeders}, std::int64_t{figures.surgeDevices});
  line.verdict = *figures.left() < 0 ? Verdict::over : Verdict::within;
  return line;
}

}  // namespace

void addSourceLines(const Plan& plan, const Assessment& a, const Language& language,
                    std::vector<AnswerLine>& lines) {
  if (a.dcCable) {
    const DcCableFigures& figures = *a.dcCable;
    AnswerLine line;
    line.label = words(language, kDcCable);
    line.verdict = figures.verdict;
    if (figures.device && figures.conductor.size) {
      line.value = words(language, kDcValue, std::int64_t{figures.device->count()},
                         conductorName(*figures.conductor.size, figures.conductor.metal));
    }
    QStringList detail;
    if (figures.current)
      detail << words(language, kDcCurrent, Figure{figures.current->count(), "A", 0},
                      Figure{figures.required->count(), "A", 0});
    if (figures.dropFraction)
      detail << words(language, kDcDrop, Figure{*figures.dropFraction * 100.0, "%", 1});
    for (const Message& missing : figures.notKnown)
      detail << words(language, kMissing, std::vector<Message>{missing});
    line.detail = detail.join(QStringLiteral("; "));
    if (figures.required) {
      line.working = {line.label,       line.value, {figures.required->count()}, {"wiring"}, {},
                      dcCableSubject(), true};
    }
    lines.push_back(line);
  }
  for (const BusFigures& bus : a.buses) {
    AnswerLine line;
    line.label = words(language, kBus, find(plan, bus.panel)->name);
    line.verdict = bus.verdict;
    const std::size_t shown =
        bus.chosen == BusOption::notChosen ? 0 : static_cast<std::size_t>(bus.chosen) - 1;
    const BusOptionFigure& option = bus.options[shown];
    if (option.sum && option.most) {
      line.value =
          words(language, kTakes, Figure{option.sum->count(), "A", 0}, Figure{option.most->count(), "A", 0});
    }
    QStringList beside{words(language, kBusOption[static_cast<std::size_t>(bus.chosen)])};
    for (const BusOptionFigure& other : bus.options) {
      if (!other.sum || !other.most || !other.applies) continue;
      beside << words(language, kBusBeside,
                      words(language, kBusOption[static_cast<std::size_t>(other.option)]).toStdString(),
                      Figure{other.sum->count(), "A", 0}, Figure{other.most->count(), "A", 0},
                      verdictName(other.verdict, language).toStdString());
    }
    line.detail = beside.join(QStringLiteral("; "));
    if (option.sum) {
      line.working = {line.label, line.value, {option.sum->count()},
                      {"wiring"}, {},         busSubject(*find(plan, bus.panel))};
    }
    lines.push_back(line);
  }
}

AnswerLine buildingLine(const Plan& plan, const BuildingFigures& figures, const Language& language) {
  AnswerLine line;
  line.label = words(language, kBuilding, find(plan, figures.panel)->name);
  line.value = words(language, kBuildingDisconnect, std::int64_t{figures.leastDisconnect.count()});
  QStringList detail;
  if (figures.electrodeConductor)
    detail << words(language, kBuildingElectrode, conductorName(*figures.electrodeConductor, Metal::copper));
  if (figures.drop) detail << words(language, kBuildingDrop, Figure{*figures.drop * 100.0, "%", 1});
  line.detail = detail.join(QStringLiteral("; "));
  line.working = {line.label, line.value, {static_cast<double>(figures.leastDisconnect.count())},
                  {"wiring"}, {},         buildingSubject(*find(plan, figures.panel)),
                  true};
  return line;
}

AnswerSection roomSection(const Plan& plan, const Assessment& a, const Language& language) {
  AnswerSection section;
  section.heading = words(language, kHead);
  if (plan.site->country.is(Country::unitedStates))
    section.note = editionNote(plan, RuleId{"raceway.fill"}, language);
  for (const RacewayFigures& figures : a.raceways)
    section.lines.push_back(racewayLine(plan, figures, language));
  for (const SpliceBoxFigures& figures : a.boxes) section.lines.push_back(boxLine(plan, figures, language));
  for (const WiringSpaceFigures& figures : a.wiringSpaces)
    section.lines.push_back(gutterLine(plan, figures, language));
  for (const NeutralTerminals& figures : neutralTerminals(plan)) {
    if (figures.terminals) section.lines.push_back(terminalsLine(plan, figures, language));
  }
  for (const BuildingFigures& figures : a.buildings)
    section.lines.push_back(buildingLine(plan, figures, language));
  return section;
}

}  // namespace stayalight
