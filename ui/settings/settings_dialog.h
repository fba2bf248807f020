#pragma once

// The page of settings. What is changed holds at once; there is nothing to accept.

#include <QtWidgets/QDialog>
#include <functional>

#include "ui/settings/settings.h"

class QCheckBox;
class QComboBox;
class QFormLayout;
class QLineEdit;
class QSpinBox;

namespace stayalight {

class SettingsDialog : public QDialog {
  Q_OBJECT
 public:
  SettingsDialog(UserSettings& settings, const Language& language, QWidget* parent);

 private:
  QComboBox* choice(QFormLayout* form, MessageId label, const QString& name,
                    std::initializer_list<MessageId> words, const std::function<void(Settings&, int)>& put);
  QLineEdit* line(QFormLayout* form, MessageId label, const QString& name, QString Settings::*member);
  void fill(const Settings& settings);
  void change(const std::function<void(Settings&)>& put);

  UserSettings& settings_;
  const Language& language_;
  bool showing_ = false;
  QComboBox *units_, *mark_, *theme_, *paper_;
  QCheckBox* motion_;
  QSpinBox* autosave_;
  QLineEdit *firm_, *licence_, *drawnBy_;
};

}  // namespace stayalight
