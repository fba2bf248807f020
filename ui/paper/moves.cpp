#include "ui/paper/moves.h"

#include "core/wiring/extension.h"
#include "ui/paper/table.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kForElectrician{"paper.moves.for_electrician"};
constexpr MessageId kMoves{"paper.moves.circuits"};
constexpr MessageId kCircuit{"paper.moves.circuit"};
constexpr MessageId kFrom{"paper.moves.from"};
constexpr MessageId kTo{"paper.moves.to"};
constexpr MessageId kBreaker{"paper.moves.breaker"};
constexpr MessageId kWire{"paper.moves.wire"};
constexpr MessageId kSpliced{"paper.moves.spliced"};
constexpr MessageId kThrough{"paper.moves.through"};
constexpr MessageId kDone{"paper.column_done"};
constexpr MessageId kPlace{"paper.moves.place"};
constexpr MessageId kBreakerWords{"paper.moves.breaker_words"};
constexpr MessageId kBreakerProtected{"paper.moves.breaker_protected"};
constexpr MessageId kProtection[] = {MessageId{"paper.moves.afci"}, MessageId{"paper.moves.gfci"},
                                     MessageId{"paper.moves.dual"}};
constexpr MessageId kSplice[] = {MessageId{"paper.moves.splice_unknown"},
                                 MessageId{"paper.moves.splice_panel"}, MessageId{"paper.moves.splice_box"},
                                 MessageId{"paper.moves.splice_none"}};
constexpr MessageId kShared{"paper.moves.shared_neutral"};
constexpr MessageId kRaceway{"paper.moves.raceway"};
constexpr MessageId kTypes[] = {MessageId{"field.raceway.type.emt"}, MessageId{"field.raceway.type.pvc_40"},
                                MessageId{"field.raceway.type.pvc_80"},
                                MessageId{"field.raceway.type.flexible_metal"},
                                MessageId{"field.raceway.type.liquidtight_flexible_metal"}};
constexpr MessageId kRacewayFacts{"paper.moves.raceway_facts"};
constexpr MessageId kRacewayNipple{"paper.moves.raceway_nipple"};
constexpr MessageId kWhat{"paper.moves.what"};
constexpr MessageId kCount{"paper.moves.count"};
constexpr MessageId kArea{"paper.moves.area"};
constexpr MessageId kAll{"paper.moves.all"};
constexpr MessageId kTerminal{"paper.moves.terminal"};
constexpr MessageId kDerated{"paper.moves.derated"};
constexpr MessageId kVerdict{"paper.moves.verdict"};
constexpr MessageId kVerdicts[] = {MessageId{"paper.moves.holds"},
                                   MessageId{"paper.moves.label_allows"},
                                   MessageId{"paper.moves.read_label"},
                                   MessageId{"paper.moves.receptacles"},
                                   MessageId{"paper.moves.receptacles_unknown"},
                                   MessageId{"paper.moves.load_above"},
                                   MessageId{"paper.moves.over"}};
static_assert(std::size(kVerdicts) == static_cast<std::size_t>(BranchProtection::over) + 1);
constexpr MessageId kRule{"paper.moves.rule"};
constexpr MessageId kRules{"paper.moves.rules"};
constexpr MessageId kRoles[] = {MessageId{"paper.moves.hot"}, MessageId{"paper.moves.neutral"},
                                MessageId{"paper.moves.ground"}, MessageId{"paper.moves.cable"},
                                MessageId{"paper.moves.other"}};
constexpr MessageId kBox{"paper.moves.box"};
constexpr MessageId kVolumes{"paper.moves.volumes"};
constexpr MessageId kEach{"paper.moves.each"};
constexpr MessageId kSum{"paper.moves.sum"};
constexpr MessageId kBoxHas{"paper.moves.box_has"};
constexpr MessageId kConnectors{"paper.moves.connectors"};
constexpr MessageId kJoint{"paper.moves.joint"};
constexpr MessageId kOrder{"paper.moves.order"};
constexpr MessageId kSetSupply{"paper.moves.set_supply"};
constexpr MessageId kBestPlace{"paper.moves.best_place"};
constexpr MessageId kThenOthers{"paper.moves.then_others"};
constexpr MessageId kNotes[] = {
    MessageId{"paper.moves.note_dead"},       MessageId{"paper.moves.note_neutral"},
    MessageId{"paper.moves.note_connectors"}, MessageId{"paper.moves.note_torque"},
    MessageId{"paper.moves.note_reach"},      MessageId{"paper.note_licensed"}};
constexpr MessageId kNotesHead{"paper.notes"};

QString text(const std::string& value) { return QString::fromStdString(value); }
QString decimals(double value, int places, const Language& language) {
  return text(language.number(value, places));
}
QString sizeText(const std::optional<ConductorSize>& size, const Language& language) {
  return size ? conductorText(*size, language) : QStringLiteral("?");
}

bool moves(const Plan& plan, const Circuit& circuit) {
  return circuit.breaker.valid() && backedUp(plan, circuit) && circuit.breaker != circuit.planned &&
         panelOf(plan, circuit, Reading::before) != panelOf(plan, circuit, Reading::planned);
}

QString placeText(const Plan& plan, BreakerId id, const Language& language) {
  const Breaker* breaker = find(plan, id);
  const Panel* panel = breaker != nullptr ? find(plan, breaker->panel) : nullptr;
  if (panel == nullptr) return {};
  QStringList legs;
  for (const Leg leg : poleLegs(*panel, placementOf(*breaker))) legs << text(std::string(legName(leg)));
  return words(language, kPlace, spaceNames(*panel, placementOf(*breaker)), legs.join(u'+').toStdString());
}

QString breakerText(const Breaker& breaker, const Language& language) {
  const Protection has = breaker.protection.valueOr(Protection::none);
  if (has == Protection::none)
    return words(language, kBreakerWords, std::int64_t{breaker.rating.count()}, std::int64_t{breaker.poles});
  return words(language, kBreakerProtected, std::int64_t{breaker.rating.count()}, std::int64_t{breaker.poles},
               words(language, kProtection[static_cast<std::size_t>(has) - 1]).toStdString());
}

void drawCircuits(SheetFlow& flow, const Plan& plan, const Language& language) {
  drawHeading(flow, words(language, kMoves));
  SheetTable table(flow, {{words(language, kDone), 0.05, Align::centre, false, true},
                          {words(language, kCircuit), 0.25, Align::left, true},
                          {words(language, kFrom), 0.10},
                          {words(language, kTo), 0.10, Align::left, true},
                          {words(language, kBreaker), 0.13},
                          {words(language, kWire), 0.12},
                          {words(language, kSpliced), 0.13},
                          {words(language, kThrough), 0.12}});
  table.head();
  for (const auto& circuit : plan.circuits) {
    if (!moves(plan, *circuit)) continue;
    const Splice splice = circuit->splice.valueOr(Splice::unknown);
    QString where = words(language, kSplice[static_cast<std::size_t>(splice)]);
    if (const SpliceBox* box = find(plan, circuit->spliceBox); box != nullptr && splice == Splice::inBox)
      where = text(box->name);
    QString name = text(circuitName(*circuit));
    if (circuit->multiwire > 0) name += u' ' + words(language, kShared, std::int64_t{circuit->multiwire});
    QString wire = sizeText(circuit->conductor, language);
    const auto extension = extensionSize(*circuit);
    if (splice != Splice::none && extension && extension != circuit->conductor)
      wire += QStringLiteral(" → ") + sizeText(extension, language);
    const Raceway* raceway = find(plan, circuit->raceway);
    table.row({QString(), name, placeText(plan, circuit->breaker, language),
               placeText(plan, circuit->planned, language),
               breakerText(*find(plan, circuit->planned), language), wire, where,
               raceway != nullptr ? text(raceway->name) : QStringLiteral("–")});
  }
  table.end();
}

// What comes out before the breakers of the supply can be set, and what has no supply meanwhile.
void drawOrder(SheetFlow& flow, const Plan& plan, const Assessment& assessment, const Language& language) {
  const Panel* ahead = panelAhead(plan);
  QStringList lines;
  for (const ClearedPlace& place : assessment.supplyPlaces) {
    if (place.refusal) lines << words(*place.refusal, language);
    if (place.steps.empty()) continue;
    for (const ClearingStep& step : place.steps) lines << words(instruction(plan, step), language);
    lines << words(language, place.breaker.valid() ? kSetSupply : kBestPlace,
                   std::vector<Message>{nameOf(plan, place)}, spaceNames(*ahead, *place.place));
  }
  if (lines.isEmpty()) return;
  lines << words(language, kThenOthers);
  drawHeading(flow, words(language, kOrder, ahead->name), 60.0);
  drawNumbered(flow, lines);
  flow.advance(4.0);
}

QString sections(std::initializer_list<const char*> rules, const Language& language) {
  QStringList cited;
  for (const char* rule : rules) cited << text(language.citation(RuleId{rule}));
  return cited.join(QStringLiteral(", "));
}

void drawRaceway(SheetFlow& flow, const Plan& plan, const RacewayFigures& figures, const Language& language) {
  const Raceway& raceway = *find(plan, figures.raceway);
  const auto type = static_cast<std::size_t>(raceway.type.valueOr(RacewayType::pvc80));
  const QString kind = words(language, kTypes[type]);
  drawHeading(flow,
              words(language, kRaceway, raceway.name, kind.toStdString(), std::string(raceway.size.word())),
              90.0);
  const double inside = figures.inside.count();
  const Figure share{figures.area.count() / inside * 100.0, "%", 0};
  const Figure most{figures.allowed.count() / inside * 100.0, "%", 0};
  const QString facts =
      figures.nipple ? words(language, kRacewayNipple, Figure{raceway.length.inInches(), "in", 0}, share,
                             most, std::int64_t{figures.conductors})
                     : words(language, kRacewayFacts, Figure{raceway.length.inFeet(), "ft", 1}, share, most,
                             std::int64_t{figures.conductors}, std::int64_t{figures.carrying.most()},
                             Figure{figures.adjustment.count() * 100.0, "%", 0});
  const QString rules =
      words(language, kRules,
            figures.nipple ? sections({"raceway.nipple_fill", "conductor.nipple"}, language).toStdString()
                           : sections({"raceway.fill", "conductor.adjustment"}, language).toStdString(),
            verdictName(figures.fill, language).toStdString());
  flow.advance(flow.paragraph(flow.left(), flow.y(), flow.width(), facts + QLatin1Char(' ') + rules, 8.2) +
               4.0);
  SheetTable contents(flow, {{words(language, kWhat), 0.52},
                             {words(language, kCount), 0.16, Align::right},
                             {words(language, kWire), 0.16, Align::right},
                             {words(language, kArea), 0.16, Align::right}});
  contents.head();
  for (const RacewayContent& content : figures.contents) {
    contents.row(
        {words(language, kRoles[static_cast<std::size_t>(content.role)], render(content.what, language)),
         QString::number(content.count),
         content.size ? sizeText(content.size, language) : QStringLiteral("–"),
         content.area ? figureText({content.area->count(), "in²", 4}, language) : QStringLiteral("?")});
  }
  contents.row({words(language, kAll), QString::number(figures.conductors), QString(),
                figureText({figures.area.count(), "in²", 4}, language)},
               true);
  contents.end();
  if (figures.branches.empty()) return;
  SheetTable branches(flow, {{words(language, kCircuit), 0.26},
                             {words(language, kWire), 0.10, Align::right},
                             {words(language, kTerminal), 0.11, Align::right},
                             {words(language, kDerated), 0.11, Align::right},
                             {words(language, kBreaker), 0.09, Align::right},
                             {words(language, kVerdict), 0.20},
                             {words(language, kRule), 0.13}});
  branches.head();
  for (const RacewayBranch& branch : figures.branches) {
    const auto carries = [&](const std::optional<AcAmperes>& amperes) {
      return amperes ? decimals(amperes->count(), 1, language) + QStringLiteral(" A") : QStringLiteral("–");
    };
    branches.row({text(circuitName(*find(plan, branch.circuit))), sizeText(branch.size, language),
                  carries(branch.ampacity.terminal), carries(branch.ampacity.derated),
                  QString::number(branch.device.count()) + QStringLiteral(" A"),
                  words(language, kVerdicts[static_cast<std::size_t>(branch.protection)]),
                  text(language.citation(branch.rule))});
  }
  branches.end();
}

void drawBox(SheetFlow& flow, const Plan& plan, const SpliceBoxFigures& figures, const Language& language) {
  const SpliceBox& box = *find(plan, figures.box);
  drawHeading(flow, words(language, kBox, box.name, box.place), 70.0);
  SheetTable table(flow, {{words(language, kWhat), 0.55},
                          {words(language, kVolumes), 0.15, Align::right},
                          {words(language, kEach), 0.15, Align::right},
                          {words(language, kSum), 0.15, Align::right}});
  table.head();
  for (const BoxLine& line : figures.lines) {
    table.row({words(line.what, language), decimals(line.count, 2, language),
               figureText({line.each.count(), "in³", 2}, language),
               figureText({line.volume().count(), "in³", 2}, language)});
  }
  table.row({figures.volume ? words(language, kBoxHas, Figure{figures.volume->count(), "in³", 1})
                            : words(language, kBoxHas, "?"),
             QString(), QString(), figureText({figures.needed.count(), "in³", 2}, language)},
            true);
  table.end();
  const QString rules =
      words(language, kRules, sections({figures.large ? "box.large" : "box.fill"}, language).toStdString(),
            verdictName(figures.verdict, language).toStdString());
  flow.advance(flow.paragraph(flow.left(), flow.y(), flow.width(), rules, 8.2) + 4.0);
}

}  // namespace

bool hasMoves(const Plan& plan) {
  for (const auto& circuit : plan.circuits) {
    if (moves(plan, *circuit)) return true;
  }
  return false;
}

void drawMoves(SheetFlow& flow, const Plan& plan, const Assessment& assessment, const Language& language) {
  flow.advance(flow.paragraph(flow.left(), flow.y(), flow.width(), words(language, kForElectrician), 8.8,
                              Weight::bold) +
               4.0);
  drawCircuits(flow, plan, language);
  drawOrder(flow, plan, assessment, language);
  for (const RacewayFigures& figures : assessment.raceways) {
    if (!figures.contents.empty()) drawRaceway(flow, plan, figures, language);
  }
  for (const SpliceBoxFigures& figures : assessment.boxes) {
    if (!figures.lines.empty()) drawBox(flow, plan, figures, language);
  }
  const std::vector<Joint> all = joints(plan);
  if (!all.empty()) {
    drawHeading(flow, words(language, kConnectors), 40.0);
    for (const Joint& joint : all) {
      flow.need(12.0);
      flow.text(flow.left(), flow.y() + 9.0,
                words(language, kJoint, std::int64_t{joint.count}, conductorName(joint.from, joint.fromMetal),
                      conductorName(joint.to, Metal::copper)),
                8.2);
      flow.advance(12.0);
    }
    flow.advance(4.0);
  }
  drawHeading(flow, words(language, kNotesHead), 40.0);
  QStringList notes;
  for (const MessageId note : kNotes) notes << words(language, note);
  drawNumbered(flow, notes);
}

}  // namespace stayalight
