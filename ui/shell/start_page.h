#pragma once

// Shown while no plan is open: the first answers, the sample, opening a plan. The panel draws itself as one
// answers.

#include <QtWidgets/QWidget>
#include <functional>
#include <vector>

#include "core/edit/edit.h"
#include "ui/inspector/field_editor.h"

class QLabel;
class QPushButton;

namespace stayalight {

class DraftPicture;

class StartPage : public QWidget {
  Q_OBJECT
 public:
  explicit StartPage(FormStyle style, QWidget* parent = nullptr);
  void setStyle(const FormStyle& style);
  [[nodiscard]] const Plan& draft() const { return draft_; }
  [[nodiscard]] FieldEditor* editor(RecordKind kind, std::string_view key, std::int64_t id = 0) const;

 Q_SIGNALS:
  void planReady(const stayalight::Plan& plan);
  void sampleRequested();
  void openRequested();

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void build();
  void refresh();

  struct Question {
    EntityRef ref;
    FieldEditor* editor;
  };
  FormStyle style_;
  Plan draft_;
  std::vector<Question> questions_;
  DraftPicture* picture_ = nullptr;
  bool stale_ = true;  ///< built when it is seen: a window that opens with a plan never shows it
};

}  // namespace stayalight
