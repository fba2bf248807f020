#pragma once

// What the review found: mark by shape, one plain sentence, where it is, what it rests on, and a repair in
// one step.

#include <QtWidgets/QFrame>
#include <vector>

#include "core/review/review.h"
#include "ui/style/painted_widget.h"
#include "ui/style/palette.h"

class QLabel;
class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace stayalight {

/// Counts of the four severities, each beside its mark.
class FindingCounts : public PaintedWidget {
 public:
  explicit FindingCounts(QWidget* parent = nullptr) : PaintedWidget(parent) {}
  void show(const std::array<int, 4>& counts, const Palette& palette, const Language& language);

 protected:
  [[nodiscard]] QSizeF wanted() const override;
  void paint(QPainter& painter) override;

 private:
  std::array<int, 4> counts_{};
  Palette palette_{Theme::light};
};

/// A finding as it reads.
struct FindingText {
  QString plain, trade, places, basis, fix, spoken;
  friend bool operator==(const FindingText&, const FindingText&) = default;
};
[[nodiscard]] FindingText findingText(const Plan& plan, const Finding& finding, const Language& language);

class FindingRow : public QFrame {
  Q_OBJECT
 public:
  FindingRow(const Finding& finding, FindingText text, const Palette& palette, QWidget* parent = nullptr);
  [[nodiscard]] const Finding& finding() const { return finding_; }
  /// Where the row looks the same with this finding it takes it; else it stays as it is.
  bool take(const Finding& finding, const FindingText& text);
  /// The button of its repair, where there is one.
  [[nodiscard]] QPushButton* fixButton() const { return fix_; }

 Q_SIGNALS:
  void entered();        ///< the keyboard is on it
  void stepped(int by);  ///< it wants to be on the next row, or the one before
  void jumpRequested(const stayalight::Finding& finding);
  void fixRequested(const stayalight::Finding& finding);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  Finding finding_;
  FindingText text_;
  Palette palette_;
  QLabel* trade_ = nullptr;
  QPushButton* fix_ = nullptr;
};

class FindingsList : public QWidget {
  Q_OBJECT
 public:
  explicit FindingsList(QWidget* parent = nullptr);
  void show(const Plan& plan, const std::vector<Finding>& findings, const Language& language);
  void setColors(const Palette& palette);
  /// The rows that were needed so far: more come as one nears the last of them.
  [[nodiscard]] const std::vector<FindingRow*>& rows() const { return rows_; }
  static constexpr std::size_t kRowsAtOnce = 100;

 Q_SIGNALS:
  void jumpRequested(const stayalight::Finding& finding);
  void fixRequested(const stayalight::Finding& finding);

 private:
  void fill();
  void placeRows();
  void placeMore();
  void step(const FindingRow* from, int by);

  Plan plan_;
  std::vector<Finding> findings_;
  const Language* language_ = &plainEnglish();
  Palette palette_{Theme::light};
  QLabel* head_;
  FindingCounts* counts_;
  QScrollArea* scroll_;
  QVBoxLayout* column_;
  QLabel* none_;
  std::vector<FindingRow*> rows_;
  std::size_t most_ = kRowsAtOnce;
};

/// "main 27, main 29" of a finding's places; empty where it concerns the whole plan.
[[nodiscard]] QString findingPlaces(const Plan& plan, const Finding& finding, const Language& language);
/// "210.4(A)", or "practice", "listed instructions", "local".
[[nodiscard]] QString findingBasis(const Finding& finding, const Language& language);

}  // namespace stayalight
