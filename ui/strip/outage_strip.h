#pragma once

// The outage strip: month, charge at the start and start time to set, the curves, and a table of the same
// values.

#include <QtWidgets/QWidget>

#include "core/plan/field.h"
#include "ui/strip/strip_data.h"
#include "ui/style/palette.h"

class QComboBox;
class QLabel;
class QPushButton;
class QStackedWidget;
class QTableWidget;

namespace stayalight {

class StripChart;

class OutageStrip : public QWidget {
  Q_OBJECT
 public:
  explicit OutageStrip(QWidget* parent = nullptr);
  void show(const Plan& plan, const Assessment& assessment, const Language& language);
  void setColors(const Palette& palette);
  [[nodiscard]] StripChart* chart() const { return chart_; }
  [[nodiscard]] QTableWidget* table() const { return table_; }

 Q_SIGNALS:
  /// A field of the scenario was set: its key and value.
  void scenarioEdited(const std::string& key, const stayalight::FieldValue& value);
  /// The start is being dragged; without a value it was put back.
  void startPreviewed(const std::optional<stayalight::TimeOfDay>& start);

 private:
  void fillTable();
  void fillControls(const Scenario& scenario);

  StripData data_;
  const Language* language_ = &plainEnglish();
  Palette palette_{Theme::light};
  QLabel* head_;
  QLabel* monthLabel_;
  QLabel* chargeLabel_;
  QComboBox* month_;
  QComboBox* charge_;
  QPushButton* asTable_;
  QStackedWidget* pages_;
  StripChart* chart_;
  QTableWidget* table_;
};

}  // namespace stayalight
