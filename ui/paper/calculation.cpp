#include "ui/paper/calculation.h"

#include <algorithm>
#include <cmath>

#include "ui/paper/table.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kFeederHead{"paper.load.feeder"};
constexpr MessageId kTyped{"paper.load.typed"};
constexpr MessageId kNeeded{"paper.load.needed"};
constexpr MessageId kNothing{"paper.load.nothing"};
constexpr MessageId kLine{"paper.load.line"};
constexpr MessageId kItems{"paper.load.items"};
constexpr MessageId kGross{"paper.load.gross"};
constexpr MessageId kFactor{"paper.load.factor"};
constexpr MessageId kLoad{"paper.load.load"};
constexpr MessageId kNeutral{"paper.load.neutral"};
constexpr MessageId kRule{"paper.load.rule"};
constexpr MessageId kTotal{"paper.load.total"};
constexpr MessageId kFigure{"paper.load.figure"};
constexpr MessageId kLeg{"paper.load.leg"};
constexpr MessageId kLegNeutral{"paper.load.leg_neutral"};
constexpr MessageId kAmps{"paper.load.amps"};
constexpr MessageId kVoltAmperes{"paper.load.volt_amperes"};
constexpr MessageId kContinuous{"paper.load.continuous"};
constexpr MessageId kMinimum{"paper.load.minimum"};
constexpr MessageId kServiceHead{"paper.load.service"};
constexpr MessageId kMethod{"paper.load.method"};
constexpr MessageId kBefore{"paper.load.before"};
constexpr MessageId kAfter{"paper.load.after"};
constexpr MessageId kAgainst{"paper.load.against"};
constexpr MessageId kUsed{"paper.load.used"};
constexpr MessageId kLinesOf{"paper.load.lines_of"};
constexpr MessageId kServiceFigures{"paper.load.service_figures"};
constexpr MessageId kChargeHead{"paper.load.charge"};
constexpr MessageId kChargeFits{"paper.load.charge_fits"};
constexpr MessageId kChargeUnknown{"paper.load.charge_unknown"};
constexpr MessageId kChargeEntered{"paper.load.charge_entered"};
constexpr MessageId kPathHead{"paper.load.paths"};
constexpr MessageId kPathChosen{"paper.load.path_chosen"};
constexpr MessageId kPathNone{"paper.load.path_none"};
constexpr MessageId kAgreed{"paper.load.agreed"};
constexpr MessageId kAgreedWriting{"paper.load.agreed_writing"};
constexpr MessageId kNobodyAgreed{"paper.load.nobody_agreed"};
constexpr MessageId kPath{"paper.load.path"};
constexpr MessageId kCondition{"paper.load.condition"};
constexpr MessageId kState{"paper.load.state"};
constexpr MessageId kStates[] = {MessageId{"paper.load.kept"}, MessageId{"paper.load.broken"},
                                 MessageId{"paper.load.not_known"}};
constexpr MessageId kAnswersHead{"paper.load.answers"};
constexpr MessageId kQuestion{"paper.load.question"};
constexpr MessageId kAnswer{"paper.load.answer"};
constexpr MessageId kWhoWhen{"paper.load.who_when"};
constexpr MessageId kInWriting{"paper.load.in_writing"};
constexpr MessageId kOpenAnswer{"paper.load.open_answer"};
constexpr MessageId kYesNoUnknown[] = {MessageId{"wording.not_known"}, MessageId{"paper.survey.yes"},
                                       MessageId{"paper.survey.no"}};
constexpr MessageId kNoWay{"paper.load.no_way"};
constexpr MessageId kNotesHead{"paper.notes"};
constexpr MessageId kNotes[] = {MessageId{"paper.load.note_units"},     MessageId{"paper.load.note_legs"},
                                MessageId{"paper.load.note_neutral"},   MessageId{"paper.load.note_partial"},
                                MessageId{"paper.load.note_authority"}, MessageId{"paper.load.note_working"}};
constexpr MessageId kNoteConfirmed{"paper.load.note_confirmed"};

QString text(const std::string& value) { return QString::fromStdString(value); }
QString whole(VoltAmperes value, const Language& language) {
  return text(language.number(std::round(value.count()), 0));
}
QString amps(AcAmperes value, const Language& language) { return text(language.number(value.count(), 1)); }
Figure voltAmperes(VoltAmperes value) { return {value.count(), "VA", 0}; }

void paragraph(SheetFlow& flow, const QString& value, Weight weight = Weight::regular) {
  const double height = flow.paragraphHeight(flow.width(), value, 8.6, weight);
  flow.need(height + 3.0);
  flow.advance(flow.paragraph(flow.left(), flow.y(), flow.width(), value, 8.6, weight) + 3.0);
}

QString ruleText(RuleId rule, bool confirmed, const Language& language) {
  QString cited = text(language.citation(rule));
  if (!confirmed) cited += QStringLiteral(", ") + words(language, kNotConfirmed);
  return cited;
}

// What is still to be entered, or why there is no result.
void drawGaps(SheetFlow& flow, const DemandCalculation& calculation, const Language& language) {
  if (!calculation.missing.empty())
    paragraph(flow, words(language, kNeeded, std::vector<Message>(calculation.missing)), Weight::bold);
  if (calculation.refused) paragraph(flow, words(*calculation.refused, language), Weight::bold);
  for (const Message& note : calculation.notes) paragraph(flow, words(note, language));
}

void drawLines(SheetFlow& flow, const DemandCalculation& calculation, const Language& language) {
  SheetTable table(flow, {{words(language, kLine), 0.40, Align::left},
                          {words(language, kItems), 0.06, Align::centre},
                          {words(language, kGross), 0.10, Align::right},
                          {words(language, kFactor), 0.08, Align::right},
                          {words(language, kLoad), 0.10, Align::right, true},
                          {words(language, kNeutral), 0.10, Align::right},
                          {words(language, kRule), 0.16, Align::left}});
  table.head();
  for (const DemandLine& line : calculation.lines) {
    const QString factor = line.factor
                               ? text(language.number(line.factor->count() * 100.0, 0)) + QStringLiteral(" %")
                               : QString();
    table.row({words(line.what, language), line.items > 0 ? QString::number(line.items) : QString(),
               whole(line.gross, language), factor, line.load ? whole(*line.load, language) : QString(),
               line.load && line.neutral > VoltAmperes() ? whole(line.neutral, language) : QString(),
               ruleText(line.rule, line.confirmed, language)});
  }
  table.row({words(language, kTotal), {}, {}, {}, whole(calculation.total, language)}, true);
  table.end();
}

void drawFeeder(SheetFlow& flow, const DemandFigures& figures, const Language& language) {
  const DemandCalculation& feeder = figures.feeder;
  drawHeading(flow, words(language, kFeederHead), 80.0);
  if (figures.feederLoad.typed) {
    paragraph(flow, words(language, kTyped, voltAmperes(*figures.feederLoad.load), voltAmperes(feeder.total)),
              Weight::bold);
  }
  drawGaps(flow, feeder, language);
  if (feeder.lines.empty()) {
    paragraph(flow, words(language, kNothing));
    return;
  }
  drawLines(flow, feeder, language);
  SheetTable table(flow, {{words(language, kFigure), 0.60, Align::left},
                          {words(language, kVoltAmperes), 0.13, Align::right},
                          {words(language, kAmps), 0.11, Align::right, true},
                          {words(language, kRule), 0.16, Align::left}});
  flow.need(90.0);
  table.head();
  for (const Leg leg : {Leg::l1, Leg::l2}) {
    const DemandLeg& on = feeder.leg[index(leg)];
    const std::string name(legName(leg));
    table.row({words(language, kLeg, name), whole(on.load, language),
               amps(on.load / nominalLegVolts(), language),
               ruleText(RuleId{"load.calculation"}, true, language)});
    table.row({words(language, kLegNeutral, name), whole(on.neutral, language),
               amps(on.neutral / nominalLegVolts(), language),
               ruleText(RuleId{"feeder.neutral"}, true, language)});
  }
  table.row({words(language, kContinuous),
             whole(feeder.continuous, language),
             {},
             ruleText(RuleId{"continuous.factor"}, true, language)});
  table.row({words(language, kMinimum),
             {},
             amps(feeder.heavierMinimum, language),
             ruleText(RuleId{"feeder.device"}, true, language)});
  table.end();
}

void drawService(SheetFlow& flow, const DemandFigures& figures, const Language& language) {
  const ServiceDemand& service = figures.service;
  drawHeading(flow, words(language, kServiceHead), 80.0);
  SheetTable table(flow, {{words(language, kMethod), 0.24, Align::left, true},
                          {words(language, kRule), 0.14, Align::left},
                          {words(language, kBefore), 0.10, Align::right},
                          {words(language, kAfter), 0.10, Align::right, true},
                          {words(language, kAgainst), 0.42, Align::left}});
  table.head();
  const QString rating =
      service.rating ? QString::number(service.rating->count()) + QStringLiteral(" A") : QStringLiteral("?");
  for (const MethodFigures& method : service.methods) {
    const QString name = words(methodName(method.method), language);
    const QString rule = ruleText(method.rule, true, language);
    if (method.notApplicable) {
      table.row(
          {name, rule, QStringLiteral("–"), QStringLiteral("–"), words(*method.notApplicable, language)});
      continue;
    }
    QString last = rating + QStringLiteral(": ") + verdictName(method.verdictAfter, language);
    if (service.chosen == method.method) last += QStringLiteral("; ") + words(language, kUsed);
    if (!method.after.missing.empty())
      last = words(language, kNeeded, std::vector<Message>(method.after.missing));
    if (method.after.refused) last = words(*method.after.refused, language);
    const auto figure = [&](const DemandCalculation& of) {
      return of.complete() ? amps(of.minimum, language) : QStringLiteral("?");
    };
    table.row({name, rule, figure(method.before), figure(method.after), last});
  }
  table.end();
  if (const MethodFigures* chosen = chosenMethod(service)) {
    drawHeading(flow, words(language, kLinesOf, std::vector<Message>{methodName(chosen->method)}), 80.0);
    for (const Message& note : chosen->after.notes) paragraph(flow, words(note, language));
    drawLines(flow, chosen->after, language);
    paragraph(flow,
              words(language, kServiceFigures, Figure{chosen->after.line.count(), "A", 1},
                    voltAmperes(chosen->after.continuous), Figure{chosen->after.least().count(), "A", 1},
                    Figure{chosen->after.neutral.count(), "A", 1}));
  }
  if (service.charge.asked) {
    drawHeading(flow, words(language, kChargeHead));
    const ChargeSetting& charge = service.charge;
    if (charge.fits) {
      paragraph(flow, words(language, kChargeFits, Figure{std::floor(charge.fits->count()), "W", 0},
                            std::vector<Message>{charge.governs}));
    } else {
      paragraph(flow, words(language, kChargeUnknown));
    }
    if (charge.entered) {
      paragraph(flow, words(language, kChargeEntered, Figure{charge.entered->count(), "W", 0},
                            verdictName(charge.verdict, language).toStdString()));
    }
  }
}

void drawPaths(SheetFlow& flow, const Plan& plan, const DemandFigures& figures, const Language& language) {
  drawHeading(flow, words(language, kPathHead), 80.0);
  const Transfer& transfer = *plan.transfer;
  const auto chosen = std::find_if(figures.paths.begin(), figures.paths.end(),
                                   [](const PathFigures& path) { return path.chosen; });
  if (chosen == figures.paths.end()) {
    paragraph(flow, words(language, kPathNone), Weight::bold);
  } else {
    paragraph(flow,
              words(language, kPathChosen, std::vector<Message>{pathName(chosen->path)},
                    language.citation(chosen->rule), verdictName(chosen->verdict, language).toStdString()),
              Weight::bold);
    if (transfer.capacityAgreedBy.empty() && transfer.capacityAgreedOn.empty()) {
      paragraph(flow, words(language, kNobodyAgreed));
    } else {
      const bool written = transfer.capacityAgreedInWriting.is(Answer::yes);
      paragraph(flow, words(language, written ? kAgreedWriting : kAgreed, transfer.capacityAgreedBy,
                            transfer.capacityAgreedOn));
    }
    if (chosen->caution) paragraph(flow, words(*chosen->caution, language));
  }
  SheetTable table(flow, {{words(language, kPath), 0.24, Align::left, true},
                          {words(language, kRule), 0.14, Align::left},
                          {words(language, kCondition), 0.48, Align::left},
                          {words(language, kState), 0.14, Align::left}});
  table.head();
  for (const PathFigures& path : figures.paths) {
    QString name = words(pathName(path.path), language);
    QString rule = ruleText(path.rule, true, language);
    if (path.closed) {
      table.row({name, rule, words(*path.closed, language), words(language, kNoWay)});
      continue;
    }
    for (const CapacityCondition& condition : path.conditions) {
      table.row({name, rule, words(condition.what, language),
                 words(language, kStates[static_cast<std::size_t>(condition.state)])});
      name.clear();
      rule.clear();
    }
    if (path.caution && !path.chosen) table.row({{}, {}, words(*path.caution, language), {}});
  }
  table.end();
}

void drawAnswers(SheetFlow& flow, const Plan& plan, const Language& language) {
  const std::vector<AuthorityAnswer>& answers = plan.site->answers;
  if (answers.empty()) return;
  drawHeading(flow, words(language, kAnswersHead), 60.0);
  SheetTable table(flow, {{words(language, kQuestion), 0.34, Align::left, true},
                          {words(language, kAnswer), 0.34, Align::left},
                          {words(language, kWhoWhen), 0.2, Align::left},
                          {words(language, kInWriting), 0.12, Align::left}});
  table.head();
  for (const AuthorityAnswer& answer : answers) {
    QStringList who;
    for (const std::string& part : {answer.who, answer.when}) {
      if (!part.empty()) who << text(part);
    }
    const auto written = static_cast<std::size_t>(answer.inWriting.valueOr(Answer::unknown));
    table.row({text(answer.question),
               answer.answer.empty() ? words(language, kOpenAnswer) : text(answer.answer),
               who.join(QStringLiteral(", ")), words(language, kYesNoUnknown[written])});
  }
  table.end();
}

}  // namespace

bool hasCalculation(const Plan& plan) {
  return backupPanel(plan) != nullptr && plan.site->country.is(Country::unitedStates) &&
         !plan.site->service.is(ServiceSystem::threePhase);
}

void drawCalculation(SheetFlow& flow, const Plan& plan, const Assessment& assessment,
                     const Language& language) {
  const DemandFigures& figures = assessment.demand;
  drawFeeder(flow, figures, language);
  drawPaths(flow, plan, figures, language);
  drawService(flow, figures, language);
  drawAnswers(flow, plan, language);
  drawHeading(flow, words(language, kNotesHead));
  QStringList notes;
  for (const MessageId note : kNotes) notes << words(language, note);
  const MethodFigures* chosen = chosenMethod(figures.service);
  if (!figures.feeder.confirmed || (chosen != nullptr && !chosen->after.confirmed))
    notes << words(language, kNoteConfirmed);
  drawNumbered(flow, notes);
}

}  // namespace stayalight
