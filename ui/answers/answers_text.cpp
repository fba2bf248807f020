#include "ui/answers/answers_text.h"

#include <algorithm>
#include <cmath>

#include "core/plan/field.h"
#include "ui/answers/calculation_text.h"
#include "ui/answers/room_text.h"
#include "ui/inspector/entity_text.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kNoBackup{"answers.no_backup"};
constexpr MessageId kNothingMoved{"answers.nothing_moved"};
constexpr MessageId kHoursRange{"answers.hours.range"};
constexpr MessageId kHoursOne{"answers.hours.one"};
constexpr MessageId kHoursOver{"answers.hours.over"};
constexpr MessageId kHoursOpen{"answers.hours.open"};
constexpr MessageId kHoursShort{"answers.hours.short"};
constexpr MessageId kHoursUnknown{"answers.hours.unknown"};
constexpr MessageId kHoursAtOnce{"answers.hours.at_once"};
constexpr MessageId kSecond{"answers.second"};
constexpr MessageId kSecondOpen{"answers.second.open"};
constexpr MessageId kSecondOverload{"answers.second.overload"};
constexpr MessageId kToEnter{"answers.to_enter"};
constexpr MessageId kMedical{"answers.medical"};
constexpr MessageId kLoadHead{"answers.load"};
constexpr MessageId kLoadNote{"answers.load.note"};
constexpr MessageId kAverage{"answers.average"};
constexpr MessageId kLikelyPeak{"answers.likely_peak"};
constexpr MessageId kLegPeak{"answers.leg_peak"};
constexpr MessageId kConnected{"answers.connected"};
constexpr MessageId kNeutral{"answers.neutral"};
constexpr MessageId kNeutralDetail{"answers.neutral.detail"};
constexpr MessageId kOf{"answers.of"};
constexpr MessageId kNoLimit{"answers.no_limit"};
constexpr MessageId kOdds{"answers.odds"};
constexpr MessageId kOddsNone{"answers.odds.none"};
constexpr MessageId kOddsStarts{"answers.odds.starts"};
constexpr MessageId kLegAverage{"answers.leg_average"};
constexpr MessageId kStartHead{"answers.start"};
constexpr MessageId kStartNote{"answers.start.note"};
constexpr MessageId kStartLine{"answers.start.line"};
constexpr MessageId kStartDetail{"answers.start.detail"};
constexpr MessageId kStartDetailAlone{"answers.start.detail_alone"};
constexpr MessageId kStartMargin{"answers.start.margin"};
constexpr MessageId kStartTotal{"answers.start.total"};
constexpr MessageId kWorstStart{"answers.worst_start"};
constexpr MessageId kWorstPair{"answers.worst_pair"};
constexpr MessageId kPairNames{"answers.pair_names"};
constexpr MessageId kAllAtOnce{"answers.all_at_once"};
constexpr MessageId kBatteryAtStart{"answers.battery_at_start"};
constexpr MessageId kNoStarts{"answers.no_starts"};
constexpr MessageId kFeederHead{"answers.feeder"};
constexpr MessageId kFeederNotEntered{"answers.feeder.not_entered"};
constexpr MessageId kFeederNone{"answers.feeder.none"};
constexpr MessageId kDeviceUnknown{"answers.device_unknown"};
constexpr MessageId kDevice{"answers.device"};
constexpr MessageId kConductors{"answers.conductors"};
constexpr MessageId kNeutralOf{"answers.neutral_of"};
constexpr MessageId kGroundOf{"answers.ground_of"};
constexpr MessageId kInPlan{"answers.in_plan"};
constexpr MessageId kDropOf{"answers.drop"};
constexpr MessageId kCopper{"answers.copper"};
constexpr MessageId kAluminium{"answers.aluminium"};
constexpr MessageId kBatteryHead{"answers.battery"};
constexpr MessageId kRuntime{"answers.runtime"};
constexpr MessageId kDarkAt{"answers.dark_at"};
constexpr MessageId kUsable{"answers.usable"};
constexpr MessageId kReserveAt{"answers.reserve_at"};
constexpr MessageId kTitleHours{"answers.title.hours"};
constexpr MessageId kUnknownValue{"answers.unknown_value"};

constexpr double kShortHours = 2.0;  // below, minutes count

Figure wholePercent(double fraction) { return {fraction * 100.0, "%", 0}; }

std::string half(Hours time, const Language& language) { return halfHours(time, language).toStdString(); }
std::string plain(const QString& text) { return text.toStdString(); }

std::string amps(AcAmperes current, const Language& language) { return plain(amperes(current, language)); }

QString ofLimit(const QString& value, const std::optional<QString>& limit, const Language& language) {
  return limit ? words(language, kOf, plain(value), plain(*limit)) : value;
}

QString bare(AcAmperes current, const Language& language) {
  return QString::fromStdString(language.number(current.count(), current.count() < 99.95 ? 1 : 0));
}

std::string loadName(const Plan& plan, LoadId id, const Language& language) {
  const auto* load = static_cast<const Load*>(findRecord(plan, {RecordKind::load, id.number}));
  if (load != nullptr && !load->name.empty()) return load->name;
  if (const Circuit* circuit = circuitOf(plan, id))
    return entityName(plan, {RecordKind::circuit, circuit->id.number}, language);
  return entityName(plan, {RecordKind::load, id.number}, language);
}

QString oddsWords(const HourLoad& load, const Language& language) {
  if (!load.oddsOver) return {};
  const double odds = *load.oddsOver;
  QString text;
  if (odds < 1e-6)
    text = words(language, kOddsNone);
  else
    text = words(language, kOdds, Figure{odds * 100.0, "%", odds < 0.001 ? 4 : odds < 0.01 ? 2 : 1});
  if (load.timesOver && *load.timesOver >= 0.0005) {
    text += QLatin1String("; ") + words(language, kOddsStarts, Figure{*load.timesOver, "", 3});
  }
  return text;
}

AnswerSection loadSection(const Assessment& a, const Language& language) {
  AnswerSection section;
  section.heading = words(language, kLoadHead);
  section.note = words(language, kLoadNote, ClockTime{a.hour.hour * 60});
  const HourLoad& total = a.hour.total;
  const auto wattLine = [&](MessageId label, Watts value, std::optional<Watts> limit,
                            std::optional<Verdict> verdict, const QString& detail,
                            std::vector<double> steps) {
    AnswerLine line;
    line.label = words(language, label);
    const QString shown = watts(value, language);
    line.value = ofLimit(shown, limit ? std::optional(watts(*limit, language)) : std::nullopt, language);
    line.detail = detail;
    line.verdict = verdict;
    line.working = {line.label, shown, std::move(steps), {"current", "power"}};
    section.lines.push_back(line);
  };
  // The working is recorded leg by leg; both legs together are the sum of their watts.
  const auto& legs = a.hour.leg;
  wattLine(kAverage, total.average.likely, std::nullopt, std::nullopt, {},
           {legs[0].averageCurrent.likely.count(), legs[1].averageCurrent.likely.count()});
  wattLine(kLikelyPeak, total.likelyPeak.likely, total.limitWatts, total.verdict, oddsWords(total, language),
           {total.likelyPeakCurrent.likely.count(), legs[0].connectedCurrent.count(),
            legs[1].connectedCurrent.count()});
  wattLine(kConnected, total.connected.real, std::nullopt, std::nullopt, {},
           {legs[0].connectedCurrent.count(), legs[1].connectedCurrent.count()});
  for (const Leg leg : {Leg::l1, Leg::l2}) {
    const HourLoad& load = a.hour.leg[index(leg)];
    AnswerLine line;
    line.label = words(language, kLegPeak, std::string(legName(leg)));
    const QString shown = amperes(load.likelyPeakCurrent.likely, language);
    line.value = ofLimit(bare(load.likelyPeakCurrent.likely, language),
                         load.limit ? std::optional(amperes(*load.limit, language)) : std::nullopt, language);
    if (!load.limit) line.value = shown;
    const QString average = words(language, kLegAverage, amps(load.averageCurrent.likely, language),
                                  amps(load.connectedCurrent, language));
    const QString odds = oddsWords(load, language);
    line.detail = odds.isEmpty() ? average : QString(average + QLatin1String("; ") + odds);
    line.verdict = load.verdict;
    line.working = {line.label,
                    shown,
                    {load.likelyPeakCurrent.likely.count(), load.connectedCurrent.count(),
                     load.averageCurrent.likely.count()},
                    {"current", "power"}};
    section.lines.push_back(line);
  }
  AnswerLine neutral;
  neutral.label = words(language, kNeutral);
  neutral.value = amperes(a.hour.neutralAverage, language);
  neutral.detail = words(language, kNeutralDetail, amps(a.hour.neutralWorst, language));
  neutral.working = {neutral.label,
                     neutral.value,
                     {a.hour.neutralAverage.count(), a.hour.neutralWorst.count()},
                     {"current", "power"}};
  section.lines.push_back(neutral);
  return section;
}

// The leg, or the total, that a start's verdict hangs on: the one with the smallest margin in amperes.
const StartFigure<AcAmperes>* worstLegFigure(const StartCheck& check) {
  const auto& worst = check.leg[index(check.worstLeg)];
  if (worst) return &*worst;
  const auto& other = check.leg[index(otherLeg(check.worstLeg))];
  return other ? &*other : nullptr;
}

AnswerLine startLine(const QString& label, const QString& names, const StartCheck& check,
                     const Language& language) {
  AnswerLine line;
  line.label = label;
  line.verdict = check.verdict;
  if (const StartFigure<AcAmperes>* figure = worstLegFigure(check)) {
    const QString leg = QString::fromUtf8(legName(check.worstLeg).data());
    const QString high = bare(figure->highSum, language);
    line.value =
        ofLimit(high, figure->highLimit ? std::optional(amperes(*figure->highLimit, language)) : std::nullopt,
                language);
    if (!figure->highLimit) line.value = amperes(figure->highSum, language);
    QString margin = figure->margin ? words(language, kStartMargin, amps(*figure->margin, language))
                                    : words(language, kNoLimit);
    if (figure->margin && check.real.margin) {
      margin += QLatin1String(", ") + watts(*check.real.margin, language);
    }
    line.detail = names.isEmpty() ? words(language, kStartDetailAlone, plain(leg),
                                          amps(figure->likelySum, language), plain(margin))
                                  : words(language, kStartDetail, plain(names), plain(leg),
                                          amps(figure->likelySum, language), plain(margin));
    line.working = {
        label,
        words(language, kStartLine, amps(figure->likelySum, language), amps(figure->highSum, language)),
        {figure->highSum.count(), figure->likelySum.count()},
        {"start", "current", "power"}};
  } else {
    line.value = words(language, kUnknownValue);
    line.detail = names;
    line.working = {label,
                    line.value,
                    {check.total.highSum.count(), check.total.likelySum.count()},
                    {"start", "current", "power"}};
  }
  return line;
}

AnswerSection startSection(const Plan& plan, const Assessment& a, const Language& language) {
  AnswerSection section;
  section.heading = words(language, kStartHead);
  section.note = words(language, kStartNote);
  if (a.starts.checks.empty()) {
    AnswerLine none;
    none.label = words(language, kNoStarts);
    section.lines.push_back(none);
    return section;
  }
  // The worst: the smallest margin in amperes, one that is not known first.
  const auto worse = [](const StartCheck& x, const StartCheck& y) {
    const auto key = [](const StartCheck& check) {
      const StartFigure<AcAmperes>* figure = worstLegFigure(check);
      const double margin = figure != nullptr && figure->margin ? figure->margin->count() : -1e9;
      return std::pair(check.verdict == Verdict::over       ? 0
                       : check.verdict == Verdict::notKnown ? 1
                                                            : 2,
                       margin);
    };
    return key(x) < key(y);
  };
  const StartCheck& worst = *std::min_element(a.starts.checks.begin(), a.starts.checks.end(), worse);
  section.lines.push_back(startLine(words(language, kWorstStart),
                                    QString::fromStdString(loadName(plan, worst.loads.front(), language)),
                                    worst, language));
  AnswerLine total;
  total.label = words(language, kStartTotal);
  const auto volt = [&](VoltAmperes s) {
    return QString(QString::fromStdString(language.number(s.count(), 0)) + QLatin1String(" VA"));
  };
  total.value =
      ofLimit(volt(worst.total.highSum),
              worst.total.highLimit ? std::optional(volt(*worst.total.highLimit)) : std::nullopt, language);
  total.verdict = worst.total.verdict;
  total.working = {total.label,
                   volt(worst.total.highSum),
                   {worst.total.highSum.count(), worst.total.likelySum.count()},
                   {"start", "current", "power"}};
  section.lines.push_back(total);
  if (a.starts.worstPair && a.starts.worstPair->loads.size() == 2) {
    const StartCheck& pair = *a.starts.worstPair;
    const QString names = words(language, kPairNames, loadName(plan, pair.loads[0], language),
                                loadName(plan, pair.loads[1], language));
    section.lines.push_back(startLine(words(language, kWorstPair), names, pair, language));
  }
  if (a.starts.allAtOnce)
    section.lines.push_back(startLine(words(language, kAllAtOnce), {}, *a.starts.allAtOnce, language));
  if (worst.battery) {
    AnswerLine battery;
    battery.label = words(language, kBatteryAtStart);
    const auto dc = [&](DcAmperes i) {
      return QString(QString::fromStdString(language.number(i.count(), 0)) + QLatin1String(" A"));
    };
    battery.value = ofLimit(
        dc(worst.battery->highSum),
        worst.battery->highLimit ? std::optional(dc(*worst.battery->highLimit)) : std::nullopt, language);
    battery.verdict = worst.battery->verdict;
    battery.working = {battery.label,
                       dc(worst.battery->highSum),
                       {worst.battery->highSum.count(), worst.battery->likelySum.count()},
                       {"start"}};
    section.lines.push_back(battery);
  }
  // Every motor by itself.
  for (const StartCheck& check : a.starts.checks) {
    if (&check == &worst || check.loads.empty()) continue;
    section.lines.push_back(startLine(QString::fromStdString(loadName(plan, check.loads.front(), language)),
                                      {}, check, language));
  }
  return section;
}

AnswerSection feederSection(const Plan& plan, const Assessment& a, const Language& language) {
  AnswerSection section;
  section.heading = words(language, kFeederHead);
  if (!a.segments.empty()) section.note = editionNote(plan, RuleId{"conductor.ampacity"}, language);
  if (a.segments.empty()) {
    AnswerLine none;
    none.label = words(language, kFeederNone);
    section.lines.push_back(none);
    return section;
  }
  for (const SegmentFigures& segment : a.segments) {
    AnswerLine line;
    line.label = segmentName(segment.segment, language);
    line.value = segmentWords(segment, language);
    line.verdict = segment.verdict;
    QString detail;
    const auto add = [&](const Message& message) {
      if (message.id.key.empty()) return;
      if (!detail.isEmpty()) detail += QLatin1String("; ");
      detail += words(message, language);
    };
    if (!segment.entered) add(Message{kFeederNotEntered, {}});
    add(segment.device.governs);
    if (segment.device.inPlan && segment.device.inPlan != segment.device.rating)
      add(say(kInPlan, std::int64_t{segment.device.inPlan->count()}));
    add(segment.conductor.governs);
    if (segment.drop) {
      const double worst = std::max(segment.drop->fraction[0], segment.drop->fraction[1]);
      add(say(kDropOf, Figure{worst * 100.0, "%", 1}));
    }
    line.detail = detail;
    std::vector<double> values;
    if (segment.device.minimum) values.push_back(segment.device.minimum->count());
    if (segment.conductor.ampacity) values.push_back(segment.conductor.ampacity->count());
    // One that is fixed, or stands ahead, was not worked out here.
    if (segment.device.rule == RuleId{"rating.standard"}) values.push_back(segment.device.rating->count());
    // Neutral, ground and drop stand in no value of the line, but are of the same piece.
    line.working = {line.label, line.value, values, {"wiring"}, {}, workingSubject(segment.segment), true};
    section.lines.push_back(line);
  }
  return section;
}

AnswerSection batterySection(const Assessment& a, const Language& language) {
  AnswerSection section;
  section.heading = words(language, kBatteryHead);
  const OutageFigures& o = a.outage;
  const auto three = [&](MessageId label, const QString& low, const QString& likely, const QString& high,
                         std::vector<double> values) {
    AnswerLine line;
    line.label = words(language, label);
    line.value = likely;
    line.detail = QString(low + QStringLiteral(" \u2013 ") + high);
    line.working = {line.label, likely, std::move(values), {"outage"}};
    section.lines.push_back(line);
  };
  if (o.known) {
    three(kRuntime, duration(o.runtime.low, language), duration(o.runtime.likely, language),
          duration(o.runtime.high, language), {o.runtime.likely.count()});
    const auto clock = [&](TimeOfDay t) {
      return QString::fromStdString(language.clock(ClockTime{t.minutes()}));
    };
    if (o.likely.reason != OutageEnd::beyondHorizon)
      three(kDarkAt, clock(o.endLow), clock(o.endLikely), clock(o.endHigh), {o.runtime.likely.count()});
    if (o.likely.toReserve) {
      AnswerLine line;
      line.label = words(language, kReserveAt);
      line.value = duration(*o.likely.toReserve, language);
      line.working = {
          line.label, line.value, {o.likely.toReserve->count(), o.runtime.likely.count()}, {"outage"}};
      section.lines.push_back(line);
    }
  }
  if (o.energy.usable) {
    const auto energy = [&](BatteryWattHours e) {
      return QString(QString::fromStdString(language.number(e.count() / 1000.0, 1)) + QLatin1String(" kWh"));
    };
    three(kUsable, energy(o.energy.usable->low), energy(o.energy.usable->likely),
          energy(o.energy.usable->high), {o.energy.usable->likely.count()});
  }
  for (const Message& missing : o.missing) {
    AnswerLine line;
    line.label = words(missing, language);
    line.verdict = Verdict::notKnown;
    section.lines.push_back(line);
  }
  return section;
}

LegBar barOf(const Plan& plan, const Assessment& a, Leg leg, const Language& language) {
  LegBar bar;
  bar.leg = leg;
  const HourLoad& load = a.hour.leg[index(leg)];
  bar.likelyPeak = load.likelyPeakCurrent.likely;
  bar.connected = load.connectedCurrent;
  bar.limit = load.limit;
  bar.running = load.verdict;
  bar.peakWorking = {words(language, kLegPeak, std::string(legName(leg))),
                     amperes(bar.likelyPeak, language),
                     {bar.likelyPeak.count(), bar.connected.count(), load.averageCurrent.likely.count()},
                     {"current", "power"}};
  const StartCheck* worst = nullptr;
  double worstMargin = 0.0;
  for (const StartCheck& check : a.starts.checks) {
    const auto& figure = check.leg[index(leg)];
    if (!figure) continue;
    const double margin = figure->margin ? figure->margin->count() : -figure->highSum.count();
    if (worst == nullptr || margin < worstMargin) {
      worst = &check;
      worstMargin = margin;
    }
  }
  if (worst == nullptr || worst->loads.empty()) return bar;
  const StartFigure<AcAmperes>& figure = *worst->leg[index(leg)];
  bar.hasStart = true;
  bar.startName = QString::fromStdString(loadName(plan, worst->loads.front(), language));
  bar.averageBase = figure.averageBase;
  bar.likelyBase = figure.likelyBase;
  bar.likelySum = figure.likelySum;
  bar.highSum = figure.highSum;
  bar.startLimit = figure.highLimit;
  bar.startLimitLikely = figure.likelyLimit;
  bar.highTime = figure.highTime;
  bar.start = figure.verdict;
  bar.startWorking = {
      words(language, kWorstStart) + QLatin1Char(' ') + QString::fromUtf8(legName(leg).data()),
      words(language, kStartLine, amps(bar.likelySum, language), amps(bar.highSum, language)),
      {bar.highSum.count(), bar.likelySum.count()},
      {"start", "current", "power"}};
  return bar;
}

// An estimate has no single minutes.
ClockTime aboutClock(TimeOfDay time) { return ClockTime{(time.minutes() + 2) / 5 * 5 % 1440}; }

bool anyBackedUp(const Plan& plan) {
  return std::any_of(plan.circuits.begin(), plan.circuits.end(),
                     [&](const auto& circuit) { return backedUp(plan, *circuit); });
}

QString secondSentence(const Plan& plan, const Assessment& a, const Language& language) {
  const OutageFigures& o = a.outage;
  if (!o.known) {
    if (o.missing.empty()) return {};
    return words(language, kToEnter, std::vector<Message>(o.missing));
  }
  const Figure charge = wholePercent(plan.scenario->startCharge.count());
  const Figure floor = wholePercent(o.energy.floor);
  switch (o.likely.reason) {
    case OutageEnd::beyondHorizon:
      return words(language, kSecondOpen, charge, floor);
    case OutageEnd::legOverload:
    case OutageEnd::totalOverload:
    case OutageEnd::batteryCurrent:
      return words(language, kSecondOverload, half(o.runtime.likely, language), aboutClock(o.endLikely));
    default:
      return words(language, kSecond, half(o.runtime.likely, language), aboutClock(o.endLikely), charge,
                   floor);
  }
}

}  // namespace

QString segmentName(Segment segment, const Language& language) {
  const Field* field = fieldOf(RecordKind::feederRun, "segment");
  QString text = QString::fromStdString(
      choiceText(*field, ChoiceWords<Segment>::words[static_cast<std::size_t>(segment)], language));
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text;
}

QString segmentWords(const SegmentFigures& segment, const Language& language) {
  QString text = segment.device.rating
                     ? words(language, kDevice, std::int64_t{segment.device.rating->count()})
                     : words(language, kDeviceUnknown);
  const auto sized = [&](ConductorSize size) {
    return std::string(name(size)) + " " + std::string(unit(size));
  };
  const std::string metal =
      plain(words(language, segment.conductor.metal == Metal::copper ? kCopper : kAluminium));
  if (segment.conductor.size) {
    const bool same = segment.neutral && *segment.neutral == *segment.conductor.size;
    text += QLatin1String(", ") +
            words(language, kConductors, std::int64_t{same ? 3 : 2}, sized(*segment.conductor.size), metal);
    if (segment.neutral && !same)
      text += QLatin1String(", ") + words(language, kNeutralOf, sized(*segment.neutral));
  }
  if (segment.ground) text += QLatin1String(", ") + words(language, kGroundOf, sized(*segment.ground));
  return text;
}

QString hoursSentence(const Plan& plan, const Assessment& a, const Language& language) {
  if (!a.hasBackup) return words(language, kNoBackup);
  if (!anyBackedUp(plan)) return words(language, kNothingMoved);
  const OutageFigures& o = a.outage;
  if (!o.known) return words(language, kHoursUnknown);
  const ClockTime from{plan.scenario->start.minutes()};
  const std::string month = monthText(plan.scenario->month, language);
  const bool overload = o.likely.reason == OutageEnd::legOverload ||
                        o.likely.reason == OutageEnd::totalOverload ||
                        o.likely.reason == OutageEnd::batteryCurrent;
  if (overload && o.runtime.likely.count() <= 0.0) return words(language, kHoursAtOnce, from, month);
  if (o.runtime.low >= kOutageHorizon)
    return words(language, kHoursOver, half(kOutageHorizon, language), from, month);
  if (o.runtime.high >= kOutageHorizon)
    return words(language, kHoursOpen, half(o.runtime.low, language), half(kOutageHorizon, language), from,
                 month);
  if (o.runtime.high.count() < kShortHours) {
    return words(language, kHoursShort, plain(duration(o.runtime.low, language)),
                 plain(duration(o.runtime.high, language)), from, month);
  }
  const std::string low = half(o.runtime.low, language), high = half(o.runtime.high, language);
  if (low == high) return words(language, kHoursOne, low, from, month);
  return words(language, kHoursRange, low, high, from, month);
}

Answers answersFor(const Plan& plan, const Assessment& a, const Language& language) {
  Answers answers;
  answers.headline = hoursSentence(plan, a, language);
  answers.hours = {words(language, kTitleHours),
                   a.outage.known ? duration(a.outage.runtime.likely, language) : answers.headline,
                   {a.outage.runtime.likely.count()},
                   {"outage"}};
  if (!a.hasBackup) return answers;
  const bool any = anyBackedUp(plan);
  if (any) answers.second = secondSentence(plan, a, language);
  for (const auto& circuit : plan.circuits) {
    const bool medical = std::any_of(circuit->loads.begin(), circuit->loads.end(),
                                     [](const Load& load) { return load.medical; });
    if (medical) answers.caution = words(language, kMedical);
  }
  answers.hasBars = true;
  for (const Leg leg : {Leg::l1, Leg::l2}) answers.bars[index(leg)] = barOf(plan, a, leg, language);
  answers.sections.push_back(loadSection(a, language));
  answers.sections.push_back(startSection(plan, a, language));
  answers.sections.push_back(feederSection(plan, a, language));
  addSourceLines(plan, a, language, answers.sections.back().lines);
  if (AnswerSection calculation = calculationSection(plan, a, language); !calculation.lines.empty())
    answers.sections.push_back(std::move(calculation));
  if (AnswerSection room = roomSection(plan, a, language); !room.lines.empty())
    answers.sections.push_back(std::move(room));
  answers.sections.push_back(batterySection(a, language));
  return answers;
}

}  // namespace stayalight
