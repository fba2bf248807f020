#pragma once

// The survey: which panel and in what order, the grid, and below it how much of the house is known.

#include <QtWidgets/QWidget>

#include "ui/survey/survey_model.h"

class QComboBox;
class QLabel;
class QPushButton;
class QToolButton;

namespace stayalight {

class DirectoryDialog;
class KnownBar;
class SurveyTable;

class SurveyView : public QWidget {
  Q_OBJECT
 public:
  explicit SurveyView(QWidget* parent = nullptr);

  void show(const Plan& plan, const Assessment& assessment, const Language& language,
            const ShownUnits& units);
  void setColors(const Palette& palette);
  [[nodiscard]] SurveyModel* model() const { return model_; }
  [[nodiscard]] SurveyTable* table() const { return table_; }
  [[nodiscard]] KnownBar* knownBar() const { return known_; }
  /// The breaker or circuit of the row with the keyboard.
  [[nodiscard]] std::optional<EntityRef> current() const;
  void choosePanel(PanelId panel);
  void focusBreaker(BreakerId breaker);
  /// To the first text that was typed and not read.
  void goToUnread();

  // What the menu asks for; each one undo step.
  void copyCells();
  void pasteCells();
  void fillDown();
  void duplicateRows();
  void removeRows();
  void clearCells();
  void twoPole();
  void tandem();
  void sharedNeutral();
  void grade(Grade grade);
  DirectoryDialog* pasteDirectory();
  /// What is being typed counts.
  void finishTyping();

 Q_SIGNALS:
  void edited(const stayalight::FormEdit& edit);
  void refused(const stayalight::Message& why);
  void currentChanged(const stayalight::EntityRef& what);
  void said(const QString& text);

 private:
  void fillPanels();
  void fillTexts();
  void showCounts();
  void showCell();
  void setColumns(ColumnSet set);
  void change(Result<Plan> after, const Message& name);
  template <class Change>
  void changeEach(const Message& name, Change&& changeOne);
  [[nodiscard]] GridRow currentRow() const;
  bool onRow();  ///< else the refusal that says so

  const Language* language_ = &plainEnglish();
  Palette palette_{Theme::light};
  SurveyModel* model_;
  SurveyTable* table_;
  QLabel* head_;
  QLabel* panelLabel_;
  QComboBox* panels_;
  QLabel* orderLabel_;
  QComboBox* orders_;
  QLabel* gradeLabel_;
  QComboBox* grades_;
  QPushButton* directory_;
  std::array<QToolButton*, 4> filters_{};
  std::array<QToolButton*, 4> sets_{};
  KnownBar* known_;
  QLabel* cell_;
};

}  // namespace stayalight
