#include "ui/paper/sheets.h"

#include <algorithm>

#include "ui/paper/calculation.h"
#include "ui/paper/feeder.h"
#include "ui/paper/flow.h"
#include "ui/paper/moves.h"
#include "ui/paper/panel_sheet.h"
#include "ui/paper/survey.h"
#include "ui/paper/working.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kPanelSchedule{"paper.panel_schedule"};
constexpr MessageId kMovesHead{"paper.moves.head"};
constexpr MessageId kMovesTitle{"paper.moves.title"};
constexpr MessageId kFeederHead{"paper.feeder.head"};
constexpr MessageId kFeederTitle{"paper.feeder.title"};
constexpr MessageId kLoadHead{"paper.load.head"};
constexpr MessageId kLoadTitle{"paper.load.title"};
constexpr MessageId kWorkingHead{"paper.working.head"};
constexpr MessageId kWorkingTitle{"paper.working.title"};
constexpr MessageId kSurveyHead{"paper.survey.head"};
constexpr MessageId kSurveyHousehold{"paper.survey.title_household"};
constexpr MessageId kSurveyQualified{"paper.survey.title_qualified"};
constexpr MessageId kBefore{"paper.title_before"};
constexpr MessageId kAfter{"paper.title_after"};
constexpr MessageId kNoSuchSheet{"paper.no_such_sheet"};
constexpr MessageId kNoSheets{"paper.no_sheets"};

QString roleWord(PanelRole role) {
  switch (role) {
    case PanelRole::main:
      return QStringLiteral("main");
    case PanelRole::subpanel:
      return QStringLiteral("subpanel");
    case PanelRole::backup:
      return QStringLiteral("backup");
  }
  return {};
}

MessageId headOf(SheetKind kind) {
  switch (kind) {
    case SheetKind::panelSchedule:
      return kPanelSchedule;
    case SheetKind::moves:
      return kMovesHead;
    case SheetKind::feeder:
      return kFeederHead;
    case SheetKind::calculation:
      return kLoadHead;
    case SheetKind::working:
      return kWorkingHead;
    case SheetKind::householdSurvey:
    case SheetKind::qualifiedSurvey:
      return kSurveyHead;
  }
  return {};
}

void drawPanel(SheetFlow& flow, const Plan& plan, const Assessment& assessment, const SheetChoice& choice,
               const Language& language) {
  const Panel* panel = find(plan, choice.panel);
  if (panel == nullptr) return;
  drawPanelSheet(flow, plan, assessment, *panel, choice.reading, language);
}

}  // namespace

std::vector<SheetChoice> sheetChoices(const Plan& plan, const Language& language) {
  std::vector<SheetChoice> choices;
  for (const Reading reading : {Reading::before, Reading::planned}) {
    for (const auto& panel : plan.panels) {
      const PanelRole role = panel->role.valueOr(PanelRole::subpanel);
      const bool empty = occupants(plan, panel->id, reading).empty();
      if (reading == Reading::before && role == PanelRole::backup && empty) continue;
      QString word = roleWord(role);
      if (role == PanelRole::subpanel) word += QString::number(panel->id.number);
      if (reading == Reading::before) word += QStringLiteral("-before");
      choices.push_back({SheetKind::panelSchedule, panel->id, reading, word,
                         words(language, reading == Reading::before ? kBefore : kAfter, panel->name)});
    }
  }
  if (hasMoves(plan)) {
    choices.push_back(
        {SheetKind::moves, {}, Reading::planned, QStringLiteral("moves"), words(language, kMovesTitle)});
  }
  if (hasFeeder(plan)) {
    choices.push_back(
        {SheetKind::feeder, {}, Reading::planned, QStringLiteral("feeder"), words(language, kFeederTitle)});
  }
  if (hasCalculation(plan)) {
    choices.push_back({SheetKind::calculation,
                       {},
                       Reading::planned,
                       QStringLiteral("load-calculation"),
                       words(language, kLoadTitle)});
  }
  if (hasWorking(plan)) {
    choices.push_back({SheetKind::working,
                       {},
                       Reading::planned,
                       QStringLiteral("working"),
                       words(language, kWorkingTitle),
                       false});
  }
  if (hasSurvey(plan)) {
    choices.push_back({SheetKind::householdSurvey,
                       {},
                       Reading::before,
                       QStringLiteral("survey-household"),
                       words(language, kSurveyHousehold),
                       false});
    choices.push_back({SheetKind::qualifiedSurvey,
                       {},
                       Reading::before,
                       QStringLiteral("survey-electrician"),
                       words(language, kSurveyQualified),
                       false});
  }
  return choices;
}

Result<std::vector<SheetChoice>> chosenSheets(const Plan& plan, const QStringList& words,
                                              const Language& language) {
  const std::vector<SheetChoice> all = sheetChoices(plan, language);
  if (all.empty()) return say(kNoSheets);
  std::vector<SheetChoice> chosen;
  if (words.isEmpty()) {
    std::copy_if(all.begin(), all.end(), std::back_inserter(chosen),
                 [](const SheetChoice& choice) { return choice.inSet; });
    return chosen;
  }
  for (const QString& word : words) {
    if (word == QStringLiteral("survey")) {
      std::copy_if(all.begin(), all.end(), std::back_inserter(chosen), [](const SheetChoice& choice) {
        return choice.kind == SheetKind::householdSurvey || choice.kind == SheetKind::qualifiedSurvey;
      });
      continue;
    }
    const auto at =
        std::find_if(all.begin(), all.end(), [&](const SheetChoice& choice) { return choice.word == word; });
    if (at == all.end()) {
      QStringList known;
      for (const SheetChoice& choice : all) known << choice.word;
      return say(kNoSuchSheet, word.toStdString(), known.join(QStringLiteral(", ")).toStdString());
    }
    chosen.push_back(*at);
  }
  return chosen;
}

std::vector<Sheet> sheets(const Plan& plan, const Assessment& assessment,
                          const std::vector<SheetChoice>& chosen, const Language& language,
                          const PaperOptions& options) {
  std::vector<Sheet> pages;
  for (const SheetChoice& choice : chosen) {
    SheetFlow flow(options, *plan.site, language, words(language, headOf(choice.kind)), choice.title);
    switch (choice.kind) {
      case SheetKind::panelSchedule:
        drawPanel(flow, plan, assessment, choice, language);
        break;
      case SheetKind::moves:
        drawMoves(flow, plan, assessment, language);
        break;
      case SheetKind::feeder:
        drawFeeder(flow, plan, assessment, language);
        break;
      case SheetKind::calculation:
        drawCalculation(flow, plan, assessment, language);
        break;
      case SheetKind::working:
        drawWorking(flow, plan, assessment, language);
        break;
      case SheetKind::householdSurvey:
        drawHouseholdSurvey(flow, plan, assessment, language);
        break;
      case SheetKind::qualifiedSurvey:
        drawQualifiedSurvey(flow, plan, assessment, language);
        break;
    }
    for (Sheet& page : flow.take()) pages.push_back(std::move(page));
  }
  numberPages(pages, language);
  return pages;
}

}  // namespace stayalight
