#include "ui/paper/blocks.h"

#include <algorithm>
#include <cmath>

#include "core/wiring/neutral_terminals.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kSystem{"paper.fact_system"};
constexpr MessageId kSystemSplit{"paper.system_split"};
constexpr MessageId kSystemWye{"paper.system_wye"};
constexpr MessageId kBus{"paper.fact_bus"};
constexpr MessageId kMain{"paper.fact_main"};
constexpr MessageId kLugsOnly{"paper.lugs_only"};
constexpr MessageId kSpaces{"paper.fact_spaces"};
constexpr MessageId kTandemYes{"paper.tandem_yes"};
constexpr MessageId kTandemNo{"paper.tandem_no"};
constexpr MessageId kTandemAt{"paper.tandem_at"};
constexpr MessageId kTandemMany{"paper.tandem_many"};
constexpr MessageId kTandemUnknown{"paper.tandem_unknown"};
constexpr MessageId kFedFrom{"paper.fact_fed_from"};
constexpr MessageId kFromUtility{"paper.from_utility"};
constexpr MessageId kFromSwitch[] = {MessageId{"paper.from_none"}, MessageId{"paper.from_manual"},
                                     MessageId{"paper.from_automatic"}, MessageId{"paper.from_pass_through"}};
constexpr MessageId kFeederFact{"paper.fact_feeder"};
constexpr MessageId kFeederWords{"paper.feeder_words"};
constexpr MessageId kPlace{"paper.fact_place"};
constexpr MessageId kGrounding{"paper.fact_grounding"};
constexpr MessageId kGroundWire{"paper.ground_wire"};
constexpr MessageId kServiceElectrode{"paper.service_electrode"};
constexpr MessageId kNeutral{"paper.fact_neutral"};
constexpr MessageId kTerminals{"paper.fact_neutral_terminals"};
constexpr MessageId kBonded{"paper.bonded_here"};
constexpr MessageId kIsolated{"paper.isolated"};
constexpr MessageId kNotLooked{"paper.not_looked"};

constexpr MessageId kLoadByLeg{"paper.load_by_leg"};
constexpr MessageId kConnected{"paper.connected"};
constexpr MessageId kConnectedFed{"paper.connected_fed"};
constexpr MessageId kConnectedBefore{"paper.connected_before"};
constexpr MessageId kAverage{"paper.average"};
constexpr MessageId kLikelyPeak{"paper.likely_peak"};
constexpr MessageId kLimitAllDay{"paper.limit_all_day"};
constexpr MessageId kThatPeakIs{"paper.that_peak_is"};
constexpr MessageId kNeutralWorst{"paper.neutral_worst"};
constexpr MessageId kWorstStart{"paper.worst_start"};
constexpr MessageId kItsHighCase{"paper.its_high_case"};
constexpr MessageId kHighLimit{"paper.high_limit"};
constexpr MessageId kThatStartIs{"paper.that_start_is"};
constexpr MessageId kHours{"paper.hours"};
constexpr MessageId kHoursWords{"paper.hours_words"};

constexpr MessageId kFeederHead{"paper.feeder_head"};
constexpr MessageId kDevice{"paper.device"};
constexpr MessageId kNoDevice{"paper.no_device"};
constexpr MessageId kWireWords{"paper.wire_words"};
constexpr MessageId kGoverns{"paper.governs"};
constexpr MessageId kWireUnknown{"paper.wire_unknown"};
constexpr MessageId kCalculatedLoad{"paper.calculated_load"};
constexpr MessageId kCalculatedTyped{"paper.calculated_load_typed"};
constexpr MessageId kCalculatedWorked{"paper.calculated_load_worked"};
constexpr MessageId kNotEntered{"paper.not_entered"};
constexpr MessageId kNoFeeder{"paper.no_feeder"};
constexpr MessageId kAgreed{"paper.agreed"};

constexpr MessageId kOpenHead{"paper.open"};
constexpr MessageId kSettledBy{"paper.settled_by"};
constexpr MessageId kDateBlank{"paper.date_blank"};
constexpr MessageId kNotes{"paper.notes"};
constexpr MessageId kNoteLegs{"paper.note_legs"};
constexpr MessageId kNoteNeutral{"paper.note_neutral"};
constexpr MessageId kNoteBond{"paper.note_bond"};
constexpr MessageId kNoteAlarms{"paper.note_alarms"};
constexpr MessageId kNoteListed{"paper.note_listed"};
constexpr MessageId kNoteDirectory{"paper.note_directory"};
constexpr MessageId kNoteOldSpaces{"paper.note_old_spaces"};
constexpr MessageId kNoteTies{"paper.note_ties"};
constexpr MessageId kNoteLive{"paper.note_live"};
constexpr MessageId kNoteLicensed{"paper.note_licensed"};
constexpr MessageId kNoteMedical{"paper.note_medical"};
constexpr MessageId kChanges{"paper.changes_by_hand"};
constexpr MessageId kSignatures[] = {MessageId{"paper.checked_by"}, MessageId{"paper.licence"},
                                     MessageId{"paper.date"}, MessageId{"paper.inspector"}};

constexpr double kIndent =
    34.0;  // what stands beside a mark or a short heading begins so far from the margin
constexpr double kTableRow = 12.2;  // of the tables of figures
constexpr double kFigure = 44.0;    // a column of them

QString number(double value, int decimals, const Language& language) {
  return QString::fromStdString(language.number(value, decimals));
}
QString amps(AcAmperes value, const Language& language) { return number(value.count(), 1, language); }
QString text(const std::string& value) { return QString::fromStdString(value); }

QString sizeWords(ConductorSize size) {
  const std::string_view n = name(size), u = unit(size);
  return QString::fromLatin1(n.data(), static_cast<int>(n.size())) + u' ' +
         QString::fromLatin1(u.data(), static_cast<int>(u.size()));
}
QString metalWord(Metal metal) {
  return metal == Metal::copper ? QStringLiteral("Cu") : QStringLiteral("Al");
}

const SegmentFigures* segmentOf(const Assessment& assessment, Segment wanted) {
  for (const SegmentFigures& segment : assessment.segments) {
    if (segment.segment == wanted) return &segment;
  }
  return nullptr;
}
// The piece that ends at the backup subpanel.
const SegmentFigures* lastSegment(const Assessment& assessment) {
  const SegmentFigures* last = segmentOf(assessment, Segment::switchToBackup);
  return last != nullptr ? last : segmentOf(assessment, Segment::inverterToBackup);
}

QString ratingText(const std::optional<RatingAmperes>& rating, const Language& language,
                   MessageId otherwise) {
  return rating ? number(rating->count(), 0, language) + QStringLiteral(" A") : words(language, otherwise);
}

QString wireText(const SegmentFigures& segment, const Language& language) {
  if (!segment.conductor.size) return words(language, kWireUnknown);
  const QString neutral = segment.neutral ? sizeWords(*segment.neutral) : QStringLiteral("?");
  const QString ground = segment.ground ? sizeWords(*segment.ground) : QStringLiteral("?");
  return words(language, kWireWords, sizeWords(*segment.conductor.size).toStdString(),
               metalWord(segment.conductor.metal).toStdString(), neutral.toStdString(), ground.toStdString());
}

struct Fact {
  QString head, value;
};

// Rows of facts in common columns, shared as `kShares` says unless a value wants more.
void drawFactRows(SheetFlow& flow, const std::vector<std::vector<Fact>>& rows) {
  constexpr double kShares[] = {0.27, 0.30, 0.19, 0.24};
  constexpr double kApart = 12.0;
  std::vector<double> widths, wanted;
  double all = 0.0;
  bool fits = true;
  for (std::size_t i = 0; i < std::size(kShares); ++i) {
    double want = 0.0;
    for (const auto& row : rows)
      want = std::max(want, textWidth(row[i].value, Face::condensed, 9.0, Weight::bold) + kApart);
    wanted.push_back(want);
    widths.push_back(kShares[i] * flow.width());
    all += want;
    fits = fits && want <= widths.back();
  }
  if (!fits) {
    for (std::size_t i = 0; i < widths.size(); ++i) widths[i] = wanted[i] * flow.width() / all;
  }
  for (const auto& row : rows) {
    double x = flow.left();
    for (std::size_t i = 0; i < row.size(); ++i) {
      if (i > 0) flow.rule({x - 6.0, flow.y() - 2.0}, {x - 6.0, flow.y() + 19.0});
      flow.text(x, flow.y() + 5.5, row[i].head, 7.2);
      flow.text(x, flow.y() + 16.5, row[i].value, 9.0, Weight::bold, Align::left, widths[i] - kApart);
      x += widths[i];
    }
    flow.advance(25.0);
  }
}

// A table of label, one or two figures, unit.
class FigureTable {
 public:
  FigureTable(SheetFlow& flow, double left, double width) : flow_(flow), left_(left), width_(width) {}
  double y = 0.0;
  void head(const QString& title) {
    flow_.text(left_, y + 10.0, title, 9.5, Weight::bold);
    y += 14.0;
    flow_.rule({left_, y}, {left_ + width_, y}, 0.9);
  }
  void row(const QString& label, const std::vector<QString>& figures, const QString& unit, bool strong = true,
           double indent = 0.0) {
    const double baseline = y + 9.0;
    const double unitX = left_ + width_;
    const double second = left_ + width_ - 24.0, first = second - kFigure;
    double room = (figures.size() > 1 ? first : second) - kFigure + 2.0 - left_;
    flow_.text(left_ + indent, baseline, label, 8.2, Weight::regular, Align::left, room - indent);
    const Weight weight = strong ? Weight::bold : Weight::regular;
    if (figures.size() == 1) flow_.text(second, baseline, figures[0], 8.2, weight, Align::right);
    if (figures.size() == 2) {
      flow_.text(first, baseline, figures[0], 8.2, weight, Align::right);
      flow_.text(second, baseline, figures[1], 8.2, weight, Align::right);
    }
    flow_.text(unitX, baseline, unit, 7.6, Weight::regular, Align::right);
    y += kTableRow;
    flow_.rule({left_, y}, {left_ + width_, y});
  }
  void legHead() {
    const double second = left_ + width_ - 24.0, first = second - kFigure;
    for (const auto& [x, leg] : {std::pair{first, Leg::l1}, std::pair{second, Leg::l2}}) {
      flow_.mark({SheetMarkKind::legLine, QRectF(x - 26.0, y, 12.0, kTableRow), Severity::danger, leg});
      flow_.text(x, y + 9.0, leg == Leg::l1 ? QStringLiteral("L1") : QStringLiteral("L2"), 8.2, Weight::bold,
                 Align::right);
    }
    y += kTableRow;
    flow_.rule({left_, y}, {left_ + width_, y});
  }
  void line(const QString& label, const QString& value) {
    const double baseline = y + 9.0;
    const double valueWidth = textWidth(value, Face::condensed, 8.2, Weight::bold);
    flow_.text(left_, baseline, label, 8.2, Weight::regular, Align::left, width_ - valueWidth - 8.0);
    flow_.text(left_ + width_, baseline, value, 8.2, Weight::bold, Align::right, width_);
    y += kTableRow;
    flow_.rule({left_, y}, {left_ + width_, y});
  }
  void note(const QString& value) {
    y += 1.0;
    y += flow_.paragraph(left_ + 8.0, y, width_ - 8.0, value, 7.4);
    y += 2.4;
    flow_.rule({left_, y}, {left_ + width_, y});
  }

 private:
  SheetFlow& flow_;
  double left_, width_;
};

// The start with the smallest margin on a leg.
const StartFigure<AcAmperes>* worstStart(const Assessment& assessment, Leg leg) {
  const StartFigure<AcAmperes>* worst = nullptr;
  for (const StartCheck& check : assessment.starts.checks) {
    const auto& figure = check.leg[index(leg)];
    if (!figure) continue;
    const bool smaller = worst == nullptr ||
                         (figure->margin && worst->margin && *figure->margin < *worst->margin) ||
                         (!(figure->margin && worst->margin) && figure->highSum > worst->highSum);
    if (smaller) worst = &*figure;
  }
  return worst;
}

std::vector<QString> voltAmperes(const std::array<ComplexPower, 2>& power, const Language& language) {
  return {number(std::round(power[0].apparent().count()), 0, language),
          number(std::round(power[1].apparent().count()), 0, language)};
}

// What a panel that is not the backup subpanel carries, in one row.
void drawLegRow(SheetFlow& flow, const PanelFigures& totals, Reading reading, const Language& language) {
  struct Load {
    MessageId what;
    std::array<ComplexPower, 2> power;
  };
  std::vector<Load> loads{
      {kConnected, reading == Reading::before ? totals.connectedBefore : totals.connected}};
  if (reading == Reading::planned) {
    loads.push_back(
        {kConnectedFed, {totals.connected[0] + totals.fed[0], totals.connected[1] + totals.fed[1]}});
    loads.push_back({kConnectedBefore, totals.connectedBefore});
  }
  double x = flow.left();
  const double width = flow.width() / 3.0;
  for (const Load& load : loads) {
    if (x > flow.left()) flow.rule({x - 6.0, flow.y() - 1.0}, {x - 6.0, flow.y() + 20.0});
    flow.text(x, flow.y() + 6.5, words(language, load.what), 7.2, Weight::regular, Align::left, width - 12.0);
    const std::vector<QString> figures = voltAmperes(load.power, language);
    double at = x;
    for (const Leg leg : {Leg::l1, Leg::l2}) {
      flow.mark({SheetMarkKind::legLine, QRectF(at, flow.y() + 10.0, 10.0, 9.0), Severity::danger, leg});
      const QString figure = (leg == Leg::l1 ? QStringLiteral("L1 ") : QStringLiteral("L2 ")) +
                             figures[static_cast<std::size_t>(index(leg))];
      flow.text(at + 13.0, flow.y() + 17.5, figure, 9.0, Weight::bold);
      at += 13.0 + textWidth(figure, Face::condensed, 9.0, Weight::bold) + 9.0;
    }
    flow.text(at - 6.0, flow.y() + 17.5, QStringLiteral("VA"), 8.0);
    x += width;
  }
  flow.advance(22.0);
}

void drawLegTable(FigureTable& table, const Assessment& assessment, const PanelFigures& totals,
                  const Language& language) {
  table.head(words(language, kLoadByLeg));
  table.legHead();
  table.row(words(language, kConnected), voltAmperes(totals.connected, language), QStringLiteral("VA"));
  const auto& hour = assessment.hour;
  const auto pair = [&](const auto& of) {
    return std::vector<QString>{of(hour.leg[0], Leg::l1), of(hour.leg[1], Leg::l2)};
  };
  const QString a = QStringLiteral("A");
  table.row(words(language, kConnected),
            pair([&](const HourLoad& l, Leg) { return amps(l.connectedCurrent, language); }), a);
  table.row(words(language, kAverage),
            pair([&](const HourLoad& l, Leg) { return amps(l.averageCurrent.likely, language); }), a, false);
  table.row(words(language, kLikelyPeak),
            pair([&](const HourLoad& l, Leg) { return amps(l.likelyPeakCurrent.likely, language); }), a);
  table.row(words(language, kLimitAllDay), pair([&](const HourLoad& l, Leg) {
              return l.limit ? amps(*l.limit, language) : QStringLiteral("?");
            }),
            a, false, 8.0);
  table.row(words(language, kThatPeakIs),
            pair([&](const HourLoad& l, Leg) { return verdictName(l.verdict, language); }), {}, true, 8.0);
  table.row(words(language, kNeutralWorst), {amps(hour.neutralWorst, language)}, a);
  const StartFigure<AcAmperes>* starts[] = {worstStart(assessment, Leg::l1), worstStart(assessment, Leg::l2)};
  if (starts[0] == nullptr && starts[1] == nullptr) return;
  const auto each = [&](const auto& of) {
    std::vector<QString> out;
    for (const auto* start : starts) out.push_back(start != nullptr ? of(*start) : QStringLiteral("–"));
    return out;
  };
  using Figure_ = StartFigure<AcAmperes>;
  table.row(words(language, kWorstStart), each([&](const Figure_& f) { return amps(f.likelySum, language); }),
            a);
  table.row(words(language, kItsHighCase), each([&](const Figure_& f) { return amps(f.highSum, language); }),
            a, true, 8.0);
  table.row(words(language, kHighLimit), each([&](const Figure_& f) {
              return f.highLimit ? amps(*f.highLimit, language) : QStringLiteral("?");
            }),
            a, false, 8.0);
  table.row(words(language, kThatStartIs),
            each([&](const Figure_& f) { return verdictName(f.verdict, language); }), {}, true, 8.0);
}

void drawFeederTable(FigureTable& table, const Assessment& assessment, const Language& language) {
  table.head(words(language, kFeederHead));
  const FeederLoad& load = assessment.demand.feederLoad;
  table.line(words(language, kCalculatedLoad),
             load.load ? words(language, load.typed ? kCalculatedTyped : kCalculatedWorked,
                               Figure{load.load->count(), "VA", 0})
                       : words(language, kNotEntered));
  if (assessment.segments.empty()) table.note(words(language, kNoFeeder));
  for (const SegmentFigures& segment : assessment.segments) {
    const auto standing = segment.device.inPlan ? segment.device.inPlan : segment.device.rating;
    const QString device =
        standing ? words(language, kDevice, std::int64_t{standing->count()}) : words(language, kNoDevice);
    QString name = words(segmentName(segment.segment), language);
    name[0] = name[0].toUpper();
    table.line(name, device);
    QString detail = wireText(segment, language);
    if (!segment.device.governs.id.key.empty()) {
      detail += u' ' + words(language, kGoverns, std::vector<Message>{segment.device.governs});
    }
    table.note(detail);
  }
  if (assessment.outage.known) {
    const auto& runtime = assessment.outage.runtime;
    table.line(words(language, kHours),
               words(language, kHoursWords, Figure{runtime.low.count(), "", 1},
                     Figure{runtime.high.count(), "", 1}, Figure{runtime.likely.count(), "", 1}));
  }
  table.y += 4.0;
  table.line(words(language, kAgreed), QStringLiteral("______________"));
}

}  // namespace

void drawFacts(SheetFlow& flow, const Plan& plan, const Assessment& assessment, const Panel& panel,
               Reading reading, const Language& language) {
  const bool backup = panel.role.is(PanelRole::backup);
  const Answer tandems = panel.tandems.valueOr(Answer::unknown);
  // Spaces that differ from the rest of the panel.
  QStringList some;
  for (const SpacePosition space : allSpaces(panel)) {
    if (tandems != Answer::yes && takesTandem(panel, space) == Answer::yes)
      some << QString::fromStdString(printedNumber(panel, space));
  }
  constexpr qsizetype kListed = 4;
  const auto spaces = std::int64_t{panel.spaces};
  const QString tandemWords =
      tandems == Answer::yes  ? words(language, kTandemYes, spaces)
      : some.size() > kListed ? words(language, kTandemMany, spaces, static_cast<std::int64_t>(some.size()))
      : !some.isEmpty() ? words(language, kTandemAt, spaces, some.join(QStringLiteral(", ")).toStdString())
      : tandems == Answer::no ? words(language, kTandemNo, spaces)
                              : words(language, kTandemUnknown, spaces);
  const SystemVoltages system = voltages(plan, backup ? Mode::outage : Mode::ordinary);
  const std::vector<Fact> equipment{
      {words(language, kSystem), words(language, system.wye ? kSystemWye : kSystemSplit)},
      {words(language, kBus), ratingText(panel.busRating, language, kNotEntered)},
      {words(language, kMain), ratingText(panel.mainBreaker, language, kLugsOnly)},
      {words(language, kSpaces), tandemWords}};
  QString from = words(language, kFromUtility);
  if (backup)
    from =
        words(language,
              kFromSwitch[static_cast<std::size_t>(plan.transfer->arrangement.valueOr(Arrangement::none))]);
  else if (const Panel* ahead = find(plan, panel.fedFrom))
    from = text(ahead->name);
  const SegmentFigures* last = backup && reading == Reading::planned ? lastSegment(assessment) : nullptr;
  Fact second{words(language, kPlace), panel.place.empty() ? QStringLiteral("–") : text(panel.place)};
  if (last != nullptr && last->conductor.size) {
    second = {words(language, kFeederFact),
              words(language, kFeederWords, sizeWords(*last->conductor.size).toStdString(),
                    metalWord(last->conductor.metal).toStdString())};
  }
  QString ground = backup ? words(language, kNotEntered) : words(language, kServiceElectrode);
  if (last != nullptr && last->ground)
    ground = words(language, kGroundWire, sizeWords(*last->ground).toStdString());
  const Answer bond = panel.neutralBonded.valueOr(Answer::unknown);
  QString neutral = words(language, bond == Answer::yes  ? kBonded
                                    : bond == Answer::no ? kIsolated
                                                         : kNotLooked);
  // The terminals that are taken, of the panel as it stands after the work.
  if (reading == Reading::planned) {
    for (const NeutralTerminals& figures : neutralTerminals(plan)) {
      if (figures.panel == panel.id && figures.terminals)
        neutral = words(language, kTerminals, neutral.toStdString(), std::int64_t{figures.landed()},
                        std::int64_t{*figures.terminals});
    }
  }
  drawFactRows(flow, {equipment,
                      {{words(language, kFedFrom), from},
                       second,
                       {words(language, kGrounding), ground},
                       {words(language, kNeutral), neutral}}});
  flow.advance(2.0);
}

void drawFigures(SheetFlow& flow, const Assessment& assessment, const Panel& panel, Reading reading,
                 const Language& language) {
  const auto totals = std::find_if(assessment.panels.begin(), assessment.panels.end(),
                                   [&](const PanelFigures& f) { return f.panel == panel.id; });
  if (totals == assessment.panels.end()) return;
  if (!panel.role.is(PanelRole::backup) || reading == Reading::before) {
    drawLegRow(flow, *totals, reading, language);
    return;
  }
  // The right table holds sentences.
  constexpr double kApart = 22.0;
  const double left = 0.43 * (flow.width() - kApart);
  FigureTable legs(flow, flow.left(), left);
  legs.y = flow.y();
  drawLegTable(legs, assessment, *totals, language);
  FigureTable feeder(flow, flow.left() + left + kApart, flow.width() - left - kApart);
  feeder.y = flow.y();
  drawFeederTable(feeder, assessment, language);
  flow.advance(std::max(legs.y, feeder.y) - flow.y());
}

std::vector<const Finding*> openFindings(const Plan& plan, const Assessment& assessment, const Panel& panel) {
  std::vector<const Finding*> open;
  for (const Finding& finding : assessment.findings) {
    if (finding.severity == Severity::danger) open.push_back(&finding);
    if (finding.severity != Severity::mustFix) continue;
    const bool here = std::any_of(finding.places.begin(), finding.places.end(), [&](const EntityRef& place) {
      if (place.kind == RecordKind::panel) return place.id == panel.id.number;
      if (place.kind == RecordKind::breaker) {
        const Breaker* breaker = find(plan, BreakerId{place.id});
        return breaker != nullptr && breaker->panel == panel.id;
      }
      if (place.kind == RecordKind::circuit) {
        const Circuit* circuit = find(plan, CircuitId{place.id});
        return circuit != nullptr && panelOf(plan, *circuit, Reading::planned) == panel.id;
      }
      return false;
    });
    if (here || panel.role.is(PanelRole::backup)) open.push_back(&finding);
  }
  return open;
}

void drawOpenFinding(SheetFlow& flow, const Finding& finding, const Language& language) {
  const double width = flow.width() - kIndent - 10.0;
  const QString plain = words(language, kOpenHead, render(finding.plain, language));
  QString trade = words(finding.trade, language);
  const QString cited = finding.rule.key.empty() ? QString() : text(language.citation(finding.rule));
  if (!cited.isEmpty() && !trade.contains(cited)) trade += QStringLiteral("  ") + cited;
  const double height = 8.0 + flow.paragraphHeight(width, plain, 9.0, Weight::bold) +
                        flow.paragraphHeight(width, trade, 7.8) + 18.0;
  const double top = flow.y();
  flow.box(QRectF(flow.left(), top, flow.width(), height), finding.severity == Severity::danger ? 1.2 : 0.6);
  flow.mark({SheetMarkKind::severity, QRectF(flow.left() + 8.0, top + 7.0, 16.0, 16.0), finding.severity});
  double y = top + 4.0;
  y += flow.paragraph(flow.left() + kIndent, y, width, plain, 9.0, Weight::bold);
  y += flow.paragraph(flow.left() + kIndent, y, width, trade, 7.8);
  const double baseline = y + 11.0;
  flow.text(flow.left() + kIndent, baseline, words(language, kSettledBy), 7.6);
  flow.rule({flow.left() + 74.0, baseline + 1.5}, {flow.left() + 280.0, baseline + 1.5});
  flow.text(flow.left() + 292.0, baseline, words(language, kDateBlank), 7.6);
  flow.rule({flow.left() + 316.0, baseline + 1.5}, {flow.left() + 410.0, baseline + 1.5});
  flow.advance(height);
}

void drawNotes(SheetFlow& flow, const Plan& plan, const Panel& panel, Reading reading,
               const ScheduleRows& rows, const Language& language) {
  std::vector<QString> notes;
  const bool backup = panel.role.is(PanelRole::backup);
  notes.push_back(words(language, kNoteLegs));
  if (backup) {
    notes.push_back(words(language, kNoteNeutral));
    notes.push_back(words(language, kNoteBond));
    notes.push_back(words(language, kNoteListed));
  }
  const auto onPanel = [&](const Circuit& circuit) { return panelOf(plan, circuit, reading) == panel.id; };
  QStringList alarms;
  bool medical = false;
  for (const auto& circuit : plan.circuits) {
    if (!onPanel(*circuit)) continue;
    if (circuit->smokeAlarms.is(Answer::yes)) {
      const Breaker* breaker = find(plan, breakerOf(*circuit, reading));
      alarms << text(spaceNames(panel, placementOf(*breaker)));
    }
    medical = medical || std::any_of(circuit->loads.begin(), circuit->loads.end(),
                                     [](const Load& load) { return load.medical; });
  }
  if (!alarms.isEmpty())
    notes.push_back(words(language, kNoteAlarms, alarms.join(QStringLiteral("; ")).toStdString()));
  if (medical) notes.push_back(words(language, kNoteMedical));
  if (!rows.ties.empty()) notes.push_back(words(language, kNoteTies));
  if (reading == Reading::planned && !backup) notes.push_back(words(language, kNoteOldSpaces));
  notes.push_back(words(language, kNoteDirectory));
  notes.push_back(words(language, kNoteLive));
  notes.push_back(words(language, kNoteLicensed));

  flow.text(flow.left(), flow.y() + 9.0, words(language, kNotes), 9.5, Weight::bold);
  std::int64_t count = 0;
  const double x = flow.left() + kIndent;
  for (const QString& note : notes) {
    flow.text(x, flow.y() + 8.0, QString::number(++count), 8.0, Weight::bold);
    flow.advance(flow.paragraph(x + 12.0, flow.y(), flow.right() - x - 12.0, note, 8.0) + 1.0);
  }
}

void drawSignatures(SheetFlow& flow, const Language& language) {
  // To write in by hand, a line wants some 7 mm above it.
  flow.advance(14.0);
  flow.text(flow.left(), flow.y(), words(language, kChanges), 8.4, Weight::bold);
  flow.rule({flow.left() + 84.0, flow.y() + 2.0}, {flow.right(), flow.y() + 2.0});
  flow.advance(25.0);
  const double shares[] = {0.42, 0.20, 0.15, 0.23};
  double x = flow.left();
  for (std::size_t i = 0; i < std::size(shares); ++i) {
    const double w = shares[i] * flow.width();
    flow.rule({x, flow.y()}, {x + w - (i + 1 < std::size(shares) ? 10.0 : 0.0), flow.y()});
    flow.text(x, flow.y() + 9.0, words(language, kSignatures[i]), 7.4);
    x += w;
  }
  flow.advance(11.0);
}

}  // namespace stayalight
