#pragma once

// Which sheets a plan has, and the sheets themselves.

#include <QtCore/QStringList>
#include <optional>

#include "core/assess/assess.h"
#include "ui/paper/sheet.h"

namespace stayalight {

enum class SheetKind : std::uint8_t {
  panelSchedule,    ///< of one panel, before or after the work
  moves,            ///< circuits that move, raceways, splices: for the electrician
  feeder,           ///< pieces of the feeder, raceways, battery cable, buses: for the electrician
  calculation,      ///< load calculation and capacity of the source
  working,          ///< every step of the figures
  householdSurvey,  ///< what the household looks at: blanks
  qualifiedSurvey   ///< what a qualified person looks at, cover off: blanks
};
struct SheetChoice {
  SheetKind kind = SheetKind::panelSchedule;
  PanelId panel;
  Reading reading = Reading::planned;
  QString word;       ///< of the command line: "main-before", "main", "backup", "subpanel3", "moves",
                      ///< "feeder", "load-calculation", "working", "survey-household", "survey-electrician"
  QString title;      ///< "Main panel, after the work"
  bool inSet = true;  ///< printed where nobody chose; the working and the sheets of a visit are not
};
/// All a plan can print, in the order of the set: each panel before the work, then as planned, then the other
/// sheets that the plan has something for. A backup subpanel in which nothing stands before the work has no
/// sheet "before".
[[nodiscard]] std::vector<SheetChoice> sheetChoices(const Plan& plan, const Language& language);
/// The chosen ones, without words those of the set; "survey" is both sheets of a visit. A word no sheet has
/// is refused with the words there are.
[[nodiscard]] Result<std::vector<SheetChoice>> chosenSheets(const Plan& plan, const QStringList& words,
                                                            const Language& language);

struct PaperOptions {
  PaperSize size = PaperSize::letter;
  QString planName;
  QString version;  ///< of the program
};
/// The pages of the chosen sheets, numbered together. A long schedule goes on over pages.
[[nodiscard]] std::vector<Sheet> sheets(const Plan& plan, const Assessment& assessment,
                                        const std::vector<SheetChoice>& chosen, const Language& language,
                                        const PaperOptions& options);

}  // namespace stayalight
