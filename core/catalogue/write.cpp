#include <algorithm>

#include "core/catalogue/columns.h"
#include "core/directory/cell.h"

namespace stayalight {
namespace table {
namespace {

constexpr double kWattHours = 1000.0;
constexpr int kMinutesPerHour = 60;

struct CellText : PlainCell {
  explicit CellText(Part which) : part(which) {}
  using PlainCell::operator();
  Part part;
  std::string operator()(const FactValue& fact) const {
    const auto& number = part == Part::low ? fact.low : part == Part::high ? fact.high : fact.value;
    return number ? numberCell(*number) : std::string();
  }
};

std::string clockText(TimeOfDay time) {
  const int minute = time.minutes() % kMinutesPerHour;
  const std::string hour = std::to_string(time.hour());
  return minute == 0 ? hour : hour + (minute < 10 ? ":0" : ":") + std::to_string(minute);
}

std::string windowsText(const Load& load) {
  std::string all;
  for (const UseWindow& window : load.windows) {
    std::string shares = numberCell(window.share.count());
    if (window.duty || window.startsPerHour)
      shares += '/' + (window.duty ? numberCell(window.duty->count()) : std::string());
    if (window.startsPerHour) shares += '/' + numberCell(window.startsPerHour->count());
    all += (all.empty() ? "" : "; ") + std::string(window.season.word()) + ' ' + clockText(window.from) +
           '-' + clockText(window.to) + ' ' + shares;
  }
  return all;
}

std::string joined(const std::vector<std::string>& words) {
  std::string all;
  for (const std::string& word : words) all += (all.empty() ? "" : " ") + word;
  return all;
}

}  // namespace
}  // namespace table

using namespace table;

std::string writeCatalogue(std::span<const CatalogueEntry> entries) {
  std::vector<std::pair<std::string, std::vector<std::string>>> columns;
  const auto column = [&](std::string_view name, auto&& textOf, bool always = false) {
    std::vector<std::string> cells;
    for (const CatalogueEntry& entry : entries) cells.push_back(textOf(entry));
    if (always ||
        std::any_of(cells.begin(), cells.end(), [](const std::string& cell) { return !cell.empty(); }))
      columns.emplace_back(std::string(name), std::move(cells));
  };
  column(
      kId, [](const CatalogueEntry& entry) { return entry.load.catalogueId; }, true);
  column(
      kName, [](const CatalogueEntry& entry) { return entry.load.name; }, true);
  column(kWords, [](const CatalogueEntry& entry) { return joined(entry.words); });
  for (const LoadColumn& each : loadColumns()) {
    column(each.name(), [&](const CatalogueEntry& entry) {
      return std::visit(CellText(each.part), each.field->get(&entry.load));
    });
  }
  column(kOldUnit, [](const CatalogueEntry& entry) {
    return entry.oldUnit ? numberCell(entry.oldUnit->count()) : std::string();
  });
  column(kWindows, [](const CatalogueEntry& entry) { return windowsText(entry.load); });
  column(kDayLow, [](const CatalogueEntry& entry) {
    return entry.day ? numberCell(entry.day->low.count() / kWattHours) : std::string();
  });
  column(kDayHigh, [](const CatalogueEntry& entry) {
    return entry.day ? numberCell(entry.day->high.count() / kWattHours) : std::string();
  });
  column(kDaySource, [](const CatalogueEntry& entry) { return entry.daySource; });
  column(kSource, [](const CatalogueEntry& entry) { return entry.source; });

  std::vector<std::vector<std::string>> rows(entries.size() + 1);
  for (const auto& [heading, cells] : columns) {
    rows[0].push_back(heading);
    for (std::size_t i = 0; i < cells.size(); ++i) rows[i + 1].push_back(cells[i]);
  }
  return writeCsv(rows);
}

CatalogueEntry entryFrom(const Load& load, std::span<const CatalogueEntry> taken) {
  CatalogueEntry entry;
  entry.load = load;
  entry.load.id = {};
  entry.load.unknown.clear();
  entry.load.pole = 1;
  entry.load.meantToRun = Answer::unknown;
  entry.source = load.running.how.empty() ? load.runningCurrent.how : load.running.how;
  // Found out on that one device; what the list says of the next one is typical.
  for (const Field& field : recordType(RecordKind::load).fields) {
    if (field.kind != FieldKind::fact) continue;
    const FactValue fact = std::get<FactValue>(field.get(&entry.load));
    FactValue kept;
    kept.value = fact.value;
    kept.low = fact.low;
    kept.high = fact.high;
    if (fact.value || fact.low || fact.high) kept.grade = Grade::typical;
    field.set(&entry.load, kept);
  }
  std::string stem = "own";
  for (const std::string& word : wordsOf(load.name)) stem += "_" + word;
  const auto isTaken = [&](const std::string& id) {
    return std::any_of(taken.begin(), taken.end(),
                       [&](const CatalogueEntry& other) { return other.load.catalogueId == id; });
  };
  std::string id = stem;
  for (int next = 2; isTaken(id); ++next) id = stem + "_" + std::to_string(next);
  entry.load.catalogueId = id;
  return entry;
}

}  // namespace stayalight
