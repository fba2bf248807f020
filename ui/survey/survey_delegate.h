#pragma once

// How the grid of the survey looks: its cells, the line one types into, heads and gutter.

#include <QtCore/QPointer>
#include <QtWidgets/QStyledItemDelegate>

class QHeaderView;

namespace stayalight {

class SurveyTable;

/// Type size of the cells, in layout units.
inline constexpr double kSurveyText = 12.0;

class SurveyDelegate : public QStyledItemDelegate {
 public:
  explicit SurveyDelegate(SurveyTable* table);
  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
  QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                        const QModelIndex& index) const override;
  void setEditorData(QWidget* editor, const QModelIndex& index) const override;
  void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override;
  void updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                            const QModelIndex& index) const override;

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  friend class SurveyTable;
  void paintFindings(QPainter& painter, const QRectF& rect, int row) const;
  SurveyTable* table_;
  mutable QPointer<QWidget> editor_;  ///< the last one that was made
};

/// Flat heads with the rules of the sheet. The table owns them.
[[nodiscard]] QHeaderView* makeSurveyHead(SurveyTable* table);
/// Beside the rows: the row of the keyboard, and brackets of shared neutrals.
[[nodiscard]] QHeaderView* makeSurveyGutter(SurveyTable* table);

}  // namespace stayalight
