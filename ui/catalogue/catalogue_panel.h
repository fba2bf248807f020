#pragma once

// Search as you type in the typical loads and the person's own; Enter puts one on the circuit, or it is
// dragged onto a breaker.

#include <QtWidgets/QWidget>

#include "core/catalogue/catalogue.h"
#include "ui/inspector/field_editor.h"

class QLabel;
class QLineEdit;
class QListView;
class QPushButton;

namespace stayalight {

class LoadRowPainter;
class LoadRows;

class CataloguePanel : public QWidget {
  Q_OBJECT
 public:
  explicit CataloguePanel(const FormStyle& style, QWidget* parent = nullptr);

  void setStyle(const FormStyle& style);
  /// The circuit that Enter puts a load on, in words; empty: none is chosen.
  void setTarget(const QString& circuit);
  /// Loads of the plan's own list.
  void setKept(std::vector<CatalogueEntry> loads);
  /// Reads the person's own list anew; what is wrong with it stands below.
  void reload();
  /// The keyboard into the search field, its text selected.
  void startSearch();

 Q_SIGNALS:
  void addRequested(const stayalight::Load& load);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;
  void showEvent(QShowEvent* event) override;

 private:
  void add();
  void searched(const QString& typed);
  void showDetail();

  FormStyle style_;
  LoadRows* rows_;
  LoadRowPainter* painter_;
  QLabel* target_;
  QLabel* label_;
  QLineEdit* search_;
  QListView* list_;
  QLabel* detail_;
  QLabel* wrong_;
  QPushButton* add_;
  std::vector<CatalogueEntry> kept_;
  bool chosen_ = false;  ///< a circuit to put it on
};

}  // namespace stayalight
