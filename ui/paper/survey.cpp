#include "ui/paper/survey.h"

#include <algorithm>

#include "core/wiring/extension.h"
#include "ui/paper/table.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kNoCover{"paper.survey.no_cover"};
constexpr MessageId kHouseholdHow{"paper.survey.household_how"};
constexpr MessageId kGoesDark{"paper.survey.goes_dark"};
constexpr MessageId kGoesDarkHow{"paper.survey.goes_dark_how"};
constexpr MessageId kSpace{"paper.survey.space"};
constexpr MessageId kBreaker{"paper.survey.breaker"};
constexpr MessageId kDoorSays{"paper.survey.door_says"};
constexpr MessageId kDark{"paper.survey.dark"};
constexpr MessageId kRoom{"paper.survey.room"};
constexpr MessageId kAlarms{"paper.survey.alarms"};
constexpr MessageId kYes{"paper.survey.yes"};
constexpr MessageId kNo{"paper.survey.no"};
constexpr MessageId kLabels{"paper.survey.labels"};
constexpr MessageId kLabelsHow{"paper.survey.labels_how"};
constexpr MessageId kAppliance{"paper.survey.appliance"};
constexpr MessageId kVolts{"paper.survey.volts"};
constexpr MessageId kAmps{"paper.survey.amps"};
constexpr MessageId kWatts{"paper.survey.watts"};
constexpr MessageId kLockedRotor{"paper.survey.locked_rotor"};
constexpr MessageId kLargestBreaker{"paper.survey.largest_breaker"};
constexpr MessageId kPlugIn{"paper.survey.plug_in"};
constexpr MessageId kPlugInHow{"paper.survey.plug_in_how"};
constexpr MessageId kFrom{"paper.survey.from"};
constexpr MessageId kHours{"paper.survey.hours"};
constexpr MessageId kWattsOn{"paper.survey.watts_on"};
constexpr MessageId kWattHours{"paper.survey.watt_hours"};
constexpr MessageId kHoursOn{"paper.survey.hours_on"};
constexpr MessageId kQuestions{"paper.survey.questions"};
constexpr MessageId kWhere{"paper.survey.where"};
constexpr MessageId kWhat{"paper.survey.what"};
constexpr MessageId kAnswer{"paper.survey.answer"};

constexpr MessageId kQualifiedOnly{"paper.survey.qualified_only"};
constexpr MessageId kQualifiedHow{"paper.survey.qualified_how"};
constexpr MessageId kPanelHead{"paper.survey.panel_head"};
constexpr MessageId kBus{"paper.survey.bus"};
constexpr MessageId kMain{"paper.survey.main"};
constexpr MessageId kTerminals{"paper.survey.terminals"};
constexpr MessageId kBond{"paper.survey.bond"};
constexpr MessageId kLegsMeasured{"paper.survey.legs_measured"};
constexpr MessageId kListing{"paper.survey.listing"};
constexpr MessageId kInterrupting{"paper.survey.interrupting"};
constexpr MessageId kNeutralBar{"paper.survey.neutral_bar"};
constexpr MessageId kLeg{"paper.survey.leg"};
constexpr MessageId kPurpose{"paper.survey.purpose"};
constexpr MessageId kWire{"paper.survey.wire"};
constexpr MessageId kCable{"paper.survey.cable"};
constexpr MessageId kTwoWire{"paper.survey.two_wire"};
constexpr MessageId kThreeWire{"paper.survey.three_wire"};
constexpr MessageId kSharedWith{"paper.survey.shared_with"};
constexpr MessageId kNotShared{"paper.survey.not_shared"};
constexpr MessageId kClamp{"paper.survey.clamp"};
constexpr MessageId kProvesNothing{"paper.survey.proves_nothing"};
constexpr MessageId kClampHow{"paper.survey.clamp_how"};
constexpr MessageId kCircuit{"paper.survey.circuit"};
constexpr MessageId kReading{"paper.survey.reading"};
constexpr MessageId kConductor{"paper.survey.conductor"};
constexpr MessageId kLine{"paper.survey.line"};
constexpr MessageId kNeutral{"paper.survey.neutral"};
constexpr MessageId kMode{"paper.survey.mode"};
constexpr MessageId kOrdinary{"paper.survey.ordinary"};
constexpr MessageId kOutage{"paper.survey.outage"};
constexpr MessageId kPartner{"paper.survey.partner"};
constexpr MessageId kMethod{"paper.survey.method"};
constexpr MessageId kDateBy{"paper.survey.date_by"};
constexpr MessageId kSignHousehold[] = {MessageId{"paper.survey.filled_by"}, MessageId{"paper.date"}};
constexpr MessageId kSignQualified[] = {MessageId{"paper.survey.filled_by"}, MessageId{"paper.licence"},
                                        MessageId{"paper.date"}};

constexpr int kMoreAppliances = 6;
constexpr int kAllAppliances = 16;  // where none is known yet
constexpr int kMorePlugIns = 5;
constexpr int kMoreReadings = 6;

QString text(const std::string& value) { return QString::fromStdString(value); }

QString number(const std::optional<double>& value, int decimals, const Language& language) {
  return value ? text(language.number(*value, decimals)) : QString();
}
/// A figure that somebody read or measured; a typical one is a blank to fill in.
template <class Q>
std::optional<double> readValue(const Graded<Q>& fact) {
  if (!fact.value || fact.grade < Grade::nameplate) return std::nullopt;
  return fact.value->count();
}

/// One row of a panel as it hangs on the wall: a breaker, or a space in which none is entered.
struct WallRow {
  QString space;
  const Breaker* breaker = nullptr;
  std::vector<Leg> legs;
  std::vector<const Circuit*> circuits;
};

// A backup subpanel in which nothing stands yet is not on the wall.
bool onTheWall(const Plan& plan, const Panel& panel) {
  return !panel.role.is(PanelRole::backup) || !occupants(plan, panel.id, Reading::before).empty() ||
         plan.panels.size() == 1;
}

std::vector<WallRow> wallRows(const Plan& plan, const Panel& panel) {
  std::vector<SpacePosition> order = allSpaces(panel);
  if (panel.numbering.is(Numbering::downColumns)) {
    std::stable_sort(order.begin(), order.end(), [](SpacePosition a, SpacePosition b) {
      return a.column != b.column ? a.column < b.column : a.row < b.row;
    });
  }
  std::vector<WallRow> rows;
  for (const SpacePosition position : order) {
    const std::vector<BreakerId> here = breakersAt(plan, panel.id, position, Reading::before);
    if (here.empty()) {
      rows.push_back({text(printedNumber(panel, position)), nullptr, {legOf(panel, position)}, {}});
    }
    for (const BreakerId id : here) {
      const Breaker& breaker = *find(plan, id);
      if (breaker.position() != position) continue;  // its row is that of its first pole
      WallRow row{
          text(spaceNames(panel, placementOf(breaker))), &breaker, poleLegs(panel, placementOf(breaker)), {}};
      for (const CircuitId circuit : circuitsOn(plan, id, Reading::before))
        row.circuits.push_back(find(plan, circuit));
      rows.push_back(std::move(row));
    }
  }
  return rows;
}

QString joinedOf(const WallRow& row, std::string Circuit::*member) {
  QStringList all;
  for (const Circuit* circuit : row.circuits) {
    if (!((*circuit).*member).empty()) all << text((*circuit).*member);
  }
  return all.join(QStringLiteral("; "));
}
QString ratingOf(const WallRow& row) {
  if (row.breaker == nullptr || !row.breaker->ratingRead.is(Answer::yes)) return {};
  return QString::number(row.breaker->rating.count());
}
QString purposeOf(const WallRow& row) {
  const QString serves = joinedOf(row, &Circuit::serves);
  return serves.isEmpty() ? joinedOf(row, &Circuit::name) : serves;
}
bool allTraced(const WallRow& row) {
  return !row.circuits.empty() && std::all_of(row.circuits.begin(), row.circuits.end(),
                                              [](const Circuit* c) { return c->traced.is(Answer::yes); });
}

/// Where the circuit stands today, else where it will.
QString spaceOf(const Plan& plan, const Circuit& circuit) {
  const Breaker* breaker = find(plan, circuit.breaker);
  if (breaker == nullptr) breaker = find(plan, circuit.planned);
  const Panel* panel = breaker != nullptr ? find(plan, breaker->panel) : nullptr;
  return panel != nullptr ? text(spaceNames(*panel, placementOf(*breaker))) : QString();
}
QString nameOf(const Load& load, const Circuit& circuit) {
  return text(load.name.empty() ? circuitName(circuit) : load.name);
}

void drawCaution(SheetFlow& flow, const QString& caution, const QString& how) {
  const double inner = flow.width() - 14.0;
  const double height = flow.paragraphHeight(inner, caution, 9.5, Weight::bold) + 9.0;
  flow.box(QRectF(flow.left(), flow.y(), flow.width(), height), 1.2);
  flow.paragraph(flow.left() + 7.0, flow.y() + 3.0, inner, caution, 9.5, Weight::bold);
  flow.advance(height + 4.0);
  flow.advance(flow.paragraph(flow.left(), flow.y(), flow.width(), how, 8.4) + 4.0);
}

void drawPart(SheetFlow& flow, const QString& heading, const QString& how) {
  drawHeading(flow, heading, 90.0);
  flow.advance(flow.paragraph(flow.left(), flow.y() - 1.0, flow.width(), how, 8.2) + 3.0);
}

void drawSignature(SheetFlow& flow, std::span<const MessageId> blanks, const Language& language) {
  flow.need(46.0);
  flow.advance(32.0);
  const double w = flow.width() / static_cast<double>(blanks.size());
  double x = flow.left();
  for (const MessageId blank : blanks) {
    flow.rule({x, flow.y()}, {x + w - 12.0, flow.y()});
    flow.text(x, flow.y() + 9.0, words(language, blank), 7.4);
    x += w;
  }
  flow.advance(14.0);
}

/// Questions of the list that no table of the sheet has a column for.
template <class Covered>
void drawQuestions(SheetFlow& flow, const Assessment& assessment, Doer doer, Covered covered,
                   const Language& language) {
  std::vector<const OnSiteItem*> rest;
  for (const OnSiteItem& item : assessment.onSite) {
    if (item.doer == doer && !covered(item)) rest.push_back(&item);
  }
  if (rest.empty()) return;
  drawHeading(flow, words(language, kQuestions), 60.0);
  SheetTable table(flow,
                   {{words(language, kWhere), 0.28, Align::left, true},
                    {words(language, kWhat), 0.42},
                    {words(language, kAnswer), 0.30}},
                   kToWriteIn);
  table.head();
  for (const OnSiteItem* item : rest)
    table.row({words(item->where, language), words(item->what, language), QString()});
  table.end();
}
bool oneOf(std::string_view key, std::span<const std::string_view> keys) {
  return std::find(keys.begin(), keys.end(), key) != keys.end();
}
bool inPanelOnTheWall(const Plan& plan, const OnSiteItem& item) {
  const Panel* panel = find(plan, item.panel);
  return panel != nullptr && onTheWall(plan, *panel);
}

// -- the household
// ----------------------------------------------------------------------------------------------

constexpr std::array<std::string_view, 3> kOfSpaces = {"circuit.traced", "circuit.smoke_alarms",
                                                       "breaker.rating_read"};
constexpr std::array<std::string_view, 3> kOfLabels = {"load.running_W", "load.locked_rotor_A",
                                                       "load.maximum_breaker_A"};

bool pluggedIn(const Plan& plan, const OnSiteItem& item) {
  const auto* load = static_cast<const Load*>(findRecord(plan, item.place));
  return item.key == "load.duty" && load != nullptr && load->connection.is(Connection::lineToNeutral);
}

void drawGoesDark(SheetFlow& flow, const Plan& plan, const Panel& panel, const Language& language) {
  drawPart(flow, words(language, kGoesDark, panel.name), words(language, kGoesDarkHow));
  SheetTable table(flow,
                   {{words(language, kSpace), 0.08, Align::centre, true},
                    {words(language, kBreaker), 0.08, Align::centre},
                    {words(language, kDoorSays), 0.24},
                    {words(language, kDark), 0.32},
                    {words(language, kRoom), 0.14},
                    {words(language, kAlarms),
                     0.14,
                     Align::centre,
                     false,
                     false,
                     {words(language, kYes), words(language, kNo)}}},
                   kToWriteIn);
  table.head();
  for (const WallRow& row : wallRows(plan, panel)) {
    QString alarms;
    if (!row.circuits.empty() && !row.circuits.front()->smokeAlarms.is(Answer::unknown)) {
      const bool any = std::any_of(row.circuits.begin(), row.circuits.end(),
                                   [](const Circuit* c) { return c->smokeAlarms.is(Answer::yes); });
      alarms = words(language, any ? kYes : kNo);
    }
    table.row({row.space, ratingOf(row), purposeOf(row), allTraced(row) ? purposeOf(row) : QString(),
               joinedOf(row, &Circuit::room), alarms});
  }
  table.end();
}

void drawLabels(SheetFlow& flow, const Plan& plan, const Language& language) {
  drawPart(flow, words(language, kLabels), words(language, kLabelsHow));
  SheetTable table(flow,
                   {{words(language, kSpace), 0.08, Align::centre, true},
                    {words(language, kAppliance), 0.30, Align::left, true},
                    {words(language, kVolts), 0.09, Align::centre},
                    {words(language, kAmps), 0.12, Align::centre},
                    {words(language, kWatts), 0.13, Align::centre},
                    {words(language, kLockedRotor), 0.12, Align::centre},
                    {words(language, kLargestBreaker), 0.16, Align::centre}},
                   kToWriteIn);
  table.head();
  int more = kAllAppliances;
  for (const auto& circuit : plan.circuits) {
    for (const Load& load : circuit->loads) {
      more = kMoreAppliances;
      const std::optional<double> largest =
          load.maximumBreaker ? std::optional<double>(load.maximumBreaker->count()) : std::nullopt;
      const QString rotor = load.start.is(StartKind::none) ? QStringLiteral("–")
                                                           : number(readValue(load.lockedRotor), 1, language);
      const bool read = readValue(load.running) || readValue(load.runningCurrent);
      table.row({spaceOf(plan, *circuit), nameOf(load, *circuit),
                 read ? QString::number(load.ratedVoltage) : QString(),
                 number(readValue(load.runningCurrent), 1, language),
                 number(readValue(load.running), 0, language), rotor, number(largest, 0, language)});
    }
  }
  for (int i = 0; i < more; ++i) table.row({});
  table.end();
}

void drawPlugIn(SheetFlow& flow, const Plan& plan, const Assessment& assessment, const Language& language) {
  drawPart(flow, words(language, kPlugIn), words(language, kPlugInHow));
  SheetTable table(flow,
                   {{words(language, kSpace), 0.08, Align::centre, true},
                    {words(language, kAppliance), 0.30, Align::left, true},
                    {words(language, kFrom), 0.14},
                    {words(language, kHours), 0.12},
                    {words(language, kWattsOn), 0.13},
                    {words(language, kWattHours), 0.11},
                    {words(language, kHoursOn), 0.12}},
                   kToWriteIn);
  table.head();
  for (const OnSiteItem* item : itemsOf(assessment.onSite, "load.duty")) {
    if (!pluggedIn(plan, *item)) continue;
    const auto* load = static_cast<const Load*>(findRecord(plan, item->place));
    const Circuit& circuit = *circuitOf(plan, load->id);
    table.row({spaceOf(plan, circuit), nameOf(*load, circuit)});
  }
  for (int i = 0; i < kMorePlugIns; ++i) table.row({});
  table.end();
}

// -- the qualified person
// ---------------------------------------------------------------------------------------

constexpr std::array<std::string_view, 11> kOfPanels = {
    "panel.bus_A",        "panel.terminals_75C",    "panel.neutral_bonded",    "panel.legs_measured",
    "panel.listing_line", "panel.interrupting_A",   "panel.neutral_terminals", "circuit.conductor_AWG",
    "circuit.wiring",     "circuit.neutral_shared", "circuit.multiwire"};

QString answerText(const Choice<Answer>& answer, const Language& language) {
  if (answer.is(Answer::yes)) return words(language, kYes);
  return answer.is(Answer::no) ? words(language, kNo) : QString();
}

void drawPanelFacts(SheetFlow& flow, const Panel& panel, const Language& language) {
  drawHeading(flow, words(language, kPanelHead, panel.name), 70.0);
  const QStringList either = {words(language, kYes), words(language, kNo)};
  SheetTable table(flow,
                   {{words(language, kBus), 0.10, Align::centre},
                    {words(language, kMain), 0.10, Align::centre},
                    {words(language, kTerminals), 0.14, Align::centre, false, false, either},
                    {words(language, kBond), 0.15, Align::centre, false, false, either},
                    {words(language, kLegsMeasured), 0.13, Align::centre, false, false, either},
                    {words(language, kListing), 0.14, Align::centre},
                    {words(language, kInterrupting), 0.12, Align::centre},
                    {words(language, kNeutralBar), 0.12, Align::centre}},
                   kToWriteIn);
  table.head();
  const auto rating = [](const std::optional<RatingAmperes>& amperes) {
    return amperes ? QString::number(amperes->count()) : QString();
  };
  const std::optional<double> interrupting =
      panel.interruptingRating ? std::optional(panel.interruptingRating->count()) : std::nullopt;
  const std::optional<double> bar =
      panel.neutralTerminals ? std::optional<double>(*panel.neutralTerminals) : std::nullopt;
  table.row({rating(panel.busRating), rating(panel.mainBreaker), answerText(panel.terminals75, language),
             answerText(panel.neutralBonded, language), answerText(panel.legsMeasured, language),
             text(panel.listingLine), number(interrupting, 0, language), number(bar, 0, language)});
  table.end();
}

/// Spaces of those it shares a neutral with, "no" where somebody has looked, else a blank.
QString sharedText(const Plan& plan, const WallRow& row, const Language& language) {
  if (row.circuits.empty()) return {};
  const Circuit& circuit = *row.circuits.front();
  if (circuit.multiwire == 0)
    return circuit.neutralShared.is(Answer::no) ? words(language, kNotShared) : QString();
  QStringList partners;
  for (const CircuitId id : multiwireGroup(plan, circuit)) {
    const Breaker* breaker = find(plan, find(plan, id)->breaker);
    const Panel* panel = breaker != nullptr ? find(plan, breaker->panel) : nullptr;
    if (id == circuit.id || panel == nullptr || breaker == row.breaker) continue;
    partners << text(spaceNames(*panel, placementOf(*breaker)));
  }
  return partners.join(QStringLiteral(", "));
}

QString wireText(const WallRow& row, const Language& language) {
  if (row.circuits.empty() || !row.circuits.front()->conductor) return {};
  const Circuit& circuit = *row.circuits.front();
  // In a narrow column it breaks ahead of the cross-section, not within it.
  return conductorText(*circuit.conductor, circuit.metal.valueOr(Metal::copper), language)
      .replace(QStringLiteral(" mm"), QChar::Nbsp + QStringLiteral("mm"));
}

void drawSpaces(SheetFlow& flow, const Plan& plan, const Panel& panel, const Language& language) {
  SheetTable table(flow,
                   {{words(language, kSpace), 0.08, Align::centre, true},
                    {words(language, kLeg), 0.08, Align::centre},
                    {words(language, kBreaker), 0.08, Align::centre},
                    {words(language, kPurpose), 0.27},
                    {words(language, kWire), 0.14, Align::centre},
                    {words(language, kCable),
                     0.20,
                     Align::centre,
                     false,
                     false,
                     {words(language, kTwoWire), words(language, kThreeWire)}},
                    {words(language, kSharedWith), 0.15, Align::centre}},
                   kToWriteIn);
  table.head();
  for (const WallRow& row : wallRows(plan, panel)) {
    QStringList legs;
    if (panel.legsMeasured.is(Answer::yes)) {
      for (const Leg leg : row.legs) legs << text(std::string(legName(leg)));
    }
    table.row({row.space, legs.join(u'+'), ratingOf(row), purposeOf(row), wireText(row, language), QString(),
               sharedText(plan, row, language)});
  }
  table.end();
}

/// What a clamp is put on: what is backed up and its partners; before anything is chosen, all of it.
bool worthAReading(const Plan& plan, const Circuit& circuit) {
  const bool chosen = std::any_of(plan.circuits.begin(), plan.circuits.end(),
                                  [&](const auto& c) { return backedUp(plan, *c); });
  if (!chosen) return true;
  const std::vector<CircuitId> group = multiwireGroup(plan, circuit);
  return std::any_of(group.begin(), group.end(),
                     [&](CircuitId id) { return backedUp(plan, *find(plan, id)); });
}

/// A reading that is typed in already.
QStringList readingCells(const QString& space, const QString& name, const ClampReading& reading,
                         const Language& language) {
  const bool neutral = reading.conductor.is(ReadConductor::neutral);
  QStringList by;
  for (const std::string* part : {&reading.when, &reading.who}) {
    if (!part->empty()) by << text(*part);
  }
  return {space,
          name,
          text(language.number(reading.current.count(), 1)),
          words(language, neutral ? kNeutral : kLine),
          words(language, reading.mode.is(ReadMode::outage) ? kOutage : kOrdinary),
          reading.partnerLoaded.is(Answer::yes)  ? words(language, kYes)
          : reading.partnerLoaded.is(Answer::no) ? words(language, kNo)
                                                 : QStringLiteral("?"),
          text(reading.how),
          by.join(QStringLiteral(", "))};
}

void drawClamp(SheetFlow& flow, const Plan& plan, const Language& language) {
  drawHeading(flow, words(language, kClamp), 110.0);
  flow.advance(flow.paragraph(flow.left(), flow.y() - 1.0, flow.width(), words(language, kProvesNothing), 9.0,
                              Weight::bold) +
               1.0);
  flow.advance(flow.paragraph(flow.left(), flow.y(), flow.width(), words(language, kClampHow), 8.2) + 3.0);
  SheetTable table(flow,
                   {{words(language, kSpace), 0.07, Align::centre, true},
                    {words(language, kCircuit), 0.18},
                    {words(language, kReading), 0.08},
                    {words(language, kConductor),
                     0.15,
                     Align::centre,
                     false,
                     false,
                     {words(language, kLine), words(language, kNeutral)}},
                    {words(language, kMode),
                     0.17,
                     Align::centre,
                     false,
                     false,
                     {words(language, kOrdinary), words(language, kOutage)}},
                    {words(language, kPartner),
                     0.12,
                     Align::centre,
                     false,
                     false,
                     {words(language, kYes), words(language, kNo)}},
                    {words(language, kMethod), 0.11},
                    {words(language, kDateBy), 0.12}},
                   kToWriteIn);
  table.head();
  for (const auto& panel : plan.panels) {
    if (!onTheWall(plan, *panel)) continue;
    for (const WallRow& row : wallRows(plan, *panel)) {
      for (const Circuit* circuit : row.circuits) {
        if (!worthAReading(plan, *circuit)) continue;
        const QString name = text(circuitName(*circuit));
        for (const ClampReading& reading : circuit->readings)
          table.row(readingCells(row.space, name, reading, language));
        QStringList conductors;
        for (const Leg leg : row.legs) conductors << text(std::string(legName(leg)));
        if (usesNeutral(*circuit)) conductors << words(language, kNeutral);
        for (const QString& conductor : conductors)
          table.row({row.space, name, QString(), conductor, QString(), QString(), QString(), QString()});
      }
    }
  }
  for (int i = 0; i < kMoreReadings; ++i) table.row({});
  table.end();
}

}  // namespace

bool hasSurvey(const Plan& plan) { return !plan.panels.empty(); }

void drawHouseholdSurvey(SheetFlow& flow, const Plan& plan, const Assessment& assessment,
                         const Language& language) {
  drawCaution(flow, words(language, kNoCover), words(language, kHouseholdHow));
  for (const auto& panel : plan.panels) {
    if (onTheWall(plan, *panel)) drawGoesDark(flow, plan, *panel, language);
  }
  drawLabels(flow, plan, language);
  drawPlugIn(flow, plan, assessment, language);
  const auto covered = [&](const OnSiteItem& item) {
    return (oneOf(item.key, kOfSpaces) && inPanelOnTheWall(plan, item)) || oneOf(item.key, kOfLabels) ||
           pluggedIn(plan, item);
  };
  drawQuestions(flow, assessment, Doer::household, covered, language);
  drawSignature(flow, kSignHousehold, language);
}

void drawQualifiedSurvey(SheetFlow& flow, const Plan& plan, const Assessment& assessment,
                         const Language& language) {
  drawCaution(flow, words(language, kQualifiedOnly), words(language, kQualifiedHow));
  for (const auto& panel : plan.panels) {
    if (!onTheWall(plan, *panel)) continue;
    drawPanelFacts(flow, *panel, language);
    drawSpaces(flow, plan, *panel, language);
  }
  drawClamp(flow, plan, language);
  const auto covered = [&](const OnSiteItem& item) {
    return oneOf(item.key, kOfPanels) && inPanelOnTheWall(plan, item);
  };
  drawQuestions(flow, assessment, Doer::qualifiedPerson, covered, language);
  drawSignature(flow, kSignQualified, language);
}

}  // namespace stayalight
