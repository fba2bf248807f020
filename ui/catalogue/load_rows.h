#pragma once

// The loads that a search found, as rows of a list; each can be dragged onto a breaker.

#include <QtCore/QAbstractListModel>
#include <QtWidgets/QStyledItemDelegate>

#include "core/catalogue/catalogue.h"
#include "ui/style/palette.h"

namespace stayalight {

class LoadRows : public QAbstractListModel {
  Q_OBJECT
 public:
  enum Role { figuresRole = Qt::UserRole };

  explicit LoadRows(const Language& language, QObject* parent);
  /// The plan's own first, then the person's, then the program's.
  void setLoads(std::vector<CatalogueEntry> ofPlan, const std::vector<CatalogueEntry>& own,
                const std::vector<CatalogueEntry>& household);
  void search(const QString& typed);
  [[nodiscard]] const CatalogueEntry* entry(const QModelIndex& index) const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
  [[nodiscard]] QStringList mimeTypes() const override;
  [[nodiscard]] QMimeData* mimeData(const QModelIndexList& indexes) const override;
  [[nodiscard]] Qt::DropActions supportedDragActions() const override { return Qt::CopyAction; }

 private:
  const Language& language_;
  std::vector<CatalogueEntry> loads_;
  std::size_t ofPlan_ = 0;  ///< so many at the beginning are the plan's
  std::size_t own_ = 0;     ///< and so many after them the person's
  QString typed_;
  std::vector<const CatalogueEntry*> found_;
};

/// "150 W, 100 to 250 W".
[[nodiscard]] QString figuresText(const CatalogueEntry& entry, const Language& language);
/// What stands about it in the table: energy of a day, old units, sources.
[[nodiscard]] QString detailText(const CatalogueEntry& entry, const Language& language);

/// Name and, below it, figures.
class LoadRowPainter : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;
  void setColors(const Palette& palette) { palette_ = palette; }
  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

 private:
  Palette palette_{Theme::light};
};

}  // namespace stayalight
