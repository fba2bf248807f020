#include "ui/settings/settings_dialog.h"

#include <QtWidgets/QCheckBox>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QDialogButtonBox>
#include <QtWidgets/QFormLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QSpinBox>
#include <QtWidgets/QVBoxLayout>

#include "ui/style/application.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kTitle{"settings.title"};
constexpr MessageId kProgram{"settings.program"};
constexpr MessageId kNewPlans{"settings.new_plans"};
constexpr MessageId kUnits{"settings.units"};
constexpr MessageId kUnitsUs{"settings.units.us"};
constexpr MessageId kUnitsMetric{"settings.units.metric"};
constexpr MessageId kMark{"settings.mark"};
constexpr MessageId kMarkSystem{"settings.mark.system"};
constexpr MessageId kMarkPoint{"settings.mark.point"};
constexpr MessageId kMarkComma{"settings.mark.comma"};
constexpr MessageId kTheme{"settings.theme"};
constexpr MessageId kThemeSystem{"settings.theme.system"};
constexpr MessageId kThemeLight{"settings.theme.light"};
constexpr MessageId kThemeDark{"settings.theme.dark"};
constexpr MessageId kThemeContrast{"settings.theme.contrast"};
constexpr MessageId kMotion{"settings.less_motion"};
constexpr MessageId kAutosave{"settings.autosave"};
constexpr MessageId kAutosaveSuffix{"settings.autosave.suffix"};
constexpr MessageId kPaper{"settings.paper"};
constexpr MessageId kPaperLetter{"settings.paper.letter"};
constexpr MessageId kPaperA4{"settings.paper.a4"};
constexpr MessageId kFirm{"settings.firm"};
constexpr MessageId kLicence{"settings.licence"};
constexpr MessageId kDrawnBy{"settings.drawn_by"};
constexpr MessageId kNote{"settings.note"};
constexpr int kWidth = 420;

}  // namespace

SettingsDialog::SettingsDialog(UserSettings& settings, const Language& language, QWidget* parent)
    : QDialog(parent), settings_(settings), language_(language) {
  setObjectName(QStringLiteral("settingsPage"));
  setAttribute(Qt::WA_DeleteOnClose);
  setWindowTitle(words(language, kTitle));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(24, 20, 24, 16);
  column->setSpacing(10);
  const auto section = [&](MessageId title) {
    auto* head = new QLabel(words(language, title), this);
    head->setFont(screenFont(Face::condensed, 15, Weight::medium));
    column->addWidget(head);
    auto* form = new QFormLayout;
    form->setHorizontalSpacing(16);
    form->setVerticalSpacing(8);
    form->setContentsMargins(0, 0, 0, 8);
    column->addLayout(form);
    return form;
  };
  QFormLayout* program = section(kProgram);
  units_ = choice(program, kUnits, QStringLiteral("units"), {kUnitsUs, kUnitsMetric},
                  [](Settings& s, int at) { s.metric = at == 1; });
  mark_ = choice(program, kMark, QStringLiteral("decimalMark"), {kMarkSystem, kMarkPoint, kMarkComma},
                 [](Settings& s, int at) { s.decimalMark = static_cast<DecimalMark>(at); });
  theme_ = choice(program, kTheme, QStringLiteral("theme"),
                  {kThemeSystem, kThemeLight, kThemeDark, kThemeContrast}, [](Settings& s, int at) {
                    s.theme = at == 0 ? std::nullopt : std::optional(static_cast<Theme>(at - 1));
                  });
  motion_ = new QCheckBox(words(language, kMotion), this);
  motion_->setObjectName(QStringLiteral("lessMotion"));
  program->addRow(QString(), motion_);
  connect(motion_, &QCheckBox::toggled, this,
          [this](bool on) { change([on](Settings& s) { s.lessMotion = on; }); });
  autosave_ = new QSpinBox(this);
  autosave_->setObjectName(QStringLiteral("autosaveSeconds"));
  autosave_->setRange(kLeastAutosaveSeconds, kMostAutosaveSeconds);
  autosave_->setSuffix(words(language, kAutosaveSuffix));
  autosave_->setAccessibleName(words(language, kAutosave));
  program->addRow(words(language, kAutosave), autosave_);
  connect(autosave_, &QSpinBox::valueChanged, this,
          [this](int seconds) { change([seconds](Settings& s) { s.autosaveSeconds = seconds; }); });

  QFormLayout* plans = section(kNewPlans);
  paper_ = choice(plans, kPaper, QStringLiteral("paper"), {kPaperLetter, kPaperA4},
                  [](Settings& s, int at) { s.paper = static_cast<PaperSize>(at); });
  firm_ = line(plans, kFirm, QStringLiteral("firm"), &Settings::firm);
  licence_ = line(plans, kLicence, QStringLiteral("licence"), &Settings::licence);
  drawnBy_ = line(plans, kDrawnBy, QStringLiteral("drawnBy"), &Settings::drawnBy);
  auto* note = new QLabel(words(language, kNote), this);
  note->setWordWrap(true);
  note->setMinimumWidth(scaled(kWidth));
  column->addWidget(note);
  column->addStretch(1);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  column->addWidget(buttons);
  fill(settings_.now());
  connect(&settings_, &UserSettings::changed, this, [this] { fill(settings_.now()); });
}

QComboBox* SettingsDialog::choice(QFormLayout* form, MessageId label, const QString& name,
                                  std::initializer_list<MessageId> ids,
                                  const std::function<void(Settings&, int)>& put) {
  auto* box = new QComboBox(this);
  box->setObjectName(name);
  box->setAccessibleName(words(language_, label));
  for (const MessageId id : ids) box->addItem(words(language_, id));
  form->addRow(words(language_, label), box);
  connect(box, &QComboBox::currentIndexChanged, this,
          [this, put](int at) { change([&](Settings& s) { put(s, at); }); });
  return box;
}

QLineEdit* SettingsDialog::line(QFormLayout* form, MessageId label, const QString& name,
                                QString Settings::*member) {
  auto* edit = new QLineEdit(this);
  edit->setObjectName(name);
  edit->setMaxLength(kLongestSetting);
  edit->setAccessibleName(words(language_, label));
  form->addRow(words(language_, label), edit);
  connect(edit, &QLineEdit::textEdited, this,
          [this, member](const QString& text) { change([&](Settings& s) { s.*member = text.trimmed(); }); });
  return edit;
}

void SettingsDialog::fill(const Settings& settings) {
  showing_ = true;
  units_->setCurrentIndex(settings.metric ? 1 : 0);
  mark_->setCurrentIndex(static_cast<int>(settings.decimalMark));
  theme_->setCurrentIndex(settings.theme ? static_cast<int>(*settings.theme) + 1 : 0);
  motion_->setChecked(settings.lessMotion);
  autosave_->setValue(settings.autosaveSeconds);
  paper_->setCurrentIndex(static_cast<int>(settings.paper));
  // What is being typed is not disturbed.
  const auto put = [](QLineEdit* edit, const QString& text) {
    if (edit->text().trimmed() != text) edit->setText(text);
  };
  put(firm_, settings.firm);
  put(licence_, settings.licence);
  put(drawnBy_, settings.drawnBy);
  showing_ = false;
}

void SettingsDialog::change(const std::function<void(Settings&)>& put) {
  if (showing_) return;
  Settings next = settings_.now();
  put(next);
  settings_.set(next);
}

}  // namespace stayalight
