#include "ui/inspector/inspector.h"

#include <QtCore/QSignalBlocker>
#include <QtCore/QTimer>
#include <QtWidgets/QApplication>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QFrame>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QMenu>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QScrollArea>
#include <QtWidgets/QScrollBar>
#include <QtWidgets/QVBoxLayout>
#include <algorithm>
#include <utility>

#include "core/transfer/transfer.h"
#include "ui/inspector/entity_text.h"
#include "ui/inspector/overload_picture.h"
#include "ui/style/icons.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kLookAt{"inspector.look_at"};
constexpr MessageId kAddNew{"inspector.add_new"};
constexpr MessageId kAdd{"inspector.add"};
constexpr MessageId kStepAdd{"inspector.step.add"};
constexpr MessageId kNothing{"inspector.nothing"};
constexpr MessageId kNoPanel{"inspector.no_panel"};
constexpr MessageId kNoCircuit{"inspector.no_circuit"};
constexpr MessageId kNewCircuit{"inspector.new_circuit"};
constexpr MessageId kListed{"inspector.listed"};
constexpr int kMargin = 12;
constexpr int kHelpLines = 3;
constexpr std::int32_t kNewRating = 20;

QVariant asData(const EntityRef& ref) {
  return QString::fromStdString(std::to_string(static_cast<int>(ref.kind)) + "/" + std::to_string(ref.id));
}

}  // namespace

Inspector::Inspector(FormStyle style, QWidget* parent) : QWidget(parent), style_(style) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(6);
  auto* top = new QHBoxLayout;
  top->setContentsMargins(kMargin, 0, kMargin, 0);
  label_ = new QLabel(this);
  chooser_ = new QComboBox(this);
  label_->setBuddy(chooser_);
  chooser_->setObjectName(QStringLiteral("lookAt"));
  chooser_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  chooser_->setMinimumContentsLength(10);
  top->addWidget(label_);
  top->addWidget(chooser_, 1);
  add_ = new QPushButton(this);
  add_->setObjectName(QStringLiteral("addNew"));
  top->addWidget(add_);
  column->addLayout(top);
  scroll_ = new QScrollArea(this);
  scroll_->setWidgetResizable(true);
  scroll_->setFrameShape(QFrame::NoFrame);
  column->addWidget(scroll_, 1);
  help_ = new QLabel(this);
  help_->setObjectName(QStringLiteral("help"));
  help_->setWordWrap(true);
  help_->setTextFormat(Qt::PlainText);
  help_->setAlignment(Qt::AlignTop);
  help_->setContentsMargins(kMargin, 4, kMargin, 6);
  // Of one height while it can be, so that the form does not jump; a longer text gets the room it needs.
  help_->setMinimumHeight(fontMetrics().lineSpacing() * kHelpLines + 10);
  help_->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Minimum);
  column->addWidget(help_);
  connect(chooser_, &QComboBox::activated, this, [this](int index) {
    const QStringList parts = chooser_->itemData(index).toString().split(QLatin1Char('/'));
    if (parts.size() == 2) look({static_cast<RecordKind>(parts[0].toInt()), parts[1].toLongLong()});
  });
  addMenu();
  setStyle(style_);
}

void Inspector::setStyle(const FormStyle& style) {
  style_ = style;
  const Language& language = *style_.language;
  label_->setText(words(language, kLookAt));
  chooser_->setAccessibleName(words(language, kLookAt));
  add_->setText(words(language, kAddNew));
  add_->setIcon(buttonIcon(Icon::add, style_.palette));
  stale_ = true;
  if (isVisible()) rebuild();
}

void Inspector::showEvent(QShowEvent* event) {
  if (stale_) {
    fillChooser();
    rebuild();
    scrollTo(aimed_);
  }
  QWidget::showEvent(event);
}

void Inspector::addMenu() {
  auto* menu = new QMenu(add_);
  add_->setMenu(menu);
  connect(menu, &QMenu::aboutToShow, this, [this, menu] {
    menu->clear();
    for (const RecordKind kind :
         {RecordKind::circuit, RecordKind::load, RecordKind::breaker, RecordKind::panel,
          RecordKind::feederRun, RecordKind::raceway, RecordKind::spliceBox}) {
      QAction* action = menu->addAction(words(*style_.language, kAdd, kindName(kind, *style_.language)));
      action->setObjectName(QStringLiteral("add.") +
                            QString::fromStdString(std::string(recordType(kind).name)));
      connect(action, &QAction::triggered, this, [this, kind] { addOf(kind); });
    }
  });
}

PanelId Inspector::panelLookedAt() const {
  if (what_.kind == RecordKind::panel) return PanelId{what_.id};
  if (what_.kind == RecordKind::circuit) {
    if (const Circuit* circuit = stayalight::find(plan_, CircuitId{what_.id}))
      return panelOf(plan_, *circuit, Reading::planned);
  }
  if (what_.kind == RecordKind::breaker) {
    if (const Breaker* breaker = stayalight::find(plan_, BreakerId{what_.id})) return breaker->panel;
  }
  if (const Panel* main = mainPanel(plan_)) return main->id;
  return plan_.panels.empty() ? PanelId{} : plan_.panels.front()->id;
}

void Inspector::addOf(RecordKind kind) {
  const Language& language = *style_.language;
  const PanelId panel = panelLookedAt();
  const Message name = say(kStepAdd, kindName(kind, language));
  Result<Plan> after = Message{kNoPanel, {}};
  EntityRef next;
  switch (kind) {
    case RecordKind::circuit:
      next = {kind, nextCircuitId(plan_).number};
      if (stayalight::find(plan_, panel) != nullptr) {
        after = addCircuit(plan_, panel, std::nullopt, 1, RatingAmperes(kNewRating),
                           stayalight::render(Message{kNewCircuit, {}}, language));
      }
      break;
    case RecordKind::load:
      next = {kind, nextLoadId(plan_).number};
      if (what_.kind == RecordKind::circuit)
        after = addLoad(plan_, CircuitId{what_.id}, Load{});
      else
        after = Message{kNoCircuit, {}};
      break;
    case RecordKind::breaker: {
      next = {kind, nextBreakerId(plan_).number};
      if (stayalight::find(plan_, panel) == nullptr) break;
      const std::vector<Placement> free = landings(plan_, panel, 1, {});
      if (!free.empty()) {
        after = addBreaker(plan_, free.front(), RatingAmperes(kNewRating), Feeds::nothing);
      } else if (const auto why = refusal(plan_, {panel, {}, Half::whole, 1}, {})) {
        after = *why;
      }
      break;
    }
    case RecordKind::panel:
      next = {kind, nextPanelId(plan_).number};
      after = addPanel(plan_, backupPanel(plan_) == nullptr && mainPanel(plan_) != nullptr ? PanelRole::backup
                              : mainPanel(plan_) == nullptr                                ? PanelRole::main
                                                            : PanelRole::subpanel);
      break;
    case RecordKind::feederRun: {
      next = {kind, nextFeederRunId(plan_).number};
      Segment wanted = Segment::mainToSwitch;
      for (const Segment segment : segments(plan_)) {
        if (runOf(plan_, segment) == nullptr) {
          wanted = segment;
          break;
        }
      }
      after = addFeederRun(plan_, wanted);
      break;
    }
    case RecordKind::raceway:
      next = {kind, nextRacewayId(plan_).number};
      after = addRaceway(plan_);
      break;
    case RecordKind::spliceBox:
      next = {kind, nextSpliceBoxId(plan_).number};
      after = addSpliceBox(plan_);
      break;
    default:
      return;
  }
  if (!after) {
    Q_EMIT refused(after.refusal());
    return;
  }
  Q_EMIT edited({std::move(after).value(), name, {}});
  look(next);
  focusField({});
}

void Inspector::setPlan(const Plan& plan) {
  plan_ = plan;
  if (findRecord(plan_, what_) == nullptr) what_ = {RecordKind::site};
  if (!isVisible()) {
    stale_ = true;
    return;
  }
  fillChooser();
  if (recordsFor(plan_, what_) != records_) {
    rebuild();
    return;
  }
  for (RecordForm* form : forms_) form->refresh(plan_);
  if (curve_ != nullptr) curve_->show(plan_, starts_, style_);
}

void Inspector::setStarts(const StartFigures& starts) {
  starts_ = starts;
  if (curve_ != nullptr && isVisible()) curve_->show(plan_, starts_, style_);
}

void Inspector::fillChooser() {
  const QSignalBlocker quiet(chooser_);
  chooser_->clear();
  const Language& language = *style_.language;
  for (const EntityRef& ref : entities(plan_)) {
    const std::string place = placeName(plan_, ref, language);
    const std::string name = entityName(plan_, ref, language);
    const bool both = !place.empty() && ref.kind == RecordKind::circuit;
    chooser_->addItem(both ? words(language, kListed, name, place) : QString::fromStdString(name),
                      asData(ref));
  }
  const std::vector<EntityRef> records = recordsFor(plan_, what_);
  chooser_->setCurrentIndex(records.empty() ? -1 : chooser_->findData(asData(records.front())));
}

void Inspector::rebuild() {
  stale_ = false;
  // The keyboard returns to where it was, as far as that record is still there.
  EntityRef focusRef;
  std::string focusKey;
  for (const RecordForm* form : forms_) {
    for (const Field& field : recordType(form->ref().kind).fields) {
      const FieldEditor* editor = form->editor(field.key);
      if (editor != nullptr && editor->focusProxy() != nullptr && editor->focusProxy()->hasFocus()) {
        focusRef = form->ref();
        focusKey = std::string(field.key);
      }
    }
  }
  const bool same = !records_.empty() && !recordsFor(plan_, what_).empty() &&
                    records_.front() == recordsFor(plan_, what_).front();
  const int position = same ? scroll_->verticalScrollBar()->value() : 0;
  const QWidget* keyboard = QApplication::focusWidget();
  const bool hadKeyboard = scroll_->widget() != nullptr && scroll_->widget()->isAncestorOf(keyboard);
  const std::vector<EntityRef> before = std::exchange(records_, recordsFor(plan_, what_));
  // A line that loses the keyboard because its form goes away must not change the plan any more.
  for (RecordForm* form : forms_) {
    form->edited = nullptr;
    form->refused = nullptr;
    form->wished = nullptr;
    form->focused = nullptr;
  }
  forms_.clear();
  curve_ = nullptr;
  auto* page = new QWidget;
  page->setObjectName(QStringLiteral("page"));
  auto* column = new QVBoxLayout(page);
  column->setContentsMargins(kMargin, 4, kMargin, 8);
  column->setSpacing(8);
  for (const EntityRef& ref : records_) {
    // The points of a curve stand within the form of the inverter, where its label has them.
    QVBoxLayout* place = forms_.empty() ? nullptr : forms_.front()->placeOf(ref.kind);
    if (!forms_.empty() && place == nullptr) {
      auto* rule = new QFrame(page);
      rule->setFrameShape(QFrame::HLine);
      column->addWidget(rule);
    }
    auto* form = new RecordForm(plan_, ref, style_, place != nullptr ? forms_.front() : page);
    form->edited = [this](const FormEdit& edit) { Q_EMIT edited(edit); };
    form->refused = [this](const Message& why) { Q_EMIT refused(why); };
    form->wished = [this, ref](Wish wish, QPoint global) { Q_EMIT wished(ref, wish, global); };
    form->focused = [this](const Field& field) {
      help_->setText(QString::fromStdString(fieldHelp(field, *style_.language)));
    };
    (place != nullptr ? place : column)->addWidget(form);
    forms_.push_back(form);
  }
  if (what_.kind == RecordKind::inverter) {
    curve_ = new OverloadPicture(forms_.front());
    curve_->show(plan_, starts_, style_);
    forms_.front()->placeOf(RecordKind::overloadPoint)->addWidget(curve_);
  }
  if (forms_.empty()) column->addWidget(new QLabel(words(*style_.language, kNothing), page));
  column->addStretch(1);
  if (QWidget* old = scroll_->takeWidget()) old->deleteLater();
  scroll_->setWidget(page);
  help_->clear();
  if (same) scroll_->verticalScrollBar()->setValue(position);
  if (RecordForm* again = form(focusRef); again != nullptr && !focusKey.empty()) {
    again->focusField(focusKey);
  } else if (same && hadKeyboard) {
    // A button of the form that is gone had it: what was just added comes next.
    const auto fresh = std::find_if(records_.begin(), records_.end(), [&](const EntityRef& ref) {
      return std::find(before.begin(), before.end(), ref) == before.end();
    });
    if (fresh == records_.end())
      chooser_->setFocus();
    else if (RecordForm* added = form(*fresh))
      added->focusField({});
  }
}

void Inspector::look(const EntityRef& what) {
  if (findRecord(plan_, what) == nullptr) return;
  what_ = what;
  const std::vector<EntityRef> records = recordsFor(plan_, what);
  if (!records.empty()) what_ = records.front();
  aimed_ = what;
  if (isVisible()) {
    fillChooser();
    if (records != records_) rebuild();
    scrollTo(what);
  } else {
    stale_ = true;
  }
  Q_EMIT looked(what_);
}

void Inspector::scrollTo(const EntityRef& what) {
  RecordForm* target = form(what);
  if (target == nullptr || what == what_) return;
  // After the layout has run, so that the form has its place.
  QTimer::singleShot(0, target, [this, target] { scroll_->ensureWidgetVisible(target); });
}

RecordForm* Inspector::form(const EntityRef& ref) const {
  for (RecordForm* form : forms_) {
    if (form->ref() == ref) return form;
  }
  return nullptr;
}

void Inspector::focusField(std::string_view key) {
  // Of several rows that have such a field it is the one that was looked at.
  std::vector<RecordForm*> forms = forms_;
  if (RecordForm* aimed = form(aimed_)) forms.insert(forms.begin(), aimed);
  for (RecordForm* form : forms) {
    if (key.empty() || form->editor(key) != nullptr) {
      form->focusField(key);
      // After the layout has run, and after whatever else wanted to be seen.
      QTimer::singleShot(0, form, [this, form] {
        if (QWidget* field = form->focusWidget()) scroll_->ensureWidgetVisible(field);
      });
      return;
    }
  }
}

}  // namespace stayalight
