#include "ui/paper/feeder.h"

#include <algorithm>
#include <cmath>

#include "core/code/conductors.h"
#include "ui/paper/table.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kPart{"paper.feeder.part"};
constexpr MessageId kValue{"paper.feeder.value"};
constexpr MessageId kGoverns{"paper.feeder.governs"};
constexpr MessageId kRule{"paper.feeder.rule"};
constexpr MessageId kLoad{"paper.feeder.load"};
constexpr MessageId kLoadParts{"paper.feeder.load_parts"};
constexpr MessageId kMinimum{"paper.feeder.minimum"};
constexpr MessageId kDevice{"paper.feeder.device"};
constexpr MessageId kMaximum{"paper.feeder.maximum"};
constexpr MessageId kInPlan{"paper.feeder.in_plan"};
constexpr MessageId kConductor{"paper.feeder.conductor"};
constexpr MessageId kAmpacity{"paper.feeder.ampacity"};
constexpr MessageId kNext{"paper.feeder.next"};
constexpr MessageId kNextUp{"paper.feeder.next_up"};
constexpr MessageId kNextUpAllowed{"paper.feeder.next_up_allowed"};
constexpr MessageId kCableEach{"paper.feeder.dc_cable_each"};
constexpr MessageId kNextRating{"paper.feeder.next_rating"};
constexpr MessageId kNextRatingOf{"paper.feeder.next_rating_of"};
constexpr MessageId kInstructions{"paper.feeder.instructions"};
constexpr MessageId kInstructionsAsk{"paper.feeder.instructions_ask"};
constexpr MessageId kNextCarries{"paper.feeder.next_carries"};
constexpr MessageId kNeutral{"paper.feeder.neutral"};
constexpr MessageId kGround{"paper.feeder.ground"};
constexpr MessageId kDrop{"paper.feeder.drop"};
constexpr MessageId kDropLegs{"paper.feeder.drop_legs"};
constexpr MessageId kDropBetween{"paper.feeder.drop_between"};
constexpr MessageId kVerdict{"paper.feeder.verdict"};
constexpr MessageId kNotEntered{"paper.feeder.not_entered"};
constexpr MessageId kMissing{"paper.feeder.missing"};
constexpr MessageId kRaceways{"paper.feeder.raceways"};
constexpr MessageId kRaceway{"paper.feeder.raceway"};
constexpr MessageId kConductors{"paper.feeder.conductors"};
constexpr MessageId kFill{"paper.feeder.fill"};
constexpr MessageId kAllowed{"paper.feeder.allowed"};
constexpr MessageId kCarrying{"paper.feeder.carrying"};
constexpr MessageId kAdjustment{"paper.feeder.adjustment"};
constexpr MessageId kSmallest{"paper.feeder.smallest"};
constexpr MessageId kGutters{"paper.feeder.gutters"};
constexpr MessageId kPanel{"paper.feeder.panel"};
constexpr MessageId kSpliced{"paper.feeder.spliced"};
constexpr MessageId kAllInPanel{"paper.feeder.all_in_panel"};
constexpr MessageId kCountAndArea{"paper.feeder.count_and_area"};
constexpr MessageId kRulesBeside{"paper.feeder.rules_beside"};
constexpr MessageId kForConductors{"paper.feeder.for_conductors"};
constexpr MessageId kWithSplices{"paper.feeder.with_splices"};
constexpr MessageId kCable{"paper.feeder.dc_cable"};
constexpr MessageId kCableCurrent{"paper.feeder.dc_current"};
constexpr MessageId kCableRequired{"paper.feeder.dc_required"};
constexpr MessageId kBuilding{"paper.feeder.building"};
constexpr MessageId kOwnGround{"paper.feeder.own_ground"};
constexpr MessageId kElectrode{"paper.feeder.electrode"};
constexpr MessageId kElectrodeWire{"paper.feeder.electrode_wire"};
constexpr MessageId kDisconnect{"paper.feeder.disconnect"};
constexpr MessageId kDisconnectLeast{"paper.feeder.disconnect_least"};
constexpr MessageId kByMain{"paper.feeder.by_main"};
constexpr MessageId kWholeDrop{"paper.feeder.whole_drop"};
constexpr MessageId kYesNoUnknown[] = {MessageId{"wording.not_known"}, MessageId{"paper.survey.yes"},
                                       MessageId{"paper.survey.no"}};
constexpr MessageId kBus{"paper.feeder.bus"};
constexpr MessageId kBusOption{"paper.feeder.bus_option"};
constexpr MessageId kBusSum{"paper.feeder.bus_sum"};
constexpr MessageId kBusMost{"paper.feeder.bus_most"};
constexpr MessageId kBusChosen{"paper.feeder.bus_chosen"};
constexpr MessageId kOptions[] = {MessageId{"paper.feeder.bus_anywhere"},
                                  MessageId{"paper.feeder.bus_opposite"},
                                  MessageId{"paper.feeder.bus_breakers"}};
constexpr RuleId kOptionRules[] = {RuleId{"bus.anywhere"}, RuleId{"bus.opposite_ends"}, RuleId{"bus.sum"}};
constexpr MessageId kNotesHead{"paper.notes"};
constexpr MessageId kNotes[] = {MessageId{"paper.feeder.note_plan"}, MessageId{"paper.feeder.note_edition"},
                                MessageId{"paper.note_licensed"}};

constexpr double kLastRows = 46.0;  // drop and result

QString text(const std::string& value) { return QString::fromStdString(value); }
QString unknown() { return QStringLiteral("?"); }
QString wire(const std::optional<ConductorSize>& size, Metal metal, const Language& language) {
  return size ? conductorText(*size, metal, language) : unknown();
}
QString rated(const std::optional<RatingAmperes>& rating) {
  return rating ? QString::number(rating->count()) + QStringLiteral(" A") : unknown();
}
QString amps(const std::optional<AcAmperes>& current, const Language& language) {
  return current ? text(language.number(current->count(), 1)) + QStringLiteral(" A") : unknown();
}
QString percent(double share, const Language& language, int decimals = 0) {
  return text(language.number(share * 100.0, decimals)) + QStringLiteral(" %");
}
QString area(const std::optional<SquareInches>& value, const Language& language) {
  return value ? figureText({value->count(), "in²", 2}, language) : unknown();
}
QString cited(RuleId rule, const Language& language) {
  return rule.key.empty() ? QString() : text(language.citation(rule));
}
QString cited(const char* rule, const Language& language) { return cited(RuleId{rule}, language); }
QString sentence(const Message& message, const Language& language) {
  return message.id.key.empty() ? QString() : words(message, language);
}
Figure amperes(AcAmperes value) { return {value.count(), "A", 1}; }

std::vector<TableColumn> partColumns(const Language& language) {
  return {{words(language, kPart), 0.19, Align::left, true},
          {words(language, kValue), 0.21},
          {words(language, kGoverns), 0.44},
          {words(language, kRule), 0.16}};
}

QString verdictText(Verdict verdict, const std::vector<Message>& over, const std::vector<Message>& missing,
                    const Language& language, QString* why) {
  QStringList reasons;
  for (const Message& one : over) reasons << words(one, language);
  if (!missing.empty()) reasons << words(language, kMissing, missing);
  *why = reasons.join(QStringLiteral("; "));
  return verdictName(verdict, language);
}

QString withRules(const QString& heading, std::initializer_list<const char*> rules,
                  const Language& language) {
  QStringList sections;
  for (const char* rule : rules) sections << cited(rule, language);
  return words(language, kRulesBeside, heading.toStdString(),
               sections.join(QStringLiteral(", ")).toStdString());
}
QString nextCandidate(const ConductorChoice& choice, const Language& language) {
  if (!choice.next) return QStringLiteral("–");
  return words(language, kNextCarries, conductorName(*choice.next, choice.metal),
               amperes(choice.nextAmpacity.value_or(AcAmperes())));
}

// What it carries by the terminals' column and by its insulation's, corrected; and the next candidate.
void ampacityRows(SheetTable& table, const ConductorChoice& conductor, const Language& language) {
  if (!conductor.ampacity || !conductor.ambientFactor || !conductor.adjustmentFactor) return;
  table.row({words(language, kAmpacity), amps(conductor.ampacity, language),
             text(std::to_string(degrees(conductor.terminalColumn)) + " °C: ") +
                 amps(conductor.terminalAmpacity, language) + QStringLiteral("; × ") +
                 text(language.number(conductor.ambientFactor->count(), 2)) + QStringLiteral(" × ") +
                 text(language.number(conductor.adjustmentFactor->count(), 2)) + QStringLiteral(": ") +
                 amps(conductor.deratedAmpacity, language),
             cited("conductor.ampacity", language) + QStringLiteral("; ") +
                 (conductor.nmColumn ? cited("conductor.nm_column", language)
                                     : cited("conductor.terminals", language))});
  if (byNextSizeUp(conductor)) {
    table.row({words(language, kNextUp), rated(conductor.device), words(language, kNextUpAllowed),
               cited("conductor.next_size_up", language)});
  }
  table.row({words(language, kNext), {}, nextCandidate(conductor, language)});
}

void drawSegment(SheetFlow& flow, const Plan& plan, const SegmentFigures& figures, const Language& language) {
  const FeederRun* run = runOf(plan, figures.segment);
  QString heading = words(segmentName(figures.segment), language);
  heading[0] = heading[0].toUpper();
  if (run == nullptr) heading += u' ' + words(language, kNotEntered, Figure{30.0, "°C", 0});
  drawHeading(flow, heading, 110.0);
  SheetTable table(flow, partColumns(language));
  table.head();
  const SegmentLoad& load = figures.load;
  if (load.operating) {
    table.row({words(language, kLoad), amps(load.operating, language),
               words(language, kLoadParts, amperes(load.continuous.value_or(AcAmperes())),
                     amperes(load.other.value_or(AcAmperes())))});
  }
  const DeviceChoice& device = figures.device;
  table.row(
      {words(language, kMinimum), amps(device.minimum, language), {}, cited("continuous.factor", language)});
  QStringList about{sentence(device.governs, language)};
  if (device.maximum)
    about << words(language, kMaximum, std::int64_t{device.maximum->count()},
                   std::vector<Message>{device.maximumFrom});
  if (device.inPlan) about << words(language, kInPlan, std::int64_t{device.inPlan->count()});
  table.row({words(language, kDevice), rated(device.rating), about.join(QStringLiteral("; ")),
             cited(device.rule, language)},
            true);
  if (device.next && !device.fixed)
    table.row({words(language, kNextRating),
               {},
               words(language, kNextRatingOf, std::int64_t{device.next->count()})});
  const ConductorChoice& conductor = figures.conductor;
  table.row({words(language, kConductor), wire(conductor.size, conductor.metal, language),
             sentence(conductor.governs, language), cited(conductor.rule, language)},
            true);
  ampacityRows(table, conductor, language);
  table.row({words(language, kNeutral), wire(figures.neutral, conductor.metal, language),
             sentence(figures.neutralGoverns, language), cited(figures.neutralRule, language)});
  table.row({words(language, kGround), wire(figures.ground, conductor.metal, language),
             sentence(figures.groundGoverns, language), cited(figures.groundRule, language)});
  // The result does not stand alone on a page.
  if (flow.need(kLastRows)) table.head();
  if (figures.drop) {
    const DropFigure& drop = *figures.drop;
    const bool between = drop.lineToLine.count() != 0.0;
    table.row({words(language, kDrop), percent(std::max(drop.fraction[0], drop.fraction[1]), language, 1),
               words(language, kDropLegs, Figure{drop.leg[0].count(), "V", 2},
                     Figure{drop.leg[1].count(), "V", 2}) +
                   (between ? QStringLiteral("; ") +
                                  words(language, kDropBetween, Figure{drop.lineToLine.count(), "V", 2})
                            : QString()),
               cited("drop.advice", language)});
  }
  QString why;
  const QString verdict = verdictText(figures.verdict, figures.over, figures.notKnown, language, &why);
  table.row({words(language, kVerdict), verdict, why}, true);
  table.end();
}

void drawRaceways(SheetFlow& flow, const Plan& plan, const Assessment& assessment, const Language& language) {
  if (assessment.raceways.empty()) return;
  drawHeading(
      flow,
      withRules(words(language, kRaceways),
                {"raceway.fill", "raceway.area", "conductor.adjustment", "conductor.counted"}, language),
      60.0);
  SheetTable table(flow, {{words(language, kRaceway), 0.22, Align::left, true},
                          {words(language, kConductors), 0.11, Align::right},
                          {words(language, kFill), 0.09, Align::right},
                          {words(language, kAllowed), 0.10, Align::right},
                          {words(language, kSmallest), 0.11, Align::right},
                          {words(language, kCarrying), 0.11, Align::right},
                          {words(language, kAdjustment), 0.10, Align::right},
                          {words(language, kVerdict), 0.16}});
  table.head();
  for (const RacewayFigures& figures : assessment.raceways) {
    const Raceway& raceway = *find(plan, figures.raceway);
    const double inside = figures.inside.count();
    table.row({raceway.name.empty() ? QString::number(raceway.id.number) : text(raceway.name),
               QString::number(figures.conductors), percent(figures.area.count() / inside, language),
               percent(figures.allowed.count() / inside, language),
               figures.smallest ? text(std::string(Choice<TradeSize>(*figures.smallest).word()))
                                : QStringLiteral("–"),
               QString::number(figures.carrying.most()), percent(figures.adjustment.count(), language),
               verdictName(figures.verdict, language)});
  }
  table.end();
}

void drawGutters(SheetFlow& flow, const Plan& plan, const Assessment& assessment, const Language& language) {
  if (assessment.wiringSpaces.empty()) return;
  drawHeading(
      flow, withRules(words(language, kGutters), {"panel.wiring_space", "raceway.conductor_area"}, language),
      60.0);
  SheetTable table(flow, {{words(language, kPanel), 0.24, Align::left, true},
                          {words(language, kSpliced), 0.16, Align::right},
                          {words(language, kAllInPanel), 0.16, Align::right},
                          {words(language, kForConductors), 0.13, Align::right},
                          {words(language, kWithSplices), 0.13, Align::right},
                          {words(language, kVerdict), 0.18}});
  table.head();
  for (const WiringSpaceFigures& figures : assessment.wiringSpaces) {
    const auto of = [&](int count, SquareInches taken) {
      return words(language, kCountAndArea, std::int64_t{count}, area(taken, language).toStdString());
    };
    table.row({text(find(plan, figures.panel)->name), of(figures.spliced, figures.splicedArea),
               of(figures.conductors, figures.area), area(figures.allowed, language),
               area(figures.withSplices, language), verdictName(figures.verdict, language)});
  }
  table.end();
}

void drawCable(SheetFlow& flow, const Plan& plan, const DcCableFigures& figures, const Language& language) {
  const DcCable& cable = *plan.dcCable;
  const int units = plan.inverter->units;
  drawHeading(flow, units > 1 ? words(language, kCableEach, std::int64_t{units}) : words(language, kCable),
              90.0);
  SheetTable table(flow, partColumns(language));
  table.head();
  const QString current =
      figures.current ? text(language.number(figures.current->count(), 1)) + QStringLiteral(" A") : unknown();
  table.row({words(language, kCableCurrent), current, {}, cited("ess.conductor", language)});
  table.row({words(language, kCableRequired),
             amps(figures.required, language),
             {},
             cited("continuous.factor", language)});
  if (cable.instructionsConductor || cable.instructionsDevice) {
    table.row({words(language, kInstructions),
               {},
               words(language, kInstructionsAsk, rated(cable.instructionsDevice).toStdString(),
                     wire(cable.instructionsConductor, figures.conductor.metal, language).toStdString()),
               cited("source.label_device", language)});
  }
  table.row({words(language, kDevice), rated(figures.device), sentence(figures.deviceGoverns, language),
             cited(figures.deviceRule, language)},
            true);
  table.row({words(language, kConductor), wire(figures.conductor.size, figures.conductor.metal, language),
             sentence(figures.conductor.governs, language), cited(figures.conductor.rule, language)},
            true);
  ampacityRows(table, figures.conductor, language);
  if (figures.drop && figures.dropFraction) {
    table.row({words(language, kDrop), percent(*figures.dropFraction, language, 1),
               text(language.number(figures.drop->count(), 2)) + QStringLiteral(" V")});
  }
  QString why;
  const QString verdict = verdictText(figures.verdict, figures.over, figures.notKnown, language, &why);
  table.row({words(language, kVerdict), verdict, why}, true);
  table.end();
}

QString answered(Answer answer, const Language& language) {
  return words(language, kYesNoUnknown[static_cast<std::size_t>(answer)]);
}

void drawBuilding(SheetFlow& flow, const Plan& plan, const BuildingFigures& figures,
                  const Language& language) {
  drawHeading(flow, words(language, kBuilding, find(plan, figures.panel)->name), 90.0);
  SheetTable table(flow, partColumns(language));
  table.head();
  if (figures.feederInPlan)
    table.row({words(language, kOwnGround),
               answered(figures.ownGround, language),
               {},
               cited("building.ground", language)});
  table.row({words(language, kElectrode),
             answered(figures.electrode, language),
             {},
             cited("building.electrode", language)});
  table.row({words(language, kElectrodeWire), wire(figures.electrodeConductor, Metal::copper, language),
             wire(figures.supply, figures.metal, language), cited("building.electrode_conductor", language)},
            true);
  table.row(
      {words(language, kDisconnect), answered(figures.disconnect, language),
       figures.mainBreaker ? words(language, kByMain, std::int64_t{figures.mainBreaker->count()}) : QString(),
       cited("building.disconnect", language)});
  table.row({words(language, kDisconnectLeast),
             rated(figures.leastDisconnect),
             {},
             cited("building.disconnect_rating", language)},
            true);
  if (figures.drop)
    table.row({words(language, kWholeDrop),
               percent(*figures.drop, language, 1),
               {},
               cited("drop.advice", language)});
  table.end();
}

void drawBus(SheetFlow& flow, const Plan& plan, const BusFigures& figures, const Language& language) {
  drawHeading(flow, words(language, kBus, find(plan, figures.panel)->name), 70.0);
  SheetTable table(flow, {{words(language, kBusOption), 0.44, Align::left, true},
                          {words(language, kBusSum), 0.12, Align::right},
                          {words(language, kBusMost), 0.12, Align::right},
                          {words(language, kVerdict), 0.16},
                          {words(language, kRule), 0.16}});
  table.head();
  for (std::size_t i = 0; i < figures.options.size(); ++i) {
    const BusOptionFigure& option = figures.options[i];
    QString name = words(language, kOptions[i]);
    if (option.option == figures.chosen) name += QStringLiteral("; ") + words(language, kBusChosen);
    table.row({name, amps(option.sum, language), amps(option.most, language),
               verdictName(option.verdict, language), text(language.citation(kOptionRules[i]))},
              option.option == figures.chosen);
  }
  table.end();
}

}  // namespace

bool hasFeeder(const Plan& plan) {
  const bool anything = std::any_of(plan.circuits.begin(), plan.circuits.end(),
                                    [&](const auto& circuit) { return backedUp(plan, *circuit); });
  return anything && plan.site->country.is(Country::unitedStates) && !segments(plan).empty();
}

void drawFeeder(SheetFlow& flow, const Plan& plan, const Assessment& assessment, const Language& language) {
  for (const SegmentFigures& figures : assessment.segments) drawSegment(flow, plan, figures, language);
  drawRaceways(flow, plan, assessment, language);
  drawGutters(flow, plan, assessment, language);
  if (assessment.dcCable) drawCable(flow, plan, *assessment.dcCable, language);
  for (const BuildingFigures& figures : assessment.buildings) drawBuilding(flow, plan, figures, language);
  for (const BusFigures& figures : assessment.buses) drawBus(flow, plan, figures, language);
  drawHeading(flow, words(language, kNotesHead), 40.0);
  QStringList notes;
  for (const MessageId note : kNotes) notes << words(language, note);
  drawNumbered(flow, notes);
}

}  // namespace stayalight
