// What a person waits for where a plan holds as many circuits as a file may: 2,000. Each figure is until the
// window is painted anew, or until the work is done where nothing is painted.

#include <QtCore/QTemporaryDir>
#include <QtGui/QClipboard>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QPlainTextEdit>
#include <QtWidgets/QToolButton>

#include "tests/bench/many_circuits.h"
#include "tests/bench/open_window.h"
#include "ui/document/circuits_file.h"
#include "ui/search/search_bar.h"
#include "ui/survey/directory_dialog.h"
#include "ui/survey/survey_table.h"
#include "ui/survey/survey_view.h"

namespace stayalight {
namespace {

using bench::OpenWindow;
using bench::untilPainted;

void openMany(benchmark::State& state) {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("many.stayalight"));
  OpenWindow open(bench::manyCircuits());
  if (open.window.document().saveAs(path)) std::abort();
  untilPainted(
      state, open,
      [&] {
        if (!open.window.openFile(path)) std::abort();
      },
      [] {});
}
BENCHMARK(openMany)->UseManualTime()->Unit(benchmark::kMillisecond);

void saveMany(benchmark::State& state) {
  const QTemporaryDir folder;
  OpenWindow open(bench::manyCircuits());
  if (open.window.document().saveAs(folder.filePath(QStringLiteral("many.stayalight")))) std::abort();
  untilPainted(
      state, open,
      [&] {
        if (open.window.document().save(true)) std::abort();
      },
      [] {});
}
BENCHMARK(saveMany)->UseManualTime()->Unit(benchmark::kMillisecond);

void keepManyAside(benchmark::State& state) {
  const Plan plan = bench::manyCircuits();
  Autosave aside;
  while (state.KeepRunning()) {
    if (aside.write(plan, {{}, QStringLiteral("many"), {}})) std::abort();
  }
  aside.remove();
}
BENCHMARK(keepManyAside)->Unit(benchmark::kMillisecond);

void readManyCircuits(benchmark::State& state) {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("many.csv"));
  const Plan plan = bench::manyCircuits();
  if (saveCircuits(plan, path)) std::abort();
  while (state.KeepRunning()) {
    if (std::holds_alternative<CircuitsRefused>(loadCircuits(plan, path))) std::abort();
  }
}
BENCHMARK(readManyCircuits)->Unit(benchmark::kMillisecond);

void writeManyCircuits(benchmark::State& state) {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("many.csv"));
  const Plan plan = bench::manyCircuits();
  while (state.KeepRunning()) {
    if (saveCircuits(plan, path)) std::abort();
  }
}
BENCHMARK(writeManyCircuits)->Unit(benchmark::kMillisecond);

/// As many lines as are read put into the box for a typed directory.
void pasteDirectory(benchmark::State& state) {
  OpenWindow open(bench::largeHouse());
  QString text;
  for (int line = 1; line < 1000; ++line)
    text += QStringLiteral("%1 Room %2 lights 15A\n").arg(line % 84 + 1).arg(line);
  open.window.action(Command::survey)->trigger();
  DirectoryDialog* dialog = open.window.survey()->pasteDirectory();
  auto* box = dialog->findChild<QPlainTextEdit*>();
  untilPainted(
      state, open, [&] { box->setPlainText(text); }, [&] { box->clear(); });
}
BENCHMARK(pasteDirectory)->UseManualTime()->Unit(benchmark::kMillisecond);

void pictureOfMany(benchmark::State& state) {
  OpenWindow open(bench::manyCircuits());
  untilPainted(
      state, open, [&] { open.window.action(Command::copyPicture)->trigger(); }, [] {});
}
BENCHMARK(pictureOfMany)->UseManualTime()->Unit(benchmark::kMillisecond);

void findInMany(benchmark::State& state) {
  OpenWindow open(bench::manyCircuits());
  open.window.action(Command::find)->trigger();
  auto* field = open.window.searchBar()->findChild<QLineEdit*>();
  untilPainted(
      state, open, [&] { field->setText(QStringLiteral("circuit 1")); }, [&] { field->clear(); });
}
BENCHMARK(findInMany)->UseManualTime()->Unit(benchmark::kMillisecond);

void typeWatts(OpenWindow& open, double typed) {
  PlanDocument& document = open.window.document();
  FactValue watts;
  watts.value = typed;
  watts.grade = Grade::measured;
  const EntityRef load{RecordKind::load, document.plan().circuits[700]->loads[0].id.number};
  Result<Plan> after = setField(document.plan(), load, "running_W", watts);
  if (!after.ok() || document.apply(std::move(after).value(), QStringLiteral("watts"))) std::abort();
}

void editOfMany(benchmark::State& state) {
  OpenWindow open(bench::manyCircuits());
  untilPainted(
      state, open, [&] { typeWatts(open, 1234.0); }, [&] { open.window.document().undo(); });
}
BENCHMARK(editOfMany)->UseManualTime()->Unit(benchmark::kMillisecond);

void undoOfMany(benchmark::State& state) {
  OpenWindow open(bench::manyCircuits());
  typeWatts(open, 1234.0);
  untilPainted(
      state, open, [&] { open.window.document().undo(); }, [&] { open.window.document().redo(); });
}
BENCHMARK(undoOfMany)->UseManualTime()->Unit(benchmark::kMillisecond);

void editOfManyInSurvey(benchmark::State& state) {
  OpenWindow open(bench::manyCircuits());
  open.window.action(Command::survey)->trigger();
  open.window.survey()->choosePanel({});
  bench::settle();
  untilPainted(
      state, open, [&] { typeWatts(open, 1234.0); }, [&] { open.window.document().undo(); });
}
BENCHMARK(editOfManyInSurvey)->UseManualTime()->Unit(benchmark::kMillisecond);

/// The survey over all circuits, with every row of one column selected.
void surveyColumn(OpenWindow& open, GridColumn column) {
  open.window.action(Command::survey)->trigger();
  SurveyView& survey = *open.window.survey();
  survey.choosePanel({});
  survey.findChild<QToolButton*>(QStringLiteral("surveyColumns3"))->click();
  SurveyTable& table = *survey.table();
  table.moveTo(0, column);
  const int at = static_cast<int>(column);
  QItemSelection all(survey.model()->index(0, at), survey.model()->index(survey.model()->rows() - 1, at));
  table.selectionModel()->select(all, QItemSelectionModel::ClearAndSelect);
  bench::settle();
}

/// A sheet of 2,000 rows with a name and two more columns, pasted over all circuits.
void pasteManyRows(benchmark::State& state) {
  OpenWindow open(bench::manyCircuits());
  surveyColumn(open, GridColumn::name);
  QString text;
  for (int row = 0; row < 2000; ++row) text += QStringLiteral("Name %1\tServes %1\tRoom\n").arg(row);
  QGuiApplication::clipboard()->setText(text);
  untilPainted(
      state, open, [&] { open.window.survey()->pasteCells(); }, [&] { open.window.document().undo(); });
}
BENCHMARK(pasteManyRows)->UseManualTime()->Unit(benchmark::kMillisecond);

void fillManyDown(benchmark::State& state) {
  OpenWindow open(bench::manyCircuits());
  surveyColumn(open, GridColumn::room);
  typeWatts(open, 1.0);
  untilPainted(
      state, open,
      [&] {
        open.window.survey()->model()->setData(
            open.window.survey()->model()->index(0, static_cast<int>(GridColumn::room)), "Attic");
        open.window.survey()->fillDown();
      },
      [&] {
        open.window.document().undo();
        open.window.document().undo();
      });
}
BENCHMARK(fillManyDown)->UseManualTime()->Unit(benchmark::kMillisecond);

void gradeMany(benchmark::State& state) {
  OpenWindow open(bench::manyCircuits());
  surveyColumn(open, GridColumn::running);
  untilPainted(
      state, open, [&] { open.window.survey()->grade(Grade::measured); },
      [&] { open.window.document().undo(); });
}
BENCHMARK(gradeMany)->UseManualTime()->Unit(benchmark::kMillisecond);

void copyManyCells(benchmark::State& state) {
  OpenWindow open(bench::manyCircuits());
  surveyColumn(open, GridColumn::name);
  open.window.survey()->table()->selectAll();
  untilPainted(
      state, open, [&] { open.window.survey()->copyCells(); }, [] {});
}
BENCHMARK(copyManyCells)->UseManualTime()->Unit(benchmark::kMillisecond);

void removeMany(benchmark::State& state) {
  OpenWindow open(bench::manyCircuits());
  surveyColumn(open, GridColumn::name);
  untilPainted(
      state, open, [&] { open.window.survey()->removeRows(); }, [&] { open.window.document().undo(); });
}
BENCHMARK(removeMany)->UseManualTime()->Unit(benchmark::kMillisecond);

void filterMany(benchmark::State& state) {
  OpenWindow open(bench::manyCircuits());
  surveyColumn(open, GridColumn::name);
  untilPainted(
      state, open, [&] { open.window.survey()->model()->setFilter(RowFilter::withFinding); },
      [&] { open.window.survey()->model()->setFilter(RowFilter::all); });
}
BENCHMARK(filterMany)->UseManualTime()->Unit(benchmark::kMillisecond);

void paperOfMany(benchmark::State& state) {
  OpenWindow open(bench::manyCircuits());
  untilPainted(
      state, open, [&] { open.window.action(Command::paper)->trigger(); },
      [&] {
        open.window.action(Command::boards)->trigger();
        typeWatts(open, 1234.0);
        open.window.document().undo();
      });
}
BENCHMARK(paperOfMany)->UseManualTime()->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace stayalight

int main(int argc, char** argv) { return stayalight::bench::runBenchmarks(argc, argv); }
