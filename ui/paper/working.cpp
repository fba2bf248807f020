#include "ui/paper/working.h"

#include <algorithm>

#include "ui/paper/table.h"
#include "ui/wording/language.h"
#include "ui/wording/notation.h"

namespace stayalight {
namespace {

constexpr MessageId kStarts{"paper.working.starts"};
constexpr MessageId kOutage{"paper.working.outage"};
constexpr MessageId kHours{"paper.working.hours"};
constexpr MessageId kEdition{"answers.working.edition"};
constexpr MessageId kNumber{"paper.working.number"};
constexpr MessageId kStep{"paper.working.step"};
constexpr MessageId kResult{"paper.working.result"};
constexpr MessageId kRule{"paper.working.rule"};
constexpr MessageId kInput{"paper.working.input"};
constexpr MessageId kGraded{"paper.working.graded"};

std::string_view roomOf(const Step& step) { return step.formula.key.substr(0, step.formula.key.find('.')); }

// One heading and the steps under it, in the order in which they were written down.
struct Part {
  QString heading;
  std::vector<std::size_t> steps;
};

// The loads by the hour are steps of every hour: those alone are here that another figure rests on.
std::vector<Part> partsOf(const Working& working, const Language& language) {
  const auto all = working.steps();
  constexpr std::array<std::string_view, 5> rooms = {"demand", "capacity", "wiring", "start", "outage"};
  std::vector<std::size_t> asked;
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (std::find(rooms.begin(), rooms.end(), roomOf(all[i])) != rooms.end()) asked.push_back(i);
  }
  std::vector<Part> parts;
  for (const std::size_t i : withWhatTheyRestOn(all, asked)) {
    const WorkingSubject* const subject = working.subjectOf(all[i]);
    QString heading = words(language, roomOf(all[i]) == "start"    ? kStarts
                                      : roomOf(all[i]) == "outage" ? kOutage
                                                                   : kHours);
    if (subject != nullptr) {
      heading = words(subject->name, language);
      heading[0] = heading[0].toUpper();
    }
    auto part = std::find_if(parts.begin(), parts.end(),
                             [&](const Part& earlier) { return earlier.heading == heading; });
    if (part == parts.end()) part = parts.insert(parts.end(), Part{heading, {}});
    part->steps.push_back(i);
  }
  return parts;
}

/// No row is higher than a page: inputs beyond these stand in rows of their own below.
constexpr qsizetype kInputsInARow = 20;

// In groups that a row holds.
QStringList inputsOf(const WorkedStep& step, const Language& language) {
  QStringList all;
  for (const WorkedInput& input : step.inputs) {
    const std::string from = input.from.toStdString();
    all << (input.grade.isEmpty()
                ? words(language, kInput, input.symbol.toStdString(), input.value.toStdString(), from)
                : words(language, kGraded, input.symbol.toStdString(), input.value.toStdString(), from,
                        input.grade.toStdString()));
  }
  QStringList groups;
  for (qsizetype at = 0; at == 0 || at < all.size(); at += kInputsInARow)
    groups << all.mid(at, kInputsInARow).join(QStringLiteral("; "));
  return groups;
}

}  // namespace

bool hasWorking(const Plan& plan) { return backupPanel(plan) != nullptr; }

void drawWorking(SheetFlow& flow, const Plan& plan, const Assessment& assessment, const Language& language) {
  Assessment recorded;
  if (assessment.working.empty()) recorded = assess(plan, {.record = true});
  const Working& working = assessment.working.empty() ? recorded.working : assessment.working;
  const std::vector<Part> parts = partsOf(working, language);
  std::vector<std::size_t> order;
  for (const Part& part : parts) order.insert(order.end(), part.steps.begin(), part.steps.end());
  const std::vector<WorkedStep> steps =
      workedSteps(picked(working.steps(), order), language, Notation::plain);

  const std::string edition(name(plan.site->edition.valueOr(Edition::y2023)));
  if (plan.site->country.is(Country::unitedStates)) {
    const QString sections = words(language, kEdition, edition);
    flow.advance(flow.paragraph(flow.left(), flow.y(), flow.width(), sections, 8.6) + 2.0);
  }
  auto step = steps.begin();
  for (const Part& part : parts) {
    drawHeading(flow, part.heading, 70.0);
    SheetTable table(flow, {{words(language, kNumber), 0.05, Align::right},
                            {words(language, kStep), 0.66},
                            {words(language, kResult), 0.13, Align::right, true},
                            {words(language, kRule), 0.16}});
    table.head();
    for (std::size_t i = 0; i < part.steps.size(); ++i, ++step) {
      QStringList inputs = inputsOf(*step, language);
      QStringList lines{step->formula + QStringLiteral(" = ") + step->filled, inputs.takeFirst()};
      if (!step->note.isEmpty()) lines.prepend(step->note);
      table.row({QString::number(step->number), lines.join(u'\n'), step->result,
                 step->rule.isEmpty() ? step->source : step->rule});
      for (const QString& more : inputs) table.row({QString(), more});
    }
    table.end();
  }
}

}  // namespace stayalight
