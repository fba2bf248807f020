#include "ui/survey/survey_model.h"

#include <algorithm>
#include <map>

#include "ui/inspector/entity_text.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kStepSet{"survey.step.set"};
constexpr MessageId kStepFirst{"survey.step.first"};
constexpr MessageId kFreeSpace{"survey.free_space"};
constexpr MessageId kSpoken{"survey.spoken"};
constexpr MessageId kSpokenUnknown{"survey.spoken.unknown"};
constexpr MessageId kSpokenEmpty{"survey.spoken.empty"};
constexpr MessageId kSpokenGrade{"survey.spoken.grade"};
constexpr MessageId kSpokenFinding{"survey.spoken.finding"};
constexpr MessageId kSpokenUnread{"survey.spoken.unread"};
constexpr MessageId kUnreadIn{"survey.unread_in"};
constexpr std::array<MessageId, 4> kSeverities = {
    MessageId{"shell.severity.danger"}, MessageId{"shell.severity.must_fix"},
    MessageId{"shell.severity.check_on_site"}, MessageId{"shell.severity.advice"}};

std::string headKey(GridColumn column) { return std::string("survey.column.") + columnRow(column).name; }

GridColumn columnOf(const QModelIndex& index) { return static_cast<GridColumn>(index.column()); }

}  // namespace

SurveyModel::SurveyModel(QObject* parent) : QAbstractTableModel(parent) {}

void SurveyModel::show(const Plan& plan, const Assessment& assessment, const Language& language,
                       const ShownUnits& units) {
  plan_ = plan;
  findings_ = assessment.findings;
  style_.language = &language;
  style_.units = units;
  const bool gone = panel_.valid() && stayalight::find(plan_, panel_) == nullptr;
  if (gone) panel_ = mainPanel(plan_) != nullptr ? mainPanel(plan_)->id : PanelId{};
  rebuild(true);
}

void SurveyModel::forget() {
  unread_.clear();
  plan_ = {};
  findings_.clear();
  panel_ = {};
  filter_ = RowFilter::all;
  rebuild();
}

void SurveyModel::setPanel(PanelId panel) {
  panel_ = panel;
  rebuild();
}
void SurveyModel::setOrder(SpaceOrder order) {
  order_ = order;
  rebuild();
}
void SurveyModel::setFilter(RowFilter filter) {
  filter_ = filter;
  rebuild();
}

bool SurveyModel::concerns(const Finding& finding, const GridRow& row) const {
  return std::any_of(finding.places.begin(), finding.places.end(), [&](const EntityRef& place) {
    switch (place.kind) {
      case RecordKind::breaker: {
        const Circuit* circuit = stayalight::find(plan_, row.circuit);
        const bool planned = circuit != nullptr && circuit->planned.number == place.id;
        return !row.ofLoad && place.id != 0 && (place.id == row.breaker.number || planned);
      }
      case RecordKind::circuit:
        return !row.ofLoad && place.id != 0 && place.id == row.circuit.number;
      case RecordKind::load:
      case RecordKind::useWindow: {
        const Circuit* circuit = circuitOf(plan_, LoadId{place.id});
        // A circuit's own row speaks for its loads as well.
        if (!row.ofLoad) return circuit != nullptr && circuit->id == row.circuit;
        return place.id == row.load.number;
      }
      default:
        return false;
    }
  });
}

std::vector<const Finding*> SurveyModel::findings(int at) const {
  std::vector<const Finding*> all;
  for (const Finding& finding : findings_) {
    if (concerns(finding, row(at))) all.push_back(&finding);
  }
  return all;
}

bool SurveyModel::shows(const GridRow& row, RowFilter filter) const {
  const Circuit* circuit = stayalight::find(plan_, row.circuit);
  switch (filter) {
    case RowFilter::all:
      return true;
    case RowFilter::moved:
      return circuit != nullptr && circuit->planned != circuit->breaker && circuit->planned.valid();
    case RowFilter::notKnown: {
      // A row of a load stands with its circuit.
      GridRow whole = row;
      whole.ofLoad = false;
      return hasUnknown(plan_, whole);
    }
    case RowFilter::withFinding: {
      GridRow whole = row;
      whole.ofLoad = false;
      return std::any_of(findings_.begin(), findings_.end(),
                         [&](const Finding& finding) { return concerns(finding, whole); });
    }
  }
  return true;
}

void SurveyModel::countRows(const std::vector<GridRow>& all) {
  counts_ = {};
  for (const GridRow& row : all) {
    if (row.ofLoad || !row.circuit.valid()) continue;
    for (std::size_t i = 0; i < counts_.size(); ++i)
      counts_[i] += shows(row, static_cast<RowFilter>(i)) ? 1 : 0;
  }
}

void SurveyModel::rebuild(bool keep) {
  std::vector<GridRow> all = panel_.valid() ? gridRows(plan_, panel_, order_) : circuitRows(plan_, order_);
  known_ = knownFacts(plan_, all);
  countRows(all);
  std::vector<GridRow> next;
  for (const GridRow& row : all) {
    if (shows(row, filter_) || (keep && find(row) >= 0)) next.push_back(row);
  }
  // Only what differs comes and goes, so that the cell with the keyboard stays where it is.
  const auto same = [](const GridRow& a, const GridRow& b) { return samePlace(a, b); };
  std::size_t front = 0;
  while (front < rows_.size() && front < next.size() && same(rows_[front], next[front])) ++front;
  std::size_t back = 0;
  while (back < rows_.size() - front && back < next.size() - front &&
         same(rows_[rows_.size() - 1 - back], next[next.size() - 1 - back]))
    ++back;
  const auto from = static_cast<std::ptrdiff_t>(front);
  if (const std::size_t gone = rows_.size() - front - back; gone > 0) {
    beginRemoveRows({}, static_cast<int>(front), static_cast<int>(front + gone) - 1);
    rows_.erase(rows_.begin() + from, rows_.begin() + from + static_cast<std::ptrdiff_t>(gone));
    ties_.assign(rows_.size(), {});
    endRemoveRows();
  }
  if (const std::size_t fresh = next.size() - front - back; fresh > 0) {
    beginInsertRows({}, static_cast<int>(front), static_cast<int>(front + fresh) - 1);
    rows_.insert(rows_.begin() + from, next.begin() + from,
                 next.begin() + from + static_cast<std::ptrdiff_t>(fresh));
    ties_.assign(rows_.size(), {});
    endInsertRows();
  }
  rows_ = std::move(next);
  drawTies();
  if (!rows_.empty()) {
    Q_EMIT dataChanged(index(0, 0), index(rows() - 1, kGridColumns - 1));
    Q_EMIT headerDataChanged(Qt::Vertical, 0, rows() - 1);
  }
  Q_EMIT countsChanged();
}

void SurveyModel::drawTies() {
  ties_.assign(rows_.size(), {});
  std::map<std::int32_t, std::vector<int>> groups;
  for (int i = 0; i < rows(); ++i) {
    const Circuit* circuit = stayalight::find(plan_, row(i).circuit);
    if (circuit != nullptr && circuit->multiwire > 0 && !row(i).ofLoad)
      groups[circuit->multiwire].push_back(i);
  }
  std::vector<int> laneEnds(2, -1);
  for (const auto& group : groups) {
    const std::vector<int>& members = group.second;
    if (members.size() < 2) continue;
    const int first = members.front(), last = members.back();
    const int lane = laneEnds[0] < first ? 0 : 1;
    laneEnds[static_cast<std::size_t>(lane)] = last;
    const bool danger = std::any_of(findings_.begin(), findings_.end(), [&](const Finding& finding) {
      return finding.severity == Severity::danger &&
             std::count_if(members.begin(), members.end(),
                           [&](int at) { return concerns(finding, row(at)); }) > 1;
    });
    for (int at = first; at <= last; ++at) {
      TieMark& tie = ties_[static_cast<std::size_t>(at)];
      tie.lane = lane;
      tie.danger = danger;
      tie.up = at > first;
      tie.down = at < last;
      tie.member = std::find(members.begin(), members.end(), at) != members.end();
      tie.mark = danger && at == (first + last) / 2;
    }
  }
}

int SurveyModel::find(const GridRow& wanted) const {
  for (int i = 0; i < rows(); ++i) {
    if (samePlace(row(i), wanted)) return i;
  }
  return -1;
}
int SurveyModel::rowOf(BreakerId breaker) const {
  for (int i = 0; i < rows(); ++i) {
    if (row(i).breaker == breaker && breaker.valid()) return i;
  }
  return -1;
}

CellText SurveyModel::cell(int at, GridColumn column) const {
  if (column != GridColumn::space || panel_.valid()) return cellText(plan_, row(at), column, style_);
  // Among all circuits the panel is named too.
  CellText text = cellText(plan_, row(at), column, style_);
  const std::string place = breakerPlace(plan_, row(at).breaker, *style_.language);
  if (!text.text.empty() && !place.empty()) text.text = place;
  return text;
}

const UnreadCell* SurveyModel::unread(int at, GridColumn column) const {
  for (const UnreadCell& cell : unread_) {
    if (cell.column == column && samePlace(cell.row, row(at))) return &cell;
  }
  return nullptr;
}
const UnreadCell* SurveyModel::unreadIn(int at) const {
  for (const UnreadCell& cell : unread_) {
    if (samePlace(cell.row, row(at))) return &cell;
  }
  return nullptr;
}

void SurveyModel::noteUnread(const GridRow& row, GridColumn column, const QString& text, const Message& why) {
  const QString reason = words(why, *style_.language);
  const auto there = std::find_if(unread_.begin(), unread_.end(), [&](const UnreadCell& cell) {
    return cell.column == column && samePlace(cell.row, row);
  });
  if (there != unread_.end())
    *there = {row, column, text, reason};
  else
    unread_.push_back({row, column, text, reason});
  if (const int at = find(row); at >= 0) Q_EMIT dataChanged(index(at, 0), index(at, kGridColumns - 1));
}

void SurveyModel::dropUnread(const GridRow& row, GridColumn column) {
  const auto gone = std::remove_if(unread_.begin(), unread_.end(), [&](const UnreadCell& cell) {
    return cell.column == column && samePlace(cell.row, row);
  });
  if (gone == unread_.end()) return;
  unread_.erase(gone, unread_.end());
  if (const int at = find(row); at >= 0) Q_EMIT dataChanged(index(at, 0), index(at, kGridColumns - 1));
}

bool SurveyModel::backedUp(int at) const {
  const Circuit* circuit = stayalight::find(plan_, row(at).circuit);
  return circuit != nullptr && stayalight::backedUp(plan_, *circuit);
}

QString SurveyModel::columnName(GridColumn column) const {
  const std::string key = headKey(column);
  return words(*style_.language, MessageId{key});
}

QString SurveyModel::columnHelp(GridColumn column) const {
  if (const Field* field = fieldOf(column))
    return QString::fromStdString(fieldHelp(*field, *style_.language));
  const std::string key = headKey(column) + ".help";
  return words(*style_.language, MessageId{key});
}

QString SurveyModel::rowName(int at) const {
  const GridRow& place = row(at);
  if (place.ofLoad)
    return QString::fromStdString(entityName(plan_, {RecordKind::load, place.load.number}, *style_.language));
  const CellText name = cell(at, GridColumn::name);
  if (!name.text.empty()) return QString::fromStdString(name.text);
  if (place.circuit.valid())
    return QString::fromStdString(
        entityName(plan_, {RecordKind::circuit, place.circuit.number}, *style_.language));
  return words(*style_.language, kFreeSpace);
}

void SurveyModel::change(Plan after, const Message& name) {
  if (after == plan_) return;
  Q_EMIT edited({std::move(after), name, {}});
}

int SurveyModel::rowCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : rows(); }
int SurveyModel::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : kGridColumns; }

QString SurveyModel::spoken(int at, GridColumn column) const {
  const Language& language = *style_.language;
  const QString space = QString::fromStdString(cellText(plan_, row(at), GridColumn::space, style_).text);
  const QString place = space.isEmpty() ? rowName(at) : QString(space + QLatin1Char(' ') + rowName(at));
  const CellText text = cell(at, column);
  QString value = QString::fromStdString(text.text);
  const std::vector<const Finding*> all = findings(at);
  if (column == GridColumn::finding) {
    QStringList said;
    for (const Finding* finding : all) {
      said << words(language, kSpokenFinding,
                    words(language, kSeverities[static_cast<std::size_t>(finding->severity)]).toStdString(),
                    words(finding->plain, language).toStdString());
    }
    value = said.join(QLatin1String("; "));
  }
  if (const UnreadCell* unreadCell = unread(at, column)) {
    value = words(language, kSpokenUnread, unreadCell->text.toStdString(), unreadCell->why.toStdString());
  } else if (text.unknown) {
    value = words(language, kSpokenUnknown);
  } else if (value.isEmpty()) {
    value = words(language, kSpokenEmpty);
  } else if (text.grade) {
    value =
        words(language, kSpokenGrade, value.toStdString(), gradeName(*text.grade, language).toStdString());
  }
  QString line =
      words(language, kSpoken, place.toStdString(), columnName(column).toStdString(), value.toStdString());
  if (column != GridColumn::finding && !all.empty()) {
    line += QStringLiteral("; ") +
            words(language, kSpokenFinding,
                  words(language, kSeverities[static_cast<std::size_t>(all.front()->severity)]).toStdString(),
                  words(all.front()->plain, language).toStdString());
  }
  return line;
}

QVariant SurveyModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rows()) return {};
  const GridColumn column = columnOf(index);
  const UnreadCell* unreadCell = unread(index.row(), column);
  switch (role) {
    case Qt::DisplayRole:
      if (unreadCell != nullptr) return unreadCell->text;
      if (column == GridColumn::finding) {
        if (const UnreadCell* other = unreadIn(index.row()))
          return words(*style_.language, kUnreadIn, columnName(other->column).toStdString(),
                       other->why.toStdString());
        const std::vector<const Finding*> all = findings(index.row());
        return all.empty() ? QString() : words(all.front()->plain, *style_.language);
      }
      return QString::fromStdString(cell(index.row(), column).text);
    case Qt::EditRole:
      if (unreadCell != nullptr) return unreadCell->text;
      return QString::fromStdString(typedText(plan_, row(index.row()), column, style_));
    case Qt::ToolTipRole: {
      if (unreadCell != nullptr) return unreadCell->why;
      if (column != GridColumn::finding) return {};
      QStringList all;
      for (const Finding* finding : findings(index.row())) all << words(finding->plain, *style_.language);
      return all.join(QLatin1Char('\n'));
    }
    case Qt::TextAlignmentRole:
      return static_cast<int>(columnRow(column).figure ? Qt::AlignRight | Qt::AlignVCenter
                                                       : Qt::AlignLeft | Qt::AlignVCenter);
    case Qt::AccessibleTextRole:
      return spoken(index.row(), column);
    case Qt::AccessibleDescriptionRole:
      return unreadCell != nullptr ? unreadCell->why : columnHelp(column);
    default:
      return {};
  }
}

QVariant SurveyModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation == Qt::Horizontal) {
    const auto column = static_cast<GridColumn>(section);
    if (role == Qt::DisplayRole || role == Qt::AccessibleTextRole) return columnName(column);
    if (role == Qt::ToolTipRole) return columnHelp(column);
    if (role == Qt::TextAlignmentRole)
      return static_cast<int>(columnRow(column).figure ? Qt::AlignRight | Qt::AlignVCenter
                                                       : Qt::AlignLeft | Qt::AlignVCenter);
    return {};
  }
  if (section >= rows()) return {};
  if (role == Qt::AccessibleTextRole || role == Qt::DisplayRole)
    return QString::fromStdString(cellText(plan_, row(section), GridColumn::space, style_).text);
  return {};
}

Qt::ItemFlags SurveyModel::flags(const QModelIndex& index) const {
  Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
  if (!index.isValid() || index.row() >= rows()) return Qt::NoItemFlags;
  const GridColumn column = columnOf(index);
  const bool said =
      column == GridColumn::space || column == GridColumn::goesTo || column == GridColumn::finding;
  const bool below =
      row(index.row()).ofLoad && columnRow(column).record != RecordKind::load && column != GridColumn::name;
  return said || below ? flags : flags | Qt::ItemIsEditable;
}

bool SurveyModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (role != Qt::EditRole || !index.isValid() || index.row() >= rows()) return false;
  const GridColumn column = columnOf(index);
  const GridRow place = row(index.row());
  const QString text = value.toString();
  const UnreadCell* before = unread(index.row(), column);
  if (before != nullptr && before->text == text) return false;
  const Result<Plan> after = enterCell(plan_, place, column, text.toStdString(), style_);
  if (!after) {
    noteUnread(place, column, text, after.refusal());
    return false;
  }
  dropUnread(place, column);
  const bool free = !place.breaker.valid() && !place.circuit.valid();
  const std::string name =
      free ? cellText(plan_, place, GridColumn::space, style_).text : rowName(index.row()).toStdString();
  change(after.value(), say(free ? kStepFirst : kStepSet, columnName(column).toStdString(), name));
  return true;
}

}  // namespace stayalight
