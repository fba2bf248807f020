#pragma once

// The survey as a table of Qt: rows and columns of the grid, texts of the cells, and what could not be read
// as it was typed.

#include <QtCore/QAbstractTableModel>
#include <functional>
#include <optional>
#include <vector>

#include "core/assess/assess.h"
#include "ui/inspector/record_form.h"
#include "ui/survey/cells.h"

namespace stayalight {

enum class RowFilter : std::uint8_t { all, moved, notKnown, withFinding };

/// A text that was typed and not understood. The plan keeps its value.
struct UnreadCell {
  GridRow row;
  GridColumn column = GridColumn::name;
  QString text;
  QString why;
};

/// Part of a shared neutral's bracket in the gutter beside one row.
struct TieMark {
  bool member = false;
  bool up = false;    ///< the line goes on above
  bool down = false;  ///< and below
  bool danger = false;
  bool mark = false;  ///< the octagon stands here
  int lane = 0;
};

class SurveyModel : public QAbstractTableModel {
  Q_OBJECT
 public:
  explicit SurveyModel(QObject* parent = nullptr);

  /// Shows a plan with the assessment that belongs to it.
  void show(const Plan& plan, const Assessment& assessment, const Language& language,
            const ShownUnits& units);
  /// Another plan is opened: nothing that was typed into the one before stays.
  void forget();
  void setPanel(PanelId panel);  ///< none: all circuits
  void setOrder(SpaceOrder order);
  void setFilter(RowFilter filter);
  void setTypedGrade(Grade grade) { style_.grade = grade; }

  [[nodiscard]] PanelId panel() const { return panel_; }
  [[nodiscard]] SpaceOrder order() const { return order_; }
  [[nodiscard]] RowFilter filter() const { return filter_; }
  [[nodiscard]] Grade typedGrade() const { return style_.grade; }
  [[nodiscard]] const Plan& plan() const { return plan_; }
  [[nodiscard]] const CellStyle& style() const { return style_; }
  [[nodiscard]] const GridRow& row(int row) const { return rows_[static_cast<std::size_t>(row)]; }
  [[nodiscard]] int rows() const { return static_cast<int>(rows_.size()); }
  /// Where a place is shown; -1 where it is not.
  [[nodiscard]] int find(const GridRow& row) const;
  [[nodiscard]] int rowOf(BreakerId breaker) const;
  [[nodiscard]] const TieMark& tie(int row) const { return ties_[static_cast<std::size_t>(row)]; }
  [[nodiscard]] std::vector<const Finding*> findings(int row) const;
  [[nodiscard]] CellText cell(int row, GridColumn column) const;
  [[nodiscard]] const UnreadCell* unread(int row, GridColumn column) const;
  [[nodiscard]] const UnreadCell* unreadIn(int row) const;
  [[nodiscard]] const std::vector<UnreadCell>& allUnread() const { return unread_; }
  [[nodiscard]] bool backedUp(int row) const;
  [[nodiscard]] std::array<std::int32_t, 5> known() const { return known_; }
  /// Rows that a filter would show, of the circuits.
  [[nodiscard]] int count(RowFilter filter) const { return counts_[static_cast<std::size_t>(filter)]; }
  [[nodiscard]] QString rowName(int row) const;
  [[nodiscard]] QString columnName(GridColumn column) const;
  [[nodiscard]] QString columnHelp(GridColumn column) const;

  /// One undo step from a change of the plan; the signal asks for it.
  void change(Plan after, const Message& name);
  void noteUnread(const GridRow& row, GridColumn column, const QString& text, const Message& why);
  void dropUnread(const GridRow& row, GridColumn column);

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                    int role = Qt::DisplayRole) const override;
  [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;

 Q_SIGNALS:
  void edited(const stayalight::FormEdit& edit);
  void countsChanged();

 private:
  /// `keep`: rows stay that a filter no longer wants, as long as the person is at work on them.
  void rebuild(bool keep = false);
  void countRows(const std::vector<GridRow>& all);
  void drawTies();
  [[nodiscard]] bool shows(const GridRow& row, RowFilter filter) const;
  [[nodiscard]] bool concerns(const Finding& finding, const GridRow& row) const;
  [[nodiscard]] QString spoken(int row, GridColumn column) const;

  Plan plan_;
  std::vector<Finding> findings_;
  CellStyle style_;
  PanelId panel_;
  SpaceOrder order_ = SpaceOrder::downColumns;
  RowFilter filter_ = RowFilter::all;
  std::vector<GridRow> rows_;
  std::vector<TieMark> ties_;
  std::vector<UnreadCell> unread_;
  std::array<std::int32_t, 5> known_{};
  std::array<int, 4> counts_{};
};

}  // namespace stayalight
