#include "ui/inspector/field_editor.h"

#include <QtCore/QEvent>
#include <QtCore/QRegularExpression>
#include <QtCore/QSignalBlocker>
#include <QtGui/QKeyEvent>
#include <QtWidgets/QAbstractItemView>
#include <QtWidgets/QCheckBox>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QGridLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QPlainTextEdit>
#include <QtWidgets/QToolButton>
#include <QtWidgets/QWhatsThis>
#include <cmath>

#include "ui/inspector/entity_text.h"
#include "ui/style/application.h"
#include "ui/style/program_style.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kOutOfRange{"inspector.out_of_range"};
constexpr MessageId kNotWhole{"inspector.not_whole"};
constexpr MessageId kMustHaveValue{"inspector.must_have_value"};
constexpr MessageId kTooLongText{"inspector.too_long"};
constexpr MessageId kOrder{"inspector.low_high_order"};
constexpr MessageId kTyped{"inspector.typed"};
constexpr MessageId kKept{"inspector.kept_word"};
constexpr MessageId kNoEntity{"inspector.no_entity"};
constexpr MessageId kNotEntered{"inspector.not_entered"};
constexpr MessageId kMore{"inspector.fact.more"};
constexpr MessageId kGradeHelp{"inspector.fact.grade_help"};
constexpr std::array<MessageId, 5> kDetailNames = {
    MessageId{"inspector.fact.low"}, MessageId{"inspector.fact.high"}, MessageId{"inspector.fact.who"},
    MessageId{"inspector.fact.when"}, MessageId{"inspector.fact.how"}};
constexpr MessageId kHelpOn{"inspector.help_on"};
constexpr MessageId kHelpKey{"inspector.help_key"};
constexpr MessageId kPartOf{"inspector.fact.part_of"};
constexpr int kNotesHeight = 56;
constexpr int kFactIndent = 4;

QString shown(const Message& message, const Language& language) { return words(message, language); }
QString shown(MessageId id, const Language& language) { return words(language, id); }

}  // namespace

QToolButton* helpButton(const Field& field, const Language& language, QWidget* parent) {
  auto* button = new QToolButton(parent);
  button->setObjectName(QStringLiteral("help.") +
                        QString::fromUtf8(field.key.data(), static_cast<qsizetype>(field.key.size())));
  button->setText(QStringLiteral("?"));
  button->setAutoRaise(true);
  button->setFocusPolicy(Qt::NoFocus);
  const int side = scaled(kLeastTarget);
  button->setFixedSize(side, side);
  const QString help = QString::fromStdString(fieldHelp(field, language));
  button->setAccessibleName(words(language, kHelpOn, fieldLabel(field, language)));
  button->setAccessibleDescription(help);
  button->setToolTip(help);
  QObject::connect(button, &QToolButton::clicked, button, [button, help] {
    QWhatsThis::showText(button->mapToGlobal(button->rect().bottomLeft()), help.toHtmlEscaped(), button);
  });
  return button;
}

FieldEditor::FieldEditor(const Field& field, FormStyle style, QWidget* parent)
    : QWidget(parent), field_(field), style_(std::move(style)) {
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(6);
  grid->setVerticalSpacing(2);
  grid->setColumnStretch(0, 1);
  note_ = new QLabel(this);
  note_->setObjectName(QStringLiteral("note"));
  note_->setWordWrap(true);
  note_->setTextFormat(Qt::PlainText);
  note_->hide();
  switch (field.kind) {
    case FieldKind::flag: {
      check_ = new QCheckBox(this);
      check_->setObjectName(QStringLiteral("value"));
      check_->installEventFilter(this);
      grid->addWidget(check_, 0, 0);
      connect(check_, &QCheckBox::toggled, this, [this](bool on) {
        if (!showing_) give(on);
      });
      break;
    }
    case FieldKind::choice:
    case FieldKind::reference:
      makeCombo();
      break;
    case FieldKind::fact:
      makeFact();
      break;
    case FieldKind::text:
      if (field.key == "notes")
        makeNotes();
      else
        makeLine();
      break;
    case FieldKind::whole:
      if (field.unit == Unit::month)
        makeCombo();
      else
        makeLine();
      break;
    default:
      makeLine();
      break;
  }
  grid->addWidget(note_, grid->rowCount(), 0, 1, -1);
  const QString label = QString::fromStdString(fieldLabel(field, *style_.language));
  const QString help = QString::fromStdString(fieldHelp(field, *style_.language));
  for (QWidget* control : {static_cast<QWidget*>(line_), static_cast<QWidget*>(notes_),
                           static_cast<QWidget*>(combo_), static_cast<QWidget*>(check_)}) {
    if (control == nullptr) continue;
    if (control != combo_ || field.kind != FieldKind::fact) {
      control->setAccessibleName(label);
      setFocusProxy(control);
    }
    control->setToolTip(help);
    control->setWhatsThis(help.toHtmlEscaped());
  }
  say({}, false);
}

QLineEdit* FieldEditor::addLine(const QString& name) {
  auto* line = new QLineEdit(this);
  line->setObjectName(name);
  line->installEventFilter(this);
  return line;
}

void FieldEditor::makeLine() {
  line_ = addLine(QStringLiteral("value"));
  auto* grid = static_cast<QGridLayout*>(layout());
  grid->addWidget(line_, 0, 0);
  const QString unit = QString::fromUtf8(shownUnit(field_.unit, style_.units).data());
  if (!unit.isEmpty()) grid->addWidget(new QLabel(unit, this), 0, 1);
  if (field_.kind == FieldKind::text) {
    line_->setMaxLength(static_cast<int>(kLongestText));
    connect(line_, &QLineEdit::textEdited, this, [this] { commitLine(); });
  } else {
    connect(line_, &QLineEdit::editingFinished, this, [this] { commitLine(); });
  }
}

void FieldEditor::makeNotes() {
  notes_ = new QPlainTextEdit(this);
  notes_->setObjectName(QStringLiteral("value"));
  notes_->setTabChangesFocus(true);
  notes_->setFixedHeight(scaled(kNotesHeight));
  notes_->installEventFilter(this);
  static_cast<QGridLayout*>(layout())->addWidget(notes_, 0, 0);
  connect(notes_, &QPlainTextEdit::textChanged, this, [this] {
    if (showing_) return;
    const std::string text = notes_->toPlainText().toStdString();
    if (text.size() > kLongestText)
      say(shown(kTooLongText, *style_.language), true);
    else
      give(text);
  });
}

void FieldEditor::makeCombo() {
  combo_ = new QComboBox(this);
  combo_->setObjectName(QStringLiteral("value"));
  combo_->installEventFilter(this);
  combo_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  combo_->setMinimumContentsLength(8);
  static_cast<QGridLayout*>(layout())->addWidget(combo_, 0, 0);
  connect(combo_, &QComboBox::activated, this, [this](int index) {
    const QVariant item = combo_->itemData(index);
    if (!item.isValid())
      give(NoValue{});
    else if (field_.kind == FieldKind::choice)
      give(item.toString().toStdString());
    else
      give(std::int64_t{item.toLongLong()});
  });
}

void FieldEditor::makeFact() {
  makeLine();
  const Language& language = *style_.language;
  auto* grid = static_cast<QGridLayout*>(layout());
  combo_ = new QComboBox(this);
  combo_->setObjectName(QStringLiteral("grade"));
  combo_->installEventFilter(this);
  const auto partOf = [&](MessageId part) {
    return words(language, kPartOf, fieldLabel(field_, language), words(language, part).toStdString());
  };
  combo_->setAccessibleName(partOf(MessageId{"inspector.fact.grade"}));
  combo_->setToolTip(shown(kGradeHelp, language));
  for (std::size_t grade = 0; grade < kGradeWords.size(); ++grade)
    combo_->addItem(gradeName(static_cast<Grade>(grade), language));
  grid->addWidget(combo_, 0, 2);
  more_ = new QToolButton(this);
  more_->setObjectName(QStringLiteral("more"));
  more_->setText(shown(kMore, language));
  more_->setCheckable(true);
  more_->setAutoRaise(true);
  more_->setArrowType(Qt::RightArrow);
  more_->setToolButtonStyle(Qt::ToolButtonIconOnly);
  more_->setToolTip(shown(kMore, language));
  more_->setAccessibleName(partOf(kMore));
  grid->addWidget(more_, 0, 3);
  detail_ = new QWidget(this);
  auto* detail = new QGridLayout(detail_);
  detail->setContentsMargins(kFactIndent, 0, 0, 4);
  detail->setVerticalSpacing(2);
  constexpr std::array<const char*, 5> kNames = {"low", "high", "who", "when", "how"};
  for (int i = 0; i < 5; ++i) {
    const auto at = static_cast<std::size_t>(i);
    detailLines_[at] = addLine(QString::fromLatin1(kNames[at]));
    auto* label = new QLabel(shown(kDetailNames[at], language), detail_);
    label->setBuddy(detailLines_[at]);
    detailLines_[at]->setAccessibleName(partOf(kDetailNames[at]));
    detail->addWidget(label, i, 0);
    detail->addWidget(detailLines_[at], i, 1);
    connect(detailLines_[at], &QLineEdit::editingFinished, this, [this] { commitFact(); });
  }
  detail_->hide();
  grid->addWidget(detail_, 1, 0, 1, 4);
  connect(more_, &QToolButton::toggled, this, [this](bool on) {
    detail_->setVisible(on);
    more_->setArrowType(on ? Qt::DownArrow : Qt::RightArrow);
  });
  connect(combo_, &QComboBox::activated, this, [this] { commitFact(); });
}

QString FieldEditor::shownText(double value) const {
  return QString::fromStdString(writeQuantity(value, field_.unit, *style_.language, style_.units));
}

void FieldEditor::fillCombo(const Plan& plan, const FieldValue& value) {
  const Language& language = *style_.language;
  combo_->clear();
  if (field_.unit == Unit::month) {
    for (int month = 1; month <= 12; ++month)
      combo_->addItem(QString::fromStdString(monthText(month, language)), month);
    if (const auto* whole = std::get_if<std::int64_t>(&value))
      combo_->setCurrentIndex(static_cast<int>(*whole) - 1);
    return;
  }
  if (field_.kind == FieldKind::choice) {
    if (field_.optional) combo_->addItem(shown(kNotEntered, language));
    for (const std::string_view word : field_.choices) {
      combo_->addItem(QString::fromStdString(choiceText(field_, word, language)),
                      QString::fromStdString(std::string(word)));
    }
    const auto* word = std::get_if<std::string>(&value);
    if (word == nullptr) {
      combo_->setCurrentIndex(0);
      return;
    }
    int index = combo_->findData(QString::fromStdString(*word));
    if (index < 0) {
      combo_->addItem(shown(stayalight::say(kKept, *word), language), QString::fromStdString(*word));
      index = combo_->count() - 1;
    }
    combo_->setCurrentIndex(index);
    return;
  }
  combo_->addItem(shown(kNoEntity, language), qlonglong{0});
  const auto add = [&](std::int64_t id, const std::string& name) {
    combo_->addItem(QString::fromStdString(name), qlonglong{id});
  };
  if (field_.target == RecordKind::panel) {
    for (const auto& panel : plan.panels)
      add(panel->id.number, entityName(plan, {RecordKind::panel, panel->id.number}, language));
  }
  if (field_.target == RecordKind::breaker) {
    for (const auto& breaker : plan.breakers)
      add(breaker->id.number, breakerPlace(plan, breaker->id, language));
  }
  if (field_.target == RecordKind::raceway) {
    for (const auto& raceway : plan.raceways)
      add(raceway->id.number, entityName(plan, {RecordKind::raceway, raceway->id.number}, language));
  }
  if (field_.target == RecordKind::spliceBox) {
    for (const auto& box : plan.spliceBoxes)
      add(box->id.number, entityName(plan, {RecordKind::spliceBox, box->id.number}, language));
  }
  if (const auto* id = std::get_if<std::int64_t>(&value)) {
    const int index = combo_->findData(qlonglong{*id});
    combo_->setCurrentIndex(index < 0 ? 0 : index);
  }
}

void FieldEditor::refresh(const Plan& plan, const FieldValue& value) {
  if (combo_ != nullptr && field_.kind != FieldKind::fact && !combo_->view()->isVisible()) {
    const QSignalBlocker quiet(combo_);
    fillCombo(plan, value);
  }
  if (!refused_.isEmpty() && value == value_) return;
  const bool changed = !(value == value_);
  value_ = value;
  if (changed && refused_.isEmpty() && typed_.isEmpty()) say({}, false);
  refused_.clear();
  showValue();
}

void FieldEditor::showValue() {
  showing_ = true;
  if (check_ != nullptr) check_->setChecked(std::get_if<bool>(&value_) != nullptr && std::get<bool>(value_));
  QString text;
  if (const auto* words = std::get_if<std::string>(&value_)) text = QString::fromStdString(*words);
  if (const auto* whole = std::get_if<std::int64_t>(&value_)) text = shownText(static_cast<double>(*whole));
  if (const auto* number = std::get_if<double>(&value_)) text = shownText(*number);
  if (const auto* fact = std::get_if<FactValue>(&value_)) {
    if (fact->value) text = shownText(*fact->value);
    combo_->setCurrentIndex(static_cast<int>(fact->grade));
    const std::array<QString, 5> parts = {
        fact->low ? shownText(*fact->low) : QString(), fact->high ? shownText(*fact->high) : QString(),
        QString::fromStdString(fact->who), QString::fromStdString(fact->when),
        QString::fromStdString(fact->how)};
    for (std::size_t i = 0; i < parts.size(); ++i) {
      if (detailLines_[i]->text() != parts[i]) detailLines_[i]->setText(parts[i]);
    }
  }
  if (line_ != nullptr && line_->text() != text) line_->setText(text);
  // Of a long text its beginning is read.
  if (line_ != nullptr && !line_->hasFocus()) line_->setCursorPosition(0);
  if (notes_ != nullptr && notes_->toPlainText() != text) notes_->setPlainText(text);
  showing_ = false;
}

std::optional<FieldValue> FieldEditor::parse(const QString& text) {
  const Language& language = *style_.language;
  const auto wrong = [&](const Message& why) {
    say(shown(why, language), true);
    return std::nullopt;
  };
  if (text.trimmed().isEmpty()) {
    if (field_.kind == FieldKind::fact || field_.optional) return FieldValue(NoValue{});
    return wrong(Message{kMustHaveValue, {}});
  }
  const Result<double> read =
      readQuantity(text.toStdString(), field_.unit, decimalMarkOf(language), style_.units);
  if (!read) return wrong(read.refusal());
  double number = read.value();
  const std::string unit(shownUnit(field_.unit, style_.units));
  const auto limit = [&](double value) {
    std::string out = writeQuantity(value, field_.unit, language, style_.units);
    if (!unit.empty()) out += " " + unit;
    return out;
  };
  if (field_.kind == FieldKind::whole) {
    const double whole = std::round(number);
    const bool measured = field_.unit == Unit::micrometre || field_.unit == Unit::milliCelsius;
    if (!measured && std::abs(number - whole) > 1e-9 * (1.0 + std::abs(whole)))
      return wrong(Message{kNotWhole, {}});
    number = whole;
  }
  if (!std::isfinite(number) || number < field_.minimum || number > field_.maximum) {
    return wrong(stayalight::say(kOutOfRange, limit(field_.minimum), limit(field_.maximum)));
  }
  if (field_.kind == FieldKind::whole) return FieldValue(static_cast<std::int64_t>(number));
  return FieldValue(number);
}

void FieldEditor::commitLine() {
  if (showing_) return;
  if (field_.kind == FieldKind::fact) {
    commitFact();
    return;
  }
  const QString text = line_->text();
  if (field_.kind == FieldKind::text) {
    if (text.toUtf8().size() > static_cast<int>(kLongestText)) {
      say(shown(kTooLongText, *style_.language), true);
      return;
    }
    say({}, false);
    give(text.toStdString());
    return;
  }
  // Leaving a field untouched changes nothing and clears nothing.
  const QString before = [&] {
    if (const auto* whole = std::get_if<std::int64_t>(&value_)) return shownText(static_cast<double>(*whole));
    if (const auto* number = std::get_if<double>(&value_)) return shownText(*number);
    return QString();
  }();
  if (text == before && refused_.isEmpty()) return;
  const auto value = parse(text);
  if (!value) {
    refused_ = text;
    return;
  }
  refused_.clear();
  typed_ = text;
  say({}, false);
  give(*value);
  showValue();
  const bool sum = typed_.contains(QRegularExpression(QStringLiteral("[0-9A-Za-z) ][-+*/(][0-9( ]")));
  if (sum && refused_.isEmpty())
    say(shown(stayalight::say(kTyped, typed_.toStdString()), *style_.language), false);
  typed_.clear();
}

void FieldEditor::commitFact() {
  if (showing_) return;
  FactValue fact = std::holds_alternative<FactValue>(value_) ? std::get<FactValue>(value_) : FactValue{};
  const FactValue before = fact;
  const auto take = [&](const QLineEdit* line, std::optional<double>& part) {
    // What stands there as it was shown is the same number, whatever its digits.
    if (part && line->text() == shownText(*part)) return true;
    const auto value = parse(line->text());
    if (!value) return false;
    part = std::holds_alternative<double>(*value) ? std::optional<double>(std::get<double>(*value))
                                                  : std::nullopt;
    return true;
  };
  if (!take(line_, fact.value) || !take(detailLines_[0], fact.low) || !take(detailLines_[1], fact.high)) {
    refused_ = line_->text().isEmpty() ? QStringLiteral(" ") : line_->text();
    return;
  }
  fact.grade = static_cast<Grade>(combo_->currentIndex());
  fact.who = detailLines_[2]->text().toStdString();
  fact.when = detailLines_[3]->text().toStdString();
  fact.how = detailLines_[4]->text().toStdString();
  if (fact == before && refused_.isEmpty()) return;
  if (check(field_, FieldValue(fact))) {
    say(shown(kOrder, *style_.language), true);
    more_->setChecked(true);  // low and high are what it does not agree with
    refused_ = line_->text();
    return;
  }
  refused_.clear();
  say({}, false);
  give(fact);
  showValue();
}

void FieldEditor::give(const FieldValue& value) {
  if (value == value_) return;
  if (entered) entered(value);
}

void FieldEditor::refuse(const Message& why) {
  if (line_ != nullptr)
    refused_ = line_->text();
  else
    showValue();
  say(shown(why, *style_.language), true);
}

void FieldEditor::say(const QString& text, bool wrong) {
  note_->setText(text);
  note_->setVisible(!text.isEmpty());
  QPalette colors = note_->palette();
  colors.setColor(QPalette::WindowText, style_.palette.color(wrong ? ColorRole::mustFix : ColorRole::ink3));
  note_->setPalette(colors);
  if (QWidget* control = focusProxy()) {
    const QString help = words(*style_.language, kHelpKey, fieldHelp(field_, *style_.language));
    control->setAccessibleDescription(text.isEmpty() ? help : QString(text + QLatin1Char(' ') + help));
  }
}

bool FieldEditor::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::FocusIn && focused) focused(field_);
  // F1 in a field is about the field; elsewhere it is about the keys of the window.
  const bool key = event->type() == QEvent::ShortcutOverride || event->type() == QEvent::KeyPress;
  if (key && static_cast<QKeyEvent*>(event)->key() == Qt::Key_F1) {
    event->accept();
    auto* control = static_cast<QWidget*>(watched);
    if (event->type() == QEvent::KeyPress) {
      QWhatsThis::showText(control->mapToGlobal(control->rect().bottomLeft()),
                           QString::fromStdString(fieldHelp(field_, *style_.language)).toHtmlEscaped(),
                           control);
    }
    return true;
  }
  if (event->type() == QEvent::KeyPress && watched == line_ && !refused_.isEmpty() &&
      static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
    refused_.clear();
    say({}, false);
    showValue();
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace stayalight
