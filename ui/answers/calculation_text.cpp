#include "ui/answers/calculation_text.h"

#include <algorithm>

#include "core/code/citations.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kHead{"answers.calculation"};
constexpr MessageId kEdition{"answers.calculation.edition"};
constexpr MessageId kEditionNotConfirmed{"answers.calculation.edition_not_confirmed"};
constexpr MessageId kFeeder{"answers.calculation.feeder"};
constexpr MessageId kFeederLoad{"answers.calculation.load"};
constexpr MessageId kWorked{"answers.calculation.worked"};
constexpr MessageId kTyped{"answers.calculation.typed"};
constexpr MessageId kTypedAlone{"answers.calculation.typed_alone"};
constexpr MessageId kNeeded{"answers.calculation.needed"};
constexpr MessageId kNotConfirmedPart{"answers.calculation.not_confirmed"};
constexpr MessageId kNeutral{"answers.calculation.neutral"};
constexpr MessageId kNeutralDetail{"answers.calculation.neutral_detail"};
constexpr MessageId kService{"answers.calculation.service"};
constexpr MessageId kServiceDetail{"answers.calculation.service_detail"};
constexpr MessageId kCharge{"answers.calculation.charge"};
constexpr MessageId kOf{"answers.of"};
constexpr MessageId kMethod{"answers.calculation.method"};
constexpr MessageId kNotForThis{"answers.calculation.not_for_this"};
constexpr MessageId kNotOpen{"answers.calculation.not_open"};
constexpr MessageId kPath{"answers.calculation.path"};
constexpr MessageId kPathOther{"answers.calculation.path_other"};
constexpr MessageId kUnknownValue{"answers.unknown_value"};

std::string plain(const QString& value) { return value.toStdString(); }
QString voltAmperes(VoltAmperes value, const Language& language) {
  return QString(QString::fromStdString(language.number(value.count(), 0)) + QLatin1String(" VA"));
}
QString needed(const DemandCalculation& calculation, const Language& language) {
  if (calculation.refused) return words(*calculation.refused, language);
  return words(language, kNeeded, std::vector<Message>(calculation.missing));
}

AnswerLine feederLine(const DemandFigures& figures, const Language& language) {
  const DemandCalculation& worked = figures.feeder;
  const FeederLoad& load = figures.feederLoad;
  AnswerLine line;
  line.label = words(language, kFeeder);
  if (!load.load) {
    line.value = words(language, kUnknownValue);
    line.detail = needed(worked, language);
    line.verdict = Verdict::notKnown;
    line.working = {line.label, line.value, {worked.total.count()}, {"demand"}, {}, feederLoadSubject()};
    return line;
  }
  const bool complete = worked.complete() && !worked.lines.empty();
  line.value = load.typed
                   ? voltAmperes(*load.load, language)
                   : words(language, kFeederLoad, plain(voltAmperes(*load.load, language)),
                           plain(amperes(worked.heavier, language)),
                           std::string(legName(worked.leg[1].load > worked.leg[0].load ? Leg::l2 : Leg::l1)));
  line.detail = !load.typed ? words(language, kWorked)
                : complete  ? words(language, kTyped, plain(voltAmperes(worked.total, language)))
                            : words(language, kTypedAlone);
  if (!load.typed && !worked.confirmed)
    line.detail += QLatin1String("; ") + words(language, kNotConfirmedPart);
  line.working = {line.label, line.value, {worked.heavier.count(), worked.total.count()},
                  {"demand"}, {},         feederLoadSubject()};
  return line;
}

AnswerLine serviceLine(const ServiceDemand& service, const Language& language) {
  AnswerLine line;
  line.label = words(language, kService);
  const MethodFigures* chosen = chosenMethod(service);
  if (chosen == nullptr) {
    line.value = words(language, kUnknownValue);
    line.detail = needed(service.methods.front().after, language);
    line.verdict = Verdict::notKnown;
    line.working = {line.label, line.value, {service.methods.front().after.total.count()},
                    {"demand"}, {},         workingSubject(DemandMethod::standard, Reading::planned)};
    return line;
  }
  const QString after = amperes(chosen->after.least(), language);
  line.value = service.rating
                   ? words(language, kOf, plain(after), plain(amperes(service.rating->amperes(), language)))
                   : after;
  line.verdict = chosen->verdictAfter;
  line.detail = words(language, kServiceDetail, std::vector<Message>{methodName(chosen->method)},
                      plain(amperes(chosen->before.least(), language)));
  line.working = {line.label, line.value, {chosen->after.least().count()},
                  {"demand"}, {},         workingSubject(chosen->method, Reading::planned)};
  return line;
}

// The other methods beside the chosen one: their figure, or why they do not apply.
std::vector<AnswerLine> otherMethods(const ServiceDemand& service, const Language& language) {
  std::vector<AnswerLine> lines;
  for (const MethodFigures& method : service.methods) {
    if (service.chosen == method.method) continue;
    AnswerLine line;
    line.label = words(language, kMethod, std::vector<Message>{methodName(method.method)});
    if (method.notApplicable) {
      line.value = words(language, kNotForThis);
      line.detail = words(*method.notApplicable, language);
    } else if (!method.after.complete()) {
      line.value = words(language, kUnknownValue);
      line.detail = needed(method.after, language);
    } else {
      const QString after = amperes(method.after.least(), language);
      line.value = service.rating ? words(language, kOf, plain(after),
                                          plain(amperes(service.rating->amperes(), language)))
                                  : after;
      line.verdict = method.verdictAfter;
      line.working = {line.label, line.value, {method.after.least().count()},
                      {"demand"}, {},         workingSubject(method.method, Reading::planned)};
    }
    lines.push_back(std::move(line));
  }
  return lines;
}

QString conditionsOf(const PathFigures& path, const Language& language) {
  QStringList open;
  for (const CapacityCondition& condition : path.conditions) {
    if (condition.state != Condition::kept) open << words(condition.what, language);
  }
  if (open.isEmpty()) {
    for (const CapacityCondition& condition : path.conditions) open << words(condition.what, language);
  }
  if (path.caution) open << words(*path.caution, language);
  return open.join(QStringLiteral("; "));
}

// The full load is worked out where the feeder's is; the others have steps of their own.
WorkingTarget pathWorking(const PathFigures& path, const DemandFigures& figures, const AnswerLine& line) {
  if (path.path == CapacityPath::automaticFull && !figures.feederLoad.typed)
    return {line.label, line.value, {figures.feeder.total.count()}, {"demand"}, {}, feederLoadSubject()};
  return {line.label,
          line.value,
          {path.asked.value_or(VoltAmperes()).count()},
          {"capacity", "demand"},
          {},
          workingSubject(path.path),
          true};
}

}  // namespace

QString editionNote(const Plan& plan, RuleId rule, const Language& language) {
  const std::string edition(plan.site->edition.word());
  const bool confirmed = sectionOf(rule, plan.site->edition.valueOr(Edition::y2023)).has_value();
  return words(language, confirmed ? kEdition : kEditionNotConfirmed, edition);
}

AnswerSection calculationSection(const Plan& plan, const Assessment& a, const Language& language) {
  AnswerSection section;
  section.heading = words(language, kHead);
  section.note = editionNote(plan, RuleId{"load.calculation"}, language);
  const DemandFigures& figures = a.demand;
  if (!figures.covered) return section;
  section.lines.push_back(feederLine(figures, language));
  if (figures.feeder.complete() && !figures.feeder.lines.empty()) {
    AnswerLine neutral;
    neutral.label = words(language, kNeutral);
    neutral.value = amperes(figures.feeder.neutral, language);
    neutral.detail = words(language, kNeutralDetail);
    neutral.working = {neutral.label,      neutral.value, {figures.feeder.neutral.count()}, {"demand"}, {},
                       feederLoadSubject()};
    section.lines.push_back(neutral);
  }
  section.lines.push_back(serviceLine(figures.service, language));
  for (AnswerLine& line : otherMethods(figures.service, language)) section.lines.push_back(std::move(line));
  const ChargeSetting& charge = figures.service.charge;
  if (charge.asked && charge.fits) {
    AnswerLine line;
    line.label = words(language, kCharge);
    const QString fits = watts(*charge.fits, language);
    line.value =
        charge.entered ? words(language, kOf, plain(watts(*charge.entered, language)), plain(fits)) : fits;
    if (charge.entered) line.verdict = charge.verdict;
    line.detail = words(charge.governs, language);
    line.working = {line.label, line.value,     {charge.fits->count()},
                    {"demand"}, charge.governs, chargingSubject()};
    section.lines.push_back(line);
  }
  for (const bool chosen : {true, false}) {
    for (const PathFigures& path : figures.paths) {
      if (path.chosen != chosen) continue;
      AnswerLine line;
      line.label = words(language, chosen ? kPath : kPathOther, std::vector<Message>{pathName(path.path)});
      if (path.closed && !path.chosen) {
        line.value = words(language, kNotOpen);
        line.detail = words(*path.closed, language);
        section.lines.push_back(line);
        continue;
      }
      if (path.asked) {
        const QString asked = voltAmperes(*path.asked, language);
        line.value = figures.carries
                         ? words(language, kOf, plain(asked), plain(voltAmperes(*figures.carries, language)))
                         : asked;
      }
      line.verdict = path.verdict;
      line.detail = path.closed ? words(*path.closed, language) : conditionsOf(path, language);
      line.working = pathWorking(path, figures, line);
      section.lines.push_back(line);
    }
  }
  return section;
}

}  // namespace stayalight
