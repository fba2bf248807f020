#pragma once

// The answers: one sentence for the household, the legs against their limits, and the trade's figures below.
// Any figure opens its working by a click, Enter or W.

#include <QtWidgets/QAbstractButton>
#include <QtWidgets/QWidget>
#include <vector>

#include "ui/answers/answers_text.h"
#include "ui/style/palette.h"

class QLabel;
class QScrollArea;
class QVBoxLayout;

namespace stayalight {

class LegBars;

/// One figure: label, value against its limit, bead and word.
class FigureRow : public QAbstractButton {
  Q_OBJECT
 public:
  explicit FigureRow(QWidget* parent = nullptr);
  void show(const AnswerLine& line, const Palette& palette, const Language& language);
  [[nodiscard]] const AnswerLine& line() const { return line_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  bool event(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  [[nodiscard]] bool stacked(double width) const;  // the value does not fit beside the label
  [[nodiscard]] const QStringList& detailLines(double width) const;

  AnswerLine line_;
  const Language* language_ = nullptr;
  QString verdict_;
  Palette palette_{Theme::light};
  mutable double brokenFor_ = -1.0;  ///< width that the lines were broken for
  mutable QStringList lines_;
};

class AnswersColumn : public QWidget {
  Q_OBJECT
 public:
  explicit AnswersColumn(QWidget* parent = nullptr);
  void show(const Plan& plan, const Assessment& assessment, const Language& language);
  void setColors(const Palette& palette);
  [[nodiscard]] const Answers& answers() const { return answers_; }

 Q_SIGNALS:
  void workingRequested(const stayalight::WorkingTarget& target);

 private:
  void fill();

  Answers answers_;
  const Language* language_ = &plainEnglish();
  Palette palette_{Theme::light};
  QScrollArea* scroll_;
  QWidget* page_;
  QVBoxLayout* column_;
  QLabel* headline_;
  QLabel* second_;
  QLabel* caution_;
  QLabel* barsHead_;
  LegBars* bars_;
  QWidget* figures_ = nullptr;
  std::vector<FigureRow*> rows_;
  std::vector<std::pair<QLabel*, QLabel*>> heads_;
};

}  // namespace stayalight
