#pragma once

// How a number came about: the steps that core recorded, from the inputs to the figure.

#include <QtCore/QHash>
#include <QtWidgets/QDialog>
#include <vector>

#include "core/message/working.h"
#include "ui/answers/answers_text.h"
#include "ui/style/palette.h"

class QTextBrowser;

namespace stayalight {

/// The steps that lead to the figure, in order; of the whole room where no step has exactly that value, so
/// that the reader still finds it. Indices inside are those of the new list.
[[nodiscard]] std::vector<Step> stepsFor(const Working& working, const WorkingTarget& target);
/// The working as plain text, to be copied.
[[nodiscard]] QString workingText(const WorkingTarget& target, const std::vector<Step>& steps,
                                  const Language& language);

class WorkingWindow : public QDialog {
  Q_OBJECT
 public:
  /// `edition` names the edition of the code whose sections are cited; empty where none are.
  WorkingWindow(const WorkingTarget& target, const Assessment& recorded, const QString& edition,
                const Language& language, const Palette& palette, QWidget* parent = nullptr);
  [[nodiscard]] QString text() const { return text_; }

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  QString text_;
  QString figure_;  ///< the one it is about, with its name
  const Language& language_;
  QHash<QString, QString> results_;  ///< by their links
  QTextBrowser* view_;
};

}  // namespace stayalight
