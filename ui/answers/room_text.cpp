#include "ui/answers/room_text.h"

#include "core/wiring/extension.h"
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
  line.working = {line.label, line.value, {share}, {"wiring"}};
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
  line.working = {line.label, line.value, {figures.needed.count()}, {"wiring"}};
  return line;
}

AnswerLine gutterLine(const Plan& plan, const WiringSpaceFigures& figures, const Language& language) {
  AnswerLine line;
  line.label = words(language, kGutter, find(plan, figures.panel)->name);
  line.verdict = figures.verdict;
  line.value = figures.space
                   ? words(language, kFilled, percent(figures.area.count() / figures.space->count()),
                           percent(wiringSpaceConductors().count()))
                   : words(language, kNeeds, squareInches(figures.area));
  line.detail = words(language, kGutterDetail, std::int64_t{figures.conductors});
  return line;
}

}  // namespace

AnswerSection roomSection(const Plan& plan, const Assessment& a, const Language& language) {
  AnswerSection section;
  section.heading = words(language, kHead);
  for (const RacewayFigures& figures : a.raceways)
    section.lines.push_back(racewayLine(plan, figures, language));
  for (const SpliceBoxFigures& figures : a.boxes) section.lines.push_back(boxLine(plan, figures, language));
  for (const WiringSpaceFigures& figures : a.wiringSpaces)
    section.lines.push_back(gutterLine(plan, figures, language));
  return section;
}

}  // namespace stayalight
