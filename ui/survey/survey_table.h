#pragma once

// The grid of the survey under the keyboard: keys move as on a paper schedule, typing replaces, what is wrong
// stays as it was typed.

#include <QtWidgets/QTableView>

#include "ui/style/palette.h"
#include "ui/survey/survey_model.h"

class QLabel;
class QLineEdit;

namespace stayalight {

class SurveyDelegate;

class SurveyTable : public QTableView {
  Q_OBJECT
 public:
  explicit SurveyTable(SurveyModel* model, QWidget* parent = nullptr);

  void setColors(const Palette& palette);
  [[nodiscard]] const Palette& colors() const { return colors_; }
  [[nodiscard]] SurveyModel* survey() const { return survey_; }
  void setColumns(ColumnSet set);
  [[nodiscard]] ColumnSet columns() const { return set_; }
  /// The line in which a cell is being typed into, or nullptr.
  [[nodiscard]] QLineEdit* typing() const;
  /// What is being typed counts, before something else is done with the cell.
  void finishTyping();
  /// The keyboard goes to a cell, and only that is selected, whatever keys are held.
  void moveTo(int row, GridColumn column);
  /// Moves as the key does: Enter, Tab, arrows, with Shift the other way.
  void go(int key, bool back);
  [[nodiscard]] GridColumn currentColumn() const;
  /// Cells selected, by row and then by column; the current one where nothing else is.
  [[nodiscard]] QModelIndexList selectedCells() const;
  [[nodiscard]] std::vector<int> selectedRows() const;

 Q_SIGNALS:
  void currentMoved();
  void clearRequested();

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
  void mousePressEvent(QMouseEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void scrollContentsBy(int dx, int dy) override;
  void focusInEvent(QFocusEvent* event) override;
  void commitData(QWidget* editor) override;
  void closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) override;

 private:
  friend class SurveyDelegate;
  [[nodiscard]] bool open(const QWidget* editor) const;
  void forgetGoneEditor();
  void step(int rows, int columns);
  void showReason();
  void chooseFromList();
  void fitLastColumn();

  SurveyModel* survey_;
  SurveyDelegate* delegate_;
  Palette colors_{Theme::light};
  ColumnSet set_ = ColumnSet::panel;
  int lineStart_ = -1;     ///< column in which Tab was pressed first; Enter returns to it
  bool typesOver_ = true;  ///< the editor was opened by typing: arrows leave it
  QLabel* reason_ = nullptr;
};

}  // namespace stayalight
